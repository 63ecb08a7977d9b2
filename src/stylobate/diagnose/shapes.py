"""Shapes of displacement along the surface's normal: of a made part, a layer, a bend, a split."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray


def made_part(points: FloatArray, normal: FloatArray, radius: float, top: float) -> FloatArray:
    """(n, 2): displacement for one mm more diameter, and for one mm more height.

    The part's widest radius and its top, mm. The whole part is stretched, as a wrong offset of a lathe does.
    """
    across = np.einsum("ij,ij->i", points[:, :2], normal[:, :2]) / (2.0 * radius)
    along = points[:, 2] * normal[:, 2] / top
    return np.stack([across, along], axis=1)
