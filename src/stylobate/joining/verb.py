"""Scans of one mouth into one frame: start, fine fit, how well it is known at each site, and when it is refused."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan
from stylobate.core.types import BoolArray, FloatArray
from stylobate.joining.crowns import crowns
from stylobate.joining.fine import SPACING, Fit, Target, fitted
from stylobate.joining.model import Join, placed
from stylobate.joining.patches import motion_at, patches_of
from stylobate.joining.start import same, starts
from stylobate.joining.thin import Points, smooth_normals, thinned

LIMIT_UM = 100.0
"""95 % bound of a join at a site above which it is refused, unless the caller says otherwise: what is often taken for
the largest misfit of a restoration that passes (facts 2: no threshold is proven)."""
LEAST_AREA = 100.0
"""mm² that must agree: about two crowns; jaws of different mouths agreed over up to 80 by chance."""
LEAST_PATCHES = 6
MOST_SD = 0.06
"""mm: teeth whose blocks differ by more are not the same teeth."""
RIVAL = 0.8
"""Share of the best pose's support from which on another pose might as well be the right one."""
AROUND = 1.5
"""mm beside a platform's rim within which surface is not used: what stands on it, and the cuff about it, change."""
ABOVE, BELOW = 14.0, 4.0
TRIED = 3


@dataclass(frozen=True)
class Site:
    """Where a join's uncertainty is asked for: name, pose (4, 4) in the first scan's coordinates, platform diameter."""

    name: str
    pose: FloatArray
    diameter: float


@dataclass(frozen=True)
class Jaw:
    """Which teeth are laid on each other. sense: +1 where they point along the sites' axes, −1 for the opposing jaw.
    of_second: the second scan shows that jaw alone; else the first does."""

    sense: float = 1.0
    of_second: bool = False


def join(
    first: Scan, second: Scan, sites: tuple[Site, ...], limit_um: float = LIMIT_UM, jaw: Jaw | None = None
) -> Join:
    """Lay `second` on `first` over the crowns that both show; nothing about their frames is taken for granted.

    Raises JoinError: what is shared is too little or too smooth, there is another pose as good, or the 95 % bound at a
    site is above `limit_um`.
    """
    jaw = jaw or Jaw()
    names = f"{second.file} on {first.file}"
    local = np.array([_shifted(site.pose, -first.origin) for site in sites])
    one, two = _points(first), _points(second)
    one = one.taken(~_beside(one, local, sites))
    found = starts(one, two)
    if not found or found[0].support == 0:
        raise JoinError(f"{names}: {_NOTHING}")
    target = Target.of(first.surface, smooth_normals(first.surface))
    dense = thinned(two, SPACING)
    fits = [_fit(target, dense, one, start.first_from_second, local, sites, jaw) for start in found[:TRIED]]
    support = np.array([fit.weight.sum() for fit in fits])
    best = int(np.argmax(support))
    fit = fits[best]
    shared = float(support[best]) * float(second.surface.face_areas().sum()) / len(dense.at)
    share = float(fit.weight.sum() / max(len(fit.weight), 1))
    places = len(patches_of(fit).centres) if shared > 0.0 else 0
    if shared < LEAST_AREA or places < LEAST_PATCHES:
        raise JoinError(f"{names}: only {shared:.0f} mm² of teeth agree, in {places} places; {_MORE}")
    if fit.block_sd > MOST_SD:
        raise JoinError(
            f"{names}: {shared:.0f} mm² of teeth lie near each other but differ by {1e3 * fit.block_sd:.0f} µm; see "
            "that both scans are of the same mouth"
        )
    middle = dense.at.mean(axis=0)
    for other, its in zip(fits, support, strict=True):
        if its > RIVAL * support[best] and not same(fit.first_from_second, other.first_from_second, middle):
            raise JoinError(f"{names}: they fit in two ways, each with about {shared:.0f} mm² of teeth; {_MORE}")
    result = _known(fit, local, sites, first, second, (shared, share))
    if result.worst_um > limit_um:
        raise JoinError(
            f"{names}: {shared:.0f} mm² of teeth agree, but leave {result.worst_um:.0f} µm (95 %) open at a site, "
            f"above the limit of {limit_um:.0f} µm; {_MORE}"
        )
    return result


_MORE = "scan more of the teeth in both"
_NOTHING = "nothing in one looks like the other; see that both are of the same jaw and not mirrored"


def _points(scan: Scan) -> Points:
    return Points(scan.surface.vertices, smooth_normals(scan.surface))


def _shifted(pose: FloatArray, by: FloatArray) -> FloatArray:
    result = pose.copy()
    result[:3, 3] += by
    return result


def _beside(points: Points, local: FloatArray, sites: tuple[Site, ...]) -> BoolArray:
    """Which points (n,) lie in the cylinders about the sites."""
    inside = np.zeros(len(points.at), np.bool_)
    for pose, site in zip(local, sites, strict=True):
        own = (points.at - pose[:3, 3]) @ pose[:3, :3]
        radius = site.diameter / 2.0 + AROUND
        inside |= (np.hypot(own[:, 0], own[:, 1]) < radius) & (own[:, 2] > -BELOW) & (own[:, 2] < ABOVE)
    return inside


def _fit(
    target: Target, points: Points, one: Points, start: FloatArray, local: FloatArray, sites: tuple[Site, ...], jaw: Jaw
) -> Fit:
    moved = points.moved(start)
    away = ~_beside(moved, local, sites)
    up = jaw.sense * local[:, :3, 2].sum(axis=0)
    seen = moved.taken(away).at if jaw.of_second else one.at
    return fitted(target, points.taken(away & crowns(seen, moved.at, up)), start)


def _known(
    fit: Fit, local: FloatArray, sites: tuple[Site, ...], first: Scan, second: Scan, shared: tuple[float, float]
) -> Join:
    """The pose that suits the sites best, and how well it is known there."""
    patches = patches_of(fit)
    left = motion_at(patches, local)
    step, miss = _one_motion(left.mean, left.covariance, local)
    covariance = left.covariance + np.outer(miss, miss)
    pose = step @ fit.first_from_second
    first_from_second = rigid.pose(np.eye(3), first.origin) @ pose @ rigid.pose(np.eye(3), -second.origin)
    return Join(
        rigid.orthonormal(first_from_second), *shared, len(patches.centres), 1e3 * fit.block_sd,
        placed([site.name for site in sites], covariance), covariance,
    )  # fmt: skip


def _one_motion(mean: FloatArray, covariance: FloatArray, local: FloatArray) -> tuple[FloatArray, FloatArray]:
    """One rigid motion (4, 4), first frame, that comes nearest to the sites' own; and what it misses (6n,)."""
    middle = local[:, :3, 3].mean(axis=0)
    rows = []
    for pose in local:
        arm = np.eye(6)
        arm[:3, 3:] = -rigid.skew(pose[:3, 3] - middle)
        rows.append(np.kron(np.eye(2), pose[:3, :3].T) @ arm)
    design = np.concatenate(rows)
    weight = np.linalg.inv(covariance + 1e-12 * np.eye(len(covariance)))
    theta = np.asarray(np.linalg.solve(design.T @ weight @ design, design.T @ weight @ mean), np.float64)
    return rigid.exp_about(theta, middle), mean - design @ theta
