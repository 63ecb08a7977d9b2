"""What joining says: one result, and from which scans it is."""

from __future__ import annotations

from dataclasses import dataclass

from stylobate.core.result import Result, ScanInfo
from stylobate.core.types import FloatArray


@dataclass(frozen=True)
class Seen:
    """One site of the joined result as one scan shows it. site: its name there. counts: whether it was weighed in."""

    scan: int
    site: str
    counts: bool


@dataclass(frozen=True)
class Source:
    """One scan. result: as the caller named it. first_from_scan: (4, 4) as the teeth lay it, the first one's identity.

    shared_mm2, places: of teeth; None for the first scan.
    """

    result: str
    scan: ScanInfo
    first_from_scan: FloatArray
    shared_mm2: float | None
    places: int | None


@dataclass(frozen=True)
class Joined:
    """result: in the first scan's coordinates. cross: (6, 6) of each two sites. seen: by site, in which scans."""

    result: Result
    cross: dict[tuple[str, str], FloatArray]
    sources: tuple[Source, ...]
    seen: dict[str, tuple[Seen, ...]]
