"""Straight lines against triangle surfaces."""

from __future__ import annotations

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray

EDGE = 1e-9
"""Share of a triangle by which a line may miss it and still count: a line through an edge meets one side at least."""


def crossings(surface: Surface, origin: FloatArray, direction: FloatArray) -> FloatArray:
    """Distances (k,), mm, rising, at which the ray from `origin` along unit `direction` crosses `surface`."""
    found = np.full(len(surface.faces), np.nan)
    _cross(surface.vertices, surface.faces, origin, direction, found)
    return np.sort(found[np.isfinite(found)])


def first_crossings(surface: Surface, origins: FloatArray, directions: FloatArray) -> FloatArray:
    """(n,): distance to the first crossing of each ray (origins, unit directions (n, 3)); NaN where there is none."""
    result = np.full(len(origins), np.nan)
    found = np.empty(len(surface.faces))
    for k in range(len(origins)):
        found[:] = np.nan
        _cross(surface.vertices, surface.faces, origins[k], directions[k], found)
        if np.isfinite(found).any():
            result[k] = np.nanmin(found)
    return result


def tops(local: FloatArray, faces: IntArray, places: FloatArray, low: float, high: float) -> FloatArray:
    """Heights (n,), mm, of the lowest upward-facing crossing of lines along z with low < z < high; NaN where none is.

    local: vertices (m, 3) in a frame with z along the lines; places: (n, 2) where each line stands.
    """
    heights = np.full(len(places), np.nan)
    if len(places):
        box = np.concatenate([places.min(axis=0), places.max(axis=0)])
        _tops(local, faces, np.ascontiguousarray(places), box, low, high, heights)
    return heights


@compiled
def _cross(vertices: FloatArray, faces: IntArray, origin: FloatArray, direction: FloatArray, found: FloatArray) -> None:
    """Möller & Trumbore (1997), J. Graphics Tools 2:21, for every face."""
    dx, dy, dz = direction[0], direction[1], direction[2]
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        ax, ay, az = vertices[a, 0] - origin[0], vertices[a, 1] - origin[1], vertices[a, 2] - origin[2]
        ux, uy, uz = vertices[b, 0] - vertices[a, 0], vertices[b, 1] - vertices[a, 1], vertices[b, 2] - vertices[a, 2]
        vx, vy, vz = vertices[c, 0] - vertices[a, 0], vertices[c, 1] - vertices[a, 1], vertices[c, 2] - vertices[a, 2]
        px, py, pz = dy * vz - dz * vy, dz * vx - dx * vz, dx * vy - dy * vx
        size = ux * px + uy * py + uz * pz
        if size == 0.0:
            continue
        u = -(ax * px + ay * py + az * pz) / size
        if u < -EDGE or u > 1.0 + EDGE:
            continue
        qx, qy, qz = -(ay * uz - az * uy), -(az * ux - ax * uz), -(ax * uy - ay * ux)
        v = (dx * qx + dy * qy + dz * qz) / size
        if v < -EDGE or u + v > 1.0 + EDGE:
            continue
        t = (vx * qx + vy * qy + vz * qz) / size
        if t > 0.0:
            found[f] = t


@compiled
def _tops(
    local: FloatArray, faces: IntArray, places: FloatArray, box: FloatArray, low: float, high: float,
    heights: FloatArray,
) -> None:  # fmt: skip
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        ax, ay, bx, by, cx, cy = local[a, 0], local[a, 1], local[b, 0], local[b, 1], local[c, 0], local[c, 1]
        if max(ax, bx, cx) < box[0] or min(ax, bx, cx) > box[2] or max(ay, by, cy) < box[1] or min(ay, by, cy) > box[3]:
            continue
        area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
        if area <= 0.0:
            continue
        for k in range(places.shape[0]):
            x, y = places[k, 0], places[k, 1]
            wb = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area
            wc = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area
            if wb < -EDGE or wc < -EDGE or wb + wc > 1.0 + EDGE:
                continue
            z = (1.0 - wb - wc) * local[a, 2] + wb * local[b, 2] + wc * local[c, 2]
            if low < z < high and not z >= heights[k]:
                heights[k] = z
