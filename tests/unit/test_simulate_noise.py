"""Noise as drawn against noise as asked for; tolerances are sampling errors of the seeds used."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.types import FloatArray
from stylobate.simulate.noise import DEGREES_OF_FREEDOM, NoiseModel, kernel_matrix, model_of, wave_sum, waves
from stylobate.simulate.settings import KERNELS, Noise

UP = np.array([0.0, 0.0, 1.0])
DRAWS = 1500


def model(noise: Noise) -> NoiseModel:
    return model_of(noise, UP, np.zeros(3), np.random.default_rng(3))


def closed_form(kernel: str, distance: FloatArray, length: float) -> FloatArray:
    """Rasmussen & Williams 2006, 4.2: written out once more, apart from the code tested."""
    r = distance / length
    forms = {
        "exponential": np.exp(-r),
        "matern32": (1 + np.sqrt(3) * r) * np.exp(-np.sqrt(3) * r),
        "matern52": (1 + np.sqrt(5) * r + 5 * r**2 / 3) * np.exp(-np.sqrt(5) * r),
        "squared-exponential": np.exp(-(r**2) / 2),
    }
    return np.asarray(forms[kernel])


@pytest.mark.parametrize("kernel", KERNELS)
def test_kernel_matrix_is_the_closed_form(kernel: str) -> None:
    points = np.random.default_rng(0).uniform(0, 3, (40, 3))
    distance = np.linalg.norm(points[:, None] - points, axis=2)
    got = kernel_matrix(points, points, 0.7, DEGREES_OF_FREEDOM.get(kernel, 0))
    assert np.allclose(got, closed_form(kernel, distance, 0.7), rtol=1e-12, atol=1e-15)


@pytest.mark.parametrize("kernel", KERNELS)
def test_waves_have_the_kernel_at_every_distance(kernel: str) -> None:
    """Correlation over many draws at distances from a tenth to four lengths: within 4 standard errors 1/√draws."""
    length = 0.6
    distance = length * np.array([0.0, 0.1, 0.3, 0.7, 1.5, 4.0])
    points = distance[:, None] * np.array([0.6, 0.0, 0.8]) + np.array([5.0, -3.0, 2.0])
    rng = np.random.default_rng(17)
    draws = np.array([wave_sum(points, *waves(kernel, length, rng)) for _ in range(DRAWS)])
    products = (draws * draws[:, :1]).mean(axis=0)
    error = 4 * np.sqrt((1 + closed_form(kernel, distance, length) ** 2) / DRAWS)
    assert np.all(np.abs(products - closed_form(kernel, distance, length)) < error)
    assert np.all(np.abs(draws.mean(axis=0)) < 4 / np.sqrt(DRAWS))


def test_wave_sum_is_a_sum_of_cosines() -> None:
    rng = np.random.default_rng(1)
    points, vectors, phases = rng.normal(0, 30, (50, 3)), rng.normal(0, 4, (64, 3)), rng.uniform(0, 6.28, 64)
    exact = np.sqrt(2 / 64) * np.cos(points @ vectors.T + phases).sum(axis=1)
    assert np.abs(wave_sum(points, vectors, phases) - exact).max() < 1e-4


@pytest.mark.parametrize(
    "noise",
    [
        Noise(8.0, 0.0),
        Noise(8.0, 0.0, tails="t3"),
        Noise(4.0, 12.0, 0.5, "exponential"),
        Noise(4.0, 6.0, 1.0, "matern52", view_share=2.0),
        Noise(3.0, 4.0, 1.0, "squared-exponential", seam_um=15.0),
    ],
)
def test_draws_have_the_stated_covariance(noise: Noise) -> None:
    """Every entry within 5 standard errors of the entry stated (for t3: variance of a variance is not finite)."""
    rng = np.random.default_rng(23)
    points = rng.uniform(-1, 1, (12, 3))
    normals = rng.normal(size=(12, 3))
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    made = model(noise)
    stated = made.covariance(points, normals)
    draws = np.array([made.sample(points, normals, rng) for _ in range(DRAWS)])
    got = draws.T @ draws / DRAWS
    error = 5 * np.sqrt((np.outer(np.diag(stated), np.diag(stated)) + stated**2) / DRAWS)
    if noise.tails == "t3":
        off = ~np.eye(12, dtype=bool)
        assert np.all(np.abs(got - stated)[off] < 1.3 * error[off])
        middle = np.median(np.abs(draws))
        assert middle == pytest.approx(0.7649 / np.sqrt(3) * 8e-3, rel=0.05)
        assert (np.abs(draws) > 4 * 8e-3).mean() > 20 * 6.3e-5
    else:
        assert np.all(np.abs(got - stated) < error)


def test_view_share_makes_steep_surfaces_noisier() -> None:
    sd = model(Noise(10.0, 0.0, view_share=3.0)).white_sd(np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0]]))
    assert np.allclose(sd, [0.010, 0.040])


def test_seams_shift_whole_views() -> None:
    """Shares of the views sum to one: a shift common to all moves every point by that shift along its normal."""
    rng = np.random.default_rng(2)
    points, normals = rng.uniform(-3, 3, (30, 3)), rng.normal(size=(30, 3))
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    made = model(Noise(seam_um=5.0))
    shift = np.array([0.3, -0.2, 0.5])
    assert np.allclose(made.seams(points, normals) @ np.tile(shift, len(made.views)), normals @ shift)
