"""What makes the poses of one result uncertain together: the scan's own joint covariance, and what its budget adds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core.arch import ways
from stylobate.core.result import BudgetRow
from stylobate.core.types import FloatArray
from stylobate.record.model import Record

SCAN, JOIN, DRIFT, PLAY = "scan", "join", "drift", "play"
IN_COVARIANCE = (SCAN, JOIN)
"""Rows of a budget that stand in a result's `covariance` already."""
EXPECTED = ("made part", "seating", "temperature", DRIFT)
"""Sources that move platform or axis, as the budget of a result names them; play only turns."""


@dataclass(frozen=True)
class Source:
    """A source of uncertainty of all sites at once: covariance (6n, 6n) of their ξ, mm and radians."""

    name: str
    covariance: FloatArray


@dataclass(frozen=True)
class Sources:
    """scan: covariance (6n, 6n) of the scan alone. others: beyond it. missing: names of sources without a figure."""

    scan: FloatArray
    others: tuple[Source, ...]
    missing: tuple[str, ...]

    def total(self) -> FloatArray:
        """(6n, 6n): all together, taken as independent of each other (JCGM 100:2008, 5.1.2)."""
        return np.asarray(self.scan + sum((source.covariance for source in self.others), np.zeros_like(self.scan)))


def sources_of(record: Record, drift: Source | None = None) -> Sources:
    """All sources of a result that have a figure.

    drift: in place of the budget's own. A budget row's figure is spread evenly over the directions; rows but drift are
    independent from site to site; drift is a walk along the sites (method/seat, eq. 11).
    """
    found, missing = [], []
    names = [row.source for site in record.sites for row in site.budget]
    for name in dict.fromkeys([*names, *EXPECTED]):
        if name in (*IN_COVARIANCE, PLAY) or (name == DRIFT and drift is not None):
            continue
        rows = [next((row for row in site.budget if row.source == name), None) for site in record.sites]
        variances = [None if row is None else _variances(row) for row in rows]
        known = [pair for pair in variances if pair is not None]
        if len(known) < len(rows):
            missing.append(name if not known else f"{name} (at some sites)")
        if known:
            filled = [pair or (0.0, 0.0) for pair in variances]
            found.append(Source(name, _walk(record, filled) if name == DRIFT else _each(filled)))
    if drift is not None:
        found.append(drift)
    return Sources(record.covariance(), tuple(found), tuple(missing))


def walk_covariance(poses: Sequence[FloatArray] | FloatArray, shift_per_mm: float, turn_per_mm: float) -> FloatArray:
    """(6n, 6n): covariance of ξ of sites whose scan wanders at random from the first on (method/seat, eq. 11).

    poses (n, 4, 4) in the order of the walk. shift_per_mm: variance of the shift along each direction, mm² a mm of
    way; turn_per_mm: of the turn about each direction, rad² a mm. The way is straight from site to site.
    """
    stacked = np.asarray(poses)
    n = len(stacked)
    along = ways(stacked[:, :3, 3])
    covariance = np.zeros((n, 6, n, 6))
    for i in range(n):
        for j in range(n):
            turned = stacked[i, :3, :3].T @ stacked[j, :3, :3] * min(along[i], along[j])
            covariance[i, :3, j, :3] = shift_per_mm * turned
            covariance[i, 3:, j, 3:] = turn_per_mm * turned
    return covariance.reshape(6 * n, 6 * n)


def _variances(row: BudgetRow) -> tuple[float, float] | None:
    """Variance along each of three directions (mm²) and of each of two tilts (rad²); None without a figure."""
    if row.platform_um is None:
        return None
    return (row.platform_um * 1e-3) ** 2 / 3.0, np.radians(row.axis_deg or 0.0) ** 2 / 2.0


def _each(variances: Sequence[tuple[float, float]]) -> FloatArray:
    return np.diag([value for shift, tilt in variances for value in (shift,) * 3 + (tilt,) * 3])


def _walk(record: Record, variances: Sequence[tuple[float, float]]) -> FloatArray:
    """Each row speaks of the way to the site farthest along the arch; the walk's rate is the mean over the sites."""
    poses = np.array([site.scan_from_connection for site in record.sites])
    along = ways(poses[:, :3, 3])
    rates = np.array(variances) / np.maximum(np.maximum(along, along[-1] - along), 1e-9)[:, None]
    shift, turn = rates.mean(axis=0) if len(poses) > 1 else (0.0, 0.0)
    return walk_covariance(poses, float(shift), float(turn))
