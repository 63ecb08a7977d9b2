"""Simulated truth is found again: bodies drawn anew, seeds that no development run used."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.result import Result
from stylobate.core.surface import Scan, Surface
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.simulate import Fault, Noise, Settings, draw_bodies, draw_body, near_twins, scene

SEEDS = range(910_000, 910_006)


def folder_of(bodies: tuple[ScanBody, ...]) -> PartsFolder:
    names = sorted({body.seats_on for body in bodies})
    connections = tuple(Connection(name, "other", 1, 4.2) for name in names)
    return PartsFolder("drawn", "1", "CC0-1.0", "0", connections, bodies)


def scan_of(surface: Surface) -> Scan:
    origin = np.round(surface.vertices.mean(axis=0))
    return Scan(Surface(np.ascontiguousarray(surface.vertices - origin), surface.faces), origin, "scan.stl", "0")


@cache
def measured(seed: int) -> tuple[Result, list[tuple[str, np.ndarray]]]:
    bodies = tuple(draw_bodies(seed, 4))
    settings = Settings(seed=seed, bodies=2, edge_mm=0.2, noise=Noise(8.0, 9.0, 0.7, "matern52"))
    made = scene(settings, bodies)
    result = measure(scan_of(made.surface), folder_of(bodies), maps=False)
    return result, [(site.body.id, site.scan_from_connection) for site in made.sites]


@pytest.mark.parametrize("seed", SEEDS)
def test_every_body_is_found_where_it_stands(seed: int) -> None:
    result, truth = measured(seed)
    assert len(result.sites) == len(truth)
    for name, pose in truth:
        site = min(result.sites, key=lambda s: float(np.linalg.norm(s.scan_from_connection[:3, 3] - pose[:3, 3])))
        xi = rigid.log(rigid.inverse(pose) @ site.scan_from_connection)
        assert site.scan_body == name or "part ambiguous" in [f.cause for f in site.findings]
        # Three times a 95 % bound is beyond six standard deviations of a true bound.
        assert 1e3 * np.linalg.norm(xi[:3]) < 3 * site.u95.platform_um
        assert np.degrees(np.linalg.norm(xi[3:5])) < 3 * site.u95.axis_deg


def test_most_bounds_hold_the_truth() -> None:
    """Of about 12 sites a true 95 % bound misses 4 or more with probability 0.002 (binomial)."""
    missed = 0
    for seed in SEEDS:
        result, truth = measured(seed)
        for _, pose in truth:
            errors = [np.linalg.norm(s.scan_from_connection[:3, 3] - pose[:3, 3]) for s in result.sites]
            missed += int(1e3 * min(errors) > result.sites[int(np.argmin(errors))].u95.platform_um)
    assert missed < 4


def test_stumps_and_teeth_are_no_scan_bodies() -> None:
    bodies = tuple(draw_bodies(910_100, 4))
    made = scene(Settings(seed=910_100, bodies=0, stumps=2, edge_mm=0.2), bodies)
    assert measure(scan_of(made.surface), folder_of(bodies), maps=False).sites == ()


@pytest.mark.parametrize(("seed", "layer_um"), [(910_201, 0.0), (910_202, 40.0)])
def test_near_twins_are_told_apart_or_called_ambiguous(seed: int, layer_um: float) -> None:
    twins = tuple(near_twins())
    faults = (Fault(1, "added layer", layer_um),) if layer_um else ()
    made = scene(Settings(seed=seed, arch="single", bodies=(twins[0].id,), faults=faults, edge_mm=0.2), twins)
    (site,) = measure(scan_of(made.surface), folder_of(twins), maps=False).sites
    assert site.scan_body == twins[0].id or "part ambiguous" in [f.cause for f in site.findings]
    assert all(a.odds >= 1.0 for a in site.alternatives)


def test_moving_the_scan_far_away_moves_the_answer_along() -> None:
    bodies = tuple(draw_bodies(910_300, 3))
    made = scene(Settings(seed=910_300, arch="single", bodies=1, edge_mm=0.2), bodies)
    near = scan_of(made.surface)
    far = Scan(near.surface, near.origin + 5000.0, "scan.stl", "0")
    (one,) = measure(near, folder_of(bodies), maps=False).sites
    (two,) = measure(far, folder_of(bodies), maps=False).sites
    shift = two.scan_from_connection[:3, 3] - one.scan_from_connection[:3, 3]
    assert np.allclose(shift, 5000.0, atol=1e-7)


@pytest.mark.parametrize("seed", [910_001, 910_004])
def test_a_body_whose_part_is_missing_is_never_used_and_its_place_is_said(seed: int) -> None:
    bodies = tuple(draw_bodies(seed, 4))
    made = scene(Settings(seed=seed, bodies=1, edge_mm=0.15, noise=Noise(6.0, 6.0, 0.7, "matern52")), bodies)
    stands = made.sites[0]
    rest = tuple(body for body in bodies if body.id != stands.body.id)
    result = measure(scan_of(made.surface), folder_of(rest), maps=False)
    assert all(site.verdict is not None and site.verdict.verdict != "use" for site in result.sites)
    named = any("no part fits" in [finding.cause for finding in site.findings] for site in result.sites)
    assert named or any("no part fits" in warning for warning in result.warnings)


def test_rough_points_near_two_bodies_of_one_kind_give_both() -> None:
    body = draw_bodies(910_100, 1)[0]
    made = scene(Settings(seed=910_100, bodies=(body.id, body.id), edge_mm=0.2, noise=Noise(8.0, 9.0, 0.7)), (body,))
    points = [(site.scan_from_connection @ [0.4, -0.3, 4.0, 1.0])[:3].tolist() for site in made.sites]
    found = measure(scan_of(made.surface), folder_of((body,)), near=points, maps=False).sites
    assert len(found) == 2
    for truth in made.sites:
        assert (
            min(np.linalg.norm(s.scan_from_connection[:3, 3] - truth.scan_from_connection[:3, 3]) for s in found) < 0.1
        )


def test_a_turn_shown_by_a_short_edge_does_not_throw_the_body_off() -> None:
    """A third of the body is seen, and of its flat a corner: a step of least squares there is a quarter turn."""
    bodies = tuple(draw_bodies(31_069, 6))
    noise = Noise(13.3, 5.66, 0.714, "matern32", view_share=0.0)
    settings = Settings(
        seed=31_069, arch="single", bodies=(bodies[4].id,), edge_mm=0.2536, gum=(0.05, 0.33), unseen=(0.25, 0.6),
        noise=noise,
    )  # fmt: skip
    made = scene(settings, bodies)
    result = measure(scan_of(made.surface), folder_of(bodies), maps=False)
    assert [site.scan_body for site in result.sites] == [bodies[4].id]
    xi = rigid.log(rigid.inverse(made.sites[0].scan_from_connection) @ result.sites[0].scan_from_connection)
    assert 1e3 * np.linalg.norm(xi[:3]) < 2 * result.sites[0].u95.platform_um


def test_the_bend_that_would_not_show_is_said() -> None:
    result, _ = measured(SEEDS[0])
    sizes = [site.hidden.size_deg for site in result.sites if site.hidden is not None]
    assert len(sizes) == len(result.sites)
    assert all(0.05 < size < 10.0 for size in sizes)
    said = next(item.check for item in result.not_shown if item.what == "a bend below what is seen")
    assert f"{max(sizes):.1f}°" in said


def test_a_soft_body_that_may_hide_a_bend_is_said_where_it_is_to_be_used() -> None:
    bodies = tuple(replace(body, material="Polymer, white") for body in draw_bodies(int(SEEDS[0]), 1))
    settings = Settings(seed=SEEDS[0], arch="single", bodies=1, edge_mm=0.2, unseen=(0.0, 0.1))
    result = measure(scan_of(scene(settings, bodies).surface), folder_of(bodies), maps=False)
    (site,) = result.sites
    assert site.hidden is not None
    assert site.verdict is not None
    assert f"this scan would not show it: a bend below {site.hidden.size_deg:.1f}°" in site.verdict.because


def test_a_body_of_which_only_the_wall_is_seen_is_said_to_stand_anywhere_along_it() -> None:
    """Flat and round alike run on unchanged between 4.5 and 8.8 mm of this body."""
    bodies = (draw_body(np.random.default_rng(4), "drawn", "alder", "slender"),)
    made = scene(Settings(seed=910_300, arch="single", bodies=1, edge_mm=0.15, unseen=(0.0, 0.05), stumps=0), bodies)
    stands = made.sites[0].scan_from_connection
    height = (made.surface.vertices - stands[:3, 3]) @ stands[:3, 2]
    cut = (made.label == 0) & ((height < 4.5) | (height > 8.8))
    faces = made.surface.faces[~cut[made.surface.faces].any(axis=1)]
    result = measure(scan_of(Surface(made.surface.vertices, faces)), folder_of(bodies), maps=False)
    assert result.sites == ()
    assert "too little is seen to fix where the scan body stands" in " ".join(result.warnings)
