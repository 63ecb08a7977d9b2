"""Which parts stand or will stand on each site, and the torque each is tightened to."""

from __future__ import annotations

import json
import tomllib
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


def parts_rows(dossier: Dossier) -> list[dict[str, str]]:
    """One row a part: site, what, id, torque. Torques only from a case, which holds the parts folder."""
    known = _known(dossier.case) if dossier.case is not None else {}
    rows = []
    chains = _chains(dossier.case) if dossier.case is not None else {}
    for site in dossier.sites:
        name = site.record.site
        label = dossier.teeth.get(name, name)
        chain, chosen = chains.get(name, ([], True))
        for part in (site.record.scan_body, *chain):
            kind, entry = known.get(part, ("scan_body" if part == site.record.scan_body else "", {}))
            what = KINDS.get(kind, "part")
            if not chosen and part in chain:
                what += PROPOSED
            rows.append({"label": label, "what": what, "id": printable(part), "torque": _torque(entry)})
    return rows


def _known(case: Case) -> dict[str, tuple[str, dict[str, Any]]]:
    parts = case.table.current_parts()
    if parts is None:
        return {}
    values = tomllib.loads(case.read(f"{parts.folder}/parts.toml").decode("utf-8-sig"))
    return {entry["id"]: (kind, entry) for kind in KINDS for entry in values.get(kind, [])}


def _chains(case: Case) -> dict[str, tuple[list[str], bool]]:
    """Parts placed on each site, lowest first, and whether a person chose them; from the case's newest place.json.

    Raises CaseError.
    """
    output = case.table.output("place")
    if output is None:
        return {}
    name = f"{output.folder}/place.json"
    try:
        values = json.loads(case.read(name))
        return {
            str(site["site"]): ([str(link["part"]) for link in site["chain"]], bool(site.get("chosen", True)))
            for site in values["sites"]
        }
    except (ValueError, KeyError, TypeError):
        raise CaseError(f"{case.path}/{name}: is not what 'stylobate place' writes; place the parts again") from None


def _torque(entry: dict[str, Any]) -> str:
    if "torque_ncm" not in entry:
        return "not stated"
    low, high = entry["torque_ncm"]
    return f"{low:g} N·cm" if low == high else f"{low:g} to {high:g} N·cm"
