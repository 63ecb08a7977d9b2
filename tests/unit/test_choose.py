"""Which turn: a body laid at a wrong one is brought to the right one by search."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.choose import lay, turns_left_deg
from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray
from stylobate.fit import Around
from stylobate.parts.model import ScanBody
from stylobate.simulate import draw_bodies

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
    everything = np.arange(len(around.points))
    at_home = np.eye(4)
    assert turns_left_deg(tree, around, at_home, 0.0, everything, 100.0, 360.0) == []
    assert turns_left_deg(tree, around, at_home, 0.0, everything, 1e-3, 360.0)[0] > 170.0
