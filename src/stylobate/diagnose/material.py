"""Lost and added material: patches of the surface that stand off it, kept out of the pose (method/trust, eq. 15–17)."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.result import Finding
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.diagnose.bumps import STILL, Bump, not_freed, tests_on
from stylobate.diagnose.evidence import Evidence, Points, unit_shapes
from stylobate.diagnose.foreign import touching
from stylobate.diagnose.significance import Z95, any_of, corrected, upper_tail
from stylobate.uncertainty.pose import Pose

CORE = 0.35  # of a width about the centre: patches taken whatever they say
JOINED = 2.0  # standard deviations with which a neighbour joins a patch, well below those that found it
NEIGHBOUR = 0.35  # mm
FAR, SEVERAL = 4.0, 3  # standard deviations of a point; points so far off that are no slip of the scanner
ABOUT, LEAST_ABOUT, SAME_SIDE = 0.3, 8, 0.7  # mm about the deepest point; points; cosine of normals: for its height
SHALLOW = 0.015  # mm: a defect no deeper is left out of the fit but not named; it asks nothing of anybody (no source)
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
    """A defect: its patches, greatest depth (mm, signed) with standard deviation, p, and the deepest place (3,)."""

    members: LongArray
    depth: float
    sd: float
    p: float
    deepest: FloatArray


def grown(evidence: Evidence, bump: Bump, out: BoolArray) -> BoolArray:
    """`out` (m,) with the patches about a bump: its core, and neighbours that lean its way."""
    distance = np.linalg.norm(evidence.patches.centre - bump.centre, axis=1)
    standard = np.sign(bump.z) * _standard(evidence)
    taken = (distance < CORE * bump.width) | ((distance < 0.5 * bump.width) & (standard > 1.0))
    return np.asarray(out | _joined(evidence, taken & (bump.form > 0.0), standard))


def reaching(evidence: Evidence, out: BoolArray) -> BoolArray:
    """`out` (m,) with the neighbours that lean as each group of it does. evidence: with `out` left out.

    Points far off the surface are told at once, but of a small chip they are one patch, which alone would be a spike.
    """
    index = np.nonzero(out)[0]
    if not len(index):
        return out
    standard = _standard(evidence)
    height = evidence.points.mean(evidence.points.residual)
    group = touching(evidence.patches.centre[index], NEIGHBOUR)
    wider = out.copy()
    for k in range(int(group.max()) + 1):
        mine = np.zeros(len(out), np.bool_)
        mine[index[group == k]] = True
        wider |= _joined(evidence, mine, float(np.sign(height[mine].sum())) * standard)
    return wider


def _standard(evidence: Evidence) -> FloatArray:
    """(m,) standard deviations by which each patch stands out by itself; 0 of one that has been freed."""
    own = np.maximum(np.diag(evidence.projected), 1e-300)
    return np.where(not_freed(evidence), evidence.score / np.sqrt(own), 0.0)


def _joined(evidence: Evidence, taken: BoolArray, standard: FloatArray) -> BoolArray:
    """`taken` (m,) with neighbours, and theirs, that stand out by JOINED standard deviations (m,)."""
    taken = taken.copy()
    for _ in range(3):
        if not taken.any():
            break
        beside = np.isfinite(
            Buckets.of(evidence.patches.centre[taken], NEIGHBOUR).nearest(evidence.patches.centre, NEIGHBOUR)[0]
        )
        taken |= beside & (standard > JOINED)
    return taken


def judged(plain: Evidence, out: BoolArray) -> list[Patch]:
    """The patches `out` (m,) of `plain`, where none is left out yet, by groups that touch; strongest first.

    A group that is no more than a slip of the scanner is not named.
    """
    index = np.nonzero(out)[0]
    if not len(index):
        return []
    displaced, spread = plain.amplitudes(unit_shapes(index, len(out)))
    group = touching(plain.patches.centre[index], NEIGHBOUR)
    tests = tests_on(plain, np.ones(len(out), np.bool_))
    result = []
    for k in range(int(group.max()) + 1):
        mine = np.nonzero(group == k)[0]
        values, covariance = displaced[mine], spread[np.ix_(mine, mine)]
        z = _shown(values, covariance)
        if _slip(plain, index[mine], values, covariance):
            continue
        deepest = int(np.argmax(np.sign(z) * values))
        depth, sd, at = _depth(plain, index[mine], float(covariance[deepest, deepest]), float(np.sign(z)))
        result.append(Patch(index[mine], depth, sd, any_of(upper_tail(abs(z)), tests), plain.points.feet[at]))
    return _merged(sorted(result, key=lambda one: one.p))


def _merged(patches: list[Patch]) -> list[Patch]:
    """Those with the same deepest place taken for one, the strongest: one lump may have fallen apart into groups."""
    kept: list[Patch] = []
    for one in patches:
        same = [k for k, other in enumerate(kept) if np.linalg.norm(one.deepest - other.deepest) < ABOUT]
        if same:
            other = kept[same[0]]
            kept[same[0]] = replace(other, members=np.union1d(other.members, one.members))
        else:
            kept.append(one)
    return kept


def _slip(plain: Evidence, members: LongArray, values: FloatArray, covariance: FloatArray) -> bool:
    """Whether a group is carried by fewer than SEVERAL points, or shows nothing without its strongest patch where not
    as many lie far off.
    """
    sign = float(np.sign(_shown(values, covariance)))
    sd = float(np.hypot(plain.field.white_sd, plain.field.correlated_sd))
    points = sign * plain.points.residual[np.isin(plain.points.group, members)] / sd
    if np.sum(points > JOINED) < SEVERAL:
        return True
    if np.sum(points > FAR) >= SEVERAL:
        return False
    rest = np.delete(np.arange(len(members)), int(np.argmax(np.abs(values) / np.sqrt(np.diag(covariance)))))
    return not len(rest) or sign * _shown(values[rest], covariance[np.ix_(rest, rest)]) < STILL


def _shown(values: FloatArray, covariance: FloatArray) -> float:
    """Standard deviations by which displacements (k,) stand out together: a defect's own form is the filter for it."""
    weight = np.abs(values)
    return float(weight @ values / np.sqrt(weight @ covariance @ weight))


def _depth(plain: Evidence, members: LongArray, variance: float, sign: float) -> tuple[float, float, int]:
    """Depth (mm, signed) of a defect of `sign`, its standard deviation and its deepest point, from the points about
    that (eq. 17).

    variance: of the residual field there, mm².
    """
    points = plain.points
    mine = np.nonzero(np.isin(points.group, members))[0]
    deepest = mine[int(np.argmax(sign * points.residual[mine]))]
    for _ in range(2):
        value, own, missed, deepest = _peak(points, deepest, sign)
    return value, float(np.sqrt(variance + own + missed**2 / 12.0)), int(deepest)


def _peak(points: Points, at: int, sign: float) -> tuple[float, float, float, int]:
    """Height (mm, signed) of a paraboloid through the points about one, its variance, by how much the points' spacing
    may miss it, and the point nearest to it.
    """
    normal = points.gradient[at]
    off = points.feet - points.feet[at]
    near = np.nonzero((np.sum(off**2, axis=1) < ABOUT**2) & (points.gradient @ normal > SAME_SIDE))[0]
    if len(near) < LEAST_ABOUT:
        return float(points.residual[at]), 0.0, abs(float(points.residual[at])), at
    across = off[near] - np.outer(off[near] @ normal, normal)
    u, v = np.linalg.svd(np.eye(3) - np.outer(normal, normal))[0][:, :2].T
    x, y = across @ u, across @ v
    form = np.stack([np.ones(len(near)), x, y, x**2 + y**2], axis=1)
    solution, _, _, _ = np.linalg.lstsq(form, points.residual[near], rcond=None)
    fitted = form @ solution
    top = int(np.argmax(sign * fitted))
    noise = float(np.sum((points.residual[near] - fitted) ** 2)) / (len(near) - 4)
    spread = form[top] @ np.linalg.pinv(form.T @ form) @ form[top]
    missed = abs(float(solution[3])) * float(np.median(points.area[near]))
    return float(fitted[top]), noise * float(spread), missed, int(near[top])


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
