"""Which surface is crowns: the one thing that is sure to stand still from one scan to the next (method/join, eq. 4)."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import BoolArray, FloatArray

CELL = 1.0
"""mm: columns in which heights are taken."""
REACH = 8
"""Cells around a place within which the highest tooth is looked for: one tooth to either side."""
DOWN, OVER = 4.0, 1.0
"""mm below the highest place nearby down to which, and above it up to which, a surface counts as crown (invented:
crowns are 6 to 9 mm high, so the gingiva's margin stays out)."""
RELIEF = 0.6
"""Least height from lowest to highest nearby, of what the scan's highest places have: less is a ridge without teeth."""


def crowns(seen: FloatArray, points: FloatArray, up: FloatArray) -> BoolArray:
    """Which of `points` (n, 3) lie on crowns of the jaw whose surface is `seen` (m, 3); up: (3,) towards the bite."""
    from scipy.ndimage import maximum_filter

    up = up / np.linalg.norm(up)
    across = np.linalg.svd(up[None])[2][1:]
    plane, height = seen @ across.T, seen @ up
    low = plane.min(axis=0)
    cell = np.floor((plane - low) / CELL).astype(np.int64)
    shape = tuple(cell.max(axis=0) + 1)
    top, floor = np.full(shape, -np.inf), np.full(shape, -np.inf)
    np.maximum.at(top, (cell[:, 0], cell[:, 1]), height)
    np.maximum.at(floor, (cell[:, 0], cell[:, 1]), -height)
    steps = np.arange(-REACH, REACH + 1)
    disc = np.hypot(steps[:, None], steps[None]) <= REACH
    top = maximum_filter(top, footprint=disc, mode="constant", cval=-np.inf)
    relief = top + maximum_filter(floor, footprint=disc, mode="constant", cval=-np.inf)
    at = np.floor((points @ across.T - low) / CELL).astype(np.int64)
    inside = np.all((at >= 0) & (at < shape), axis=1)
    x, y = np.where(inside[:, None], at, 0).T
    steep = relief > RELIEF * np.quantile(relief[cell[:, 0], cell[:, 1]], 0.95)
    off = points @ up - top[x, y]
    return np.asarray(inside & steep[x, y] & (off > -DOWN) & (off < OVER))
