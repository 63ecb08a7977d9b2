"""The order in which a site is diagnosed (method/trust, section "Order")."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.result import Finding, Hidden
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.diagnose import signs
from stylobate.diagnose.bumps import strongest
from stylobate.diagnose.concluding import conclude
from stylobate.diagnose.evidence import gather, refielded, weighed
from stylobate.diagnose.foreign import carried
from stylobate.diagnose.missing import missing_surface
from stylobate.diagnose.rough import rough_surface
from stylobate.diagnose.significance import FALSE_ALARMS, corrected, upper_tail
from stylobate.diagnose.state import State
from stylobate.diagnose.surroundings import look
from stylobate.fit.descend import Around, Fit
from stylobate.fit.edges import SharpEdges
from stylobate.parts.model import ScanBody
from stylobate.uncertainty.bare import settled
from stylobate.uncertainty.budget import size_of
from stylobate.uncertainty.likelihood import unusual, usual
from stylobate.uncertainty.pose import Pose

LOOKS = 3  # at a split surface
LESS_SURE = 2.0  # times the standard deviation of the look before: such a look has lost what the step stands on
FILLET = 0.5  # mm above the gingiva, and above the lowest that is seen, in which a scan's fillet may still show
ROUNDS = 8  # causes that are looked for one after the other
SUSPECT = 0.05  # a whole-surface sign this unlikely has the field estimated anew with such shapes fitted


@dataclass(frozen=True)
class Diagnosis:
    """pose: with the causes found allowed for. findings, gravest first; places in local scan coordinates.

    made (6, 2): ξ for one mm more diameter, and for one mm more height, of the made part. hidden: the bend that would
    not show. higher (k,): points of Around that carry the fit and are surely no fillet of the gingiva's.
    """

    pose: Pose
    findings: tuple[Finding, ...]
    made: FloatArray
    hidden: Hidden | None
    higher: LongArray


def diagnose(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit, pose: Pose, body: ScanBody) -> Diagnosis:
    """Look for every cause at one site, and allow for those found in the pose and its covariance.

    A split has thrown the fit to one side: all is looked at anew from the pose between the halves.
    """
    found = _once(tree, edges, around, fit, pose, body)
    for _ in range(LOOKS - 1):
        if all(finding.cause != "split surface" for finding in found.findings):
            break
        try:
            again = _once(tree, edges, around, fit, found.pose, body)
        except ValueError:  # from there the surface is out of reach
            break
        if _bent(found) and not _bent(again):  # from the better pose the bent end lies too far off to carry anything
            break
        if np.trace(again.pose.covariance[:3, :3]) > LESS_SURE**2 * np.trace(found.pose.covariance[:3, :3]):
            break
        found = again
    pose, made = settled(found.pose, found.made)
    return replace(found, pose=pose, made=made)


def _bent(found: Diagnosis) -> bool:
    return any(finding.cause == "bent body" for finding in found.findings)


def _once(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit, pose: Pose, body: ScanBody) -> Diagnosis:
    """One look, the offset not settled yet: made (q, 2) is of all parameters."""
    surroundings = look(tree, around, pose)
    points = carried(surroundings, fit.support[fit.clear], pose.offset, fit.sd)
    plain = gather(tree, edges, around, points.index, pose, closest=points.closest)
    out = plain.points.mean(points.defect.astype(np.float64)) > 0.5
    radius, top = size_of(body)
    lowest = float(np.quantile(plain.points.feet[:, 2], 0.005))

    def high(places: FloatArray) -> BoolArray:
        return np.asarray((places[:, 2] >= lowest + FILLET) & surroundings.above_gum(places, FILLET))

    low = ~high(plain.patches.centre)
    bottom = min(lowest, max(surroundings.gum_height, 0.0))  # where the body comes free
    state = State(
        plain, plain, out, (), low, bottom, float(top), float(radius), _coat(pose), 1e-3 * (body.made_u_um or 0.0)
    )
    concluded = conclude(_searched(_cleared(state.under(plain).with_neighbours())), pose, body)
    unseen = missing_surface(body, concluded.evidence, surroundings, concluded.pose)
    found = [*concluded.findings, rough_surface(concluded.pose.field, pose.effective_points), unseen]
    higher = points.index[high(plain.points.feet) & ~points.defect]
    findings = tuple(one for one in found if one is not None)
    return Diagnosis(concluded.pose, findings, concluded.made, concluded.hidden, higher)


def _coat(pose: Pose) -> float:
    """Thickness of a layer that is there beyond doubt, mm: its unevenness must not pass for another cause."""
    return pose.offset if corrected(upper_tail(pose.offset / pose.offset_sd)) < FALSE_ALARMS else 0.0


def _cleared(state: State) -> State:
    """Where the whole surface or the field is suspect, the field estimated with such shapes fitted: a cause must not
    hide itself. The forms are those that win most under a usual field: one that took a cause for noise misjudges them.
    """
    best = _best_of_each(state)
    if min(sign.p for sign in best) > SUSPECT and not unusual(state.plain.field):
        return state
    as_usual = state.under(weighed(state.plain.points, usual(state.plain.field.white_sd)))
    shapes = np.hstack([sign.shapes for sign in _best_of_each(as_usual)])
    return state.under(refielded(state.plain, shapes, state.out))


def _searched(state: State) -> State:
    """Causes one after the other, the likeliest first, until none is left that is significant."""
    for _ in range(ROUNDS):
        best = _best_of_each(state)
        gain = max((sign.gain for sign in best), default=0.0)
        bump = strongest(state.freed, ~state.out)
        if bump is not None and corrected(bump.p) < FALSE_ALARMS and bump.z**2 > gain:
            state = state.with_patch(bump)
            continue
        sure = [sign for sign in best if corrected(sign.p) < FALSE_ALARMS and state.holds_higher_up(sign)]
        sure = [sign for sign in sure if state.holds_beside_views(sign)]
        if not sure:
            break
        # With every patch back in: what one cause explains, another may only have left out.
        state = min((state.with_cause(sign) for sign in sure), key=State.unexplained)
    return state


def _best_of_each(state: State) -> list[signs.Sign]:
    """Of each whole-surface cause not found yet, the form that wins most."""
    best: dict[str, signs.Sign] = {}
    for sign in state.whole_surface_signs:
        if sign.cause not in best or sign.gain > best[sign.cause].gain:
            best[sign.cause] = sign
    return list(best.values())
