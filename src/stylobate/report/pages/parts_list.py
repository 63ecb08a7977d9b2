"""Which parts stand or will stand on each site, and the torque each is tightened to."""

from __future__ import annotations

import json
import tomllib
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from stylobate.core.errors import CaseError
from stylobate.report.words import printable

if TYPE_CHECKING:
    from stylobate.case import Case
    from stylobate.report.pages.dossier import Dossier

KINDS = {
    "scan_body": "scan body",
    "multi_unit_abutment": "multi-unit abutment",
    "titanium_base": "titanium base",
}
"""Tables of parts.toml whose parts are screwed on, and what they are called."""
PROPOSED = ", proposed: nobody has chosen it"
TURNS = "@: the turn, in index positions of the connection below, from the mark to which the scan body's own points."


@dataclass(frozen=True)
class _Placed:
    """Parts on a site, lowest first, each with its turn; whether a person chose them; why in spite of the verdict."""

    chain: tuple[tuple[str, int | None], ...]
    chosen: bool
    accepted: str


NOTHING = _Placed((), True, "")


def parts_rows(dossier: Dossier) -> list[dict[str, str]]:
    """One row a part: site, what, id with its turn, torque. Torques only from a case, which holds the parts folder."""
    known, orders = _known(dossier.case) if dossier.case is not None else ({}, {})
    rows = []
    placed = _placed(dossier.case) if dossier.case is not None else {}
    for site in dossier.sites:
        label = _label(dossier, site.record.site)
        body = site.record.scan_body
        kind, entry = known.get(body, ("scan_body", {}))
        rows.append({"label": label, "what": KINDS[kind], "id": printable(body), "torque": _torque(entry)})
        for part, turn in placed.get(site.record.site, NOTHING).chain:
            kind, entry = known.get(part, ("", {}))
            what = KINDS.get(kind, "part") + ("" if placed[site.record.site].chosen else PROPOSED)
            turned = f" @{turn}" if turn is not None and orders.get(entry.get("seats_on", ""), 0) > 1 else ""
            rows.append({"label": label, "what": what, "id": printable(part + turned), "torque": _torque(entry)})
    return rows


def parts_notes(dossier: Dossier) -> list[str]:
    """What is to be said of the parts: what the turn counts, and the reason for each site built on in spite of its
    verdict."""
    placed = _placed(dossier.case) if dossier.case is not None else {}
    notes = [TURNS] if any(site.chain for site in placed.values()) else []
    return notes + [
        printable(f"{_label(dossier, name)}: parts in spite of the verdict. Reason: {site.accepted}")
        for name, site in placed.items()
        if site.accepted
    ]


def _label(dossier: Dossier, site: str) -> str:
    return dossier.teeth.get(site, site)


def _known(case: Case) -> tuple[dict[str, tuple[str, dict[str, Any]]], dict[str, int]]:
    """Id → kind and entry of a part; id → index order of a connection."""
    parts = case.table.current_parts()
    if parts is None:
        return {}, {}
    values = tomllib.loads(case.read(f"{parts.folder}/parts.toml").decode("utf-8-sig"))
    orders = {entry["id"]: int(entry.get("index_order", 0)) for entry in values.get("connection", [])}
    return {entry["id"]: (kind, entry) for kind in KINDS for entry in values.get(kind, [])}, orders


def _placed(case: Case) -> dict[str, _Placed]:
    """Parts placed on each site; from the case's newest place.json. Raises CaseError."""
    output = case.table.output("place")
    if output is None:
        return {}
    name = f"{output.folder}/place.json"
    try:
        values = json.loads(case.read(name))
        return {
            str(site["site"]): _Placed(
                tuple((str(link["part"]), link.get("turn")) for link in site["chain"]),
                bool(site.get("chosen", True)),
                str(site.get("accepted", {}).get("reason", "")),
            )
            for site in values["sites"]
        }
    except (ValueError, KeyError, TypeError, AttributeError):
        raise CaseError(f"{case.path}/{name}: is not what 'stylobate place' writes; place the parts again") from None


def _torque(entry: dict[str, Any]) -> str:
    if "torque_ncm" not in entry:
        return "not stated"
    low, high = entry["torque_ncm"]
    return f"{low:g} N·cm" if low == high else f"{low:g} to {high:g} N·cm"
