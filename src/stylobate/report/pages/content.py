"""A dossier as words: everything that the pages say, as plain strings, the same for PDF and HTML."""

from __future__ import annotations

from typing import Any

from stylobate import __version__
from stylobate.case.checks import QUESTION, SiteState, states
from stylobate.case.joined import join_words
from stylobate.case.model import KINDS, ROLES
from stylobate.case.words import crossed
from stylobate.core.result import Bounds, Finding
from stylobate.core.teeth import tooth_name
from stylobate.record import BudgetRow, RecordSite
from stylobate.report.figures import angle, micrometres, number, signed
from stylobate.report.pages.dossier import Dossier
from stylobate.report.pages.parts_list import parts_notes, parts_rows
from stylobate.report.pages.pictures import VIEWS_DEG, Pictures, range_words
from stylobate.report.pages.repeats import moved_lines, repeat_lines
from stylobate.report.words import CAUTION, printable

WORK = {"single": "a single restoration", "bridge": "a bridge", "arch": "a full arch"}
LEVEL = {"use": "good", "undecided": "doubt", "do not use": "bad", None: "none"}
VERDICT = {"use": "Use", "undecided": "Undecided", "do not use": "Do not use", None: "No verdict"}
CAUTIONS = (
    CAUTION,
    "The figures hold for the part, the connection and the settings named here. A wrong part in the parts folder, or a "
    "scan of another patient or jaw, cannot be told from the scan alone: compare the pictures with the mouth.",
    "The maker's torques and limits of reuse prevail over what stands here. Try the work in before it is fixed.",
)


def labels(dossier: Dossier) -> dict[str, str]:
    """Site → what the reader calls it: the tooth where it is named, else the site's number."""
    return {site.record.site: dossier.teeth.get(site.record.site, site.record.site) for site in dossier.sites}


def content(dossier: Dossier, drawn: Pictures) -> dict[str, Any]:
    """Everything on the pages. Lists of dicts of strings, and shares 0 to 1 for bars and marks. Raises CaseError."""
    record, called = dossier.record, labels(dossier)
    known = {found.site.site: found for found in states(dossier.case)} if dossier.case is not None else {}
    state = {site.record.site: known[site.record.site] for site in dossier.sites if site.record.site in known}
    sites = [_site(site.record, called, state.get(site.record.site), drawn) for site in dossier.sites]
    count = len(sites)
    low, high = range_words()
    return {
        "title": f"{count} implant position{'' if count == 1 else 's'}",
        "code": printable(dossier.case.table.code) if dossier.case is not None else "",
        "subtitle": printable(f"for {WORK.get(record.work, record.work) or 'work that is not stated'}"),
        "date": _date(dossier),
        "named": bool(dossier.teeth),
        "together": _together(dossier),
        "open": _open(dossier, state, called),
        "arch": "arch.png" if "arch.png" in drawn.files else "",
        "arch_note": "Seen along the mean of the implant axes; measured scan bodies in green.",
        "marks": [{"label": mark.label, "at": mark.at, "named": mark.named} for mark in drawn.marks],
        "legend": {"low": low, "high": high},
        "sites": sites,
        "pairs": _pairs(dossier, called),
        "parts": parts_rows(dossier),
        "parts_notes": parts_notes(dossier),
        "repeats": [] if dossier.case is None else repeat_lines(dossier.case, called),
        "not_shown": [{"what": printable(item.what), "check": printable(item.check)} for item in record.not_shown],
        "warnings": [printable(text) for text in record.warnings],
        "cautions": list(CAUTIONS),
        "provenance": _provenance(dossier),
        "software": f"stylobate {__version__}",
    }


def _date(dossier: Dossier) -> str:
    return f"{dossier.made:%Y-%m-%d %H:%M} UTC"


def _together(dossier: Dossier) -> dict[str, str]:
    found = dossier.record.together
    if found is None:
        single = dossier.record.sites[0] if len(dossier.record.sites) == 1 else None
        verdict = None if single is None else single.verdict
        words = "" if single is None else f"{single.because} {single.next}"
        return {"level": LEVEL[verdict], "verdict": VERDICT[verdict], "because": _sentence(words)}
    words = f"{found.because} {found.next}"
    return {"level": LEVEL[found.verdict], "verdict": VERDICT[found.verdict], "because": _sentence(words)}


def _sentence(words: str) -> str:
    text = printable(words).strip()
    return text[:1].upper() + text[1:]


def _open(dossier: Dossier, state: dict[str, SiteState], called: dict[str, str]) -> list[str]:
    """What is missing, one line each, for the largest type on the page."""
    if not dossier.sites:
        return []
    if dossier.case is None:
        return ["No chairside check is recorded: this result is not in a case."]
    nameless = [site.record.site for site in dossier.sites if site.record.site not in state]
    lines = [f"Without a tooth number, so without checks: site {', '.join(nameless)}"] if nameless else []
    lines += crossed(dossier.case.table.teeth()) + moved_lines(dossier.case, called)
    for found in state.values():
        failed = [kind for kind in found.missing if kind in found.checks]
        missing = [kind for kind in found.missing if kind not in found.checks]
        if missing:
            lines.append(f"{found.tooth}: not checked: {', '.join(missing)}")
        if failed:
            lines.append(f"{found.tooth}: NOT PASSED: {', '.join(failed)}")
    waiting = [found.tooth for found in state.values() if found.release is None]
    if waiting:
        lines.append(f"Not released: {', '.join(waiting)}")
    return [printable(line) for line in lines]


def _site(site: RecordSite, called: dict[str, str], state: SiteState | None, drawn: Pictures) -> dict[str, Any]:
    name = called[site.site]
    return {
        "label": name,
        "name": tooth_name(name) if state is not None else "",
        "site": site.site,
        "part": printable(f"{site.scan_body} on {site.connection}"),
        "level": LEVEL[site.verdict],
        "verdict": VERDICT[site.verdict],
        "because": _sentence(f"{site.because} {site.next}"),
        "findings": [_finding(finding) for finding in site.findings],
        "views": [
            {"file": file, "from": "from the index mark" if azimuth == 0 else f"turned {azimuth}°"}
            for file, azimuth in zip(drawn.views.get(site.site, ()), VIEWS_DEG, strict=False)
        ],
        "deviation": _deviation(site),
        "pose": _pose(site),
        "bounds": _bounds(site),
        "budget": _budget(site),
        "checks": _checks(state),
        "release": _release(state),
    }


def _finding(finding: Finding) -> dict[str, str]:
    size = ""
    if finding.size_um is not None:
        size = micrometres(finding.size_um) + (f" ± {number(finding.u95_um, 0)}" if finding.u95_um is not None else "")
    elif finding.size_deg is not None:
        size = angle(finding.size_deg, 1) + (f" ± {number(finding.u95_deg, 1)}" if finding.u95_deg is not None else "")
    return {"cause": printable(finding.cause), "size": size, "advice": printable(finding.advice)}


def _deviation(site: RecordSite) -> str:
    if site.deviation is None or site.deviation.points == 0:
        return ""
    seen = "" if site.coverage is None else f" {100 * site.coverage:.0f} % of the scan body is seen."
    return (
        f"Deviation of the scan from the CAD surface: rms {number(site.deviation.rms_um, 1)} µm, "
        f"mean {signed(site.deviation.mean_um, 1)} µm, 95 % within {number(site.deviation.p95_um, 1)} µm.{seen}"
    )


def _pose(site: RecordSite) -> list[dict[str, str]]:
    x, y, z = (float(value) for value in site.scan_from_connection[:3, 3])
    a, b, c = (float(value) for value in site.scan_from_connection[:3, 2])
    return [
        {"name": "platform centre, mm", "value": ", ".join(number(value, 3) for value in (x, y, z))},
        {"name": "axis", "value": ", ".join(number(value, 5) for value in (a, b, c))},
    ]


def _bounds(site: RecordSite) -> list[dict[str, str]]:
    """Rows of 95 % bounds: of the scan alone, and of all sources."""

    def row(name: str, bounds: Bounds) -> dict[str, str]:
        turn = "not indexed" if bounds.index_deg is None else f"± {angle(bounds.index_deg, 2)}"
        return {
            "name": name,
            "centre": f"± {micrometres(bounds.platform_um, 1)}",
            "axis": f"± {angle(bounds.axis_deg, 3)}",
            "turn": "any" if bounds.any_turn(site.index_order) else turn,
        }

    rows = []
    if site.u95 is not None:
        rows.append(row("this scan alone", site.u95))
    if site.u95_total is not None:
        rows.append(row("all sources with a figure", site.u95_total))
    return rows


def _budget(site: RecordSite) -> list[dict[str, Any]]:
    greatest = max((row.platform_um for row in site.budget if row.platform_um is not None), default=0.0)
    return [
        {
            "source": printable(row.source),
            "platform": _centre(row),
            "axis": "–" if row.axis_deg is None else angle(row.axis_deg, 3),
            "turn": "–" if row.index_deg is None else angle(row.index_deg, 2),
            "share": 0.0 if row.platform_um is None or greatest <= 0 else row.platform_um / greatest,
            "known": row.platform_um is not None,
            "from": printable(row.origin),
        }
        for row in site.budget
    ]


def _centre(row: BudgetRow) -> str:
    """A source's share in the centre; of one that only turns, its share in the turn."""
    if row.platform_um is not None:
        return micrometres(row.platform_um, 1)
    return "no figure" if row.index_deg is None else f"turn only, {angle(row.index_deg, 2)}"


def _checks(state: SiteState | None) -> list[dict[str, str]]:
    if state is None:
        return []
    rows = []
    for kind in KINDS:
        check = state.checks.get(kind)
        level = "missing" if check is None else "passed" if check.ok else "failed"
        words = "" if check is None else " · ".join(
            part for part in (check.value, check.note, f"{check.by}, {check.time[:10]} {check.time[11:16]} UTC") if part
        )  # fmt: skip
        rows.append({"kind": kind, "question": QUESTION[kind], "level": level, "words": printable(words)})
    return rows


def _release(state: SiteState | None) -> str:
    if state is None or state.release is None:
        return ""
    act = state.release
    reason = f" Reason: {act.reason}" if act.reason else ""
    still = f" With these open: {', '.join(act.open)}." if act.open else ""
    return printable(f"Released by {act.by}, {act.time[:10]} {act.time[11:16]} UTC.{still}{reason}")


def _pairs(dossier: Dossier, called: dict[str, str]) -> list[dict[str, str]]:
    rows = []
    for pair in dossier.record.pairs:
        one, two = (called.get(site, site) for site in pair.sites)
        total = "–" if pair.total_um is None else f"± {micrometres(pair.total_um, 0)}"
        rows.append(
            {
                "sites": printable(f"{one} – {two}"),
                "distance": f"{number(pair.distance_mm, 3)} mm",
                "scan": f"± {micrometres(pair.u95_um, 1)}",
                "total": total,
                "angle": f"{number(pair.angle_deg, 2)}° ± {number(pair.angle_u95_deg, 3)}",
            }
        )
    return rows


def _provenance(dossier: Dossier) -> list[dict[str, str]]:
    record = dossier.record
    rows = [
        ("scan", f"{record.scan.file}, {record.scan.triangles:,} triangles", record.scan.sha256),
        ("parts", f"{record.parts.name}, {record.parts.revision}", record.parts.sha256),
        ("result", record.software, dossier.result_sha256),
    ]
    if dossier.case is not None:
        table = dossier.case.table
        for role in ROLES:
            scan, join = table.scan(role), table.join(role)
            if scan is not None and join is not None:
                rows.append((f"{role} scan", join_words(join), scan.sha256))
        log = dossier.case.log
        rows.append(("log", f"{len(log.lines)} lines, the last by {log.lines[-1].who}", log.head))
    return [{"what": what, "words": printable(words), "sha256": printable(sha256)} for what, words, sha256 in rows]
