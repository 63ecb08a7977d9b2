"""Stages of the measurement against brute force and geometry."""

from __future__ import annotations

from itertools import permutations

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.spatial.distance import cdist
from scipy.special import gamma, kv
from scipy.stats import chi2, multivariate_normal

from stylobate.core import rigid
from stylobate.core.arch import order_along
from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray
from stylobate.fit.descend import rows
from stylobate.fit.edges import REACH, SHAPES, likeliest_profile, profile_shapes
from stylobate.simulate import draw_bodies
from stylobate.uncertainty.field import Field, Patches
from stylobate.uncertainty.likelihood import estimate


def test_rows_are_the_derivative_of_the_distance() -> None:
    """d(exp(ξ)·p) − d(p) = [g, p × g]·ξ + O(|ξ|²), through the exact distance to a drawn body."""
    rng = np.random.default_rng(11)
    body = draw_bodies(11, 1)[0].surface
    face = rng.choice(len(body.faces), 300, p=body.face_areas() / body.face_areas().sum())
    normal = body.corner_products()[face]
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    points = body.vertices[body.faces[face]].mean(axis=1) + 0.08 * normal
    tree = SurfaceTree.of(body)
    here = tree.closest(points, 1.0)
    for k in range(6):
        xi = np.zeros(6)
        xi[k] = 2e-5
        moved = rigid.exp(xi)
        there = tree.closest(points @ moved[:3, :3].T + moved[:3, 3], 1.0)
        change = rows(points, here.gradient) @ xi
        assert np.abs(there.distance - here.distance - change).max() < 1e-8
        assert np.abs(change).max() > 1e-6


def matern(distance: FloatArray, length: float, nu: float) -> FloatArray:
    """Matérn correlation by its Bessel function (Rasmussen & Williams 2006, eq. 4.14)."""
    t = np.sqrt(2.0 * nu) * np.maximum(distance, 1e-9) / length
    return np.asarray(2.0 ** (1.0 - nu) / gamma(nu) * t**nu * kv(nu, t))


def field_sample(nu: float) -> Patches:
    """Residuals of 80 patches drawn from a known field on a bent strip; 5 to 20 points a patch, no spread within."""
    rng = np.random.default_rng(int(10 * nu))
    u, v = rng.uniform(0, 4, 80), rng.uniform(0, 3, 80)
    centre = np.stack([2.4 * np.cos(u / 2.4), 2.4 * np.sin(u / 2.4), v], axis=1)
    count = rng.integers(5, 20, 80).astype(np.float64)
    covariance = 0.010**2 * matern(cdist(centre, centre), 0.8, nu) + np.diag(0.012**2 / count)
    residual = np.linalg.cholesky(covariance) @ rng.standard_normal(80)
    return Patches(centre, residual, np.zeros((80, 6)), count, np.zeros(80))


def dense(patches: Patches, white: float, correlated: float, length: float, nu: float) -> float:
    """Minus twice the log density of the residuals, by SciPy's multivariate normal."""
    apart = cdist(patches.centre, patches.centre)
    covariance = correlated**2 * matern(apart, length, nu) + np.diag(white**2 / patches.count)
    return -2.0 * float(multivariate_normal.logpdf(patches.residual, cov=covariance))


def test_the_field_is_about_as_likely_as_any_that_a_dense_search_finds() -> None:
    patches = field_sample(1.5)
    found = estimate(patches)
    value = dense(patches, found.white_sd, found.correlated_sd, found.length, found.smoothness)

    def likeliest(smoothness: float) -> float:
        def value_at(x: FloatArray) -> float:
            white, correlated, length = np.exp(x)
            return dense(patches, white, correlated, length, smoothness)

        return float(minimize(value_at, np.log([0.012, 0.01, 0.8]), method="Nelder-Mead").fun)

    best = min(likeliest(other) for other in (0.5, 1.5, 2.5))
    # Inside the region that holds the true three parameters half of the time: the estimate sees the residuals in
    # blocks, and knows scanners beforehand.
    assert value < best + chi2.ppf(0.5, 3)
    assert value > best - 1e-6


@pytest.mark.parametrize("nu", [0.5, 1.5, 2.5])
def test_the_covariance_of_a_field_is_that_of_its_kernel(nu: float) -> None:
    patches = field_sample(nu)
    expected = 0.02**2 * matern(cdist(patches.centre, patches.centre), 0.6, nu) + np.diag(0.01**2 / patches.count)
    assert np.abs(Field(0.01, 0.02, 0.6, nu).covariance(patches) - expected).max() < 1e-9


@pytest.mark.parametrize("sign", [1.0, -1.0])
@pytest.mark.parametrize(("turn_deg", "missed"), [(40.0, 0.1), (90.0, 0.1), (120.0, 0.3)])
def test_a_rounded_edge_is_found_as_the_arc_that_touches_both_faces(
    turn_deg: float, missed: float, sign: float
) -> None:
    """Points of the arc itself: distance from the edge along the face, and height over it; walls stay as they are."""
    turn, radius = np.radians(turn_deg), 0.1
    reach = radius * np.tan(turn / 2)
    rng = np.random.default_rng(int(turn_deg))
    distance, up = rng.uniform(0.0, 0.6, 4000), np.tile([1.0, 0.0], 2000)
    inside = np.clip(reach - distance, 0.0, radius)
    height = np.where(up > 0.0, -sign * (radius - np.sqrt(radius**2 - inside**2)), 0.0)  # a hollow edge: mirrored
    shapes = profile_shapes(np.where(distance < REACH, distance, np.inf), np.full(4000, sign * turn), up)
    left = height - shapes @ likeliest_profile(shapes, height)
    assert np.abs(height).max() > 0.003
    assert np.abs(left[distance > 0.05]).max() < missed * np.abs(height).max()
    assert np.abs(left[up == 0.0]).max() < 1e-12


def test_the_profile_of_ends_is_not_that_of_walls() -> None:
    """Linear between knots, in proportion to the edge's turn: the hats sum to one up to the last knot within reach."""
    distance = np.array([0.0, 0.07, 0.25, 0.375, 0.5])
    ends, walls = (profile_shapes(distance, np.full(5, np.pi / 2), np.full(5, up)) for up in (1.0, 0.0))
    assert ends[:, : SHAPES // 2] == pytest.approx(walls[:, SHAPES // 2 :])
    assert not ends[:, SHAPES // 2 :].any()
    assert ends.sum(axis=1) == pytest.approx([1.0, 1.0, 1.0, 0.5, 0.0])
    assert profile_shapes(distance, np.full(5, -np.pi / 4), np.ones(5)) == pytest.approx(-0.5 * ends)


@pytest.mark.parametrize("count", [3, 5, 7])
def test_sites_follow_the_shortest_path(count: int) -> None:
    rng = np.random.default_rng(count)
    for _ in range(4):
        centres, axes = rng.normal(size=(count, 3)) * [20.0, 10.0, 3.0], np.tile([0.0, 0.0, 1.0], (count, 1))

        def length(path: tuple[int, ...] | list[int], at: FloatArray = centres) -> float:
            return float(np.linalg.norm(np.diff(at[list(path)], axis=0), axis=1).sum())

        path = order_along(centres, axes)
        assert sorted(path) == list(range(count))
        assert length(path) == pytest.approx(min(length(p) for p in permutations(range(count))), rel=1e-12)
        line = centres[path] - centres.mean(axis=0)
        assert np.sum(np.cross(line[:-1], line[1:])[:, 2]) >= 0.0  # counter-clockwise against the axes
