"""Lost and added material: patches of the surface that stand off it, kept out of the pose (method/trust, eq. 15–17)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.result import Finding
from stylobate.core.types import BoolArray, LongArray
from stylobate.diagnose.bumps import CELL_SHARE, WIDTHS, Bump
from stylobate.diagnose.evidence import Evidence, unit_shapes
from stylobate.diagnose.foreign import touching
from stylobate.diagnose.significance import Z95, any_of, corrected, upper_tail
from stylobate.pose import Pose

CORE = 0.35  # of a width about the centre: patches taken whatever they say
JOINED = 2.0  # standard deviations with which a neighbour joins a patch, well below those that found it
NEIGHBOUR = 0.35  # mm
AT_EDGE = 0.1  # mm: a patch this near to an edge tells of the edge
MOST_TURN = 2.6  # rad
MOST_NAMED = 3  # patches of each kind that are named
LOST = (
    "Material is missing there, and that patch is kept out of the fit. A chipped coating or a worn edge does not come"
    " back: replace the scan body."
)
ADDED = (
    "Something lies on the surface there, and that patch is kept out of the fit. Clean and dry the scan body, and scan"
    " that side again."
)


@dataclass(frozen=True)
class Patch:
    """A defect: its patches, mean displacement and greatest depth (mm, signed) with standard deviation, p."""

    members: LongArray
    depth: float
    sd: float
    p: float


def grown(evidence: Evidence, bump: Bump, out: BoolArray) -> BoolArray:
    """`out` (m,) with the patches about a bump: its core, and neighbours that lean its way."""
    distance = np.linalg.norm(evidence.patches.centre - bump.centre, axis=1)
    score, own = evidence.score, np.diag(evidence.projected)
    standard = np.sign(bump.z) * score / np.sqrt(np.maximum(own, 1e-300))
    standard[own < 1e-6 * np.diag(evidence.weight)] = 0.0
    taken = (distance < CORE * bump.width) | ((distance < 0.5 * bump.width) & (standard > 1.0))
    for _ in range(3):
        if not taken.any():
            break
        beside = np.isfinite(
            Buckets.of(evidence.patches.centre[taken], NEIGHBOUR).nearest(evidence.patches.centre, NEIGHBOUR)[0]
        )
        taken |= beside & (standard > JOINED)
    return np.asarray(out | taken)


def judged(plain: Evidence, out: BoolArray) -> list[Patch]:
    """The patches `out` (m,) of `plain`, where none is left out yet, by groups that touch; strongest first.

    A group of one patch is a spike, and not named.
    """
    index = np.nonzero(out)[0]
    if not len(index):
        return []
    displaced, spread = plain.amplitudes(unit_shapes(index, len(out)))
    group = touching(plain.patches.centre[index], NEIGHBOUR)
    tests = sum(2.0 * min(float(len(out)), float(plain.area.sum()) / (CELL_SHARE * width**2)) for width in WIDTHS)
    result = []
    for k in range(int(group.max()) + 1):
        mine = np.nonzero(group == k)[0]
        if len(mine) < 2:
            continue
        values, covariance = displaced[mine], spread[np.ix_(mine, mine)]
        weight = np.abs(values)  # a cap's own form is the filter that suits it
        z = float(weight @ values / np.sqrt(weight @ covariance @ weight))
        deepest = int(np.argmax(np.sign(z) * values))
        variance = float(covariance[deepest, deepest])
        depth, sd = _depth(plain, index[mine], index[mine[deepest]], float(values[deepest]), variance)
        result.append(Patch(index[mine], depth, sd, any_of(upper_tail(abs(z)), tests)))
    return sorted(result, key=lambda one: one.p)


def _depth(plain: Evidence, members: LongArray, deepest: int, value: float, variance: float) -> tuple[float, float]:
    """Depth (mm, signed) of a defect and its standard deviation, from its deepest patch (eq. 17).

    Where material is lost from an edge that turns by φ, what lies at depth t below the edge is t·cos(φ/2) from either
    face. A patch as wide as the points are apart misses the bottom of a cap of width w by up to depth·(spacing/w)².
    """
    mine = plain.points.group == deepest
    nearest = np.nonzero(mine)[0][int(np.argmin(plain.points.to_edge[mine]))]
    angle, away = float(plain.points.edge_angle[nearest]), float(plain.points.to_edge[nearest])
    if value < 0.0 and angle > 0.0 and away < max(abs(value), AT_EDGE):
        share = float(np.cos(min(angle, MOST_TURN) / 2.0))
        value, variance = value / share, variance / share**2
    spacing = float(np.sqrt(np.median(plain.points.area)))
    width = 2.0 * float(np.sqrt(plain.area[members].sum() / np.pi))
    missed = abs(value) * min((spacing / width) ** 2, 1.0)
    sign = 1.0 if value > 0.0 else -1.0
    return value + sign * missed / 2.0, float(np.sqrt(variance + missed**2 / 12.0))


def findings(evidence: Evidence, pose: Pose, patches: list[Patch]) -> list[Finding]:
    """One finding a patch, at most MOST_NAMED of each sign, places in scan coordinates."""
    result: list[Finding] = []
    for cause, advice, sign in (("lost material", LOST, -1.0), ("added material", ADDED, 1.0)):
        mine = [one for one in patches if np.sign(one.depth) == sign][:MOST_NAMED]
        for one in mine:
            place = evidence.patches.centre[one.members].mean(axis=0)
            where = pose.scan_from_connection[:3, :3] @ place + pose.scan_from_connection[:3, 3]
            area = float(evidence.area[one.members].sum())
            result.append(
                Finding(
                    cause,
                    advice,
                    1e3 * abs(one.depth),
                    1e3 * Z95 * one.sd,
                    p=corrected(one.p),
                    where=(float(where[0]), float(where[1]), float(where[2])),
                    area_mm2=area,
                )
            )
    return result
