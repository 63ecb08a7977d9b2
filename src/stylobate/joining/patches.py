"""How well the pose is known at each site, from how patches of the shared surface differ (method/join, eqs. 7–12).

Nothing is assumed about the noise within a patch but that its score is as uncertain as its information says, times one
factor that the patches themselves show. Between patches the surface may be displaced: each by itself (gingiva that has
moved), in common with its neighbours (drift of either scan), and along its normals (gingiva that has swollen).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

import numpy as np

from stylobate.bounds import length_95
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.joining.fine import Fit, cubes

LEAST_SIDE = 5.0
"""mm: side of a patch, several times the length over which a scanner's noise hangs together."""
MOST_PATCHES = 40
LEAST_POINTS = 12.0
"""Weight below which a piece of surface is no patch."""
LONG = 50.0
"""mm: length over which drift hangs together."""
OWN = (0.0, 0.5, 3.0, 18.0)
SWOLLEN = (0.0, 1.0, 8.0, 60.0)
"""Variance of a patch's own shift and of its swelling, each against the variance that its noise leaves an average
patch; all held equally likely beforehand."""
COMMON_UM = (8.0, 20.0, 50.0)
TURN_DEG = (0.05, 0.15, 0.4)
"""Standard deviations of the common shift along each axis and of the common turn about each, all held equally likely.
They bracket what scans of whole arches are known for: precision 38 to 49 µm (2024, PMC11636004), angles between
implants off by 0.33°, 0.02 to 0.92° (Arcuri 2022, Materials 15:927). One pair of scans shows too few places to tell."""
VIEW_UM = 5.0
"""Standard uncertainty, along each axis, of what two scans cannot show by differing from place to place: surfaces that
face one way all lie off alike (mesh noise of 5.3 to 12.6 µm by angle: PLoS ONE 2017, PMC5549906; the size is our
choice)."""
DRAWS = 8000
LEVEL = 0.95


@dataclass(frozen=True)
class Patches:
    """side: mm. middle (3,): about which small motions are taken. centres (k, 3). information (k, 7, 7) and
    score (k, 7): of a small motion about the middle, and of a swelling along the normals."""

    side: float
    middle: FloatArray
    centres: FloatArray
    information: FloatArray
    score: FloatArray


def patches_of(fit: Fit) -> Patches:
    """The fit's points in cubes, as small as MOST_PATCHES allows but not below LEAST_SIDE."""
    used = fit.weight > 0.0
    at, normal, gap, weight = fit.at[used], fit.gradient[used], fit.gap[used], fit.weight[used]
    middle = np.average(at, axis=0, weights=weight) if len(at) else np.zeros(3)
    jacobian = np.concatenate([normal, np.cross(at - middle, normal), np.ones((len(at), 1))], axis=1)
    side = LEAST_SIDE
    while True:
        number, count = cubes(at - middle + side / 2.0, side)
        total = np.bincount(number, weight, count)
        if (total >= LEAST_POINTS).sum() <= MOST_PATCHES:
            break
        side += 0.5
    kept = np.flatnonzero(total >= LEAST_POINTS)
    centres, information, score = np.empty((len(kept), 3)), np.empty((len(kept), 7, 7)), np.empty((len(kept), 7))
    for row, k in enumerate(kept):
        mine = number == k
        weighted = jacobian[mine] * weight[mine, None]
        centres[row] = np.average(at[mine], axis=0, weights=weight[mine])
        information[row] = weighted.T @ jacobian[mine]
        score[row] = -weighted.T @ gap[mine]
    return Patches(side, middle, centres, information, score)


@dataclass(frozen=True)
class Motion:
    """Small motions ξ of the sites, in connection frames, that remain to be made: mean (6n,), covariance (6n, 6n).

    The covariance is widened so that a normal distribution has the 95 % quantiles of the mixture it stands for.
    """

    mean: FloatArray
    covariance: FloatArray


def motion_at(patches: Patches, sites: FloatArray) -> Motion:
    """What is left to move at sites (n, 4, 4), first scan's frame, over all that drift and gingiva may have done."""
    rows, rises = _whitened(patches)
    arms = _at(patches.centres - patches.middle)
    local = _diagonal([row @ arm for row, arm in zip(rows, arms, strict=True)])
    axes = _diagonal([_turned(site) for site in sites])
    to_sites = axes @ np.concatenate([np.linalg.inv(arm) for arm in _at(sites[:, :3, 3] - patches.middle)])
    shift, swelling = _average([row @ arm for row, arm in zip(rows, arms, strict=True)])
    drift, turn = np.array([1.0] * 3 + [0.0] * 4), np.array([0.0] * 3 + [1.0] * 3 + [0.0])
    feet = _at(_feet(patches.centres, sites) - patches.middle)
    below = _diagonal([row @ foot for row, foot in zip(rows, feet, strict=True)])
    places = np.concatenate([_feet(patches.centres, sites), sites[:, :3, 3]])
    common = np.exp(-np.linalg.norm(places[:, None] - places[None], axis=2) / LONG)
    count = len(patches.centres)
    alone = np.eye(count), np.zeros((len(sites), count)), np.zeros((len(sites),) * 2)
    known = common[:count, :count], common[count:, :count], common[count:, count:]
    sheared = np.array([0.0] * 3 + [2.0 / (LONG * patches.side)] * 3 + [0.0])
    spreads = (
        _Spread.of(alone, shift, local, axes),
        _Spread.of(known, drift, below, axes) + _Spread.of(alone, sheared, local, axes),
        _Spread.of(alone, swelling, local, axes),
        _Spread.of(known, turn, below, axes),
    )
    model = _Model(np.concatenate(rows), np.concatenate(rises), to_sites, spreads)
    factor = _component(model, (1.0, 0.0, 1.0, 0.0)).factor
    shifts = tuple((1e-3 * um) ** 2 / factor for um in COMMON_UM)
    turns = tuple(np.radians(turn) ** 2 / factor for turn in TURN_DEG)
    return _mixed([_component(model, ratios) for ratios in product(OWN, shifts, SWOLLEN, turns)])


def _feet(centres: FloatArray, sites: FloatArray) -> FloatArray:
    """(k, 3) centres brought down to the level of the platforms: there a drifting scan's pieces hang together, so that
    where they turn, crowns above shift more than platforms do."""
    up = sites[:, :3, 2].sum(axis=0)
    up /= np.linalg.norm(up)
    height = (centres - sites[:, :3, 3].mean(axis=0)) @ up
    return np.asarray(centres - height[:, None] * up)


def _at(arm: FloatArray) -> FloatArray:
    """(n, 7, 7) taking the small motion of what stands at `arm` (n, 3) from the middle to a motion about the middle."""
    result = np.tile(np.eye(7), (len(arm), 1, 1))
    for k, v in enumerate(arm):
        result[k, :3, 3:6] = rigid.skew(v)
    return result


def _turned(site: FloatArray) -> FloatArray:
    """(6, 7) turning a small motion at the platform from scan axes to the connection's; a swelling moves no site."""
    return np.concatenate([np.kron(np.eye(2), site[:3, :3].T), np.zeros((6, 1))], axis=1)


def _whitened(patches: Patches) -> tuple[list[FloatArray], list[FloatArray]]:
    """Each patch as z = L·θ + noise, the noise of unit covariance up to one common factor: L (m, 7) and z (m,)."""
    rows, rises = [], []
    for information, score in zip(patches.information, patches.score, strict=True):
        values, vectors = np.linalg.eigh(information)
        told = values > 1e-9 * values[-1]
        root = np.sqrt(values[told])
        rows.append(root[:, None] * vectors[:, told].T)
        rises.append(vectors[:, told].T @ score / root)
    return rows, rises


def _diagonal(blocks: list[FloatArray]) -> FloatArray:
    result = np.zeros((sum(len(block) for block in blocks), 7 * len(blocks)))
    top = 0
    for k, block in enumerate(blocks):
        result[top : top + len(block), 7 * k : 7 * k + 7] = block
        top += len(block)
    return result


def _average(local: list[FloatArray]) -> tuple[FloatArray, FloatArray]:
    """Variances (7,) that noise of unit factor leaves of an average patch's shift, and of its swelling."""
    told = np.mean([np.einsum("ij,ij->j", row, row) for row in local], axis=0)
    return np.array([3.0 / told[:3].sum()] * 3 + [0.0] * 4), np.array([0.0] * 6 + [1.0 / told[6]])


@dataclass(frozen=True)
class _Spread:
    """Covariance of one kind of displacement: of the patches' z, of the sites' ξ with these, and of the sites' ξ."""

    patches: FloatArray
    crossed: FloatArray
    sites: FloatArray

    def __add__(self, other: _Spread) -> _Spread:
        return _Spread(self.patches + other.patches, self.crossed + other.crossed, self.sites + other.sites)

    @staticmethod
    def of(
        where: tuple[FloatArray, FloatArray, FloatArray], diagonal: FloatArray, local: FloatArray, axes: FloatArray
    ) -> _Spread:
        """From the correlations of places (patches, sites with these, sites), and the variances (7,) at each."""
        patches, crossed, sites = where
        each = np.diag(diagonal)
        return _Spread(
            local @ np.kron(patches, each) @ local.T,
            axes @ np.kron(crossed, each) @ local.T,
            axes @ np.kron(sites, each) @ axes.T,
        )


@dataclass(frozen=True)
class _Model:
    """z = design·θ + displacements + noise; ξ of the sites = to_sites·θ + displacements."""

    design: FloatArray
    rise: FloatArray
    to_sites: FloatArray
    spreads: tuple[_Spread, ...]


@dataclass(frozen=True)
class _Component:
    """One set of variances. likely: its log likelihood. factor: of the noise. ξ of the sites is t-distributed with
    mean (6n,), scale (6n, 6n) and `freedom`."""

    likely: float
    mean: FloatArray
    scale: FloatArray
    freedom: int
    factor: float


def _component(model: _Model, ratios: tuple[float, ...]) -> _Component:
    """Restricted likelihood, and best linear unbiased prediction at the sites (Robinson 1991, Stat. Sci. 6:15)."""
    from scipy.linalg import solve_triangular

    size = len(model.rise)
    covariance = sum((r * spread.patches for r, spread in zip(ratios, model.spreads, strict=True)), np.eye(size))
    known = model.spreads[0]
    crossed = sum((r * s.crossed for r, s in zip(ratios, model.spreads, strict=True)), np.zeros_like(known.crossed))
    at_sites = sum((r * s.sites for r, s in zip(ratios, model.spreads, strict=True)), np.zeros_like(known.sites))
    root = np.linalg.cholesky(covariance)
    right = np.concatenate([model.design, model.rise[:, None], crossed.T], axis=1)
    solved = solve_triangular(root, right, lower=True, check_finite=False)
    x, z, link = solved[:, :7], solved[:, 7], solved[:, 8:]
    normal = x.T @ x
    inverse = np.linalg.inv(normal)
    theta = inverse @ (x.T @ z)
    left = z - x @ theta
    freedom = size - 7
    factor = float(left @ left) / freedom
    rest = model.to_sites - link.T @ x
    scale = factor * (at_sites - link.T @ link + rest @ inverse @ rest.T)
    likely = -np.log(np.diag(root)).sum() - 0.5 * np.linalg.slogdet(normal)[1] - 0.5 * freedom * np.log(factor)
    return _Component(float(likely), model.to_sites @ theta + link.T @ left, scale, freedom, factor)


def _mixed(parts: list[_Component]) -> Motion:
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
        covariance += w * (part.scale * part.freedom / max(part.freedom - 2, 1) + np.outer(off, off))
        if count:
            normal = rng.multivariate_normal(np.zeros(len(mean)), part.scale, count, method="eigh")
            drawn.append(off + normal / np.sqrt(rng.chisquare(part.freedom, (count, 1)) / part.freedom))
    covariance = covariance * _widening(covariance, np.concatenate(drawn))
    places = np.arange(len(mean)).reshape(-1, 6)[:, :3].ravel()
    covariance[places, places] += (1e-3 * VIEW_UM) ** 2
    return Motion(mean, covariance)


def _widening(covariance: FloatArray, drawn: FloatArray) -> float:
    """Least factor by which no 95 % bound of a shift or a tilt is smaller than the draws show."""
    factor = 1.0
    for first in range(0, len(covariance), 6):
        for at in (slice(first, first + 3), slice(first + 3, first + 5)):
            shown = float(np.quantile(np.linalg.norm(drawn[:, at], axis=1), LEVEL))
            stated = length_95(covariance[at, at])
            factor = max(factor, (shown / max(stated, 1e-12)) ** 2)
    return factor
