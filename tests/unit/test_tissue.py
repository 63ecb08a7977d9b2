"""Which end of a scan body is up: told by the tissue, where the post alone would fit either way."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.find.search import Reading, _upright
from stylobate.find.template import template_of
from stylobate.find.thin import thin, vertex_normals
from stylobate.find.tissue import Post, above_the_post, on_its_head
from stylobate.fit.descend import Around, around
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.simulate import Noise, Scene, Settings, draw_body, scene

ROUND = ("flatted-cylinder", "slender", "cone")


def made(family: str, seed: int, unseen: tuple[float, float] = (0.0, 0.0)) -> tuple[Scene, ScanBody]:
    body = draw_body(np.random.default_rng(seed), "drawn", "alder", family)
    noise = Noise(5.0, 6.0, 0.6)
    return scene(Settings(seed=seed, bodies=("drawn",), edge_mm=0.25, noise=noise, unseen=unseen), (body,)), body


def seen_about(what: Scene, body: ScanBody) -> Around:
    surface, pose = what.surface, what.sites[0].scan_from_connection
    normals = vertex_normals(surface.vertices, surface.faces)
    return around(surface.vertices, normals, pose[:3, 3] + pose[:3, 2] * body.region.vertices[:, 2].mean(), 10.0)


def upside_down(body: ScanBody) -> FloatArray:
    """(4, 4) half a turn about the middle of the post's height."""
    turn = np.diag([1.0, -1.0, -1.0, 1.0])
    turn[2, 3] = body.region.vertices[:, 2].min() + body.region.vertices[:, 2].max()
    return turn


@pytest.mark.parametrize("family", ROUND)
def test_tissue_stands_below_the_post_and_above_one_on_its_head(family: str) -> None:
    what, body = made(family, 11, (0.3, 0.5))
    near, post, pose = seen_about(what, body), Post.of(body.region), what.sites[0].scan_from_connection
    below = above_the_post(post, near, pose)
    above = above_the_post(post, near, pose @ upside_down(body))
    assert below is not None
    assert above is not None
    assert below < -1.0
    assert above > 1.0
    assert not on_its_head(post, near, pose)
    assert on_its_head(post, near, pose @ upside_down(body))


def test_a_post_alone_tells_nothing() -> None:
    what, body = made("slender", 11)
    near, pose = seen_about(what, body), what.sites[0].scan_from_connection
    own = np.linalg.norm(np.cross(near.points - pose[:3, 3], pose[:3, 2]), axis=1) < Post.of(body.region).widest + 0.2
    alone = Around(near.index[own], near.points[own], near.normals[own], near.area[own])
    assert above_the_post(Post.of(body.region), alone, pose) is None
    assert not on_its_head(Post.of(body.region), alone, pose @ upside_down(body))


@pytest.mark.parametrize("family", ["small-head", "stepped"])
def test_a_part_drawn_upside_down_is_not_measured_silently(family: str) -> None:
    what, body = made(family, 11)
    flip = upside_down(body)
    region = Surface(body.region.vertices @ flip[:3, :3].T + flip[:3, 3], body.region.faces)
    surface = Surface(body.surface.vertices @ flip[:3, :3].T + flip[:3, 3], body.surface.faces)
    wrong = replace(body, region=region, surface=surface, sha256=f"{family} drawn upside down")
    parts = PartsFolder("drawn", "1", "", "", (Connection("alder", "other", 1, 4.2),), (wrong,))
    origin = np.round(what.surface.vertices.mean(axis=0))
    scan = Scan(Surface(what.surface.vertices - origin, what.surface.faces), origin, "scan", "")
    result = measure(scan, parts, maps=False)
    (site,) = result.sites
    assert site.verdict is not None
    assert site.verdict.verdict == "undecided"
    assert any("upside down" in finding.advice for finding in site.findings)


def test_a_reading_on_its_head_is_left_only_where_another_is_worth_trying() -> None:
    what, body = made("slender", 11)
    pose, surface = what.sites[0].scan_from_connection, what.surface
    thinned, templates = thin(surface.vertices, vertex_normals(surface.vertices, surface.faces)), [template_of(body)]
    middle = pose[:3, 3] + pose[:3, 2] * body.region.vertices[:, 2].mean()
    head, right = Reading(0, pose @ upside_down(body), 30.0), Reading(0, pose, 20.0)
    assert list(_upright([head, right], templates, middle, thinned)) == [right]
    assert _upright([head, replace(right, area=10.0)], templates, middle, thinned)[0] is head
    assert list(_upright([head], templates, middle, thinned)) == [head]
