"""Generalised least squares over all scans at once, for many covariances: frames and implants are unknown.

Each scan's frame is eliminated first, then the implants; of a cell (a scan, an implant) follows how far it stands off
when its own pose is left out (method/compare, eqs. 3–5).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.several.comparing.errors import covariances
from stylobate.several.comparing.layout import Cell, Layout


@dataclass(frozen=True)
class CellFit:
    """Shift of a cell against the rest, for T draws of θ, its own pose left out.

    motions: (d,) which of the six. shift: (T, d). covariance: (T, d, d). log_likelihood: (T,) of the rest.
    """

    cell: Cell
    motions: LongArray
    shift: FloatArray
    covariance: FloatArray
    log_likelihood: FloatArray


@dataclass(frozen=True)
class Solution:
    """log_likelihood: (T,) restricted, of θ. cells: those asked for."""

    log_likelihood: FloatArray
    cells: tuple[CellFit, ...]


def solve(layout: Layout, drift: FloatArray, theta: FloatArray, cells: list[Cell]) -> Solution:
    """Likelihood of each θ (T, 5) with and without each of `cells` (method/compare, eqs. 3–5)."""
    draws, size = len(theta), layout.lever.shape[0]
    information = np.zeros((len(layout.frames), draws, size, size))
    log_likelihood = np.zeros(draws)
    for k in range(len(layout.frames)):
        rows = layout.rows(k)
        if len(rows):
            at = np.ix_(rows, rows)
            sigma = covariances(theta, layout.stated[k][at], layout.reseated[k][at], drift[:, rows[:, None], rows])
            block, log_determinant = _without_frame(sigma, layout.lever[rows])
            information[k][:, rows[:, None], rows] = block
            log_likelihood -= 0.5 * log_determinant
    normal = information.sum(axis=0)
    inverse, log_determinant = _inverted(normal, layout)
    weighted = np.einsum("ktab,kb->kta", information, layout.residual)
    mean = np.einsum("tab,tb->ta", inverse, weighted.sum(axis=0))
    off = weighted - np.einsum("ktab,tb->kta", information, mean)
    log_likelihood -= 0.5 * (log_determinant + np.einsum("kta,ka->t", off, layout.residual))
    fits = tuple(_cell(cell, layout, information[cell[0]], inverse, off[cell[0]], log_likelihood) for cell in cells)
    return Solution(log_likelihood, fits)


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
    cell: Cell, layout: Layout, information: FloatArray, inverse: FloatArray, off: FloatArray, whole: FloatArray
) -> CellFit:
    scan, implant = cell
    at = 6 * implant + np.flatnonzero(layout.seen[scan, 6 * implant : 6 * implant + 6])
    across = information[:, at]
    precision = across[:, :, at] - across @ inverse @ np.swapaxes(across, -1, -2)
    covariance = np.asarray(np.linalg.inv(precision), np.float64)
    pull = off[:, at]
    shift = np.einsum("tab,tb->ta", covariance, pull)
    gained = 0.5 * np.einsum("ta,ta->t", pull, shift)
    return CellFit(cell, at - 6 * implant, shift, covariance, whole + gained - 0.5 * np.linalg.slogdet(precision)[1])
