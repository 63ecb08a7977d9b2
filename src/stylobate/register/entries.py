"""What is common to all entries: when, by whom, which unit; and how numbers are read from a hand-held scanner."""

from __future__ import annotations

import getpass
import re
from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime, time

from stylobate.core.errors import RegisterError
from stylobate.register.store import Register

NUMBER = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9._+-]{0,62}[A-Za-z0-9])?")
MOST_TEXT = 500
_FRAME = re.compile(r"^[\x00-\x20]+|[\x00-\x20]+$")
"""Control characters that scanners send before and after a code (STX, ETX, carriage return, …)."""


def moment(text: str | None = None) -> str:
    """A point in time as the register keeps it, UTC to the second. text: ISO date or date and time; None: now.

    A date alone means the end of that day, or now if the day is today. Raises RegisterError for what is no date, or
    lies ahead.
    """
    now = datetime.now(UTC)
    if text is None:
        return _written(now)
    try:
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            when = min(datetime.combine(date.fromisoformat(text), time(23, 59, 59)).astimezone(UTC), now)
            if date.fromisoformat(text) > now.astimezone().date():
                raise RegisterError(f"'{text}' lies ahead; give a date up to today")
        else:
            when = datetime.fromisoformat(text).astimezone(UTC)
    except ValueError as error:
        raise RegisterError(f"'{text}' is not a date; write it like 2026-11-25 or 2026-11-25T14:30") from error
    if when > now:
        raise RegisterError(f"'{text}' lies ahead; give a date up to today")
    return _written(when)


def _written(when: datetime) -> str:
    return when.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def day(text: str) -> str:
    """An ISO date, as given. Raises RegisterError."""
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError as error:
        raise RegisterError(f"'{text}' is not a date; write it like 2026-11-25") from error


def who() -> str:
    """Name of the user's account, for the log."""
    try:
        return getpass.getuser()
    except (KeyError, OSError):
        return "unknown"


def words(text: str, what: str) -> str:
    """A text worth keeping: one line, not empty. Raises RegisterError."""
    line = " ".join(text.split())
    if not line or not line.isprintable() or len(line) > MOST_TEXT:
        raise RegisterError(f"{what}: write one line of 1 to {MOST_TEXT} characters")
    return line


def number(text: str) -> str:
    """A unit's number as written on its tag. Raises RegisterError."""
    if not NUMBER.fullmatch(text):
        shown = "".join(c for c in text if c.isprintable())[:70]
        raise RegisterError(
            f"'{shown}' is not a unit's number; up to 64 letters, digits, '.', '_', '+' or '-', such as 12 or AT-0012"
        )
    return text


def codes(lines: Iterable[str]) -> list[str]:
    """Numbers read one a line, as a scanner sends them; a number read twice counts once.

    Control characters around a code and empty lines are passed over. Raises RegisterError with every bad line.
    """
    found: dict[str, str] = {}
    faults = []
    for k, line in enumerate(lines, start=1):
        code = _FRAME.sub("", line)
        if not code:
            continue
        if NUMBER.fullmatch(code):
            found.setdefault(code.casefold(), code)
        else:
            faults.append(f"line {k}: '{''.join(c for c in code if c.isprintable())[:70]}'")
    if faults:
        raise RegisterError(
            f"{len(faults)} of the codes read are no unit's number: {'; '.join(faults)}; nothing was entered",
            tuple(faults),
        )
    return list(found.values())


def known(register: Register, numbers: Sequence[str]) -> list[str]:
    """These units' numbers as the register writes them. Raises RegisterError that lists those not in it."""
    if not numbers:
        raise RegisterError("no unit was named; give its number, or read the codes from standard input with '-'")
    written = {str(row["number"]).casefold(): str(row["number"]) for row in register.rows("SELECT number FROM unit")}
    missing = [name for name in numbers if name.casefold() not in written]
    if missing:
        raise RegisterError(
            f"not in the register: {', '.join(missing)}; nothing was entered; 'stylobate register add' enters a unit",
            tuple(missing),
        )
    return list(dict.fromkeys(written[name.casefold()] for name in numbers))


def enter(
    register: Register, unit: str, kind: str, at: str, *, amount: float | None = None, note: str | None = None,
    case: str | None = None,
) -> int:  # fmt: skip
    """Add one event to a unit's history, inside a transaction; returns its number."""
    return register.add(
        "event", unit=unit, kind=kind, at=at, entered=moment(), by=who(), amount=amount, note=note, case_name=case
    )
