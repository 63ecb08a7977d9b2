"""The scan region of a body: the whole surface, or what of it lies above a plane, cut exactly."""

from __future__ import annotations

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray


def clip_above(surface: Surface, z: float) -> Surface:
    """The part of `surface` with z ≥ `z`, mm; triangles that cross the plane are split on it.

    Neighbours share the new vertices, so the cut leaves one clean open border. The result may be empty.
    """
    height = surface.vertices[:, 2]
    above = height >= z
    count = above[surface.faces].sum(axis=1)
    whole = surface.faces[count == 3]
    crossing, is_one = surface.faces[(count == 1) | (count == 2)], count[(count == 1) | (count == 2)] == 1
    if not len(crossing):
        return _compact(surface.vertices, whole)
    # Turn each face so that its odd corner (the only one above, or the only one below) comes first.
    odd = np.argmax(above[crossing] == is_one[:, None], axis=1)
    a, b, c = (crossing[np.arange(len(crossing)), (odd + k) % 3] for k in range(3))
    points, cut = _cuts(surface.vertices, np.concatenate([np.stack([a, b], 1), np.stack([a, c], 1)]), z)
    ab, ac = cut[: len(a)] + len(height), cut[len(a) :] + len(height)
    tips = np.stack([a, ab, ac], axis=1)[is_one]
    below = ~is_one
    quads = np.concatenate(
        [np.stack([ab, b, c], axis=1)[below], np.stack([ab, c, ac], axis=1)[below]],
    )
    faces = np.concatenate([whole, tips, quads]).astype(np.int32)
    return _compact(np.concatenate([surface.vertices, points]), faces)


def _cuts(vertices: FloatArray, edges: IntArray, z: float) -> tuple[FloatArray, IntArray]:
    """Where edges (n, 2) cross the plane: points (u, 3), one for each edge of the mesh, and the point of each edge."""
    ends, point = np.unique(np.sort(edges, axis=1), axis=0, return_inverse=True)
    p, q = vertices[ends[:, 0]], vertices[ends[:, 1]]
    share = (z - p[:, 2]) / (q[:, 2] - p[:, 2])
    points = p + share[:, None] * (q - p)
    points[:, 2] = z
    return points, point.reshape(-1).astype(np.int32)


def _compact(vertices: FloatArray, faces: IntArray) -> Surface:
    """Only the vertices that faces use, and only the faces with an area (a corner on the plane leaves slivers)."""
    a, b, c = (vertices[faces[:, k]] for k in range(3))
    faces = faces[np.linalg.norm(np.cross(b - a, c - a), axis=1) > 0.0]
    used, faces_flat = np.unique(faces, return_inverse=True)
    return Surface(vertices[used], faces_flat.reshape(-1, 3).astype(np.int32))
