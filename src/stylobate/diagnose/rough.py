"""Rough surface: more scatter over a fifth of a millimetre than scanners have on a surface that scans well (eq. 18)."""

from __future__ import annotations

import numpy as np

from stylobate.core.result import Finding
from stylobate.uncertainty.field import Field, correlation

LAG = 0.2  # mm
MOST_UM = 22.0
"""Scatter that a good surface shows at most: 1.75 times the largest mesh noise published for two scanners on a flat,
5.3 to 12.6 µm (PLoS ONE 2017, PMC5549906); the factor is common practice, no source."""
ADVICE = (
    "The scan of this body is rougher than a scanner's own noise. A shiny metal, or metal laid bare under a chipped"
    " coating, scans badly: use a matt scan body, or replace this one."
)


def scatter(field: Field) -> float:
    """Standard deviation of the difference of two points LAG mm apart, over √2, mm."""
    near = float(correlation(np.array([LAG / field.length]), field.smoothness)[0])
    return float(np.sqrt(field.white_sd**2 + field.correlated_sd**2 * (1.0 - near)))


def rough_surface(field: Field, points: float) -> Finding | None:
    """The finding, where the scatter's lower 95 % bound lies above MOST_UM. points: how many independent ones."""
    size = 1e3 * scatter(field)
    bound = 1.96 * size / np.sqrt(2.0 * max(points, 2.0))
    if size - bound <= MOST_UM:
        return None
    return Finding("rough surface", ADVICE, size, float(bound))
