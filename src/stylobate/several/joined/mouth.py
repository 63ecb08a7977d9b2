"""Which sites of which scan are the same implant, in the first scan's coordinates, where the teeth put them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.errors import JoinError, ResultError, UsageError
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray
from stylobate.joining import Laid, Motion, laid, sites_of
from stylobate.record import Record, RecordSite
from stylobate.several.match import REACH, assigned, distances, unlike


@dataclass(frozen=True)
class Mouth:
    """sites[i][k]: the site of scan k that is implant i, None where it shows none. laid: of each later scan.

    first_from_scan: (K, 4, 4) as the teeth lay each scan, the first one's the identity. rough: (n, 4, 4) each implant
    as the first scan that shows it does, in the coordinates of the first of all. left: of each later scan, what the
    teeth leave to move at all n.
    """

    records: tuple[Record, ...]
    laid: tuple[Laid, ...]
    sites: tuple[tuple[RecordSite | None, ...], ...]
    first_from_scan: FloatArray
    rough: FloatArray
    left: tuple[Motion, ...]

    def in_first(self, scan: int, site: RecordSite) -> RecordSite:
        """A scan's site where the teeth put it in the first scan."""
        return replace(site, scan_from_connection=self.first_from_scan[scan] @ site.scan_from_connection)

    def common(self) -> list[int]:
        """Implants that two scans or more show."""
        return [i for i, row in enumerate(self.sites) if sum(site is not None for site in row) > 1]


def mouth_of(records: Sequence[Record], scans: Sequence[Scan]) -> Mouth:
    """Lay every scan on the first, and see which of its sites are known already.

    Raises UsageError where scans and results do not belong together, ResultError where what stands in one place cannot
    be the same implant, JoinError where the teeth do not suffice.
    """
    refuse_unfit(records)
    own = _own_scans(records, scans)
    found, frames = [], [np.eye(4)]
    known = list(records[0].sites)
    rows: list[list[RecordSite | None]] = [[site] for site in known]
    for k, record in enumerate(records[1:], start=1):
        try:
            one = laid(own[0], own[k], sites_of(records[0]), brought=sites_of(record))
        except JoinError as error:
            raise JoinError(f"{error}, or, where two bodies stand in both, use 'stylobate compare'") from error
        first_from_scan = one.in_first(one.fit.first_from_second)
        here = [replace(s, scan_from_connection=first_from_scan @ s.scan_from_connection) for s in record.sites]
        partner = _partners(known, here, records[0], record)
        for i, row in enumerate(rows):
            row.append(record.sites[partner[i]] if i in partner else None)
        new = [j for j in range(len(here)) if j not in partner.values()]
        rows += [[*[None] * k, record.sites[j]] for j in new]
        known += [here[j] for j in new]
        found.append(one)
        frames.append(first_from_scan)
    rough = np.array([site.scan_from_connection for site in known])
    left = tuple(one.left_at(rough) for one in found)
    return Mouth(tuple(records), tuple(found), tuple(map(tuple, rows)), np.array(frames), rough, left)


def refuse_unfit(records: Sequence[Record]) -> None:
    """Raises UsageError and ResultError for results that cannot be of different scans of one mouth."""
    if len(records) < 2:
        raise UsageError("join needs two results or more; name them one after the other")
    for k, record in enumerate(records):
        if record.scan.triangles == 0:
            raise UsageError(f"{record.name}: is not of a scan, so it has no teeth; weigh it in by 'stylobate compare'")
        if not record.sites:
            raise ResultError(f"{record.name}: the result has no site to join; measure again")
        if record.parts.sha256 != records[0].parts.sha256:
            raise ResultError(
                f"{record.name}: was measured with other parts than {records[0].name}; measure both with one folder"
            )
        for other in records[:k]:
            if record.scan.sha256 == other.scan.sha256:
                raise UsageError(
                    f"{record.name} and {other.name} are of the same scan (sha256 {record.scan.sha256[:12]}…); "
                    "measure that scan once, and name results of different scans"
                )


def _own_scans(records: Sequence[Record], scans: Sequence[Scan]) -> list[Scan]:
    by_content = {scan.sha256: scan for scan in scans}
    for record in records:
        if record.scan.sha256 not in by_content:
            raise UsageError(
                f"{record.name}: its scan '{record.scan.file}' is not among those given; add --scan with that very file"
            )
    strange = set(by_content) - {record.scan.sha256 for record in records}
    if strange:
        raise UsageError(
            f"--scan {by_content[strange.pop()].file}: none of the results was measured in it; leave it out"
        )
    return [by_content[record.scan.sha256] for record in records]


def _partners(known: Sequence[RecordSite], here: Sequence[RecordSite], first: Record, record: Record) -> dict[int, int]:
    """Known implant → site of this scan, both in the first scan's coordinates. Raises ResultError."""
    one, two = (np.array([site.scan_from_connection for site in sites]) for sites in (known, here))
    pairs = assigned(distances(one, two), REACH)
    for i, j in pairs:
        if unlike(known[i].connection, here[j].connection):
            raise ResultError(
                f"{record.name}: site {here[j].site} stands where one of {first.name} stands, but on the connection "
                f"'{here[j].connection}' instead of '{known[i].connection}'; name results of the same implants"
            )
    between = np.linalg.norm(one[:, None, :3, 3] - two[None, :, :3, 3], axis=2)
    for i in range(len(known)):
        for j in range(len(here)):
            room = (known[i].platform_diameter + here[j].platform_diameter) / 2.0
            if (i, j) not in pairs and between[i, j] < room:
                raise ResultError(
                    f"{record.name}: site {here[j].site} lies {between[i, j]:.1f} mm from one of {first.name}, nearer "
                    "than two implants can; see that both bodies are seated, or name results of the same implants"
                )
    return dict(pairs)
