"""Units as CSV, out and in: every bad row is named, and then none is entered; no cell is a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from stylobate.core.errors import RegisterError
from stylobate.core.spreadsheet import inert, lively, raw
from stylobate.register.entries import day, enter, moment, number, words
from stylobate.register.store import Register
from stylobate.register.units import Kind, Unit, insert, units

COLUMNS = (
    "number", "scan_body", "lot", "bought", "single_use", "max_cycles", "wear_limit_um", "cycles", "torque_events",
    "incidents", "bench", "retired", "why", "cases",
)  # fmt: skip
NEEDED = ("number", "scan_body")
MOST_BYTES = 16 * 2**20
MOST_COUNT = 100_000
FROM_TABLE = "from a table"


@dataclass(frozen=True)
class Row:
    """One unit as a table gives it."""

    number: str
    kind: Kind
    cycles: int
    torque_events: int
    incidents: int
    bench: str | None
    retired: str | None
    why: str | None
    cases: tuple[str, ...]


def csv_text(register: Register) -> str:
    """All units, one a row, with what their history adds up to."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for unit in units(register):
        writer.writerow([inert(cell) for cell in _cells(unit)])
    return text.getvalue()


def _cells(unit: Unit) -> list[str]:
    kind = unit.kind
    values = (
        unit.number, kind.scan_body, kind.lot, kind.bought, "yes" if kind.single_use else "no", kind.max_cycles,
        kind.wear_limit_um, unit.cycles, unit.torque_events, unit.incidents, unit.bench,
        None if unit.retired_at is None else unit.retired_at[:10], unit.retired_why, "; ".join(unit.cases),
    )  # fmt: skip
    return ["" if value is None else f"{value:g}" if isinstance(value, float) else str(value) for value in values]


def enter_table(register: Register, content: bytes) -> list[str]:
    """Enter every unit of a CSV text; returns their numbers. Raises RegisterError whose `faults` list every bad row."""
    rows, faults = _rows(content)
    with register.writing():
        taken = {str(row["number"]).casefold() for row in register.rows("SELECT number FROM unit")}
        seen: dict[str, int] = {}
        for line, row in rows:
            key = row.number.casefold()
            if key in taken:
                faults.append(f"row {line}: {row.number} is in the register already")
            elif key in seen:
                faults.append(f"row {line}: {row.number} stands in row {seen[key]} too")
            seen.setdefault(key, line)
        if faults:
            faults.sort(key=lambda fault: int(fault.split(":")[0].split()[1]))
            count = "1 fault" if len(faults) == 1 else f"{len(faults)} faults"
            raise RegisterError(
                f"{count} in the table; nothing was entered; put the rows right as listed", tuple(faults)
            )
        for _, row in rows:
            _enter(register, row)
    return [row.number for _, row in rows]


def _enter(register: Register, row: Row) -> None:
    insert(register, row.number, row.kind)
    now = moment()
    if row.cycles:
        enter(register, row.number, "sterilised", now, amount=row.cycles, note=FROM_TABLE)
    for kind, count in (("torqued", row.torque_events), ("incident", row.incidents)):
        for _ in range(count):
            enter(register, row.number, kind, now, note=FROM_TABLE)
    for case in row.cases:
        enter(register, row.number, "measured", now, case=case, note=FROM_TABLE)
    if row.bench is not None:
        enter(register, row.number, row.bench, now, note=FROM_TABLE)
    if row.retired is not None:
        enter(register, row.number, "retired", moment(row.retired), note=row.why or FROM_TABLE)


def _rows(content: bytes) -> tuple[list[tuple[int, Row]], list[str]]:
    """The rows that can be read, with their line, and the faults of the others. Raises RegisterError for the header."""
    if len(content) > MOST_BYTES:
        raise RegisterError(f"the table is larger than {MOST_BYTES >> 20} MB; split it")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise RegisterError(f"the table is not UTF-8 text (byte {error.start}); save it as CSV UTF-8") from error
    head = text.split("\n", 1)[0]
    separator = ";" if ";" in head and "," not in head else ","
    rows: list[tuple[int, Row]] = []
    faults: list[str] = []
    try:
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
        names = [name.strip().casefold() for name in next(reader, [])]
        _require_header(names)
        for cells in reader:
            if not any(cell.strip() for cell in cells):
                continue
            found, wrong = _row(names, cells)
            if found is not None:
                rows.append((reader.line_num, found))
            faults += [f"row {reader.line_num}: {fault}" for fault in wrong]
    except csv.Error as error:
        raise RegisterError(f"the table is no CSV near line {reader.line_num}: {error}; nothing was entered") from error
    if not rows and not faults:
        raise RegisterError("the table has no rows; nothing was entered")
    return rows, faults


def _require_header(names: list[str]) -> None:
    unknown = [name for name in names if name not in COLUMNS]
    missing = [name for name in NEEDED if name not in names]
    if unknown or missing or len(set(names)) < len(names):
        what = (
            f"unknown columns: {', '.join(unknown)[:200]}" if unknown else
            f"missing columns: {', '.join(missing)}" if missing else "a column stands there twice"
        )  # fmt: skip
        raise RegisterError(f"the table's first row: {what}; known are: {', '.join(COLUMNS)}; nothing was entered")


def _row(names: list[str], cells: list[str]) -> tuple[Row | None, list[str]]:
    if len(cells) != len(names):
        return None, [f"has {len(cells)} cells, the first row has {len(names)}"]
    values = {name: cell.strip() for name, cell in zip(names, cells, strict=True)}
    faults = []
    read: dict[str, object] = {}
    for name, value in values.items():
        if lively(value):
            faults.append(f"{name}: '{value[:30]}' would run as a formula")
            continue
        try:
            read[name] = _READ[name](raw(value)) if value else None
        except RegisterError as error:
            faults.append(f"{name}: {error}")
    faults += [f"{name} is missing" for name in NEEDED if not values[name]]
    if read.get("why") and not read.get("retired"):
        faults.append("why: stands there without a date in retired")
    return (None, faults) if faults else (_made(read), [])


def _made(read: Mapping[str, object]) -> Row:
    def of(name: str) -> str | None:
        value = read.get(name)
        return None if value is None else str(value)

    def count(name: str) -> int:
        value = read.get(name)
        return value if isinstance(value, int) else 0

    limit, most, cases = read.get("wear_limit_um"), read.get("max_cycles"), read.get("cases")
    kind = Kind(
        of("scan_body") or "", of("lot"), of("bought"), bool(read.get("single_use")),
        most if isinstance(most, int) else None, limit if isinstance(limit, float) else None,
    )  # fmt: skip
    return Row(
        of("number") or "", kind, count("cycles"), count("torque_events"), count("incidents"), of("bench"),
        of("retired"), of("why"), cases if isinstance(cases, tuple) else (),
    )  # fmt: skip


def _whole(least: int) -> Callable[[str], int]:
    def read(text: str) -> int:
        if not text.isascii() or not text.isdigit() or not least <= int(text[:12]) <= MOST_COUNT:
            raise RegisterError(f"'{text[:30]}' is not a whole number from {least} to {MOST_COUNT}")
        return int(text)

    return read


def _limit(text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = float("nan")
    if not 0.0 < value < 1e6:
        raise RegisterError(f"'{text[:30]}' is not a number of µm above 0")
    return value


def _yes(text: str) -> bool:
    if text.casefold() not in ("yes", "no"):
        raise RegisterError(f"'{text[:30]}' is neither yes nor no")
    return text.casefold() == "yes"


def _bench(text: str) -> str:
    if text not in ("accepted", "rejected"):
        raise RegisterError(f"'{text[:30]}' is neither accepted nor rejected")
    return text


def _past(text: str) -> str:
    moment(day(text))
    return text


def _text(text: str) -> str:
    return words(text, "this cell")


def _cases(text: str) -> tuple[str, ...]:
    return tuple(_text(name) for name in text.split(";") if name.strip())


_READ: dict[str, Callable[[str], object]] = {
    "number": number, "scan_body": _text, "lot": _text, "bought": day, "single_use": _yes, "max_cycles": _whole(1),
    "wear_limit_um": _limit, "cycles": _whole(0), "torque_events": _whole(0), "incidents": _whole(0), "bench": _bench,
    "retired": _past, "why": _text, "cases": _cases,
}  # fmt: skip
