"""Which other turns of a scan body, and which other scan bodies, the scan leaves open (method, eq. 9, 9a)."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from stylobate.choose.readings import LEAST_ODDS, TURN_STEP_DEG, apart_deg, turns_left_deg
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.uncertainty.pose import Pose, Stand, doubts

SET_AGAINST = 2500  # points by which readings are set against each other
PLAIN_ODDS = 1e11  # against another turn, beyond which more than a round thing was seen beyond doubt


def turns_open(mine: Stand, pose: Pose, points: FloatArray, period_deg: float) -> tuple[float, bool]:
    """The widest turn about z, degrees, that the weighed residuals do not rule out by LEAST_ODDS, 0 if none; and
    whether there is one that they do not rule out by PLAIN_ODDS.

    pose: the weighted one of `mine`. points (n, 3): that carry its fit. Turns by `period_deg` are the same connection.
    """
    home, nearly = mine.scan_from_connection, False
    left = turns_left_deg(mine.tree, points, home, mine.offset, pose.effective_points, period_deg)
    turned = [replace(mine, scan_from_connection=home @ rigid.turn_z(np.radians(turn))) for turn in left]
    for turn, doubt in zip(left, doubts(pose, mine, turned, _some(points)), strict=False):
        nearly |= doubt < 2.0 * np.log(PLAIN_ODDS)
        if doubt < 2.0 * np.log(LEAST_ODDS):
            return apart_deg(turn, period_deg) + TURN_STEP_DEG / 2.0, True
    return 0.0, nearly


def weighed_doubt(mine: Stand, pose: Pose, other: Stand, points: FloatArray) -> float:
    """−2 ln of the odds of another reading, by the weighed residuals of the points (n, 3) that carry this one."""
    return next(doubts(pose, mine, [other], _some(points)), np.inf)


def _some(points: FloatArray) -> FloatArray:
    """Enough of the points to set readings against each other."""
    return points[:: max(1, len(points) // SET_AGAINST)]
