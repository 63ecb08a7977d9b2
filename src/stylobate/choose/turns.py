"""Which other turns of a scan body, and which other scan bodies, the scan leaves open (method, eq. 9, 9a)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from stylobate.choose.readings import LEAST_ODDS, TURN_ODDS, TURN_STEP_DEG, apart_deg, turns_left_deg
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.uncertainty.pose import TURN, Pose, Stand, doubts

SET_AGAINST = 2500  # points by which readings are set against each other
FEWEST = 10  # points that may show a turn
PLAIN_ODDS = 1e11  # against another turn, beyond which more than a round thing was seen beyond doubt


def turns_open(mine: Stand, pose: Pose, points: FloatArray, share: float, period_deg: float) -> tuple[float, bool]:
    """The widest turn about z, degrees, that the weighed residuals do not rule out, 0 if none; and whether one of those
    where the mean square has a minimum is not ruled out by PLAIN_ODDS; of turns that the mean square leaves.

    pose: the weighted one of `mine`. points (n, 3): that carry its fit and are surely the body's: a few of the
    gingiva's would speak for the turn that took them in; share: they are of all that carry it. Turns by `period_deg`
    are the same connection.
    """
    if len(points) < FEWEST:
        return period_deg / 2.0, True
    home, some = mine.scan_from_connection, _some(points)
    sd_deg = turn_sd_deg(pose)

    def weighed(turns: list[float]) -> Iterator[tuple[float, float, bool]]:
        """How far away each is, its doubt, and whether it is open."""
        turned = (replace(mine, scan_from_connection=home @ rigid.turn_z(np.radians(turn))) for turn in turns)
        for turn, doubt in zip(turns, doubts(pose, mine, turned, some), strict=False):
            away = apart_deg(turn, period_deg)
            yield away, doubt, doubt < 2.0 * np.log(odds_needed(away, sd_deg))

    left, minima = turns_left_deg(mine.tree, points, home, mine.offset, share * pose.effective_points, period_deg)
    if all(doubt >= 2.0 * np.log(PLAIN_ODDS) for _, doubt, _ in weighed(minima)):
        return 0.0, False
    widest = next((away for away, _, is_open in weighed(left) if is_open), None)
    return (0.0, True) if widest is None else (widest + TURN_STEP_DEG / 2.0, True)


def odds_needed(turn_deg: float, sd_deg: float) -> float:
    """By which a turn is ruled out: by LEAST_ODDS where the covariance allows it, any other by TURN_ODDS."""
    return LEAST_ODDS if turn_deg < max(np.sqrt(2.0 * np.log(TURN_ODDS)) * sd_deg, TURN_STEP_DEG) else TURN_ODDS


def turn_sd_deg(pose: Pose) -> float:
    """Standard deviation of the turn by the covariance."""
    return float(np.degrees(np.sqrt(pose.covariance[TURN, TURN])))


def weighed_doubt(mine: Stand, pose: Pose, other: Stand, points: FloatArray) -> float:
    """−2 ln of the odds of another reading, by the weighed residuals of the points (n, 3) that carry this one; 0 by
    less than FEWEST.
    """
    if len(points) < FEWEST:
        return 0.0
    return next(doubts(pose, mine, [other], _some(points)), np.inf)


def _some(points: FloatArray) -> FloatArray:
    """Enough of the points to set readings against each other."""
    return points[:: max(1, len(points) // SET_AGAINST)]
