"""The Cramér–Rao bound against closed forms, and an efficient estimator against it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

import stylobate.simulate.cramer_rao as module
from stylobate.core.types import FloatArray
from stylobate.simulate import Noise, Settings, bound, draw_bodies, scene
from stylobate.simulate.cramer_rao import covariance_of_means, inverted, pose_covariance
from stylobate.simulate.noise import model_of

SIGMA_UM, COUNT = 10.0, 3000
WHITE = model_of(Noise(SIGMA_UM, 0.0), np.array([0.0, 0.0, 1.0]), np.zeros(3), np.random.default_rng(0))


def information(points: FloatArray, normals: FloatArray) -> FloatArray:
    jacobian = np.concatenate([normals, np.cross(points, normals)], axis=1)
    return np.asarray(jacobian.T @ jacobian / (SIGMA_UM * 1e-3) ** 2)


def cylinder(radius: float, height: float) -> tuple[FloatArray, FloatArray]:
    rng = np.random.default_rng(5)
    angle = 2 * np.pi * (np.arange(COUNT) + rng.uniform(size=COUNT)) / COUNT
    normals = np.stack([np.cos(angle), np.sin(angle), np.zeros(COUNT)], axis=1)
    z = height * ((rng.permutation(COUNT) + 0.5) / COUNT - 0.5)
    return radius * normals + z[:, None] * np.array([0, 0, 1.0]), normals


def test_cylinder_wall() -> None:
    """Lateral σ√(2/N), tilt σ√(24/N)/h about the middle; height and turn loose (closed form; 0.258 µm, 8.54 mdeg)."""
    points, normals = cylinder(2.0, 6.0)
    full = information(points, normals)
    assert np.linalg.eigvalsh(full)[:2] == pytest.approx([0.0, 0.0], abs=1e-6 * full.max())
    with pytest.raises(ValueError, match="loose"):
        pose_covariance(WHITE, points, normals, points, normals, np.zeros(COUNT))
    tight = [0, 1, 3, 4]
    sd = np.sqrt(np.diag(inverted(full[np.ix_(tight, tight)])))
    assert sd[:2] * 1e3 == pytest.approx([0.258] * 2, rel=0.03)
    assert np.degrees(sd[2:]) * 1e3 == pytest.approx([8.54] * 2, rel=0.03)


def test_closed_cylinder_with_flat() -> None:
    """Wall, top disc and flat together: the disc fixes height by σ/√n, the flat the turn by σ√(12/n)/w."""
    points, normals = cylinder(2.0, 6.0)
    rng = np.random.default_rng(6)
    r, a = 2.0 * np.sqrt(rng.uniform(size=1000)), rng.uniform(0, 2 * np.pi, 1000)
    disc = np.stack([r * np.cos(a), r * np.sin(a), np.full(1000, 3.0)], axis=1)
    width, n = 2.4, 400
    flat = np.stack([np.full(n, 1.6), width * ((np.arange(n) + 0.5) / n - 0.5), rng.permutation(n) / n * 3], axis=1)
    p = np.concatenate([points, disc, flat])
    u = np.concatenate([normals, np.tile([0, 0, 1.0], (1000, 1)), np.tile([1.0, 0, 0], (n, 1))])
    covariance = pose_covariance(WHITE, p, u, p, u, np.zeros(len(p)))
    assert np.sqrt(covariance[5, 5]) == pytest.approx(SIGMA_UM * 1e-3 * np.sqrt(12 / n) / width, rel=0.02)
    assert np.sqrt(covariance[2, 2]) * 1e3 == pytest.approx(SIGMA_UM / np.sqrt(1000), rel=0.02)


def test_correlation_is_worth_fewer_points() -> None:
    """A constant error over a sphere's points: variance σ²/N_eff with N_eff from the kernel's mean (closed form)."""
    rng = np.random.default_rng(1)
    points = rng.normal(size=(800, 3))
    points *= 3.0 / np.linalg.norm(points, axis=1, keepdims=True)
    made = model_of(Noise(0.0, 10.0, 0.5, "exponential"), np.array([0, 0, 1.0]), np.zeros(3), rng)
    k = made.correlated(points, points)
    mean_variance = k.mean()
    best = 1.0 / np.linalg.inv(k).sum()
    assert best <= mean_variance
    effective = (10e-3) ** 2 / mean_variance
    area = 4 * np.pi * 9.0
    assert effective == pytest.approx(area / (2 * np.pi * 0.5**2), rel=0.15)


def test_averaging_in_cells_loses_little(monkeypatch: pytest.MonkeyPatch) -> None:
    noise = Noise(8.0, 10.0, 0.6, "matern32")
    made = scene(Settings(seed=3, arch="single", bodies=1, edge_mm=0.16, noise=noise), draw_bodies(2, 1))
    assert 2500 < (made.label == 0).sum() < module.MOST_VERTICES
    dense = bound(made, 0)
    monkeypatch.setattr(module, "MOST_VERTICES", 1800)
    ratio = np.sqrt(np.diag(bound(made, 0)) / np.diag(dense))
    assert np.all(ratio < 1.03)
    assert np.all(ratio > 0.995)


def test_generalised_least_squares_reaches_the_bound() -> None:
    """ξ estimated from drawn noise by weighting with its covariance: mean of ξᵀ B⁻¹ ξ over M draws is 6 ± √(12/M)."""
    noise = Noise(6.0, 8.0, 0.7, "matern52")
    made = scene(Settings(seed=8, arch="single", bodies=1, edge_mm=0.3, noise=noise), draw_bodies(4, 1))
    pose = made.sites[0].scan_from_connection
    mine = made.label == 0
    points, normals = made.true_vertices[mine], made.true_normals[mine]
    here, facing = (points - pose[:3, 3]) @ pose[:3, :3], normals @ pose[:3, :3]
    jacobian = np.concatenate([facing, np.cross(here, facing)], axis=1)
    weight = np.linalg.inv(made.noise.covariance(points, normals))
    least = bound(made, 0)
    gain = np.linalg.solve(jacobian.T @ weight @ jacobian, jacobian.T @ weight)
    rng = np.random.default_rng(9)
    xi = np.array([gain @ made.noise.sample(points, normals, rng) for _ in range(300)])
    nees = np.einsum("ij,jk,ik->i", xi, np.linalg.inv(least), xi).mean()
    assert nees == pytest.approx(6.0, abs=4 * np.sqrt(12 / 300))


def test_more_noise_and_fewer_vertices_raise_the_bound() -> None:
    asked = Settings(seed=3, arch="single", bodies=1, edge_mm=0.25, noise=Noise(8.0, 8.0))
    bodies = draw_bodies(2, 1)
    plain = np.trace(bound(scene(asked, bodies), 0)[:3, :3])
    assert np.trace(bound(scene(replace(asked, noise=Noise(16.0, 16.0)), bodies), 0)[:3, :3]) == pytest.approx(
        4 * plain, rel=1e-6
    )
    assert np.trace(bound(scene(replace(asked, unseen=(0.6, 0.6)), bodies), 0)[:3, :3]) > 1.1 * plain


@pytest.mark.parametrize(("most", "rel"), [(module.FEW, 1e-9), (12, 0.05)])
def test_the_covariance_of_means_is_that_of_all_pairs(most: int, rel: float) -> None:
    """Mean over all pairs of two cells; exact where no cell has more than FEW points."""
    rng = np.random.default_rng(5)
    count = rng.integers(1, most + 1, 30)
    cell = rng.permutation(np.repeat(np.arange(30), count))
    middle, way = rng.uniform(-3.0, 3.0, (30, 3)), rng.normal(size=(30, 3))
    points = middle[cell] + rng.uniform(-0.1, 0.1, (len(cell), 3))
    normals = (way / np.linalg.norm(way, axis=1, keepdims=True))[cell]
    noise = model_of(Noise(6.0, 9.0, 0.8, "matern32", seam_um=5.0), np.array([0.0, 0.0, 1.0]), np.zeros(3), rng)
    share = np.equal.outer(np.arange(30), cell) / count[:, None]
    expected = share @ noise.covariance(points, normals) @ share.T
    found = covariance_of_means(noise, points, normals, cell)
    assert np.abs(found - expected).max() < rel * np.diag(expected).max()
    assert np.linalg.eigvalsh(found)[0] > 0.0
