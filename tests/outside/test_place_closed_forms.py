"""Placing against closed forms: caps of axes, lever arms, leaning abutments on a hexagon."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.build.carried import upper_of
from stylobate.build.cone import best_path, smallest_cone
from stylobate.build.placing import place
from stylobate.build.request import Step
from stylobate.build.ways import ways_of
from tests.unit.placing_making import abutment, demo_folder, folder, leaning_pose, record, site


def axes(*tilts: tuple[float, float]) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    return np.array([leaning_pose(tilt, azimuth)[:3, 2] for tilt, azimuth in tilts])


PUBLISHED = [
    # Path of insertion over straight-sided cones: a common path exists iff all axes lie in a cap of that radius.
    (((15.0, 0.0), (15.0, 180.0)), 15.0),
    (((20.0, 0.0), (20.0, 120.0), (20.0, 240.0)), 20.0),
    (((17.0, 0.0), (17.0, 180.0), (0.0, 0.0)), 17.0),
    (((30.0, 0.0), (30.0, 90.0)), 20.7048),
]


@pytest.mark.parametrize(("tilts", "radius"), PUBLISHED)
def test_caps_of_axes(tilts: tuple[tuple[float, float], ...], radius: float) -> None:
    cone = smallest_cone(axes(*tilts))
    assert np.degrees(cone.radius) == pytest.approx(radius, abs=6e-5)
    path = best_path(axes(*tilts), np.full(len(tilts), np.radians(18.0)))
    assert np.degrees(path.margin) == pytest.approx(18.0 - radius, abs=6e-5)


@pytest.mark.parametrize(
    ("lever", "tilt_deg", "moved_um"),
    # lever · tan(angle): 50 mm at 0.1° 87.3 µm, 40 mm at 0.4° 279.3 µm, 10 mm at 0.5° 87.3 µm
    [(50.0, 0.1, 87.3), (40.0, 0.4, 279.3), (10.0, 0.5, 87.3)],
)
def test_a_tilt_moves_the_platform_above_by_its_lever_arm(lever: float, tilt_deg: float, moved_um: float) -> None:
    parts = folder((abutment("tall", "alder", "alder-mu", 0.0, lever),), (), {"alder": 6, "alder-mu": 0})
    tilt = np.radians(tilt_deg)
    covariance = np.diag([0.0, 0.0, 0.0, 0.0, tilt**2, 0.0])
    (way,) = ways_of(parts, "alder", [Step("tall")], "")
    upper = upper_of(way, parts, "alder", np.eye(4), covariance)
    assert 1e3 * np.sqrt(upper.covariance[0, 0]) == pytest.approx(moved_um, abs=0.06)


@pytest.mark.parametrize("name", ["mu-16", "mu-28"])
@pytest.mark.parametrize("tilt", [3.0, 16.0, 30.0])
@pytest.mark.parametrize("azimuth", [0.0, 14.0, 30.0, 47.0, 200.0])
def test_a_leaning_abutment_on_a_hexagon(name: str, tilt: float, azimuth: float) -> None:
    """The turn nearest to the aim's azimuth; then cos γ = cos t cos a + sin t sin a cos Δ (spherical cosines)."""
    parts = demo_folder()
    lean = 16.0 if name == "mu-16" else 28.0
    aim = axes((tilt, azimuth))[0]
    (placed,) = place(record(site("1", np.eye(4))), parts, [f"1={name}"], [",".join(map(repr, aim.tolist()))]).sites
    off = (azimuth + 30.0) % 60.0 - 30.0
    t, a = np.radians(tilt), np.radians(lean)
    angle = np.arccos(np.cos(t) * np.cos(a) + np.sin(t) * np.sin(a) * np.cos(np.radians(off)))
    assert placed.channel.angle_to_aim_deg == pytest.approx(np.degrees(angle), abs=1e-6)
    if abs(off) < 29.9:
        assert placed.chain[0].turn == round(azimuth / 60.0) % 6
