"""Do disjoint halves of a site's surface give poses that agree within the stated covariance? Needs no truth.

Method/trust, eq. 23–25. The halves of a checkerboard on the body are measured each by itself; the difference of the two
poses has a covariance that follows from the site's own residual field, correlation between the halves included.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from stylobate.core.arch import order_along
from stylobate.core.surface import Scan
from stylobate.core.types import BoolArray, FloatArray
from stylobate.diagnose.evidence import Evidence, gather
from stylobate.measuring.verb import fitted_sites
from stylobate.parts import load_parts
from stylobate.parts.model import PartsFolder
from stylobate.scan import read_scan

CELLS_MM = (1.0, 2.0)  # sides of the checkerboards
LOOSEST = 100.0  # times the whole site's sd: a motion that a half knows no better is left out
LEAST_PATCHES = 40
RESIDUE = 1e-9


@dataclass(frozen=True)
class SiteCheck:
    """One site and one checkerboard.

    chi2: of the difference of the poses, with `freedom` motions compared; p: of so large a one. shift_um, tilt_deg: of
    that difference, and stated_um, stated_deg: the standard deviations stated for them.
    """

    scan: str
    site: str
    scan_body: str
    cell_mm: float
    chi2: float
    freedom: int
    p: float
    shift_um: float
    stated_um: float
    tilt_deg: float
    stated_deg: float


@dataclass(frozen=True)
class Pooled:
    """All sites of one checkerboard: mean of χ² over its degrees of freedom, and where that mean lies in 95 of 100
    sets of sites whose stated covariance is true."""

    cell_mm: float
    sites: int
    ratio: float
    low: float
    high: float

    @property
    def holds(self) -> bool:
        """Whether the stated covariance passes."""
        return self.low <= self.ratio <= self.high


@dataclass(frozen=True)
class SelfCheck:
    """Every site checked, and all together."""

    sites: tuple[SiteCheck, ...]
    pooled: tuple[Pooled, ...]


def selfcheck(
    scans: Sequence[Scan | str | Path],
    parts: PartsFolder | str | Path,
    *,
    scan_bodies: Sequence[str] = (),
    progress: Callable[[str, float], None] | None = None,
) -> SelfCheck:
    """Check every site of every scan. Raises ScanError, PartsError, UsageError."""
    folder = parts if isinstance(parts, PartsFolder) else load_parts(parts)
    checks: list[SiteCheck] = []
    for scan in scans:
        read = scan if isinstance(scan, Scan) else read_scan(scan)
        bench, found = fitted_sites(read, folder, scan_bodies, progress)
        poses = np.array([one.pose.scan_from_connection for one in found]).reshape(-1, 4, 4)
        for k, measured in enumerate(found[i] for i in order_along(poses[:, :3, 3], poses[:, :3, 2])):
            evidence = gather(
                bench.trees[measured.body], bench.edges[measured.body], measured.around, measured.fit.support,
                measured.pose, measured.pose.field,
            )  # fmt: skip
            checks += checked(evidence, Path(read.file).name, str(k + 1), bench.bodies[measured.body].id)
    return SelfCheck(tuple(checks), tuple(_pooled(checks, cell) for cell in CELLS_MM if checks))


def checked(evidence: Evidence, scan: str, site: str, scan_body: str) -> list[SiteCheck]:
    """One site by each checkerboard; none where a half has too few patches."""
    result = []
    for cell in CELLS_MM:
        black = _checkerboard(evidence.patches.centre, cell)
        if min(int(black.sum()), int((~black).sum())) < LEAST_PATCHES:
            continue
        difference, covariance = _difference(evidence, black)
        chi2, freedom = _chi2(difference, covariance, evidence.covariance[:6, :6])
        spread = np.diag(covariance)
        result.append(
            SiteCheck(
                scan, site, scan_body, cell, chi2, freedom, _tail(chi2, freedom),
                1e3 * float(np.linalg.norm(difference[:3])), 1e3 * math.sqrt(float(spread[:3].sum())),
                math.degrees(float(np.linalg.norm(difference[3:5]))),
                math.degrees(math.sqrt(float(spread[3:5].sum()))),
            )
        )  # fmt: skip
    return result


def _checkerboard(centre: FloatArray, cell: float) -> BoolArray:
    at = np.floor((centre - centre.min(axis=0)) / cell).astype(np.int64)
    return np.asarray(at.sum(axis=1) % 2 == 0)


def _difference(evidence: Evidence, black: BoolArray) -> tuple[FloatArray, FloatArray]:
    """ξ (6,) by which the halves' poses differ, and its covariance (6, 6)."""
    k = evidence.field.covariance(evidence.patches)
    matrix, residual = evidence.patches.matrix, evidence.patches.residual
    gain = np.zeros((matrix.shape[1], len(residual)))
    for half, sign in ((black, 1.0), (~black, -1.0)):
        weight = np.linalg.inv(k[np.ix_(half, half)])
        information = matrix[half].T @ weight @ matrix[half]
        known = np.diag(information) > 0.0
        scale = np.where(known, 1.0 / np.sqrt(np.where(known, np.diag(information), 1.0)), 0.0)
        balanced = information * np.outer(scale, scale) + RESIDUE * np.eye(len(scale))
        gain[:, half] = sign * (np.linalg.inv(balanced) * np.outer(scale, scale)) @ matrix[half].T @ weight
    return np.asarray((gain @ residual)[:6]), np.asarray((gain @ k @ gain.T)[:6, :6])


def _chi2(difference: FloatArray, covariance: FloatArray, whole: FloatArray) -> tuple[float, int]:
    """χ² over the motions that both halves know, and how many these are."""
    scale = np.sqrt(np.diag(whole))
    values, vectors = np.linalg.eigh(covariance / np.outer(scale, scale))
    kept = values < LOOSEST**2
    along = vectors.T @ (difference / scale)
    return float(np.sum(along[kept] ** 2 / values[kept])), int(kept.sum())


def _pooled(checks: Sequence[SiteCheck], cell: float) -> Pooled:
    from scipy.stats import chi2

    mine = [one for one in checks if one.cell_mm == cell]
    freedom = max(sum(one.freedom for one in mine), 1)
    low, high = (float(chi2.ppf(level, freedom)) / freedom for level in (0.025, 0.975))
    return Pooled(cell, len(mine), sum(one.chi2 for one in mine) / freedom, low, high)


def _tail(chi2: float, freedom: int) -> float:
    from scipy.special import gammaincc

    return float(gammaincc(freedom / 2.0, chi2 / 2.0))
