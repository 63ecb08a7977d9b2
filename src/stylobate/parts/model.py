"""The parts folder as the other stages see it: frozen values, surfaces loaded."""

from __future__ import annotations

from dataclasses import dataclass

from stylobate.core.surface import Surface


@dataclass(frozen=True)
class Connection:
    """What a part seats on. index_order 0: the turn means nothing. play_deg: end to end, None if not stated."""

    id: str
    kind: str
    index_order: int
    platform_diameter: float
    play_deg: float | None = None


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
class PartsFolder:
    """A checked parts folder. `connection_of` tells on which connection a scan body seats."""

    name: str
    revision: str
    licence: str
    sha256: str
    connections: tuple[Connection, ...]
    scan_bodies: tuple[ScanBody, ...]
    look_alikes: tuple[tuple[str, ...], ...] = ()

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
