"""How much the body may be bent unseen, and what that would do to the pose (method/trust, eq. 11a)."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.result import Hidden
from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence
from stylobate.diagnose.shapes import leaning
from stylobate.diagnose.significance import FALSE_ALARMS, FAMILIES
from stylobate.diagnose.signs import TESTS

POWER_Z = 1.6448536269514722  # a lean this many standard deviations beyond what is significant is found with 95 %


def hidden_bend(evidence: Evidence, bottom: float, top: float) -> Hidden:
    """The progressive lean, from where the body stands free to its top (mm), that is found with 95 % to any side.

    A smaller one may stay hidden; platform_um, axis_deg: by how much it would put the pose off, to its worst side. All
    are infinite where what is seen takes a lean to one side wholly for a motion.
    """
    shapes = leaning(evidence.patches.centre, evidence.normal, bottom, top, False)
    _, covariance = evidence.amplitudes(shapes)
    if np.linalg.matrix_rank(covariance) < len(covariance):  # zero stands for sides of which nothing is known
        return Hidden("bent body", math.inf, math.inf, math.inf)
    sd = math.sqrt(float(np.linalg.eigvalsh(covariance)[-1]))
    lean = sd * (math.sqrt(-2.0 * math.log(FALSE_ALARMS / FAMILIES / TESTS["bent body"])) + POWER_Z)
    moved = lean * evidence.moved_by(shapes)
    return Hidden("bent body", math.degrees(lean), 1e3 * _most(moved[:3]), math.degrees(_most(moved[3:5])))


def _most(by_side: FloatArray) -> float:
    """Length of the longest vector that a unit direction is mapped to by a matrix (k, 2)."""
    return float(np.linalg.norm(by_side, 2))
