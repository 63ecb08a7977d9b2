"""Closest points against brute force over every triangle."""

from __future__ import annotations

from typing import Any

import numpy as np
import trimesh
from numpy.testing import assert_allclose

from stylobate.core.buckets import Buckets
from stylobate.core.cells import BAND
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.simulate import draw_bodies


def box() -> Surface:
    vertices = np.array([[x, y, z] for x in (0.0, 3.0) for y in (0.0, 2.0) for z in (0.0, 8.0)])
    quads = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]
    faces = [f for a, b, c, d in quads for f in ((a, b, c), (a, c, d))]
    return Surface(vertices, np.array(faces, np.int32))


def test_the_signed_distance_to_a_box_is_exact() -> None:
    points = np.random.default_rng(7).uniform([-2, -2, -2], [5, 4, 10], (4000, 3))
    half, middle = np.array([1.5, 1.0, 4.0]), np.array([1.5, 1.0, 4.0])
    q = np.abs(points - middle) - half
    expected = np.linalg.norm(np.maximum(q, 0.0), axis=1) + np.minimum(q.max(axis=1), 0.0)
    assert_allclose(SurfaceTree.of(box()).closest(points).distance, expected, atol=1e-12)


def test_the_gradient_is_the_slope_of_the_distance() -> None:
    tree, step = SurfaceTree.of(box()), 1e-6
    points = np.random.default_rng(8).uniform([-1, -1, 1], [4, 3, 9], (300, 3))
    here = tree.closest(points)
    slope = np.stack(
        [
            (tree.closest(points + step * e).distance - tree.closest(points - step * e).distance) / (2 * step)
            for e in np.eye(3)
        ],
        axis=1,
    )
    smooth = np.abs(np.linalg.norm(slope, axis=1) - 1.0) < 1e-4  # away from where two faces are equally near
    assert np.mean(smooth) > 0.95
    assert_allclose(here.gradient[smooth], slope[smooth], atol=1e-4)


def test_beyond_the_limit_nothing_is_found() -> None:
    far = SurfaceTree.of(box()).closest(np.array([[1.5, 1.0, 20.0]]), limit=5.0)
    assert far.face[0] == -1
    assert np.isnan(far.distance[0])


def test_an_open_edge_is_reported() -> None:
    surface = box()
    lid_off = Surface(surface.vertices, surface.faces[:-2])
    closest = SurfaceTree.of(lid_off).closest(np.array([[1.5, -0.5, 9.0], [1.5, -0.5, 4.0]]))
    assert closest.on_boundary.tolist() == [True, False]


def test_buckets_find_what_brute_force_finds() -> None:
    rng = np.random.default_rng(9)
    points, queries = rng.uniform(0, 10, (700, 3)), rng.uniform(-1, 11, (200, 3))
    apart = np.linalg.norm(queries[:, None] - points[None], axis=2)
    distance, index = Buckets.of(points, 1.0).nearest(queries, 1.3)
    near = apart.min(axis=1) < 1.3
    assert_allclose(distance[near], apart.min(axis=1)[near], atol=1e-12)
    assert np.array_equal(index[near], apart.argmin(axis=1)[near])
    assert np.all(index[~near] == -1)
    assert np.array_equal(Buckets.of(points, 1.0).count(queries, 1.3), (apart < 1.3).sum(axis=1))


def test_near_a_drawn_body_the_distance_is_that_of_another_library() -> None:
    """Cubes that know their triangles against trimesh, up to the reach within which they are asked."""
    surface = draw_bodies(5, 1)[0].surface
    rng = np.random.default_rng(5)
    points = surface.vertices[rng.integers(len(surface.vertices), size=600)] + rng.normal(0.0, 0.5, (600, 3))
    triangles = surface.vertices[surface.faces]
    closest_point: Any = trimesh.triangles.closest_point
    nearest = [closest_point(triangles, np.tile(p, (len(triangles), 1))) for p in points]
    expected = np.array([np.linalg.norm(q - p, axis=1).min() for p, q in zip(points, nearest, strict=True)])
    for limit in (BAND, 0.3):
        found = SurfaceTree.of(surface).closest(points, limit)
        within = expected < limit
        assert_allclose(np.abs(found.distance[within]), expected[within], atol=1e-9)
        assert np.array_equal(found.face >= 0, within)
    assert 100 < int(np.sum(expected < 0.3)) < 600
