"""Gradients of the curved surface that facets stand for: a lathe-turned body has no turn, however few its facets."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.fit.descend import Around, Descent, descend, rows

SECTIONS = 96


def surface_of(mesh: trimesh.Trimesh) -> Surface:
    return Surface(np.asarray(mesh.vertices, np.float64), np.asarray(mesh.faces, np.int32))


def tube() -> Surface:
    return surface_of(trimesh.creation.cylinder(radius=2.2, height=8.0, sections=SECTIONS))


def ring(away: float, seed: int = 1) -> FloatArray:
    rng = np.random.default_rng(seed)
    angle, height = rng.uniform(0.0, 2.0 * np.pi, 4000), rng.uniform(-3.5, 3.5, 4000)
    return np.stack([(2.2 + away) * np.cos(angle), (2.2 + away) * np.sin(angle), height], axis=1)


@pytest.mark.parametrize("away", [-0.02, 0.03])
def test_the_gradient_of_a_faceted_cylinder_points_along_the_radius(away: float) -> None:
    points = ring(away)
    radius = points * [1.0, 1.0, 0.0] / np.hypot(points[:, 0], points[:, 1])[:, None]
    tree = SurfaceTree.of(tube())
    plain, curved = tree.closest(points, 0.3), tree.closest_curved(points, 0.3)
    assert np.array_equal(plain.distance, curved.distance)
    off = np.degrees(np.arccos(np.clip(np.einsum("ij,ij->i", curved.gradient, radius), -1.0, 1.0)))
    assert off.max() < 0.05
    before = np.degrees(np.arccos(np.clip(np.einsum("ij,ij->i", plain.gradient, radius), -1.0, 1.0)))
    assert before.max() > 0.8 * 180.0 / SECTIONS


def test_facets_do_not_fix_the_turn() -> None:
    points, tree = ring(0.01), SurfaceTree.of(tube())
    turn = [float(np.sum(rows(points, seen.gradient)[:, 5] ** 2)) / len(points)
            for seen in (tree.closest(points, 0.3), tree.closest_curved(points, 0.3))]  # fmt: skip
    assert turn[0] > 1e-4
    assert turn[1] < 1e-2 * turn[0]


def test_flat_faces_and_sharp_edges_keep_their_gradients() -> None:
    tree = SurfaceTree.of(surface_of(trimesh.creation.box((4.0, 4.0, 6.0))))
    points = np.random.default_rng(2).uniform(-3.2, 3.2, (4000, 3))
    plain, curved = tree.closest(points, 0.3), tree.closest_curved(points, 0.3)
    known = plain.face >= 0
    assert known.sum() > 100
    assert np.allclose(plain.gradient[known], curved.gradient[known], atol=1e-12)
    assert np.isnan(curved.gradient[~known]).all()


def hull(sections: int) -> Surface:
    """Two circles, one aside of the other and smaller: only how they stand aside shows the turn."""
    angle = np.arange(sections) * 2.0 * np.pi / sections
    low = np.stack([2.2 * np.cos(angle), 2.2 * np.sin(angle), np.zeros(sections)], axis=1)
    high = np.stack([0.7 + 1.3 * np.cos(angle), 1.3 * np.sin(angle), np.full(sections, 8.0)], axis=1)
    return surface_of(trimesh.convex.convex_hull(np.vstack([low, high])))


def test_an_oblique_cone_is_brought_to_its_turn_from_forty_degrees_off() -> None:
    """Turn and lean go together along a shallow valley; on the facets' own gradients the descent stopped 10° off."""
    true = hull(720)
    real = trimesh.Trimesh(true.vertices, true.faces, process=False)
    points, face = trimesh.sample.sample_surface(real, 6000, seed=3)
    normals = np.asarray(real.face_normals)[face]
    seen = np.abs(normals[:, 2]) < 0.7
    noisy = points[seen] + np.random.default_rng(4).normal(0.0, 0.003, (int(seen.sum()), 1)) * normals[seen]
    around = Around(np.arange(len(noisy)), noisy, normals[seen], np.full(len(noisy), 0.01))
    start = np.eye(4)
    start[:2, :2] = [[np.cos(0.7), -np.sin(0.7)], [np.sin(0.7), np.cos(0.7)]]
    found: Descent = descend(SurfaceTree.of(hull(160)), around, start, around.index, 0.35)
    turn = np.degrees(np.arctan2(found.scan_from_connection[1, 0], found.scan_from_connection[0, 0]))
    assert found.converged
    assert abs(turn) < 3.0
