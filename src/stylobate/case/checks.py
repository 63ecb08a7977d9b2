"""Chairside checks and the release of a site: what a scan cannot show, recorded by a person, and what is missing."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass

from stylobate.case.folder import Case, now
from stylobate.case.model import KINDS, CaseTable, Check, Kind, Release
from stylobate.core.errors import CaseError
from stylobate.core.teeth import tooth
from stylobate.record import Record, RecordSite, read_result

QUESTION = {
    "clean": "connection and scan body clean and dry",
    "seated": "seated: does not rock, does not turn",
    "torque": "tightened to the part's torque",
    "radiograph": "radiograph taken and no gap seen",
    "unit": "unit number of the scan body noted",
}
"""What each check asks, as it stands on the report."""


@dataclass(frozen=True)
class SiteState:
    """One site as the case stands. checks: the last of each kind made for the current scan. missing: not made, or not
    passed. release: the person's release of the current result, None where there is none."""

    tooth: str
    site: RecordSite
    checks: dict[Kind, Check]
    missing: tuple[Kind, ...]
    release: Release | None


def current_record(case: Case) -> Record | None:
    """The result that counts, None where there is none. Raises ResultError; CaseError where it was changed."""
    file = case.result_file()
    return None if file is None else read_result(file)


def states(case: Case) -> list[SiteState]:
    """Every named site of the current result, in the order of the arch. Raises ResultError, CaseError."""
    record = current_record(case)
    if record is None:
        return []
    return [_state(case.table, number, record.site(site)) for number, site in case.table.teeth().items()]


def _state(table: CaseTable, number: str, site: RecordSite) -> SiteState:
    scan, result = table.scan("bodies"), table.result()
    assert scan is not None
    assert result is not None
    made = {check.kind: check for check in table.checks if check.tooth == number and check.scan == scan.sha256}
    missing = tuple(kind for kind in KINDS if kind not in made or not made[kind].ok)
    acts = [act for act in table.releases if act.tooth == number and act.result == result.id]
    release = acts[-1] if acts and acts[-1].released else None
    return SiteState(number, site, made, missing, release)


def torque_target(case: Case, scan_body: str) -> tuple[float, float] | None:
    """Least and greatest torque of a scan body in N·cm as the case's parts folder states it, None where it does not."""
    parts = case.table.current_parts()
    if parts is None:
        return None
    values = tomllib.loads(case.read(f"{parts.folder}/parts.toml").decode("utf-8-sig"))
    for entry in values.get("scan_body", []):
        if entry.get("id") == scan_body and "torque_ncm" in entry:
            low, high = entry["torque_ncm"]
            return float(low), float(high)
    return None


def record_check(
    case: Case, number: str, kind: Kind, who: str, ok: bool = True, value: str = "", note: str = ""
) -> Case:
    """Note a check of a site for the current scan. Raises UsageError and CaseError."""
    of_tooth(case, number)
    scan = case.table.scan("bodies")
    assert scan is not None
    check = Check(tooth=number, kind=kind, ok=ok, scan=scan.sha256, value=value, note=note, by=who, time=now())

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"checks": (*table.checks, check)})

    return case.change(who, "check", {"tooth": number, "kind": kind, "ok": ok, "value": value}, edit)


def torque_words(case: Case, number: str, used_ncm: float) -> tuple[bool, str]:
    """Whether a torque is within the part's target, and the words that say so. Raises UsageError and CaseError."""
    site = of_tooth(case, number).site
    target = torque_target(case, site.scan_body)
    if target is None:
        return True, f"{used_ncm:g} N·cm (the parts folder states no target for {site.scan_body})"
    low, high = target
    within = low <= used_ncm <= high
    wanted = f"{low:g} N·cm" if low == high else f"{low:g} to {high:g} N·cm"
    return within, f"{used_ncm:g} N·cm, target {wanted}" + ("" if within else ": outside")


def release(case: Case, number: str, who: str, reason: str = "") -> Case:
    """A person releases a site.

    Raises CaseError without a written reason where the verdict is not `use`, or a check is missing or failed.
    """
    state = of_tooth(case, number)
    why = _against(state)
    if why and len(reason.strip()) < 3:
        raise CaseError(
            f"{case.path}: tooth {number} cannot be released as it stands: {why}; do that, or give a reason (--reason)"
        )
    return _act(case, state, who, reason.strip(), released=True)


def withdraw(case: Case, number: str, who: str, reason: str = "") -> Case:
    """Take a release back. Raises CaseError where there is none."""
    state = of_tooth(case, number)
    if state.release is None:
        raise CaseError(f"{case.path}: tooth {number} is not released, so there is nothing to withdraw")
    return _act(case, state, who, reason.strip(), released=False)


def _act(case: Case, state: SiteState, who: str, reason: str, released: bool) -> Case:
    result = case.table.result()
    assert result is not None
    act = Release(
        tooth=state.tooth,
        released=released,
        result=result.id,
        verdict=state.site.verdict or "",
        open=state.missing,
        reason=reason,
        by=who,
        time=now(),
    )

    def edit(table: CaseTable) -> CaseTable:
        if table.result() != result:
            raise CaseError(f"{case.path}: a newer result came in meanwhile; look at it, then release")
        return table.model_copy(update={"releases": (*table.releases, act)})

    about = {
        "tooth": state.tooth,
        "result": result.id,
        "verdict": act.verdict,
        "open": list(act.open),
        "reason": reason,
    }
    return case.change(who, "released" if released else "release withdrawn", about, edit)


def _against(state: SiteState) -> str:
    """What stands against releasing a site, in words; empty where nothing does."""
    words = []
    match state.site.verdict:
        case "use":
            pass
        case None:
            words.append("the result has no verdict")
        case verdict:
            words.append(f"its verdict is '{verdict}'")
    open_checks = ", ".join(state.missing)
    if open_checks:
        words.append(f"not done or not passed: {open_checks}")
    return "; ".join(words)


def of_tooth(case: Case, number: str) -> SiteState:
    """The site that stands for a tooth. Raises UsageError, CaseError."""
    tooth(number)
    found = [state for state in states(case) if state.tooth == number]
    if not found:
        named = ", ".join(case.table.teeth())
        what = f"the named sites are {named}" if named else "name the sites first ('stylobate case sites')"
        raise CaseError(f"{case.path}: no site of the current result stands for tooth {number}; {what}")
    return found[0]
