"""A case in a few lines of text."""

from __future__ import annotations

from collections.abc import Mapping

from stylobate.case.checks import SiteState, states
from stylobate.case.folder import Case
from stylobate.case.joined import join_words
from stylobate.case.log import Line
from stylobate.case.model import ROLES
from stylobate.core.teeth import along_arch, tooth_name


def summary(case: Case, log_lines: int) -> list[str]:
    """What the case holds, the state of each site, the last lines of the log. Raises ResultError."""
    table = case.table
    found = [f"Case {table.code}, for: {table.work}, {case.path}"]
    scans = {role: table.scan(role) for role in ROLES}
    found += [f"  scan of {role}: {entry.file}" for role, entry in scans.items() if entry is not None]
    joined = {role: table.join(role) for role in ROLES}
    found += [f"  {role}: {join_words(entry)}" for role, entry in joined.items() if entry is not None]
    found += unjoined(case)
    parts = table.current_parts()
    if parts is not None:
        found.append(f"  parts: {parts.name}, {parts.revision}")
    result = table.result()
    if result is not None:
        found.append(f"  result: {result.folder}, {result.time}")
        if not table.teeth():
            found.append("  its sites are not named yet: 'stylobate case sites'")
    found += [_site(state) for state in states(case)]
    found += [f"  {line}" for line in crossed(table.teeth())]
    found += [f"  {line.time} {line.who}: {line.what}{_about(line)}" for line in case.log.lines[-log_lines:]]
    return found


def crossed(teeth: Mapping[str, str]) -> list[str]:
    """One line where the teeth (tooth → site) do not follow each other as the sites do, which are numbered along the
    arch: two may have been exchanged."""
    order = sorted((along_arch(tooth), site) for tooth, site in teeth.items() if site.isdigit())
    sites = [int(site) for _, site in order]
    if sites in (sorted(sites), sorted(sites, reverse=True)):
        return []
    named = ", ".join(
        f"{tooth} is site {site}" for tooth, site in sorted(teeth.items(), key=lambda t: along_arch(t[0]))
    )
    return [f"Look again: sites are numbered along the arch, but {named}; compare with the picture of the arch"]


def _about(line: Line) -> str:
    """What a line of the log is about, as far as a reader asks: the tooth, what was found, why."""
    about = line.about
    words = [f"tooth {about['tooth']}"] if "tooth" in about else []
    if line.what == "check":
        words.append(f"{about.get('kind')} {'passed' if about.get('ok') else 'NOT PASSED'}")
    if line.what == "sites named":
        words += [f"{tooth}={site}" for tooth, site in about.get("teeth", {}).items()]
    words += [str(about[key]) for key in ("role", "value") if about.get(key)]
    words += [f"open: {', '.join(about['open'])}"] if about.get("open") else []
    words += [f"reason: {about['reason']}"] if about.get("reason") else []
    return f", {', '.join(words)}" if words else ""


def unjoined(case: Case) -> list[str]:
    """One line for each scan that is to be joined and is not yet."""
    return [
        f"  {role}: not joined to the scan of the bodies yet: 'stylobate case join'" for role in case.table.to_join()
    ]


def _site(state: SiteState) -> str:
    words = f"  tooth {state.tooth} ({tooth_name(state.tooth)}), site {state.site.site}: "
    words += state.site.verdict or "no verdict"
    failed = [kind for kind in state.missing if kind in state.checks]
    missing = [kind for kind in state.missing if kind not in state.checks]
    words += f"; MISSING: {', '.join(missing)}" if missing else ""
    words += f"; NOT PASSED: {', '.join(failed)}" if failed else ""
    if state.release is not None:
        words += f"; released by {state.release.by} {state.release.time}"
        words += f", reason: {state.release.reason}" if state.release.reason else ""
    return words
