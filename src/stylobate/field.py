"""The residual field of one site: how the scan's error is spread and correlated, over patches of neighbouring points.

Covariance of two patches: s²·M_ν(d/L), plus white noise σ²/n on a patch of n points; M_ν is a Matérn correlation with
smoothness ν of 1/2, 3/2 or 5/2 (method, eq. 6). It is estimated in likelihood.py.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray

MOST_PATCHES = 1200
LEAST_CELL = 0.16  # mm


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
        d2 = squared_distances(patches.centre[None], patches.spread[None])[0]
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


def squared_distances(centre: FloatArray, spread: FloatArray) -> FloatArray:
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


def merged(patches: Patches, most: int) -> Patches:
    """The same residuals over larger patches, at most about `most`, each the mean of its points."""
    cell = 2.0 * LEAST_CELL
    while True:
        at = np.floor((patches.centre - patches.centre.min(axis=0)) / cell).astype(np.int64)
        _, group = np.unique((at[:, 0] * 2048 + at[:, 1]) * 2048 + at[:, 2], return_inverse=True)
        size = int(group.max()) + 1
        if size <= most:
            break
        cell *= max(1.05, float(np.sqrt(size / most)))
    count = np.bincount(group, weights=patches.count).astype(np.float64)

    def mean(values: FloatArray) -> FloatArray:
        return np.asarray(np.bincount(group, weights=values * patches.count) / count)

    centre = np.stack([mean(column) for column in patches.centre.T], axis=1)
    spread = mean(patches.spread + np.sum((patches.centre - centre[group]) ** 2, axis=1))
    matrix = np.stack([mean(column) for column in patches.matrix.T], axis=1)
    return Patches(centre, mean(patches.residual), matrix, count, spread)
