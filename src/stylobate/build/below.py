"""The implant under an abutment that stays in the mouth: known only as far as the abutment and its mark are named."""

from __future__ import annotations

import numpy as np

from stylobate.build.model import Below
from stylobate.build.request import Step
from stylobate.build.ways import turned
from stylobate.core.errors import UsageError
from stylobate.core.rigid import inverse
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment, PartsFolder
from stylobate.record import RecordSite


def below_of(site: RecordSite, step: Step, folder: PartsFolder) -> Below:
    """Where the implant is when `step` names the abutment that carries the measured connection.

    The turn names the index mark of the measured connection, counted from the one that the scan body points to,
    towards which the abutment leans from the implant's axis: scan_from_implant =
    scan_from_connection · RotateZ(turn) · lower_from_upper⁻¹. An implant's own turn stays open by its index marks, as
    everywhere. Raises UsageError.
    """
    said = f"--below {site.site}={step.part}" + ("" if step.turn is None else f"@{step.turn}")
    abutment = _abutment(folder, step.part, said)
    if abutment.provides != site.connection:
        raise UsageError(
            f"{said}: {abutment.id} offers '{abutment.provides}', but site {site.site} was measured on "
            f"'{site.connection}'; name the abutment that carries it."
        )
    marks = site.index_order
    if step.turn is not None and step.turn >= max(marks, 1):
        range_text = f"0 to {marks - 1}" if marks else "nothing: the connection is not indexed"
        raise UsageError(f"{said}: '{site.connection}' has {marks} index marks; write a turn from {range_text}.")
    if abutment.angle_deg == 0.0:
        return Below(abutment, step.turn, _implant(site, abutment, 0))
    if marks == 0:
        note = (
            f"'{site.connection}' is not indexed, so the scan does not show which way {abutment.id} leans: the "
            f"implant's axis lies on a cone of {abutment.angle_deg:g}° about the measured one"
        )
        return Below(abutment, None, None, note)
    if step.turn is None:
        note = f"{abutment.id} may lean towards any of {marks} marks: name one, like --below {site.site}={step.part}@0"
        return Below(abutment, None, None, note)
    return Below(abutment, step.turn, _implant(site, abutment, step.turn))


def _implant(site: RecordSite, abutment: MultiUnitAbutment, turn: int) -> FloatArray:
    mark = turned(turn, site.index_order)
    return np.asarray(site.scan_from_connection @ mark @ inverse(abutment.lower_from_upper))


def _abutment(folder: PartsFolder, identifier: str, said: str) -> MultiUnitAbutment:
    for abutment in folder.multi_unit_abutments:
        if abutment.id == identifier:
            return abutment
    known = ", ".join(abutment.id for abutment in folder.multi_unit_abutments) or "none"
    raise UsageError(f"{said}: the parts folder has no abutment '{identifier}'; it has {known}.")
