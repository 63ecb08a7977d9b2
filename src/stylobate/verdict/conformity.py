"""Conformity with a limit under uncertainty: probabilities, guard bands and risks (JCGM 106:2012, ISO 14253-1:2017)."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.uncertainty.bounds import LEVEL, within

Z95_ONE_SIDED = 1.6448536269514722
"""Quantile 0.95 of the normal distribution: ISO 14253-1's default of 95 % for proving conformity."""


def normal_cdf(z: float) -> float:
    """Probability that a standard normal variable is below z."""
    return 0.5 * math.erfc(-z / math.sqrt(2.0))


def conformance_probability(estimate: float, u: float, low: float = -math.inf, high: float = math.inf) -> float:
    """Probability that a quantity known as N(estimate, u²) lies within [low, high] (JCGM 106:2012, 7.2–7.4)."""
    if u <= 0.0:
        return float(low <= estimate <= high)
    return normal_cdf((high - estimate) / u) - normal_cdf((low - estimate) / u)


def guard_band(u: float, z: float = Z95_ONE_SIDED) -> float:
    """Width by which a limit is drawn in so that what is accepted conforms with 95 % (ISO 14253-1:2017, 5)."""
    return z * u


def vector_probability(covariance: FloatArray, limit: float) -> float:
    """Probability that a zero-mean normal vector of covariance (k, k) is no longer than `limit`."""
    return within(covariance, limit)


def decided(probability: float) -> bool:
    """Whether conformity is proven: at least 95 % probable."""
    return probability >= LEVEL


def global_risks(
    prior_mean: float, prior_sd: float, u: float, tolerance: tuple[float, float], acceptance: tuple[float, float]
) -> tuple[float, float, float]:
    """Share of items that conform, consumer's and producer's global risk (JCGM 106:2012, 9.5.2–9.5.3).

    Items are spread as N(prior_mean, prior_sd²) and measured with standard uncertainty u; they conform within
    `tolerance` and are accepted when measured within `acceptance`. Gauss–Legendre over ±8 sd, split at the tolerance.
    """
    nodes, weights = np.polynomial.legendre.leggauss(64)
    ends = np.unique(np.clip([-8.0, *((np.array(tolerance) - prior_mean) / prior_sd), 8.0], -8.0, 8.0))
    accepted_good = accepted = good = 0.0
    for a, b in pairwise(ends):
        cuts = np.linspace(a, b, 9)
        for c, d in pairwise(cuts):
            z = (c + d) / 2 + (d - c) / 2 * nodes
            value = prior_mean + prior_sd * z
            mass = weights * (d - c) / 2 * np.exp(-z * z / 2) / math.sqrt(2 * math.pi)
            taken = np.array([conformance_probability(float(x), u, *acceptance) for x in value])
            inside = tolerance[0] <= prior_mean + prior_sd * (c + d) / 2 <= tolerance[1]
            accepted += float(mass @ taken)
            if inside:
                good += float(mass.sum())
                accepted_good += float(mass @ taken)
    return good, accepted - accepted_good, good - accepted_good
