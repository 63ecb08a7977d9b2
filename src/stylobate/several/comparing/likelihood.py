"""Generalised least squares over all scans at once, for many covariances: frames and implants are unknown.

Each scan's frame is eliminated first, then the implants; of a cell (a scan, an implant) follows how far it stands off
when its own height, or its own pose, is left out (method/compare, eqs. 3–5).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.several.comparing.errors import covariances
from stylobate.several.comparing.layout import Cell, Layout


@dataclass(frozen=True)
class CellFit:
    """Shift of a cell against the rest, for T draws of θ, these motions of its own left out.

    motions: (d,) which of the six. shift: (T, d). covariance: (T, d, d). log_likelihood: (T,) of the rest.
    """

    cell: Cell
    motions: LongArray
    shift: FloatArray
    covariance: FloatArray
    log_likelihood: FloatArray


@dataclass(frozen=True)
class Solution:
    """log_likelihood: (T,) restricted, of θ. heights, cells: of those asked for, with the height or the pose free."""

    log_likelihood: FloatArray
    heights: tuple[CellFit, ...]
    cells: tuple[CellFit, ...]


HEIGHT = 2
"""Of the six motions: along the axis, as a body that is not seated stands."""


def solve(layout: Layout, drift: FloatArray, theta: FloatArray, cells: list[Cell]) -> Solution:
    """Likelihood of each θ (T, 5) with and without each of `cells` (method/compare, eqs. 3–5)."""
    information, inverse, log_likelihood = _eliminated(layout, drift, theta)
    off = _off(layout, information, inverse)
    log_likelihood = log_likelihood - 0.5 * np.einsum("kta,ka->t", off, layout.residual)

    def fit(cell: Cell, motions: LongArray) -> CellFit:
        return _cell(cell, motions, information[cell[0]], inverse, off[cell[0]], log_likelihood)

    height = np.array([HEIGHT])
    return Solution(
        log_likelihood,
        tuple(fit(cell, height) for cell in cells),
        tuple(fit(cell, shown(layout, cell)) for cell in cells),
    )


def misfit(layout: Layout, drift: FloatArray, theta: FloatArray) -> tuple[float, int]:
    """Σ r_kᵀP_k(r_k − μ) with θ (5,) known, and its degrees of freedom: chi-square where nothing moved (eq. 16)."""
    information, inverse, _ = _eliminated(layout, drift, theta[None])
    square = float(np.einsum("kta,ka->", _off(layout, information, inverse), layout.residual))
    shared = layout.seen & (layout.seen.sum(axis=0) > 1)
    of_scans = [int(np.linalg.matrix_rank(layout.lever[rows])) for rows in shared if rows.any()]
    freedom = int(shared.sum()) - int(shared.any(axis=0).sum()) - sum(of_scans) + max(of_scans, default=0)
    return square, freedom


def _off(layout: Layout, information: FloatArray, inverse: FloatArray) -> FloatArray:
    """P_k(r_k − μ) (K, T, 6n)."""
    weighted = np.einsum("ktab,kb->kta", information, layout.residual)
    mean = np.einsum("tab,tb->ta", inverse, weighted.sum(axis=0))
    return np.asarray(weighted - np.einsum("ktab,tb->kta", information, mean))


def joint(layout: Layout, drift: FloatArray, theta: FloatArray, cells: list[Cell]) -> FloatArray:
    """(6c, 6c) covariance of P_k (r_k − μ) of all cells where nothing moved, θ (5,) known; 0 for what is not shown."""
    information, inverse, _ = _eliminated(layout, drift, theta[None])
    at = [6 * implant + np.arange(6) for _, implant in cells]
    across = np.concatenate([information[scan, 0][at[c]] for c, (scan, _) in enumerate(cells)])
    covariance = -across @ inverse[0] @ across.T
    for a, (scan, _) in enumerate(cells):
        for b, (other, _) in enumerate(cells):
            if scan == other:
                covariance[6 * a : 6 * a + 6, 6 * b : 6 * b + 6] += information[scan, 0][np.ix_(at[a], at[b])]
    return np.asarray(covariance)


def shown(layout: Layout, cell: Cell) -> LongArray:
    """Which of a cell's six motions its scan shows."""
    scan, implant = cell
    return np.flatnonzero(layout.seen[scan, 6 * implant : 6 * implant + 6])


def _eliminated(layout: Layout, drift: FloatArray, theta: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """P_k (K, T, 6n, 6n), N⁺ (T, 6n, 6n), and the determinants' part of the log likelihood (T,)."""
    draws, size = len(theta), layout.lever.shape[0]
    information = np.zeros((len(layout.frames), draws, size, size))
    log_likelihood = np.zeros(draws)
    for k in range(len(layout.frames)):
        rows = layout.rows(k)
        if len(rows):
            at = np.ix_(rows, rows)
            moved = drift[:, rows[:, None], rows] * layout.scanned[k]
            sigma = covariances(theta, layout.stated[k][at], layout.reseated[k][at], moved)
            block, log_determinant = _without_frame(sigma, layout.lever[rows])
            information[k][:, rows[:, None], rows] = block
            log_likelihood -= 0.5 * log_determinant
    inverse, log_determinant = _inverted(information.sum(axis=0), layout)
    return information, inverse, log_likelihood - 0.5 * log_determinant


def _without_frame(sigma: FloatArray, lever: FloatArray) -> tuple[FloatArray, FloatArray]:
    """P = C⁻¹ − C⁻¹A(AᵀC⁻¹A)⁻¹AᵀC⁻¹ (T, m, m) and ln |C| + ln |AᵀC⁻¹A| (T,)."""
    inverse = np.asarray(np.linalg.inv(sigma), np.float64)
    weighted = inverse @ lever
    normal = lever.T @ weighted
    block = np.asarray(inverse - weighted @ np.linalg.solve(normal, np.swapaxes(weighted, -1, -2)), np.float64)
    return block, np.linalg.slogdet(sigma)[1] + np.linalg.slogdet(normal)[1]


def _inverted(normal: FloatArray, layout: Layout) -> tuple[FloatArray, FloatArray]:
    """Inverse of the implants' normal matrix (T, 6n, 6n) on what the scans determine, and its log determinant.

    The common frame is free: its six motions are fixed at zero, in the metric of the problem. So is what no scan shows.
    """
    shown = np.flatnonzero(layout.seen.any(axis=0))
    lever = layout.lever[shown]
    basis = np.linalg.qr(lever)[0]
    scale = np.trace(normal, axis1=-2, axis2=-1)[:, None, None] / len(shown)
    filled = normal[:, shown[:, None], shown] + scale * (basis @ basis.T)
    inverse = np.zeros_like(normal)
    inverse[:, shown[:, None], shown] = np.linalg.inv(filled)
    return inverse, np.linalg.slogdet(filled)[1] - lever.shape[1] * np.log(scale[:, 0, 0])


def _cell(
    cell: Cell, motions: LongArray, information: FloatArray, inverse: FloatArray, off: FloatArray, whole: FloatArray
) -> CellFit:
    at = 6 * cell[1] + motions
    across = information[:, at]
    precision = across[:, :, at] - across @ inverse @ np.swapaxes(across, -1, -2)
    covariance = np.asarray(np.linalg.inv(precision), np.float64)
    pull = off[:, at]
    shift = np.einsum("tab,tb->ta", covariance, pull)
    gained = 0.5 * np.einsum("ta,ta->t", pull, shift)
    return CellFit(cell, motions, shift, covariance, whole + gained - 0.5 * np.linalg.slogdet(precision)[1])
