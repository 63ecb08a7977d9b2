"""Scan bodies that no scan can tell apart are found; near twins are not called so."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.surface import Surface
from stylobate.parts.look_alikes import LookAlike, find_look_alikes, groups_of
from stylobate.parts.model import ScanBody
from stylobate.parts.region import clip_above
from tests.unit.parts_making import flat, lobed, post, sphere


def body(name: str, region: Surface, on: str = "alder") -> ScanBody:
    return ScanBody(name, on, region, region, name)


def pairs(*bodies: ScanBody, **orders: int) -> list[LookAlike]:
    return find_look_alikes({b.id: b for b in bodies}, {"alder": 6, "hazel": 3, **orders})


def turned(surface: Surface, degrees: float, lift: float = 0.0) -> Surface:
    return surface.moved(pose(rotation_exp(np.array([0.0, 0.0, np.radians(degrees)])), np.array([0.0, 0.0, lift])))


def test_the_same_shape_on_two_connections() -> None:
    (found,) = pairs(body("a", post(flat())), body("b", post(flat()), "hazel"))
    assert "different connections" in found.what
    assert groups_of([found]) == (("a", "b"),)


def test_turned_and_meshed_differently_on_two_connections() -> None:
    other = turned(post(flat(), facets=200), 37.0)
    (found,) = pairs(body("a", post(flat())), body("b", other, "hazel"))
    assert found.what


@pytest.mark.parametrize("order", [0, 6])
def test_the_same_shape_on_one_connection_is_no_look_alike(order: int) -> None:
    (found,) = pairs(body("a", post(flat())), body("b", post(flat(), facets=160)), alder=order)
    assert found.what == ""
    assert groups_of([found]) == ()


@pytest.mark.parametrize(("degrees", "order", "same"), [(60, 6, True), (30, 6, False), (37, 0, True), (120, 3, True)])
def test_a_turn_matters_unless_the_index_makes_it_equal(degrees: float, order: int, same: bool) -> None:
    (found,) = pairs(body("a", post(flat())), body("b", turned(post(flat()), degrees)), alder=order)
    assert (found.what == "") == same


def test_one_top_at_two_heights_above_the_platform() -> None:
    (found,) = pairs(body("a", post(flat(), 8.0)), body("b", post(flat(), 9.0)))
    assert "1.000 mm apart" in found.what


def test_what_only_a_third_of_the_height_shows_tells_bodies_apart() -> None:
    assert pairs(body("a", post(flat(), 5.0)), body("b", post(flat(), 9.0))) == []


def test_a_part_below_the_platform_is_not_seen() -> None:
    peg = post(facets=6, height=2.0, base=-2.0, cap=False)
    upper = post(flat())
    joined = Surface(
        np.concatenate([upper.vertices, peg.vertices]), np.concatenate([upper.faces, peg.faces + len(upper.vertices)])
    )
    (found,) = pairs(body("a", joined), body("b", upper, "hazel"))
    assert found.what


def test_only_the_scan_regions_count() -> None:
    lower = clip_above(post(flat(), 8.0), 3.0)
    (found,) = pairs(body("a", lower), body("b", clip_above(post(flat(), 8.0), 3.5), "hazel"))
    assert found.what


def test_a_body_that_leans() -> None:
    lean = pose(rotation_exp(np.array([0.0, np.radians(17.0), 0.0])), np.array([0.0, 0.0, 0.0]))
    upright = clip_above(post(flat(), 9.0), 2.5)
    (found,) = pairs(body("a", upright), body("b", upright.moved(lean)))
    assert "leaning by 17.0°" in found.what


def test_balls_on_two_connections() -> None:
    ball = clip_above(sphere(), 1.5)
    (found,) = pairs(body("a", ball), body("b", turned(ball, 20.0, 0.7), "hazel"))
    assert found.what


def low_flat(lower: float) -> Surface:
    """A post of 8 mm with a flat from `lower` up to its top: two outlines on each other, the step itself left out."""
    below, with_flat = post(height=lower, cap=False), post(flat(), 8.0 - lower, cap=True, base=lower)
    return Surface(
        np.concatenate([below.vertices, with_flat.vertices]),
        np.concatenate([below.faces, with_flat.faces + len(below.vertices)]),
    )


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (post(flat(2.40)), post(flat(2.475))),
        (low_flat(5.0), low_flat(4.2)),
        (post(flat(depth=0.40)), post(flat(depth=0.44))),
        (post(lobed(3)), post(lobed(4))),
        (post(flat(at=0.0)), post()),
        (post(lobed(3, rise=0.2)), post(lobed(3, rise=0.24))),
    ],
    ids=["4.80 against 4.95", "flat 0.8 mm lower", "flat 40 µm deeper", "lobes", "flat against round", "rise"],
)
def test_near_twins_are_told_apart(one: Surface, other: Surface) -> None:
    assert pairs(body("a", one), body("b", other, "hazel")) == []
    assert pairs(body("a", one), body("b", other)) == []


@pytest.mark.parametrize(("off_um", "alike"), [(5.0, True), (30.0, False)])
def test_the_line_is_drawn_near_ten_micrometres(off_um: float, alike: bool) -> None:
    grown = post(flat(2.4 + off_um * 1e-3, 0.4))
    assert bool(pairs(body("a", post(flat())), body("b", grown, "hazel"))) == alike


def test_a_mirrored_body_is_another() -> None:
    def outline(angle):  # type: ignore[no-untyped-def]
        return 2.4 + 0.15 * np.cos(3 * angle) + 0.1 * np.sin(2 * angle + 0.4)

    one = post(outline)
    mirrored = Surface(one.vertices * [1.0, -1.0, 1.0], np.ascontiguousarray(one.faces[:, ::-1]))
    assert pairs(body("a", one), body("b", mirrored, "hazel")) == []


def test_groups_join_pairs() -> None:
    found = pairs(*(body(name, post(flat()), on) for name, on in [("a", "alder"), ("b", "hazel"), ("c", "rowan")]))
    assert groups_of(found) == (("a", "b", "c"),)
