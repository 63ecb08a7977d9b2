"""The scan with exact CAD in it: defects gone, welded, and fitted again to where it was put."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh

from stylobate.core.rigid import exp, inverse, log
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.handoff.edges import boundary_loops, clipped, refined, zipped_band
from stylobate.handoff.replaced import replaced
from stylobate.report.meshes import stl_bytes
from tests.unit.parts_making import flat, post

POSE = exp(np.array([31.0, -12.0, 8.0, 0.3, -0.2, 1.1]))
BODY = post(flat(2.1, 0.5), facets=160)
GUM, LAYER = 1.5, 0.06


def scene(blob: float = 0.0) -> Scan:
    """A wavy gingiva with a noisy, coated post in it, its foot rounded; with a blob of that height on one side."""
    rng = np.random.default_rng(2)
    x, y = (part.ravel() for part in np.meshgrid(np.linspace(-8, 8, 121), np.linspace(-8, 8, 121)))
    radius, turn = np.hypot(x, y), np.arctan2(y, x)
    wall = flat(2.1, 0.5)(turn) + LAYER + blob * np.exp(-((turn - 1.0) ** 2) / 0.02)
    gum = GUM + 0.4 * np.sin(2 * turn) * np.minimum(radius / 4, 1) + 0.3 * np.exp(-np.maximum(radius - wall, 0) / 0.15)
    # inside the wall the grid is drawn up to the post: rings of it climb from the gingiva to the top
    inside = radius < wall
    climb = np.clip((wall - radius) / 0.9, 0, 1)
    z = np.where(inside, gum + (8.0 + LAYER - gum) * climb, gum)
    spread = np.where(inside & (climb < 1), wall / np.maximum(radius, 1e-9), 1.0)
    points = np.stack([x * spread, y * spread, z], axis=1) + rng.normal(0, 0.01, (len(x), 3))
    k = np.arange(121 * 121).reshape(121, 121)
    a, b, c, d = (part.ravel() for part in (k[:-1, :-1], k[:-1, 1:], k[1:, 1:], k[1:, :-1]))
    faces = np.concatenate([np.stack([a, b, c], 1), np.stack([a, c, d], 1)]).astype(np.int32)
    return Scan(Surface(points, faces).moved(POSE), np.zeros(3), "scan.stl", "")


def refit(points: FloatArray, onto: Surface, start: FloatArray) -> FloatArray:
    """Textbook ICP: nearest points of the CAD surface, points farther than 0.1 mm left out, point to plane."""
    rng = np.random.default_rng(1)
    mesh = trimesh.Trimesh(onto.vertices, onto.faces, process=False)
    samples, face = trimesh.sample.sample_surface(mesh, 30_000, seed=int(rng.integers(100)))
    normals = mesh.face_normals[face]
    from scipy.spatial import cKDTree

    tree, pose = cKDTree(samples), start
    for limit in [0.5] * 15 + [0.15] * 30:
        moved = points @ pose[:3, :3].T + pose[:3, 3]
        distance, near = tree.query(moved)
        n = normals[near]
        gap = np.einsum("ij,ij->i", n, samples[near] - moved)
        use = (distance < 2 * limit) & (np.abs(gap) < limit)
        step = np.linalg.lstsq(np.hstack([n, np.cross(moved, n)])[use], gap[use], rcond=None)[0]
        pose = exp(step) @ pose
    return pose


@pytest.mark.parametrize("blob", [0.0, 0.5])
def test_a_refit_lands_on_the_pose_it_was_put_at(blob: float, tmp_path: Path) -> None:
    """By way of the STL file, whose coordinates are 32-bit, from 0.2 mm and 1.5° away: within 2 µm and 0.02°."""
    made = replaced(scene(blob), [POSE], [BODY])
    assert made.welded == (True,)
    (tmp_path / "s.stl").write_bytes(stl_bytes(made.surface, "test"))
    scan = trimesh.load_mesh(tmp_path / "s.stl")
    to_connection = inverse(POSE)
    local = scan.vertices @ to_connection[:3, :3].T + to_connection[:3, 3]
    cropped = local[(np.hypot(local[:, 0], local[:, 1]) < 2.6) & (local[:, 2] > GUM + 1.2)]
    found = log(refit(cropped, BODY, exp(np.array([0.12, -0.1, 0.12, 0.015, -0.015, 0.015]))))
    assert 1000.0 * np.linalg.norm(found[:3]) < 2.0
    assert np.degrees(np.linalg.norm(found[3:])) < 0.02


def test_the_scan_itself_would_not(tmp_path: Path) -> None:
    """The same refit of the scan as it came, with its layer and noise, misses both bounds' worth of height."""
    to_connection = inverse(POSE)
    local = scene().surface.moved(to_connection).vertices
    cropped = local[(np.hypot(local[:, 0], local[:, 1]) < 2.6) & (local[:, 2] > GUM + 1.2)]
    assert 1000.0 * np.linalg.norm(log(refit(cropped, BODY, np.eye(4)))[:3]) > 10.0


def test_layer_and_blob_are_gone_and_all_edges_are_shared() -> None:
    before = scene(blob=0.5)
    made = replaced(before, [POSE], [BODY])
    local = made.surface.moved(inverse(POSE))
    radius = np.hypot(local.vertices[:, 0], local.vertices[:, 1])
    assert radius[local.vertices[:, 2] > GUM + 1.2].max() < 2.1 + 1e-6
    rim = boundary_loops(before.surface.faces)
    after = boundary_loops(made.surface.faces)
    assert [len(loop) for loop in after] == [len(loop) for loop in rim] == [480]
    mesh = trimesh.Trimesh(made.surface.vertices, made.surface.faces, process=False)
    assert mesh.is_winding_consistent
    edges = np.sort(mesh.edges, axis=1)
    assert np.unique(edges, axis=0, return_counts=True)[1].max() == 2


def test_the_scan_away_from_the_body_is_untouched() -> None:
    before = scene()
    made = replaced(before, [POSE], [BODY])
    local = before.surface.moved(inverse(POSE)).vertices
    far = before.surface.vertices[np.hypot(local[:, 0], local[:, 1]) > 3.0]
    from scipy.spatial import cKDTree

    assert cKDTree(made.surface.vertices).query(far)[0].max() < 1e-9


def test_a_tooth_close_by_is_untouched() -> None:
    """A wall that faces the body, 0.5 mm from it, is no blob on it."""
    before = scene()
    y, z = np.meshgrid(np.linspace(-2, 2, 41), np.linspace(3, 7, 41), indexing="ij")
    wall = np.stack([np.full(y.size, 2.1 + 0.5), y.ravel(), z.ravel()], axis=1)
    k = np.arange(41 * 41).reshape(41, 41)
    a, b, c, d = (part.ravel() for part in (k[:-1, :-1], k[:-1, 1:], k[1:, 1:], k[1:, :-1]))
    faces = np.concatenate([np.stack([a, b, c], 1), np.stack([a, c, d], 1)]).astype(np.int32)
    tooth = Surface(wall, faces).moved(POSE)
    count = len(before.surface.vertices)
    assert tooth.moved(inverse(POSE)).corner_products()[0, 0] < 0
    both = Surface(np.concatenate([before.surface.vertices, tooth.vertices]),
                   np.concatenate([before.surface.faces, tooth.faces + count]).astype(np.int32))  # fmt: skip
    made = replaced(Scan(both, np.zeros(3), "scan.stl", ""), [POSE], [BODY])
    from scipy.spatial import cKDTree

    assert cKDTree(made.surface.vertices).query(tooth.vertices)[0].max() < 1e-9


def test_a_body_without_scan_around_it_is_left_beside() -> None:
    away = exp(np.array([100.0, 0, 0, 0, 0, 0]))
    made = replaced(scene(), [away], [BODY])
    assert made.welded == (False,)
    mesh = trimesh.Trimesh(BODY.vertices, BODY.faces)
    kept = made.surface.moved(inverse(away)).vertices
    assert (np.abs(kept) < 10).all(axis=1).sum() > 0
    assert np.allclose(kept[(np.abs(kept) < 10).all(axis=1)].max(axis=0), mesh.bounds[1], atol=1e-9)


def test_refining_and_clipping_keep_the_surface() -> None:
    fine = refined(BODY, 0.4)
    assert fine.face_areas().sum() == pytest.approx(BODY.face_areas().sum(), rel=1e-9)
    corners = fine.vertices[fine.faces]
    assert np.linalg.norm(corners - np.roll(corners, 1, axis=1), axis=2).max() <= 0.4
    cut = clipped(fine, np.full(72, 3.0))
    assert cut.vertices[cut.faces][..., 2].min() == pytest.approx(3.0, abs=1e-6)
    cap = BODY.face_areas()[BODY.corner_products()[:, 2] > 0].sum()
    wall = BODY.face_areas().sum() - cap
    assert cut.face_areas().sum() == pytest.approx(cap + wall * 5.0 / 8.0, rel=1e-6)


def test_a_band_does_not_depend_on_where_its_loops_start() -> None:
    rng = np.random.default_rng(8)
    turn = [np.sort(rng.uniform(0.0, 2.0 * np.pi, n)) for n in (90, 61)]
    rings = [np.column_stack([r * np.cos(t), r * np.sin(t), rng.normal(0.0, 0.1, len(t))])
             for r, t in zip((2.0, 2.4), turn, strict=True)]  # fmt: skip
    vertices = np.concatenate(rings)
    inner, outer = np.arange(90, dtype=np.int32), np.arange(150, 89, -1, dtype=np.int32)

    def triangles(by_inner: int, by_outer: int) -> set[tuple[int, ...]]:
        band = zipped_band(vertices, np.roll(inner, by_inner), np.roll(outer, by_outer))
        return {tuple(np.roll(face, -int(face.argmin())).tolist()) for face in band}

    first = triangles(0, 0)
    assert len(first) == 90 + 61
    for by_inner, by_outer in ((1, 0), (0, 7), (44, 13), (89, 60)):
        assert triangles(by_inner, by_outer) == first


def test_a_band_between_uneven_loops_goes_straight_across() -> None:
    """Rings of 3000 and 40 corners, 0.3 mm apart, one of them kinked: the band's area is that of the gap, not more."""
    fine, rough = (np.linspace(0.0, 2.0 * np.pi, n, endpoint=False) for n in (3000, 40))
    reach = 2.3 + 0.15 * (np.arange(40) % 2)
    inner = np.column_stack([2.0 * np.cos(fine), 2.0 * np.sin(fine), np.zeros(3000)])
    outer = np.column_stack([reach * np.cos(rough), reach * np.sin(rough), np.zeros(40)])
    vertices = np.concatenate([inner, outer])
    band = zipped_band(vertices, np.arange(3000, dtype=np.int32), np.arange(3039, 2999, -1, dtype=np.int32))
    corners = vertices[band]
    area = 0.5 * np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])[:, 2]
    ring = 0.5 * 40 * 2.3 * 2.45 * np.sin(2.0 * np.pi / 40) - 0.5 * 3000 * 4.0 * np.sin(2.0 * np.pi / 3000)
    assert np.abs(area).sum() == pytest.approx(ring, rel=1e-9), "no triangle lies over another"
    assert (area > 0).all() or (area < 0).all()
