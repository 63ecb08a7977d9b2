"""Points of a frame's surface: evenly over a design, the scan's own on a scan, and never more than memory holds."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.surface import Surface
from stylobate.several.made import points
from stylobate.several.made.points import surface_points

SQUARE = Surface(np.array([[0.0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0]]), np.array([[0, 1, 2], [0, 2, 3]], np.int32))


def test_a_large_face_gets_points_that_stand_for_its_area() -> None:
    large = Surface(10.0 * SQUARE.vertices, SQUARE.faces)
    spread, normals = surface_points(large, np.full((1, 3), 5.0), 20.0)
    assert len(spread) == pytest.approx(100.0 / points.SPACING**2, rel=0.05)
    assert normals[:, 2].sum() == pytest.approx(100.0)
    assert np.histogram2d(spread[:, 0], spread[:, 1], bins=5)[0].min() > 0.8 * len(spread) / 25


def test_small_faces_keep_their_own_vertices() -> None:
    small = Surface(0.1 * SQUARE.vertices, SQUARE.faces)
    spread, normals = surface_points(small, np.zeros((1, 3)), 1.0)
    assert np.array_equal(spread, small.vertices)
    assert normals[:, 2].sum() == pytest.approx(0.01)


def test_a_surface_in_a_smaller_unit_does_not_fill_the_memory(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(points, "MOST", 5000)
    spread, normals = surface_points(Surface(1e2 * SQUARE.vertices, SQUARE.faces), np.full((1, 3), 50.0), 200.0)
    assert len(spread) == pytest.approx(5000, rel=0.05)
    assert normals[:, 2].sum() == pytest.approx(1e4)


def test_a_plate_beside_a_bar_leaves_its_seats_their_points(monkeypatch: pytest.MonkeyPatch) -> None:
    """Over faces a metre wide the few points that memory holds would lie millimetres apart."""
    monkeypatch.setattr(points, "MOST", 20_000)
    about, reach = np.array([[300.0, 200.0, 0.0], [900.0, 900.0, 5.0]]), 6.0
    spread, normals = surface_points(Surface(1e3 * SQUARE.vertices, SQUARE.faces), about, reach)
    for place in about:
        near = np.linalg.norm(spread - place, axis=1) < reach
        area = np.pi * (reach**2 - place[2] ** 2)
        assert normals[near, 2].sum() == pytest.approx(area, rel=0.03)
        assert near.sum() == pytest.approx(area / points.SPACING**2, rel=0.06)
    assert np.linalg.norm(spread[:, None] - about, axis=2).min(axis=1).max() < reach + 2.0 * points.PIECE
