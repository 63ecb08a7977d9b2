"""`seat`: the frame of one result at rest on another result's poses, or on draws from its own uncertainty."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite, read_standing
from stylobate.several.draws import drawn
from stylobate.several.drifting import Profile, read_profile
from stylobate.several.match import any_turn, matched, turned_alike
from stylobate.several.seating.model import OneScrew, Probability, Repeat, Seat, SeatSite, Without, Worst
from stylobate.several.seating.notes import about_match, about_profile, about_sources, about_tilt, about_verdicts
from stylobate.several.seating.rest import Rests, rests
from stylobate.several.sources import Source, Sources, sources_of

LIMIT_UM = 100.0
"""Default limit of gap and side. None is proven (method/seat): the user's to set."""
DRAWS = 10_000
SEED = 1
REPEAT_DRAWS = 2_000
ONE_SCREW_DRAWS = 1_000
CHUNK = 10_000
LEVEL = 0.95
UM = 1e3


def seat(
    frame: Record | str | Path,
    on: Record | str | Path | None = None,
    *,
    limit_um: float = LIMIT_UM,
    side_limit_um: float = LIMIT_UM,
    rim_diameter: float | None = None,
    draws: int = DRAWS,
    seed: int = SEED,
    profile: Profile | str | Path | None = None,
) -> Seat:
    """How a rigid frame made exactly to the poses of `frame` would rest.

    on: a result of the same implants, on whose poses it rests; without it, `draws` draws from the uncertainty of
    `frame` itself. profile: of the scanner, whose drift then counts in place of the budget's. rim_diameter: mm, of
    every rim; 0 for the centres alone; without it, each platform's own.

    Raises ResultError, UsageError, FitError.
    """
    _require(limit_um, side_limit_um, rim_diameter, draws)
    made = frame if isinstance(frame, Record) else read_standing(frame)
    if len(made.sites) < 2:
        raise UsageError(f"{made.name}: a frame needs at least two sites, this result has {len(made.sites)}")
    limits = np.array([limit_um, side_limit_um])
    if on is not None:
        if profile is not None:
            raise UsageError("a profile counts in draws from the frame's own uncertainty only: leave it out, or --on")
        return _on(made, on if isinstance(on, Record) else read_standing(on), limits, rim_diameter)
    drift = read_profile(profile) if isinstance(profile, str | Path) else profile
    return _on_draws(made, limits, rim_diameter, draws, seed, drift)


def _require(limit_um: float, side_limit_um: float, rim_diameter: float | None, draws: int) -> None:
    for name, limit in (("limit", limit_um), ("side limit", side_limit_um)):
        if not (math.isfinite(limit) and limit > 0):
            raise UsageError(f"the {name} must be above 0 µm, not {limit:g}")
    if rim_diameter is not None and not (math.isfinite(rim_diameter) and rim_diameter >= 0):
        raise UsageError(f"the rim diameter must be 0 mm (the centre alone) or more, not {rim_diameter:g}")
    if draws < 2:
        raise UsageError(f"the number of draws must be 2 or more, not {draws}")


def _on(made: Record, below: Record, limits: FloatArray, rim_diameter: float | None) -> Seat:
    match = matched(made, below)
    sites = [made.sites[i] for i, _ in match.pairs]
    others = [below.sites[j] for _, j in match.pairs]
    frame, implants = _poses(sites), _poses(others)
    rims = _rims(others, rim_diameter)
    rest = rests(frame, implants[None], rims)
    gap, side = UM * rest.gap[0], UM * rest.side[0]
    names = [site.site for site in sites]
    worst = Worst(float(gap.max()), float(side.max()))
    without = _without(frame, implants, rims, names)
    return Seat(
        frame=made.name,
        on=below.name,
        scans=(made.scan.sha256, below.scan.sha256),
        matched=tuple((one.site, two.site) for one, two in zip(sites, others, strict=True)),
        limit_um=float(limits[0]),
        side_limit_um=float(limits[1]),
        rim_diameter=rim_diameter,
        sites=tuple(
            SeatSite(one.site, float(gap[k]), float(side[k]), turn_deg=_turn_deg(one, two, match.b_from_a))
            for k, (one, two) in enumerate(zip(sites, others, strict=True))
        ),
        worst=worst,
        one_screw=tuple(_one_screw(frame, implants[None], rims, names, k) for k in range(len(names))),
        without=without,
        stands_out=_stands_out(worst, without, limits),
        notes=(
            *match.doubts(made.name, below.name),
            *about_match(made, below, match.pairs, match.ambiguous),
            *about_tilt(implants, rims),
        ),
    )


def _turn_deg(one: RecordSite, two: RecordSite, b_from_a: FloatArray) -> float | None:
    if any_turn(one) or any_turn(two):
        return None
    return abs(math.degrees(turned_alike(one, two, b_from_a)))


def _on_draws(
    made: Record, limits: FloatArray, rim_diameter: float | None, draws: int, seed: int, profile: Profile | None
) -> Seat:
    frame, rims = _poses(made.sites), _rims(made.sites, rim_diameter)
    sources = sources_of(made, None if profile is None else profile.source(frame))
    sources = Sources(_without_turn(sources.scan), tuple(map(_source_without_turn, sources.others)), sources.missing)
    normal = np.random.default_rng(seed).standard_normal((draws, 6 * len(frame)))
    gap, side = _rested(frame, rims, sources.total(), normal)
    names = [site.site for site in made.sites]
    relative = np.maximum(gap / limits[0], side / limits[1])
    most = np.bincount(relative.argmax(axis=1), minlength=len(names)) / draws
    few = drawn(frame, sources.total(), normal[:ONE_SCREW_DRAWS])
    return Seat(
        frame=made.name,
        on=None,
        scans=(made.scan.sha256,),
        matched=(),
        limit_um=float(limits[0]),
        side_limit_um=float(limits[1]),
        rim_diameter=rim_diameter,
        sites=tuple(
            SeatSite(name, _median(gap[:, k]), _median(side[:, k]), _p95(gap[:, k]), _p95(side[:, k]), float(most[k]))
            for k, name in enumerate(names)
        ),
        worst=Worst(_median(gap.max(axis=1)), _median(side.max(axis=1)), _p95(gap.max(axis=1)), _p95(side.max(axis=1))),
        one_screw=tuple(_one_screw(frame, few, rims, names, k) for k in range(len(names))),
        gap_within=share(int((gap.max(axis=1) <= limits[0]).sum()), draws),
        all_within=share(int((relative.max(axis=1) <= 1.0).sum()), draws),
        draws=draws,
        seed=seed,
        repeat=_repeats(frame, rims, sources, normal[:REPEAT_DRAWS], names, limits),
        counted=("scan", *(source.name for source in sources.others)),
        notes=(*about_sources(sources), *about_profile(profile), *about_verdicts(made.sites), *about_tilt(frame, rims)),
    )


def _source_without_turn(source: Source) -> Source:
    return replace(source, covariance=_without_turn(source.covariance))


def _without_turn(covariance: FloatArray) -> FloatArray:
    """(6n, 6n) without the turn of each site about its axis: it moves no rim, and may be wholly unknown."""
    keep = np.arange(len(covariance)) % 6 != 5
    return covariance * np.outer(keep, keep)


def _poses(sites: Sequence[RecordSite]) -> FloatArray:
    return np.array([site.scan_from_connection for site in sites])


def _rims(sites: Sequence[RecordSite], rim_diameter: float | None) -> FloatArray:
    return np.array([site.platform_diameter if rim_diameter is None else rim_diameter for site in sites])


def _rested(
    frame: FloatArray, rims: FloatArray, covariance: FloatArray, normal: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Gaps and sides (draws, n), µm."""
    parts = [rests(frame, drawn(frame, covariance, normal[k : k + CHUNK]), rims) for k in range(0, len(normal), CHUNK)]
    return UM * np.concatenate([part.gap for part in parts]), UM * np.concatenate([part.side for part in parts])


def _one_screw(frame: FloatArray, implants: FloatArray, rims: FloatArray, names: Sequence[str], tight: int) -> OneScrew:
    rest: Rests = rests(frame, implants, rims, tight)
    gaps = {name: _median(UM * rest.gap[:, k]) for k, name in enumerate(names)}
    if len(implants) == 1:
        return OneScrew(names[tight], gaps)
    return OneScrew(names[tight], gaps, {name: _p95(UM * rest.gap[:, k]) for k, name in enumerate(names)})


def _without(frame: FloatArray, implants: FloatArray, rims: FloatArray, names: Sequence[str]) -> tuple[Without, ...]:
    found = []
    for k, name in enumerate(names if len(names) > 2 else ()):
        rest = rests(np.delete(frame, k, 0), np.delete(implants, k, 0)[None], np.delete(rims, k))
        found.append(Without(name, float(UM * rest.gap.max()), float(UM * rest.side.max())))
    return tuple(found)


def _stands_out(worst: Worst, without: Sequence[Without], limits: FloatArray) -> str | None:
    """The only site without which the others are within limits, where with it they are not."""
    if len(without) < 4 or (worst.gap_um <= limits[0] and worst.side_um <= limits[1]):
        return None
    cleared = [w.site for w in without if w.worst_gap_um <= limits[0] and w.worst_side_um <= limits[1]]
    return cleared[0] if len(cleared) == 1 else None


def _repeats(
    frame: FloatArray,
    rims: FloatArray,
    sources: Sources,
    normal: FloatArray,
    names: Sequence[str],
    limits: FloatArray,
) -> tuple[Repeat, ...]:
    """For each site: the same draws with the variance of its scan halved; most helpful first (eq. 13)."""
    rest_of_it = sources.total() - sources.scan
    before = _worst_squares(*_rested(frame, rims, sources.total(), normal), limits).mean()
    found = []
    for k, name in enumerate(names):
        factor = np.ones(6 * len(names))
        factor[6 * k : 6 * k + 6] = math.sqrt(0.5)
        gap, side = _rested(frame, rims, sources.scan * np.outer(factor, factor) + rest_of_it, normal)
        squares = _worst_squares(gap, side, limits)
        within = float((squares <= 1.0).mean())
        gain = max(float(before - squares.mean()), 0.0)
        found.append((gain, name, _p95(gap.max(axis=1)), _p95(side.max(axis=1)), within))
    whole = 2.0 / before if before > 0 else 0.0
    return tuple(Repeat(name, whole * gain, *rest) for gain, name, *rest in sorted(found, key=lambda f: -f[0]))


def _worst_squares(gap: FloatArray, side: FloatArray, limits: FloatArray) -> FloatArray:
    """(draws,): square of the worst misfit as a share of its limit."""
    return np.asarray(np.maximum(gap / limits[0], side / limits[1]).max(axis=1) ** 2)


def share(hits: int, draws: int) -> Probability:
    """A share of draws with its 95 % interval (Clopper & Pearson 1934)."""
    from scipy.special import betaincinv

    tail = (1.0 - LEVEL) / 2.0
    low = float(betaincinv(hits, draws - hits + 1, tail)) if hits > 0 else 0.0
    high = float(betaincinv(hits + 1, draws - hits, 1.0 - tail)) if hits < draws else 1.0
    return Probability(hits / draws, low, high)


def _median(values: FloatArray) -> float:
    return float(np.median(values))


def _p95(values: FloatArray) -> float:
    return float(np.quantile(values, LEVEL))
