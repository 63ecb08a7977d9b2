"""Which turn: a body laid at a wrong one is brought to the right one by search."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from stylobate.choose.readings import LEAST_ODDS, lay, turns_left_deg
from stylobate.choose.turns import odds_needed
from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.fit.descend import Around, fit
from stylobate.fit.edges import SharpEdges
from stylobate.parts.model import ScanBody
from stylobate.simulate import draw_bodies
from stylobate.uncertainty.pose import TURN, Pose, Stand, doubts, weigh

BODIES = draw_bodies(77, 6)


def scanned(body: ScanBody, seed: int) -> Around:
    """A body's surface seen from one side and above, with 8 µm of noise."""
    rng = np.random.default_rng(seed)
    surface = body.region
    normal = surface.corner_products()
    area = np.linalg.norm(normal, axis=1)
    face = rng.choice(len(area), 6000, p=area / area.sum())
    share = rng.dirichlet(np.ones(3), len(face))
    points = np.einsum("nk,nki->ni", share, surface.vertices[surface.faces[face]])
    normals = normal[face] / area[face, None]
    seen = (normals[:, 2] > 0.5) | (normals[:, 0] > -0.3)
    points = points[seen] + rng.normal(0.0, 0.008, (int(seen.sum()), 1)) * normals[seen]
    return Around(np.arange(len(points)), points, normals[seen], np.full(len(points), 0.01))


def turn_of(pose: FloatArray) -> float:
    return float(np.degrees(np.arctan2(pose[1, 0], pose[0, 0])))


@pytest.mark.parametrize("k", range(len(BODIES)))
def test_every_wrong_turn_ends_at_the_true_one_or_nowhere(k: int) -> None:
    tree, around = SurfaceTree.of(BODIES[k].region), scanned(BODIES[k], k)
    found = 0
    for wrong_deg in (60.0, 120.0, 180.0, -97.0):
        laid = lay([tree], around, [(0, rigid.turn_z(np.radians(wrong_deg)))])
        if laid:
            assert abs(turn_of(laid[0].descent.scan_from_connection)) < 1.0
            assert np.linalg.norm(laid[0].descent.scan_from_connection[:3, 3]) < 0.02
            found += 1
    assert found > 1


def test_a_turn_that_nothing_shows_is_wide_and_one_that_much_shows_is_none() -> None:
    body = BODIES[0]
    tree, around = SurfaceTree.of(body.region), scanned(body, 0)
    at_home = np.eye(4)
    assert turns_left_deg(tree, around.points, at_home, 0.0, 100.0, 360.0) == ([], [])
    left, minima = turns_left_deg(tree, around.points, at_home, 0.0, 1e-3, 360.0)
    assert left[0] > 170.0
    assert {5.0, 355.0} <= set(minima) < set(left)


@cache
def weighted(k: int) -> tuple[Stand, Pose, FloatArray]:
    """How a body stands that was laid on its own scan, its weighted pose, and the points behind it."""
    tree, edges, around = SurfaceTree.of(BODIES[k].region), SharpEdges.of(BODIES[k].region), scanned(BODIES[k], k)
    laid = lay([tree], around, [(0, np.eye(4))])
    fitted = fit(tree, around, laid[0].descent)
    pose = weigh(tree, edges, around, fitted)
    assert pose is not None
    return Stand(tree, edges, pose.scan_from_connection, pose.offset), pose, around.points[fitted.support]


@pytest.mark.parametrize("k", range(len(BODIES)))
def test_odds_fall_with_the_turn_as_the_covariance_says(k: int) -> None:
    """−2 ln odds of a small turn is its square over the variance of the turn, all else free."""
    mine, pose, points = weighted(k)
    sd = np.sqrt(pose.parameters[TURN, TURN])
    turned = [replace(mine, scan_from_connection=mine.scan_from_connection @ rigid.turn_z(n * sd)) for n in (-3.0, 3.0)]
    assert 0.3 * 9.0 < np.mean(list(doubts(pose, mine, turned, points))) < 2.0 * 9.0


def test_a_body_of_another_size_is_ruled_out_and_the_same_one_is_not() -> None:
    mine, pose, points = weighted(0)
    surface = BODIES[0].region
    wide = Surface(surface.vertices * [1.04, 1.04, 1.0], surface.faces)
    other = Stand(SurfaceTree.of(wide), SharpEdges.of(wide), mine.scan_from_connection, mine.offset)
    same, another = doubts(pose, mine, [mine, other], points)
    assert same == pytest.approx(0.0, abs=1e-6)
    assert another > 2.0 * np.log(LEAST_ODDS)


def test_the_right_body_is_laid_though_two_readings_of_another_come_first() -> None:
    """The likeliest readings by area may be another body's, hopeless once laid."""
    trees, around = [SurfaceTree.of(BODIES[k].region) for k in (0, 1)], scanned(BODIES[1], 1)
    aside = np.eye(4)
    aside[:3, 3] = 1.5, 1.5, 4.0
    assert lay(trees[:1], around, [(0, aside), (0, aside @ rigid.turn_z(1.0))]) == []
    laid = lay(trees, around, [(0, aside), (0, aside @ rigid.turn_z(1.0)), (1, np.eye(4))])
    assert laid[0].body == 1
    assert np.linalg.norm(laid[0].descent.scan_from_connection[:3, 3]) < 0.02


def test_a_turn_that_the_covariance_does_not_allow_needs_odds_of_a_million() -> None:
    """Of bodies whose marks are hidden the true turn came down to 1 : 1300 against the best of several."""
    assert odds_needed(60.0, 1.0) >= 1e6
    assert odds_needed(60.0, 20.0) == LEAST_ODDS
    assert odds_needed(4.0, 0.1) == LEAST_ODDS
