"""Matched filters for local bumps and dents of several widths (method/trust, eq. 15–16)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.diagnose.evidence import Evidence
from stylobate.diagnose.significance import any_of, upper_tail

WIDTHS = (0.3, 0.4, 0.6, 0.8, 1.2, 2.0)
"""mm, of the caps that are looked for."""
SPACING = 0.25  # of a width, between the centres tried
CELL_SHARE = 0.25  # of a width squared: area on which one filter is taken to be one independent test
LEAST_WEIGHT = 1e-6  # of a patch's own weight: a patch with less left has been freed
FACING = -0.2  # cosine between normals: a cap does not reach round to the far side


@dataclass(frozen=True)
class Bump:
    """The strongest filter response: z (signed), p counted over all filters, centre (3,) and width, mm."""

    z: float
    p: float
    centre: FloatArray
    width: float


@compiled
def _responses(
    centres: LongArray, width: float, place: FloatArray, normal: FloatArray, weight: FloatArray, score: FloatArray,
    live: BoolArray, facing: float,
) -> FloatArray:  # fmt: skip
    result = np.zeros(len(centres))
    members = np.empty(len(place), np.int64)
    shape = np.empty(len(place))
    for c in range(len(centres)):
        j = centres[c]
        count = 0
        for i in range(len(place)):
            if not live[i]:
                continue
            d2 = 0.0
            for k in range(3):
                d2 += (place[i, k] - place[j, k]) ** 2
            if d2 >= width * width / 4.0:
                continue
            same = normal[i, 0] * normal[j, 0] + normal[i, 1] * normal[j, 1] + normal[i, 2] * normal[j, 2]
            if same < facing:
                continue
            members[count] = i
            shape[count] = 1.0 - 4.0 * d2 / (width * width)
            count += 1
        up, down = 0.0, 0.0
        for a in range(count):
            up += shape[a] * score[members[a]]
            for b in range(count):
                down += shape[a] * shape[b] * weight[members[a], members[b]]
        if down > 0.0:
            result[c] = up / np.sqrt(down)
    return result


def strongest(evidence: Evidence, live: BoolArray) -> Bump | None:
    """The strongest bump or dent on the patches (m,) that are `live`; None without patches.

    p is that of the largest of all responses, each filter counted as area / (CELL_SHARE · width²) independent tests but
    no more than there are patches, both signs.
    """
    live = live & (np.diag(evidence.projected) > LEAST_WEIGHT * np.diag(evidence.weight))
    index = np.nonzero(live)[0]
    if not len(index):
        return None
    place, score = evidence.patches.centre, evidence.score
    best, at, width = 0.0, 0, WIDTHS[0]
    tests, area = 0.0, float(evidence.area[live].sum())
    for trial in WIDTHS:
        centres = _spread(place, index, SPACING * trial)
        z = _responses(centres, trial, place, evidence.normal, evidence.projected, score, live, FACING)
        tests += 2.0 * min(float(len(index)), area / (CELL_SHARE * trial**2))
        k = int(np.argmax(np.abs(z)))
        if abs(z[k]) > abs(best):
            best, at, width = float(z[k]), int(centres[k]), trial
    return Bump(best, any_of(upper_tail(abs(best)), tests), place[at], width)


def _spread(place: FloatArray, index: LongArray, spacing: float) -> LongArray:
    """Of the patches `index`, one a cube of `spacing` mm."""
    cube = np.floor(place[index] / spacing).astype(np.int64)
    cube -= cube.min(axis=0)
    span = cube.max(axis=0) + 1
    _, first = np.unique((cube[:, 0] * span[1] + cube[:, 1]) * span[2] + cube[:, 2], return_index=True)
    return np.asarray(index[first], dtype=np.int64)
