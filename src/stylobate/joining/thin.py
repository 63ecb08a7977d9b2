"""A scan thinned out: points spread evenly over its surface, with normals that noise does not turn."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray

ROUNDS = 3


@dataclass(frozen=True)
class Points:
    """at (n, 3), mm; normals (n, 3), unit, outward."""

    at: FloatArray
    normals: FloatArray

    def taken(self, which: BoolArray) -> Points:
        """Those `which` (n,)."""
        return Points(self.at[which], self.normals[which])

    def moved(self, target_from_source: FloatArray) -> Points:
        """The same in another frame."""
        turn = target_from_source[:3, :3]
        return Points(self.at @ turn.T + target_from_source[:3, 3], self.normals @ turn.T)


def smooth_normals(surface: Surface, rounds: int = ROUNDS) -> FloatArray:
    """(n, 3) unit normals of the vertices: of their faces by area, averaged over neighbours `rounds` times."""
    per_face = surface.corner_products()
    for k in range(rounds + 1):
        total = np.zeros((len(surface.vertices), 3))
        for c in range(3):
            for d in range(3):
                total[:, d] += np.bincount(surface.faces[:, c], per_face[:, d], len(total))
        total /= np.maximum(np.linalg.norm(total, axis=1, keepdims=True), 1e-30)
        if k < rounds:
            per_face = total[surface.faces].sum(axis=1)
    return total


def thinned(points: Points, side: float) -> Points:
    """One point a cube of `side` mm: that nearest to the cube's middle."""
    cube = np.floor(points.at / side)
    off = np.linalg.norm(points.at / side - cube - 0.5, axis=1)
    order = np.lexsort((off, cube[:, 2], cube[:, 1], cube[:, 0]))
    first = np.ones(len(order), np.bool_)
    first[1:] = np.any(np.diff(cube[order], axis=0) != 0.0, axis=1)
    chosen = np.sort(order[first])
    return Points(np.ascontiguousarray(points.at[chosen]), np.ascontiguousarray(points.normals[chosen]))
