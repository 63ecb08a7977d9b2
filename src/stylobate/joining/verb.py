"""Scans of one mouth into one frame: start, fine fit, how well it is known at each site, and when it is refused."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan
from stylobate.core.threads import one_blas_thread
from stylobate.core.types import BoolArray, FloatArray
from stylobate.joining.cells import Cells, cells_of
from stylobate.joining.crowns import crowns
from stylobate.joining.fine import SPACING, Fit, Target, fitted
from stylobate.joining.model import Join, placed
from stylobate.joining.motion import Motion, motion_at
from stylobate.joining.start import SPACING as COARSE
from stylobate.joining.start import same, starts
from stylobate.joining.thin import Points, smooth_normals, thinned
from stylobate.joining.toothed import toothed

LIMIT_UM = 100.0
"""95 % bound of a join at a site above which it is refused, unless the caller says otherwise: what is often taken for
the largest misfit of a restoration that passes (facts 2: no threshold is proven)."""
LEAST_AREA = 100.0
"""mm² that must agree: about two crowns; jaws of different mouths agreed over up to 80 by chance."""
LEAST_PLACES = 6
LEAST_TOOTHED = 0.25
"""Share of what agrees that must curve as crowns do: teeth have 60 % and more, ridges without any up to 10 %."""
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


@dataclass(frozen=True)
class _Standing:
    """Sites of the first scan (n, 4, 4), then those of the second (m, 4, 4), each in its scan's local coordinates."""

    diameters: FloatArray
    first: FloatArray
    second: FloatArray

    @staticmethod
    def of(first: Scan, sites: tuple[Site, ...], second: Scan, brought: tuple[Site, ...]) -> _Standing:
        one = [_shifted(site.pose, -first.origin) for site in sites]
        two = [_shifted(site.pose, -second.origin) for site in brought]
        return _Standing(
            np.array([site.diameter for site in (*sites, *brought)]),
            np.array(one).reshape(-1, 4, 4), np.array(two).reshape(-1, 4, 4),
        )  # fmt: skip

    def at(self, first_from_second: FloatArray) -> FloatArray:
        """(n + m, 4, 4) all of them in the first scan's local coordinates."""
        return np.concatenate([self.first, first_from_second @ self.second])


@dataclass(frozen=True)
class Laid:
    """One scan laid on another, and what its teeth say. shared_mm2, share: as in Join. names: of both scans.

    local: (n, 4, 4) the sites, first of the first scan, then of the second, in the first scan's local coordinates.
    """

    names: str
    fit: Fit
    cells: Cells
    shared_mm2: float
    share: float
    local: FloatArray
    first_origin: FloatArray
    second_origin: FloatArray

    def in_first(self, local_from_local: FloatArray) -> FloatArray:
        """(4, 4) first_from_second, of a motion between the local coordinates."""
        there, back = rigid.pose(np.eye(3), self.first_origin), rigid.pose(np.eye(3), -self.second_origin)
        return rigid.orthonormal(there @ local_from_local @ back)

    def left_at(self, poses: FloatArray) -> Motion:
        """What is left to move, after fit.first_from_second, of sites at poses (n, 4, 4) in the first scan."""
        return motion_at(self.cells, np.array([_shifted(pose, -self.first_origin) for pose in poses]))


@one_blas_thread
def laid(
    first: Scan, second: Scan, sites: tuple[Site, ...], jaw: Jaw | None = None, brought: tuple[Site, ...] = ()
) -> Laid:
    """Lay `second` on `first` over the crowns that both show; nothing about their frames is taken for granted.

    brought: sites that the second scan shows, in its coordinates. Raises JoinError: what is shared is too little or too
    smooth, or there is another pose as good.
    """
    jaw = jaw or Jaw()
    names = f"{second.file} on {first.file}"
    standing = _Standing.of(first, sites, second, brought)
    one, two = _points(first), _points(second)
    one = one.taken(~_beside(one, standing.first, standing.diameters[: len(sites)]))
    two = two.taken(~_beside(two, standing.second, standing.diameters[len(sites) :]))
    found = starts(one, two)
    if not found or found[0].support == 0:
        raise JoinError(f"{names}: {_NOTHING}")
    target = Target.of(first.surface, smooth_normals(first.surface))
    dense = thinned(two, SPACING)
    fits = [_fit(target, dense, one, start.first_from_second, standing, jaw) for start in found[:TRIED]]
    support = np.array([fit.weight.sum() for fit in fits])
    best = int(np.argmax(support))
    fit = fits[best]
    shared = float(support[best]) * float(second.surface.face_areas().sum()) / len(dense.at)
    share = float(fit.weight.sum() / max(len(fit.weight), 1))
    cells = cells_of(fit)
    if shared < LEAST_AREA or cells.places < LEAST_PLACES:
        raise JoinError(f"{names}: only {shared:.0f} mm² of teeth agree, in {cells.places} places; {_MORE}")
    if _toothed(fit, two.moved(fit.first_from_second) if jaw.of_second else one) < LEAST_TOOTHED:
        raise JoinError(
            f"{names}: no teeth can be told in what agrees ({shared:.0f} mm², smooth like a bare ridge), and gingiva "
            "moves by more than two scans can show; scan teeth in both"
        )
    if fit.block_sd > MOST_SD:
        raise JoinError(
            f"{names}: {shared:.0f} mm² of teeth lie near each other but differ by {1e3 * fit.block_sd:.0f} µm; see "
            "that both scans are of the same mouth"
        )
    middle = dense.at.mean(axis=0)
    for other, its in zip(fits, support, strict=True):
        if its > RIVAL * support[best] and not same(fit.first_from_second, other.first_from_second, middle):
            raise JoinError(f"{names}: they fit in two ways, each with about {shared:.0f} mm² of teeth; {_MORE}")
    local = standing.at(fit.first_from_second)
    return Laid(names, fit, cells, shared, share, local, first.origin, second.origin)


def join(
    first: Scan, second: Scan, sites: tuple[Site, ...], limit_um: float = LIMIT_UM, jaw: Jaw | None = None
) -> Join:
    """Lay `second` on `first`, and say how well that is known at each of the first scan's sites.

    Raises JoinError: as `laid`, and where the 95 % bound at a site is above `limit_um`.
    """
    result = _known(laid(first, second, sites, jaw), tuple(site.name for site in sites))
    if result.worst_um > limit_um:
        raise JoinError(
            f"{second.file} on {first.file}: {result.shared_mm2:.0f} mm² of teeth agree, but leave "
            f"{result.worst_um:.0f} µm (95 %) open at a site, above the limit of {limit_um:.0f} µm; {_MORE}"
        )
    return result


_MORE = "scan more of the teeth in both"
_NOTHING = "nothing in one looks like the other; see that both are of the same jaw and not mirrored"


def _points(scan: Scan) -> Points:
    return Points(scan.surface.vertices, smooth_normals(scan.surface))


def _toothed(fit: Fit, seen: Points) -> float:
    used = fit.weight > 0.0
    return toothed(thinned(seen, COARSE), thinned(Points(fit.at[used], fit.gradient[used]), COARSE))


def _shifted(pose: FloatArray, by: FloatArray) -> FloatArray:
    result = pose.copy()
    result[:3, 3] += by
    return result


def _beside(points: Points, poses: FloatArray, diameters: FloatArray) -> BoolArray:
    """Which points (k,) lie in the cylinders about sites at poses (n, 4, 4)."""
    inside = np.zeros(len(points.at), np.bool_)
    for pose, diameter in zip(poses, diameters, strict=True):
        own = (points.at - pose[:3, 3]) @ pose[:3, :3]
        radius = diameter / 2.0 + AROUND
        inside |= (np.hypot(own[:, 0], own[:, 1]) < radius) & (own[:, 2] > -BELOW) & (own[:, 2] < ABOVE)
    return inside


def _fit(target: Target, points: Points, one: Points, start: FloatArray, standing: _Standing, jaw: Jaw) -> Fit:
    moved, local = points.moved(start), standing.at(start)
    away = ~_beside(moved, local, standing.diameters)
    up = jaw.sense * local[:, :3, 2].sum(axis=0)
    seen = moved.taken(away).at if jaw.of_second else one.at
    return fitted(target, points.taken(away & crowns(seen, moved.at, up)), start)


def _known(found: Laid, names: tuple[str, ...]) -> Join:
    """The pose that suits the sites best, and how well it is known there."""
    left = motion_at(found.cells, found.local)
    step, miss = _one_motion(left.mean, left.covariance, found.local)
    covariance = left.covariance + np.outer(miss, miss)
    return Join(
        found.in_first(step @ found.fit.first_from_second), found.shared_mm2, found.share, found.cells.places,
        1e3 * found.fit.block_sd, placed(names, covariance), covariance,
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
