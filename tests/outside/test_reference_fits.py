"""Planes, spheres, cylinders and cones against NIST's reference pairs (tests/data/nist_ls_reference.md)."""

from __future__ import annotations

import io
import itertools
import zipfile
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from stylobate.core.types import FloatArray
from stylobate.parts.features import Feature, fit_cone, fit_cylinder, fit_plane, fit_sphere

PAIRS = Path(__file__).parents[1] / "data" / "nist_ls_reference.zip"
AXES = [np.array(d, np.float64) for d in itertools.product((-1, 0, 1), repeat=3) if d > (0, 0, 0)]
LENGTH_MM, ANGLE = 2e-7, 1e-9
"""What 60 digits and our descent differ by: of lengths the worst is a shallow sphere of 0.2 mm rms."""


def pairs(kind: str, left_out: str = "") -> list[tuple[str, FloatArray, FloatArray]]:
    """Name, points (n, 3) and reference values of each pair."""
    found = []
    with zipfile.ZipFile(PAIRS) as archive:
        for name in sorted(archive.namelist()):
            stem = Path(name).stem
            if name.startswith(f"{kind}/") and name.endswith(".ds") and stem != left_out:
                points = np.loadtxt(io.BytesIO(archive.read(name)), skiprows=1)
                found.append((stem, points, np.loadtxt(io.BytesIO(archive.read(f"{kind}/{stem}.fit")))))
    return found


def best(fit: Callable[[FloatArray, FloatArray], Feature], points: FloatArray) -> Feature:
    """The least squares fit from rough axes all around."""
    return min((fit(points, axis) for axis in AXES), key=lambda feature: feature.rms)


def apart(feature: Feature, reference: FloatArray) -> tuple[float, float]:
    """Distance of the reference point from the fitted axis, and angle between the axes."""
    direction = reference[3:6] / np.linalg.norm(reference[3:6])
    away = reference[:3] - feature.point
    off = np.linalg.norm(away - (away @ feature.direction) * feature.direction)
    return float(off), float(np.linalg.norm(np.cross(direction, feature.direction)))


def test_planes() -> None:
    known = pairs("Plane")
    assert len(known) == 30
    for name, points, reference in known:
        feature = fit_plane(points)
        direction = reference[3:6] / np.linalg.norm(reference[3:6])
        assert abs((feature.point - reference[:3]) @ direction) < LENGTH_MM, name
        assert np.linalg.norm(np.cross(direction, feature.direction)) < ANGLE, name


def test_spheres() -> None:
    known = pairs("Sphere")
    assert len(known) == 30
    for name, points, reference in known:
        feature = fit_sphere(points)
        assert np.abs(feature.point - reference[:3]).max() < LENGTH_MM, name
        assert abs(2.0 * feature.radius - reference[3]) < LENGTH_MM, name


def test_cylinders() -> None:
    known = pairs("Cylinder")
    assert len(known) == 30
    for name, points, reference in known:
        feature = best(fit_cylinder, points)
        off, tilt = apart(feature, reference)
        assert off < LENGTH_MM, name
        assert tilt < ANGLE, name
        assert abs(2.0 * feature.radius - reference[6]) < LENGTH_MM, name


def test_cones() -> None:
    known = pairs("Cone", left_out="con7")
    assert len(known) == 29
    for name, points, reference in known:
        feature = best(fit_cone, points)
        off, tilt = apart(feature, reference)
        assert off < LENGTH_MM, name
        assert tilt < ANGLE, name
        assert abs(np.degrees(2.0 * feature.half_angle) - reference[7]) < 1e-7, name
        assert abs(abs(feature.distances(reference[None, :3])[0]) - reference[6]) < LENGTH_MM, name


@pytest.mark.parametrize("share", [0.1, 0.3])
def test_a_robust_fit_does_not_feel_points_of_another_surface(share: float) -> None:
    """A cylinder with a chamfer and strays; plain least squares is off by more than a hundred times as much."""
    rng = np.random.default_rng(6)
    angle, height = rng.uniform(0, 2 * np.pi, 2000), rng.uniform(0, 8, 2000)
    points = np.column_stack([2.4 * np.cos(angle), 2.4 * np.sin(angle), height])
    strays = rng.random(2000) < share
    points[strays, :2] *= rng.uniform(0.7, 0.95, (int(strays.sum()), 1))
    rough = np.array([0.1, -0.1, 1.0])
    robust, plain = fit_cylinder(points, rough, robust=True), fit_cylinder(points, rough)
    assert abs(robust.radius - 2.4) < 1e-6
    assert np.hypot(*robust.point[:2]) < 1e-6
    assert abs(plain.radius - 2.4) > 1e-2
