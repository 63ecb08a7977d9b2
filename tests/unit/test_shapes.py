"""Shapes of displacement against finite motions of points."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.diagnose.shapes import leaning, made_part, step_across
from stylobate.fit.descend import usable
from tests.unit.evidence_making import HEIGHT, RADIUS, post

TINY = 1e-6


def bent(points: FloatArray, lean: float, start: float, hinge: bool) -> FloatArray:
    """Sections shifted and turned about y, exactly, for a lean at the top towards +x."""
    rise = np.maximum(points[:, 2] - start, 0.0)
    length = HEIGHT - start
    turn = lean * (rise > 0) if hinge else lean * rise / length
    shift = lean * rise if hinge else lean * rise**2 / (2 * length)
    moved = points.copy()
    moved[:, 0] = points[:, 0] * np.cos(turn) + shift
    moved[:, 2] = points[:, 2] - points[:, 0] * np.sin(turn)
    return moved


@pytest.mark.parametrize("hinge", [False, True])
def test_a_lean_is_the_derivative_of_a_bent_body(hinge: bool) -> None:
    points, normals = post()
    moved = bent(points, TINY, 1.0, hinge)
    numerical = np.einsum("ij,ij->i", moved - points, normals) / TINY
    assert np.allclose(leaning(points, normals, 1.0, HEIGHT, hinge)[:, 0], numerical, atol=1e-5)


def test_a_made_part_is_stretched() -> None:
    """One mm more diameter moves a wall at the widest radius by half of it; one mm more height moves the top by all."""
    wall = made_part(np.array([[RADIUS, 0.0, 1.0]]), np.array([[1.0, 0.0, 0.0]]), RADIUS, HEIGHT)
    top = made_part(np.array([[0.5, 0.0, HEIGHT]]), np.array([[0.0, 0.0, 1.0]]), RADIUS, HEIGHT)
    assert wall[0].tolist() == [0.5, 0.0]
    assert top[0].tolist() == [0.0, 1.0]


def test_a_step_parts_the_halves_by_the_whole_shift() -> None:
    points = np.array([[1.0, 0.2, 3.0], [-1.0, 0.2, 3.0]])
    normals = np.array([[0.0, 1.0, 0.0], [0.0, 1.0, 0.0]])
    one, other = step_across(points, normals, 0.0) @ np.array([0.0, 0.1, 0.0])
    assert one - other == pytest.approx(0.1)


def test_points_beyond_an_open_edge_are_not_usable() -> None:
    corners = np.array([[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [1.0, 1.0, 0.0], [0.0, 1.0, 0.0]])
    sheet = Surface(corners, np.array([[0, 1, 2], [0, 2, 3]], np.int32))
    points = np.array([[0.5, 0.3, 0.01], [1.2, 0.5, 0.01]])
    closest = SurfaceTree.of(sheet).closest(points, 1.0)
    assert usable(closest, np.tile([0.0, 0.0, 1.0], (2, 1)) * [1.0, 1.0, 1.0]).tolist()[0]
    facing = np.array([[0.0, 0.0, 1.0], closest.gradient[1]])
    assert usable(closest, facing).tolist() == [True, False]
