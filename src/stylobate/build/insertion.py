"""One rigid frame, one path of insertion: for the chosen chains, and over all options of all sites together."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import NormalDist

import numpy as np

from stylobate.build.choosing import Ranking, seat_half_angle_deg
from stylobate.build.cone import SLACK, best_path, corners, smallest_cone
from stylobate.build.model import Insertion, Joint
from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray, LongArray
from stylobate.uncertainty.bounds import NORMAL_95, length_95

MOST_JOINT = 5
"""Options for all sites together that are listed."""
ROUNDING = 1e-14
"""Of the cosine between a path and an axis: 1.4e-7 rad at most."""
MOST_CAPS = 400
"""Seats of unlike direction that are searched in full; beyond, the best of each site up to this number in all."""


def insertion_of(axes: FloatArray, allowed_deg: Sequence[float | None], tilts: Sequence[FloatArray]) -> Insertion:
    """Spread and path of uppermost connections with `axes` (n, 3) and seats of half-angle `allowed_deg`.

    tilts: covariance (2, 2), rad², of the tilt of each axis. Spread and margin change by no more than the largest tilt
    of any axis, so that one bound serves both (eq. 7).
    """
    cone = smallest_cone(axes)
    bound = float(np.degrees(_largest_tilt_95(tilts)))
    stated = [a for a in allowed_deg if a is not None]
    path = best_path(axes, np.radians(stated)) if len(stated) == len(allowed_deg) else None
    margin = None if path is None else float(np.degrees(path.margin))
    if len(axes) == 1:
        one, because = True, "one site has a path of its own"
    elif margin is None:
        one, because = None, "the parts do not state the half-angle of every seat (cone_half_angle_deg)"
    elif abs(margin) <= bound:
        one, because = None, f"the best path is {_side(margin)} the narrowest seat, less than the axes are known to"
    else:
        one, because = margin > 0.0, f"the best path is {_side(margin)} the narrowest seat"
    return Insertion(
        spread_deg=float(np.degrees(cone.radius)),
        axis=cone.axis,
        u95_deg=bound,
        allowed_deg=tuple(allowed_deg),
        one_path=one,
        direction=None if path is None else path.direction,
        margin_deg=margin,
        because=because,
    )


def _side(margin_deg: float) -> str:
    return f"{abs(margin_deg):.2f}° {'inside' if margin_deg >= 0 else 'outside'}"


def _largest_tilt_95(tilts: Sequence[FloatArray]) -> float:
    """Bound that all tilts keep together with 95 % probability or more: each at 1 − 0.05/n (Bonferroni).

    A tilt's 95 % bound grows most where it moves along one line only, as the normal quantile does; that is taken.
    """
    if len(tilts) == 1:
        return length_95(tilts[0])
    widening = NormalDist().inv_cdf(1.0 - 0.025 / len(tilts)) / NORMAL_95
    return max(length_95(tilt) for tilt in tilts) * widening


def joint_options(rankings: Sequence[Ranking]) -> tuple[Joint, ...]:
    """The best choices of one option a site that share one path of insertion, best first; at most MOST_JOINT.

    Best: the least worst angle to the aim, then the least mean. For a given path every site takes its best option whose
    seat holds the path; only centres of seats and crossings of their edges need be tried as paths (eq. 6).
    """
    seats = [_seats(ranking) for ranking in rankings]
    if not seats or any(not len(chosen) for chosen, _ in seats):
        return ()
    room = max(1, MOST_CAPS // len(seats))
    chosen = [indices[:room] for indices, _ in seats]
    axes = np.concatenate([r.axes[c] for r, c in zip(rankings, chosen, strict=True)])
    radii = np.radians(np.concatenate([half[:room] for _, half in seats]))
    angles = np.concatenate([r.angle_deg[c] for r, c in zip(rankings, chosen, strict=True)])
    starts = np.concatenate([[0], np.cumsum([len(c) for c in chosen])])
    paths = corners(axes, radii)
    picked = np.full((len(paths), len(seats)), -1, np.int64)
    _pick(paths, axes, np.cos(radii + SLACK) - ROUNDING, starts, picked)
    feasible = picked[:, -1] >= 0
    paths, picked = paths[feasible], picked[feasible]
    if not len(paths):
        return ()
    picked, first = np.unique(picked, axis=0, return_index=True)
    reached = angles[picked]
    order = np.lexsort((reached.mean(axis=1), np.round(reached.max(axis=1), 9)))[:MOST_JOINT]
    everyone = np.concatenate(chosen)
    return tuple(_joint(rankings, everyone[picked[k]], reached[k], paths[first[k]]) for k in order)


def _joint(rankings: Sequence[Ranking], ways: LongArray, reached: FloatArray, path: FloatArray) -> Joint:
    chains = tuple(ranking.ways[way].names for ranking, way in zip(rankings, ways, strict=True))
    return Joint(chains, float(reached.max()), float(reached.mean()), path)


def _seats(ranking: Ranking) -> tuple[LongArray, FloatArray]:
    """Of the ways whose seat is stated, the best of each direction and half-angle: numbers and half-angles, deg."""
    chosen, halves, seen = [], [], set()
    for k, way in enumerate(ranking.ways):
        half = seat_half_angle_deg(way)
        if half is None:
            continue
        key = (*np.round(ranking.axes[k], 10).tolist(), half)
        if key not in seen:
            seen.add(key)
            chosen.append(k)
            halves.append(half)
    return np.array(chosen, np.int64), np.array(halves, np.float64)


@compiled
def _pick(paths: FloatArray, axes: FloatArray, cosines: FloatArray, starts: LongArray, picked: LongArray) -> None:
    """For each path the first (best) seat of every site that holds it; a row with a −1 last has none."""
    sites = starts.shape[0] - 1
    for p in range(paths.shape[0]):
        complete = True
        for s in range(sites):
            found = -1
            for k in range(starts[s], starts[s + 1]):
                along = paths[p, 0] * axes[k, 0] + paths[p, 1] * axes[k, 1] + paths[p, 2] * axes[k, 2]
                if along >= cosines[k]:
                    found = k
                    break
            if found < 0:
                complete = False
                break
            picked[p, s] = found
        if not complete:
            picked[p, sites - 1] = -1
