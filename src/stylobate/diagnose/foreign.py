"""Surface that is not the scan body's: the gingiva and what belongs to it, or a patch on the body itself."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.diagnose.surroundings import Surroundings
from stylobate.fit import CLEAR_MARGIN, OUTSIDE

CELL = 0.25  # mm: off-surface points in touching cells belong together
TOUCHES = 0.6  # mm off the CAD surface: what reaches farther is not a defect of the body but something else
LEAST_POINTS = 4  # of a foreign patch
LEAST_OF_DEFECT = 2  # points; one alone is an outlier


@dataclass(frozen=True)
class Carried:
    """Points of Around that may tell of the body: those that carry the fit, and those of defects on it.

    index (n,); defect (n,) whether a point lies off the surface in a patch of its like.
    """

    index: LongArray
    defect: BoolArray


def carried(surroundings: Surroundings, support: LongArray, offset: float, sd: float) -> Carried:
    """The points of the fit, and of off-surface patches that lie on the body, with the points around these.

    offset, sd: of the fit, mm. A patch of off-surface points that reaches TOUCHES mm from the CAD surface is foreign:
    gingiva, a neighbour; it stays out, and so does what lies within CLEAR_MARGIN of it.
    """
    near = np.abs(surroundings.distance - offset) < TOUCHES
    off = ~surroundings.own | (np.abs(surroundings.distance - offset) > OUTSIDE * sd)
    index = np.nonzero(off)[0]
    patch = touching(surroundings.points[index], CELL)
    size = np.bincount(patch, minlength=1)
    farthest = np.zeros(len(size))
    np.maximum.at(farthest, patch, np.abs(surroundings.distance[index] - offset))
    mine = (farthest[patch] < TOUCHES) & (size[patch] >= LEAST_OF_DEFECT)
    foreign = index[~mine & (size[patch] >= LEAST_POINTS)]
    defect = np.zeros(len(off), np.bool_)
    defect[index[mine & surroundings.own[index]]] = True
    supported = np.isin(surroundings.index, support)
    beside = np.zeros(len(off), np.bool_)
    if defect.any():
        beside = _close(surroundings.points[defect], surroundings.points, CLEAR_MARGIN + CELL)
        beside &= surroundings.own & ~off & near
    taken = (supported | defect | beside) & near
    if len(foreign):
        taken &= ~_close(surroundings.points[foreign], surroundings.points, CLEAR_MARGIN) | supported
    return Carried(surroundings.index[taken], defect[taken])


def _close(those: FloatArray, points: FloatArray, reach: float) -> BoolArray:
    """Which points (n, 3) lie within `reach` mm of any of those (k, 3)."""
    return np.isfinite(Buckets.of(those, reach).nearest(points, reach)[0])


def touching(points: FloatArray, cell: float) -> LongArray:
    """Number (n,) of the group of each point: points in cells that touch (26 neighbours) are of one group."""
    if not len(points):
        return np.zeros(0, np.int64)
    at = np.floor((points - points.min(axis=0)) / cell).astype(np.int64)
    cells, which = np.unique(at, axis=0, return_inverse=True)
    place = {tuple(c): k for k, c in enumerate(cells.tolist())}
    group = np.full(len(cells), -1, np.int64)
    steps = [(i, j, k) for i in (-1, 0, 1) for j in (-1, 0, 1) for k in (-1, 0, 1)]
    count = 0
    for k in range(len(cells)):
        if group[k] >= 0:
            continue
        group[k], stack = count, [k]
        while stack:
            x, y, z = cells[stack.pop()].tolist()
            for i, j, m in steps:
                other = place.get((x + i, y + j, z + m))
                if other is not None and group[other] < 0:
                    group[other] = count
                    stack.append(other)
        count += 1
    return np.asarray(group[which.ravel()])
