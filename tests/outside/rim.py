"""Noise of a real scan: the residuals of a machined rim (tests/data/meshes/pawn_ring.ply, SOURCES.md there)."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares
from scipy.spatial import cKDTree

from stylobate.core.types import FloatArray

RING = Path(__file__).parent.parent / "data" / "meshes" / "pawn_ring.ply"


@cache
def residuals() -> tuple[FloatArray, FloatArray]:
    """Place on the unrolled rim (n, 2) in mm, and distance (n,) from the cylinder that fits it best, mm.

    The rim is 46 mm in radius and 7 mm high; all of its 204,162 points lie within 0.12 mm of that cylinder.
    """
    data = RING.read_bytes()
    start = data.index(b"end_header\n") + len(b"end_header\n")
    points = np.frombuffer(data[start : start + 12 * 204_162], dtype="<f4").reshape(-1, 3).astype(np.float64)
    middle = points.mean(axis=0)
    local = (points - middle) @ np.linalg.svd(points[::50] - middle, full_matrices=False)[2].T
    some = local[::50]
    ends = (local.min(axis=0) + local.max(axis=0)) / 2

    def off(x: FloatArray, at: FloatArray) -> FloatArray:
        axis = np.array([x[2], x[3], 1.0]) / np.sqrt(1.0 + x[2] ** 2 + x[3] ** 2)
        away = at - np.array([x[0], x[1], 0.0])
        return np.asarray(np.linalg.norm(away - (away @ axis)[:, None] * axis, axis=1) - x[4])

    fit = least_squares(lambda x: off(x, some), [ends[0], ends[1], 0.0, 0.0, 46.0]).x
    turn = np.arctan2(local[:, 1] - fit[1], local[:, 0] - fit[0])
    return np.stack([turn * fit[4], local[:, 2]], axis=1), off(fit, local)


def noise(points: FloatArray, seed: int, rms: float) -> FloatArray:
    """The rim's residuals, scaled to `rms` mm, at points (n, 3) of a body: neighbours on it are neighbours on the rim.

    The body is unrolled about its axis from a drawn place of the rim; heights are folded into those of the rim.
    """
    place, off = residuals()
    rng = np.random.default_rng(seed)
    around = np.arctan2(points[:, 1], points[:, 0]) * 2.4 + rng.uniform(-100.0, 100.0)
    up = points[:, 2] + 0.5 * np.hypot(points[:, 0], points[:, 1]) + rng.uniform(0.0, 6.0)
    up = np.abs((up + 3.0) % 12.0 - 6.0) - 3.0
    _, nearest = cKDTree(place).query(np.stack([around, up], axis=1))
    return np.asarray(off[nearest] * rms / np.sqrt(np.mean(off**2)))
