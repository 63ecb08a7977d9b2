"""The order in which a site is diagnosed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.budget import size_of
from stylobate.core.closest import SurfaceTree
from stylobate.core.result import Finding
from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import OFFSET, gather
from stylobate.diagnose.layer import added_layer
from stylobate.diagnose.missing import missing_surface
from stylobate.diagnose.shapes import made_part
from stylobate.diagnose.significance import FALSE_ALARMS
from stylobate.diagnose.surroundings import look
from stylobate.edges import SharpEdges
from stylobate.fit import Around, Fit
from stylobate.parts.model import ScanBody
from stylobate.pose import Pose

UM = 1e-3


@dataclass(frozen=True)
class Diagnosis:
    """pose: with the causes found allowed for. findings, gravest first; places in local scan coordinates.

    made (6, 2): ξ for one mm more diameter, and for one mm more height, of the made part.
    """

    pose: Pose
    findings: tuple[Finding, ...]
    made: FloatArray


def diagnose(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit, pose: Pose, body: ScanBody) -> Diagnosis:
    """Look for every cause at one site."""
    evidence = gather(tree, edges, around, fit, pose)
    surroundings = look(tree, around, pose)
    radius, top = size_of(body)
    made = evidence.moved_by(made_part(evidence.patches.centre, evidence.normal, radius, top))
    findings = []
    made_offset = made[OFFSET] * (body.made_u_um or 0.0) * UM
    p, layer = added_layer(pose.offset, float(np.sqrt(pose.offset_sd**2 + made_offset @ made_offset)))
    if p < FALSE_ALARMS:
        findings.append(layer)
    unseen = missing_surface(body, evidence, surroundings, pose, pose.covariance)
    if unseen is not None:
        findings.append(unseen)
    return Diagnosis(pose, tuple(findings), made[:6])
