"""The scan's points against a CAD surface near a pose: what is left over, and how it changes with the parameters.

Parameters: the small motion ξ (6), the uniform offset of the scan's surface, the radius of sharp edges (method, eq. 3,
10).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.closest import Closest
from stylobate.core.types import FloatArray
from stylobate.edges import SharpEdges, sunk
from stylobate.fit import rows

RADIUS_STEP = 0.01  # mm, for the derivative by the radius of edges


@dataclass(frozen=True)
class Design:
    """By point, connection frame, mm: feet (n, 3) on the CAD surface; residual (n,); rows (n, 8) of the parameters.

    to_edge (n,) and edge_angle (n,) rad: of the nearest sharp edge, inf and 0 where there is none. Patches are formed
    of feet: of the noisy points themselves, noise would sort itself into patches by its sign.
    """

    feet: FloatArray
    residual: FloatArray
    rows: FloatArray
    to_edge: FloatArray
    edge_angle: FloatArray


def design(points: FloatArray, closest: Closest, edges: SharpEdges, offset: float, radius: float) -> Design:
    """points (n, 3) in the connection frame, none out of reach; closest: their closest points of the CAD surface."""
    feet = points - closest.distance[:, None] * closest.gradient
    to_edge, angle = edges.near(feet)
    residual = closest.distance - offset - sunk(to_edge, angle, radius)
    return Design(feet, residual, derivatives(points, closest.gradient, to_edge, angle, radius), to_edge, angle)


def rounded(sharp: Design, points: FloatArray, closest: Closest, offset: float, radius: float) -> Design:
    """The same with edges of another radius, from that with any."""
    residual = closest.distance - offset - sunk(sharp.to_edge, sharp.edge_angle, radius)
    turned = derivatives(points, closest.gradient, sharp.to_edge, sharp.edge_angle, radius)
    return replace(sharp, residual=residual, rows=turned)


def derivatives(
    points: FloatArray, gradient: FloatArray, to_edge: FloatArray, edge_angle: FloatArray, radius: float
) -> FloatArray:
    """(n, 8): residuals by ξ, the offset, and the radius of edges."""
    low, high = max(radius - RADIUS_STEP, 0.0), radius + RADIUS_STEP
    slope = (sunk(to_edge, edge_angle, high) - sunk(to_edge, edge_angle, low)) / (high - low)
    return np.hstack([rows(points, gradient), np.ones((len(points), 1)), slope[:, None]])
