"""profile.json → Profile, or one line that says what is wrong with it."""

from __future__ import annotations

from pathlib import Path

from stylobate.core.errors import ResultError, UsageError
from stylobate.record.document import read_document
from stylobate.several.drifting.model import Estimate, Profile

FORMAT = "stylobate-profile"
VERSION = 1
PROFILE = "profile.json"


def read_profile(path: str | Path, scanner: str | None = None) -> Profile:
    """Read a profile: the file, or the folder that holds one. scanner: that it must be of.

    Raises ResultError; UsageError where it is of another scanner.
    """
    from stylobate.several.drifting.schema import ProfileTable

    file = Path(path) / PROFILE if Path(path).is_dir() else Path(path)
    if Path(path).is_dir() and not file.exists():
        raise ResultError(f"{path}: this folder holds no {PROFILE}; name one that 'stylobate profile' wrote")
    table = read_document(file, ProfileTable, FORMAT, VERSION, "profile")
    if scanner is not None and scanner.strip() not in (table.scanner, f"{table.scanner} {table.unit}".strip()):
        named = f"{table.scanner} {table.unit}".strip()
        raise UsageError(f"{file}: is the profile of '{named}', not of '{scanner}'; name the profile of that scanner")
    scale = table.scale_ppm
    return Profile(
        scanner=table.scanner,
        unit=table.unit,
        shift_um=Estimate(**table.shift_um.model_dump()),
        turn_deg=Estimate(**table.turn_deg.model_dump()),
        scale_ppm=None if scale is None else Estimate(**scale.model_dump()),
        scans=tuple(table.scans),
        reference=table.reference,
        sites=table.sites,
        span_mm=table.span_mm,
    )
