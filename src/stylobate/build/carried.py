"""The uncertainty of a measured connection, carried up a chain of parts."""

from __future__ import annotations

import numpy as np

from stylobate.build.model import Upper
from stylobate.build.ways import Way, turned
from stylobate.core.rigid import adjoint, inverse
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment, PartsFolder
from stylobate.uncertainty.bounds import bounds


def upper_of(way: Way, folder: PartsFolder, connection: str, pose: FloatArray, covariance: FloatArray) -> Upper:
    """The uppermost connection of a chain on `connection` at `pose`, scan_from_connection (4, 4).

    covariance: (6, 6) of ξ at `pose`. With lower_from_upper = L, ξ_upper = Ad(L⁻¹) ξ_lower (eq. 10); where an abutment
    stands on a connection with play p, it may turn about its axis, evenly within ± p/2: p²/12 is added first.
    """
    here, spread = connection, np.array(covariance)
    for part, turn in way.steps:
        if not isinstance(part, MultiUnitAbutment):
            continue
        seat = folder.connection(here)
        if seat.play_deg is not None and seat.index_order:
            spread[5, 5] += np.radians(seat.play_deg) ** 2 / 12.0
        carry = adjoint(inverse(turned(turn, seat.index_order) @ part.lower_from_upper))
        spread = carry @ spread @ carry.T
        pose = pose @ turned(turn, seat.index_order) @ part.lower_from_upper
        here = part.provides
    top = folder.connection(here)
    return Upper(top, pose, (spread + spread.T) / 2.0, bounds(spread, top.index_order))
