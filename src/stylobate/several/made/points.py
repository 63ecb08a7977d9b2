"""Points of a frame's surface: a scan's own vertices, and points spread over the large faces of a design."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.find.template import sampled
from stylobate.find.thin import vertex_normals

SPACING = 0.15
"""mm between points that are spread over a face; a face larger than its square gets some."""

MOST = 2_000_000
"""Points that are spread at most: a surface in another unit has room for more than any memory holds."""


def surface_points(surface: Surface) -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) and normals (n, 3), each as long as the area in mm² that its point stands for."""
    large = surface.face_areas() > SPACING**2
    fine = vertex_normals(surface.vertices, np.ascontiguousarray(surface.faces[~large]))
    if not large.any():
        return surface.vertices, fine
    coarse = Surface(surface.vertices, np.ascontiguousarray(surface.faces[large]))
    area = float(coarse.face_areas().sum())
    spread, units = sampled(coarse, max(SPACING, math.sqrt(area / MOST)))
    each = area / len(spread)
    kept = np.any(fine != 0.0, axis=1)
    return np.concatenate([surface.vertices[kept], spread]), np.concatenate([fine[kept], each * units])
