"""From rows to figures: counts, ratios to the bound, coverage with its limits."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from bench.judge import PARTS, Json

WRONG_TURN_DEG = 5.0  # a turn off by more is a wrong turn


def found(sites: Sequence[Json]) -> list[Json]:
    """Sites found within SAME_PLACE."""
    return [s for s in sites if s["found"] is not None]


def right(sites: Sequence[Json]) -> list[Json]:
    """Of these, with the right part."""
    return [s for s in found(sites) if s["found"]["right_part"]]


def unflagged(sites: Sequence[Json]) -> list[Json]:
    """Of those with the right part, without any flag."""
    return [s for s in right(sites) if not s["found"]["flags"]]


def wrong_part(sites: Sequence[Json]) -> list[Json]:
    """Found, but as another part."""
    return [s for s in found(sites) if not s["found"]["right_part"]]


def wrong_turn(sites: Sequence[Json]) -> list[Json]:
    """The right part at a wrong turn, or upside down."""
    return [s for s in right(sites) if turned(s)]


def turned(site: Json) -> bool:
    """Whether a found site's turn or axis is off by more than WRONG_TURN_DEG."""
    axis = float(np.degrees(np.linalg.norm(site["found"]["xi"][3:5])))
    return abs(site["found"]["turn_deg"]) > WRONG_TURN_DEG or axis > WRONG_TURN_DEG


def silent_and_flagged(sites: Sequence[Json]) -> str:
    """'silent + flagged'."""
    silent = sum(not s["found"]["flags"] for s in sites)
    return f"{silent} + {len(sites) - silent}"


def ratios(sites: Sequence[Json]) -> str:
    """rms of error over the scene's own bound: platform / axis / index, and of how many sites."""
    with_bound = [s for s in sites if s["least"] is not None]
    if not with_bound:
        return "–"
    parts = []
    for name, part in PARTS.items():
        each = [np.linalg.norm(s["found"]["xi"][part]) / s["least"][name] for s in with_bound]
        parts.append(_short(float(np.sqrt(np.mean(np.square(each))))))
    return f"{' / '.join(parts)} ({len(with_bound)})"


def _short(value: float) -> str:
    return f"{value:.2f}" if value < 10 else f"{value:.0f}"


def medians(sites: Sequence[Json]) -> str:
    """Median error: platform µm / axis ° / index °."""
    if not sites:
        return "–"
    platform, axis, index = (
        float(np.median([np.linalg.norm(s["found"]["xi"][part]) for s in sites])) for part in PARTS.values()
    )
    return f"{1e3 * platform:.1f} / {np.degrees(axis):.3f} / {np.degrees(index):.3f}"


def limits(hits: int, of: int) -> tuple[float, float]:
    """Clopper–Pearson 95 % limits of a share."""
    from scipy.stats import beta

    low = float(beta.ppf(0.025, hits, of - hits + 1)) if hits else 0.0
    high = float(beta.ppf(0.975, hits + 1, of - hits)) if hits < of else 1.0
    return low, high


def share(hits: int, of: int) -> str:
    """'k of n = 0.951 (0.93–0.97)'."""
    if not of:
        return "–"
    low, high = limits(hits, of)
    return f"{hits} of {of} = {hits / of:.3f} ({low:.3f}–{high:.3f})"


def held(sites: Sequence[Json], which: int) -> str:
    """How often u95 (0 platform, 1 axis, 2 index) held the truth."""
    part = tuple(PARTS.values())[which]
    with_bound = [s["found"] for s in sites if s["found"].get("u95") and s["found"]["u95"][which] is not None]
    return share(sum(float(np.linalg.norm(f["xi"][part])) <= f["u95"][which] for f in with_bound), len(with_bound))


def nees(sites: Sequence[Json], summary: Callable[[list[float]], float]) -> str:
    """A summary of ξᵀC⁻¹ξ."""
    values = [s["found"]["nees"] for s in sites if "nees" in s["found"]]
    return f"{summary(values):.2f}" if values else "–"
