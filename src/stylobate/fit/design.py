"""The scan's points against a CAD surface near a pose: what is left over, and how it changes with the parameters.

Parameters: the small motion ξ (6), the uniform offset of the scan's surface, its profile at sharp edges (method, eq. 3,
10).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.closest import Closest
from stylobate.core.types import FloatArray
from stylobate.fit.descend import rows
from stylobate.fit.edges import SHAPES, SharpEdges, at_hand, profile_shapes


@dataclass(frozen=True)
class Design:
    """By point, connection frame, mm: feet (n, 3) on the CAD surface; residual (n,); rows (n, k) of the parameters.

    to_edge (n,) and edge_angle (n,) rad: of the nearest sharp edge, inf and 0 where there is none; edge (n,): how much
    it is at hand, 0 to 1. Patches are formed of feet: of the noisy points themselves, noise would sort itself into
    patches by its sign.
    """

    feet: FloatArray
    residual: FloatArray
    rows: FloatArray
    to_edge: FloatArray
    edge_angle: FloatArray
    edge: FloatArray


def design(points: FloatArray, closest: Closest, edges: SharpEdges, offset: float, profile: FloatArray) -> Design:
    """points (n, 3) in the connection frame, none out of reach; closest: their closest points of the CAD surface.

    profile (SHAPES,): at sharp edges, mm.
    """
    feet = points - closest.distance[:, None] * closest.gradient
    to_edge, angle = edges.near(feet)
    shapes = profile_shapes(to_edge, angle, closest.gradient[:, 2])
    residual = closest.distance - offset - shapes @ profile
    return Design(feet, residual, derivatives(points, closest.gradient, shapes), to_edge, angle, at_hand(shapes))


def profiled(here: Design, closest: Closest, offset: float, profile: FloatArray) -> Design:
    """The same with another offset and profile."""
    return replace(here, residual=closest.distance - offset - here.rows[:, -SHAPES:] @ profile)


def derivatives(points: FloatArray, gradient: FloatArray, shapes: FloatArray) -> FloatArray:
    """(n, 7 + SHAPES): residuals by ξ, the offset, and the profile, whose shapes (n, SHAPES) are given."""
    return np.hstack([rows(points, gradient), np.ones((len(points), 1)), shapes])
