"""The residual field of one site: how the scan's error is spread and correlated, estimated from the residuals.

Covariance of two patches: s²·M_ν(d/L), plus white noise σ²/n on a patch of n points; M_ν is a Matérn correlation with
smoothness ν of 1/2, 3/2 or 5/2. The parameters maximise a block likelihood of the residuals whose covariance counts the
parameters already fitted (method, eq. 6–8).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray

MOST_PATCHES = 1200
LEAST_CELL = 0.16  # mm
BLOCK = 90
LENGTHS = (0.08, 4.0)  # mm, bounds of the correlation length
WHITES = (1e-3, 1e4)  # bounds of σ²/s²
SMOOTHNESS = (0.5, 1.5, 2.5)


@dataclass(frozen=True)
class Patches:
    """Neighbouring points averaged: centre (n, 3) mm; residual (n,) mm; matrix (n, k); count (n,); spread (n,).

    spread: mean squared distance of a patch's points from its centre, mm².
    """

    centre: FloatArray
    residual: FloatArray
    matrix: FloatArray
    count: FloatArray
    spread: FloatArray


@dataclass(frozen=True)
class Field:
    """Noise of one site: white_sd of a point, correlated_sd, mm; length mm; smoothness ν."""

    white_sd: float
    correlated_sd: float
    length: float
    smoothness: float

    def covariance(self, patches: Patches) -> FloatArray:
        """(n, n) covariance of the patches' residuals, mm²."""
        d2 = _squared_distances(patches.centre[None], patches.spread[None])[0]
        result = self.correlated_sd**2 * correlation(np.sqrt(d2) / self.length, self.smoothness)
        result[np.diag_indices(len(result))] += self.white_sd**2 / patches.count
        return result

    def factor(self, patches: Patches) -> FloatArray:
        """(n, n) lower Cholesky factor of the covariance."""
        return np.asarray(np.linalg.cholesky(self.covariance(patches)))


def correlation(t: FloatArray, smoothness: float) -> FloatArray:
    """Matérn correlation at t = distance/length, by closed form (Rasmussen & Williams 2006, eq. 4.16–4.17)."""
    if smoothness == 0.5:
        return np.asarray(np.exp(-t))
    if smoothness == 1.5:
        u = np.sqrt(3.0) * t
        return np.asarray((1.0 + u) * np.exp(-u))
    u = np.sqrt(5.0) * t
    return np.asarray((1.0 + u + u * u / 3.0) * np.exp(-u))


def _squared_distances(centre: FloatArray, spread: FloatArray) -> FloatArray:
    """(b, m, m) expected squared distance between a point of one patch and a point of another."""
    square = np.einsum("bid,bid->bi", centre, centre)
    d2 = square[:, :, None] + square[:, None, :] - 2.0 * centre @ centre.transpose(0, 2, 1)
    return np.asarray(np.maximum(d2, 0.0) + spread[:, :, None] + spread[:, None, :])


def groups_of(points: FloatArray, gradient: FloatArray) -> LongArray:
    """Patch number (n,) of each point (n, 3): cells and main direction of the gradient, at most about MOST_PATCHES."""
    cell = LEAST_CELL
    while True:
        group, size = _groups(points, gradient, cell)
        if size <= MOST_PATCHES:
            return group
        cell *= max(1.05, float(np.sqrt(size / MOST_PATCHES)))


def patches_of(
    points: FloatArray,
    residual: FloatArray,
    matrix: FloatArray,
    group: LongArray,
) -> Patches:
    """Points (n, 3) averaged over patches; `group` from groups_of, kept while a pose is refined."""
    size = int(group.max()) + 1
    count = np.bincount(group, minlength=size).astype(np.float64)

    def mean(values: FloatArray) -> FloatArray:
        return np.bincount(group, weights=values, minlength=size) / count

    centre = np.stack([mean(points[:, k]) for k in range(3)], axis=1)
    spread = mean(np.sum((points - centre[group]) ** 2, axis=1))
    columns = np.stack([mean(matrix[:, k]) for k in range(matrix.shape[1])], axis=1)
    return Patches(centre, mean(residual), columns, count, spread)


def _groups(points: FloatArray, gradient: FloatArray, cell: float) -> tuple[LongArray, int]:
    side = np.argmax(np.abs(gradient), axis=1)
    side = side * 2 + (gradient[np.arange(len(gradient)), side] > 0)
    at = np.floor((points - points.min(axis=0)) / cell).astype(np.int64)
    code = ((at[:, 0] * 2048 + at[:, 1]) * 2048 + at[:, 2]) * 6 + side
    _, group = np.unique(code, return_inverse=True)
    return group, int(group.max()) + 1


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


class _BlockLikelihood:
    """Minus twice the log likelihood of the blocks, the overall scale profiled out."""

    def __init__(self, patches: Patches, fitted: FloatArray | None) -> None:
        """fitted: (k, k) covariance of the fitted parameters divided by s², or None for none."""
        blocks = _blocks(patches.centre)
        size = max(len(b) for b in blocks)
        index = np.array([np.pad(b, (0, size - len(b)), mode="edge") for b in blocks])
        real = np.array([np.arange(size) < len(b) for b in blocks])
        self.distance = np.sqrt(_squared_distances(patches.centre[index], patches.spread[index]))
        self.inverse_count = 1.0 / patches.count[index]
        self.residual = np.where(real, patches.residual[index], 0.0)
        self.pairs = real[:, :, None] & real[:, None, :]
        self.dummy = np.where(real, 0.0, 1.0)
        self.n = len(patches.residual)
        matrix = patches.matrix[index]
        self.lost = 0.0 if fitted is None else matrix @ fitted @ matrix.transpose(0, 2, 1)

    def __call__(self, log_length: float, log_white: float, smoothness: float) -> tuple[float, float]:
        """(−2 log L up to a constant, s²)."""
        k = correlation(self.distance / np.exp(log_length), smoothness)
        k = np.where(self.pairs, k - self.lost, 0.0)
        diagonal = np.arange(k.shape[1])
        k[:, diagonal, diagonal] += np.exp(log_white) * self.inverse_count * (1.0 - self.dummy) + self.dummy
        wide = np.zeros((k.shape[0], k.shape[1] + 1, k.shape[1] + 1))
        wide[:, :-1, :-1] = k
        wide[:, -1, :-1] = self.residual
        wide[:, :-1, -1] = self.residual
        wide[:, -1, -1] = 1e12
        try:
            factor = np.linalg.cholesky(wide)
        except np.linalg.LinAlgError:
            return np.inf, np.nan
        scale = float(np.sum(factor[:, -1, :-1] ** 2)) / self.n
        log_det = 2.0 * float(np.sum(np.log(factor[:, diagonal, diagonal])))
        return self.n * float(np.log(max(scale, 1e-18))) + log_det, scale


def _descend(
    cost: _BlockLikelihood, start: tuple[float, float], smoothness: float, step: float, least: float
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


def estimate(patches: Patches, fitted: tuple[Field, FloatArray] | None = None) -> Field:
    """The field that the residuals make likeliest.

    fitted: a field and the covariance (k, k) of the parameters fitted with it, mm²: the residuals are what those
    parameters left over, and the search starts from that field.
    """
    if fitted is None:
        cost = _BlockLikelihood(patches, None)
        start = min(
            ((float(np.log(length)), float(np.log(white))) for length in (0.25, 0.6, 1.5) for white in (0.3, 5.0)),
            key=lambda at: cost(at[0], at[1], 1.5)[0],
        )
        found = {1.5: _descend(cost, start, 1.5, 0.4, 0.15)}
        for smoothness in (SMOOTHNESS[0], SMOOTHNESS[2]):
            found[smoothness] = _descend(cost, found[1.5][1], smoothness, 0.4, 0.15)
    else:
        known, covariance = fitted
        start = (float(np.log(known.length)), float(np.log((known.white_sd / known.correlated_sd) ** 2)))
        cost = _BlockLikelihood(patches, covariance / known.correlated_sd**2)
        if not np.isfinite(cost(start[0], start[1], known.smoothness)[0]):
            cost = _BlockLikelihood(patches, None)  # the fit moved too far for its covariance to be subtracted
        found = {known.smoothness: _descend(cost, start, known.smoothness, 0.2, 0.08)}
    smoothness = min(found, key=lambda nu: found[nu][0])
    _, (log_length, log_white), scale = found[smoothness]
    scale = max(scale, 1e-12)
    return Field(
        float(np.sqrt(scale * np.exp(log_white))), float(np.sqrt(scale)), float(np.exp(log_length)), smoothness
    )
