"""The test of an axis by the points around it, against the same said plainly, one point after the other."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.find.template import PROFILE_BAND, PROFILE_CELL, template_of
from stylobate.find.vote import NEAR, agreement, oriented
from stylobate.simulate import draw_bodies, draw_body

TEMPLATE = template_of(draw_bodies(77, 1)[0])
FLAT = TEMPLATE.profile.reshape(-1, 3)
LAST = TEMPLATE.profile.shape[0] - 1.0, TEMPLATE.profile.shape[1] - 2.0
LOW = TEMPLATE.height_low - PROFILE_BAND
ASKED = {4: 1, 7: 2, 15: 4, 23: 6}  # after so many points (counted from 0) so many must be on the profile


def plain(axis: np.ndarray, foot: np.ndarray, points: np.ndarray, normals: np.ndarray, beyond: float) -> float:
    table = TEMPLATE.profile[:-1, 1:-1]
    near = inside = 0
    for k, (point, normal) in enumerate(zip(points, normals, strict=True)):
        away = point - foot
        z = away @ axis
        across = away - z * axis
        r = float(np.linalg.norm(across))
        i, j = int(r / PROFILE_CELL), int(np.floor((z - LOW) / PROFILE_CELL))
        if i < table.shape[0] and 0 <= j < table.shape[1]:
            d, along_r, along_z = (float(x) for x in table[i, j])
            facing = (normal @ across) / max(r, 1e-9) * along_r + (normal @ axis) * along_z
            near += abs(d) < NEAR and facing > 0.85
            inside += d < -NEAR
        if beyond >= 0.0 and near < ASKED.get(k, 0):
            return 0.0
    share = (near - inside) / max(len(points), 1)
    return share if beyond < 0.0 or share > beyond else 0.0


@pytest.mark.parametrize("count", [0, 3, 5, 8, 12, 23, 24, 48, 101])
def test_agreement_is_that_of_points_one_by_one(count: int) -> None:
    rng = np.random.default_rng(count)
    kept = 0
    for _ in range(60):
        which = rng.integers(0, len(TEMPLATE.samples), count)
        points = TEMPLATE.samples[which, :3] + rng.normal(0.0, 0.1, (count, 3))
        normals = np.ascontiguousarray(TEMPLATE.samples[which, 3:])
        stray = rng.random(count) < rng.choice([0.0, 0.4, 0.9])
        points[stray] += rng.normal(0.0, 3.0, (int(stray.sum()), 3))
        axis = np.array([*rng.normal(0.0, 0.05, 2), 1.0])
        axis, foot = axis / np.linalg.norm(axis), rng.normal(0.0, 0.1, 3)
        tests, found = oriented(np.arange(count), points, normals)
        assert found == count
        for beyond in (-1.0, 0.0, 0.2, 0.5):
            share = agreement(axis, foot, tests, count, FLAT, *LAST, LOW, beyond)
            assert share == pytest.approx(plain(axis, foot, points, normals, beyond), abs=1e-12)
            kept += share > 0.5
    assert kept > 10 or count == 0


@pytest.mark.parametrize("family", ["bevelled", "square-post", "hexagonal", "three-lobed", "winged"])
def test_a_body_that_is_not_round_agrees_with_its_own_axis(family: str) -> None:
    """Normals of flats and bevels point aside of the radius: with that counted against them half the body disagreed."""
    template = template_of(draw_body(np.random.default_rng([5, 1]), "drawn", "alder", family))
    axis, foot = np.array([0.0, 0.0, 1.0]), np.zeros(3)
    tests, count = oriented(
        np.arange(len(template.samples)), template.samples[:, :3].copy(), template.samples[:, 3:].copy()
    )
    ends = template.profile.shape[0] - 1.0, template.profile.shape[1] - 2.0
    low = template.height_low - PROFILE_BAND
    assert agreement(axis, foot, tests, count, template.profile.reshape(-1, 3), *ends, low, -1.0) > 0.75
