"""Which motions a region fixes, against closed forms; turns after which a body looks the same; clipping."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stylobate.core.surface import Surface
from stylobate.parts.edges import Edges
from stylobate.parts.freedom import LOOSE, WEAK, describe, freedom
from stylobate.parts.region import clip_above
from stylobate.parts.shape import check_region
from stylobate.parts.turns import check_stray, check_turns
from tests.unit.parts_making import flat, flipped, lobed, plate, post, sphere


def information(surface: Surface) -> np.ndarray:
    return freedom(Edges.of(surface)).information


def loose(surface: Surface) -> str | None:
    found = describe(freedom(Edges.of(surface)), LOOSE)
    return found.words if found else None


def test_cylinder_wall_has_the_information_of_the_closed_form() -> None:
    r, h = 2.4, 6.0
    square = r**2 + h**2 / 12.0  # mean |p − c|²
    expected = np.diag([0.5, 0.5, 0.0, h**2 / 24.0 / square, h**2 / 24.0 / square, 0.0])
    # 256 facets: chords shorten radii by r (1 − cos(π/256)), 8e-5 of them
    np.testing.assert_allclose(information(post(r, h, 256, cap=False)), expected, atol=2e-4)
    assert loose(post(r, h, cap=False)) == "height along the axis and turn about the axis"


def test_sphere_has_the_information_of_the_closed_form() -> None:
    expected = np.diag([1 / 3, 1 / 3, 1 / 3, 0.0, 0.0, 0.0])
    np.testing.assert_allclose(information(sphere()), expected, atol=1e-3)
    assert loose(sphere()) == "any turn about one point (the region is a ball)"


def test_plane_has_the_information_of_the_closed_form() -> None:
    w, h = 4.0, 3.0
    square = (w**2 + h**2) / 12.0
    expected = np.diag([0.0, 0.0, 1.0, h**2 / 12.0 / square, w**2 / 12.0 / square, 0.0])
    np.testing.assert_allclose(information(plate(w, h)), expected, atol=1e-12)
    assert loose(plate(w, h)) == "any sideways shift and turn about the axis"


@pytest.mark.parametrize("facets", [24, 32, 64, 256])
def test_a_round_post_is_round_in_any_number_of_facets(facets: int) -> None:
    found = describe(freedom(Edges.of(post(facets=facets))), LOOSE)
    assert found is not None
    assert found.only_spin
    assert found.words == "turn about the axis"


@pytest.mark.parametrize("outline", [flat(), flat(depth=0.2), lobed(3), lobed(2, rise=0.1)])
def test_flats_and_lobes_fix_the_turn(outline) -> None:  # type: ignore[no-untyped-def]
    assert describe(freedom(Edges.of(post(outline))), WEAK) is None


def test_a_hexagonal_prism_keeps_its_edges() -> None:
    assert loose(post(facets=6)) is None


def test_irregular_triangles_do_not_make_a_round_wall_count_as_indexed() -> None:
    from scipy.spatial import Delaunay

    rng = np.random.default_rng(5)
    ring = np.linspace(0.0, 2.0 * np.pi, 65)[:-1]
    angle = np.concatenate([rng.uniform(0.0, 2.0 * np.pi, 1500), ring, ring])
    z = np.concatenate([rng.uniform(0.0, 6.0, 1500), np.zeros(64), np.full(64, 6.0)])
    around = np.concatenate([angle - 2 * np.pi, angle, angle + 2 * np.pi])
    cells = Delaunay(np.stack([around * 2.4, np.tile(z, 3)], axis=1)).simplices
    middle = around[cells].mean(axis=1)
    faces = cells[(middle >= 0) & (middle < 2 * np.pi)] % len(angle)
    vertices = np.stack([2.4 * np.cos(angle), 2.4 * np.sin(angle), z], axis=1)
    wall = Surface(vertices, faces.astype(np.int32))
    outward = np.einsum("ij,ij->i", wall.corner_products()[:, :2], vertices[faces].mean(axis=1)[:, :2]) > 0
    wall = Surface(vertices, np.where(outward[:, None], faces, faces[:, ::-1]).astype(np.int32))
    assert loose(wall) == "height along the axis and turn about the axis"


@given(st.floats(0.0, 2 * np.pi), st.floats(-1.0, 1.0), st.floats(0.0, 2 * np.pi))
def test_information_does_not_depend_on_the_frame(azimuth: float, cosine: float, spin: float) -> None:
    from stylobate.core.rigid import pose, rotation_exp

    sine = np.sqrt(1 - cosine**2)
    axis = np.array([sine * np.cos(azimuth), sine * np.sin(azimuth), cosine])
    surface = post(flat(), facets=32)
    moved = surface.moved(pose(rotation_exp(axis * spin), np.array([3.0, -20.0, 7.0])))
    before, after = (np.linalg.eigvalsh(information(s)) for s in (surface, moved))
    np.testing.assert_allclose(after, before, atol=1e-9)


def test_loose_height_blocks_and_a_loose_turn_only_where_there_is_an_index() -> None:
    (tube,) = check_region(Edges.of(post(flat(), cap=False)), 6)
    assert tube.blocks
    assert "height along the axis" in tube.what
    (turn,) = check_region(Edges.of(post()), 6)
    assert not turn.blocks
    assert turn.loose
    assert "no index" in turn.what
    assert check_region(Edges.of(post()), 0) == []
    assert check_region(Edges.of(post(flat())), 6) == []


def test_a_tiny_region_blocks() -> None:
    (small,) = check_region(Edges.of(plate(1.0, 1.0)), 0)
    assert small.blocks


@pytest.mark.parametrize(
    ("shape", "order", "step"),
    [
        (post(facets=6), 1, "60"),
        (post(facets=6), 4, "60"),
        (post(facets=6), 6, None),
        (post(facets=6), 12, None),
        (post(lobed(3)), 1, "120"),
        (post(lobed(3)), 3, None),
        (post(lobed(3)), 6, None),
        (post(lobed(2)), 6, None),
        (post(lobed(2)), 3, "180"),
        (post(flat()), 1, None),
    ],
)
def test_turns_after_which_the_body_looks_the_same(shape: Surface, order: int, step: str | None) -> None:
    remarks = check_turns(Edges.of(shape), order)
    assert len(remarks) == (step is not None)
    assert all(f"each turn of {step}°" in remark.what and remark.loose for remark in remarks)


def test_clip_keeps_exactly_what_lies_above() -> None:
    surface = post(flat(), height=8.0)
    region = clip_above(surface, 3.3)
    wall = surface.face_areas().sum() - clip_above(surface, 8.0 - 1e-9).face_areas().sum()
    assert region.vertices[:, 2].min() == 3.3
    assert region.face_areas().sum() == pytest.approx(surface.face_areas().sum() - wall * 3.3 / 8.0, rel=1e-9)
    edges = Edges.of(region)
    assert edges.against == 0
    ends = region.vertices[edges.ends[edges.count == 1]]
    np.testing.assert_array_equal(ends[:, :, 2], 3.3)


@given(st.floats(0.0, 6.0, allow_subnormal=False))
def test_clip_of_a_ball_has_the_area_of_the_cap(z: float) -> None:
    region = clip_above(sphere(2.4, (0.0, 0.0, 3.0), 64), z)
    cap = 2 * np.pi * 2.4 * np.clip(5.4 - z, 0.0, 4.8)
    # rings of 5.6° flatten the ball: at most half a ring's sagitta (1 − cos 2.8°) of the area, and of the height
    assert region.face_areas().sum() == pytest.approx(cap, abs=0.006 * 4 * np.pi * 2.4**2)
    assert (region.vertices[:, 2] >= z).all()


def test_clip_above_everything_is_empty_and_below_everything_is_all() -> None:
    surface = post(base=1.0)
    assert len(clip_above(surface, 20.0).faces) == 0
    assert len(clip_above(surface, 1.0).faces) == len(surface.faces)


def test_a_region_that_strays_is_named_with_its_distance() -> None:
    body = post(flat())
    assert check_stray(clip_above(body, 3.0), body) == []
    (remark,) = check_stray(Surface(body.vertices + [0.0, 0.0, 0.1], body.faces), body)
    assert "100 µm" in remark.what


def test_turned_over_faces_do_not_change_what_is_fixed() -> None:
    values = [np.linalg.eigvalsh(information(s)) for s in (post(flat()), flipped(post(flat())))]
    np.testing.assert_allclose(values[0], values[1], atol=1e-12)
