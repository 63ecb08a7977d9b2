"""What the scanner did not see: holes by direction, the missing index, the rim of the scanned region, loose scraps."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.types import BoolArray, FloatArray, IntArray
from stylobate.simulate.noise import wave_sum, waves

TURNS_DEG = (60.0, 90.0, 120.0, 180.0)
"""Turns by which a body may look like itself."""
SAME_MM = 0.01
SCRAP_FACES = 40
"""A piece of surface with fewer faces is cleaned away, as scanning programs do (invented)."""

Generator = np.random.Generator


def vertex_areas(vertices: FloatArray, faces: IntArray) -> FloatArray:
    """A third of the area of the faces about each vertex, (n,) mm²."""
    corners = vertices[faces]
    area = np.linalg.norm(np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]), axis=1) / 6.0
    return np.bincount(faces.ravel(), np.repeat(area, 3), len(vertices)).astype(np.float64)


def hidden(points: FloatArray, normals: FloatArray, area: FloatArray, share: float, rng: Generator) -> BoolArray:
    """Which points (n, 3) of a body (connection frame) are not seen: `share` of the area, the side turned away first.

    The order is by how far the normal turns away from a view at random azimuth, lower parts before higher ones, with a
    smooth ragged border.
    """
    if share <= 0.0 or not len(points):
        return np.zeros(len(points), np.bool_)
    azimuth = rng.uniform(0.0, 2.0 * math.pi)
    away = np.array([math.cos(azimuth), math.sin(azimuth), -0.5])
    height = (points[:, 2] - points[:, 2].min()) / max(float(np.ptp(points[:, 2])), 1e-9)
    ragged = wave_sum(points, *waves("squared-exponential", 1.0, rng))
    score = normals @ away - 0.5 * height + 0.25 * ragged
    order = np.argsort(-score)
    taken = np.cumsum(area[order]) <= share * area.sum()
    result = np.zeros(len(points), np.bool_)
    result[order[taken]] = True
    return result


def index_features(points: FloatArray, shape: SurfaceTree) -> BoolArray:
    """Which points (connection frame) tell the body from itself turned by the turn of TURNS_DEG that fits best."""
    best = np.ones(len(points), np.bool_)
    for turn in (*TURNS_DEG, *(-t for t in TURNS_DEG[:-1])):
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        turned = points @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])
        off = np.abs(shape.closest(turned).distance) > SAME_MM
        if off.sum() < best.sum():
            best = off
    return best


def manifold(faces: IntArray, count: int) -> IntArray:
    """Faces without those on an edge that two faces run along in the same sense (cells with two sheets of surface)."""
    ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]).astype(np.int64)
    _, edge, times = np.unique(ends[:, 0] * count + ends[:, 1], return_inverse=True, return_counts=True)
    return np.ascontiguousarray(faces[~(times[edge] > 1).reshape(3, -1).any(axis=0)])


def keep(faces: IntArray, wanted: BoolArray) -> IntArray:
    """Faces (m, 3) whose corners are all wanted, scraps of fewer than SCRAP_FACES faces left out."""
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import connected_components

    faces = faces[wanted[faces].all(axis=1)]
    ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]]])
    n = len(wanted)
    graph = coo_matrix((np.ones(len(ends), np.bool_), (ends[:, 0], ends[:, 1])), shape=(n, n))
    _, piece = connected_components(graph, directed=False)
    size = np.bincount(piece[faces[:, 0]], minlength=piece.max() + 1 if n else 0)
    return np.ascontiguousarray(faces[size[piece[faces[:, 0]]] >= SCRAP_FACES])
