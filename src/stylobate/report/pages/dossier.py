"""What a report is made of: a result with its coloured surfaces, the scan, and the case where there is one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from stylobate.core.errors import CaseError, ResultError, UsageError
from stylobate.core.result import SiteMap
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite, read_result
from stylobate.report.surfaces import read_map

if TYPE_CHECKING:
    from stylobate.case import Case


@dataclass(frozen=True)
class MappedSite:
    """A site and its coloured surface, None where none was written."""

    record: RecordSite
    map: SiteMap | None

    @property
    def scan_from_connection(self) -> FloatArray:
        """(4, 4) pose."""
        return self.record.scan_from_connection


@dataclass(frozen=True)
class Dossier:
    """All that the pages show. result_sha256: of result.json. teeth: site → tooth. scan: None: no picture of it.

    made: of the last line of the case's log, or of result.json: the same source gives the same report, byte for byte.
    """

    record: Record
    sites: tuple[MappedSite, ...]
    result_sha256: str
    made: datetime
    scan: Scan | None = None
    case: Case | None = None
    teeth: Mapping[str, str] = field(default_factory=dict)


def of_result(result: str | Path, scan: str | Path | None = None) -> Dossier:
    """A result.json or its folder; `scan`: the scan it was measured in, for the picture of the arch.

    Raises ResultError, ScanError; UsageError where the scan is another one.
    """
    from stylobate.scan import read_scan

    record = read_result(result)
    read = None if scan is None else read_scan(scan)
    if read is not None and read.sha256 != record.scan.sha256:
        raise UsageError(
            f"{scan}: is not the scan of this result: its SHA-256 differs; give the scan that was measured"
        )
    made = datetime.fromtimestamp(int(record.path.stat().st_mtime), UTC)
    return Dossier(record, _mapped(record), _sha256(record.path), made, read)


def of_case(folder: str | Path) -> Dossier:
    """A case with its current result, the hash of each file checked.

    Raises CaseError where there is none or a file was changed, ResultError, ScanError.
    """
    from stylobate.case import Case
    from stylobate.case.checks import current_record
    from stylobate.scan import read_scan

    case = Case.open(folder)
    record = current_record(case)
    scan = case.table.scan("bodies")
    if record is None or scan is None:
        raise CaseError(f"{case.path}: there is no result of the current scan and parts yet; measure first")
    teeth = {site: tooth for tooth, site in case.table.teeth().items()}
    read = read_scan(case.unchanged(scan.file))
    made = datetime.fromisoformat(case.log.lines[-1].time)
    return Dossier(record, _mapped(record, case), _sha256(record.path), made, read, case, teeth)


def _mapped(record: Record, case: Case | None = None) -> tuple[MappedSite, ...]:
    return tuple(MappedSite(site, _map(record, site, case)) for site in record.sites)


def _map(record: Record, site: RecordSite, case: Case | None) -> SiteMap | None:
    if site.map is None:
        return None
    if Path(site.map).name != site.map:
        raise ResultError(f"{record.path}: map '{site.map}' of site {site.site} is not a file beside it")
    path = record.path.parent / site.map
    try:
        content = path.read_bytes() if case is None else case.read(path.relative_to(case.path).as_posix())
    except OSError:
        raise ResultError(f"{path}: the map of site {site.site} cannot be read; measure again") from None
    return read_map(content, str(path))


def _sha256(path: Path) -> str:
    from hashlib import sha256

    return sha256(path.read_bytes()).hexdigest()
