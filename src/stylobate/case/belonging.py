"""Whether what another command made belongs to the result of a case: it may be another patient's."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import numpy as np

from stylobate.core.errors import CaseError
from stylobate.record import read_result

if TYPE_CHECKING:
    from stylobate.case.folder import Case
    from stylobate.case.model import Output
    from stylobate.record import Record

SAME_MM = 1e-6
"""mm: rounding of a pose in a file."""


def require_belonging(case: Case, kind: Output, content: bytes, name: str) -> None:
    """`content` is PLACE.json, SEAT.json or COMPARE.json; name: of the file.

    Raises CaseError where it was made of another scan, with other parts, or of another measurement, and where there is
    no result to which it could belong.
    """
    table, file = case.table, case.result_file()
    scan, parts = table.scan("bodies"), table.current_parts()
    if file is None or scan is None or parts is None:
        raise CaseError(f"{case.path}: there is no result of the current scan and parts yet; measure or add that first")
    again = f"make it again of the case's result ('stylobate {kind}')"
    try:
        values = json.loads(content)
        known = _scans(kind, values)
        other_parts = kind == "place" and values["parts"]["sha256"] != parts.sha256
        elsewhere = _elsewhere(values, read_result(file)) if kind == "place" else ""
    except (ValueError, RecursionError, KeyError, TypeError, IndexError, AttributeError):
        raise CaseError(f"{name}: does not say of which scan it was made, or is damaged; {again}") from None
    if not known & {scan.sha256, scan.original_sha256}:
        raise CaseError(f"{name}: was made of another scan than the case's scan of the bodies; {again}")
    if other_parts:
        raise CaseError(f"{name}: was made with other parts than the case holds; {again}")
    if elsewhere:
        raise CaseError(f"{name}: site {elsewhere} lies elsewhere than in the case's result; {again}")


def _scans(kind: Output, values: dict[str, Any]) -> set[str]:
    """Hashes of the scans that it speaks of."""
    return {values["result"]["scan_sha256"]} if kind == "place" else set(values["scans_sha256"])


def _elsewhere(values: dict[str, Any], record: Record) -> str:
    """The first site whose lowest part does not stand on the platform of that site; "" where all do."""
    known = {site.site: site.scan_from_connection[:3, 3] for site in record.sites}
    for site in values["sites"]:
        if not site["chain"]:
            continue
        name, at = str(site["site"]), np.array(site["chain"][0]["scan_from_part"], np.float64)[:3, 3]
        if name not in known or not np.linalg.norm(at - known[name]) < SAME_MM:
            return name
    return ""
