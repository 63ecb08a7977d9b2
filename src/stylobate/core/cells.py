"""Space around a surface cut into cubes, each with the few triangles that can be nearest to a point inside it.

A triangle is kept for a cube when it is no farther from the cube's centre than the nearest one plus twice the half
diagonal: no other can be nearest to any point of the cube (the distance to a set is 1-Lipschitz). Cubes are halved
until few triangles are left. A query walks down to its cube and tries what is there, what is nearest to the cube's
centre first, until what is left lies too far from the centre to be nearest to the point.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import triangle
from stylobate.core.jit import compiled
from stylobate.core.shelf import kept
from stylobate.core.triangle import on_triangle
from stylobate.core.types import Float32Array, FloatArray, IntArray

BAND = 1.5  # mm: points farther from the surface have no triangle here
FEW = 8  # triangles of a cube that is not cut further
LEAST_SIDE = 0.15  # mm: cubes are not cut below
FAR, FAR_SIDE = 0.35, 0.4  # mm: farther than this from the surface, where few points are asked for, cubes stay large
EMPTY = -1


@dataclass(frozen=True)
class Cells:
    """low (3,) corner and side of the root cube, mm.

    nodes (k, 2): number of the first of eight children and −1; or start and count of a cube's triangles in `items`;
    or EMPTY and −1. away: distance of each of `items` from its cube's centre, mm, rising within a cube.
    """

    low: FloatArray
    side: float
    nodes: IntArray
    items: IntArray
    away: Float32Array

    @staticmethod
    def of(triangles: FloatArray, lasting: bool = False) -> Cells:
        """Cut the space within BAND of triangles (m, 3, 3). lasting: kept on disk for the next time."""
        corners = triangles.reshape(-1, 3)
        low = corners.min(axis=0) - BAND
        side = float(np.max(corners.max(axis=0) + BAND - low))
        if not lasting:
            return Cells(low, side, *_cut(triangles, low, side))
        code = (__file__, triangle.__file__)
        return Cells(low, side, *kept("cells", (triangles,), code, lambda: _cut(triangles, low, side)))


@compiled
def _grown(values: IntArray, least: int) -> IntArray:
    wide = np.empty((max(least, 2 * values.shape[0]), values.shape[1]), values.dtype)
    wide[: values.shape[0]] = values
    return wide


@compiled
def _cut(triangles: FloatArray, low: FloatArray, side: float) -> tuple[IntArray, IntArray, Float32Array]:
    m = triangles.shape[0]
    nodes = np.empty((4096, 2), np.int32)
    items = np.empty((4 * m + 4096, 1), np.int32)
    away = np.empty((4 * m + 4096, 1), np.float32)
    used_items = 0
    open_ = np.empty((8 * m + 4096, 1), np.int32)  # triangles of the cubes still to cut, one list after the other
    for f in range(m):
        open_[f, 0] = f
    stack = np.empty((1024, 7))  # node, centre, half side, start and count of its list in `open_`
    stack[0] = np.array([0.0, low[0] + side / 2, low[1] + side / 2, low[2] + side / 2, side / 2, 0.0, float(m)])
    top, used = 1, 1
    far = np.empty(m)
    centre = np.empty(3)
    while top > 0:
        top -= 1
        node, half = int(stack[top, 0]), stack[top, 4]
        start, count = int(stack[top, 5]), int(stack[top, 6])
        for d in range(3):
            centre[d] = stack[top, 1 + d]
        diagonal = half * np.sqrt(3.0)
        nearest = np.inf
        for k in range(count):
            _, x, y, z = on_triangle(centre[0], centre[1], centre[2], triangles, np.uint32(open_[start + k, 0]))
            far[k] = np.sqrt((centre[0] - x) ** 2 + (centre[1] - y) ** 2 + (centre[2] - z) ** 2)
            nearest = min(nearest, far[k])
        reach = min(nearest + 2.0 * diagonal, BAND + diagonal) + 1e-9
        kept = 0
        for k in range(count):
            if far[k] <= reach:
                open_[start + kept, 0] = open_[start + k, 0]
                far[kept] = far[k]
                kept += 1
        if kept == 0:
            nodes[node, 0], nodes[node, 1] = EMPTY, -1
            continue
        if kept <= FEW or half < LEAST_SIDE or (half < FAR_SIDE and nearest > FAR):
            if used_items + kept > items.shape[0]:
                items = _grown(items, used_items + kept)
                away = _grown(away, used_items + kept)
            for k in range(kept):  # sorted by insertion: lists are short
                at = used_items + k
                while at > used_items and away[at - 1, 0] > far[k]:
                    away[at, 0], items[at, 0] = away[at - 1, 0], items[at - 1, 0]
                    at -= 1
                away[at, 0], items[at, 0] = far[k], open_[start + k, 0]
            nodes[node, 0], nodes[node, 1] = used_items, kept
            used_items += kept
            continue
        if used + 8 > nodes.shape[0]:
            nodes = _grown(nodes, used + 8)
        if start + 9 * kept > open_.shape[0]:
            open_ = _grown(open_, start + 9 * kept)
        nodes[node, 0], nodes[node, 1] = used, -1
        for child in range(8):
            at = start + child * kept  # the child that is cut first has its list last, where it may grow
            if at > start:
                open_[at : at + kept] = open_[start : start + kept]
            quarter = half / 2.0
            stack[top, 0] = used + child
            stack[top, 1] = centre[0] + (quarter if child & 1 else -quarter)
            stack[top, 2] = centre[1] + (quarter if child & 2 else -quarter)
            stack[top, 3] = centre[2] + (quarter if child & 4 else -quarter)
            stack[top, 4], stack[top, 5], stack[top, 6] = quarter, float(at), float(kept)
            top += 1
        used += 8
    return nodes[:used].copy(), items[:used_items, 0].copy(), away[:used_items, 0].copy()
