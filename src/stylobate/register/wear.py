"""How the shape of a unit drifts with its sterilisation cycles (docs/method/wear.md).

No figure in µm per cycle is published, so none is assumed: a line is fitted to the user's own measurements.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray

FALSE_ALARMS = 0.01
"""Chance that a unit which does not wear is warned of, at one look, all its quantities together (our choice)."""
LEVEL = 0.95

Series = tuple[FloatArray, FloatArray]
"""Cycles (n,) and the quantity measured after them (n,), µm, on one level: one unit, one scanner."""


@dataclass(frozen=True)
class Slope:
    """Drift of one quantity: µm per cycle, its standard uncertainty, degrees of freedom, scatter (sd, µm), points."""

    per_cycle_um: float
    u_um: float
    dof: int
    scatter_um: float
    points: int

    @property
    def p(self) -> float:
        """Two-sided probability of a slope this steep where there is no drift (Student's t)."""
        from scipy.special import stdtr

        if self.per_cycle_um == 0.0:
            return 1.0
        if self.u_um == 0.0:
            return 0.0
        return float(2.0 * stdtr(self.dof, -abs(self.per_cycle_um) / self.u_um))

    def u95_um(self, cycles: float) -> float:
        """95 % half-width of the change over so many cycles, µm (wear, eq. 4)."""
        from scipy.special import stdtrit

        return float(stdtrit(self.dof, 0.5 + LEVEL / 2.0)) * self.u_um * abs(cycles)


def slope_of(series: Sequence[Series]) -> Slope | None:
    """One slope through several series, each with a level of its own (wear, eq. 1–3).

    None where fewer than one degree of freedom is left, or no series spans two cycle counts.
    """
    s_xx = s_xy = s_yy = 0.0
    points = 0
    for cycles, values in series:
        x, y = cycles - np.mean(cycles), values - np.mean(values)
        s_xx, s_xy, s_yy = s_xx + float(x @ x), s_xy + float(x @ y), s_yy + float(y @ y)
        points += len(x)
    dof = points - len(series) - 1
    if dof < 1 or s_xx == 0.0:
        return None
    slope = s_xy / s_xx
    residual = sum(
        float(np.sum((values - np.mean(values) - slope * (cycles - np.mean(cycles))) ** 2)) for cycles, values in series
    )
    variance = residual / dof
    return Slope(slope, float(np.sqrt(variance / s_xx)), dof, float(np.sqrt(variance)), points)


@dataclass(frozen=True)
class Outlook:
    """What a slope means for a unit: change since new after one more cycle, µm, with its 95 % half-width.

    drifts: the slope is significant. limit: "passed", "may be passed" or "kept", None where there is no limit.
    """

    slope: Slope
    change_um: float
    change_u95_um: float
    drifts: bool
    limit: str | None


def outlook(slope: Slope, next_cycle: int, limit_um: float | None, tests: int) -> Outlook:
    """The change since new predicted after `next_cycle` cycles. tests: quantities that are looked at together."""
    change, half = slope.per_cycle_um * next_cycle, slope.u95_um(next_cycle)
    state = None
    if limit_um is not None:
        state = "passed" if abs(change) > limit_um else "may be passed" if abs(change) + half > limit_um else "kept"
    return Outlook(slope, change, half, slope.p < FALSE_ALARMS / tests, state)
