"""Rounding at the sharp edges of a body, convex and hollow alike: the surface a ball of that radius would leave.

Near an edge a vertex goes to the ball of radius r about the nearest point that lies r inside every face that meets
there (for a hollow edge: r outside). That point is found by Dykstra's projections onto half-spaces.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, LongArray

SHARP_DEG = 20.0
"""Least turn of the normal over an edge for it to be an edge of the drawing, not of its tessellation."""
PIECE_MM = 0.25
PASSES = 60
REACH = 2.0
"""Edges within so many radii of a point can bound the ball that rolls there."""
FACING = 0.02
"""A face whose plane a point stands above by more than this share of the radius does not bound the body there."""
MOST_PLANES = 96


@dataclass(frozen=True)
class SharpEdges:
    """Pieces of sharp edges: ends (k, 2, 3) mm, the two faces' normals (k, 2, 3), convex (k,) as +1 or −1."""

    ends: FloatArray
    normals: FloatArray
    convex: FloatArray


def sharp_edges(surface: Surface) -> SharpEdges:
    """Every edge over which the normal turns by more than SHARP_DEG, cut into pieces of at most PIECE_MM."""
    faces = surface.faces.astype(np.int64)
    n = len(surface.vertices)
    normal = surface.corner_products()
    normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-30)
    ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    opposite = np.concatenate([faces[:, 2], faces[:, 0], faces[:, 1]])
    face = np.tile(np.arange(len(faces)), 3)
    key, twin_key = ends[:, 0] * n + ends[:, 1], ends[:, 1] * n + ends[:, 0]
    order = np.argsort(key)
    place = np.minimum(np.searchsorted(key[order], twin_key), len(key) - 1)
    twin = order[place]
    paired = (key[twin] == twin_key) & (ends[:, 0] < ends[:, 1])
    first, second = face[paired], face[twin[paired]]
    turn = np.einsum("ij,ij->i", normal[first], normal[second])
    sharp = turn < np.cos(np.radians(SHARP_DEG))
    a, b = surface.vertices[ends[paired][sharp, 0]], surface.vertices[ends[paired][sharp, 1]]
    rise = np.einsum("ij,ij->i", surface.vertices[opposite[twin[paired]][sharp]] - a, normal[first[sharp]])
    pieces: list[FloatArray] = []
    which: list[int] = []
    for k in range(len(a)):
        count = max(1, int(np.ceil(np.linalg.norm(b[k] - a[k]) / PIECE_MM)))
        stops = a[k] + np.linspace(0.0, 1.0, count + 1)[:, None] * (b[k] - a[k])
        pieces += [stops[i : i + 2] for i in range(count)]
        which += [k] * count
    both = np.stack([normal[first[sharp]], normal[second[sharp]]], axis=1)[which]
    convex = np.where(rise < 0.0, 1.0, -1.0)[which]
    return SharpEdges(np.array(pieces).reshape(-1, 2, 3), both.reshape(-1, 2, 3), convex)


def rounded(
    points: FloatArray, normals: FloatArray, edges: SharpEdges, radius: FloatArray, worn: FloatArray | None = None
) -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) of the sharp surface and their unit normals, moved onto the rounded one.

    radius: (n,) mm at each point; 0 leaves it. A point that the ball touches in passing stays where it is. worn (n,):
    radius that convex edges have instead, where it is more than 0: wear fills no corner.
    """
    moved, turned = points.copy(), normals.copy()
    _round(edges, radius, moved, turned)
    if worn is not None and worn.any():
        out = edges.convex > 0
        again, facing = points.copy(), normals.copy()
        _round(SharpEdges(edges.ends[out], edges.normals[out], edges.convex[out]), worn, again, facing)
        taken = np.any(again != points, axis=1)
        moved[taken], turned[taken] = again[taken], facing[taken]
    return moved, turned


def _round(edges: SharpEdges, radius: FloatArray, points: FloatArray, normals: FloatArray) -> None:
    """The same in place."""
    if not len(edges.ends) or not radius.any():
        return
    from scipy.spatial import cKDTree

    cosine = np.einsum("ij,ij->i", edges.normals[:, 0], edges.normals[:, 1])
    spread = np.minimum(np.tan(np.arccos(np.clip(cosine, -1.0, 1.0)) / 2.0), 3.0)
    tree = cKDTree(edges.ends.mean(axis=1))
    near = tree.query_ball_point(points, REACH * radius + PIECE_MM / 2.0)
    counts = np.array([len(k) for k in near])
    some = np.flatnonzero((counts > 0) & (radius > 0.0)).astype(np.int64)
    if len(some):
        flat = np.concatenate([np.asarray(near[i], np.int64) for i in some])
        starts = np.concatenate([[0], np.cumsum(counts[some])]).astype(np.int64)
        _round_into(some, starts, flat, edges.ends, edges.normals, edges.convex, spread, radius, points, normals)


@compiled
def _round_into(
    some: LongArray, starts: LongArray, near: LongArray, ends: FloatArray, faces: FloatArray, convex: FloatArray,
    spread: FloatArray, radius: FloatArray, points: FloatArray, normals: FloatArray,
) -> None:  # fmt: skip
    plane, offset, step = np.empty((MOST_PLANES, 3)), np.empty(MOST_PLANES), np.empty((MOST_PLANES, 3))
    for s in range(some.shape[0]):
        i = some[s]
        r, p = radius[i], points[i].copy()
        best, side = np.inf, 1.0
        for k in range(starts[s], starts[s + 1]):
            gap = _segment_gap(p, ends[near[k]]) / (r * spread[near[k]])
            if gap < best:
                best, side = gap, convex[near[k]]
        count = 0
        for k in range(starts[s], starts[s + 1]):
            e = near[k]
            if convex[e] != side or _segment_gap(p, ends[e]) > REACH * r:
                continue
            for f in range(2):
                known = False
                for c in range(count):
                    dot = side * (
                        plane[c, 0] * faces[e, f, 0] + plane[c, 1] * faces[e, f, 1] + plane[c, 2] * faces[e, f, 2]
                    )
                    known = known or dot > 0.999999
                if known or count == MOST_PLANES:
                    continue
                offset[count] = -r
                above = 0.0
                for d in range(3):
                    plane[count, d] = side * faces[e, f, d]
                    offset[count] += plane[count, d] * ends[e, 0, d]
                    above += plane[count, d] * (p[d] - ends[e, 0, d])
                if above > FACING * r:
                    continue
                count += 1
        step[:count] = 0.0
        y = p.copy()
        for _ in range(PASSES):
            for c in range(count):
                over = -offset[c]
                for d in range(3):
                    y[d] += step[c, d]
                    over += plane[c, d] * y[d]
                over = max(over, 0.0)
                for d in range(3):
                    step[c, d] = over * plane[c, d]
                    y[d] -= step[c, d]
        away = p - y
        length = np.sqrt(away[0] ** 2 + away[1] ** 2 + away[2] ** 2)
        if length < r * (1.0 - 1e-6):
            continue
        for d in range(3):
            normals[i, d] = side * away[d] / length
            points[i, d] = y[d] + r * away[d] / length


@compiled
def _segment_gap(p: FloatArray, ends: FloatArray) -> float:
    """Distance of a point from a segment (2, 3)."""
    top, bottom = 0.0, 1e-300
    for d in range(3):
        top += (p[d] - ends[0, d]) * (ends[1, d] - ends[0, d])
        bottom += (ends[1, d] - ends[0, d]) ** 2
    share = min(max(top / bottom, 0.0), 1.0)
    total = 0.0
    for d in range(3):
        total += (p[d] - ends[0, d] - share * (ends[1, d] - ends[0, d])) ** 2
    return float(np.sqrt(total))
