"""Repeatability and reproducibility of platform, axis, turn and distances, from scans laid on each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.record.model import RecordSite
from stylobate.several.comparing.components import Spread, Values, over_all, repeatability, reproducibility, within
from stylobate.several.comparing.errors import covariances
from stylobate.several.comparing.layout import Layout
from stylobate.several.comparing.union import Union

SIDE, HEIGHT, TILT, TURN = range(4)
KIND_OF_MOTION = np.array([SIDE, SIDE, HEIGHT, TILT, TILT, TURN])
MIXES = {
    "platform": ((SIDE, 2.0), (HEIGHT, 1.0)),
    "side": ((SIDE, 1.0),),
    "height": ((HEIGHT, 1.0),),
    "axis": ((TILT, 2.0),),
    "index": ((TURN, 1.0),),
}
"""Variances that add up to each figure: platform over three axes, axis over two tilts, as in the budget.

Where the scans are too few to tell height from sideways, the platform counts them as alike."""


@dataclass(frozen=True)
class Repeats:
    """Standard deviations of one scan, mm and radians: platform, side, height, axis, index, distance. None: not told.

    within: repeatability. overall: reproducibility, with groups. between: of the groups' own means.
    """

    within: dict[str, Spread | None]
    overall: dict[str, Spread | None]
    between: dict[str, float | None]


@dataclass(frozen=True)
class PairSpread:
    """Two implants: distance (mm) in each scan, None where it lacks one of them; sd in mm, None below two distances."""

    implants: tuple[int, int]
    distances: tuple[float | None, ...]
    sd: float | None


def mean_model(layout: Layout, drift: FloatArray, theta: FloatArray, weights: FloatArray) -> FloatArray:
    """(K, 6n, 6n) covariance of each scan, θ averaged over."""
    mean = np.sqrt(weights @ theta**2)[None]
    return np.array(
        [
            covariances(mean, stated, reseated, drift * scanned)[0]
            for stated, reseated, scanned in zip(layout.stated, layout.reseated, layout.scanned, strict=True)
        ]
    )


def repeats(layout: Layout, pairs: Sequence[PairSpread], model: FloatArray, groups: LongArray) -> Repeats:
    """All figures.

    pairs: distances in the scans of the layout. model: (K, 6n, 6n) covariance of each scan, for degrees of freedom.
    groups: (K,).
    """
    poses, joint = _pose_values(layout, model, groups)
    figures = Repeats({}, {}, {})
    for name, mix in MIXES.items():
        _add(figures, name, poses, joint, mix)
    if figures.within["platform"] is None and len(poses.y):
        alike = replace(poses, kind=np.where(poses.kind == HEIGHT, SIDE, poses.kind))
        _add(figures, "platform", alike, joint, ((SIDE, 3.0),))
    _add(figures, "distance", *_distance_values(layout, pairs, model, groups), ((0, 1.0),))
    return figures


def _add(figures: Repeats, name: str, values: Values, model: FloatArray, mix: tuple[tuple[int, float], ...]) -> None:
    present = np.unique(values.kind)
    figures.within[name] = figures.overall[name] = figures.between[name] = None
    if not {kind for kind, _ in mix} <= set(present.tolist()):
        return
    shares = np.zeros(len(present))
    for kind, share in mix:
        shares[np.searchsorted(present, kind)] = share
    values = Values(
        values.y, np.searchsorted(present, values.kind), values.quantity, values.group, values.frames, values.weight
    )
    inside = within(values)
    figures.within[name] = repeatability(values, inside, shares, model)
    if len(np.unique(values.group)) > 1:
        overall, between = reproducibility(values, inside, over_all(values), shares, model)
        figures.overall[name], figures.between[name] = overall, between


def _pose_values(layout: Layout, model: FloatArray, groups: LongArray) -> tuple[Values, FloatArray]:
    """Residuals of all scans as values, their frames unknown, and the covariance (N, N) of the model."""
    repeated = layout.seen.sum(axis=0) > 1
    rows = [np.flatnonzero(seen & repeated) for seen in layout.seen]
    total = sum(map(len, rows))
    frames, joint, at = np.zeros((total, 6 * len(rows))), np.zeros((total, total)), 0
    for k, chosen in enumerate(rows):
        here = slice(at, at + len(chosen))
        frames[here, 6 * k : 6 * k + 6] = layout.lever[chosen]
        joint[here, here] = model[k][np.ix_(chosen, chosen)]
        at += len(chosen)
    motion = np.concatenate(rows) % 6
    kind = KIND_OF_MOTION[motion]
    sizes = [float(np.mean(np.diag(joint)[kind == c])) if np.any(kind == c) else 1.0 for c in range(4)]
    return Values(
        y=np.concatenate([layout.residual[k][chosen] for k, chosen in enumerate(rows)]),
        kind=kind,
        quantity=np.concatenate(rows),
        group=np.repeat(groups, [len(chosen) for chosen in rows]),
        frames=frames,
        weight=1.0 / np.array(sizes)[kind],
    ), joint


def distances(union: Union) -> list[PairSpread]:
    """Distance of every two implants in every scan that shows both, as that scan has them: moved sites too."""
    found = []
    for i, j in combinations(range(len(union.sites)), 2):
        values = tuple(
            None if a is None or b is None else _distance(a, b)
            for a, b in zip(union.sites[i], union.sites[j], strict=True)
        )
        known = [value for value in values if value is not None]
        if known:
            found.append(PairSpread((i, j), values, float(np.std(known, ddof=1)) if len(known) > 1 else None))
    return found


def _distance(a: RecordSite, b: RecordSite) -> float:
    return float(np.linalg.norm(a.scan_from_connection[:3, 3] - b.scan_from_connection[:3, 3]))


def _distance_values(
    layout: Layout, pairs: Sequence[PairSpread], model: FloatArray, groups: LongArray
) -> tuple[Values, FloatArray]:
    y, quantity, scan, across = [], [], [], []
    for number, pair in enumerate(pairs):
        i, j = pair.implants
        way = layout.poses[j][:3, 3] - layout.poses[i][:3, 3]
        slope = np.zeros(layout.lever.shape[0])
        slope[6 * i : 6 * i + 3] = -layout.poses[i][:3, :3].T @ way / np.linalg.norm(way)
        slope[6 * j : 6 * j + 3] = layout.poses[j][:3, :3].T @ way / np.linalg.norm(way)
        for k, value in enumerate(pair.distances):
            if value is not None and layout.shows(k, i) and layout.shows(k, j):
                y.append(value - float(np.linalg.norm(way)))
                quantity.append(number)
                scan.append(k)
                across.append(slope)
    count, scans = len(y), np.array(scan, dtype=np.int64)
    joint, slopes = np.zeros((count, count)), np.array(across).reshape(count, -1)
    for k in range(len(layout.frames)):
        of = np.flatnonzero(scans == k)
        joint[np.ix_(of, of)] = slopes[of] @ model[k] @ slopes[of].T
    zeros = np.zeros(count, dtype=np.int64)
    values = Values(
        np.array(y), zeros, np.array(quantity, dtype=np.int64), groups[scans], np.zeros((count, 0)), np.ones(count)
    )
    return values, joint
