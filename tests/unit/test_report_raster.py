"""Stills: geometry against closed forms."""

from __future__ import annotations

import math

import numpy as np
import trimesh

from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.types import ByteArray, FloatArray
from stylobate.report.raster import View, draw

BACK = "#000000"


def still(
    vertices: FloatArray, faces: object, colour: ByteArray, view_from_scene: FloatArray | None = None
) -> ByteArray:
    view = View(np.eye(4) if view_from_scene is None else view_from_scene, (200, 120), 10.0)
    return draw(view, np.asarray(vertices, float), np.asarray(faces, np.int32), colour, ambient=1.0, background=BACK)


def covered(image: ByteArray) -> float:
    """Covered area in pixels, part-covered ones by their share."""
    return float(image[..., 0].sum() / 255.0)


def white(count: int) -> ByteArray:
    return np.full((count, 3), 255, np.uint8)


def test_area_and_place_of_a_triangle() -> None:
    corners = np.array([[2.0, 1.0, 0.0], [8.0, 1.0, 0.0], [2.0, 4.0, 0.0]])
    image = still(corners, [[0, 1, 2]], white(3))
    assert math.isclose(covered(image), 0.5 * 60 * 30, rel_tol=0.02)
    rows, columns = np.nonzero(image[..., 0] > 127)
    assert (columns.min(), columns.max() + 1) == (120, 179)  # x 2 to 8 mm right of the middle at 10 pixels a mm
    assert abs(rows.min() - 20) <= 1
    assert abs(rows.max() + 1 - 50) <= 1


def test_silhouette_of_a_sphere_from_any_side() -> None:
    ball = trimesh.creation.icosphere(subdivisions=5, radius=4.0)
    for axis in (np.zeros(3), np.array([0.3, 1.0, 0.2])):
        image = still(ball.vertices, ball.faces, white(len(ball.vertices)), pose(rotation_exp(axis), np.zeros(3)))
        assert math.isclose(covered(image), math.pi * 40**2, rel_tol=0.01)


def test_the_nearer_surface_hides_the_farther_in_either_order() -> None:
    low = np.array([[-3.0, -3, 0], [3, -3, 0], [0, 3, 0]])
    vertices = np.concatenate([low, low + [0, 0, 1]])
    colour = np.repeat(np.array([[255, 0, 0], [0, 255, 0]], np.uint8), 3, axis=0)
    for faces in ([[0, 1, 2], [3, 4, 5]], [[3, 4, 5], [0, 1, 2]]):
        image = still(vertices, faces, colour)
        assert tuple(image[60, 100]) == (0, 255, 0)
        assert image[..., 0].max() == 0


def test_what_faces_the_light_is_brighter() -> None:
    ball = trimesh.creation.icosphere(subdivisions=4, radius=4.0)
    view = View(np.eye(4), (200, 120), 10.0)
    image = draw(view, ball.vertices, ball.faces.astype(np.int32), white(len(ball.vertices)), 0.3, BACK)
    assert image[60 - 18, 100 - 14, 0] == image[..., 0].max() == 255  # the light stands upper left, in front
    assert image[60 + 30, 100 + 22, 0] < 140


def test_nothing_outside_the_picture_is_touched() -> None:
    image = still(np.array([[-500.0, -500, 0], [500, -500, 0], [0, 900, 0]]), [[0, 1, 2]], white(3))
    assert (image == 255).all()
    assert (still(np.array([[50.0, 0, 0], [60, 0, 0], [50, 9, 0]]), [[0, 1, 2]], white(3)) == 0).all()
