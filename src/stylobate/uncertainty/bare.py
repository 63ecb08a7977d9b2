"""What is known of the offset of a scan's surface beforehand: most scan bodies are bare, few carry a layer."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.fit.descend import OFFSET_SD
from stylobate.uncertainty.pose import OFFSET, Pose

BARE_SD = 0.003  # mm: of the offset where there is no layer, what a scanner makes a small body too thick (no source)
COATED = 0.2  # probability of a layer beforehand (no source)


def known(offset: float, variance: float) -> tuple[float, float, float]:
    """Mean and variance (mm, mm²) of the offset, and the mean's change with what the scan says (method, eq. 5a).

    offset: the likeliest by the scan alone. variance: as it would be were a layer of OFFSET_SD all that is known.
    """
    seen = 1.0 / max(1.0 / variance - 1.0 / OFFSET_SD**2, 1e-9)  # of what the scan says by itself
    prior = np.array([BARE_SD, OFFSET_SD]) ** 2
    spread = seen + prior
    log_odds = np.log([1.0 - COATED, COATED]) - 0.5 * (offset**2 / spread + np.log(spread))
    share = np.exp(log_odds - log_odds.max())
    share /= share.sum()
    means, variances = offset * prior / spread, seen * prior / spread
    mean = float(share @ means)
    return mean, float(share @ (variances + (means - mean) ** 2)), float(share @ (prior / spread))


def narrowed(parameters: FloatArray, offset: float) -> FloatArray:
    """Covariance (q, q) of the parameters once the offset, mm, is known so."""
    variance = float(parameters[OFFSET, OFFSET])
    slope = parameters[:, OFFSET] / variance
    return np.asarray(parameters + np.outer(slope, slope) * (known(offset, variance)[1] - variance))


def settled(pose: Pose, made: FloatArray) -> tuple[Pose, FloatArray]:
    """The pose with the offset as it is known, what moves with the offset moved along; and `made` (6, k) of it.

    made (q, k): change of the parameters by errors of the made part.
    """
    variance = float(pose.parameters[OFFSET, OFFSET])
    mean, _, follows = known(pose.offset, variance)
    slope = pose.parameters[:, OFFSET] / variance
    moved = pose.moved(slope * (mean - pose.offset), narrowed(pose.parameters, pose.offset))
    return moved, np.asarray(made + np.outer(slope, (follows - 1.0) * made[OFFSET]))[:6]
