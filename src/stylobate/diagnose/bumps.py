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
ALONG_EDGE = (0.8, 1.6, 3.0)
"""mm, of the stretches of an edge that are looked for: wear takes a strip far longer than wide."""
BESIDE_EDGE = 0.25  # mm from a sharp convex edge at which what is lost along it is taken to end
SPACING = 0.25  # of a width, between the centres tried
CELL_SHARE = 0.25  # of a width squared: area on which one filter is taken to be one independent test
LEAST_WEIGHT = 1e-6  # of a patch's own weight: a patch with less left has been freed
STILL = 3.0  # standard deviations that a bump shows without its strongest patch
FACING = -0.2  # cosine between normals: a cap does not reach round to the far side


@dataclass(frozen=True)
class Bump:
    """The strongest filter response: z (signed), p counted over all filters, centre (3,) and width, mm.

    spike: number of the one patch that carries it alone; −1 where more than one does. form (m,): by which the cap is
    multiplied, 1 everywhere but for a stretch of an edge.
    """

    z: float
    p: float
    centre: FloatArray
    width: float
    form: FloatArray
    spike: int = -1


@compiled
def _responses(
    centres: LongArray, width: float, place: FloatArray, normal: FloatArray, weight: FloatArray, score: FloatArray,
    form: FloatArray, live: BoolArray, facing: float,
) -> FloatArray:  # fmt: skip
    result = np.zeros(len(centres))
    members = np.empty(len(place), np.int64)
    shape = np.empty(len(place))
    for c in range(len(centres)):
        j = centres[c]
        count = 0
        for i in range(len(place)):
            if not live[i] or form[i] <= 0.0:
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
            shape[count] = form[i] * (1.0 - 4.0 * d2 / (width * width))
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

    p is that of the largest of all responses, both signs.
    """
    live = live & not_freed(evidence)
    if not live.any():
        return None
    place, everywhere, edge = evidence.patches.centre, np.ones(len(live)), along_edges(evidence)
    best, at, width, form = 0.0, 0, WIDTHS[0], everywhere
    for trial, shape in [*((w, everywhere) for w in WIDTHS), *((w, edge) for w in ALONG_EDGE)]:
        some = np.nonzero(live & (shape > 0.0))[0]
        if not len(some):  # no sharp edge
            continue
        centres = _spread(place, some, SPACING * trial)
        z = _responses(centres, trial, place, evidence.normal, evidence.projected, evidence.score, shape, live, FACING)
        k = int(np.argmax(np.abs(z)))
        if abs(z[k]) > abs(best):
            best, at, width, form = float(z[k]), int(centres[k]), trial, shape
    p = any_of(upper_tail(abs(best)), _tests(evidence, live, edge))
    return Bump(best, p, place[at], width, form, _spike(evidence, live & (form > 0.0), at, width, form))


def not_freed(evidence: Evidence) -> BoolArray:
    """(m,) of which patches weight is left."""
    return np.asarray(np.diag(evidence.projected) > LEAST_WEIGHT * np.diag(evidence.weight))


def along_edges(evidence: Evidence) -> FloatArray:
    """(m,) 1 at a sharp convex edge, falling to 0 at BESIDE_EDGE from it."""
    points = evidence.points
    return points.mean(np.where(points.edge_angle > 0.0, np.maximum(1.0 - points.to_edge / BESIDE_EDGE, 0.0), 0.0))


def tests_on(evidence: Evidence, live: BoolArray) -> float:
    """Independent tests that all filters on the patches `live` (m,) amount to: area / (CELL_SHARE · width²) of a width,
    along edges one on half a width, but no more than there are patches, each with both signs.
    """
    return _tests(evidence, live, along_edges(evidence))


def _tests(evidence: Evidence, live: BoolArray, along: FloatArray) -> float:
    edge = live & (along > 0.0)
    area, strip = float(evidence.area[live].sum()), float(evidence.area[edge].sum()) / (2.0 * BESIDE_EDGE)
    caps = sum(min(float(live.sum()), area / (CELL_SHARE * width**2)) for width in WIDTHS)
    return 2.0 * (caps + sum(min(float(edge.sum()), strip / (0.5 * width)) for width in ALONG_EDGE))


def _spike(evidence: Evidence, live: BoolArray, at: int, width: float, form: FloatArray) -> int:
    """The patch without which the response is nothing, −1 where there is none (heavy tails of single points)."""
    place = evidence.patches.centre
    square = np.sum((place - place[at]) ** 2, axis=1)
    mine = np.nonzero(live & (square < width**2 / 4.0) & (evidence.normal @ evidence.normal[at] >= FACING))[0]
    shape = form[mine] * (1.0 - 4.0 * square[mine] / width**2)
    worst = int(np.argmax(np.abs(shape * evidence.score[mine])))
    if len(mine) < 2:
        return int(mine[worst])
    rest = evidence.without(mine[worst : worst + 1])
    others = np.delete(mine, worst)
    left = np.delete(shape, worst)
    information = float(left @ rest.projected[np.ix_(others, others)] @ left)
    z = float(left @ rest.score[others]) / np.sqrt(max(information, 1e-300))
    return -1 if abs(z) >= STILL else int(mine[worst])


def _spread(place: FloatArray, index: LongArray, spacing: float) -> LongArray:
    """Of the patches `index`, one a cube of `spacing` mm."""
    cube = np.floor(place[index] / spacing).astype(np.int64)
    cube -= cube.min(axis=0)
    span = cube.max(axis=0) + 1
    _, first = np.unique((cube[:, 0] * span[1] + cube[:, 1]) * span[2] + cube[:, 2], return_index=True)
    return np.asarray(index[first], dtype=np.int64)
