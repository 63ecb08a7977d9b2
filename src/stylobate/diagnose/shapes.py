"""Shapes of displacement along the normal: of a made part, a layer, a bend, a split (method/trust, eq. 11–14).

Points (n, 3) and unit normals (n, 3) stand in the connection frame, mm.
"""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.fit.edges import END


def made_part(points: FloatArray, normal: FloatArray, radius: float, top: float) -> FloatArray:
    """(n, 2): displacement for one mm more diameter, and for one mm more height.

    radius, top: of the part's widest place and its highest, mm. The whole part is stretched.
    """
    across = np.einsum("ij,ij->i", points[:, :2], normal[:, :2]) / (2.0 * radius)
    along = points[:, 2] * normal[:, 2] / top
    return np.stack([across, along], axis=1)


def uneven_layer(points: FloatArray, normal: FloatArray) -> FloatArray:
    """(n, 5): ways in which a layer differs from uniform, of unit size: top, height, its square, and two sides."""
    height = points[:, 2] - points[:, 2].mean()
    height = height / max(float(np.abs(height).max()), 1e-9)
    return np.stack(
        [
            (normal[:, 2] > END).astype(np.float64),
            height,
            height**2 - np.mean(height**2),
            normal[:, 0],
            normal[:, 1],
        ],
        axis=1,
    )


def leaning(points: FloatArray, normal: FloatArray, start: float, top: float, hinge: bool) -> FloatArray:
    """(n, 2): displacement for a lean of one radian at the top towards +x, and towards +y.

    The lean begins at height `start` and grows with height, or is all there at once (hinge). A section at height z is
    shifted by f(z) and turned by f'(z).
    """
    rise = np.maximum(points[:, 2] - start, 0.0)
    length = max(top - start, 1e-6)
    shift = rise if hinge else rise**2 / (2.0 * length)
    turn = (rise > 0.0).astype(np.float64) if hinge else rise / length
    return np.asarray(normal[:, :2] * shift[:, None] - normal[:, 2:3] * points[:, :2] * turn[:, None])


def step_across(points: FloatArray, normal: FloatArray, azimuth: float) -> FloatArray:
    """(n, 3): displacement for a shift by one mm along x, y and z of one half against the other.

    The halves meet in the plane through the axis whose normal points at `azimuth`.
    """
    side = np.where(points[:, 0] * np.cos(azimuth) + points[:, 1] * np.sin(azimuth) > 0.0, 0.5, -0.5)
    return np.asarray(normal * side[:, None])
