"""Units: the physical scan bodies, what happened to each, and whether one may be used."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass

from stylobate.core.errors import RegisterError
from stylobate.register.entries import day, enter, known, moment, number, who, words
from stylobate.register.store import Register

SOON = 3
"""Cycles left from which on a unit is listed as due soon (our choice)."""


@dataclass(frozen=True)
class Kind:
    """What the units of one delivery have in common. bought: ISO date."""

    scan_body: str
    lot: str | None = None
    bought: str | None = None
    single_use: bool = False
    max_cycles: int | None = None
    wear_limit_um: float | None = None


@dataclass(frozen=True)
class Unit:
    """One physical scan body as its history leaves it.

    cycles: sterilisations; uses: measurements in cases. bench: "accepted", "rejected", or None before any bench check.
    cases: in the order of first use. retired_at, retired_why: None while in use.
    """

    number: str
    kind: Kind
    cycles: int = 0
    torque_events: int = 0
    incidents: int = 0
    uses: int = 0
    bench: str | None = None
    retired_at: str | None = None
    retired_why: str | None = None
    cases: tuple[str, ...] = ()

    @property
    def cycles_left(self) -> int | None:
        """Sterilisations left of those that the maker allows; None where no figure is known."""
        return None if self.kind.max_cycles is None else self.kind.max_cycles - self.cycles


@dataclass(frozen=True)
class Event:
    """One line of a history. voided: whether a later event took it back."""

    id: int
    unit: str
    kind: str
    at: str
    by: str
    amount: float | None
    note: str | None
    case: str | None
    voided: bool


def add(register: Register, numbers: Sequence[str], kind: Kind) -> list[str]:
    """Enter new units. Raises RegisterError that lists every number that is taken, given twice or no number."""
    checked = [number(text) for text in numbers]
    if kind.bought is not None:
        day(kind.bought)
    with register.writing():
        taken = {str(row["number"]).casefold() for row in register.rows("SELECT number FROM unit")}
        seen: set[str] = set()
        twice = []
        for name in checked:
            if name.casefold() in taken | seen:
                twice.append(name)
            seen.add(name.casefold())
        if twice:
            raise RegisterError(
                f"two units cannot have one number: {', '.join(twice)}; nothing was entered; give each its own number",
                tuple(twice),
            )
        for name in checked:
            insert(register, name, kind)
    return checked


def insert(register: Register, name: str, kind: Kind) -> None:
    """One unit's row, inside a transaction."""
    register.add(
        "unit", number=name, scan_body=kind.scan_body, lot=kind.lot, bought=kind.bought,
        single_use=int(kind.single_use), max_cycles=kind.max_cycles, wear_limit_um=kind.wear_limit_um,
    )  # fmt: skip


def record(
    register: Register, numbers: Sequence[str], kind: str, at: str, amount: float | None = None, note: str | None = None
) -> list[Unit]:
    """The same event for many units, all or none: sterilised, torqued (amount N·cm), incident or retired (with note).

    Returns the units as they then stand. Raises RegisterError for unknown numbers, and for retiring what is retired.
    """
    text = None if note is None else words(note, kind)
    with register.writing():
        names = known(register, numbers)
        if kind == "retired":
            gone = [unit.number for unit in units(register, names) if unit.retired_at is not None]
            if gone:
                raise RegisterError(f"already retired: {', '.join(gone)}; nothing was entered", tuple(gone))
        for name in names:
            enter(register, name, kind, at, amount=amount, note=text)
        return units(register, names)


def void(register: Register, event: int, at: str, why: str) -> Event:
    """Take one event back: it stays in the history, marked, and counts no more. Raises RegisterError."""
    text = words(why, "why")
    with register.writing():
        rows = register.rows("SELECT * FROM event WHERE id = ?", event)
        if not rows or rows[0]["kind"] == "void":
            raise RegisterError(f"there is no event {event}; 'stylobate register history' shows their numbers")
        if register.rows("SELECT 1 FROM event WHERE voids = ?", event):
            raise RegisterError(f"event {event} is voided already; nothing was changed")
        register.add(
            "event", unit=rows[0]["unit"], kind="void", at=at, entered=moment(), by=who(), note=text, voids=event
        )
    return history(register, [rows[0]["unit"]], event)[0]


_UNITS = """
SELECT u.*,
    coalesce((SELECT sum(amount) FROM live WHERE unit = u.number AND kind = 'sterilised'), 0) AS cycles,
    (SELECT count(*) FROM live WHERE unit = u.number AND kind = 'torqued') AS torque_events,
    (SELECT count(*) FROM live WHERE unit = u.number AND kind = 'incident') AS incidents,
    (SELECT count(*) FROM live WHERE unit = u.number AND kind = 'measured' AND case_name IS NOT NULL) AS uses,
    (SELECT kind FROM live WHERE unit = u.number AND kind IN ('accepted', 'rejected') ORDER BY at DESC, id DESC LIMIT 1)
        AS bench,
    r.at AS retired_at, r.note AS retired_why
FROM unit AS u
LEFT JOIN live AS r ON r.id =
    (SELECT max(id) FROM live WHERE unit = u.number AND kind = 'retired')
"""


def units(register: Register, numbers: Sequence[str] | None = None, lot: str | None = None) -> list[Unit]:
    """Units as they stand, by number: those named, those of a lot, or all."""
    cases: dict[str, list[str]] = {}
    for row in register.rows(
        "SELECT unit, case_name FROM live WHERE kind = 'measured' AND case_name IS NOT NULL ORDER BY at, id"
    ):
        names = cases.setdefault(str(row["unit"]).casefold(), [])
        if row["case_name"] not in names:
            names.append(str(row["case_name"]))
    wanted = None if numbers is None else {name.casefold() for name in numbers}
    found = []
    for row in register.rows(_UNITS):
        key = str(row["number"]).casefold()
        if (wanted is None or key in wanted) and (lot is None or row["lot"] == lot):
            found.append(
                Unit(
                    row["number"],
                    Kind(
                        row["scan_body"], row["lot"], row["bought"], bool(row["single_use"]), row["max_cycles"],
                        row["wear_limit_um"],
                    ),
                    int(row["cycles"]), row["torque_events"], row["incidents"], row["uses"], row["bench"],
                    row["retired_at"], row["retired_why"], tuple(cases.get(key, ())),
                )
            )  # fmt: skip
    return sorted(found, key=lambda unit: _natural(unit.number))


def _natural(text: str) -> tuple[tuple[int, int, str], ...]:
    """Order in which 9 comes before 10."""
    return tuple((0, int(bit), "") if bit.isdigit() else (1, 0, bit.casefold()) for bit in re.findall(r"\d+|\D+", text))


def history(register: Register, numbers: Sequence[str], only: int | None = None) -> list[Event]:
    """All events of these units in the order they happened, or one of them."""
    marks = ", ".join("?" * len(numbers))
    sql = f"""SELECT e.*, EXISTS (SELECT 1 FROM event AS v WHERE v.voids = e.id) AS voided,
            m.scan_file, m.site, m.mean_um, m.rms_um, m.p95_um
        FROM event AS e LEFT JOIN measurement AS m ON m.event = e.id
        WHERE unit IN ({marks}) ORDER BY at, id"""  # noqa: S608
    return [
        Event(
            row["id"], row["unit"], row["kind"], row["at"], row["by"], row["amount"], _note(row), row["case_name"],
            bool(row["voided"]),
        )
        for row in register.rows(sql, *numbers) if only is None or row["id"] == only
    ]  # fmt: skip


def _note(row: sqlite3.Row) -> str | None:
    """What is to be read beside an event: its own note, the figures of a measurement, what it voids."""
    note: str | None = row["note"]
    if row["voids"] is not None:
        return f"event {row['voids']}: {note}"
    if row["scan_file"] is None:
        return note
    figures = f"mean {row['mean_um']:+.1f}, rms {row['rms_um']:.1f}, p95 {row['p95_um']:.1f} µm"
    return f"{f'{note}; ' if note else ''}site {row['site']} of {row['scan_file']}: {figures}"


def objections(unit: Unit, case: str | None, at: str | None = None) -> list[str]:
    """What stands against using a unit, in a case where one is named; empty where nothing does.

    at: when it was used (None: now); what it was used for before it was retired stays right.
    """
    found = []
    if unit.retired_at is not None and (at is None or unit.retired_at <= at):
        found.append(f"retired on {unit.retired_at[:10]}: {unit.retired_why}")
    others = [name for name in unit.cases if name != case]
    if unit.kind.single_use and others:
        found.append(f"for single use, and used in case {others[0]}")
    if unit.cycles_left is not None and unit.cycles_left < 0:
        found.append(f"sterilised {unit.cycles} times, {unit.kind.max_cycles} allowed")
    if unit.bench == "rejected":
        found.append("rejected on the bench")
    elif unit.bench is None:
        found.append("not yet accepted on the bench")
    return found
