"""The shared surface in cells: what the fit's points say, averaged over cubes of about a millimetre (method/join)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.joining.fine import Fit, cubes

SIDE = 1.0
"""mm: side of a cell where MOST allow it."""
MOST = 800
GROWTH = 1.1
LEAST_POINTS = 2.0
"""Weight below which a cell is left out."""
PATCH = 5.0
"""mm: side of a patch: several times the length over which a scanner's noise hangs together, less than a tooth."""
LEAST_IN_PATCH = 24.0
"""Weight below which a patch is no place of its own."""


@dataclass(frozen=True)
class Cells:
    """Means over points. middle (3,): about which small motions are taken. at (n, 3); normals (n, 3), shorter than 1
    where the surface curves; rows (n, 7): of a gap by a small motion about the middle, and by a swelling; gap (n,) mm;
    weight (n,): points; patch (n,): the patch's number. places: patches that say enough to count."""

    middle: FloatArray
    at: FloatArray
    normals: FloatArray
    rows: FloatArray
    gap: FloatArray
    weight: FloatArray
    patch: LongArray
    places: int


def cells_of(fit: Fit) -> Cells:
    """The fit's points in cubes of SIDE, or larger where that makes more than MOST."""
    used = fit.weight > 0.0
    at, normal, weight = fit.at[used], fit.gradient[used], fit.weight[used]
    middle = np.average(at, axis=0, weights=weight) if len(at) else np.zeros(3)
    rows = np.concatenate([normal, np.cross(at - middle, normal), np.ones((len(at), 1))], axis=1)
    side = SIDE
    while True:
        number, count = cubes(at - middle, side)
        total = np.asarray(np.bincount(number, weight, count), np.float64)
        kept = total >= LEAST_POINTS
        if kept.sum() <= MOST:
            break
        side *= GROWTH
    values: FloatArray = np.concatenate([at, normal, rows, fit.gap[used, None]], axis=1) * weight[:, None]
    sums = np.column_stack([np.bincount(number, column, count)[kept] for column in values.T])
    means = sums / total[kept, None]
    patch, patches = cubes(means[:, :3] - middle + PATCH / 2.0, PATCH)
    places = int((np.bincount(patch, total[kept], patches) >= LEAST_IN_PATCH).sum())
    return Cells(middle, means[:, :3], means[:, 3:6], means[:, 6:13], means[:, 13], total[kept], patch, places)
