"""Several sites: their order along the arch, distances and angles between them."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from stylobate.core.types import FloatArray


def order_along(centres: FloatArray, axes: FloatArray) -> list[int]:
    """Order of the sites along the arch: the shortest open path through their centres (n, 3).

    It starts at the end from which the path turns counter-clockwise seen against the mean axis (tips towards the eye);
    two sites start with the smaller x. Exact for up to 8 sites, nearest neighbours improved by reversals beyond.
    """
    n = len(centres)
    if n < 2:
        return list(range(n))
    distance = np.linalg.norm(centres[:, None] - centres[None], axis=2)
    path = _exact(distance) if n <= 8 else _improved(distance)
    if n == 2:
        return path if centres[path[0], 0] <= centres[path[1], 0] else path[::-1]
    line = centres[path] - centres.mean(axis=0)
    turning = float(np.sum(np.cross(line[:-1], line[1:]) @ axes.mean(axis=0)))
    return path if turning >= 0 else path[::-1]


def ways(centres: FloatArray) -> FloatArray:
    """(n,) mm from the first site to each, straight from site to site; centres (n, 3) in order along the arch."""
    return np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(centres, axis=0), axis=1))])


def _exact(distance: FloatArray) -> list[int]:
    """Held & Karp (1962) over subsets, for the open path."""
    n = len(distance)
    best = {(1 << k, k): (0.0, -1) for k in range(n)}
    for subset in range(1, 1 << n):
        for last in range(n):
            if (subset, last) not in best or not subset >> last & 1:
                continue
            length = best[subset, last][0]
            for k in range(n):
                if subset >> k & 1:
                    continue
                key = (subset | 1 << k, k)
                if key not in best or length + distance[last, k] < best[key][0]:
                    best[key] = (length + float(distance[last, k]), last)
    subset = (1 << n) - 1
    last = min(range(n), key=lambda k: best[subset, k][0])
    path = []
    while last >= 0:
        path.append(last)
        subset, last = subset & ~(1 << last), best[subset, last][1]
    return path


def _improved(distance: FloatArray) -> list[int]:
    n = len(distance)
    path = [int(np.argmax(distance.sum(axis=1)))]
    while len(path) < n:
        rest = [k for k in range(n) if k not in path]
        path.append(min(rest, key=lambda k: distance[path[-1], k]))
    length = sum(distance[a, b] for a, b in pairwise(path))
    improved = True
    while improved:
        improved = False
        for i in range(n - 1):
            for j in range(i + 2, n + 1):
                trial = path[:i] + path[i:j][::-1] + path[j:]
                new = sum(distance[a, b] for a, b in pairwise(trial))
                if new < length - 1e-12:
                    path, length, improved = trial, new, True
    return path
