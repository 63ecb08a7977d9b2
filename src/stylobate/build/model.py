"""Placed parts as frozen values: what `place` returns and what place.json holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from stylobate.build.footing import Footing
from stylobate.core.result import Bounds, PartsInfo
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.joining import Join
from stylobate.parts.model import Connection, MultiUnitAbutment, TitaniumBase

Part = MultiUnitAbutment | TitaniumBase


@dataclass(frozen=True)
class Link:
    """One part of a chain where it stands. scan_from_part: (4, 4), that of the connection below it, turned."""

    part: Part
    turn: int
    scan_from_part: FloatArray

    def surface(self) -> Surface:
        """Its CAD surface in scan coordinates."""
        return self.part.surface.moved(self.scan_from_part)


@dataclass(frozen=True)
class Upper:
    """The uppermost connection of a site: where it is and how well that is known.

    covariance: (6, 6) of ξ there, mm and radians: that of the measured connection carried up, and the play of each
    indexed joint in between. u95: bounds from it.
    """

    connection: Connection
    scan_from_connection: FloatArray
    covariance: FloatArray
    u95: Bounds


@dataclass(frozen=True)
class Exit:
    """Where a channel comes out of the planned teeth.

    point: (3,) mm, None where it meets none. from_middle_mm: how far that is from the middle of the tooth's biting
    surface. wall_mm: least wall beside the channel, negative where it breaks through; None where it was not found.
    """

    point: FloatArray | None
    from_middle_mm: float | None
    wall_mm: float | None


@dataclass(frozen=True)
class Channel:
    """A screw channel. origin: (3,) platform centre of the uppermost connection; direction: (3,) unit; scan frame.

    lean_deg: how far it leans from the axis. u95_deg: 95 % bound of its tilt.
    """

    origin: FloatArray
    direction: FloatArray
    angle_to_aim_deg: float
    lean_deg: float
    u95_deg: float
    exit: Exit | None = None


@dataclass(frozen=True)
class Option:
    """A chain that can be placed. chain: part and turn of each, from below. lean_deg: of the channel from the axis."""

    chain: tuple[tuple[str, int], ...]
    angle_to_aim_deg: float
    lean_deg: float
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Tissue:
    """Height of the tissue over the platform's rim, mm along the axis, in eight directions 45° apart from +x.

    None where the scan shows none there.
    """

    heights_mm: tuple[float | None, ...]

    @property
    def least(self) -> float | None:
        """The lowest of them."""
        return min((h for h in self.heights_mm if h is not None), default=None)

    @property
    def greatest(self) -> float | None:
        """The highest of them."""
        return max((h for h in self.heights_mm if h is not None), default=None)


@dataclass(frozen=True)
class Below:
    """What an abutment that stays in the mouth stands on, as far as the abutment and mark named by the user say.

    scan_from_implant: (4, 4), None where the abutment leans and nothing says which way.
    """

    abutment: MultiUnitAbutment
    turn: int | None
    scan_from_implant: FloatArray | None
    note: str = ""


@dataclass(frozen=True)
class PlacedSite:
    """One site with its parts. chain is empty where nothing can stand on the connection.

    chosen: the chain was asked for; else it is the best of the options.
    """

    footing: Footing
    aim: FloatArray
    chain: tuple[Link, ...]
    upper: Upper
    channel: Channel
    options: tuple[Option, ...]
    below: Below | None = None
    tissue: Tissue | None = None
    room_mm: float | None = None
    notes: tuple[str, ...] = ()
    chosen: bool = False

    @property
    def site(self) -> str:
        """Its name."""
        return self.footing.site.site


@dataclass(frozen=True)
class Insertion:
    """Can a rigid frame go onto all uppermost connections along one path?

    spread_deg: radius of the smallest cone that holds their axes; axis: its middle. allowed_deg: half-angle of the seat
    at each site, None where the parts do not state it. one_path: None where that leaves it open. direction and
    margin_deg: the best path and how far inside the narrowest seat it runs. u95_deg: bound of spread and margin alike.
    """

    spread_deg: float
    axis: FloatArray
    u95_deg: float
    allowed_deg: tuple[float | None, ...]
    one_path: bool | None
    direction: FloatArray | None
    margin_deg: float | None
    because: str


@dataclass(frozen=True)
class Joint:
    """Options for all sites at once that share one path of insertion. chains: by site, in order."""

    chains: tuple[tuple[tuple[str, int], ...], ...]
    worst_angle_to_aim_deg: float
    mean_angle_to_aim_deg: float
    path: FloatArray


@dataclass(frozen=True)
class Nearness:
    """Two parts of different sites that come near each other. clearance_mm: negative where they overlap."""

    sites: tuple[str, str]
    parts: tuple[str, str]
    clearance_mm: float


@dataclass(frozen=True)
class Placement:
    """Parts placed on the sites of one result."""

    result: str
    scan_sha256: str
    parts: PartsInfo
    work: str
    sites: tuple[PlacedSite, ...]
    insertion: Insertion
    joint: tuple[Joint, ...]
    near: tuple[Nearness, ...]
    warnings: tuple[str, ...] = ()
    joins: Mapping[str, Join] = field(default_factory=dict)
