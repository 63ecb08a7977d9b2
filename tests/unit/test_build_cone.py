"""Cones of directions against brute force."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import minimize

from stylobate.build.cone import angles_between, best_path, common_direction, smallest_cone, unit
from stylobate.core.types import FloatArray


def drawn(rng: np.random.Generator, count: int, spread_deg: float) -> FloatArray:
    middle = unit(rng.standard_normal(3))
    return unit(middle + np.tan(np.radians(spread_deg)) * rng.standard_normal((count, 3)))


def least_worst(axes: FloatArray, half_angles: FloatArray, start: FloatArray) -> float:
    """Largest of ∠(d, axis) − half-angle, made least over d by a general-purpose optimiser over the tangent plane."""
    basis = np.linalg.svd(start[None])[2][1:]

    def worst(x: FloatArray) -> float:
        return float(np.max(angles_between(unit(start + x @ basis), axes) - half_angles))

    options = {"xatol": 1e-12, "fatol": 1e-13, "maxiter": 4000}
    return min(
        float(minimize(worst, x0, method="Nelder-Mead", options=options).fun) for x0 in ([0, 0], [0.1, 0], [0, 0.1])
    )


@pytest.mark.parametrize("count", [1, 2, 3, 5, 9])
def test_the_smallest_cone_is_the_optimisers(count: int) -> None:
    rng = np.random.default_rng(count)
    for _ in range(4):
        axes = drawn(rng, count, 20.0)
        cone = smallest_cone(axes)
        assert angles_between(cone.axis, axes).max() == pytest.approx(cone.radius, abs=1e-9)
        assert cone.radius == pytest.approx(least_worst(axes, np.zeros(count), cone.axis), abs=1e-7)


def test_a_cone_stays_the_same_when_axes_inside_it_or_copies_are_added() -> None:
    rng = np.random.default_rng(3)
    axes = drawn(rng, 4, 15.0)
    cone = smallest_cone(axes)
    inside = unit(axes.sum(axis=0))
    assert smallest_cone(np.concatenate([axes, axes, inside[None]])).radius == pytest.approx(cone.radius, abs=1e-12)


def test_parallel_axes_have_no_spread_and_opposite_ones_a_half_space() -> None:
    up = np.array([[0.0, 0.0, 1.0], [0.0, 0.0, 1.0]])
    assert smallest_cone(up).radius == 0.0
    assert smallest_cone(np.array([up[0], -up[0]])).radius == pytest.approx(np.pi / 2)
    nearly = unit(np.array([[0.0, 0.0, 1.0], [1e-8, 0.0, 1.0]]))
    assert smallest_cone(nearly).radius == pytest.approx(5e-9, rel=1e-6)


@pytest.mark.parametrize("seed", range(6))
def test_the_best_path_over_unlike_seats_is_the_optimisers(seed: int) -> None:
    rng = np.random.default_rng([seed, 7])
    axes = drawn(rng, 5, 12.0)
    half = np.radians(rng.uniform(4.0, 20.0, 5))
    path = best_path(axes, half)
    assert path.margin == pytest.approx(-least_worst(axes, half, path.direction), abs=1e-6)


@pytest.mark.parametrize("seed", range(40))
def test_a_common_direction_is_found_exactly_when_the_optimiser_finds_one(seed: int) -> None:
    rng = np.random.default_rng([seed, 11])
    axes = drawn(rng, 4, 14.0)
    radii = np.radians(rng.uniform(8.0, 26.0, 4))
    found = common_direction(axes, radii)
    slack = -least_worst(axes, radii, smallest_cone(axes).axis)
    assert abs(slack) > 1e-6
    assert (found is not None) == (slack > 0.0)
    if found is not None:
        assert np.all(angles_between(found, axes) <= radii + 1e-8)
