"""How a frame would rest, as frozen values. Lengths µm where the name says so."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class SeatSite:
    """Gap and side at one site; medians with p95 over draws, or single values with p95 None.

    turn_deg: with `on`, how far the seat is turned from the nearest equal index mark; None where nothing is indexed
    or the turn is not known.
    share_worst: share of the draws in which this site is the one nearest to, or farthest beyond, its limits.
    """

    site: str
    gap_um: float
    side_um: float
    gap_p95_um: float | None = None
    side_p95_um: float | None = None
    share_worst: float | None = None
    turn_deg: float | None = None


@dataclass(frozen=True)
class Worst:
    """Largest gap and side of all sites; medians with p95 over draws, or single values with p95 None."""

    gap_um: float
    side_um: float
    gap_p95_um: float | None = None
    side_p95_um: float | None = None


@dataclass(frozen=True)
class Probability:
    """A share of draws, and the 95 % interval that their number leaves (Clopper & Pearson 1934)."""

    value: float
    low: float
    high: float


@dataclass(frozen=True)
class OneScrew:
    """Gaps (µm, by site) with only the screw of `tight` tightened; p95 over draws, None without draws."""

    tight: str
    gaps_um: dict[str, float]
    gaps_p95_um: dict[str, float] | None = None


@dataclass(frozen=True)
class Without:
    """What would be left if one site were not there: shows which site stands in the way."""

    site: str
    worst_gap_um: float
    worst_side_um: float


@dataclass(frozen=True)
class Repeat:
    """What a second scan of one site, as good as the first, would bring.

    share: of the mean square of the worst misfit that is this site's scan, by what halving its variance takes away.
    """

    site: str
    share: float
    worst_gap_p95_um: float
    worst_side_p95_um: float
    probability_within_limits: float


@dataclass(frozen=True)
class Seat:
    """How a rigid frame made to one result would rest.

    on: the result on whose poses it rests; None: draws from the frame's own uncertainty. scans: SHA-256 of the scan of
    each result. matched: site of the frame,
    site it rests on. rim_diameter: mm, None: each platform's own. notes: what a reader must know.

    Only with draws: probabilities, draws, seed, repeat, counted (sources of uncertainty in the draws). Only with `on`:
    without, stands_out (the site without which the others are within limits, where that is so of one site only).
    """

    frame: str
    on: str | None
    scans: tuple[str, ...]
    matched: tuple[tuple[str, str], ...]
    limit_um: float
    side_limit_um: float
    rim_diameter: float | None
    sites: tuple[SeatSite, ...]
    worst: Worst
    one_screw: tuple[OneScrew, ...]
    gap_within: Probability | None = None
    all_within: Probability | None = None
    draws: int | None = None
    seed: int | None = None
    without: tuple[Without, ...] = ()
    stands_out: str | None = None
    repeat: tuple[Repeat, ...] = ()
    counted: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
