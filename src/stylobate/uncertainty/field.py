"""The residual field of one site: how the scan's error is spread and correlated, over patches of neighbouring points.

Covariance of two patches: s²·M_ν(d/L), plus white noise σ²/n on a patch of n points; M_ν is a Matérn correlation with
smoothness ν of 1/2, 3/2 or 5/2 (method, eq. 6). It is estimated in likelihood.py. What fusing views does comes to it
besides: views stand a little off each other, and beside a sharp edge a surface is shown less truly (eq. 6a).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.decay import decay
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.fit.edges import END

MOST_PATCHES = 800
BLOCK = 64  # columns of a matrix that are factored at a time
LEAST_CELL = 0.16  # mm
BESIDE, FINER = 0.2, 3  # mm from a sharp edge, where derivatives jump and cells are so many times smaller
LIKE = 0.1  # between unit normals that are taken together where only normals count
VIEW_SD = 0.003  # mm: shift of a view (no source)
EDGE_SD, EDGE_LENGTH = 0.004, 1.0  # mm: of a surface at a sharp edge, and over how much of it alike (no source)
EDGE_WARY = 0.012  # mm: counted at least where a cause is looked for: what fusing fills in a crease is none (no source)
MATERN = {0.5: (0.0, 0.0), 1.5: (1.0, 0.0), 2.5: (1.0, 1.0 / 3.0)}
VIEW = 0.2  # 1 − cosine between normals that are mostly seen in different views: 37° (common practice, no source)


@dataclass(frozen=True)
class Patches:
    """Neighbouring points averaged: centre (n, 3) mm; residual (n,) mm; matrix (n, k); count (n,); spread (n,).

    spread: mean squared distance of a patch's points from its centre, mm². edge (n,): how much a sharp edge is at hand,
    from 0 for none in reach to 1; None for nowhere.
    """

    centre: FloatArray
    residual: FloatArray
    matrix: FloatArray
    count: FloatArray
    spread: FloatArray
    edge: FloatArray | None = None


@dataclass(frozen=True)
class Field:
    """Noise of one site: white_sd of a point, correlated_sd, mm; length mm; smoothness ν.

    view_sd, edge_sd, mm: of the shift of a view, and of a surface at a sharp edge; edge_doubt, mm: what the latter
    counts as in the covariance of what is fitted, where that is more (method, eq. 8d).
    """

    white_sd: float
    correlated_sd: float
    length: float
    smoothness: float
    view_sd: float = 0.0
    edge_sd: float = 0.0
    edge_doubt: float = 0.0

    def covariance(self, patches: Patches) -> FloatArray:
        """(n, n) covariance of the patches' residuals, mm²."""
        edge = np.zeros(len(patches.count)) if patches.edge is None else patches.edge
        place = np.vstack([patches.centre.T, patches.spread])
        normal = np.ascontiguousarray(patches.matrix[:, :3].T)
        unit = np.ascontiguousarray(_unit(patches.matrix[:, :3]).T)
        sizes = self.correlated_sd**2, self.view_sd**2, self.edge_sd**2
        result = _pairs(place, normal, unit, edge, sizes, *_matern_of(self.smoothness, self.length))
        result.reshape(-1)[:: len(result) + 1] += self.white_sd**2 / patches.count
        return result

    def wary(self) -> Field:
        """The field under which causes are looked for: what a scan leaves at edges must not pass for one."""
        return replace(self, edge_sd=max(self.edge_sd, EDGE_WARY))

    def factor(self, patches: Patches) -> FloatArray:
        """(n, n) lower Cholesky factor of the covariance."""
        return _lower(self.covariance(patches))


def _lower(matrix: FloatArray) -> FloatArray:
    """Lower Cholesky factor, in place, a block of columns after the other: NumPy's takes nearly twice as long for 800
    rows, which it copies element by element. Raises LinAlgError where the matrix is not positive definite.
    """
    for start in range(0, len(matrix), BLOCK):
        here, below = slice(start, start + BLOCK), slice(start + BLOCK, None)
        matrix[start:, here] -= matrix[start:, :start] @ matrix[here, :start].T
        corner = np.linalg.cholesky(matrix[here, here])
        matrix[here, here], matrix[here, below] = corner, 0.0
        matrix[below, here] = matrix[below, here] @ np.linalg.inv(corner).T
    return matrix


def correlation(t: FloatArray, smoothness: float) -> FloatArray:
    """Matérn correlation at t = distance/length, by closed form (Rasmussen & Williams 2006, eq. 4.16–4.17)."""
    result = np.empty(t.size)
    _correlations(np.ascontiguousarray(t).reshape(-1), *_matern_of(smoothness, 1.0), result)
    return result.reshape(t.shape)


def _matern_of(smoothness: float, length: float) -> tuple[float, float, float]:
    """u = rate · distance; and a, b of the correlation (1 + a·u + b·u²) exp(−u)."""
    return float(np.sqrt(2.0 * smoothness)) / length, *MATERN[smoothness]


@compiled
def _matern(u: float, first: float, second: float) -> float:
    return (1.0 + u * (first + u * second)) * decay(u)


@compiled
def _correlations(t: FloatArray, rate: float, first: float, second: float, result: FloatArray) -> None:
    for i in range(len(t)):
        result[i] = _matern(rate * t[i], first, second)


@compiled
def _pairs(
    place: FloatArray, normal: FloatArray, unit: FloatArray, edge: FloatArray, sizes: tuple[float, float, float],
    rate: float, first: float, second: float,
) -> FloatArray:  # fmt: skip
    """(n, n) covariance of patches for variances `sizes` of the smooth field, of views and of edges (eq. 6, 6a, 8c).

    place (4, n): centre and spread. normal, unit (3, n): the patches' mean normals, and of unit length. edge (n,).
    """
    n = place.shape[1]
    result = np.zeros((n, n))
    away = np.empty(n)
    for i in range(n):
        x, y, z, wide = place[0, i], place[1, i], place[2, i], place[3, i]
        a, b, c, d, e, f = normal[0, i], normal[1, i], normal[2, i], unit[0, i], unit[1, i], unit[2, i]
        row = result[i]
        for j in range(i + 1):
            square = (x - place[0, j]) ** 2 + (y - place[1, j]) ** 2 + (z - place[2, j]) ** 2
            away[j] = np.sqrt(square + (wide + place[3, j]))
        if sizes[0] > 0.0:
            for j in range(i + 1):
                row[j] = sizes[0] * _matern(rate * away[j], first, second)
        if sizes[1] > 0.0:
            for j in range(i + 1):
                along = a * normal[0, j] + b * normal[1, j] + c * normal[2, j]
                apart = 1.0 - (d * unit[0, j] + e * unit[1, j] + f * unit[2, j])
                row[j] += sizes[1] * along * decay(max(apart, 0.0) / VIEW)
        if sizes[2] * edge[i] > 0.0:
            for j in range(i + 1):
                if edge[j] > 0.0 and (f > END) == (unit[2, j] > END):
                    row[j] += sizes[2] * edge[i] * edge[j] * decay(away[j] / EDGE_LENGTH)
    for i in range(n):
        for j in range(i):
            result[j, i] = result[i, j]
    return result


def same_view(patches: Patches) -> FloatArray:
    """(n, n) covariance of patches of a scan fused from views, for views shifted by one mm (method, eq. 8c).

    A shift v moves a patch by n·v, and shift of like normals is the same: (n·n') exp((n̂·n̂' − 1)/VIEW).
    """
    return Field(0.0, 0.0, 1.0, 0.5, view_sd=1.0).covariance(patches)


def same_edge(patches: Patches, beside: LongArray) -> FloatArray:
    """(k, k) covariance of patches `beside` (k,) sharp edges, for a surface off by one mm there (method, eq. 6a).

    The two sides of an edge, the end of the body and its wall, are off each by itself.
    """
    assert patches.edge is not None
    p = patches
    some = Patches(
        p.centre[beside], p.residual[beside], p.matrix[beside], p.count[beside], p.spread[beside], patches.edge[beside]
    )
    return Field(0.0, 0.0, 1.0, 0.5, edge_sd=1.0).covariance(some)


def squared_distances(centre: FloatArray, spread: FloatArray) -> FloatArray:
    """(b, m, m) expected squared distance between a point of one patch and a point of another."""
    square = np.einsum("bid,bid->bi", centre, centre)
    d2 = square[:, :, None] + square[:, None, :]
    d2 -= 2.0 * centre @ centre.transpose(0, 2, 1)
    np.maximum(d2, 0.0, out=d2)
    d2 += spread[:, :, None]
    d2 += spread[:, None, :]
    return np.asarray(d2)


def groups_of(points: FloatArray, gradient: FloatArray, to_edge: FloatArray | None = None) -> LongArray:
    """Patch number (n,) of each point (n, 3): cells and main direction of the gradient, at most about MOST_PATCHES.

    to_edge (n,): distance to the nearest sharp edge, beside which patches are finer: much of what a scan tells of
    height and turn lies there.
    """
    return _cells(points, _side_of(gradient), LEAST_CELL, MOST_PATCHES, None if to_edge is None else to_edge < BESIDE)


def patches_of(
    points: FloatArray, residual: FloatArray, matrix: FloatArray, group: LongArray, edge: FloatArray | None = None
) -> Patches:
    """Points (n, 3) averaged over patches; `group` from groups_of, kept while a pose is refined. edge (n,): of each."""
    return merged(Patches(points, residual, matrix, np.ones(len(points)), np.zeros(len(points)), edge), group)


def larger(patches: Patches, most: int) -> LongArray:
    """Number (n,) of the larger patch, of at most about `most`, that each patch falls into."""
    return _cells(patches.centre, _side_of(patches.matrix[:, :3]), 2.0 * LEAST_CELL, most)


def like_normals(patches: Patches) -> LongArray:
    """Number (n,) of the group of patches whose normals point alike."""
    return _cells(_unit(patches.matrix[:, :3]), np.zeros(len(patches.count), np.int64), LIKE, MOST_PATCHES)


def _unit(vectors: FloatArray) -> FloatArray:
    return np.asarray(vectors / np.maximum(np.linalg.norm(vectors, axis=1, keepdims=True), 1e-12))


def _side_of(gradient: FloatArray) -> LongArray:
    """Which of six directions (n,) a gradient (n, 3) points along most."""
    side = np.argmax(np.abs(gradient), axis=1)
    return np.asarray(side * 2 + (gradient[np.arange(len(gradient)), side] > 0))


def _cells(points: FloatArray, side: LongArray, cell: float, most: int, fine: BoolArray | None = None) -> LongArray:
    """Number (n,) of the cube of edge `cell` and the side (n,), 0 to 5, of each point; larger cubes if over `most`.

    fine (n,): points whose cubes are FINER times smaller.
    """
    low, fine = points.min(axis=0), np.zeros(len(points), np.bool_) if fine is None else fine
    while True:
        code = _codes(points, low, cell, side, fine)
        size = len(np.unique(code))
        if size <= most:
            return np.unique(code, return_inverse=True)[1]
        cell *= max(1.05, float(np.sqrt(size / most)))


@compiled
def _codes(points: FloatArray, low: FloatArray, cell: float, side: LongArray, fine: BoolArray) -> LongArray:
    """A number for each pair of cube and side."""
    code = np.zeros(len(points), np.int64)
    for i in range(len(points)):
        edge = cell / FINER if fine[i] else cell
        for d in range(3):
            code[i] = code[i] * 8192 + int(np.floor((points[i, d] - low[d]) / edge))
        code[i] = (code[i] * 6 + side[i]) * 2 + fine[i]
    return code


def merged(fine: Patches, group: LongArray) -> Patches:
    """Patches, or points as patches of one, averaged over the groups (n,) by how many points each holds."""
    edge = np.zeros(len(group)) if fine.edge is None else fine.edge
    columns = np.column_stack([fine.centre, fine.residual, edge, fine.matrix])
    mean, count, spread = _averages(columns, fine.count, fine.spread, group, int(group.max()) + 1)
    centre, residual, matrix = (np.ascontiguousarray(part) for part in (mean[:, :3], mean[:, 3], mean[:, 5:]))
    return Patches(centre, residual, matrix, count, spread, None if fine.edge is None else mean[:, 4].copy())


@compiled
def _averages(
    columns: FloatArray, count: FloatArray, spread: FloatArray, group: LongArray, groups: int
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Weighted means (m, c) of columns (n, c) over groups, sums of the weights (m,), and the groups' spread (m,) about
    the means of the first three columns."""
    mean, total, wide = np.zeros((groups, columns.shape[1])), np.zeros(groups), np.zeros(groups)
    for i in range(len(group)):
        total[group[i]] += count[i]
        for k in range(columns.shape[1]):
            mean[group[i], k] += count[i] * columns[i, k]
    for g in range(groups):
        mean[g] /= total[g]
    for i in range(len(group)):
        square = spread[i]
        for k in range(3):
            square += (columns[i, k] - mean[group[i], k]) ** 2
        wide[group[i]] += count[i] * square
    return mean, total, wide / total


@compiled
def forward(factor: FloatArray, right: FloatArray) -> None:
    """Solve L X = right in place by forward substitution (NumPy has none; SciPy's costs 0.1 s to import)."""
    for i in range(factor.shape[0]):
        fours = i // 4 * 4
        for j in range(0, fours, 4):  # four rows at a time, in their order: the same sums with fewer stores
            a, b, c, d = factor[i, j], factor[i, j + 1], factor[i, j + 2], factor[i, j + 3]
            for k in range(right.shape[1]):
                right[i, k] = (
                    ((right[i, k] - a * right[j, k]) - b * right[j + 1, k]) - c * right[j + 2, k]
                ) - d * right[j + 3, k]
        for j in range(fours, i):
            scale = factor[i, j]
            for k in range(right.shape[1]):
                right[i, k] -= scale * right[j, k]
        for k in range(right.shape[1]):
            right[i, k] /= factor[i, i]


@compiled
def _backward(factor: FloatArray, right: FloatArray) -> None:
    """Solve Lᵀ X = right in place by backward substitution."""
    for i in range(factor.shape[0] - 1, -1, -1):
        for k in range(right.shape[1]):
            right[i, k] /= factor[i, i]
        for j in range(i):
            scale = factor[i, j]
            for k in range(right.shape[1]):
                right[j, k] -= scale * right[i, k]


@dataclass(frozen=True)
class Whitened:
    """Patches with their correlation taken out: matrix L⁻¹A (n, k), residual L⁻¹r (n,), K = L Lᵀ."""

    matrix: FloatArray
    residual: FloatArray

    @staticmethod
    def of(patches: Patches, factor: FloatArray) -> Whitened:
        """factor: L, lower triangular (n, n)."""
        white = np.column_stack([patches.matrix, patches.residual])
        forward(factor, white)
        return Whitened(white[:, :-1], white[:, -1])

    @property
    def cost(self) -> float:
        """rᵀ K⁻¹ r."""
        return float(self.residual @ self.residual)

    def solve(self, prior: FloatArray, away: FloatArray | float = 0.0) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Step of the parameters, covariance, information (method, eq. 5). prior (k,): information on them beforehand;
        away (k,): how far they already lie from what is known of them so.
        """
        information = self.matrix.T @ self.matrix + np.diag(prior)
        covariance: FloatArray = np.asarray(np.linalg.inv(information), dtype=np.float64)
        return covariance @ (self.matrix.T @ self.residual - prior * away), covariance, information

    def gain(self, covariance: FloatArray, factor: FloatArray) -> FloatArray:
        """(k, n): what a displacement of each patch does to the parameters, C Aᵀ K⁻¹, from their covariance (k, k)."""
        weighed = self.matrix.copy()
        _backward(factor, weighed)
        return np.asarray(covariance @ weighed.T)
