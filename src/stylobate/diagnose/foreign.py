"""Surface that is not the scan body's: the gingiva and what belongs to it, or a patch on the body itself."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.closest import Closest
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.diagnose.surroundings import Surroundings
from stylobate.fit.descend import CLEAR_MARGIN, CROWD, OUTSIDE

CELL = 0.25  # mm: off-surface points in touching cells belong together
TOUCHES = 0.6  # mm off the CAD surface: what reaches farther is not a defect of the body but something else
LEAST_POINTS = 4  # of a foreign patch
LEAST_OF_DEFECT = 2  # points; one alone is an outlier, but where its neighbours lean its way
BACKED = 2.0  # standard deviations by which they do, on average


@dataclass(frozen=True)
class Carried:
    """Points of Around that may tell of the body: those that carry the fit, and those of defects on it.

    index (n,); closest: theirs at the pose; defect (n,) whether a point lies off the surface in a patch of its like.
    """

    index: LongArray
    closest: Closest
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
    carry = np.zeros(int(surroundings.index.max(initial=0)) + 1, np.bool_)
    carry[support[support < len(carry)]] = True
    supported = carry[surroundings.index]
    beside = np.zeros(len(off), np.bool_)
    if defect.any():
        beside = _close(surroundings.points[defect], surroundings.points, CLEAR_MARGIN + CELL)
        beside &= surroundings.own & ~off & near
    lone = index[(size[patch] == 1) & surroundings.own[index] & near[index]]
    backed = np.zeros(len(off), np.bool_)
    backed[_backed(surroundings.points, surroundings.distance - offset, lone, surroundings.own & ~off, BACKED * sd)] = (
        True
    )
    taken = (supported | defect | beside | backed) & near
    if len(foreign):
        taken &= ~_close(surroundings.points[foreign], surroundings.points, CLEAR_MARGIN) | supported
    return Carried(surroundings.index[taken], surroundings.closest.at(taken), defect[taken])


def _backed(points: FloatArray, height: FloatArray, lone: LongArray, own: BoolArray, least: float) -> LongArray:
    """Of single outliers those whose neighbours stand `least` mm to the same side on average: the top of a small lump
    or the bottom of a chip, not a slip of the scanner. own (n,): points that may speak for one.
    """
    kept = []
    for i in lone:
        beside = own & (np.sum((points - points[i]) ** 2, axis=1) < CROWD**2)
        if beside.any() and float(np.mean(height[beside])) * np.sign(height[i]) > least:
            kept.append(int(i))
    return np.array(kept, dtype=np.int64)


def _close(those: FloatArray, points: FloatArray, reach: float) -> BoolArray:
    """Which points (n, 3) lie within `reach` mm of any of those (k, 3)."""
    return Buckets.of(those, reach).near(points, reach)


def touching(points: FloatArray, cell: float) -> LongArray:
    """Number (n,) of the group of each point: points in cells that touch (26 neighbours) are of one group."""
    if not len(points):
        return np.zeros(0, np.int64)
    at = np.floor((points - points.min(axis=0)) / cell).astype(np.int64) + 1
    span = at.max(axis=0) + 2
    cells, which = np.unique((at[:, 0] * span[1] + at[:, 1]) * span[2] + at[:, 2], return_inverse=True)
    beside = np.arange(-1, 2)
    steps = ((beside[:, None, None] * span[1] + beside[:, None]) * span[2] + beside).ravel()
    return np.asarray(_flooded(cells, steps)[which])


@compiled
def _flooded(cells: LongArray, steps: LongArray) -> LongArray:
    """Number (c,) of the group of each of the `cells`, sorted by their code, which touch at any of the `steps`."""
    group = np.full(len(cells), -1, np.int64)
    stack = np.empty(len(cells), np.int64)
    count = 0
    for first in range(len(cells)):
        if group[first] >= 0:
            continue
        group[first], stack[0], top = count, first, 1
        while top > 0:
            top -= 1
            code = cells[stack[top]]
            for step in steps:
                k = np.searchsorted(cells, code + step)
                if k < len(cells) and cells[k] == code + step and group[k] < 0:
                    group[k], stack[top] = count, k
                    top += 1
        count += 1
    return group
