"""Seating of a rigid frame against closed forms and against a generic solver.

Closed forms: one-sided minimax of a plane over points is twice the Chebyshev residual (offset of the same plane);
a square, three in line and any three points have it in numbers; two seats at a wrong distance share the error.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest
from scipy.optimize import linprog

from stylobate.core.rigid import exp
from stylobate.core.types import FloatArray, LongArray
from stylobate.several import seat
from stylobate.several.seating.minimax import CAPPED, COUNTED, FREE, least_largest_gap
from stylobate.several.seating.rest import _ground, _linear, rests
from tests.unit.several_making import anywhere, arch, record, upright

SQUARE = [(0, 0), (10, 0), (10, 10), (0, 10)]
LINE = [(0, 0), (10, 0), (20, 0)]
RIM_POINTS = 1440


def raised(plan: Sequence[tuple[float, float]], heights_um: Sequence[float]) -> list[FloatArray]:
    return upright([(x, y, z * 1e-3) for (x, y), z in zip(plan, heights_um, strict=True)])


@pytest.mark.parametrize(
    ("plan", "heights", "gaps"),
    [
        (SQUARE, (100, 0, 0, 0), (0, 50, 0, 50)),
        (SQUARE, (100, -100, 100, -100), (0, 200, 0, 200)),
        (SQUARE, (100, 0, 100, 0), (0, 100, 0, 100)),
        (LINE, (0, 90, 0), (90, 0, 90)),
        (LINE, (0, -90, 0), (0, 90, 0)),
        ([(0, 0), (10, 0), (3, 9)], (100, 30, -50), (0, 0, 0)),
        ([(0, 0), (14, 0)], (100, -40), (0, 0)),
    ],
)
def test_gaps_of_centres_in_closed_form(
    plan: list[tuple[float, float]], heights: tuple[float, ...], gaps: tuple[float, ...]
) -> None:
    motion = anywhere(np.random.default_rng(1))
    on = record([motion @ p for p in raised(plan, heights)], "b")
    found = seat(record(raised(plan, [0] * len(plan))), on, rim_diameter=0.0)
    by_hand = np.array(gaps, dtype=float)
    assert np.array([site.gap_um for site in found.sites]) == pytest.approx(by_hand, abs=0.02)
    assert found.worst.gap_um == pytest.approx(by_hand.max(), abs=0.02)


@pytest.mark.parametrize("error_um", [10.0, 300.0])
def test_two_seats_share_a_wrong_distance(error_um: float) -> None:
    apart = [(0.0, 0.0, 0.0), (14.0 + error_um * 1e-3, 0.0, 0.0)]
    found = seat(record(upright(apart)), record(upright([(0, 0, 0), (14, 0, 0)]), "b"))
    assert [site.side_um for site in found.sites] == pytest.approx([error_um / 2] * 2, abs=1e-3)
    assert found.worst.gap_um == pytest.approx(0.0, abs=1e-3)


@pytest.mark.parametrize("count", [3, 4, 6, 10])
def test_a_scale_error_on_a_regular_polygon_puts_every_seat_off_by_its_share_of_the_radius(count: int) -> None:
    radius, scale = 24.0, 0.002
    angles = 2 * np.pi * np.arange(count) / count
    ring = np.stack([radius * np.cos(angles), radius * np.sin(angles), 0 * angles], axis=1)
    found = seat(record(upright(ring * (1 + scale))), record(upright(ring), "b"))
    assert [site.side_um for site in found.sites] == pytest.approx([1e3 * radius * scale] * count, abs=1e-3)


def test_the_law_of_two_seats() -> None:
    """Independent errors of sd s along the line put each seat 0.707 s off its axis (sd)."""
    s, draws = 0.02, 20_000
    rng = np.random.default_rng(2)
    implants = np.array([upright([(0, 0, 0), (20, 0, 0)])] * draws)
    implants[:, :, 0, 3] += rng.normal(0, s, (draws, 2))
    rest = rests(np.array(upright([(0, 0, 0), (20, 0, 0)])), implants, np.full(2, 4.2))
    rms = np.sqrt(np.mean(rest.side**2, axis=0))
    assert rms == pytest.approx([s / np.sqrt(2)] * 2, rel=4 / np.sqrt(2 * draws))


def test_a_seat_that_leans_gapes_by_the_platform_times_the_tangent() -> None:
    """Edge gap = diameter · tan(angle): the frame's own seats lean, the others hold it level."""
    lean = np.radians(0.4)
    plan = raised(SQUARE, [0] * 4)
    leaning = [plan[0] @ exp(np.array([0, 0, 0, lean, 0, 0])), *plan[1:]]
    gap = rests(np.array(plan), np.array([leaning]), np.array([4.1, 0, 0, 0])).gap[0]
    free = rests(np.array(plan), np.array([leaning]), np.array([4.1, 4.1, 4.1, 4.1])).gap[0]
    assert 1e3 * gap.max() < 1e3 * 4.1 * np.tan(lean) < 28.7
    assert free.max() >= gap.max() - 1e-6


def highs(height: FloatArray, lean: FloatArray, radius: FloatArray, role: LongArray, cap: float) -> float:
    """Largest counted gap by HiGHS, in µm inside; rims as cutting planes, added until none is violated by 1e-4 µm."""
    rows, bounds = [], []

    def add(site: int, direction: FloatArray) -> None:
        swing = radius[site] * (direction @ lean[site])
        rows.append([*-(height[site] - swing)[1:], 0.0])
        bounds.append(1e3 * (height[site] - swing)[0])
        if role[site] != FREE:
            rows.append([*(height[site] + swing)[1:], -1.0 if role[site] == COUNTED else 0.0])
            bounds.append(1e3 * ((cap if role[site] == CAPPED else 0.0) - (height[site] + swing)[0]))

    for site in range(len(radius)):
        for angle in np.arange(12) * np.pi / 6:
            add(site, np.array([np.cos(angle), np.sin(angle)]))
    for _ in range(60):
        solved = linprog([0, 0, 0, 1], np.array(rows), np.array(bounds), bounds=[(None, None)] * 4, method="highs",
                         options={"primal_feasibility_tolerance": 1e-9})  # fmt: skip
        x = solved.x
        slopes = lean[:, :, 0] * 1e3 + lean[:, :, 1:] @ x[:3]
        middle = height[:, 0] * 1e3 + height[:, 1:] @ x[:3]
        swing = radius * np.linalg.norm(slopes, axis=1)
        top = np.where(role == COUNTED, x[3], np.where(role == CAPPED, 1e3 * cap, np.inf))
        wrong = np.flatnonzero((middle - swing < -1e-4) | (middle + swing > top + 1e-4))
        if not len(wrong):
            return float(x[3])
        for site in map(int, wrong):
            add(site, slopes[site] / np.linalg.norm(slopes[site]))
    raise AssertionError("cutting planes did not settle")


@pytest.mark.parametrize("seed", range(40))
def test_random_cases_agree_with_a_generic_solver(seed: int) -> None:
    rng = np.random.default_rng(seed)
    count, rim, sd = int(rng.integers(2, 11)), float(rng.choice([0.0, 3.5, 4.2, 6.0])), 10 ** rng.uniform(-3, -0.6)
    frame = np.array(arch(count, rng))
    implants = np.array([[p @ exp(rng.normal(size=6) * ([sd] * 3 + [sd / 8] * 3)) for p in frame]])
    radius = np.full(count, rim / 2)
    height, lean = (values[0] for values in _linear(frame[None], _ground(implants, radius)))
    tight = int(rng.integers(count))
    every, only = np.full(count, COUNTED), np.full(count, FREE)
    only[tight] = COUNTED
    for role in (every, only):
        x, reached = least_largest_gap(height, lean, radius, role, 0.0)
        assert reached
        assert 1e3 * x[3] == pytest.approx(highs(height, lean, radius, role, 0.0), abs=0.01)
    cap = x[3] + 1e-3
    others = np.full(count, COUNTED)
    others[tight] = CAPPED
    x, reached = least_largest_gap(height, lean, radius, others, cap)
    assert reached
    assert 1e3 * x[3] == pytest.approx(highs(height, lean, radius, others, cap), abs=0.01)


@pytest.mark.parametrize("rim", [0.0, 4.2])
def test_at_rest_nothing_is_penetrated_and_the_gap_is_that_of_the_rim_points(rim: float) -> None:
    rng = np.random.default_rng(9)
    frame = np.array(arch(5, rng))
    implants = np.array([[p @ exp(rng.normal(size=6) * ([0.05] * 3 + [0.006] * 3)) for p in frame] for _ in range(20)])
    rest = rests(frame, implants, np.full(5, rim))
    angle = np.arange(RIM_POINTS) * 2 * np.pi / RIM_POINTS
    circle = rim / 2 * np.stack([np.cos(angle), np.sin(angle), 0 * angle], axis=1)
    seats = rest.scan_from_frame[:, None] @ frame
    for d in range(20):
        for k in range(5):
            points = circle @ implants[d, k, :3, :3].T + implants[d, k, :3, 3]
            normal, axis = seats[d, k, :3, 2], implants[d, k, :3, 2]
            along = (seats[d, k, :3, 3] - points) @ normal / (axis @ normal)
            assert along.min() > -1e-5
            assert along.max() == pytest.approx(rest.gap[d, k], abs=1e-5)
