"""Cutting a surface along a line, and welding two edges: what `replaced` is made of. All in the connection frame."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from scipy.spatial import cKDTree
from scipy.spatial.distance import cdist

from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray

MOST_ROUNDS = 40


def refined(surface: Surface, longest: float) -> Surface:
    """The same surface with no edge longer than `longest` mm: long edges are halved, new corners lie on them.

    Corners at one place become one first, so that the result stays welded.
    """
    vertices, number = np.unique(surface.vertices, axis=0, return_inverse=True)
    faces = number.reshape(-1)[surface.faces].astype(np.int64)
    faces = faces[(faces[:, 0] != faces[:, 1]) & (faces[:, 1] != faces[:, 2]) & (faces[:, 2] != faces[:, 0])]
    for _ in range(MOST_ROUNDS):
        edges = np.sort(faces[:, [[0, 1], [1, 2], [2, 0]]].reshape(-1, 2), axis=1)
        key, which = np.unique(edges[:, 0] * len(vertices) + edges[:, 1], return_inverse=True)
        unique = np.stack([key // len(vertices), key % len(vertices)], axis=1)
        length = np.linalg.norm(vertices[unique[:, 0]] - vertices[unique[:, 1]], axis=1)
        long = length > longest
        if not long.any():
            break
        # only edges that are the longest of a face they belong to are halved: that keeps triangles well shaped
        of_face = length[which].reshape(-1, 3)
        chosen = np.zeros(len(unique), np.bool_)
        at = which.reshape(-1, 3)[np.arange(len(faces)), np.argmax(of_face, axis=1)]
        chosen[at] = True
        chosen &= long
        middle = np.full(len(unique), -1)
        middle[chosen] = len(vertices) + np.arange(int(chosen.sum()))
        vertices = np.concatenate([vertices, (vertices[unique[chosen, 0]] + vertices[unique[chosen, 1]]) / 2])
        faces = _split(faces, middle[which].reshape(-1, 3))
    return Surface(vertices, faces.astype(np.int32))


def _split(faces: LongArray, middle: LongArray) -> LongArray:
    """Faces with the middles of their edges 01, 12, 20 put in; −1: that edge stays whole."""
    made: list[LongArray] = [faces[(middle < 0).all(axis=1)]]
    count = (middle >= 0).sum(axis=1)
    for k in range(3):
        a, b, c = (np.roll(faces, -k, axis=1)[:, j] for j in range(3))
        m, n, o = (np.roll(middle, -k, axis=1)[:, j] for j in range(3))
        one = (count == 1) & (m >= 0)
        made += [np.stack([a, m, c], 1)[one], np.stack([m, b, c], 1)[one]]
        two = (count == 2) & (o < 0)
        made += [np.stack([m, b, n], 1)[two], np.stack([a, m, n], 1)[two], np.stack([a, n, c], 1)[two]]
        if k == 0:
            three = count == 3
            for corners in ([a, m, o], [m, b, n], [o, n, c], [m, n, o]):
                made.append(np.stack(corners, 1)[three])
    return np.concatenate(made)


def clipped(surface: Surface, height: FloatArray) -> Surface:
    """What lies above a height that depends on the direction about z, (bins,) evenly from −π on."""
    bins = len(height)
    vertices, faces = surface.vertices, surface.faces
    middle = (np.arange(bins) + 0.5) * 2.0 * np.pi / bins - np.pi
    turn = np.arctan2(vertices[:, 1], vertices[:, 0])
    if not np.isfinite(height).all():
        return surface
    above = vertices[:, 2] - np.interp(turn, middle, height, period=2.0 * np.pi)
    above = np.where(np.abs(above) < 1e-6, 1e-6, above)
    inside = above[faces] > 0
    count = inside.sum(axis=1)
    whole = faces[count == 3].astype(np.int64)
    made: list[LongArray] = [whole]
    points: list[FloatArray] = [vertices]
    known: dict[tuple[int, int], int] = {}
    fresh: list[FloatArray] = []

    def between(i: int, j: int) -> int:
        key = (min(i, j), max(i, j))
        if key not in known:
            known[key] = len(vertices) + len(fresh)
            i, j = key
            share = above[i] / (above[i] - above[j])
            fresh.append(vertices[i] + share * (vertices[j] - vertices[i]))
        return known[key]

    pieces: list[list[int]] = []
    cut = (count == 1) | (count == 2)
    alone = np.where(count[cut] == 1, np.argmax(inside[cut], axis=1), np.argmin(inside[cut], axis=1))
    turned = np.take_along_axis(faces[cut], (np.arange(3) + alone[:, None]) % 3, axis=1)
    for (a, b, c), single in zip(turned.tolist(), (count[cut] == 1).tolist(), strict=True):
        ab, ca = between(a, b), between(c, a)
        pieces += [[a, ab, ca]] if single else [[ab, b, c], [ab, c, ca]]
    if pieces:
        made.append(np.array(pieces, np.int64))
        points.append(np.array(fresh))
    return Surface(np.concatenate(points), np.concatenate(made).astype(np.int32))


def touching(faces: IntArray, marked: BoolArray) -> BoolArray:
    """(m,) whether a face has a marked vertex, marked (n,); by columns, several times as fast as along an axis of 3."""
    return np.asarray(marked[faces[:, 0]] | marked[faces[:, 1]] | marked[faces[:, 2]])


def boundary_loops(faces: IntArray, within: BoolArray | None = None) -> list[IntArray]:
    """Closed lines of open edges, each in the direction of its faces; only those between vertices of `within` (n,)."""
    if within is not None:
        faces = faces[touching(faces, within)]
    edges = faces[:, [[0, 1], [1, 2], [2, 0]]].reshape(-1, 2).astype(np.int64)
    most = int(edges.max(initial=0)) + 1
    if within is not None:
        edges = edges[within[edges[:, 0]] & within[edges[:, 1]]]
    there, back = edges[:, 0] * most + edges[:, 1], np.sort(edges[:, 1] * most + edges[:, 0])
    # NumPy's isin asks a table of hashes first, which takes several times as long.
    found = np.searchsorted(back, there)
    open_edges = edges[np.append(back, -1)[found] != there]
    following: dict[int, list[int]] = {}
    for start, end in open_edges.tolist():
        following.setdefault(start, []).append(end)
    loops = []
    while following:
        first = next(iter(following))
        line, at = [first], first
        while at in following:
            after = following[at].pop()
            if not following[at]:
                del following[at]
            at = after
            if at in line:
                place = line.index(at)
                loops.append(np.array(line[place:], np.int32))
                line = line[: place + 1]
            else:
                line.append(at)
    return [loop for loop in loops if len(loop) > 2]


def around_axis(vertices: FloatArray, loops: Sequence[IntArray], reach: float) -> IntArray | None:
    """The longest loop that goes once around the z axis and stays within `reach` mm of it; None where there is none."""
    best, longest = None, 0.0
    for loop in loops:
        line = vertices[loop]
        if np.hypot(line[:, 0], line[:, 1]).max() > reach:
            continue
        turn = np.arctan2(line[:, 1], line[:, 0])
        steps = np.angle(np.exp(1j * (np.roll(turn, -1) - turn)))
        length = float(np.linalg.norm(np.roll(line, -1, axis=0) - line, axis=1).sum())
        if abs(abs(float(steps.sum())) - 2.0 * np.pi) < 1e-6 and length > longest:
            best, longest = loop, length
    return best


def zipped_band(vertices: FloatArray, inner: IntArray, outer: IntArray) -> IntArray:
    """Triangles that close the gap between two loops about z, each given in the direction of its own faces.

    Begins at the shortest edge across, so that it does not matter where a loop starts. Of all ways around from there it
    takes the one whose edges across have the least total length (dynamic programming, as Fuchs et al. 1977 for
    contours); orientation follows from the two directions.
    """
    a, g = inner, outer[::-1]
    apart, nearest = cKDTree(vertices[g]).query(vertices[a])
    first = min(np.flatnonzero(apart == apart.min()), key=lambda k: tuple(vertices[a[k]]))
    a, g = np.roll(a, -first), np.roll(g, -int(nearest[first]))
    a, g = np.append(a, a[0]), np.append(g, g[0])
    cost = _least_costs(cdist(vertices[a], vertices[g]))
    i, j = len(a) - 1, len(g) - 1
    made = []
    while i or j:
        if j == 0 or (i and cost[i - 1, j] <= cost[i, j - 1]):
            made.append([a[i], a[i - 1], g[j]])
            i -= 1
        else:
            made.append([g[j - 1], g[j], a[i]])
            j -= 1
    return np.array(made[::-1], np.int32)


def _least_costs(length: FloatArray) -> FloatArray:
    """(n, m): least total length of the edges across on the way from the first pair to each other one.

    cost[i, j] = length[i, j] + min(cost[i − 1, j], cost[i, j − 1]), column by column.
    """
    cost: FloatArray = np.cumsum(length, axis=0) - length[0]
    for j in range(1, length.shape[1]):
        along = cost[:, j].copy()
        cost[:, j] = along + np.minimum.accumulate(cost[:, j - 1] + length[:, j] - along)
    return cost
