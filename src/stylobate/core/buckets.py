"""Points sorted into cubes, for neighbours within a fixed distance.

SciPy's k-d tree does this too; importing it costs 0.3 s, a quarter of the time in which a single scan body is to be
measured (docs/decisions/0005-own-neighbour-search.md).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, LongArray

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
        least, most = _box(points) if len(points) else (np.zeros(3), np.zeros(3))
        low, span = least - 1e-6, most - least
        while np.prod(np.floor(span / side) + 1.0) > MOST_CUBES:
            side *= 2.0
        shape = np.floor(span / side).astype(np.int64) + 1
        order, first = _sorted(points, low, side, shape)
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

    def near(self, queries: FloatArray, radius: float) -> BoolArray:
        """Whether any point lies within `radius` of each query (m, 3)."""
        result = np.zeros(len(queries), np.bool_)
        if len(self.points):
            _near(
                np.ascontiguousarray(queries), radius, self.points, self.first, self.low, self.shape, self.side, result
            )
        return result

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
def _box(points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Least and greatest coordinates (3,) each."""
    low, high = points[0].copy(), points[0].copy()
    for i in range(len(points)):
        for d in range(3):
            low[d], high[d] = min(low[d], points[i, d]), max(high[d], points[i, d])
    return low, high


@compiled
def _sorted(points: FloatArray, low: FloatArray, side: float, shape: LongArray) -> tuple[LongArray, LongArray]:
    """Numbers (n,) of points by cube, in their order within each, and the start of each cube (cubes + 1,)."""
    cube = np.empty(len(points), np.int64)
    first = np.zeros(shape[0] * shape[1] * shape[2] + 1, np.int64)
    for i in range(len(points)):
        code = 0
        for d in range(3):
            code = code * shape[d] + min(int(np.floor((points[i, d] - low[d]) / side)), shape[d] - 1)
        cube[i] = code
        first[code + 1] += 1
    for k in range(len(first) - 1):
        first[k + 1] += first[k]
    order, at = np.empty(len(points), np.int64), first[:-1].copy()
    for i in range(len(points)):
        order[at[cube[i]]] = i
        at[cube[i]] += 1
    return order, first


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
def _near(
    queries: FloatArray, radius: float, points: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    side: float, result: BoolArray,
) -> None:  # fmt: skip
    last = -1
    for q in range(queries.shape[0]):
        px, py, pz = queries[q, 0], queries[q, 1], queries[q, 2]
        if last >= 0:  # what is near to one query is often near to the next
            dx, dy, dz = points[last, 0] - px, points[last, 1] - py, points[last, 2] - pz
            if dx * dx + dy * dy + dz * dz < radius * radius:
                result[q] = True
                continue
        last = _any_within(px, py, pz, radius, points, first, low, shape, side)
        result[q] = last >= 0


@compiled
def _any_within(
    px: float, py: float, pz: float, radius: float, points: FloatArray, first: LongArray, low: FloatArray,
    shape: LongArray, side: float,
) -> int:  # fmt: skip
    """The first point found within `radius` of a place, −1 if there is none."""
    ax, ay, az = px - low[0], py - low[1], pz - low[2]
    x0, x1 = max(0, int(np.floor((ax - radius) / side))), min(shape[0] - 1, int(np.floor((ax + radius) / side)))
    y0, y1 = max(0, int(np.floor((ay - radius) / side))), min(shape[1] - 1, int(np.floor((ay + radius) / side)))
    z0, z1 = max(0, int(np.floor((az - radius) / side))), min(shape[2] - 1, int(np.floor((az + radius) / side)))
    if z1 < z0:
        return -1
    for x in range(x0, x1 + 1):
        for y in range(y0, y1 + 1):
            row = (x * shape[1] + y) * shape[2]
            for k in range(first[row + z0], first[row + z1 + 1]):
                dx, dy, dz = points[k, 0] - px, points[k, 1] - py, points[k, 2] - pz
                if dx * dx + dy * dy + dz * dz < radius * radius:
                    return int(k)
    return -1


@compiled
def _count(
    queries: FloatArray, radius: float, points: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    side: float, found: LongArray, result: LongArray,
) -> None:  # fmt: skip
    for q in range(queries.shape[0]):
        result[q] = within(queries[q], radius, points, first, low, shape, side, found)
