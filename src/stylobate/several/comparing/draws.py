"""θ, the size of noise and drift, drawn from what the poses say of it: importance sampling in stages.

The first stage draws from the prior, each later one from a Student distribution about what was likely so far, with a
share of the prior kept (Cappé et al. 2004, J. Comput. Graph. Stat. 13:907); weights by the mixture of all stages
(Veach & Guibas 1995). Points are scrambled Sobol' sequences with fixed seeds: a result is repeatable.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.several.comparing.errors import Prior
from stylobate.several.comparing.layout import Cell, Layout
from stylobate.several.comparing.likelihood import CellFit, Solution, solve

PARAMETERS = 5
STAGES = 3
POINTS = 256
"""In each stage; of the later ones every fourth from the prior."""
FROM_PRIOR = POINTS // 4
SHIFTED = POINTS // 4
"""Of the first stage: about the noise that the residuals roughly have, in case what is stated is far off."""
MOST_NOISE = 10.0
NOISE_STEPS = 19
WIDENED = 1.5
FREEDOM = 5
FARTHEST = 5.0
"""Standard deviations of the prior beyond which a draw counts for nothing."""
MOST_VALUES = 10_000_000
"""Numbers in one batch of matrices: 80 MB."""


@dataclass(frozen=True)
class Draws:
    """theta: (T, 5). log_weight: (T,) prior over proposal density. log_likelihood: (T,) of everything."""

    theta: FloatArray
    log_weight: FloatArray
    log_likelihood: FloatArray
    heights: tuple[CellFit, ...]
    cells: tuple[CellFit, ...]

    def weights(self, log_likelihood: FloatArray | None = None) -> FloatArray:
        """(T,) summing to 1: the posterior of θ, by everything or by the likelihood (T,) given."""
        return _normalised(self.log_weight + (self.log_likelihood if log_likelihood is None else log_likelihood))

    def log_evidence(self, fit: CellFit) -> float:
        """Log of the mean likelihood of the rest, the cell left out, over the prior."""
        total = self.log_weight + fit.log_likelihood
        top = float(total.max())
        return top + float(np.log(np.mean(np.exp(total - top))))


def draws(layout: Layout, drift: FloatArray, cells: list[Cell], held: Prior) -> Draws:
    """Draw θ so that the posterior with everything, and with each of `cells` left out, is well covered."""
    from scipy.stats import multivariate_normal, multivariate_t

    middle, spread = np.log(held.median), np.diag(held.spread**2)
    shifted = middle + np.log(_noise(layout, drift, cells, held.median)) * (np.arange(PARAMETERS) == 0)
    reach = np.maximum(FARTHEST * held.spread, np.log(MOST_NOISE) * (np.arange(PARAMETERS) == 0))
    prior: Any = multivariate_normal(middle, spread)
    proposals: list[tuple[int, Any]] = [(POINTS - SHIFTED, prior), (SHIFTED, multivariate_normal(shifted, spread))]
    first = held.spread * _normal(0)
    logs, solutions = [np.concatenate([middle + first[SHIFTED:], shifted + first[:SHIFTED]])], []
    for stage in range(STAGES):
        solutions.append(_solved(layout, drift, np.exp(np.clip(logs[-1], middle - reach, middle + reach)), cells))
        so_far, joined = np.concatenate(logs), _joined(solutions)
        log_weight = prior.logpdf(so_far) - _log_density(so_far, proposals)
        log_weight[(np.abs(so_far - middle) > reach).any(axis=1)] = -np.inf
        if stage == STAGES - 1:
            break
        mean, covariance = _moments(so_far, log_weight, joined)
        covariance = WIDENED * covariance + 1e-2 * spread
        student = mean + _student(stage + 1) @ np.linalg.cholesky(covariance).T
        student[:FROM_PRIOR] = middle + held.spread * _normal(stage + 1)[:FROM_PRIOR]
        proposals += [(FROM_PRIOR, prior), (POINTS - FROM_PRIOR, multivariate_t(mean, covariance, df=FREEDOM))]
        logs.append(student)
    return Draws(np.exp(so_far), log_weight, joined.log_likelihood, joined.heights, joined.cells)


def _noise(layout: Layout, drift: FloatArray, cells: list[Cell], median: FloatArray) -> float:
    """A rough noise factor: the likeliest with the cell left out that lets it be least; where to look, nothing more."""
    factors = np.geomspace(1.0 / MOST_NOISE, MOST_NOISE, NOISE_STEPS)
    theta = np.tile(median, (NOISE_STEPS, 1))
    theta[:, 0] = factors
    solution = solve(layout, drift, theta, cells)
    each = [solution.log_likelihood, *(fit.log_likelihood for fit in (*solution.heights, *solution.cells))]
    return float(min(factors[np.argmax(values)] for values in each))


def _solved(layout: Layout, drift: FloatArray, theta: FloatArray, cells: list[Cell]) -> Solution:
    scans, size = layout.residual.shape
    batch = max(1, MOST_VALUES // (scans * size * size))
    return _joined([solve(layout, drift, theta[k : k + batch], cells) for k in range(0, len(theta), batch)])


def _joined(parts: list[Solution]) -> Solution:
    return Solution(
        np.concatenate([part.log_likelihood for part in parts]),
        _one_after_the_other([part.heights for part in parts]),
        _one_after_the_other([part.cells for part in parts]),
    )


def _one_after_the_other(parts: list[tuple[CellFit, ...]]) -> tuple[CellFit, ...]:
    return tuple(
        CellFit(
            fits[0].cell,
            fits[0].motions,
            np.concatenate([fit.shift for fit in fits]),
            np.concatenate([fit.covariance for fit in fits]),
            np.concatenate([fit.log_likelihood for fit in fits]),
        )
        for fits in zip(*parts, strict=True)
    )


def _log_density(points: FloatArray, proposals: list[tuple[int, Any]]) -> FloatArray:
    """Log density (T,) of the mixture that the points so far were drawn from."""
    total = sum(count for count, _ in proposals)
    density = sum((count / total * np.exp(proposal.logpdf(points)) for count, proposal in proposals), np.zeros(1))
    return np.asarray(np.log(density))


def _moments(points: FloatArray, log_weight: FloatArray, solution: Solution) -> tuple[FloatArray, FloatArray]:
    """Mean and covariance of log θ over the posteriors, that of everything and those without each cell, alike."""
    likelihoods = [solution.log_likelihood, *(fit.log_likelihood for fit in (*solution.heights, *solution.cells))]
    weights = np.mean([_normalised(log_weight + values) for values in likelihoods], axis=0)
    mean = weights @ points
    return mean, (points - mean).T @ ((points - mean) * weights[:, None])


def _normalised(log_values: FloatArray) -> FloatArray:
    values = np.exp(log_values - log_values.max())
    return np.asarray(values / values.sum())


@cache
def _normal(stage: int) -> FloatArray:
    from scipy.stats import norm, qmc

    return np.asarray(norm.ppf(qmc.Sobol(PARAMETERS, seed=100 + stage).random(POINTS)))


@cache
def _student(stage: int) -> FloatArray:
    from scipy.stats import chi2, norm, qmc

    uniform = qmc.Sobol(PARAMETERS + 1, seed=200 + stage).random(POINTS)
    return np.asarray(norm.ppf(uniform[:, 1:]) * np.sqrt(FREEDOM / chi2.ppf(uniform[:, :1], FREEDOM)))
