"""Whether what agrees is shaped like teeth: a ridge without any shifts and swells, and no two scans show by how much.

A ridge curves one way; cusps, edges and the hollows between teeth curve both ways (method/join, eq. 4b).
"""

from __future__ import annotations

import numpy as np

from stylobate.core.buckets import Buckets, within
from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray, LongArray
from stylobate.joining.thin import Points

AROUND = 2.5
"""mm within which normals are compared: about half a front tooth."""
BENT = 0.06
"""Least variance of the normals' components the way they vary less: a ball of 4.6 mm radius has this much within
AROUND."""


def toothed(seen: Points, at: Points) -> float:
    """Share, 0 to 1, of places `at` where the surface `seen` curves both ways as crowns do."""
    if not len(at.at) or not len(seen.at):
        return 0.0
    tree = Buckets.of(seen.at, AROUND)
    count, mean, square = np.zeros(len(at.at)), np.zeros((len(at.at), 3)), np.zeros((len(at.at), 3, 3))
    _gather(at.at, at.normals, seen.normals[tree.order], tree.points, tree.first, tree.low, tree.shape, tree.side,
            count, mean, square)  # fmt: skip
    number = np.maximum(count, 1.0)
    mean /= number[:, None]
    spread = square / number[:, None, None] - mean[:, :, None] * mean[:, None, :]
    along = mean / np.maximum(np.linalg.norm(mean, axis=1, keepdims=True), 1e-12)
    across = np.eye(3) - along[:, :, None] * along[:, None, :]
    less = np.linalg.eigvalsh(across @ spread @ across)[:, 1]
    return float((less > BENT).mean())


@compiled
def _gather(
    at: FloatArray, normals: FloatArray, others: FloatArray, points: FloatArray, first: LongArray, low: FloatArray,
    shape: LongArray, side: float, count: FloatArray, mean: FloatArray, square: FloatArray,
) -> None:  # fmt: skip
    """Sums over the normals around each place, those of a far side left out."""
    found = np.empty(points.shape[0], np.int64)
    for i in range(at.shape[0]):
        for j in range(within(at[i], AROUND, points, first, low, shape, side, found)):
            k = found[j]
            facing = 0.0
            for d in range(3):
                facing += normals[i, d] * others[k, d]
            if facing < -0.5:
                continue
            count[i] += 1.0
            for d in range(3):
                mean[i, d] += others[k, d]
                for e in range(3):
                    square[i, d, e] += others[k, d] * others[k, e]
