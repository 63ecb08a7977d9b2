"""How near the parts of different sites come to each other, and whether a part reaches into tissue or a neighbour."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

import numpy as np

from stylobate.build.model import Link, Nearness
from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment, TitaniumBase

SPACING = 0.25
"""mm between the points by which a part is looked at: a clearance is seen at most half of this too large."""
LISTED = 1.0
"""mm. Parts that keep farther apart than this are not listed."""
DEEPEST = 6.0
"""mm. What lies deeper in the tissue than this is not looked at."""
INTO = 0.05
"""mm. Contact less deep than this is within what a scan shows (invented: half of common registration error)."""


def spread(triangles: FloatArray) -> FloatArray:
    """(k, 3) points on triangles (n, 3, 3): the corners after halving longest edges until none is over SPACING."""
    done = []
    while len(triangles):
        edges = np.linalg.norm(triangles[:, [1, 2, 0]] - triangles, axis=2)
        long = edges.max(axis=1) > SPACING
        done.append(triangles[~long])
        rest, first = triangles[long], np.argmax(edges[long], axis=1)
        a, b, c = (rest[np.arange(len(rest)), (first + k) % 3] for k in range(3))
        middle = (a + b) / 2.0
        triangles = np.concatenate([np.stack([a, middle, c], axis=1), np.stack([middle, b, c], axis=1)])
    return np.unique(np.concatenate(done).reshape(-1, 3), axis=0)


class Shapes:
    """Points on parts and trees over them, made once for a part however often it is placed."""

    def __init__(self) -> None:
        self._points: dict[str, FloatArray] = {}
        self._trees: dict[str, SurfaceTree] = {}

    def points(self, link: Link) -> FloatArray:
        """(n, 3) points no more than SPACING apart on a part, in its frame."""
        if link.part.id not in self._points:
            surface = link.part.surface
            self._points[link.part.id] = spread(surface.vertices[surface.faces])
        return self._points[link.part.id]

    def tree(self, link: Link) -> SurfaceTree:
        """The part prepared for closest points, in its frame."""
        if link.part.id not in self._trees:
            self._trees[link.part.id] = SurfaceTree.of(link.part.surface)
        return self._trees[link.part.id]


def nearnesses(chains: Sequence[tuple[str, Sequence[Link]]], shapes: Shapes) -> tuple[Nearness, ...]:
    """Parts of different sites that come within LISTED mm of each other, nearest first."""
    found = []
    for (one, ones), (two, twos) in combinations(chains, 2):
        for a in ones:
            for b in twos:
                clearance = _clearance(a, b, shapes) if _bounding_gap(a, b) < LISTED else np.inf
                if clearance < LISTED:
                    found.append(Nearness((one, two), (a.part.id, b.part.id), clearance))
    return tuple(sorted(found, key=lambda pair: pair.clearance_mm))


def _bounding_gap(a: Link, b: Link) -> float:
    """Distance between the balls around two parts, mm."""
    (middle_a, radius_a), (middle_b, radius_b) = _ball(a), _ball(b)
    return float(np.linalg.norm(middle_a - middle_b)) - radius_a - radius_b


def _ball(link: Link) -> tuple[FloatArray, float]:
    vertices = link.part.surface.vertices
    middle = (vertices.min(axis=0) + vertices.max(axis=0)) / 2.0
    radius = float(np.linalg.norm(vertices - middle, axis=1).max())
    return link.scan_from_part[:3, :3] @ middle + link.scan_from_part[:3, 3], radius


def _clearance(a: Link, b: Link, shapes: Shapes) -> float:
    """Least signed distance from the points of either part to the other, mm; inf beyond LISTED."""
    return min(_one_way(a, b, shapes), _one_way(b, a, shapes))


def _one_way(a: Link, b: Link, shapes: Shapes) -> float:
    b_from_a = inverse(b.scan_from_part) @ a.scan_from_part
    closest = shapes.tree(b).closest(shapes.points(a) @ b_from_a[:3, :3].T + b_from_a[:3, 3], LISTED + 2 * SPACING)
    signed = np.where(closest.on_boundary, np.abs(closest.distance), closest.distance)
    return float(np.nanmin(signed, initial=np.inf))


def into_tissue(link: Link, tissue: SurfaceTree, shapes: Shapes, origin: FloatArray) -> float:
    """How deep what should stand free of the tissue lies in it or in a neighbour, mm; 0 where it stands free.

    Of a base that is its bonding surface; of an abutment the seat of the connection that it provides.
    origin: (3,) of the tree's coordinates.
    """
    part, points = link.part, shapes.points(link)
    if isinstance(part, TitaniumBase):
        free = points[points[:, 2] > part.gingival_height + SPACING]
    elif isinstance(part, MultiUnitAbutment):
        lean = np.radians(part.angle_deg)
        along = np.array([np.sin(lean), 0.0, np.cos(lean)])
        free = points[(points - [0.0, 0.0, part.collar_height]) @ along > SPACING]
    if not len(free):
        return 0.0
    placed = free @ link.scan_from_part[:3, :3].T + link.scan_from_part[:3, 3] - origin
    closest = tissue.closest(placed, DEEPEST)
    inside = closest.distance[~closest.on_boundary & np.isfinite(closest.distance)]
    depth = -float(inside.min(initial=0.0))
    return depth if depth > INTO else 0.0


def around_of(tissue: Surface, points: FloatArray, reach: float) -> Surface:
    """The faces of `tissue` with a corner within `reach` mm of any of `points` (n, 3)."""
    near = np.zeros(len(tissue.vertices), np.bool_)
    for point in points:
        near |= np.sum((tissue.vertices - point) ** 2, axis=1) < reach**2
    return Surface(tissue.vertices, tissue.faces[near[tissue.faces].any(axis=1)])
