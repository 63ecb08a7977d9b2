"""Which residual field the residuals make likeliest: correlation length, smoothness, and both standard deviations.

Two views of the residuals are weighed together, a composite likelihood (Varin, Reid & Firth 2011, Stat. Sinica 21:5).
Compact blocks of fine patches show what is white and what is correlated over short distances. Few large patches
over the whole scan body show what is correlated over long ones, with the fitted parameters integrated out (restricted
maximum likelihood; method, eq. 7–8).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from heapq import heappop, heappush
from itertools import product

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.normal import factored
from stylobate.core.types import FloatArray, LongArray
from stylobate.uncertainty.field import (
    EDGE_SD,
    EDGE_WARY,
    VIEW_SD,
    Field,
    Patches,
    correlation,
    forward,
    larger,
    merged,
    same_edge,
    same_view,
    squared_distances,
)

BLOCK = 90  # fine patches in a block
WHOLE, FEWER = 300, 150  # large patches over the whole body; where many fields are set against each other
LENGTHS = (0.08, 4.0)  # mm, bounds of the correlation length
WHITES = (1e-3, 1e4)  # bounds of σ²/s²
SMOOTHNESS = (0.5, 1.5, 2.5)
# What is known of scanners before the scan, as mean and standard deviation of logarithms, so wide that a rough body's
# data override it: correlated noise about 9 µm (mesh noise of two scanners, 5.3 to 12.6 µm: PLoS ONE 2017, PMC5549906),
# over about 0.7 mm (common practice, no source). It keeps a body that shows little from looking free of it.
SD_PRIOR, LENGTH_PRIOR = (float(np.log(0.009)), 0.6), (float(np.log(0.7)), 0.6)
UNUSUAL = 5.99  # −2 log of the prior that 5 % of scanners exceed (chi-square, two degrees of freedom)
STEPS = np.linspace(-1.2, 1.2, 7)  # in ln length and ln standard deviation, of fields set against the likeliest
UNHEARD = 24.0  # −2 log of the odds, 6e-6, below which a field adds nothing
# Standard deviation of a view's shift, mm: half Cauchy with 2 µm, and what each step stands for (no source).
VIEWS = np.array([0.0, 0.001, 0.002, 0.004, 0.008, 0.016])
VIEWS_WEIGHT = np.gradient(VIEWS) / (1.0 + (VIEWS / 0.002) ** 2)
# Standard deviation of a surface at sharp edges, mm, each as likely beforehand (no source), the first for none.
EDGES = np.array([0.0, 0.003, 0.006, 0.012, 0.024])
FUSED = 2  # of EDGES, that scans fused of depth maps show (no source)
SHAPES_KEPT = 12  # correlations, by length and smoothness: a search comes back to one with other white noise
RIDGE = 1e-6  # of the mean information: a motion that nothing fixes does not make it singular

Sums = tuple[float, float, int]
"""ln det of the covariance (and of the information) over s²; weighted squares; how many residuals count."""


def _blocks(centre: FloatArray) -> list[LongArray]:
    """Split into compact blocks of equal size (±1), at most BLOCK each, by halving along the longest side."""
    blocks = [np.arange(len(centre))]
    while len(blocks[0]) > BLOCK:
        halves = []
        for block in blocks:
            axis = int(np.argmax(np.ptp(centre[block], axis=0)))
            order = block[np.argsort(centre[block, axis], kind="stable")]
            halves += [order[: len(order) // 2], order[len(order) // 2 :]]
        blocks = sorted(halves, key=len, reverse=True)
    return blocks


class _Blocks:
    """The residuals in compact blocks of fine patches, each block by itself."""

    def __init__(self, patches: Patches, fitted: FloatArray | None) -> None:
        """fitted: (k, k) covariance of the fitted parameters divided by s², or None for none."""
        blocks = _blocks(patches.centre)
        size = max(len(b) for b in blocks)
        index = np.array([np.pad(b, (0, size - len(b)), mode="edge") for b in blocks])
        real = np.array([np.arange(size) < len(b) for b in blocks])
        distance = np.sqrt(squared_distances(patches.centre[index], patches.spread[index]))
        empty = ~(real[:, :, None] & real[:, None, :])
        residual = np.where(real, patches.residual[index], 0.0)
        matrix = patches.matrix[index]
        lost = 0.0 if fitted is None else matrix @ fitted @ matrix.transpose(0, 2, 1)
        self.n = len(patches.residual)
        self.alone = np.where(real, 0.0, 1.0)
        self.white = np.where(real, 1.0 / patches.count[index], 0.0)

        @lru_cache(SHAPES_KEPT)
        def shape(length: float, smoothness: float) -> FloatArray:
            """(b, m + 1, m + 1): of each block, over s², without white noise; the residuals in its last row."""
            k = correlation(distance / length, smoothness) - lost
            k[empty] = 0.0
            wide = np.zeros((len(k), size + 1, size + 1))
            wide[:, :-1, :-1] = k
            wide[:, -1, :-1] = residual
            wide[:, -1, -1] = 1e12
            return wide

        self.shape = shape

    def sums(self, length: float, white: float, smoothness: float) -> Sums:
        """Raises LinAlgError where the covariance is not positive."""
        wide = self.shape(length, smoothness).copy()
        diagonal = np.arange(wide.shape[1] - 1)
        wide[:, diagonal, diagonal] += white * self.white + self.alone
        factor = np.linalg.cholesky(wide)
        log_det = 2.0 * float(np.sum(np.log(factor[:, diagonal, diagonal])))
        return log_det, float(np.sum(factor[:, -1, :-1] ** 2)), self.n


class Whole:
    """The residuals over large patches, all together, less what the fitted parameters explain."""

    def __init__(self, patches: Patches, most: int = WHOLE) -> None:
        """group (n,): number of the large patch, of at most about `most`, that each patch is merged into."""
        self.group = larger(patches, most)
        self.large = merged(patches, self.group)
        distance = np.sqrt(squared_distances(self.large.centre[None], self.large.spread[None])[0])
        shown = self.large.matrix.any(axis=0)  # a parameter that no patch tells of takes nothing from the residuals
        self.fitted = int(shown.sum())
        self.columns = np.column_stack([self.large.matrix[:, shown], self.large.residual])

        @lru_cache(SHAPES_KEPT)
        def shape(length: float, smoothness: float) -> FloatArray:
            """(n, n): correlation of the large patches."""
            return correlation(distance / length, smoothness)

        self.shape = shape

    def sums(self, length: float, white: float, smoothness: float) -> Sums:
        """Raises LinAlgError where the covariance is not positive."""
        return self.under(self.shape(length, smoothness), white)

    def under(self, shape: FloatArray, white: float) -> Sums:
        """The same under any covariance of the patches over s² (n, n), to which the white part comes."""
        covariance = shape.copy()
        covariance.reshape(-1)[:: len(shape) + 1] += white / self.large.count
        factor: FloatArray = np.asarray(np.linalg.cholesky(covariance), dtype=np.float64)
        log_det, quadratic = _restricted(factor, self.columns.copy())
        return log_det, quadratic, max(len(factor) - self.fitted, 1)


@compiled
def _restricted(factor: FloatArray, white: FloatArray) -> tuple[float, float]:
    """ln det K + ln det AᵀK⁻¹A and the squares that A leaves of r, with K = L Lᵀ.

    factor: L, lower triangular (n, n); white (n, k + 1): A and r, whitened in place.
    """
    forward(factor, white)
    log_det = 0.0
    for i in range(len(factor)):
        log_det += 2.0 * np.log(factor[i, i])
    k = white.shape[1] - 1
    square = np.zeros((k + 1, k + 1))
    for row in white:
        for i in range(k + 1):
            for j in range(i + 1):
                square[i, j] += row[i] * row[j]
    ridge = RIDGE * np.trace(square[:k, :k]) / k + 1e-12
    for i in range(k):
        square[i, i] += ridge
    factored(square)
    for i in range(k):
        log_det += 2.0 * np.log(square[i, i])
    return log_det, square[k, k]


def _surprise(length: float, sd: float) -> float:
    """−2 log of the prior, up to a constant; mm."""
    of_length = (np.log(length) - LENGTH_PRIOR[0]) / LENGTH_PRIOR[1]
    return float(of_length**2 + ((np.log(sd) - SD_PRIOR[0]) / SD_PRIOR[1]) ** 2)


class _Likelihood:
    """Minus twice the log likelihood of both views and of the prior, the overall scale profiled out."""

    def __init__(self, blocks: _Blocks, whole: Whole) -> None:
        self.views = (blocks, whole)
        self.known: dict[tuple[float, float, float], tuple[float, float]] = {}

    def __call__(self, log_length: float, log_white: float, smoothness: float) -> tuple[float, float]:
        """(−2 log L up to a constant, s²); worked out once at each place, to which searches come back."""
        place = round(log_length, 9), round(log_white, 9), smoothness
        if place not in self.known:
            self.known[place] = self._at(log_length, log_white, smoothness)
        return self.known[place]

    def _at(self, log_length: float, log_white: float, smoothness: float) -> tuple[float, float]:
        at = float(np.exp(log_length)), float(np.exp(log_white)), smoothness
        try:
            log_det, quadratic, n = (sum(part) for part in zip(*(v.sums(*at) for v in self.views), strict=True))
        except np.linalg.LinAlgError:
            return np.inf, np.nan
        scale = max(quadratic / n, 1e-18)
        surprise = _surprise(at[0], float(np.sqrt(scale)))
        return n * float(np.log(scale)) + log_det + surprise, scale


def _descend(
    cost: _Likelihood, start: tuple[float, float], smoothness: float, step: float, least: float
) -> tuple[float, tuple[float, float], float]:
    """Pattern search over (log L, log σ²/s²): value, place, s²."""
    bounds = (np.log(LENGTHS), np.log(WHITES))
    place = start
    value, scale = cost(*place, smoothness)
    while step > least:
        moved = False
        for axis, sign in ((0, 1), (0, -1), (1, 1), (1, -1)):
            trial = list(place)
            factor = 1.0 if axis == 0 else 2.0
            trial[axis] = float(np.clip(trial[axis] + sign * step * factor, *bounds[axis]))
            if tuple(trial) == place:
                continue
            new, new_scale = cost(trial[0], trial[1], smoothness)
            if new < value - 1e-3:
                value, scale, place, moved = new, new_scale, (trial[0], trial[1]), True
        if not moved:
            step /= 2.0
    return value, place, scale


def usual(white_sd: float) -> Field:
    """The field that scanners have most often, made wary, with the white noise (mm) of this site."""
    return Field(white_sd, float(np.exp(SD_PRIOR[0])), float(np.exp(LENGTH_PRIOR[0])), 1.5, VIEW_SD, EDGE_WARY)


def unusual(field: Field) -> bool:
    """Whether scanners hardly have such a field: a cause may have been taken for noise."""
    return _surprise(field.length, field.correlated_sd) > UNUSUAL


def estimate(patches: Patches, known: Field | None = None, fitted: FloatArray | None = None) -> Field:
    """The field that the residuals make likeliest.

    known: a field from which the search starts. fitted: covariance (k, k) of the parameters fitted under it, mm², of
    which the blocks are what is left over; None: the blocks are taken as they are.
    """
    whole = Whole(patches, FEWER if known is None else WHOLE)
    if known is None:
        cost = _Likelihood(_Blocks(patches, None), whole)
        start = min(
            ((float(np.log(length)), float(np.log(white))) for length in (0.25, 0.6, 1.5) for white in (0.3, 5.0)),
            key=lambda at: cost(at[0], at[1], 1.5)[0],
        )
        found = {1.5: _descend(cost, start, 1.5, 0.4, 0.15)}
        for smoothness in (SMOOTHNESS[0], SMOOTHNESS[2]):
            found[smoothness] = _descend(cost, found[1.5][1], smoothness, 0.4, 0.15)
    else:
        start = (float(np.log(known.length)), float(np.log((known.white_sd / known.correlated_sd) ** 2)))
        cost = _Likelihood(_Blocks(patches, None if fitted is None else fitted / known.correlated_sd**2), whole)
        if fitted is not None and not np.isfinite(cost(start[0], start[1], known.smoothness)[0]):
            # The fit moved too far for its covariance to be subtracted.
            cost = _Likelihood(_Blocks(patches, None), whole)
        found = {known.smoothness: _descend(cost, start, known.smoothness, 0.2, 0.08)}
    smoothness = min(found, key=lambda nu: found[nu][0])
    _, (log_length, log_white), scale = found[smoothness]
    scale = max(scale, 1e-12)
    white, correlated = float(np.sqrt(scale * np.exp(log_white))), float(np.sqrt(scale))
    field = Field(white, correlated, float(np.exp(log_length)), smoothness, VIEW_SD, EDGE_SD)
    return field if known is None else _with_edges(whole, field)


def _with_edges(whole: Whole, field: Field) -> Field:
    """The field with how untrue the residuals say a surface is at sharp edges (method, eq. 6a, 8d)."""
    beside = np.flatnonzero(whole.large.edge if whole.large.edge is not None else ())
    if not len(beside):
        return field
    views = field.view_sd**2 / field.correlated_sd**2 * same_view(whole.large)
    shape = whole.shape(field.length, field.smoothness) + views
    alike = np.zeros_like(shape)
    alike[np.ix_(beside, beside)] = same_edge(whole.large, beside)
    odds = _odds(whole, field, shape, alike, EDGES)
    untrue = odds[FUSED] / (odds[0] + odds[FUSED])
    return replace(field, edge_sd=float(np.sqrt(odds @ EDGES**2 / odds.sum())), edge_doubt=EDGE_WARY * np.sqrt(untrue))


def plausible(whole: Whole, field: Field) -> tuple[list[Field], FloatArray]:
    """Fields about the likeliest one, and their probabilities (k,); its white noise is taken as known.

    By the view of the whole body and the prior alone: blocks set beside each other would count for independent what
    is not, and make the field look better known than it is.
    """
    lengths = np.clip(field.length * np.exp(STEPS), *LENGTHS).tolist()
    sds = (field.correlated_sd * np.exp(STEPS)).tolist()

    def cost(place: tuple[int, int, int]) -> float:
        smoothness, length, sd = SMOOTHNESS[place[0]], lengths[place[1]], sds[place[2]]
        minus_twice = _minus_twice_log(whole, whole.shape(length, smoothness), sd, field.white_sd)
        return minus_twice + _surprise(length, sd)

    start = SMOOTHNESS.index(field.smoothness), len(STEPS) // 2, len(STEPS) // 2
    known = _filled(cost, start, (len(SMOOTHNESS), len(STEPS), len(STEPS)))
    odds = np.exp((min(known.values()) - np.array(list(known.values()))) / 2.0)
    fields = [Field(field.white_sd, sds[sd], lengths[length], SMOOTHNESS[nu]) for nu, length, sd in known]
    return fields, odds / odds.sum()


def _filled(
    cost: Callable[[tuple[int, int, int]], float], start: tuple[int, int, int], sizes: tuple[int, int, int]
) -> dict[tuple[int, int, int], float]:
    """Costs (−2 log L) over a grid, looked at from `start` on, the lowest first, until all beside them are UNHEARD."""
    known = {start: cost(start)}
    open_ = [(known[start], start)]
    while open_ and not open_[0][0] > min(known.values()) + UNHEARD:
        _, place = heappop(open_)
        for step in product((-1, 0, 1), repeat=3):
            beside = place[0] + step[0], place[1] + step[1], place[2] + step[2]
            if beside not in known and all(0 <= at < size for at, size in zip(beside, sizes, strict=True)):
                known[beside] = cost(beside)
                heappush(open_, (known[beside], beside))
    return known


def shifts_of_views(whole: Whole, field: Field) -> float:
    """Mean square shift of the views of which the scan is fused (mm²): what is known before, and what is left over,
    beyond what the field counts already.

    A view shifts what it shows as one piece; patches whose normals point alike are taken to be of one view.
    """
    shape = whole.shape(field.length, field.smoothness)
    alike = same_view(whole.large)
    odds = VIEWS_WEIGHT * _odds(whole, field, shape, alike, VIEWS)
    return max(float(odds @ VIEWS**2 / odds.sum()) - field.view_sd**2, 0.0)


def _odds(whole: Whole, field: Field, shape: FloatArray, alike: FloatArray, sds: FloatArray) -> FloatArray:
    """Likelihood of each sd (k,), mm, of what goes together as `alike` (n, n), over that of the likeliest.

    shape (n, n): all else but the white noise, over the field's s².
    """
    scale = field.correlated_sd**2
    cost = [_minus_twice_log(whole, shape + sd**2 / scale * alike, field.correlated_sd, field.white_sd) for sd in sds]
    return np.asarray(np.exp((min(cost) - np.array(cost)) / 2.0))


def _minus_twice_log(whole: Whole, shape: FloatArray, sd: float, white_sd: float) -> float:
    """−2 log L of one view of the residuals, inf where the covariance is not positive."""
    try:
        log_det, quadratic, n = whole.under(shape, (white_sd / sd) ** 2)
    except np.linalg.LinAlgError:
        return np.inf
    return log_det + n * float(np.log(sd**2)) + quadratic / sd**2
