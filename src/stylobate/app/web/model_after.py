"""What follows from a result, as the page is told of it: placed parts, the frame, the scan before."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class StepView:
    """A part of a chain and the index position to which it is turned."""

    part: str
    turn: int


@dataclass(frozen=True)
class LinkView:
    """A placed part. scan_from_part: 16 numbers, row by row."""

    part: str
    turn: int
    scan_from_part: tuple[float, ...]


@dataclass(frozen=True)
class OptionView:
    """A chain that can be placed, and what there is to know of it."""

    chain: tuple[StepView, ...]
    angle_to_aim_deg: float
    notes: tuple[str, ...]


@dataclass(frozen=True)
class PlacedView:
    """The parts of a site. chosen: by a person, else the best of the options, which stand best first.

    origin, direction: of the screw channel, scan coordinates. tissue_…, room_mm: null where no such scan is at hand.
    """

    site: str
    chain: tuple[LinkView, ...]
    chosen: bool
    origin: tuple[float, float, float]
    direction: tuple[float, float, float]
    angle_to_aim_deg: float
    options: tuple[OptionView, ...]
    tissue_least_mm: float | None
    tissue_greatest_mm: float | None
    room_mm: float | None
    notes: tuple[str, ...]


@dataclass(frozen=True)
class PlacementView:
    """Parts on the sites that may be built on. surfaces: keys of their CAD surfaces, by the part's id.

    path, one_path: whether a rigid frame can go onto all of them along one path, null where that is open, and why.
    refused: why there is none, or which scan was left out; "" where nothing was.
    """

    sites: tuple[PlacedView, ...]
    surfaces: dict[str, str]
    path: str
    one_path: bool | None
    warnings: tuple[str, ...]
    refused: str


@dataclass(frozen=True)
class FrameSiteView:
    """A site under the frame: 95 % of draws lie below gap and side; share_worst: in which it is the worst (0 to 1)."""

    site: str
    gap_p95_um: float | None
    side_p95_um: float | None
    share_worst: float | None


@dataclass(frozen=True)
class RepeatView:
    """What a second scan of one site would change."""

    site: str
    probability_within_limits: float
    worst_gap_p95_um: float
    worst_side_p95_um: float


@dataclass(frozen=True)
class FrameView:
    """How a rigid frame made to the result would rest. repeat: most helpful first. refused: why nothing is foretold."""

    limit_um: float
    side_limit_um: float
    sites: tuple[FrameSiteView, ...]
    worst_gap_p95_um: float | None
    worst_side_p95_um: float | None
    probability_within_limits: float | None
    repeat: tuple[RepeatView, ...]
    counted: tuple[str, ...]
    notes: tuple[str, ...]
    refused: str


@dataclass(frozen=True)
class MovedView:
    """A site that stands otherwise to the others than in the scan before."""

    site: str
    side_um: float
    height_um: float
    u95_um: float
    turn_deg: float | None
    p: float


@dataclass(frozen=True)
class ComparedView:
    """This scan and the one before it. common: sites that both show; tried: how many of them could be named.

    findable_um: the height that would be found at every such site 95 times in 100, null where none would.
    farthest_um: the largest change of a distance between two common sites. refused: why they cannot be compared.
    """

    before: str
    common: int
    tried: int
    moved: tuple[MovedView, ...]
    findable_um: float | None
    farthest_um: float | None
    refused: str
