"""How the gaps of two scans scatter within a patch: restricted likelihood over all patches (method/join, eq. 8)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.joining.cells import Cells
from stylobate.uncertainty.field import correlation

SMOOTHNESS = 1.5
LEAST_CELLS = 15
"""A patch of fewer says little once its own motion and swelling are taken off it."""
USUAL = (0.012, 0.015, 0.8)
"""White standard deviation of a point and that of what hangs together (mm), and over which length (mm): of both scans
together, from PLoS ONE 2017 (PMC5549906) and docs/method/simulation.md; where the search starts."""
VAGUE = (2.3, 2.3, 0.7)
"""Standard deviation of the logarithms about them beforehand: by a factor of 10, of 10 and of 2."""


@dataclass(frozen=True)
class Noise:
    """Variances, mm², of a single point's own noise and of what hangs together over `length` mm."""

    white: float
    correlated: float
    length: float

    def covariance(self, at: FloatArray, weight: FloatArray) -> FloatArray:
        """(n, n) mm² of the mean gaps of cells at (n, 3), of `weight` (n,) points each."""
        result = self.correlated * correlation(_distances(at) / self.length, SMOOTHNESS)
        result[np.diag_indices(len(at))] += self.white / weight
        return result


def noise_of(cells: Cells) -> Noise:
    """The noise that explains best how cells differ within patches, each patch's own motion and swelling taken off."""
    from scipy.optimize import minimize

    patches = [np.flatnonzero(cells.patch == k) for k in range(int(cells.patch.max()) + 1)]
    told = [_Contrasts.of(cells, mine) for mine in patches if len(mine) >= LEAST_CELLS]
    if not told:
        told = [_Contrasts.of(cells, np.arange(len(cells.gap)))]
    usual = np.log([USUAL[0] ** 2, USUAL[1] ** 2, USUAL[2]])
    vague = np.array([2.0 * VAGUE[0], 2.0 * VAGUE[1], VAGUE[2]])

    def surprise(logs: FloatArray) -> float:
        noise = Noise(*np.exp(logs))
        return sum(one.surprise(noise) for one in told) + float((((logs - usual) / vague) ** 2).sum())

    best = minimize(surprise, usual, method="Nelder-Mead", options={"xatol": 0.03, "fatol": 0.05, "maxiter": 200})
    return Noise(*map(float, np.exp(best.x)))


@dataclass(frozen=True)
class _Contrasts:
    """One patch: at (n, 3) and weight (n,) of its cells; root (n, n − 7): what no motion or swelling of it changes;
    value (n − 7,): the gaps seen so."""

    at: FloatArray
    weight: FloatArray
    root: FloatArray
    value: FloatArray

    @staticmethod
    def of(cells: Cells, mine: LongArray) -> _Contrasts:
        rows = cells.rows[mine]
        root = np.linalg.svd(rows, full_matrices=True)[0][:, rows.shape[1] :]
        return _Contrasts(cells.at[mine], cells.weight[mine], root, root.T @ cells.gap[mine])

    def surprise(self, noise: Noise) -> float:
        """−2 log likelihood, up to a constant."""
        from scipy.linalg import solve_triangular

        covariance = self.root.T @ noise.covariance(self.at, self.weight) @ self.root
        factor = np.linalg.cholesky(covariance)
        white = solve_triangular(factor, self.value, lower=True, check_finite=False)
        return float(2.0 * np.log(np.diag(factor)).sum() + white @ white)


def _distances(at: FloatArray) -> FloatArray:
    square = (at**2).sum(axis=1)
    return np.asarray(np.sqrt(np.maximum(square[:, None] + square - 2.0 * at @ at.T, 0.0)))
