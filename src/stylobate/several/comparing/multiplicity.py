"""How much the least p of many tests means: they look at the same scans and count for fewer than they are (eq. 8)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.several.comparing.layout import Cell, Layout
from stylobate.several.comparing.likelihood import HEIGHT, joint, shown

LEVEL = 0.01
"""Corrected p-value up to which a site is named: one comparison in a hundred names one wrongly, or fewer."""
SHARES = {"height": 0.9, "pose": 0.1}
"""How the level is shared out between the tests of a cell: most to height, as a body not seated stands high."""
DRAWS = 20_000
MOST_VALUES = 300
"""Motions of cells up to which their tests are drawn together; beyond, each counts in full (Bonferroni)."""


@dataclass(frozen=True)
class Multiplicity:
    """count: cells. critical: the p, divided by its test's share, that is least in LEVEL of comparisons without fault.

    least: (DRAWS,) rising, of such comparisons; empty where it was not drawn.
    """

    count: int
    critical: float
    least: FloatArray

    @staticmethod
    def in_full(count: int) -> Multiplicity:
        """Every cell counts in full (Bonferroni)."""
        return Multiplicity(count, LEVEL / max(count, 1), np.zeros(0))

    @staticmethod
    def of(layout: Layout, drift: FloatArray, theta: FloatArray, cells: list[Cell]) -> Multiplicity:
        """By drawing what the cells show where nothing moved, θ (5,) known (Westfall & Young 1993)."""
        if not 0 < 6 * len(cells) <= MOST_VALUES:
            return Multiplicity.in_full(len(cells))
        covariance = joint(layout, drift, theta, cells)
        values, vectors = np.linalg.eigh(covariance)
        pulls = _normal(len(values)) @ (vectors * np.sqrt(np.clip(values, 0.0, None))).T
        least = np.ones(DRAWS)
        for c, cell in enumerate(cells):
            for test, motions in (("height", np.array([HEIGHT])), ("pose", shown(layout, cell))):
                at = 6 * c + motions
                least = np.minimum(least, _p(pulls[:, at], covariance[np.ix_(at, at)]) / SHARES[test])
        least.sort()
        return Multiplicity(len(cells), max(float(np.quantile(least, LEVEL)), LEVEL / len(cells)), least)

    def corrected(self, p: float) -> float:
        """How often the least of all tests, each divided by its share, is p or less where nothing moved; from above."""
        if p <= self.critical:
            return min(LEVEL, self.count * p)
        drawn = float(np.mean(self.least <= p)) if len(self.least) else self.count * p
        return float(np.clip(drawn, LEVEL, 1.0))


def _p(pulls: FloatArray, covariance: FloatArray) -> FloatArray:
    from scipy.special import chdtrc

    squared = np.einsum("na,na->n", pulls, np.linalg.solve(covariance, pulls.T).T)
    return np.asarray(chdtrc(len(covariance), squared))


@cache
def _normal(values: int) -> FloatArray:
    return np.random.default_rng(300).standard_normal((DRAWS, values))
