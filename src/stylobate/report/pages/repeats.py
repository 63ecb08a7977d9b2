"""What a case holds of a frame over its sites and of repeat scans, in sentences for the pages."""

from __future__ import annotations

import json
import math
from typing import TYPE_CHECKING, Any

from stylobate.core.errors import CaseError
from stylobate.report.figures import micrometres, number
from stylobate.report.words import printable

if TYPE_CHECKING:
    from collections.abc import Mapping

    from stylobate.case import Case
    from stylobate.case.model import Output

DAMAGED = "{}: an output of {} is damaged; make it again, and add it"


def moved_lines(case: Case, called: Mapping[str, str]) -> list[str]:
    """One line for each site that does not stand as in the other scans. called: site of the case's result → its name.

    Raises CaseError.
    """
    return [f"{who} stands otherwise in {where}: {how}" for who, where, how in _moved(case, called)]


def repeat_lines(case: Case, called: Mapping[str, str]) -> list[str]:
    """What seat.json and compare.json of the case say, a sentence each. Raises CaseError."""
    seat, compare = _values(case, "seat"), _values(case, "compare")
    lines = []
    try:
        if seat is not None:
            lines.append(_seat(seat))
        if compare is not None:
            count = len(compare["scans"])
            moved = _moved(case, called)
            lines.append(
                f"{count} scans of the same implants were compared: "
                + ("; ".join(f"{who} in {where}: {how}" for who, where, how in moved) if moved else _nothing(compare))
                + "."
            )
    except (KeyError, TypeError, ValueError, IndexError):
        raise CaseError(DAMAGED.format(case.path, "seat or compare")) from None
    return [printable(line) for line in lines]


def _values(case: Case, kind: Output) -> dict[str, Any] | None:
    output = case.table.output(kind)
    if output is None:
        return None
    values: dict[str, Any] = json.loads(case.read(f"{output.folder}/{kind}.json"))
    return values


def _seat(values: dict[str, Any]) -> str:
    limits = f"gaps of at most {micrometres(values['limit_um'])}, sideways {micrometres(values['side_limit_um'])}"
    if values.get("on") is None:
        share = number(100.0 * float(values["probability_within_limits"]), 1)
        return f"A rigid frame made to these positions: {limits} in {share} of 100 cases, by the figures counted."
    gap, side = micrometres(values["worst_gap_um"]), micrometres(values["worst_side_um"])
    return f"A rigid frame laid on another measurement: the largest gap {gap}, sideways {side} (asked for: {limits})."


def _nothing(values: dict[str, Any]) -> str:
    heights = [float(entry["height_um"]) for entry in values["can_find"] if entry["height_um"] is not None]
    if not heights:
        return "which site moved could not be told"
    return f"nothing moved, as far as they show; a body standing {micrometres(max(heights))} high would be found"


def _moved(case: Case, called: Mapping[str, str]) -> list[tuple[str, str, str]]:
    """Who, in which scan, how. Raises CaseError."""
    try:
        return _read_moved(case, called)
    except (KeyError, TypeError, ValueError, IndexError, AttributeError):
        raise CaseError(DAMAGED.format(case.path, "compare")) from None


def _read_moved(case: Case, called: Mapping[str, str]) -> list[tuple[str, str, str]]:
    values, scan = _values(case, "compare"), case.table.scan("bodies")
    if values is None or scan is None:
        return []
    names, hashes = values["scans"], values.get("scans_sha256", ())
    known: list[dict[str, str]] = values["matched"]
    own = next((names[k] for k, sha in enumerate(hashes) if sha in (scan.sha256, scan.original_sha256)), "")
    found = []
    for moved in values["moved"]:
        side = math.hypot(*map(float, moved["shift_um"][:2]))
        height, bound = number(float(moved["shift_um"][2]), 0), number(float(moved["u95_um"]), 0)
        row = next((row for row in known if row.get(moved["scan"]) == moved["site"]), {})
        site = str(row.get(own, moved["matched_as"]))
        who = called.get(site, f"site {site}")
        where = "this scan" if moved["scan"] == own else f"scan {names.index(moved['scan']) + 1} of {len(names)}"
        found.append((who, where, f"{micrometres(side)} sideways, {height} µm in height (± {bound})"))
    return found
