"""Sharp edges of a CAD surface, and how a scan shows them.

A scan rounds a sharp edge by some 40 to 100 µm, and where it is fused of views its faces may stand out or lie low
beside the edge for some tenths of a mm more. The height and the turn of a scan body hang on its edges, so that profile
is estimated with the pose, not cut out (method, eq. 10).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

LEAST_ANGLE = np.radians(25.0)  # between the faces' normals; below, an edge is a facet of a curved surface
SPACING = 0.04  # mm between the points that stand for an edge
REACH = 0.45  # mm: nothing of a profile shows farther from an edge
KNOTS = np.array([0.0, 0.05, 0.1, 0.2, 0.3, REACH])  # mm from the edge, between which a profile is linear
SHAPES = 2 * (len(KNOTS) - 1)
"""Parameters of the profiles: at all knots but the last, first of ends, then of walls."""
PROFILE_SD = np.tile([0.025, 0.015, 0.01, 0.0075, 0.005], 2)
"""mm, standard deviation known beforehand: roundings of 0.04 to 0.1 mm lie 0.012 to 0.029 mm low at the edge; what a
fused scan makes beside it is wider and flatter (no source)."""
END, RIGHT = 0.7, float(np.pi / 2.0)  # z of a normal from which a face is an end; rad
POINT_SD = 0.03  # mm, of a residual when the first profile is laid: points beside each other are not independent


@dataclass(frozen=True)
class SharpEdges:
    """Points along the sharp edges: in buckets; angle (n,) by which the surface turns, rad, negative if concave."""

    buckets: Buckets | None
    angle: FloatArray

    @staticmethod
    def of(surface: Surface) -> SharpEdges:
        """The sharp edges of a surface; open edges are not sharp."""
        faces, vertices = surface.faces, surface.vertices
        product = surface.corner_products()
        length = np.linalg.norm(product, axis=1)
        keep = length > 1e-12
        faces, normal = faces[keep], product[keep] / length[keep, None]
        ends = np.stack([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]], axis=1).reshape(-1, 2)
        key = np.sort(ends, axis=1).astype(np.int64)
        order = np.argsort(key[:, 0] * len(vertices) + key[:, 1], kind="stable")
        code = (key[:, 0] * len(vertices) + key[:, 1])[order]
        pair = np.nonzero(code[1:] == code[:-1])[0]
        one, two = order[pair] // 3, order[pair + 1] // 3
        a, b = vertices[ends[order[pair], 0]], vertices[ends[order[pair], 1]]
        turn = np.arctan2(
            np.linalg.norm(np.cross(normal[one], normal[two]), axis=1), np.einsum("ij,ij->i", normal[one], normal[two])
        )
        centre = vertices[faces].mean(axis=1)
        convex = np.einsum("ij,ij->i", normal[one], centre[two] - a) < 0
        sharp = turn > LEAST_ANGLE
        if not sharp.any():
            return SharpEdges(None, np.zeros(0))
        start, along, angle = a[sharp], (b - a)[sharp], np.where(convex, turn, -turn)[sharp]
        count = np.maximum(1, np.ceil(np.linalg.norm(along, axis=1) / SPACING).astype(np.int64))
        edge = np.repeat(np.arange(len(count)), count)
        share = (np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + 0.5) / count[edge]
        return SharpEdges(Buckets.of(start[edge] + share[:, None] * along[edge], REACH), angle[edge])

    def near(self, points: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Distance (n,) of points to the nearest sharp edge, inf beyond REACH, and that edge's angle (n,)."""
        if self.buckets is None:
            return np.full(len(points), np.inf), np.zeros(len(points))
        distance, index = self.buckets.nearest(points, REACH)
        return distance, np.append(self.angle, 0.0)[index]


@compiled
def profile_shapes(distance: FloatArray, angle: FloatArray, up: FloatArray) -> FloatArray:
    """(n, SHAPES): height over the sharp surface for one mm of each parameter of the profile at edges (method, eq. 10).

    distance, angle (n,): as from SharpEdges.near. up (n,): z of the unit normals, which tells the profile of ends from
    that of walls. A profile is linear between KNOTS, none from REACH on; an edge that turns by other than a right angle
    shows it in proportion, a concave one in reverse.
    """
    shapes = np.zeros((len(distance), SHAPES))
    for i in range(len(distance)):
        d = distance[i]
        if not d < REACH:
            continue
        k = len(KNOTS) - 2
        while d < KNOTS[k]:
            k -= 1
        share = (d - KNOTS[k]) / (KNOTS[k + 1] - KNOTS[k])
        size = angle[i] / RIGHT
        first = 0 if up[i] > END else len(KNOTS) - 1
        shapes[i, first + k] = size * (1.0 - share)
        if k + 1 < len(KNOTS) - 1:
            shapes[i, first + k + 1] = size * share
    return shapes


def at_hand(shapes: FloatArray) -> FloatArray:
    """(n,) how much of a sharp edge is at hand, 0 to 1, from the shapes (n, SHAPES) of its profile."""
    return np.asarray(np.minimum(np.abs(shapes).sum(axis=1), 1.0))


def likeliest_profile(shapes: FloatArray, residual: FloatArray) -> FloatArray:
    """(SHAPES,) the profile that leaves the least squares of residuals (n,), mm, drawn to none by PROFILE_SD."""
    information = shapes.T @ shapes + np.diag((POINT_SD / PROFILE_SD) ** 2)
    return np.asarray(np.linalg.solve(information, shapes.T @ residual))
