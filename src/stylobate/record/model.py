"""A measurement as read back from result.json: frozen values, matrices as arrays."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from stylobate.core.result import (
    Bounds,
    BudgetRow,
    Deviation,
    Finding,
    Hidden,
    NotShown,
    Pair,
    PartsInfo,
    ScanInfo,
    Together,
)
from stylobate.core.types import FloatArray

__all__ = ["BudgetRow", "Record", "RecordSite", "Together", "joint"]


@dataclass(frozen=True)
class RecordSite:
    """One site of a result.

    scan_from_connection: (4, 4), rotation orthonormal to rounding. covariance: (6, 6) of ξ, mm and radians.
    u95, u95_total: None where the file has none. platform_diameter: mm. because, next: the verdict's reason and the
    one thing to do, empty where the file has none. seen_in: SHA-256 of the scans that its pose rests on, where several
    were joined; else empty. hidden: what this scan would not show, None where the file does not say.
    """

    site: str
    scan_body: str
    connection: str
    platform_diameter: float
    index_order: int
    scan_from_connection: FloatArray
    covariance: FloatArray
    u95: Bounds | None = None
    u95_total: Bounds | None = None
    coverage: float | None = None
    deviation: Deviation | None = None
    verdict: str | None = None
    findings: tuple[Finding, ...] = ()
    budget: tuple[BudgetRow, ...] = ()
    map: str | None = None
    because: str = ""
    next: str = ""
    seen_in: tuple[str, ...] = ()
    hidden: Hidden | None = None


@dataclass(frozen=True)
class Record:
    """A result read back.

    path: the file. name: as the caller named it. work: "" where not stated. cross: covariance (6, 6) of ξ of the
    first site with ξ of the second, for the pairs of sites that are not independent.
    """

    path: Path
    name: str
    scan: ScanInfo
    parts: PartsInfo
    work: str
    sites: tuple[RecordSite, ...]
    cross: Mapping[tuple[str, str], FloatArray] = field(default_factory=dict)
    together: Together | None = None
    pairs: tuple[Pair, ...] = ()
    not_shown: tuple[NotShown, ...] = ()
    warnings: tuple[str, ...] = ()
    software: str = ""

    def covariance(self) -> FloatArray:
        """(6n, 6n): joint covariance of the ξ of all n sites, in their order; mm and radians."""
        return joint([site.site for site in self.sites], [site.covariance for site in self.sites], self.cross)

    def site(self, name: str) -> RecordSite:
        """The site of that name. Raises KeyError."""
        for site in self.sites:
            if site.site == name:
                return site
        raise KeyError(name)


def joint(names: list[str], covariances: list[FloatArray], cross: Mapping[tuple[str, str], FloatArray]) -> FloatArray:
    """(6n, 6n) matrix with the covariances (6, 6) on the diagonal and `cross` beside it, both ways."""
    place = {name: slice(6 * k, 6 * k + 6) for k, name in enumerate(names)}
    matrix = np.zeros((6 * len(names), 6 * len(names)))
    for name, covariance in zip(names, covariances, strict=True):
        matrix[place[name], place[name]] = covariance
    for (one, two), block in cross.items():
        matrix[place[one], place[two]] = block
        matrix[place[two], place[one]] = block.T
    return matrix
