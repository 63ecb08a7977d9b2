"""From the causes found to findings, and to a pose and covariance that allow for them."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.result import Finding, Hidden
from stylobate.core.types import FloatArray
from stylobate.diagnose import forms, layer, material, misfit
from stylobate.diagnose.evidence import Evidence, refielded
from stylobate.diagnose.hidden import hidden_bend
from stylobate.diagnose.shapes import made_part
from stylobate.diagnose.significance import FALSE_ALARMS, corrected
from stylobate.diagnose.state import State
from stylobate.parts.model import ScanBody
from stylobate.uncertainty.pose import OFFSET, Pose
from stylobate.uncertainty.unsure import doubt

UM = 1e-3


@dataclass(frozen=True)
class Concluded:
    """pose, findings gravest first, and the evidence behind them.

    made (q, 2): θ for one mm more diameter, and for one mm more height, of the made part. hidden: the bend that would
    not show; None where one is found.
    """

    pose: Pose
    findings: tuple[Finding, ...]
    made: FloatArray
    evidence: Evidence
    hidden: Hidden | None


def conclude(state: State, pose: Pose, body: ScanBody) -> Concluded:
    """What the causes found say together. Without any, the pose stays as it was."""
    state = _pruned(state)
    state = replace(state, made_sd=0.0).under(state.plain)  # which the budget counts
    patches = [one for one in _patches(state) if corrected(one.p) < FALSE_ALARMS]
    if state.found or patches:
        state = state.under(refielded(state.plain, state.shapes_found(), state.out))
    evidence = state.evidence()
    unsure = pose.unsure if state.nothing_found and evidence.field == pose.field.wary() else None
    if unsure is None:
        unsure = doubt(evidence.covariance, evidence.gain, evidence.patches, evidence.field).and_more(pose.reaches)
    shapes = made_part(evidence.patches.centre, evidence.normal, state.radius, state.top)
    offset = pose.offset + float(evidence.step[OFFSET])
    sd = float(np.sqrt(unsure.on(evidence.covariance)[OFFSET, OFFSET]))
    coated = _layer(evidence, offset, sd, shapes, body)
    out = np.asarray(np.nonzero(state.out)[0], dtype=np.int64)
    another = misfit.other_shape(state.plain, state.shapes_found(), out, pose.offset, body, (state.radius, state.top))
    findings = [another] if another is not None else []
    if coated is not None and coated.cause == "no part fits" and not findings:
        findings.append(coated)
    step, covariance, shifted = _allowed(state, evidence)
    findings += shifted
    if coated is not None and coated.cause == "added layer" and all(one.cause != "no part fits" for one in findings):
        another = layer.another_body(offset)
        findings += [coated] if another is None else [another, coated]
    if findings or state.found or patches:
        pose = replace(pose, field=evidence.field).moved(step, unsure.on(covariance))
    findings += material.findings(evidence, pose, [one for one in patches if abs(one.depth) > material.SHALLOW])
    bent = any(sign.cause == "bent body" for sign in state.found)
    hidden = None if bent else hidden_bend(evidence, state.bottom, state.top)
    return Concluded(pose, tuple(findings), evidence.moved_by(shapes), evidence, hidden)


def _pruned(state: State) -> State:
    """Without the causes that the later ones have explained away."""
    for sign in state.found:
        again = state.signs_of(sign.cause, state.evidence(but=sign.cause))
        if corrected(min(one.p for one in again)) >= FALSE_ALARMS:
            state = replace(state, found=tuple(one for one in state.found if one.cause != sign.cause))
    return state


def _patches(state: State) -> list[material.Patch]:
    return material.judged(state.evidence_with_all_patches(), state.out)


def _layer(evidence: Evidence, offset: float, sd: float, shapes: FloatArray, body: ScanBody) -> Finding | None:
    """A layer, or a body too thick or too thin for one; None where the offset (mm, with sd) is nothing to speak of."""
    made = evidence.moved_by(shapes)[OFFSET] * (body.made_u_um or 0.0) * UM
    sd = float(np.sqrt(sd**2 + made @ made))
    finding = layer.added_layer(offset, sd)
    wrong = misfit.too_thick_or_thin(finding, offset, sd, body)
    if wrong is not None:
        return wrong
    return finding if finding.p is not None and finding.p < FALSE_ALARMS else None


def _allowed(state: State, base: Evidence) -> tuple[FloatArray, FloatArray, list[Finding]]:
    """Step (q,) and covariance (q, q) of θ with bends and splits averaged over their forms, and their findings."""
    step, covariance = base.step, base.covariance
    findings = []
    for cause in ("bent body", "split surface"):
        if all(sign.cause != cause for sign in state.found):
            continue
        aside = state.evidence(but=cause)
        trial = state.signs_of(cause, aside)
        form = forms.averaged(aside, trial)
        p = min(sign.p for sign in trial)
        step, covariance = form.step, form.covariance
        if cause == "bent body":
            findings.append(forms.bent(form, p))
        else:
            split = forms.parted(form, p)
            findings += [] if split is None else [split]
            covariance = covariance.copy()
            covariance[:6, :6] += forms.neither_half(form)
    return step, covariance, findings
