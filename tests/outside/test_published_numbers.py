"""Published values through the functions that measurements rest on."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm

from stylobate.core import rigid
from stylobate.fit.descend import MAD_TO_SD, TUKEY, robust_sd, tukey
from stylobate.uncertainty.field import Field, Patches
from stylobate.uncertainty.pose import solve

# NIST Statistical Reference Datasets, linear regression, "Norris": 36 pairs and the certified fit.
NORRIS_Y = """0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7
228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2"""
NORRIS_X = """0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6 556.0
228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5"""
B0, B0_SD, B1, B1_SD = -0.262323073774029, 0.232818234301152, 1.00211681802045, 0.000429796848199937
RESIDUAL_SD = 0.884796396144373


def line(columns: np.ndarray, y: np.ndarray) -> Patches:
    n = len(y)
    far_apart = np.arange(3 * n, dtype=np.float64).reshape(n, 3) * 1e3
    return Patches(far_apart, y, columns, np.ones(n), np.zeros(n))


def test_norris_through_the_weighted_fit() -> None:
    """Values and standard deviations of NIST's certified line, given its residual standard deviation."""
    x, y = (np.array([float(word) for word in text.split()]) for text in (NORRIS_X, NORRIS_Y))
    fit, covariance, _ = solve(
        line(np.column_stack([np.ones(36), x]), y), Field(RESIDUAL_SD, 1e-9, 1.0, 0.5), np.zeros(2)
    )
    assert fit == pytest.approx([B0, B1], rel=1e-9)
    assert np.sqrt(np.diag(covariance)) == pytest.approx([B0_SD, B1_SD], rel=1e-9)
    left = y - B0 - B1 * x
    assert np.sqrt(left @ left / 34) == pytest.approx(RESIDUAL_SD, rel=1e-9)


@pytest.mark.parametrize("base", [1.0, 1_000_000.0, 10_000_000.0])
def test_numacc_through_the_weighted_fit(base: float) -> None:
    """NIST NumAcc2, 3 and 4: 1,001 values about base + 0.2, mean exact, standard deviation 0.1."""
    y = base + np.concatenate([[0.2], np.tile([0.1, 0.3], 500)])
    mean, covariance, _ = solve(line(np.ones((1001, 1)), y), Field(0.1, 1e-9, 1.0, 0.5), np.zeros(1))
    assert mean[0] == pytest.approx(base + 0.2, rel=1e-12)
    assert np.sqrt(covariance[0, 0]) == pytest.approx(0.1 / np.sqrt(1001), rel=1e-9)


def test_the_loss_has_the_efficiency_it_is_known_for() -> None:
    """Tukey's biweight at c = 4.685 is 95 % efficient at the normal (Huber & Ronchetti 2009): (E ψ')²/E ψ²."""
    x = np.linspace(-9.0, 9.0, 200_001)
    density = norm.pdf(x)
    psi = x * tukey(x, TUKEY)
    slope = np.gradient(psi, x)
    efficiency = np.trapezoid(slope * density, x) ** 2 / np.trapezoid(psi**2 * density, x)
    assert efficiency == pytest.approx(0.95, abs=2e-4)
    narrow = x * tukey(x, 3.0)
    worse = np.trapezoid(np.gradient(narrow, x) * density, x) ** 2 / np.trapezoid(narrow**2 * density, x)
    assert worse < 0.8


def test_the_robust_standard_deviation_is_that_of_normal_residuals() -> None:
    """1/Φ⁻¹(3/4) = 1.4826, and a third of wild values moves it little."""
    assert pytest.approx(1.0 / norm.ppf(0.75), rel=1e-4) == MAD_TO_SD
    normal = 0.01 * norm.ppf((np.arange(9999) + 0.5) / 9999)
    assert robust_sd(normal) == pytest.approx(0.01, rel=1e-3)
    assert robust_sd(np.concatenate([normal, np.full(3000, 5.0)])) < 0.015


def test_rotation_angles() -> None:
    """Rz(1°) has trace 2.9996953903; near zero the angle keeps its digits, where arccos of the trace has none left."""
    one = rigid.rotation_exp(np.array([0.0, 0.0, np.radians(1.0)]))
    assert np.trace(one) == pytest.approx(2.9996953903, abs=1e-10)
    assert np.linalg.norm(rigid.rotation_log(one)) == pytest.approx(np.radians(1.0), rel=1e-13)
    tiny = rigid.rotation_exp(np.array([3e-10, 0.0, 4e-10]))
    assert np.linalg.norm(rigid.rotation_log(tiny)) == pytest.approx(5e-10, rel=1e-6)
