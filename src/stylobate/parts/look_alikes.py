"""Scan bodies that no scan can tell apart: one's scan region, moved as a rigid body, lies on the other's.

Compared is what a scan can show: the regions above the platform, and of two bodies with one top and different
lengths the part that both have, as the rest may lie under the gingiva. It matters only where the two readings
differ in what they say: another connection, or another place of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from stylobate.core.rigid import turn_z
from stylobate.core.types import FloatArray
from stylobate.parts.coincide import Outline, coinciding, same_place
from stylobate.parts.model import ScanBody
from stylobate.parts.notes import Note, Topic


@dataclass(frozen=True)
class LookAlike:
    """Two bodies that look alike. places: their entries. what: how their readings differ; "" where they do not."""

    bodies: tuple[str, str]
    places: tuple[str, str]
    what: str


def find_look_alikes(bodies: Mapping[str, ScanBody], index_order: Mapping[str, int]) -> list[LookAlike]:
    """All pairs of scan bodies that look alike. bodies: by their entry in parts.toml; index_order: by connection."""
    outlines = {place: Outline.of(body.region) for place, body in bodies.items()}
    found = []
    for (place_a, a), (place_b, b) in combinations(bodies.items(), 2):
        one, other = outlines[place_a], outlines[place_b]
        if one is None or other is None:
            continue
        same_connection = a.seats_on == b.seats_on
        turns = _equal_turns(index_order.get(b.seats_on, 0)) if same_connection else [np.eye(4)]
        motion = coinciding(one, other, turns)
        if motion is None:
            continue
        if not same_connection:
            what = f'they seat on different connections ("{a.seats_on}", "{b.seats_on}")'
        elif same_place(motion, index_order.get(b.seats_on, 0)):
            what = ""
        else:
            what = _difference(motion)
        found.append(LookAlike((a.id, b.id), (place_a, place_b), what))
    return found


def _equal_turns(order: int) -> list[FloatArray]:
    return [turn_z(2.0 * np.pi * k / max(order, 1)) for k in range(max(order, 1))]


def _difference(motion: FloatArray) -> str:
    shift = motion[:3, 3]
    words = []
    if np.linalg.norm(shift) > 0.02:
        words.append(f"{np.linalg.norm(shift):.3f} mm apart")
    turn = np.degrees(np.arctan2(motion[1, 0], motion[0, 0]))
    lean = np.degrees(np.arccos(np.clip(motion[2, 2], -1.0, 1.0)))
    if lean > 0.2:
        words.append(f"leaning by {lean:.1f}°")
    elif abs(turn) > 0.5:
        words.append(f"turned by {abs(turn):.1f}°")
    return f"they put the connection in different places ({', '.join(words)})"


def groups_of(pairs: list[LookAlike]) -> tuple[tuple[str, ...], ...]:
    """Groups of ids whose readings differ, in the order in which they were found."""
    groups: list[list[str]] = []
    for pair in pairs:
        if not pair.what:
            continue
        touching = [group for group in groups if set(group) & set(pair.bodies)]
        merged = list(dict.fromkeys([name for group in touching for name in group] + list(pair.bodies)))
        groups = [group for group in groups if group not in touching] + [merged]
    return tuple(tuple(group) for group in groups)


def notes_of(pairs: list[LookAlike]) -> list[Note]:
    """A note for each pair; a warning where both say the same of the connection."""
    notes = []
    for pair in pairs:
        places = " and ".join(pair.places)
        if pair.what:
            what = f"no scan can tell these apart, yet {pair.what}"
            remedy = "say which one is in use with --scan-body, or keep only one of them in the folder"
            notes.append(Note(Topic.LOOK_ALIKE, "parts.toml", places, what, remedy))
        else:
            what = "the same shape on the same connection: a scan cannot tell which of them it shows"
            notes.append(Note(Topic.WARNING, "parts.toml", places, what, "name the one in use with --scan-body"))
    return notes
