"""Points of a frame's surface: a scan's own vertices, and points spread over the large faces of a design."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.sampling import sampled
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.find.thin import vertex_normals

SPACING = 0.15
"""mm between points that are spread over a face; a face larger than its square gets some."""
PIECE = 2.0
"""mm: faces with longer edges are cut, so that what lies away from the seats can be left out."""
MOST = 2_000_000
"""Points that are spread at most: a surface in another unit has room for more than any memory holds."""


def surface_points(surface: Surface, about: FloatArray, reach: float) -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) and normals (n, 3), each as long as the area in mm² that its point stands for.

    Over large faces only within `reach` (mm) of a place of `about` (m, 3), and up to PIECE beyond: a plate that a bar
    was designed on does not take its seats' points away.
    """
    large = surface.face_areas() > SPACING**2
    fine = vertex_normals(surface.vertices, np.ascontiguousarray(surface.faces[~large]))
    if not large.any():
        return surface.vertices, fine
    kept = np.any(fine != 0.0, axis=1)
    coarse = _near(surface.vertices[surface.faces[large]], about, reach)
    if not len(coarse):
        return surface.vertices[kept], fine[kept]
    pieces = Surface(coarse.reshape(-1, 3), np.arange(3 * len(coarse), dtype=np.int32).reshape(-1, 3))
    area = float(pieces.face_areas().sum())
    spread, units = sampled(pieces, max(SPACING, math.sqrt(area / MOST)))
    each = area / len(spread)
    return np.concatenate([surface.vertices[kept], spread]), np.concatenate([fine[kept], each * units])


def _near(corners: FloatArray, about: FloatArray, reach: float) -> FloatArray:
    """(k, 3, 3) pieces of triangles (n, 3, 3) that may lie within `reach` of a place, longest edges halved to PIECE."""
    done = []
    while len(corners):
        middle = corners.mean(axis=1)
        radius = np.linalg.norm(corners - middle[:, None], axis=2).max(axis=1)
        near = np.zeros(len(corners), np.bool_)
        for place in about:
            near |= np.linalg.norm(middle - place, axis=1) < reach + radius
        corners = corners[near]
        edges = np.linalg.norm(corners - np.roll(corners, -1, axis=1), axis=2)
        long = edges.max(axis=1) > PIECE
        done.append(corners[~long])
        first = edges[long].argmax(axis=1)[:, None] + np.arange(3)
        a, b, c = np.moveaxis(np.take_along_axis(corners[long], (first % 3)[:, :, None], axis=1), 1, 0)
        half = (a + b) / 2.0
        corners = np.concatenate([np.stack([a, half, c], axis=1), np.stack([half, b, c], axis=1)])
    return np.concatenate(done) if done else corners
