"""Worked examples of the guides on uncertainty and conformity, through the functions that the commands call.

Sources: JCGM 100:2008 H.1–H.3, JCGM 101:2008 9.2 and 9.4, JCGM 102:2011, JCGM 106:2012, ISO 14253-1:2017.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from stylobate.uncertainty.bounds import length_95
from stylobate.uncertainty.budget import combined, propagated
from stylobate.uncertainty.field import Field, Patches
from stylobate.uncertainty.pose import solve
from stylobate.verdict.conformity import conformance_probability, decided, global_risks, guard_band


def test_gum_h1_end_gauge() -> None:
    """u_c = 32 nm; the contributions of α_S and θ vanish to first order because δα and δθ are zero."""
    length, alpha, theta = 50.000623e6, 11.5e-6, -0.1  # nm
    jacobian = np.array([[1.0, 1.0, 0.0, 0.0, -length * theta, -length * alpha]])
    u = np.array([25.0, 9.7, 1.2e-6, 0.41, 0.58e-6, 0.029])
    (variance,) = np.diag(propagated(jacobian, np.diag(u**2)))
    assert round(math.sqrt(variance)) == 32
    each = np.abs(jacobian[0] * u)
    assert np.round(each, 1).tolist() == [25.0, 9.7, 0.0, 0.0, 2.9, 16.7]  # 16.68; H.1 prints 16.6


def test_gum_h2_correlated_inputs() -> None:
    volt = [5.007, 4.994, 5.005, 4.990, 4.999]
    milliampere = [19.663, 19.639, 19.640, 19.685, 19.678]
    phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]
    data = np.array([volt, milliampere, phase])
    v, i, p = data.mean(axis=1)
    inputs = np.cov(data) / 5
    r, x, z = 1e3 * v * np.cos(p) / i, 1e3 * v * np.sin(p) / i, 1e3 * v / i
    assert (round(r, 3), round(x, 3), round(z, 3)) == (127.732, 219.847, 254.260)
    jacobian = np.array([[r / v, -r / i, -x], [x / v, -x / i, r], [z / v, -z / i, 0.0]])
    outputs = propagated(jacobian, inputs)
    u = np.sqrt(np.diag(outputs))
    assert u == pytest.approx([0.071, 0.295, 0.236], abs=0.001)
    assert outputs[0, 1] / (u[0] * u[1]) == pytest.approx(-0.588, abs=0.001)
    assert outputs[0, 2] / (u[0] * u[2]) == pytest.approx(-0.485, abs=0.001)
    assert outputs[1, 2] / (u[1] * u[2]) == pytest.approx(0.993, abs=0.001)


def test_gum_h3_line_and_its_prediction() -> None:
    """The weighted pose's own solver, on a line; without the covariance the prediction would be 0.0073, not 0.0041."""
    t = np.array([21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]) - 20.0
    b = np.array([-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160])
    matrix = np.stack([np.ones(11), t], axis=1)
    patches = Patches(np.stack([1e3 * t, 0 * t, 0 * t], axis=1), b, matrix, np.ones(11), np.zeros(11))
    found, _, _ = solve(patches, Field(1.0, 1e-9, 1.0, 0.5), np.zeros(2))
    s = math.sqrt(float(np.sum((b - matrix @ found) ** 2)) / 9)
    found, covariance, _ = solve(patches, Field(s, 1e-12, 1.0, 0.5), np.zeros(2))
    assert round(found[0], 4) == -0.1712
    assert round(found[1], 5) == 0.00218
    assert round(s, 4) == 0.0035
    u = np.sqrt(np.diag(covariance))
    assert (round(u[0], 4), round(u[1], 5)) == (0.0029, 0.00067)
    assert round(covariance[0, 1] / (u[0] * u[1]), 3) == -0.930
    at_30 = np.array([[1.0, 10.0]])
    assert round(math.sqrt(propagated(at_30, covariance)[0, 0]), 4) == 0.0041
    assert round(math.sqrt(propagated(at_30, np.diag(u**2))[0, 0]), 4) == 0.0073


@pytest.mark.parametrize(("dimensions", "factor"), [(1, 1.960), (2, 2.448), (3, 2.795)])
def test_jcgm_102_coverage_factors(dimensions: int, factor: float) -> None:
    assert length_95(np.eye(dimensions)) == pytest.approx(factor, abs=5e-4)


def test_jcgm_101_9_2_sum_of_four() -> None:
    """Four N(0, 1): 95 % within ±3.92."""
    whole = combined([np.eye(1)] * 4)
    assert whole[0, 0] == 4.0
    assert length_95(whole) == pytest.approx(3.92, abs=5e-3)


def test_jcgm_101_9_4_square_near_zero() -> None:
    """y = x₁² + x₂², u = 0.005, both zero: the 95 % interval is [0, 1.498e-4]; linearised it would have no width."""
    bound = length_95(np.eye(2) * 0.005**2) ** 2
    assert bound == pytest.approx(-2 * 0.005**2 * math.log(0.05), rel=1e-6)


@pytest.mark.parametrize(
    ("estimate", "u", "low", "high", "published"),
    [
        (-5.47, 0.05, -math.inf, -5.40, 0.92),
        (509.7, 8.6, 490.0, math.inf, 0.99),
        (13.6, 1.8, 12.5, 16.3, 0.66),
    ],
)
def test_jcgm_106_conformance_probability(estimate: float, u: float, low: float, high: float, published: float) -> None:
    assert round(conformance_probability(estimate, u, low, high), 2) == published


def test_jcgm_106_global_risks() -> None:
    """Resistors of 1500 ± 0.12 Ω, u 0.04: a guard band halves the consumer's risk and doubles the producer's."""
    guarded = global_risks(1500.0, 0.12, 0.04, (1499.8, 1500.2), (1499.82, 1500.18))
    assert guarded == pytest.approx((0.9044, 0.00988, 0.0690), abs=5e-5)
    simple = global_risks(1500.0, 0.12, 0.04, (1499.8, 1500.2), (1499.8, 1500.2))
    assert simple[1:] == pytest.approx((0.01894, 0.03721), abs=5e-6)


def test_iso_14253_guard_band() -> None:
    """Drawn in by 1.645 u, a one-sided limit is met with just 95 %: that proves it, anything nearer does not."""
    u, limit = 7.0, 100.0
    at = limit - guard_band(u)
    assert guard_band(1.0) == pytest.approx(1.645, abs=2e-4)
    assert decided(conformance_probability(at - 1e-6, u, high=limit))
    assert not decided(conformance_probability(at + 1e-3, u, high=limit))


@pytest.mark.parametrize(
    ("count", "correlation", "effective"), [(100, 0.5, 33.78), (100, 0.9, 5.814), (1000, 0.9, 53.13)]
)
def test_effective_sample_size(count: int, correlation: float, effective: float) -> None:
    """Mean of an AR(1) series (Vallejos & Osorio): the site's field, on a line, its white part none."""
    place = np.stack([np.arange(count, dtype=np.float64), np.zeros(count), np.zeros(count)], axis=1)
    patches = Patches(place, np.zeros(count), np.ones((count, 1)), np.ones(count), np.zeros(count))
    covariance = Field(1e-9, 1.0, -1.0 / math.log(correlation), 0.5).covariance(patches)
    assert count**2 / covariance.sum() == pytest.approx(effective, rel=2e-4)
