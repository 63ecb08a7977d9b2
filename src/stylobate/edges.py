"""Sharp edges of a CAD surface, and how a scan rounds them.

A scan shows a sharp edge with a radius of some 40 to 100 µm. The height and the turn of a scan body hang on its edges,
so the rounding is modelled, not cut out (method, eq. 10).
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
REACH = 0.4  # mm: nothing of a rounding shows farther from an edge
RADII = np.arange(0.0, 0.181, 0.01)  # mm, tried for the rounding


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
def sunk(distance: FloatArray, angle: FloatArray, radius: float) -> FloatArray:
    """Height (n,) of an edge's fillet over the sharp surface, mm: negative at convex edges.

    A fillet of this radius touches a face at t = radius·tan(|angle|/2) from the edge; nearer by u = t − distance it
    lies radius − √(radius² − u²) below the face.
    """
    height = np.zeros(len(distance))
    for i in range(len(distance)):
        if np.isfinite(distance[i]):
            reach = radius * np.tan(min(abs(angle[i]), 2.6) / 2.0)
            u = min(max(reach - distance[i], 0.0), radius)
            height[i] = -np.sign(angle[i]) * (radius - np.sqrt((radius - u) * (radius + u)))
    return height


def likeliest_radius(distance: FloatArray, angle: FloatArray, residual: FloatArray) -> float:
    """The radius that leaves the least squares of residuals (n,) near edges, by parabola through the best of RADII."""
    near = np.isfinite(distance)
    if int(near.sum()) < 30:
        return 0.0
    d, a, r = distance[near], angle[near], residual[near]
    cost = np.array([float(np.sum((r - sunk(d, a, radius)) ** 2)) for radius in RADII])
    k = int(np.argmin(cost))
    if k in (0, len(RADII) - 1):
        return float(RADII[k])
    left, middle, right = cost[k - 1 : k + 2]
    return float(RADII[k] + 0.5 * (RADII[1] - RADII[0]) * (left - right) / max(left - 2 * middle + right, 1e-30))
