"""Stated bounds against truth over many small sites: platform, axis and turn, and the size of the covariance."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from scipy.stats import binom, chi2

from stylobate.core import rigid
from stylobate.core.result import Site
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Noise, Settings, draw_bodies, scene

SITES = 24
SEED = 930_000
KERNELS = ("exponential", "matern32", "matern52")


@cache
def measured() -> tuple[tuple[Site, FloatArray], ...]:
    """Site and ξ of the truth for every seed whose body was found; each body and noise drawn anew."""
    result = []
    for seed in range(SEED, SEED + SITES):
        rng = np.random.default_rng(seed)
        bodies = draw_bodies(seed, 1)
        noise = Noise(rng.uniform(3, 15), rng.uniform(5, 15), rng.uniform(0.3, 1.5), str(rng.choice(KERNELS)))
        settings = Settings(seed=seed, arch="single", bodies=1, edge_mm=0.25, teeth=False, noise=noise)
        made = scene(settings, bodies)
        origin = np.round(made.surface.vertices.mean(axis=0))
        scan = Scan(Surface(made.surface.vertices - origin, made.surface.faces), origin, "scan", "0")
        parts = PartsFolder("drawn", "1", "", "0", (Connection("alder", "other", 1, 4.2),), bodies)
        for site in measure(scan, parts, count=1, maps=False).sites:
            xi = rigid.log(rigid.inverse(site.scan_from_connection) @ made.sites[0].scan_from_connection)
            if np.linalg.norm(xi[:3]) < 0.5:
                result.append((site, xi))
    return tuple(result)


def test_nearly_every_body_is_found() -> None:
    assert len(measured()) >= SITES - 1


@pytest.mark.parametrize("bound", ["platform_um", "axis_deg", "index_deg"])
def test_bounds_hold_the_truth_as_often_as_they_say(bound: str) -> None:
    """A true 95 % bound misses more often than this with probability 0.001 (binomial)."""
    missed = 0
    for site, xi in measured():
        off = {
            "platform_um": 1e3 * np.linalg.norm(xi[:3]),
            "axis_deg": np.degrees(np.linalg.norm(xi[3:5])),
            "index_deg": np.degrees(abs(xi[5])),
        }
        missed += int(off[bound] > getattr(site.u95, bound))
    assert missed <= binom.ppf(0.999, len(measured()), 0.05)


def test_the_covariance_is_neither_far_too_small_nor_far_too_large() -> None:
    """Median of ξᵀC⁻¹ξ within what a C wrong by 1.6 times in standard deviation, either way, would give."""
    nees = [float(xi @ np.linalg.solve(site.covariance, xi)) for site, xi in measured() if not site.findings]
    assert len(nees) >= SITES // 2
    middle = chi2.ppf(0.5, 6)
    assert middle / 1.6**2 < np.median(nees) < middle * 1.6**2
