"""The user names a scan body; would another one of the folder fit what stands there better?"""

from __future__ import annotations

import numpy as np

from stylobate.choose.readings import LEAST_ODDS, lay
from stylobate.core import rigid
from stylobate.core.result import Finding
from stylobate.measuring.site import Bench, Measured
from stylobate.parts.model import PartsFolder, ScanBody

TURN_STEP_DEG = 30.0  # between the turns from which another scan body is laid on
SUSPECTS = ("added layer", "no part fits")
"""What a wrong part of nearly the right size looks like."""


def rest_of(folder: PartsFolder, bodies: tuple[ScanBody, ...]) -> tuple[ScanBody, ...]:
    """The scan bodies of the folder that are not in play."""
    known = {body.id for body in bodies}
    return tuple(body for body in folder.scan_bodies if body.id not in known)


def fits_better(bench: Bench, rest: tuple[ScanBody, ...], measured: Measured) -> Finding | None:
    """The finding, where a scan body that the user did not name fits a suspect site beyond doubt better."""
    if not rest or all(finding.cause not in SUSPECTS for finding in measured.diagnosis.findings):
        return None
    others = Bench(bench.parts, rest)
    pose = measured.pose.scan_from_connection
    turns = np.radians(np.arange(0.0, 360.0, TURN_STEP_DEG))
    starts = [(0, pose)] + [
        (k + 1, pose @ rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, turn]))) for k in range(len(rest)) for turn in turns
    ]
    readings = lay((bench.trees[measured.body], *others.trees), measured.around, starts)
    mine = next((reading for reading in readings if reading.body == 0), None)  # none: left far behind
    points = measured.pose.effective_points
    best = min(readings, key=lambda reading: reading.doubt(mine or readings[0], points), default=None)
    if best is None or best.body == 0:
        return None
    if mine is not None and mine.doubt(best, points) < 2.0 * float(np.log(LEAST_ODDS)):
        return None
    return finding(rest[best.body - 1].id, bench.bodies[measured.body].id)


def finding(stands: str, named: str) -> Finding:
    """What stands there is not what was named."""
    advice = (
        f"The scan shows {stands}, not {named}. Read the number on the scan body; if it is {stands}, measure again with"
        f" --scan-body {stands}."
    )
    return Finding("other part fits better", advice)
