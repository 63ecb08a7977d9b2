"""Triangles → noisy depth maps, each with the place from which it is believed to be seen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter

from bench.fused.scene import Figures, Mouth
from stylobate.core import rigid
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray

HALF, PIXEL = 7.5, 0.045  # mm: half the side of a view, and of its pixels
STEEPEST = 75.0  # degrees from the vertical
LEAST_COSINE = 0.3  # of incidence, below which nothing is measured
HOLE_MM, HOLE_SDS = 0.3, 2.3  # size of dropouts; where smooth noise passes so many standard deviations
GOLDEN = np.pi * (3.0 - np.sqrt(5.0))


@dataclass(frozen=True)
class View:
    """An orthographic depth map; pixel (i, j) lies at (i, j) · PIXEL − HALF on the first two axes.

    depth (n, n) mm along the third axis, inf where nothing is measured. cosine, weight (n, n): of incidence; of the
    view in the fusion. origin (3,), axes (3, 3) in rows: as they are believed to be.
    """

    depth: FloatArray
    cosine: FloatArray
    weight: FloatArray
    origin: FloatArray
    axes: FloatArray


def depth_map(corners: FloatArray, origin: FloatArray, axes: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Depth (n, n), inf beside all, and cosine of incidence, negative from behind, of the first surface of each ray."""
    seen = (corners - origin) @ axes.T
    near = ((seen[..., :2].max(axis=1) > -HALF) & (seen[..., :2].min(axis=1) < HALF)).all(axis=1)
    seen = seen[near]
    normal = np.cross(seen[:, 1] - seen[:, 0], seen[:, 2] - seen[:, 0])
    length = np.linalg.norm(normal, axis=1)
    cosine = -normal[:, 2] / np.where(length > 0.0, length, 1.0)
    seen[..., :2] = (seen[..., :2] + HALF) / PIXEL
    side = int(2.0 * HALF / PIXEL)
    depth, facing = np.full((side, side), np.inf), np.zeros((side, side))
    _drawn(seen, cosine, depth, facing)
    return depth, facing


@compiled
def _drawn(corners: FloatArray, cosine: FloatArray, depth: FloatArray, facing: FloatArray) -> None:
    """Each triangle, corners (m, 3, 3) in pixels and mm of depth, into the maps where it is the nearest."""
    side = depth.shape[0]
    for t in range(corners.shape[0]):
        ax, ay, az = corners[t, 0]
        bx, by, bz = corners[t, 1]
        cx, cy, cz = corners[t, 2]
        twice = (by - cy) * (ax - cx) + (cx - bx) * (ay - cy)
        if abs(twice) < 1e-12:
            continue
        for i in range(max(0, int(np.ceil(min(ax, bx, cx)))), min(side - 1, int(np.floor(max(ax, bx, cx)))) + 1):
            for j in range(max(0, int(np.ceil(min(ay, by, cy)))), min(side - 1, int(np.floor(max(ay, by, cy)))) + 1):
                a = ((by - cy) * (i - cx) + (cx - bx) * (j - cy)) / twice
                b = ((cy - ay) * (i - cx) + (ax - cx) * (j - cy)) / twice
                if min(a, b, 1.0 - a - b) < -1e-9:
                    continue
                z = a * az + b * bz + (1.0 - a - b) * cz
                if z < depth[i, j]:
                    depth[i, j] = z
                    facing[i, j] = cosine[t]


def views_of(mouth: Mouth, figures: Figures) -> Iterator[View]:
    """All views: about each body and tooth in a spiral, from above to STEEPEST."""
    rng = np.random.default_rng([figures.seed, 0x71E35])
    for middle in mouth.looked_at:
        for k in range(figures.views):
            steep = np.radians(STEEPEST) * np.sqrt((k + 0.5) / figures.views)
            around = k * GOLDEN + rng.uniform(0.0, 0.5)
            side = np.array([np.cos(around), np.sin(around), 0.0])
            axes = _axes(rng, -np.sin(steep) * side - np.array([0.0, 0.0, np.cos(steep)]))
            yield _view(rng, figures, mouth.corners, middle + rng.normal(size=3) * [0.6, 0.6, 0.3], axes)


def _axes(rng: np.random.Generator, along: FloatArray) -> FloatArray:
    """Rows: two of any turn, and the way the view looks."""
    across = np.cross(along, rng.normal(size=3))
    across /= np.linalg.norm(across)
    return np.stack([across, np.cross(along, across), along])


def _view(
    rng: np.random.Generator, figures: Figures, corners: FloatArray, origin: FloatArray, axes: FloatArray
) -> View:
    true, cosine = depth_map(corners, origin, axes)
    white = rng.normal(size=true.shape) / np.sqrt(np.clip(cosine, LEAST_COSINE, 1.0))
    noise = figures.white_um * white + figures.correlated_um * _smooth(rng, true.shape, figures.length_mm)
    measured: BoolArray = np.isfinite(true) & (cosine > LEAST_COSINE) & (_smooth(rng, true.shape, HOLE_MM) < HOLE_SDS)
    across = np.linspace(-1.0, 1.0, len(true))
    fall = np.clip(1.15 - np.hypot(across[:, None], across[None]), 0.0, 1.0)
    turn = rigid.rotation_exp(np.radians(figures.turn_deg) * rng.normal(size=3))
    shift = 1e-3 * figures.shift_um * rng.normal(size=3)
    depth = np.where(measured, true + 1e-3 * noise, np.inf)
    return View(depth, cosine, np.clip(cosine, 0.0, 1.0) ** 2 * fall, origin + shift, axes @ turn.T)


def _smooth(rng: np.random.Generator, shape: tuple[int, ...], length: float) -> FloatArray:
    """Noise of standard deviation 1, correlated over `length` mm."""
    field = gaussian_filter(rng.normal(size=shape), length / PIXEL)
    return np.asarray(field / field.std())
