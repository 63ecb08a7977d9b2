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
STILL = 3.0  # standard deviations that a bump shows without its strongest patch
FACING = -0.2  # cosine between normals: a cap does not reach round to the far side


@dataclass(frozen=True)
class Bump:
    """The strongest filter response: z (signed), p counted over all filters, centre (3,) and width, mm.

    spike: number of the one patch that carries it alone; −1 where more than one does.
    """

    z: float
    p: float
    centre: FloatArray
    width: float
    spike: int = -1


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
    p = any_of(upper_tail(abs(best)), tests)
    return Bump(best, p, place[at], width, _spike(evidence, live, at, width))


def _spike(evidence: Evidence, live: BoolArray, at: int, width: float) -> int:
    """The patch without which the response is nothing, −1 where there is none (heavy tails of single points)."""
    place = evidence.patches.centre
    square = np.sum((place - place[at]) ** 2, axis=1)
    mine = np.nonzero(live & (square < width**2 / 4.0) & (evidence.normal @ evidence.normal[at] >= FACING))[0]
    shape = 1.0 - 4.0 * square[mine] / width**2
    worst = int(np.argmax(np.abs(shape * evidence.score[mine])))
    if len(mine) < 2:
        return int(mine[worst])
    rest = evidence.without(mine[worst : worst + 1])
    others = np.delete(mine, worst)
    form = np.delete(shape, worst)
    information = float(form @ rest.projected[np.ix_(others, others)] @ form)
    z = float(form @ rest.score[others]) / np.sqrt(max(information, 1e-300))
    return -1 if abs(z) >= STILL else int(mine[worst])


def _spread(place: FloatArray, index: LongArray, spacing: float) -> LongArray:
    """Of the patches `index`, one a cube of `spacing` mm."""
    cube = np.floor(place[index] / spacing).astype(np.int64)
    cube -= cube.min(axis=0)
    span = cube.max(axis=0) + 1
    _, first = np.unique((cube[:, 0] * span[1] + cube[:, 1]) * span[2] + cube[:, 2], return_index=True)
    return np.asarray(index[first], dtype=np.int64)
