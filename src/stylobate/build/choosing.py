"""Which of the possible chains is best at a site: angles of their channels to the aim, and what to say of each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.build.cone import angles_between, unit
from stylobate.build.model import Option, Part
from stylobate.build.ways import Way
from stylobate.core.types import FloatArray
from stylobate.parts.model import Connection, MultiUnitAbutment, PartsFolder, TitaniumBase

DIGITS = 9
"""Angles are given to 1e-9 degrees, so that what is equal but for rounding ranks as equal."""


@dataclass(frozen=True)
class Ranking:
    """Ways at one site, best first. axes: (n, 3) unit, of their uppermost connections in scan coordinates.

    angle_deg: (n,) from channel to aim. lean_deg: (n,) from axis to channel.
    """

    ways: tuple[Way, ...]
    axes: FloatArray
    angle_deg: FloatArray
    lean_deg: FloatArray


def ranked(ways: Sequence[Way], scan_from_connection: FloatArray, aim: FloatArray) -> Ranking:
    """Best first: by the channel's angle to the aim, then by the number of parts, then by how far it leans.

    The channel runs along the axis of the uppermost connection, or leans from it towards the aim by up to the base's
    greatest tilt: angle = max(0, ∠(axis, aim) − tilt) (method/place, eq. 3).
    """
    axes = np.array([way.connection_from_upper[:3, 2] for way in ways]).reshape(-1, 3) @ scan_from_connection[:3, :3].T
    off = np.degrees(angles_between(axes, aim))
    lean = np.minimum(off, np.array([way.tilt_max_deg for way in ways]))
    angle, lean = np.round(off - lean, DIGITS), np.round(lean, DIGITS)
    order = np.lexsort(np.array([np.arange(len(ways)), lean, [len(way.steps) for way in ways], angle]))
    return Ranking(tuple(ways[k] for k in order), axes[order], angle[order], lean[order])


def leaning(axis: FloatArray, aim: FloatArray, lean_deg: float) -> FloatArray:
    """(3,) unit: `axis` turned towards `aim` by `lean_deg`, at most onto it."""
    across = aim - (aim @ axis) * axis
    length = float(np.linalg.norm(across))
    if length < 1e-12:
        return axis
    lean = min(np.radians(lean_deg), float(angles_between(axis, aim)))
    return unit(np.cos(lean) * axis + np.sin(lean) * across / length)


def seat_half_angle_deg(way: Way) -> float | None:
    """Half-angle of the seat that a rigid frame over this chain has to slide onto; None where it is not stated.

    An abutment stays in the mouth, so the frame slides onto its seat; a base that engages brings its own cone into the
    connection; one that does not, onto the abutment's seat where it stands on one.
    """
    top: Part | None = way.steps[-1][0] if way.steps else None
    below = way.steps[-2][0] if len(way.steps) > 1 else None
    if isinstance(top, TitaniumBase) and not top.engaging and isinstance(below, MultiUnitAbutment):
        return below.cone_half_angle_deg
    return None if top is None else top.cone_half_angle_deg


def options_of(ranking: Ranking, folder: PartsFolder, several: bool, tissue_mm: float | None) -> tuple[Option, ...]:
    """The ranking as options with notes. several: whether a rigid frame joins the sites. tissue_mm: greatest height."""
    connections = {connection.id: connection for connection in folder.connections}
    notes: dict[tuple[str, ...], tuple[str, ...]] = {}
    options = []
    for k, way in enumerate(ranking.ways):
        key = tuple(part.id for part, _ in way.steps)
        if key not in notes:
            notes[key] = _notes(way, connections, several, tissue_mm)
        lean = float(ranking.lean_deg[k])
        leans = (f"the channel leans {lean:.1f}° from the axis",) if lean > 0.05 else ()
        options.append(Option(way.names, float(ranking.angle_deg[k]), lean, leans + notes[key]))
    return tuple(options)


def _notes(
    way: Way, connections: dict[str, Connection], several: bool, tissue_mm: float | None
) -> tuple[str, ...]:  # fmt: skip
    """What holds for a chain at every turn."""
    notes = []
    for part, _ in way.steps:
        if isinstance(part, MultiUnitAbutment) and part.angle_deg > 0.0 and connections[part.seats_on].index_order == 0:
            notes.append(f"'{part.seats_on}' is not indexed: which way {part.id} leans is set by hand")
    top = way.steps[-1][0]
    if isinstance(top, MultiUnitAbutment):
        notes.append(f"offers '{top.provides}', on which nothing stands yet")
    elif not top.engaging and not several:
        notes.append(f"{top.id} is free to turn: not for a single crown")
    height = collar_height(way)
    if tissue_mm is not None and height < tissue_mm:
        notes.append(f"the collar ends {tissue_mm - height:.1f} mm below the highest tissue")
    return tuple(notes)


def collar_height(way: Way) -> float:
    """Height above the lowest platform, mm along its axis, at which the chain leaves the tissue."""
    height = float(way.connection_from_upper[2, 3])
    top = way.steps[-1][0] if way.steps else None
    return height + (
        top.gingival_height * float(way.connection_from_upper[2, 2]) if isinstance(top, TitaniumBase) else 0.0
    )
