"""How the faces of a surface meet: edges, the angle between faces, normals of the curved surface behind the facets."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray

SMOOTH_ANGLE = np.radians(30.0)
SMOOTH_RISE = 0.025
"""An edge stands for a curved surface where the faces turn by less than 30° and the arc through both rises less than
25 µm above its chord: a cylinder of 5 mm in 24 facets. CAD exports keep to 1 to 10 µm."""

FEWEST_BENDS = 360 // 30
"""A circle in facets that turn by less than 30° has more of them; fewer are the bevels of a part with flat sides."""


@dataclass(frozen=True)
class Edges:
    """The edges of a surface.

    ends (e, 2): vertices, the lower first. count (e,): faces at each edge. of_face (m, 3): the edge from corner k to
    corner k + 1. forward (m, 3): whether the face runs along it from the lower vertex to the higher.
    """

    surface: Surface
    ends: LongArray
    count: LongArray
    of_face: LongArray
    forward: BoolArray

    @staticmethod
    def of(surface: Surface) -> Edges:
        """Find the edges of `surface`."""
        start, end = surface.faces.astype(np.int64), np.roll(surface.faces, -1, axis=1).astype(np.int64)
        key = np.minimum(start, end) * len(surface.vertices) + np.maximum(start, end)
        unique, edge, count = np.unique(key, return_inverse=True, return_counts=True)
        ends = np.stack(np.divmod(unique, len(surface.vertices)), axis=1)
        return Edges(surface, ends, count, edge.reshape(key.shape), start < end)

    @cached_property
    def sides(self) -> tuple[LongArray, LongArray, LongArray]:
        """Edges with exactly two faces (p,), and their half-edges (p, 2) as 3 · face + corner."""
        order = np.argsort(self.of_face.ravel(), kind="stable")
        first = np.concatenate([[0], np.cumsum(self.count)])[:-1]
        pairs = np.flatnonzero(self.count == 2)
        return pairs, order[first[pairs]], order[first[pairs] + 1]

    @cached_property
    def against(self) -> int:
        """How many edges have two faces that run along it the same way, so that one of the two is turned over."""
        _, one, other = self.sides
        forward = self.forward.ravel()
        return int(np.count_nonzero(forward[one] == forward[other]))

    @cached_property
    def rise(self) -> tuple[FloatArray, FloatArray]:
        """For each edge with two faces: the angle between them, rad, and the rise of the arc through both, mm.

        A circle through facets of width w that turn by φ rises w·φ/8 above its chords (φ small).
        """
        edge, one, other = self.sides
        products = self.surface.corner_products()
        normal = products / np.maximum(np.linalg.norm(products, axis=1, keepdims=True), 1e-300)
        a, b = normal[one // 3], normal[other // 3]
        angle = np.arctan2(np.linalg.norm(np.cross(a, b), axis=1), np.einsum("ij,ij->i", a, b))
        ends = self.surface.vertices[self.ends[edge]]
        length = np.maximum(np.linalg.norm(ends[:, 0] - ends[:, 1], axis=1), 1e-300)
        area = np.linalg.norm(products, axis=1)
        width = np.maximum(area[one // 3], area[other // 3]) / length
        return angle, width * angle / 8.0

    @cached_property
    def smooth(self) -> BoolArray:
        """For each edge with two faces: whether it stands for a curved surface rather than for an edge of the part."""
        angle, rise = self.rise
        return np.asarray((angle < SMOOTH_ANGLE) & (rise < SMOOTH_RISE))

    def facet_rise(self) -> float:
        """How far the curved surface stands off the facets: 95th percentile over smooth, bent edges by length, mm."""
        angle, rise = self.rise
        edge, _, _ = self.sides
        bent = (angle > np.radians(0.5)) & (angle < SMOOTH_ANGLE) & (rise < 4.0 * SMOOTH_RISE)
        if np.count_nonzero(bent) < FEWEST_BENDS:
            return 0.0
        ends = self.surface.vertices[self.ends[edge[bent]]]
        length = np.linalg.norm(ends[:, 0] - ends[:, 1], axis=1)
        order = np.argsort(rise[bent])
        share = np.cumsum(length[order]) / length.sum()
        return float(rise[bent][order][np.searchsorted(share, 0.95)])

    def corner_normals(self) -> FloatArray:
        """(m, 3, 3) unit normals at the corners of each face, averaged across smooth edges only.

        The average is weighted by the angle of each corner (Thürmer & Wüthrich 1998, J. Graphics Tools 3:43), which
        does not depend on how a curved wall is cut into triangles.
        """
        _, one, other = self.sides
        keep = self.smooth & (self.forward.ravel()[one] != self.forward.ravel()[other])
        one, other = one[keep], other[keep]
        after_one, after_other = one - one % 3 + (one + 1) % 3, other - other % 3 + (other + 1) % 3
        joined_a, joined_b = np.concatenate([one, after_one]), np.concatenate([after_other, other])
        group = joined(joined_a, joined_b, self.of_face.size)
        normals = _angle_weighted(self.surface, self.surface.faces)
        summed = np.stack([np.bincount(group, normals[:, k], self.of_face.size) for k in range(3)], axis=1)
        length = np.linalg.norm(summed, axis=1, keepdims=True)
        return np.asarray((summed / np.maximum(length, 1e-300))[group].reshape(-1, 3, 3))


def joined(one: LongArray, other: LongArray, size: int) -> LongArray:
    """(size,) the least member of each one's group, where one[i] and other[i] belong together."""
    least = np.arange(size)
    while True:
        lower = np.minimum(least[one], least[other])
        if np.array_equal(lower, least[one]) and np.array_equal(lower, least[other]):
            return least
        for side in (one, other):
            np.minimum.at(least, least[side], lower)
            np.minimum.at(least, side, lower)
        least = least[least]


def _angle_weighted(surface: Surface, faces: IntArray) -> FloatArray:
    """Normal of the face times the angle at each corner, (3 m, 3)."""
    corners = surface.vertices[faces]
    to_next, to_last = np.roll(corners, -1, axis=1) - corners, np.roll(corners, 1, axis=1) - corners
    cross = np.cross(to_next, to_last)
    angle = np.arctan2(np.linalg.norm(cross, axis=2), np.einsum("ijk,ijk->ij", to_next, to_last))
    normal = cross[:, 0] / np.maximum(np.linalg.norm(cross[:, 0], axis=1, keepdims=True), 1e-300)
    return np.asarray((normal[:, None, :] * angle[:, :, None]).reshape(-1, 3))
