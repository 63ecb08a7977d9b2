"""Each fault does what its size says, where it says, and leaves the truth of the pose alone."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse, log
from stylobate.core.sampling import sampled
from stylobate.core.types import FloatArray
from stylobate.simulate import Fault, Noise, Scene, Settings, draw_bodies, draw_body, near_twins, scene
from stylobate.simulate.edges import rounded, sharp_edges
from stylobate.simulate.faults import WORN_COSINE, worn_radius, worn_spot
from stylobate.simulate.settings import CAUSES

TWINS = near_twins()
PLAIN = Settings(
    seed=9,
    arch="quadrant",
    bodies=("twin-480",),
    edge_mm=0.15,
    noise=Noise(0.0, 0.0),
    unseen=(0.0, 0.0),
    gum=(0.1, 0.1),
)
CLEAN = scene(PLAIN, TWINS)


def faulty(cause: str, size: float, style: str = "") -> Scene:
    return scene(replace(PLAIN, faults=(Fault(1, cause, size, style),)), TWINS)


def local(made: Scene, moved: bool = False) -> FloatArray:
    pose = made.sites[0].scan_from_connection
    points = made.surface.vertices if moved else made.true_vertices
    return np.asarray((points[made.label == 0] - pose[:3, 3]) @ pose[:3, :3])


def deviation(made: Scene, moved: bool = False) -> FloatArray:
    """Signed distance to the body that stands there, µm."""
    return SurfaceTree.of(made.sites[0].body.surface).closest(local(made, moved)).distance * 1e3


@pytest.mark.parametrize("cause", [c for c in CAUSES if c != "unseated"])
def test_the_pose_of_the_truth_stays(cause: str) -> None:
    made = faulty(cause, 0.3 if cause == "missing surface" else 2.0)
    assert np.allclose(made.sites[0].scan_from_connection, CLEAN.sites[0].scan_from_connection)
    assert np.allclose(made.sites[0].scan_from_implant, made.sites[0].scan_from_connection)
    assert made.sites[0].expected == "twin-480"


@pytest.mark.parametrize("style", ["even", "pooled"])
def test_layer_lies_outside_and_has_its_mean(style: str) -> None:
    found = deviation(faulty("added layer", 40.0, style))
    assert found.mean() == pytest.approx(40.0, rel=0.25)
    assert found.min() > -1.0
    low = local(faulty("added layer", 40.0, style))[:, 2] < CLEAN.sites[0].gum_mm + 1.0
    if style == "pooled":
        assert found[low].mean() > 1.3 * found[~low].mean()


@pytest.mark.parametrize("style", ["progressive", "low hinge"])
def test_bend_leans_the_top_and_keeps_the_foot(style: str) -> None:
    clean, bent = local(CLEAN), local(faulty("bent body", 2.0, style))
    start = max(CLEAN.sites[0].gum_mm, 0.3 * 8.0)
    shift = np.linalg.norm((bent - clean)[:, :2], axis=1)
    assert np.abs((bent - clean)[clean[:, 2] < start]).max() < 1e-9
    share = 1.0 if style == "low hinge" else 0.5
    top = clean[:, 2] > 7.9
    assert shift[top].mean() == pytest.approx(share * np.radians(2.0) * (8.0 - start), rel=0.05)
    normal = np.linalg.svd(bent[top & (np.linalg.norm(clean[:, :2], axis=1) < 2.0)] - bent[top].mean(0))[2][2]
    assert np.degrees(np.arccos(abs(normal[2]))) == pytest.approx(2.0, abs=0.05)


def test_chip_takes_material_to_its_depth() -> None:
    made = faulty("lost material", 300.0, "chip")
    found = deviation(made)
    assert -330.0 < found.min() < -150.0
    assert found.max() < 0.1
    assert 0.001 < (found < -1.0).mean() < 0.15
    assert np.array_equal(np.abs(found) > 0.01, ~made.as_drawn[made.label == 0])


@pytest.mark.parametrize("seed", [9, 2, 1])
def test_worn_edge_is_local_and_no_deeper_than_said(seed: int) -> None:
    """The mesh has no vertex on the edge itself, so what it shows is less than the depth there, never more."""
    worn = replace(PLAIN, seed=seed, edge_mm=0.08, faults=(Fault(1, "lost material", 80.0, "worn edge"),))
    found = deviation(scene(worn, TWINS))
    assert -85.0 < found.min() < -40.0
    assert 0.001 < (found < -1.0).mean() < 0.2


def test_wear_fills_no_corner() -> None:
    """About a stepped post's shoulder a worn edge lies beside a hollow one: rounded as well, it stood 0.1 mm out."""
    rng = np.random.default_rng(5)
    stepped = (draw_body(rng, "stepped", "alder", "stepped"),)
    for seed in (3, 4, 5, 6):
        worn = replace(
            PLAIN,
            seed=seed,
            arch="single",
            bodies=("stepped",),
            faults=(Fault(1, "lost material", 250.0, "worn edge"),),
        )
        found = deviation(scene(worn, stepped))
        assert found.min() < -50.0
        assert found.max() < 0.1


def test_lump_stands_out_by_its_height() -> None:
    found = deviation(faulty("added material", 250.0))
    assert 180.0 < found.max() < 260.0
    assert found.min() > -0.1


def test_rough_surface_has_its_sd() -> None:
    found = deviation(faulty("rough surface", 30.0), moved=True)
    assert found.std() == pytest.approx(30.0, rel=0.15)


def test_split_moves_one_side_by_its_size() -> None:
    step = np.linalg.norm(local(faulty("split surface", 120.0)) - local(CLEAN), axis=1) * 1e3
    shifted = step > 1.0
    assert 0.25 < shifted.mean() < 0.75
    assert step[shifted] == pytest.approx(120.0)


def test_missing_surface() -> None:
    made = faulty("missing surface", 0.5)
    assert (made.label == 0).sum() / (CLEAN.label == 0).sum() == pytest.approx(0.5, abs=0.06)


def test_other_parts_stand_there() -> None:
    other, foreign = faulty("other part fits better", 0.0), faulty("no part fits", 0.0)
    assert other.sites[0].body.id in {"twin-495", "twin-low-flat"}
    assert foreign.sites[0].body.id not in {body.id for body in TWINS}
    for made in (other, foreign):
        assert np.abs(deviation(made)).max() < 1.0
        own = SurfaceTree.of(TWINS[0].surface).closest(local(made)).distance
        assert np.abs(own).max() > 0.05


def test_hidden_index_leaves_a_body_that_turns_onto_itself() -> None:
    tree = SurfaceTree.of(TWINS[0].surface)
    seen = local(faulty("index ambiguous", 0.0))
    residual = []
    for turn in np.radians([60.0, 90.0, 120.0, 180.0, 240.0, 270.0, 300.0]):
        c, s = np.cos(turn), np.sin(turn)
        residual.append(np.abs(tree.closest(seen @ np.array([[c, s, 0], [-s, c, 0], [0, 0, 1.0]])).distance).max())
    assert min(residual) < 0.0101
    assert len(seen) > 0.5 * (CLEAN.label == 0).sum()


def test_unseated_body_stands_off_the_implant_and_looks_whole() -> None:
    made = faulty("unseated", 150.0)
    assert np.abs(deviation(made)).max() < 1.0
    off = log(inverse(made.sites[0].scan_from_implant) @ made.sites[0].scan_from_connection)
    assert off[2] == pytest.approx(0.150, abs=0.005)
    assert np.allclose(made.surface.vertices, CLEAN.surface.vertices)


def test_layer_at_one_site_only() -> None:
    asked = Settings(
        seed=3, arch="full", bodies=3, edge_mm=0.3, noise=Noise(0.0, 0.0), faults=(Fault(2, "added layer", 60.0),)
    )
    made = scene(asked, draw_bodies(1, 3))
    for site, truth in enumerate(made.sites):
        pose = truth.scan_from_connection
        points = (made.true_vertices[made.label == site] - pose[:3, 3]) @ pose[:3, :3]
        mean = SurfaceTree.of(truth.body.surface).closest(points).distance.mean() * 1e3
        assert mean == pytest.approx(60.0 if site == 1 else 0.0, abs=15.0 if site == 1 else 0.01)


def test_a_hinge_leaves_what_is_below_it_and_leans_all_above_it() -> None:
    clean, bent = local(CLEAN), local(faulty("bent body", 2.0, "hinge"))
    moved = np.linalg.norm(bent - clean, axis=1) > 1e-9
    hinge = clean[moved, 2].min()
    start = max(CLEAN.sites[0].gum_mm, 0.3 * 8.0)
    assert start + 0.1 < hinge < start + 0.6 * (8.0 - start) + 0.15  # not a low hinge; an edge's length beyond at most
    assert np.all(moved[clean[:, 2] > hinge + 1e-3])
    top = clean[:, 2] > 7.9
    shift = np.linalg.norm((bent - clean)[top][:, :2], axis=1).mean()
    assert shift == pytest.approx(np.radians(2.0) * (8.0 - hinge), rel=0.1)


@pytest.mark.parametrize("seed", [568, 623, 629])
def test_wear_takes_no_more_off_the_surface_than_off_the_edge(seed: int) -> None:
    """Beside hollow edges a ball as large as the edges bear moved the surface up to 1.5 mm and took 0.5 mm off it."""
    body = draw_bodies(seed, 1)[0]
    edges, top = sharp_edges(body.surface), float(body.surface.vertices[:, 2].max())
    points, normals = sampled(body.surface, 0.06)
    worn = worn_radius((Fault(1, "lost material", 300.0, "worn edge"),), body, edges, points, 0.0, 0.2 * top,
                       np.random.default_rng(seed))  # fmt: skip
    moved, _ = rounded(points, normals, edges, np.zeros(len(points)), worn)
    off = SurfaceTree.of(body.surface).closest(moved, 2.0).distance
    assert 0.05 < -off.min() < 0.33
    assert off.max() < 0.01


def test_an_edge_is_worn_where_it_turns_enough_to_lose_a_depth() -> None:
    """A bevelled body has edges of 75° and more, and flatter ones."""
    body = draw_body(np.random.default_rng(4), "bevelled-1", "alder", "bevelled")
    edges, turn = sharp_edges(body.surface), np.degrees(np.arccos(WORN_COSINE))
    steep = np.degrees(np.arccos(np.einsum("ij,ij->i", edges.normals[:, 0], edges.normals[:, 1]))) >= turn - 1e-6
    assert np.any(~steep & (edges.convex > 0) & (edges.ends[:, :, 2].mean(axis=1) > 2.5))
    for seed in range(20):
        spot = worn_spot(body, edges, 2.0, np.random.default_rng(seed))
        assert steep[np.argmin(np.linalg.norm(edges.ends.mean(axis=1) - spot, axis=1))]
