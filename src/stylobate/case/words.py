"""A case in a few lines of text."""

from __future__ import annotations

from stylobate.case.checks import SiteState, states
from stylobate.case.folder import Case
from stylobate.case.joined import join_words
from stylobate.case.model import ROLES
from stylobate.core.teeth import tooth_name


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
    found += [f"  {line.time} {line.who}: {line.what}" for line in case.log.lines[-log_lines:]]
    return found


def unjoined(case: Case) -> list[str]:
    """One line for each scan that is to be joined and is not yet."""
    return [
        f"  {role}: not joined to the scan of the bodies yet: 'stylobate case join'" for role in case.table.to_join()
    ]


def _site(state: SiteState) -> str:
    words = f"  tooth {state.tooth} ({tooth_name(state.tooth)}), site {state.site.site}: "
    words += state.site.verdict or "no verdict"
    if state.missing:
        words += f"; MISSING: {', '.join(state.missing)}"
    if state.release is not None:
        words += f"; released by {state.release.by} {state.release.time}"
    return words
