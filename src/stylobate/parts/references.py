"""What parts.toml says across its entries: ids that stand twice, names that lead nowhere, abutments in a circle."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from stylobate.parts.notes import Note, fault, warning
from stylobate.parts.source import PARTS_TOML
from stylobate.parts.wording import entry_key

if TYPE_CHECKING:
    from stylobate.parts.schema import PartsTable, Table

REFERENCES = {
    "implant": ("connection",),
    "scan_body": ("seats_on",),
    "multi_unit_abutment": ("seats_on", "provides"),
    "titanium_base": ("seats_on",),
    "analog": ("connection",),
}
# Parts that are named without their kind when they are placed, so that one id must mean one part.
PLACED = ("multi_unit_abutment", "titanium_base")


def entries(table: PartsTable) -> Iterator[tuple[str, int, Table]]:
    """Every entry with its kind and its index from 0."""
    for kind in ("connection", *REFERENCES):
        for index, entry in enumerate(getattr(table, kind)):
            yield kind, index, entry


def surfaces_of(table: PartsTable) -> list[str]:
    """Names of all files that parts.toml refers to."""
    names = [str(entry.surface) for _, _, entry in entries(table) if hasattr(entry, "surface")]
    regions = [entry.scan_region for entry in table.scan_body if not isinstance(entry.scan_region, str)]
    return names + [str(region.surface) for region in regions if hasattr(region, "surface")]


REPEATS = {"external hex": 6, "internal hex": 6, "trilobe": 3}
"""How often the outline of a kind of connection repeats round its axis."""


def check_references(table: PartsTable) -> list[Note]:
    """Faults and warnings over the whole of parts.toml."""
    known = [connection.id for connection in table.connection]
    notes = [*_twice(table)]
    for kind, index, entry in entries(table):
        for key in REFERENCES.get(kind, ()):
            notes += _unresolved(entry_key(kind, index, getattr(entry, "id", ""), key), getattr(entry, key), known)
    notes += _circles(table)
    notes += _unused(table)
    notes += _odd_marks(table)
    if not table.scan_body:
        notes.append(warning(PARTS_TOML, "", "no scan body", "add [[scan_body]] to measure with this folder"))
    return notes


def _twice(table: PartsTable) -> Iterator[Note]:
    seen: dict[tuple[str, str], str] = {}
    for kind, index, entry in entries(table):
        identifier = str(getattr(entry, "id", ""))
        place = entry_key(kind, index, identifier, "id")
        space = "placed" if kind in PLACED else kind
        first = seen.setdefault((space, identifier), place)
        if first != place:
            yield fault(PARTS_TOML, place, f"the id stands already at {first}", "give each its own id")


def _unresolved(place: str, name: str, known: Sequence[str]) -> list[Note]:
    if name in known:
        return []
    close = difflib.get_close_matches(name, known, n=1)
    remedy = f'did you mean "{close[0]}"?' if close else f"write one of: {', '.join(known)}, or add the connection"
    return [fault(PARTS_TOML, place, f'no connection has the id "{name}"', remedy)]


def _circles(table: PartsTable) -> Iterator[Note]:
    """Abutments that lead back to where they seat, so that a chain of parts would have no end."""
    above: dict[str, set[str]] = {}
    for abutment in table.multi_unit_abutment:
        above.setdefault(abutment.seats_on, set()).add(abutment.provides)
    for index, abutment in enumerate(table.multi_unit_abutment):
        reached, to_see = set[str](), [abutment.provides]
        while to_see:
            connection = to_see.pop()
            if connection not in reached:
                reached.add(connection)
                to_see += above.get(connection, ())
        if abutment.seats_on in reached:
            place = entry_key("multi_unit_abutment", index, abutment.id, "provides")
            what = f'"{abutment.provides}" leads back to "{abutment.seats_on}", on which it seats'
            yield fault(PARTS_TOML, place, what, "give the upper side a connection of its own")


def _odd_marks(table: PartsTable) -> Iterator[Note]:
    """Connections whose index_order does not go with how often their kind repeats round the axis."""
    for index, connection in enumerate(table.connection):
        repeats, order = REPEATS.get(connection.kind, 0), connection.index_order
        if repeats and order and order % repeats and repeats % order:
            place = entry_key("connection", index, connection.id, "index_order")
            what = f"{order} equal positions do not go with kind {connection.kind}, which repeats {repeats} times round"
            yield warning(PARTS_TOML, place, what, "check both: a wrong number turns every part placed on it")


def _unused(table: PartsTable) -> Iterator[Note]:
    used = {getattr(entry, key) for kind, _, entry in entries(table) for key in REFERENCES.get(kind, ())}
    for index, connection in enumerate(table.connection):
        if connection.id not in used:
            place = entry_key("connection", index, connection.id)
            yield warning(PARTS_TOML, place, "no part refers to it", "remove it, or check the ids that parts refer to")
