"""Which scan body stands there, and at which turn: every reading laid on the same points, part and offset together.

Method, eq. 9: −2 log L with the number of independent points in place of the number of points, so that correlated
residuals do not make a choice look certain.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray, LongArray
from stylobate.fit.descend import (
    COARSE_POINTS,
    TUKEY,
    Around,
    Descent,
    descend,
    surprise,
    to_connection,
    usable,
    within_reach,
)

COMMON_POINTS = 2000
TRUNCATED = 0.2  # mm: a point farther from the surface than this counts as this
WIDE, FIRST_STEPS = 0.35, 5  # mm, width of the loss at first; steps after which readings are first compared
HOPELESS_SD = 0.12  # mm rms within which the likeliest reading of one scan body must come
LEFT_BEHIND = 1.6  # ln of the ratio of mean squares at which a reading is given up: five times
COMMON = 0.15  # mm: points this near to the surface in any reading are compared in all
TURN_STEP_DEG, TURN_POINTS, OTHER_TURNS, TIMES_TURNED = 5.0, 250, 3, 3
TURNS_DEG = np.arange(0.0, 360.0, TURN_STEP_DEG)
LEAST_ODDS = 100.0  # below, a choice is called ambiguous (2 ln 100 = 9.21 in −2 ln L; common practice, no source)
# The same of another turn. The lowest of several was taken, by a field that is only estimated: where the marks that
# show the turn were hidden, the true one came down to 1 : 1300; where they are seen, others have 1 : 1e23 (no source).
TURN_ODDS = 1e6


@dataclass(frozen=True)
class Laid:
    """One reading laid on the scan: index of the scan body, where its descent ended, and its loss on the common points.

    log_loss: ln of the mean truncated square (mm²); penalty: −2 log prior of the offset.
    """

    body: int
    descent: Descent
    log_loss: float
    penalty: float

    def doubt(self, best: Laid, effective_points: float) -> float:
        """−2 ln of the odds of this reading against `best`."""
        return effective_points * (self.log_loss - best.log_loss) + self.penalty - best.penalty


def lay(trees: Sequence[SurfaceTree], around: Around, starts: Sequence[tuple[int, FloatArray]]) -> list[Laid]:
    """Lay readings (scan body, pose) on the same points; best first, none where the likeliest of no scan body fits.

    Readings left far behind after a few steps go. The best is then tried at every turn about its axis: a body of three
    lobes fits nearly as well at each of them, and the search for places need not have come by the right one.
    """
    first = _first(trees, around, starts)
    laid = _compared(trees, around, first)
    close = [one for one in laid if one.log_loss - laid[0].log_loss < LEFT_BEHIND]
    last = _compared(trees, around, [(one.body, _on(trees[one.body], around, one.descent)) for one in close])
    if not last or last[0].descent.sd > HOPELESS_SD:
        return []
    for _ in range(TIMES_TURNED):
        best = last[0]
        home = rigid.inverse(best.descent.scan_from_connection)
        turns = [rigid.turn_of(home @ one.descent.scan_from_connection) for one in last if one.body == best.body]
        turned = [(best.body, one) for one in _turned(trees[best.body], around, best.descent, np.degrees(turns))]
        last = _compared(trees, around, [*((one.body, one.descent) for one in last), *turned])
        if last[0].descent is best.descent:
            break
    return last


def _first(
    trees: Sequence[SurfaceTree], around: Around, starts: Sequence[tuple[int, FloatArray]]
) -> list[tuple[int, Descent]]:
    """The first steps of every reading; none where the likeliest reading of each scan body is hopeless."""
    leading = {body: k for k, (body, _) in reversed(list(enumerate(starts)))}
    begun = {k: _from(trees[body], around, starts[k][1]) for body, k in leading.items()}
    if min(one.sd for one in begun.values()) > HOPELESS_SD:
        return []
    return [(body, begun.get(k) or _from(trees[body], around, start)) for k, (body, start) in enumerate(starts)]


def _turned(tree: SurfaceTree, around: Around, from_: Descent, known_deg: FloatArray) -> list[Descent]:
    """Descents from the likeliest turns about z other than those known, at most OTHER_TURNS of them."""
    pose = from_.scan_from_connection
    points = around.points[within_reach(tree, around, pose, TURN_POINTS)]
    loss = _turn_losses(tree, to_connection(pose, points), from_.offset, TURNS_DEG)
    lowest = (loss <= np.roll(loss, 1)) & (loss <= np.roll(loss, -1))
    for turn_deg in known_deg:
        lowest &= np.abs((TURNS_DEG - turn_deg + 180.0) % 360.0 - 180.0) > 1.5 * TURN_STEP_DEG
    tried = np.nonzero(lowest)[0]
    tried = tried[np.argsort(loss[tried])][:OTHER_TURNS]
    first = [_from(tree, around, pose @ rigid.turn_z(np.radians(TURNS_DEG[k]))) for k in tried]
    return [_on(tree, around, one) for one in first if one.sd < HOPELESS_SD]


def _turn_losses(tree: SurfaceTree, points: FloatArray, offset: float, turns_deg: FloatArray) -> FloatArray:
    """ln of the mean truncated square (mm²) of points (n, 3), connection frame, with the body turned about z (k,)."""
    turns = np.array([rigid.turn_z(angle)[:3, :3] for angle in np.radians(turns_deg)])
    distance = tree.closest((points @ turns).reshape(-1, 3), TRUNCATED + abs(offset)).distance.reshape(len(turns), -1)
    off = np.minimum(np.abs(np.nan_to_num(distance, nan=np.inf) - offset), TRUNCATED)
    return np.asarray(np.log(np.mean(off**2, axis=1) + 1e-12))


def _from(tree: SurfaceTree, around: Around, start: FloatArray) -> Descent:
    """The first steps from a start."""
    return descend(tree, around, start, _near(tree, around, start), WIDE, steps=FIRST_STEPS)


def _near(tree: SurfaceTree, around: Around, pose: FloatArray) -> LongArray:
    return within_reach(tree, around, pose, COARSE_POINTS)


def _on(tree: SurfaceTree, around: Around, from_: Descent) -> Descent:
    """A descent carried on to its end."""
    pose = from_.scan_from_connection
    width = max(1.2 * TUKEY * from_.sd, 0.06)
    return from_ if from_.converged else descend(tree, around, pose, _near(tree, around, pose), width, from_.offset)


def _compared(trees: Sequence[SurfaceTree], around: Around, descents: Sequence[tuple[int, Descent]]) -> list[Laid]:
    """The loss of every reading on the points that lie near any, best first."""
    near = np.zeros(len(around.points), np.bool_)
    for body, descent in descents:
        near[within_reach(trees[body], around, descent.scan_from_connection, len(near))] = True
    which = np.nonzero(near)[0]
    which = which[:: max(1, len(which) // COMMON_POINTS)]
    off = np.full((len(descents), len(which)), TRUNCATED)
    for k, (body, descent) in enumerate(descents):
        pose = descent.scan_from_connection
        closest = trees[body].closest(to_connection(pose, around.points[which]), TRUNCATED + abs(descent.offset))
        good = usable(closest, around.normals[which] @ pose[:3, :3])
        off[k, good] = np.minimum(np.abs(closest.distance[good] - descent.offset), TRUNCATED)
    common = np.any(off < COMMON, axis=0)
    area = around.area[which][common]
    result = []
    for k, (body, descent) in enumerate(descents):
        loss = float(np.sum(area * off[k, common] ** 2) / max(float(area.sum()), 1e-12))
        result.append(Laid(body, descent, float(np.log(loss + 1e-12)), surprise(descent.offset)))
    # Sorted with a stand-in for the independent points; the odds are stated with the site's own.
    return sorted(result, key=lambda one: 50.0 * one.log_loss + one.penalty)


def turns_left_deg(
    tree: SurfaceTree, points: FloatArray, pose: FloatArray, offset: float, effective_points: float, period_deg: float
) -> tuple[list[float], list[float]]:
    """Turns about z, degrees, that the mean square does not rule out (odds below TURN_ODDS), widest first; and those of
    them at which it has a minimum, with the two next to where the body stands.

    Every turn is tried, TURN_STEP_DEG apart, on the points (n, 3) that carry the fit: a linearised uncertainty knows
    nothing of a flat that no point shows. Turns by `period_deg` are the same connection.
    """
    local = to_connection(pose, points[:: max(1, len(points) // TURN_POINTS)])
    loss = _turn_losses(tree, local, offset, TURNS_DEG)
    open_ = effective_points * (loss - loss[0]) < 2.0 * np.log(TURN_ODDS)
    lowest = (loss <= np.roll(loss, 1)) & (loss <= np.roll(loss, -1))
    left = [float(turn) for turn in TURNS_DEG[open_] if apart_deg(turn, period_deg) > 0.0]
    left.sort(key=lambda turn: -apart_deg(turn, period_deg))
    lowest[[1, -1]] = True
    minima = set(TURNS_DEG[lowest].tolist())
    return left, [turn for turn in left if turn in minima]


def apart_deg(turn_deg: float, period_deg: float) -> float:
    """How far a turn is from the nearest equal mark, degrees."""
    return float(abs((turn_deg + period_deg / 2) % period_deg - period_deg / 2))
