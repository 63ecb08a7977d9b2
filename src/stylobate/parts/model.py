"""The parts folder as the other stages see it: frozen values, surfaces loaded."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray


@dataclass(frozen=True)
class Connection:
    """What a part seats on. index_order 0: the turn means nothing. play_deg: end to end, None if not stated."""

    id: str
    kind: str
    index_order: int
    platform_diameter: float
    play_deg: float | None = None


@dataclass(frozen=True)
class Implant:
    """An implant of the folder: which connection it carries, and its length in mm."""

    id: str
    connection: str
    length: float


@dataclass(frozen=True)
class ScanBody:
    """A post of known shape, in the frame of the connection on which it seats.

    surface: the whole CAD surface. region: the part of it that a scan is fitted to (the scan region), a surface of
    its own in the same frame; it is `surface` itself where the whole body is the scan region.
    made_u_um: standard uncertainty of the made part's height and of its diameter, None if not stated.
    sha256: of the surfaces, for caches.
    """

    id: str
    seats_on: str
    surface: Surface
    region: Surface
    sha256: str
    material: str = ""
    single_use: bool = False
    max_cycles: int | None = None
    torque_ncm: tuple[float, float] | None = None
    made_u_um: float | None = None


@dataclass(frozen=True)
class MultiUnitAbutment:
    """An abutment that stays in the mouth and carries a connection of its own."""

    id: str
    seats_on: str
    provides: str
    angle_deg: float
    collar_height: float
    surface: Surface
    sha256: str
    cone_half_angle_deg: float | None = None
    torque_ncm: tuple[float, float] | None = None

    @property
    def lower_from_upper(self) -> FloatArray:
        """(4, 4): Translate(0, 0, collar_height) · RotateY(angle_deg), so that it leans towards +x of the lower one."""
        lean = rigid.rotation_exp(np.array([0.0, np.radians(self.angle_deg), 0.0]))
        return rigid.pose(lean, np.array([0.0, 0.0, self.collar_height]))


@dataclass(frozen=True)
class TitaniumBase:
    """A base to which the restoration is bonded; the screw channel may lean by up to channel_tilt_max_deg."""

    id: str
    seats_on: str
    gingival_height: float
    height: float
    engaging: bool
    surface: Surface
    sha256: str
    channel_tilt_max_deg: float = 0.0
    cone_half_angle_deg: float | None = None
    torque_ncm: tuple[float, float] | None = None


@dataclass(frozen=True)
class Analog:
    """What stands for the implant in a model."""

    id: str
    connection: str
    surface: Surface
    sha256: str


@dataclass(frozen=True)
class PartsFolder:
    """A checked parts folder.

    sha256: of parts.toml and every file it refers to, the same for the folder and for a zip of it.
    look_alikes: groups of scan body ids that no scan can tell apart although they put the connection elsewhere.
    """

    name: str
    revision: str
    licence: str
    sha256: str
    connections: tuple[Connection, ...]
    scan_bodies: tuple[ScanBody, ...]
    look_alikes: tuple[tuple[str, ...], ...] = ()
    implants: tuple[Implant, ...] = ()
    multi_unit_abutments: tuple[MultiUnitAbutment, ...] = ()
    titanium_bases: tuple[TitaniumBase, ...] = ()
    analogs: tuple[Analog, ...] = ()

    def connection(self, identifier: str) -> Connection:
        """The connection of that id. Raises KeyError."""
        for connection in self.connections:
            if connection.id == identifier:
                return connection
        raise KeyError(identifier)

    def scan_body(self, identifier: str) -> ScanBody:
        """The scan body of that id. Raises KeyError."""
        for body in self.scan_bodies:
            if body.id == identifier:
                return body
        raise KeyError(identifier)
