"""Fewer triangles by merging short edges: finer where curved, or fewer everywhere, as scanning programs store them."""

from __future__ import annotations

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, IntArray

ROUNDS = 12
CURVE_ANGLE = 0.35
"""Turn of the normal over one edge, rad, that an adaptive mesh aims at (invented)."""
SMOOTH = 4


def coarsened(
    vertices: FloatArray, normals: FloatArray, faces: IntArray, owner: IntArray, edge: float, factor: float
) -> IntArray:
    """Faces after merging vertices into neighbours until edges reach the length wanted there.

    That length is `edge` mm where the surface turns by CURVE_ANGLE or more over an edge, up to `factor` times it where
    flat. Vertices are never moved, so that each stays on the surface; merging joins vertices of one owner only.
    """
    length = _wanted_length(vertices, normals, faces, edge, factor)
    for _ in range(ROUNDS):
        merged = _merge_round(vertices, normals, faces, owner, length, _boundary(faces, len(vertices)))
        if len(merged) > 0.985 * len(faces):
            return merged
        faces = merged
    return faces


def _wanted_length(
    vertices: FloatArray, normals: FloatArray, faces: IntArray, edge: float, factor: float
) -> FloatArray:
    """Edge length (n,) mm wanted at each vertex, from the largest turn of the normal by length about it, graded."""
    n = len(vertices)
    ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    long = np.linalg.norm(vertices[ends[:, 0]] - vertices[ends[:, 1]], axis=1)
    turn = np.linalg.norm(normals[ends[:, 0]] - normals[ends[:, 1]], axis=1) / np.maximum(long, 1e-9)
    curved = np.zeros(n)
    np.maximum.at(curved, ends[:, 0], turn)
    np.maximum.at(curved, ends[:, 1], turn)
    wanted = np.clip(CURVE_ANGLE / np.maximum(curved, 1e-9), edge, factor * edge)
    for _ in range(SMOOTH):
        spread = wanted.copy()
        np.minimum.at(spread, ends[:, 0], wanted[ends[:, 1]] + 0.5 * long)
        np.minimum.at(spread, ends[:, 1], wanted[ends[:, 0]] + 0.5 * long)
        wanted = spread
    return wanted


def _boundary(faces: IntArray, count: int) -> BoolArray:
    """Vertices (n,) on an edge that is not shared by exactly two faces."""
    ends = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1).astype(np.int64)
    key, times = np.unique(ends[:, 0] * count + ends[:, 1], return_counts=True)
    odd = key[times != 2]
    result = np.zeros(count, np.bool_)
    result[odd // count] = True
    result[odd % count] = True
    return result


def _merge_round(
    vertices: FloatArray, normals: FloatArray, faces: IntArray, owner: IntArray, length: FloatArray, fixed: BoolArray
) -> IntArray:
    """One round of merges, none touching another's neighbourhood."""
    order = np.argsort(faces.ravel(), kind="stable")
    about = (order // 3).astype(np.int32)
    starts = np.searchsorted(faces.ravel()[order], np.arange(len(vertices) + 1)).astype(np.int32)
    target = _choose(vertices, normals, faces, owner, length, fixed, about, starts)
    moved = target[faces]
    alive = (moved[:, 0] != moved[:, 1]) & (moved[:, 1] != moved[:, 2]) & (moved[:, 2] != moved[:, 0])
    return np.ascontiguousarray(moved[alive])


@compiled
def _choose(
    vertices: FloatArray, normals: FloatArray, faces: IntArray, owner: IntArray, length: FloatArray, fixed: BoolArray,
    about: IntArray, starts: IntArray,
) -> IntArray:  # fmt: skip
    """Vertex (n,) into which each vertex is merged, itself where it stays."""
    n = vertices.shape[0]
    target = np.arange(n).astype(np.int32)
    locked = fixed.copy()
    for v in range(n):
        if locked[v] or starts[v + 1] == starts[v]:
            continue
        best, shortest = -1, np.inf
        for s in range(starts[v], starts[v + 1]):
            for c in range(3):
                u = faces[about[s], c]
                if u == v or owner[u] != owner[v]:
                    continue
                gap = _gap(vertices, u, v)
                if gap < 0.8 * min(length[u], length[v]) and gap < shortest:
                    best, shortest = u, gap
        if best < 0 or not _allowed(vertices, normals, faces, about, starts, v, best, 1.5 * length[v], locked):
            continue
        target[v] = best
        for s in range(starts[v], starts[v + 1]):
            for c in range(3):
                locked[faces[about[s], c]] = True
    return target


@compiled
def _gap(vertices: FloatArray, a: int, b: int) -> float:
    total = 0.0
    for d in range(3):
        total += (vertices[a, d] - vertices[b, d]) ** 2
    return float(np.sqrt(total))


@compiled
def _allowed(
    vertices: FloatArray, normals: FloatArray, faces: IntArray, about: IntArray, starts: IntArray, v: int, u: int,
    longest: float, locked: BoolArray,
) -> bool:  # fmt: skip
    """Whether merging v into u keeps a surface: two common neighbours, no face turned over, thin or overlong."""
    common = 0
    for s in range(starts[v], starts[v + 1]):
        f = about[s]
        has = faces[f, 0] == u or faces[f, 1] == u or faces[f, 2] == u
        for c in range(3):
            w = faces[f, c]
            if w == v:
                continue
            if locked[w] and w != u:
                return False
            if w == u or has:
                continue
            if _gap(vertices, w, u) > longest:
                return False
        if has:
            common += 1
            continue
        a, b, c0 = faces[f, 0], faces[f, 1], faces[f, 2]
        a, b, c0 = (u if a == v else a), (u if b == v else b), (u if c0 == v else c0)
        e1, e2 = vertices[b] - vertices[a], vertices[c0] - vertices[a]
        cross = np.cross(e1, e2)
        size = np.sqrt((cross**2).sum())
        side = 0.0
        for d in range(3):
            side += cross[d] * (normals[a, d] + normals[b, d] + normals[c0, d])
        widest = max((e1**2).sum(), (e2**2).sum())
        if side < 1.2 * size or size < 0.25 * widest:
            return False
    if common != 2:
        return False
    shared = 0
    for s in range(starts[v], starts[v + 1]):
        for c in range(3):
            w = faces[about[s], c]
            if w in (u, v):
                continue
            for r in range(starts[u], starts[u + 1]):
                g = about[r]
                if faces[g, 0] == w or faces[g, 1] == w or faces[g, 2] == w:
                    shared += 1
                    break
    return shared == 4
