"""The point of a triangle nearest to another, and the feature it lies on.

After Ericson, Real-Time Collision Detection (2005), 5.1.5.
"""

from __future__ import annotations

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray

FACE, EDGE_AB, EDGE_BC, EDGE_CA, CORNER_A, CORNER_B, CORNER_C = range(7)


@compiled
def on_triangle(p: FloatArray, t: FloatArray, q: FloatArray) -> int:
    """Closest point q of triangle t (3, 3) to p; returns the feature it lies on."""
    abx, aby, abz = t[1, 0] - t[0, 0], t[1, 1] - t[0, 1], t[1, 2] - t[0, 2]
    acx, acy, acz = t[2, 0] - t[0, 0], t[2, 1] - t[0, 1], t[2, 2] - t[0, 2]
    apx, apy, apz = p[0] - t[0, 0], p[1] - t[0, 1], p[2] - t[0, 2]
    d1 = abx * apx + aby * apy + abz * apz
    d2 = acx * apx + acy * apy + acz * apz
    if d1 <= 0.0 and d2 <= 0.0:
        q[0], q[1], q[2] = t[0, 0], t[0, 1], t[0, 2]
        return CORNER_A
    bpx, bpy, bpz = p[0] - t[1, 0], p[1] - t[1, 1], p[2] - t[1, 2]
    d3 = abx * bpx + aby * bpy + abz * bpz
    d4 = acx * bpx + acy * bpy + acz * bpz
    if d3 >= 0.0 and d4 <= d3:
        q[0], q[1], q[2] = t[1, 0], t[1, 1], t[1, 2]
        return CORNER_B
    vc = d1 * d4 - d3 * d2
    if vc <= 0.0 and d1 >= 0.0 and d3 <= 0.0:
        s = d1 / (d1 - d3)
        q[0], q[1], q[2] = t[0, 0] + s * abx, t[0, 1] + s * aby, t[0, 2] + s * abz
        return EDGE_AB
    cpx, cpy, cpz = p[0] - t[2, 0], p[1] - t[2, 1], p[2] - t[2, 2]
    d5 = abx * cpx + aby * cpy + abz * cpz
    d6 = acx * cpx + acy * cpy + acz * cpz
    if d6 >= 0.0 and d5 <= d6:
        q[0], q[1], q[2] = t[2, 0], t[2, 1], t[2, 2]
        return CORNER_C
    vb = d5 * d2 - d1 * d6
    if vb <= 0.0 and d2 >= 0.0 and d6 <= 0.0:
        s = d2 / (d2 - d6)
        q[0], q[1], q[2] = t[0, 0] + s * acx, t[0, 1] + s * acy, t[0, 2] + s * acz
        return EDGE_CA
    va = d3 * d6 - d5 * d4
    if va <= 0.0 and d4 - d3 >= 0.0 and d5 - d6 >= 0.0:
        s = (d4 - d3) / ((d4 - d3) + (d5 - d6))
        q[0] = t[1, 0] + s * (t[2, 0] - t[1, 0])
        q[1] = t[1, 1] + s * (t[2, 1] - t[1, 1])
        q[2] = t[1, 2] + s * (t[2, 2] - t[1, 2])
        return EDGE_BC
    scale = 1.0 / (va + vb + vc)
    v, w = vb * scale, vc * scale
    q[0], q[1], q[2] = t[0, 0] + abx * v + acx * w, t[0, 1] + aby * v + acy * w, t[0, 2] + abz * v + acz * w
    return FACE
