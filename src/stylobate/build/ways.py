"""Every chain of parts that a connection can take, where its uppermost connection comes to be, how far it may lean."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.build.model import Part
from stylobate.build.request import Step
from stylobate.core.errors import UsageError
from stylobate.core.rigid import turn_z
from stylobate.core.types import FloatArray
from stylobate.parts.model import (
    Analog,
    Connection,
    Implant,
    MultiUnitAbutment,
    PartsFolder,
    ScanBody,
    TitaniumBase,
)


@dataclass(frozen=True)
class Way:
    """A chain on a connection, wherever that stands. steps: part and turn of each, from below.

    connection_from_upper: (4, 4), the uppermost connection in the frame of the lowest. bent: whether any part leans, so
    that the turn of what is below matters.
    """

    steps: tuple[tuple[Part, int], ...]
    connection_from_upper: FloatArray
    bent: bool = False

    @property
    def tilt_max_deg(self) -> float:
        """How far the channel may lean from the axis."""
        top = self.steps[-1][0] if self.steps else None
        return top.channel_tilt_max_deg if isinstance(top, TitaniumBase) else 0.0

    @property
    def names(self) -> tuple[tuple[str, int], ...]:
        """Part id and turn of each."""
        return tuple((part.id, turn) for part, turn in self.steps)


def turned(turn: int, index_order: int) -> FloatArray:
    """(4, 4): RotateZ(turn · 360° / index_order); no turn where the connection is not indexed."""
    return turn_z(2.0 * math.pi * turn / index_order if index_order else 0.0)


def ways_on(folder: PartsFolder, connection: str) -> tuple[Way, ...]:
    """Every chain that can stand on `connection`, in the order of the folder.

    Turns are tried wherever they change the channel: below any part that leans. A part whose turn changes nothing is
    there once, at turn 0.
    """
    found = [Way(((base, 0),), np.eye(4)) for base in folder.titanium_bases if base.seats_on == connection]
    order = folder.connection(connection).index_order
    for abutment in folder.multi_unit_abutments:
        if abutment.seats_on != connection:
            continue
        for above in (Way((), np.eye(4)), *ways_on(folder, abutment.provides)):
            found += _stacked(abutment, order, above, None)
    return tuple(found)


def _stacked(abutment: MultiUnitAbutment, order: int, above: Way, turn: int | None) -> list[Way]:
    """`abutment` under `above`, at one turn or at all that matter."""
    bent = above.bent or abutment.angle_deg > 0.0
    turns: Sequence[int] = [turn] if turn is not None else range(order) if bent and order else [0]
    up = abutment.lower_from_upper @ above.connection_from_upper
    return [Way(((abutment, k), *above.steps), turned(k, order) @ up, bent) for k in turns]


def ways_of(folder: PartsFolder, connection: str, steps: Sequence[Step], said: str) -> tuple[Way, ...]:
    """The chain that was asked for, at each turn that is left open and matters. Raises UsageError: names the link."""
    parts = _joined(folder, connection, steps, said)
    below = [folder.connection(part.seats_on) for part in parts]
    for step, seat in zip(steps, below, strict=True):
        _require_turn(step, seat, said)
    found = [Way((), np.eye(4))]
    for part, step, seat in reversed(list(zip(parts, steps, below, strict=True))):
        stacked = []
        for above in found:
            if isinstance(part, MultiUnitAbutment):
                stacked += _stacked(part, seat.index_order, above, step.turn)
            else:
                stacked.append(Way(((part, step.turn or 0),), np.eye(4)))
        found = stacked
    return tuple(found)


def _joined(folder: PartsFolder, connection: str, steps: Sequence[Step], said: str) -> list[Part]:
    """The parts of a chain, each seating on what the one below provides."""
    parts: list[Part] = []
    offered, giver = connection, "the site"
    for step in steps:
        part = placeable(folder, step.part, said)
        if parts and isinstance(parts[-1], TitaniumBase):
            raise UsageError(f"{said}: nothing seats on {parts[-1].id}, which is a titanium base; leave out {part.id}.")
        if part.seats_on != offered:
            raise UsageError(
                f"{said}: {part.id} seats on '{part.seats_on}', but {giver} offers '{offered}'"
                f"{_fitting(folder, offered)}."
            )
        parts.append(part)
        if isinstance(part, MultiUnitAbutment):
            offered, giver = part.provides, part.id
    return parts


def _fitting(folder: PartsFolder, connection: str) -> str:
    ids = [part.id for part in parts_to_place(folder) if part.seats_on == connection]
    return f"; on it fit {', '.join(ids)}" if ids else "; no part of the folder fits on it"


def parts_to_place(folder: PartsFolder) -> tuple[Part, ...]:
    """Abutments, then bases, in the order of the folder."""
    return (*folder.multi_unit_abutments, *folder.titanium_bases)


def placeable(folder: PartsFolder, identifier: str, said: str) -> Part:
    """The abutment or base of that id. Raises UsageError that says what the id is instead, or what there is."""
    parts = parts_to_place(folder)
    for part in parts:
        if part.id == identifier:
            return _with_surface(part, said)
    others: dict[str, Sequence[Implant | ScanBody | Analog | Connection]] = {
        "an implant, which has no surface to place": folder.implants,
        "a scan body, which stays out of the restoration": folder.scan_bodies,
        "an analog, which stands below the platform": folder.analogs,
        "a connection, not a part": folder.connections,
    }
    for what, entries in others.items():
        if any(entry.id == identifier for entry in entries):
            raise UsageError(f"{said}: {identifier} is {what}; name an abutment or a titanium base.")
    known = ", ".join(part.id for part in parts) or "none"
    raise UsageError(f"{said}: the parts folder has no part '{identifier}'; to place it has {known}.")


def _with_surface(part: Part, said: str) -> Part:
    if not len(part.surface.faces):
        raise UsageError(f"{said}: {part.id} has no surface; give it one in parts.toml.")
    return part


def _require_turn(step: Step, seat: Connection, said: str) -> None:
    """Raises UsageError where the connection below has no such position."""
    if step.turn is None or step.turn < max(seat.index_order, 1):
        return
    if seat.index_order == 0:
        raise UsageError(
            f"{said}: '{seat.id}' is not indexed, so {step.part} has no turn {step.turn}; leave out the turn."
        )
    raise UsageError(
        f"{said}: {step.part}@{step.turn}: '{seat.id}' has {seat.index_order} positions; "
        f"write a turn from 0 to {seat.index_order - 1}."
    )
