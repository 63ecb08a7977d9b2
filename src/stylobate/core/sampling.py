"""Points spread evenly over a surface."""

from __future__ import annotations

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray


def sampled(surface: Surface, spacing: float) -> tuple[FloatArray, FloatArray]:
    """Points (k, 3) spread evenly over `surface`, about one a spacing², and their normals (k, 3)."""
    corners = surface.vertices[surface.faces]
    product = surface.corner_products()
    area = np.linalg.norm(product, axis=1) / 2.0
    keep = area > 1e-12
    corners, product, area = corners[keep], product[keep], area[keep]
    total = float(area.sum())
    count = max(64, int(total / spacing**2))
    # Stratified along the running area, with a low-discrepancy pair inside the triangle: even and repeatable.
    at = (np.arange(count) + 0.5) * (total / count)
    face = np.minimum(np.searchsorted(np.cumsum(area), at), len(area) - 1)
    u = np.modf(np.arange(count) * 0.7548776662466927)[0]
    v = np.modf(np.arange(count) * 0.5698402909980532)[0]
    fold = u + v > 1.0
    u, v = np.where(fold, 1.0 - u, u), np.where(fold, 1.0 - v, v)
    a, b, c = corners[face, 0], corners[face, 1], corners[face, 2]
    normals = product[face] / (2.0 * area[face])[:, None]
    return a + u[:, None] * (b - a) + v[:, None] * (c - a), normals
