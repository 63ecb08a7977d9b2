"""How well the pose is known at each site, from how the shared surface differs from place to place (eqs. 7–11).

Gaps scatter by the noise of both scans. Besides, the surface may be displaced: in common with its neighbours and with
the sites (drift of either scan), and each patch by itself (gingiva that moved, a changed tooth).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

import numpy as np

from stylobate.core import rigid
from stylobate.core.threads import one_blas_thread
from stylobate.core.types import FloatArray
from stylobate.joining.cells import Cells
from stylobate.joining.noise import noise_of
from stylobate.uncertainty.bounds import length_95

LONG = 50.0
"""mm: length over which drift hangs together."""
SHIFT_UM = (3.0, 8.0, 20.0, 50.0)
TURN_DEG = (0.02, 0.05, 0.15, 0.4)
"""Standard deviations of the common shift along each axis and of the common turn about each, all held equally likely.
They bracket what scans of whole arches are known for: precision 38 to 49 µm (2024, PMC11636004), angles between
implants off by 0.33°, 0.02 to 0.92° (Arcuri 2022, Materials 15:927). One pair of scans shows too few places to tell."""
BEGUN = 2.0
"""Turns are those of a walk that began LONG before: crowns and axes may all stand otherwise against their places, by
this many times the variance of a turn. (Of shifts that is the whole scan's own.)"""
OWN_UM = (0.0, 5.0, 15.0)
"""Of each patch's own shift along each axis, likewise (invented: more is taken for moved, and does not count)."""
VIEW_UM = 5.0
"""Standard uncertainty, along each axis, of what two scans cannot show by differing from place to place: surfaces that
face one way all lie off alike (mesh noise of 5.3 to 12.6 µm by angle: PLoS ONE 2017, PMC5549906; the size is our
choice)."""
CROWN = 8.0
"""mm: over the width of a crown the same makes a turn."""
BEFOREHAND = np.array([1.0, 1.0, 1.0, 0.1, 0.1, 0.1, 0.05])
"""Standard deviations, mm and radians, of what a fit may leave of the motion, and of a swelling: so wide that they
count only where the surface leaves a motion loose."""
DRAWS = 8000
LEVEL = 0.95


@dataclass(frozen=True)
class Motion:
    """Small motions ξ of the sites, in connection frames, that remain to be made: mean (6n,), covariance (6n, 6n).

    The covariance is widened so that a normal distribution has the 95 % quantiles of the mixture it stands for.
    """

    mean: FloatArray
    covariance: FloatArray


@one_blas_thread
def motion_at(cells: Cells, sites: FloatArray) -> Motion:
    """What is left to move at sites (n, 4, 4), first scan's frame, over all that drift and gingiva may have done."""
    model = _Model.of(cells, sites)
    parts = [_component(model, *sizes) for sizes in product(SHIFT_UM, TURN_DEG, OWN_UM)]
    return _mixed(parts, model.frames)


@dataclass(frozen=True)
class _Drift:
    """Covariance of one kind of drift of unit variance: of the gaps, of the sites' ξ with these, of the sites' ξ."""

    gaps: FloatArray
    crossed: FloatArray
    sites: FloatArray

    @staticmethod
    def of(rows: FloatArray, frames: FloatArray, alike: FloatArray) -> _Drift:
        """rows (n, 3): of gaps by it; frames (s, 6, 3): of the sites' ξ by it; alike (n + s, n + s): correlation of
        what happens to cells and sites."""
        n = len(rows)
        return _Drift(
            alike[:n, :n] * (rows @ rows.T),
            np.concatenate([(frame @ rows.T) * alike[n + k, :n] for k, frame in enumerate(frames)]),
            np.block([[f @ g.T * alike[n + j, n + k] for k, g in enumerate(frames)] for j, f in enumerate(frames)]),
        )


@dataclass(frozen=True)
class _Model:
    """Gaps = −(design·θ + displacements) + noise; ξ of the sites = to_sites·θ + displacements.

    noise (n, n); own (n, n): of patches of unit variance. frames (s, 6, 6): ξ of a small motion at the site, scan axes.
    """

    design: FloatArray
    rise: FloatArray
    to_sites: FloatArray
    frames: FloatArray
    noise: FloatArray
    shift: _Drift
    turn: _Drift
    own: FloatArray

    @staticmethod
    def of(cells: Cells, sites: FloatArray) -> _Model:
        frames = np.array([np.kron(np.eye(2), site[:3, :3].T) for site in sites])
        arms = np.tile(np.eye(6, 7), (len(sites), 1, 1))
        for arm, site in zip(arms, sites, strict=True):
            arm[:3, 3:6] = -rigid.skew(site[:3, 3] - cells.middle)
        feet = _feet(cells.at, sites)
        places = np.concatenate([feet, sites[:, :3, 3]])
        alike = np.exp(-np.linalg.norm(places[:, None] - places[None], axis=2) / LONG)
        about_feet = cells.rows[:, 3:6] - np.cross(feet - cells.middle, cells.normals)
        return _Model(
            cells.rows, -cells.gap, np.concatenate(frames @ arms), frames,
            noise_of(cells).covariance(cells.at, cells.weight),
            _Drift.of(cells.normals, frames[:, :, :3], alike), _Drift.of(about_feet, frames[:, :, 3:], alike + BEGUN),
            (cells.patch[:, None] == cells.patch) * (cells.normals @ cells.normals.T),
        )  # fmt: skip


def _feet(at: FloatArray, sites: FloatArray) -> FloatArray:
    """(n, 3) places brought down to the level of the platforms: there a drifting scan's pieces hang together, so that
    where they turn, crowns above shift more than platforms do."""
    up = sites[:, :3, 2].sum(axis=0)
    up /= np.linalg.norm(up)
    height = (at - sites[:, :3, 3].mean(axis=0)) @ up
    return np.asarray(at - height[:, None] * up)


@dataclass(frozen=True)
class _Component:
    """One set of sizes. likely: its log likelihood. ξ of the sites: mean (6s,), covariance (6s, 6s)."""

    likely: float
    mean: FloatArray
    covariance: FloatArray


def _component(model: _Model, shift_um: float, turn_deg: float, own_um: float) -> _Component:
    """Restricted likelihood, and best linear unbiased prediction at the sites (Robinson 1991, Stat. Sci. 6:15)."""
    from scipy.linalg import cholesky, solve_triangular

    shift, turn, own = (1e-3 * shift_um) ** 2, np.radians(turn_deg) ** 2, (1e-3 * own_um) ** 2
    covariance = model.noise + shift * model.shift.gaps + turn * model.turn.gaps + own * model.own
    crossed = shift * model.shift.crossed + turn * model.turn.crossed
    at_sites = shift * model.shift.sites + turn * model.turn.sites
    root = cholesky(covariance, lower=True, overwrite_a=True, check_finite=False)
    right = np.concatenate([model.design, model.rise[:, None], crossed.T], axis=1)
    solved = solve_triangular(root, right, lower=True, check_finite=False)
    x, z, link = solved[:, :7], solved[:, 7], solved[:, 8:]
    inverse = np.linalg.inv(x.T @ x + np.diag(BEFOREHAND**-2.0))
    theta = inverse @ (x.T @ z)
    left = z - x @ theta
    rest = model.to_sites - link.T @ x
    likely = -np.log(np.diag(root)).sum() + 0.5 * np.linalg.slogdet(inverse)[1] - 0.5 * left @ left
    known = at_sites - link.T @ link + rest @ inverse @ rest.T
    return _Component(float(likely), model.to_sites @ theta + link.T @ left, (known + known.T) / 2.0)


def _mixed(parts: list[_Component], frames: FloatArray) -> Motion:
    """The mixture's mean and covariance, the latter widened to the mixture's 95 % quantiles by drawing from it."""
    likely = np.array([part.likely for part in parts])
    share = np.exp(likely - likely.max())
    share /= share.sum()
    mean = sum((w * part.mean for w, part in zip(share, parts, strict=True)), np.zeros(len(parts[0].mean)))
    covariance = np.zeros((len(mean), len(mean)))
    rng = np.random.default_rng(20261128)
    drawn = []
    for w, part, count in zip(share, parts, rng.multinomial(DRAWS, share), strict=True):
        off = part.mean - mean
        covariance += w * (part.covariance + np.outer(off, off))
        if count:
            drawn.append(off + rng.multivariate_normal(np.zeros(len(mean)), part.covariance, count, method="eigh"))
    wider = _widening(covariance, np.concatenate(drawn))
    covariance = covariance * np.outer(wider, wider)
    views = np.concatenate(frames) * (1e-3 * VIEW_UM * np.array([1.0] * 3 + [1.0 / CROWN] * 3))
    return Motion(mean, covariance + views @ views.T)


def _widening(covariance: FloatArray, drawn: FloatArray) -> FloatArray:
    """(6s,) least factors of shifts and of turns by which no 95 % bound of a shift or a tilt is smaller than drawn."""
    factor = np.ones((len(covariance) // 6, 2, 3))
    for site, first in enumerate(range(0, len(covariance), 6)):
        for kind, at in enumerate((slice(first, first + 3), slice(first + 3, first + 5))):
            shown = float(np.quantile(np.linalg.norm(drawn[:, at], axis=1), LEVEL))
            factor[site, kind] = max(1.0, shown / max(length_95(covariance[at, at]), 1e-12))
    return factor.ravel()
