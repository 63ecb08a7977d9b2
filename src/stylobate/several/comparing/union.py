"""Scans of the same implants: which site of each is which implant, and where the scans lie to each other."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np

from stylobate.core import rigid
from stylobate.core.arch import order_along
from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray
from stylobate.record.model import Record, RecordSite
from stylobate.several.match import matched

SAME_MM = 1e-3
"""Two results of one scan whose centres lie closer than this are one measurement done twice."""


@dataclass(frozen=True)
class Union:
    """The implants seen by any of the scans, in order along the arch.

    records: (scans) as given. sites[i][k]: the site of scan k that is implant i, None where that scan lacks it.
    first_from_scan: (scans, 4, 4) rough, by landmarks; the frame of the first scan. doubts: whether these are the same
    implants at all, a question each.
    """

    records: tuple[Record, ...]
    sites: tuple[tuple[RecordSite | None, ...], ...]
    first_from_scan: FloatArray
    doubts: tuple[str, ...] = ()

    def name(self, implant: int) -> str:
        """The implant's name: that of its site in the first scan that shows it."""
        return next(site.site for site in self.sites[implant] if site is not None)

    def common(self) -> list[int]:
        """Implants that two scans or more show."""
        return [i for i, row in enumerate(self.sites) if sum(site is not None for site in row) > 1]

    def labels(self) -> list[str]:
        """Names that tell the implants apart: that of the first scan that shows each, with the scan where two agree."""
        names = [self.name(i) for i in range(len(self.sites))]
        return [name if names.count(name) == 1 else f"{name}@{self._shown_by(i).name}" for i, name in enumerate(names)]

    def _shown_by(self, implant: int) -> Record:
        return self.records[next(k for k, site in enumerate(self.sites[implant]) if site is not None)]


def united(records: Sequence[Record]) -> Union:
    """Match every scan to the implants of those before it.

    Raises UsageError for fewer than two scans or one given twice, ResultError where scans do not show the same
    implants, share fewer than two, or are mirror images.
    """
    if len(records) < 2:
        raise UsageError("compare needs two results or more; name them one after the other")
    refuse_duplicates(records)
    known = records[0]
    rows: list[list[RecordSite | None]] = [[site] for site in known.sites]
    frames = [np.eye(4)]
    doubts: tuple[str, ...] = ()
    for k, record in enumerate(records[1:], start=1):
        match = matched(known, record)
        doubts += match.doubts(records[0].name, record.name)
        first_from_scan = rigid.inverse(match.b_from_a)
        partner = dict(match.pairs)
        for i, row in enumerate(rows):
            row.append(record.sites[partner[i]] if i in partner else None)
        new = [j for j in range(len(record.sites)) if j not in partner.values()]
        rows += [[*[None] * k, record.sites[j]] for j in new]
        moved = [
            replace(site, scan_from_connection=first_from_scan @ site.scan_from_connection) for site in record.sites
        ]
        known = replace(known, sites=(*known.sites, *(moved[j] for j in new)), cross={})
        frames.append(first_from_scan)
    poses = np.array([site.scan_from_connection for site in known.sites])
    order = order_along(poses[:, :3, 3], poses[:, :3, 2])
    if [i for i in order if i < len(records[0].sites)] != sorted(i for i in order if i < len(records[0].sites)):
        order = order[::-1]
    return Union(tuple(records), tuple(tuple(rows[i]) for i in order), np.array(frames), doubts)


def refuse_duplicates(records: Sequence[Record]) -> None:
    """Raises UsageError where two of the results are the same file, or one scan measured twice."""
    digests = [_digest(record) for record in records]
    for i, j in combinations(range(len(records)), 2):
        one, two = records[i].name, records[j].name
        if digests[i] == digests[j] != "":
            raise UsageError(f"{two} is the same result as {one}; name results of different scans")
        if _same_scan(records[i], records[j]):
            raise UsageError(
                f"{two} and {one} are of the same scan (sha256 {records[i].scan.sha256[:12]}…); "
                "a scan repeats nothing of itself: name results of different scans"
            )


def _digest(record: Record) -> str:
    """SHA-256 of the file; nothing where the record was made without one."""
    return hashlib.sha256(record.path.read_bytes()).hexdigest() if record.path.is_file() else ""


def _same_scan(one: Record, two: Record) -> bool:
    if one.scan.sha256 != two.scan.sha256 or not one.sites or not two.sites:
        return False
    p, q = (np.array([site.scan_from_connection[:3, 3] for site in record.sites]) for record in (one, two))
    return bool(np.linalg.norm(p[:, None] - q[None], axis=2).min(axis=1).max() < SAME_MM)
