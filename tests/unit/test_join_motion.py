"""What shared surface says of a join is as true as is stated, where noise and drift are as the method has them."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import binom, chi2

from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.joining.cells import Cells, cells_of
from stylobate.joining.fine import Fit, cubes
from stylobate.joining.motion import motion_at
from stylobate.joining.noise import Noise, noise_of
from stylobate.uncertainty.bounds import length_95

NOISE = Noise(0.015**2, 0.012**2, 0.9)
POINTS = 12.0
LONG = 50.0


def crowns() -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) and normals of six half balls along an arch, about a millimetre apart."""
    k = np.arange(60)
    z, turn = 1.0 - (k + 0.5) / 60, k * 2.399963
    ball = np.column_stack([np.sqrt(1 - z**2) * np.cos(turn), np.sqrt(1 - z**2) * np.sin(turn), z])
    middles = np.array([[x, 8.0 - x**2 / 40.0, 4.0] for x in (-22.0, -15.0, -8.0, 8.0, 15.0, 22.0)])
    return (middles[:, None] + 3.0 * ball).reshape(-1, 3), np.tile(ball, (6, 1))


def cells(gap: FloatArray) -> Cells:
    at, normals = crowns()
    rows = np.concatenate([normals, np.cross(at, normals), np.ones((len(at), 1))], axis=1)
    return Cells(np.zeros(3), at, normals, rows, gap, np.full(len(at), POINTS), cubes(at + 2.5, 5.0)[0], 20)


SITES = np.array([rigid.pose(rigid.rotation_exp(np.array([0.1, -0.2, turn])), np.array([x, 8.0, 0.0]))
                  for x, turn in ((0.0, 0.4), (4.0, 2.0))])  # fmt: skip


def drawn(rng: np.random.Generator, shift_um: float, turn_deg: float) -> tuple[Cells, FloatArray]:
    """Cells after a small rigid motion, drift and noise, and the true ξ (2, 6) that brings each site back."""
    at, normals = crowns()
    feet = np.concatenate([at * [1.0, 1.0, 0.0], SITES[:, :3, 3]])
    root = np.linalg.cholesky(np.exp(-np.linalg.norm(feet[:, None] - feet, axis=2) / LONG) + 1e-9 * np.eye(len(feet)))
    drift = root @ rng.normal(size=(len(feet), 6)) * np.repeat([1e-3 * shift_um, np.radians(turn_deg)], 3)
    whole = rng.normal(size=6) * np.repeat([0.03, 0.002], 3)
    turn = whole[3:] + drift[:, 3:]
    points = np.concatenate([at, SITES[:, :3, 3]])
    shift = whole[:3] + np.cross(whole[3:], points) + drift[:, :3] + np.cross(drift[:, 3:], points - feet)
    noise = np.linalg.cholesky(NOISE.covariance(at, np.full(len(at), POINTS))) @ rng.normal(size=len(at))
    gap = noise - np.einsum("ij,ij->i", normals, shift[:-2])
    back = [
        np.concatenate([site[:3, :3].T @ shift[k], site[:3, :3].T @ turn[k]])
        for k, site in zip((-2, -1), SITES, strict=True)
    ]
    return cells(gap), np.array(back)


@pytest.mark.parametrize(("shift_um", "turn_deg"), [(0.0, 0.0), (20.0, 0.1)])
def test_bounds_of_shift_and_axis_hold(shift_um: float, turn_deg: float) -> None:
    rng = np.random.default_rng(9_410_000)
    draws, held = 30, np.zeros((2, 2))
    for _ in range(draws):
        seen, truth = drawn(rng, shift_um, turn_deg)
        found = motion_at(seen, SITES)
        for k, xi in enumerate(truth):
            off = xi - found.mean[6 * k : 6 * k + 6]
            for n, at in enumerate((slice(0, 3), slice(3, 5))):
                block = found.covariance[6 * k : 6 * k + 6, 6 * k : 6 * k + 6][at, at]
                held[k, n] += np.linalg.norm(off[at]) <= length_95(block)
    assert (held >= binom.ppf(0.005, draws, 0.95)).all()


def test_bounds_tell_how_much_drift_there_is() -> None:
    rng = np.random.default_rng(9_420_000)
    stated = [np.mean([motion_at(drawn(rng, *size)[0], SITES).covariance[[0, 1, 2], [0, 1, 2]].sum() for _ in range(4)])
              for size in ((0.0, 0.0), (60.0, 0.5))]  # fmt: skip
    assert stated[1] > 4.0 * stated[0]


def test_the_noise_is_what_was_drawn() -> None:
    rng = np.random.default_rng(9_430_000)
    x, y = np.meshgrid(np.arange(25.0), np.arange(20.0))
    at = np.column_stack([x.ravel(), y.ravel(), 2.0 * np.sin(x.ravel()) * np.cos(y.ravel())])
    slope = 2.0 * np.column_stack([-np.cos(at[:, 0]) * np.cos(at[:, 1]), np.sin(at[:, 0]) * np.sin(at[:, 1])])
    normals = np.column_stack([slope, np.ones(len(at))])
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    rows = np.concatenate([normals, np.cross(at, normals), np.ones((len(at), 1))], axis=1)
    one, patch = np.full(len(at), POINTS), cubes(at * [1.0, 1.0, 0.0], 5.0)[0]
    true = NOISE.covariance(at, one)
    root = np.linalg.cholesky(true)
    found = [noise_of(Cells(np.zeros(3), at, normals, rows, root @ rng.normal(size=len(at)), one, patch, 20))
             for _ in range(6)]  # fmt: skip
    free = 6 * (len(at) - 20 * 7) / 4.0  # a quarter: cells hang together
    low, high = chi2.ppf([0.001, 0.999], free) / free
    stated = np.mean([np.diag(noise.covariance(at, one)).mean() for noise in found])
    assert low < stated / np.diag(true).mean() < high
    assert 0.6 < np.median([noise.length for noise in found]) / NOISE.length < 1.6


def test_cells_keep_what_the_points_say() -> None:
    rng = np.random.default_rng(9_440_000)
    at = rng.uniform(-6.0, 6.0, (4000, 3)) * [3.0, 1.0, 0.0]
    normal = np.tile([0.0, 0.0, 1.0], (len(at), 1))
    gap = 0.02 + 0.001 * at[:, 0]
    found = cells_of(Fit(np.eye(4), at, normal, gap, np.ones(len(at)), 0.01))
    assert np.allclose(found.gap, 0.02 + 0.001 * found.at[:, 0])
    assert found.weight.sum() > 0.99 * len(at)
    full = np.bincount(found.patch, found.weight) > 60.0
    assert full.sum() <= found.places <= len(np.unique(found.patch))
