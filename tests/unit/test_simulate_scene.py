"""Scenes: vertices on the true surface, noise as asked for, faults as named, the same seed the same scan."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import UsageError
from stylobate.core.rigid import inverse, log
from stylobate.core.types import FloatArray
from stylobate.simulate import Drift, Fault, Noise, Placed, Scene, Settings, draw_bodies, near_twins, scene

SILENT = Noise(0.0, 0.0)
BODIES = draw_bodies(11, 5)
SMALL = Settings(seed=4, arch="single", bodies=1, edge_mm=0.2, noise=SILENT)


def local(made: Scene, site: int, moved: bool = False) -> FloatArray:
    """Vertices of one body in its connection frame, before noise or after."""
    pose = made.sites[site].scan_from_connection
    points = made.surface.vertices if moved else made.true_vertices
    return np.asarray((points[made.label == site] - pose[:3, 3]) @ pose[:3, :3])


def off(made: Scene, site: int) -> FloatArray:
    return SurfaceTree.of(made.sites[site].body.surface).closest(local(made, site)).distance


def median_edge(made: Scene) -> float:
    corners = made.surface.vertices[made.surface.faces]
    return float(np.median(np.linalg.norm(corners - np.roll(corners, 1, axis=1), axis=2)))


@pytest.mark.parametrize("arch", ["single", "quadrant"])
@pytest.mark.parametrize("adaptive", [False, True])
def test_vertices_lie_on_the_drawing(arch: str, adaptive: bool) -> None:
    made = scene(Settings(seed=2, arch=arch, bodies=2, edge_mm=0.25, adaptive=adaptive, noise=SILENT), BODIES)
    for site, truth in enumerate(made.sites):
        assert (made.label == site).sum() > 200
        assert np.abs(off(made, site)).max() < 1e-3
        assert local(made, site)[:, 2].min() > truth.gum_mm - 0.5
    assert np.array_equal(made.surface.vertices, made.true_vertices)


@pytest.mark.parametrize("edge", [0.1, 0.25])
def test_edge_length_is_as_asked(edge: float) -> None:
    assert median_edge(scene(replace(SMALL, edge_mm=edge), BODIES)) == pytest.approx(edge, rel=0.12)


def test_adaptive_meshes_are_coarser_where_flat_only() -> None:
    plain, adaptive = scene(SMALL, BODIES), scene(replace(SMALL, adaptive=True), BODIES)
    assert len(adaptive.surface.faces) < 0.7 * len(plain.surface.faces)
    assert median_edge(adaptive) > 1.2 * median_edge(plain)


def test_surface_is_one_piece_oriented_and_manifold() -> None:
    for adaptive in (False, True):
        made = scene(replace(SMALL, unseen=(0.0, 0.0), adaptive=adaptive), BODIES)
        faces = made.surface.faces.astype(np.int64)
        ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
        n = len(made.label)
        _, directed = np.unique(ends[:, 0] * n + ends[:, 1], return_counts=True)
        assert directed.max() == 1
        graph = coo_matrix((np.ones(len(ends)), (ends[:, 0], ends[:, 1])), shape=(n, n))
        assert connected_components(graph, directed=False)[0] == 1
        normal = made.surface.corner_products()
        facing = np.einsum("ij,ij->i", normal, made.true_normals[faces[:, 0]])
        assert (facing > 0).mean() > 0.999


def test_tissue_is_there_and_bodies_stand_out_of_it() -> None:
    made = scene(replace(SMALL, unseen=(0.0, 0.0)), BODIES)
    assert (made.label == -1).sum() > (made.label == 0).sum()
    up = made.noise.up
    assert (made.sites[0].scan_from_connection[:3, 2] @ up) > np.cos(np.radians(30))
    height = made.true_vertices @ up
    assert height[made.label == 0].max() > np.median(height[made.label == -1]) + 2.0


def test_no_bodies_gives_teeth_and_stumps_only() -> None:
    made = scene(Settings(seed=1, bodies=0, stumps=2, edge_mm=0.3), ())
    assert not made.sites
    assert (made.label == -1).all()
    assert len(made.surface.faces) > 10_000


def test_same_seed_same_scene_and_noise_leaves_the_place_alone() -> None:
    noisy = replace(SMALL, noise=Noise(10.0, 10.0))
    first, second, other = scene(noisy, BODIES), scene(noisy, BODIES), scene(replace(noisy, seed=5), BODIES)
    assert np.array_equal(first.surface.vertices, second.surface.vertices)
    assert np.array_equal(first.sites[0].scan_from_connection, second.sites[0].scan_from_connection)
    assert first.surface.vertices.shape != other.surface.vertices.shape
    assert np.array_equal(first.true_vertices, scene(SMALL, BODIES).true_vertices)


def test_named_pose_is_kept() -> None:
    pose = np.eye(4)
    pose[:3, 3] = 0.3, 22.0, -1.0
    made = scene(replace(SMALL, bodies=(Placed(BODIES[0].id, pose),), spin=False), BODIES)
    assert np.allclose(made.sites[0].scan_from_connection, pose)


def test_edge_rounding_removes_what_a_ball_would() -> None:
    """A right-angled edge loses r(√2 − 1); nothing is lost farther than r from it."""
    radius = 0.1
    post = near_twins()[0]
    pose = np.eye(4)
    pose[:3, 3] = 0.0, 22.0, -1.0
    asked = replace(SMALL, bodies=(Placed(post.id, pose),), edge_mm=0.06, unseen=(0.0, 0.0), rounding_mm=radius)
    made = scene(asked, (post,))
    depth, points = -off(made, 0), local(made, 0)
    assert (depth > -1e-4).mean() > 0.97
    flat_edge = (np.abs(points[:, 2] - 6.0) < 1.0) & (points[:, 0] > 1.6)
    turn = np.arccos(0.75)
    assert depth[flat_edge].max() == pytest.approx(radius * (1 / np.cos(turn / 2) - 1), rel=0.25)
    wall = (points[:, 0] < -1.0) & (points[:, 2] < 7.5) & (points[:, 2] > 3.0)
    assert np.abs(depth[wall]).max() < 1e-4


@pytest.mark.parametrize("share", [0.25, 0.6])
def test_unseen_share(share: float) -> None:
    whole = scene(replace(SMALL, unseen=(0.0, 0.0)), BODIES)
    holed = scene(replace(SMALL, unseen=(share, share)), BODIES)
    left = (holed.label == 0).sum() / (whole.label == 0).sum()
    assert left == pytest.approx(1.0 - share, abs=0.08)


def test_drift_moves_bodies_rigidly() -> None:
    asked = Settings(seed=6, arch="full", bodies=3, edge_mm=0.3, noise=SILENT, drift=Drift(300.0, 60.0, 0.1))
    drifting, still = scene(asked, BODIES), scene(replace(asked, drift=Drift()), BODIES)
    moved = []
    for site in range(3):
        assert np.abs(off(drifting, site)).max() < 1e-3
        moved.append(inverse(still.sites[site].scan_from_connection) @ drifting.sites[site].scan_from_connection)
    steps = [np.linalg.norm(log(motion)[:3]) for motion in moved]
    assert max(steps) > 0.02
    assert np.linalg.norm(log(inverse(moved[0]) @ moved[2])) > 1e-3


def test_drift_is_smooth_over_the_tissue() -> None:
    """No edge of the mesh changes by more than a tenth of its length: no tear between bodies."""
    asked = Settings(seed=6, arch="full", bodies=3, edge_mm=0.3, noise=SILENT)
    still = scene(asked, BODIES)
    drifting = scene(replace(asked, drift=Drift(300.0, 60.0, 0.1)), BODIES)
    assert np.array_equal(still.surface.faces, drifting.surface.faces)
    lengths = [
        np.linalg.norm(s.surface.vertices[s.surface.faces[:, 0]] - s.surface.vertices[s.surface.faces[:, 1]], axis=1)
        for s in (still, drifting)
    ]
    assert np.abs(lengths[0] - lengths[1]).max() < 0.1 * asked.edge_mm


def test_made_error_scales_the_body() -> None:
    made = scene(replace(SMALL, made_um=60.0), BODIES)
    diameter, height = made.sites[0].made_um
    assert max(abs(diameter), abs(height)) > 5.0
    largest = np.abs(off(made, 0)).max() * 1e3
    assert 0.3 * max(abs(diameter) / 2, abs(height)) < largest < 1.3 * max(abs(diameter) / 2, abs(height))


def test_decimated_scene_keeps_vertices_and_labels() -> None:
    noisy = replace(SMALL, noise=Noise(5.0, 5.0))
    whole, fewer = scene(noisy, BODIES), scene(replace(noisy, decimate=0.4), BODIES)
    assert 0.25 < len(fewer.label) / len(whole.label) < 0.6
    kept = {tuple(v) for v in whole.surface.vertices}
    assert all(tuple(v) in kept for v in fewer.surface.vertices[::50])


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"arch": "spiral"}, "spiral"),
        ({"bodies": 9}, "0 to 8"),
        ({"bodies": ("nobody",)}, "nobody"),
        ({"arch": "single", "bodies": 4}, "do not fit"),
        ({"edge_mm": float("nan")}, "edge length"),
        ({"noise": Noise(kernel="wave")}, "kernel"),
        ({"noise": Noise(white_um=-1.0)}, "standard deviation"),
        ({"faults": (Fault(1, "haunted", 1.0),)}, "haunted"),
        ({"faults": (Fault(7, "bent body", 1.0),)}, "site 7"),
        ({"faults": (Fault(1, "bent body", 90.0),)}, "size 90"),
        ({"faults": (Fault(1, "bent body", 1.0, "wavy"),)}, "wavy"),
        ({"unseen": (0.5, 0.2)}, "unseen"),
    ],
)
def test_refusals_name_what_is_wrong(change: dict[str, object], says: str) -> None:
    with pytest.raises(UsageError, match=says) as caught:
        scene(Settings(**{"edge_mm": 0.3, "arch": "quadrant", **change}), BODIES)  # type: ignore[arg-type]
    assert "\n" not in str(caught.value)
