"""Scans of one mouth in different frames are joined to where they are; what cannot be joined well is refused."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import BoolArray
from stylobate.joining import Site, join, joins
from stylobate.joining.crowns import crowns
from stylobate.joining.thin import Points
from stylobate.joining.toothed import toothed
from stylobate.simulate import Drift, Scene, Settings, Visit, again, bite, draw_bodies, scene

SEED = 9_400_000  # no development run uses seeds near it
BODIES = draw_bodies(seed=SEED, count=3)


def scan_of(surface: Surface, name: str) -> Scan:
    """A scan as it would be read."""
    origin = np.round(surface.vertices.mean(axis=0))
    return Scan(Surface(surface.vertices - origin, surface.faces), origin, name, "")


def sites_of(made: Scene) -> tuple[Site, ...]:
    """Where the bodies stand, as measured without error."""
    return tuple(Site(truth.site, truth.scan_from_connection, 4.2) for truth in made.sites)


@cache
def pair(seed: int, arch: str = "quadrant") -> tuple[Scene, Scene]:
    """A scan with bodies, and one with healing caps after the gingiva has moved."""
    settings = Settings(seed=seed, arch=arch, bodies=2, edge_mm=0.3)
    return scene(settings, BODIES), again(settings, BODIES, Visit(seed + 1, caps=True, gum_um=60.0))


def cut(surface: Surface, kept: BoolArray) -> Surface:
    """The faces whose corners are all kept."""
    return Surface(surface.vertices, surface.faces[kept[surface.faces].all(axis=1)])


@pytest.mark.parametrize("seed", [SEED, SEED + 10])
def test_sites_are_where_the_join_says_within_its_bounds(seed: int) -> None:
    first, second = pair(seed)
    found = join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first))
    assert [site.site for site in found.sites] == [truth.site for truth in first.sites]
    for one, two, stated in zip(first.sites, second.sites, found.sites, strict=True):
        left = rigid.log(rigid.inverse(found.first_from_second @ two.scan_from_connection) @ one.scan_from_connection)
        assert 1e3 * np.linalg.norm(left[:3]) <= stated.platform_um <= 100.0
        assert np.degrees(np.linalg.norm(left[3:5])) <= stated.axis_deg <= 0.5


def test_neither_frame_nor_origin_changes_where_a_scan_is_laid() -> None:
    first, second = pair(SEED)
    away = rigid.exp(np.array([4000.0, -900.0, 250.0, 1.1, -0.4, 2.0]))
    plain = join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first))
    moved = join(scan_of(first.surface, "a"), scan_of(second.surface.moved(away), "b"), sites_of(first))
    apart = rigid.log(rigid.inverse(plain.first_from_second) @ moved.first_from_second @ away)
    middle = second.surface.vertices.mean(axis=0)
    assert np.linalg.norm(apart[:3] + np.cross(apart[3:], middle)) < 0.01


def test_another_mouth_is_refused() -> None:
    first, second = pair(SEED)[0], pair(SEED + 10)[1]
    with pytest.raises(JoinError, match=r"b on a: .*(mm² of teeth|looks like)"):
        join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first))


def test_a_scan_of_too_few_teeth_is_refused_with_how_much_it_shares() -> None:
    first, second = pair(SEED)
    end = second.surface.vertices - second.sites[0].scan_from_connection[:3, 3]
    kept = np.linalg.norm(end, axis=1) < 7.0
    with pytest.raises(JoinError, match=r"b on a: .*(mm²|looks like)"):
        join(scan_of(first.surface, "a"), scan_of(cut(second.surface, kept), "b"), sites_of(first))


@pytest.mark.parametrize("palate", [False, True])
def test_a_jaw_without_teeth_is_refused_as_gingiva_moves(palate: bool) -> None:
    settings = Settings(seed=SEED + 40, bodies=3, teeth=False, palate=palate, edge_mm=0.3)
    first, second = scene(settings, BODIES), again(settings, BODIES, Visit(SEED + 41, caps=True, gum_um=30.0))
    with pytest.raises(JoinError, match=r"b on a: no teeth can be told in what agrees"):
        join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first))


def test_stumps_are_teeth() -> None:
    settings = Settings(seed=SEED + 50, bodies=2, teeth=False, stumps=4, edge_mm=0.3)
    first, second = scene(settings, BODIES), again(settings, BODIES, Visit(SEED + 51, gum_um=30.0))
    found = join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first))
    assert found.worst_um <= 100.0


def test_what_curves_both_ways_is_told_from_what_curves_one_way() -> None:
    x, turn = np.meshgrid(np.arange(0.0, 40.0, 0.7), np.linspace(0.2, np.pi - 0.2, 12))
    around = np.column_stack([np.zeros(x.size), np.cos(turn).ravel(), np.sin(turn).ravel()])
    ridge = Points(3.0 * around + np.outer(x.ravel(), [1.0, 0.0, 0.0]), around)
    lean = np.sin(2.0 * np.pi * x.ravel() / 7.0)
    bumpy = around + np.outer(lean, [1.0, 0.0, 0.0])
    crowns_too = Points(ridge.at, bumpy / np.linalg.norm(bumpy, axis=1, keepdims=True))
    assert toothed(ridge, ridge) < 0.05
    assert toothed(crowns_too, crowns_too) > 0.5


def test_a_bound_above_the_limit_is_refused() -> None:
    first, second = pair(SEED)
    with pytest.raises(JoinError, match=r"above the limit of 5 µm"):
        join(scan_of(first.surface, "a"), scan_of(second.surface, "b"), sites_of(first), limit_um=5.0)


def test_crowns_are_teeth_and_not_the_ridge() -> None:
    flat = np.stack(np.meshgrid(np.arange(0.0, 60.0, 0.5), np.arange(0.0, 12.0, 0.5)), axis=-1).reshape(-1, 2)
    height = np.where((flat[:, 0] % 20.0 < 7.0) & (np.abs(flat[:, 1] - 6.0) < 3.0), 7.0, 0.0)
    points = np.column_stack([flat, height])
    on = crowns(points, points, np.array([0.0, 0.0, 2.0]))
    assert on[height > 0.0].all()
    assert not on[height == 0.0].any()


def test_the_opposing_jaw_comes_by_way_of_a_bite_scan() -> None:
    upper = Settings(seed=SEED + 20, arch="full", bodies=1, edge_mm=0.4, spin=False)
    lower = Settings(seed=SEED + 30, arch="full", bodies=0, edge_mm=0.4, spin=False, drift=Drift())
    mouth_from_lower = rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, np.pi - 1e-9, 0.0]))
    mouth_from_lower[:3, 3] = [0.2, -0.8, 14.0]
    frame = rigid.exp(np.array([20.0, -35.0, 12.0, 0.7, 0.2, -1.3]))
    bodies, flat = scene(upper, BODIES), scene(lower, BODIES)
    seen = bite(again(upper, BODIES, Visit(SEED + 21, caps=True)), again(lower, BODIES, Visit(SEED + 31)),
                mouth_from_lower, frame)  # fmt: skip
    turned = rigid.exp(np.array([5.0, 9.0, -40.0, -0.8, 1.4, 0.3]))
    found = joins(
        scan_of(bodies.surface, "bodies"), sites_of(bodies), opposing=scan_of(flat.surface.moved(turned), "lower"),
        bite=scan_of(seen, "bite"),
    )["opposing"]  # fmt: skip
    left = found.first_from_second @ turned @ rigid.inverse(mouth_from_lower)
    at = bodies.sites[0].scan_from_connection[:3, 3]
    off = left[:3, :3] @ at + left[:3, 3] - at
    assert 1e3 * np.linalg.norm(off) <= found.sites[0].platform_um


def test_a_result_without_sites_is_refused() -> None:
    first, second = pair(SEED)
    with pytest.raises(JoinError, match="no site"):
        joins(scan_of(first.surface, "a"), (), tissue=replace(scan_of(second.surface, "b")))
