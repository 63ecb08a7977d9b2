"""The point of a triangle nearest to another, and the feature it lies on.

After Ericson, Real-Time Collision Detection (2005), 5.1.5.
"""

from __future__ import annotations

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray

FACE, EDGE_AB, EDGE_BC, EDGE_CA, CORNER_A, CORNER_B, CORNER_C = range(7)


@compiled
def on_triangle(
    px: float, py: float, pz: float, triangles: FloatArray, f: np.uint32
) -> tuple[int, float, float, float]:
    """The feature of triangle f of (m, 3, 3) on which its closest point to p lies, and that point.

    Numbers in and out, no arrays: making views of arrays took a third of the time.
    """
    ax, ay, az = triangles[f, 0, 0], triangles[f, 0, 1], triangles[f, 0, 2]
    bx, by, bz = triangles[f, 1, 0], triangles[f, 1, 1], triangles[f, 1, 2]
    cx, cy, cz = triangles[f, 2, 0], triangles[f, 2, 1], triangles[f, 2, 2]
    abx, aby, abz = bx - ax, by - ay, bz - az
    acx, acy, acz = cx - ax, cy - ay, cz - az
    apx, apy, apz = px - ax, py - ay, pz - az
    d1 = abx * apx + aby * apy + abz * apz
    d2 = acx * apx + acy * apy + acz * apz
    if d1 <= 0.0 and d2 <= 0.0:
        return CORNER_A, ax, ay, az
    bpx, bpy, bpz = px - bx, py - by, pz - bz
    d3 = abx * bpx + aby * bpy + abz * bpz
    d4 = acx * bpx + acy * bpy + acz * bpz
    if d3 >= 0.0 and d4 <= d3:
        return CORNER_B, bx, by, bz
    vc = d1 * d4 - d3 * d2
    if vc <= 0.0 and d1 >= 0.0 and d3 <= 0.0:
        s = d1 / (d1 - d3)
        return EDGE_AB, ax + s * abx, ay + s * aby, az + s * abz
    cpx, cpy, cpz = px - cx, py - cy, pz - cz
    d5 = abx * cpx + aby * cpy + abz * cpz
    d6 = acx * cpx + acy * cpy + acz * cpz
    if d6 >= 0.0 and d5 <= d6:
        return CORNER_C, cx, cy, cz
    vb = d5 * d2 - d1 * d6
    if vb <= 0.0 and d2 >= 0.0 and d6 <= 0.0:
        s = d2 / (d2 - d6)
        return EDGE_CA, ax + s * acx, ay + s * acy, az + s * acz
    va = d3 * d6 - d5 * d4
    if va <= 0.0 and d4 - d3 >= 0.0 and d5 - d6 >= 0.0:
        s = (d4 - d3) / ((d4 - d3) + (d5 - d6))
        return EDGE_BC, bx + s * (cx - bx), by + s * (cy - by), bz + s * (cz - bz)
    scale = 1.0 / (va + vb + vc)
    v, w = vb * scale, vc * scale
    return FACE, ax + abx * v + acx * w, ay + aby * v + acy * w, az + abz * v + acz * w
