"""How sure a sign is: p-values, corrected for the number of tests of a site (method/trust, eq. 9)."""

from __future__ import annotations

import math

FALSE_ALARMS = 0.01
"""A clean site has a finding with at most this probability, all tested causes together."""
FAMILIES = 6
"""Tested causes: layer, bend, split, lost or added material, roughness, another shape."""
Z95 = 1.959963984540054


def upper_tail(z: float) -> float:
    """Probability that a standard normal variable exceeds z."""
    return 0.5 * math.erfc(z / math.sqrt(2.0))


def chi2_tail(x: float, freedom: int) -> float:
    """Probability that χ² with 1, 2 or 3 degrees of freedom exceeds x (closed forms)."""
    x = max(x, 0.0)
    if freedom == 1:
        return math.erfc(math.sqrt(x / 2.0))
    if freedom == 2:
        return math.exp(-x / 2.0)
    if freedom == 3:
        return math.erfc(math.sqrt(x / 2.0)) + math.sqrt(2.0 * x / math.pi) * math.exp(-x / 2.0)
    raise ValueError(f"no closed form here for {freedom} degrees of freedom")


def any_of(p: float, tests: float) -> float:
    """Probability of at least one sign as strong as p among `tests` independent ones (Šidák 1967)."""
    return -math.expm1(tests * math.log1p(-min(p, 1.0 - 1e-16)))


def corrected(p: float) -> float:
    """p for the whole site: one of FAMILIES causes would show as strong a sign."""
    return any_of(p, FAMILIES)
