"""Points sorted into cubes, for neighbours within a fixed distance.

SciPy's k-d tree does this too; importing it costs 0.3 s, a quarter of the time in which a single scan body is to be
measured (docs/decisions/0005-own-neighbour-search.md).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray, LongArray

MOST_CUBES = 4_000_000


@dataclass(frozen=True)
class Buckets:
    """Points by cube. points (n, 3) sorted, order (n,) their original numbers; first (cubes + 1,) start of each cube.

    low (3,) corner of the grid, shape (3,) its cubes, side their edge, mm.
    """

    points: FloatArray
    order: LongArray
    first: LongArray
    low: FloatArray
    shape: LongArray
    side: float

    @staticmethod
    def of(points: FloatArray, side: float) -> Buckets:
        """Sort points (n, 3) into cubes of about `side` mm (larger where the box would hold too many)."""
        low = points.min(axis=0) - 1e-6 if len(points) else np.zeros(3)
        span = np.ptp(points, axis=0) if len(points) else np.zeros(3)
        while np.prod(np.floor(span / side) + 1.0) > MOST_CUBES:
            side *= 2.0
        shape = np.floor(span / side).astype(np.int64) + 1
        at = np.minimum(np.floor((points - low) / side).astype(np.int64), shape - 1)
        cube = (at[:, 0] * shape[1] + at[:, 1]) * shape[2] + at[:, 2]
        order = np.argsort(cube, kind="stable")
        first = np.searchsorted(cube[order], np.arange(int(np.prod(shape)) + 1)).astype(np.int64)
        return Buckets(np.ascontiguousarray(points[order]), order, first, low, shape, side)

    def nearest(self, queries: FloatArray, limit: float) -> tuple[FloatArray, LongArray]:
        """Distance (m,) to the nearest point and its number (m,); inf and −1 where none is within `limit`."""
        distance, index = np.full(len(queries), np.inf), np.full(len(queries), -1, np.int64)
        if len(self.points):
            _nearest(
                np.ascontiguousarray(queries), limit, self.points, self.first, self.low, self.shape, self.side,
                distance, index,
            )  # fmt: skip
            found = index >= 0
            index[found] = self.order[index[found]]
        return distance, index

    def count(self, queries: FloatArray, radius: float) -> LongArray:
        """How many points lie within `radius` of each query (m, 3)."""
        found = np.empty(max(1, len(self.points)), np.int64)
        result = np.zeros(len(queries), np.int64)
        if len(self.points):
            _count(
                np.ascontiguousarray(queries), radius, self.points, self.first, self.low, self.shape, self.side, found,
                result,
            )  # fmt: skip
        return result


@compiled
def within(
    centre: FloatArray, radius: float, points: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    side: float, found: LongArray,
) -> int:  # fmt: skip
    """Fill `found` with the sorted points within `radius` of `centre`; returns how many (at most len(found))."""
    count = 0
    start = np.empty(3, np.int64)
    stop = np.empty(3, np.int64)
    for d in range(3):
        start[d] = max(0, int(np.floor((centre[d] - radius - low[d]) / side)))
        stop[d] = min(int(shape[d]) - 1, int(np.floor((centre[d] + radius - low[d]) / side)))
        if stop[d] < start[d]:
            return 0
    for x in range(start[0], stop[0] + 1):
        for y in range(start[1], stop[1] + 1):
            row = (x * shape[1] + y) * shape[2]
            for i in range(first[row + start[2]], first[row + stop[2] + 1]):
                dx, dy, dz = points[i, 0] - centre[0], points[i, 1] - centre[1], points[i, 2] - centre[2]
                if dx * dx + dy * dy + dz * dz < radius * radius and count < found.shape[0]:
                    found[count] = i
                    count += 1
    return count


@compiled
def _nearest(
    queries: FloatArray, limit: float, points: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    side: float, distance: FloatArray, index: LongArray,
) -> None:  # fmt: skip
    for q in range(queries.shape[0]):
        best = limit * limit
        found = -1
        px, py, pz = queries[q, 0], queries[q, 1], queries[q, 2]
        ax, ay, az = px - low[0], py - low[1], pz - low[2]
        x0, x1 = max(0, int(np.floor((ax - limit) / side))), min(shape[0] - 1, int(np.floor((ax + limit) / side)))
        y0, y1 = max(0, int(np.floor((ay - limit) / side))), min(shape[1] - 1, int(np.floor((ay + limit) / side)))
        z0, z1 = max(0, int(np.floor((az - limit) / side))), min(shape[2] - 1, int(np.floor((az + limit) / side)))
        if z1 < z0:
            continue
        for x in range(x0, x1 + 1):
            for y in range(y0, y1 + 1):
                row = (x * shape[1] + y) * shape[2]
                for i in range(first[np.uint64(row + z0)], first[np.uint64(row + z1 + 1)]):
                    k = np.uint64(i)
                    dx, dy, dz = points[k, 0] - px, points[k, 1] - py, points[k, 2] - pz
                    d2 = dx * dx + dy * dy + dz * dz
                    if d2 < best:
                        best, found = d2, i
        if found >= 0:
            index[q], distance[q] = found, np.sqrt(best)


@compiled
def _count(
    queries: FloatArray, radius: float, points: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    side: float, found: LongArray, result: LongArray,
) -> None:  # fmt: skip
    for q in range(queries.shape[0]):
        result[q] = within(queries[q], radius, points, first, low, shape, side, found)
