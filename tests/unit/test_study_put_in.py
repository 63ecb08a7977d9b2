"""What the study holds for the truth of a fault is what the scan shows."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from study.put_in import departure_um
from study.scenes import draw
from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse
from stylobate.simulate import Scene, scene


def made(seed: int, cause: str, style: str, size: float) -> Scene:
    """A scene of the study on a fine mesh, made to measure."""
    case = draw(seed, cause, style, size, "matern32")
    edge_mm = 0.04 if style == "worn edge" else 0.07  # the deepest line of a worn edge is narrow
    settings = replace(case.settings, edge_mm=edge_mm, adaptive=False, made_um=0.0, unseen=(0.0, 0.0), rounding_mm=0.0)
    return scene(settings, case.bodies)


def farthest_um(one: Scene, sign: float) -> float:
    back = inverse(one.sites[0].scan_from_connection)
    points = one.true_vertices[one.label == 0] @ back[:3, :3].T + back[:3, 3]
    return 1e3 * float(np.max(sign * SurfaceTree.of(one.sites[0].body.surface).closest(points, 2.0).distance))


@pytest.mark.parametrize(
    ("seed", "cause", "style", "sign"),
    [
        (34700009, "added material", "", 1.0),  # beside an edge: 120 µm over the wall, 450 over the other face
        (34700005, "added material", "", 1.0),
        (34710000, "lost material", "chip", -1.0),
        (34710010, "lost material", "worn edge", -1.0),
    ],
)
def test_a_departure_is_as_far_as_the_vertices_show(seed: int, cause: str, style: str, sign: float) -> None:
    """Vertices so close miss the farthest place by a little, and never lie beyond it."""
    one = made(seed, cause, style, 150.0)
    said, seen = departure_um(one), farthest_um(one, sign)
    assert said - 12.0 < seen < said + 1.0


@pytest.mark.parametrize("seed", [63000292, 63000872])
def test_an_edge_is_worn_where_it_turns_enough_to_lose_that_depth(seed: int) -> None:
    """At flat edges of these bodies the surface folded, up to 0.9 mm away. At a corner of edges more is lost than
    along one."""
    case = draw(seed, "lost material", "worn edge")
    assert 30.0 < departure_um(case.scene()) < 1.2 * case.settings.faults[0].size
