"""A scan thinned to oriented points: one a cell, area-weighted, whatever the mesh density."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray, IntArray

CELL = 0.5
BUCKET = 2.0


@dataclass(frozen=True)
class Thinned:
    """Oriented points of a scan, in the order of their buckets.

    buckets: holds the points; normals (n, 3) unit; area (n,) mm²; flat (n,) 1 where the cell's normals agree, less at
    edges.
    """

    buckets: Buckets
    normals: FloatArray
    area: FloatArray
    flat: FloatArray


@compiled
def vertex_normals(vertices: FloatArray, faces: IntArray) -> FloatArray:
    """(n, 3) sum over the faces at each vertex of normal × a third of the face's area, mm²."""
    result = np.zeros_like(vertices)
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        ux, uy, uz = vertices[b, 0] - vertices[a, 0], vertices[b, 1] - vertices[a, 1], vertices[b, 2] - vertices[a, 2]
        vx, vy, vz = vertices[c, 0] - vertices[a, 0], vertices[c, 1] - vertices[a, 1], vertices[c, 2] - vertices[a, 2]
        nx, ny, nz = (uy * vz - uz * vy) / 6.0, (uz * vx - ux * vz) / 6.0, (ux * vy - uy * vx) / 6.0
        for k in (a, b, c):
            result[k, 0] += nx
            result[k, 1] += ny
            result[k, 2] += nz
    return result


@compiled
def _cells(vertices: FloatArray, normals: FloatArray, cell: float) -> FloatArray:
    """(cells, 7): area-weighted sums of position, sums of normals, and area."""
    n = vertices.shape[0]
    size = 1
    while size < 2 * n:
        size *= 2
    table = np.full(size, -1, np.int32)
    key = np.empty((n, 3), np.int32)
    total = np.empty((n, 7))  # cleared cell by cell: few of so many are used
    used = 0
    for i in range(n):
        w = np.sqrt(normals[i, 0] ** 2 + normals[i, 1] ** 2 + normals[i, 2] ** 2)
        if w <= 0.0:
            continue
        x = np.int64(np.floor(vertices[i, 0] / cell))
        y = np.int64(np.floor(vertices[i, 1] / cell))
        z = np.int64(np.floor(vertices[i, 2] / cell))
        slot = (x * 73856093 ^ y * 19349663 ^ z * 83492791) & (size - 1)
        while True:
            k = table[slot]
            if k < 0:
                table[slot] = used
                key[used, 0], key[used, 1], key[used, 2] = x, y, z
                total[used] = 0.0
                k = used
                used += 1
                break
            if key[k, 0] == x and key[k, 1] == y and key[k, 2] == z:
                break
            slot = (slot + 1) & (size - 1)
        for d in range(3):
            total[k, d] += w * vertices[i, d]
            total[k, 3 + d] += normals[i, d]
        total[k, 6] += w
    return total[:used].copy()


def thin(vertices: FloatArray, normals: FloatArray) -> Thinned:
    """Thin a scan: vertices (n, 3) mm, normals (n, 3) as vertex_normals gives them."""
    total = _cells(vertices, normals, CELL)
    area = total[:, 6]
    points = total[:, :3] / area[:, None]
    length = np.linalg.norm(total[:, 3:6], axis=1)
    good = length > 1e-3 * area
    points, area, length, sums = points[good], area[good], length[good], total[good, 3:6]
    buckets = Buckets.of(points, BUCKET)
    order = buckets.order
    return Thinned(
        buckets=buckets,
        normals=np.ascontiguousarray((sums / length[:, None])[order]),
        area=area[order],
        flat=(length / area)[order],
    )
