"""The scan with each scan body replaced by its exact CAD surface at the measured pose (method/replaced).

Around each body the scan is cut away where it lies on the body; the CAD surface is cut along the line at which the
gingiva meets it; a band of triangles welds the two edges. Above that line nothing but the CAD surface is left, so
that whatever is fitted to it lands on the measured pose.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter1d, median_filter
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray
from stylobate.find.thin import vertex_normals
from stylobate.handoff.edges import around_axis, boundary_loops, clipped, refined, touching, zipped_band

BODY_REACH = 0.30
"""mm from the CAD surface within which the scan shows the body: beyond layers, noise and rounded edges, short of the
gingiva but for the fillet that a scan makes there."""
BLOB_REACH = 1.0
"""mm from the CAD surface within which what stands above the gingiva and faces away from the body was on the body."""
BLOB_ABOVE = 0.5
"""mm above the gum line from which this holds: below, gingiva can face any way."""
FACES_AWAY = 0.0
"""Least cosine between the scan's normal and the direction away from the body: a blob's steepest flanks reach it, a
tooth close by faces the body and stays below."""
SCRAP_FACES = 400
"""A piece of scan with fewer faces, cut off from all else beside a body, was on the body: a blob, a spike."""
NEAR = 3.0
"""mm around a body within which scraps are looked for."""
CAD_EDGE = 0.40
"""mm. Longer edges of the CAD surface are halved, so that other programs find points on it everywhere."""
BINS = 72
SMOOTH_BINS = 1.5
ABOVE = 0.03
"""mm by which the cut on the CAD surface stays above the edge of the scan, so that the band does not fold."""


@dataclass(frozen=True)
class Replaced:
    """surface: in scan coordinates. welded: for each body whether its CAD surface is joined to the scan all round; a
    body that stands at the edge of the scan, or in a hole of it, is left beside it."""

    surface: Surface
    welded: tuple[bool, ...]


def replaced(scan: Scan, poses: Sequence[FloatArray], bodies: Sequence[Surface]) -> Replaced:
    """The scan with bodies (CAD surfaces, connection frame) at their poses (4, 4), scan_from_connection."""
    vertices = scan.surface.vertices + scan.origin
    faces = scan.surface.faces
    welded: list[bool] = []
    unlike = {id(body): body for body in bodies}
    fine = {key: (SurfaceTree.of(body), refined(body, CAD_EDGE)) for key, body in unlike.items()}
    for pose, body in zip(poses, bodies, strict=True):
        tree, cad = fine[id(body)]
        connection_from_scan = inverse(pose)
        local = vertices @ connection_from_scan[:3, :3].T + connection_from_scan[:3, 3]
        beside = touching(faces, _near(local, body, NEAR))
        used, number = np.unique(faces[beside], return_inverse=True)
        made, joints, joined = _one(local[used], number.reshape(-1, 3).astype(np.int32), body, tree, cad)
        back = np.concatenate([used, np.arange(len(made) - len(used)) + len(vertices)]).astype(np.int32)
        vertices = np.concatenate([vertices, made[len(used) :] @ pose[:3, :3].T + pose[:3, 3]])
        faces = np.concatenate([faces[~beside], back[joints]])
        welded.append(joined)
    return Replaced(_without_unused(vertices, faces), tuple(welded))


def _one(
    local: FloatArray, faces: IntArray, body: Surface, tree: SurfaceTree, cad: Surface
) -> tuple[FloatArray, IntArray, bool]:
    """The scan beside one body, connection frame, with the body replaced.

    Returns `local` with the CAD surface's vertices behind it, faces, and whether the two are welded.
    """
    near = _near(local, body, BLOB_REACH)
    found = tree.closest(local[near])
    distance = np.full(len(local), np.inf)
    distance[near] = np.where(found.on_boundary, np.abs(found.distance), found.distance)
    faces = _without_scraps(local, faces[~touching(faces, distance < BODY_REACH)], body)
    blob = _blobs(local, faces, body, distance, near, found.gradient)
    faces = _without_scraps(local, faces[~touching(faces, blob)], body)
    return _joined(local, faces, cad)


def _near(local: FloatArray, body: Surface, reach: float) -> BoolArray:
    low, high = body.vertices.min(axis=0) - reach, body.vertices.max(axis=0) + reach
    inside = [(local[:, k] > low[k]) & (local[:, k] < high[k]) for k in range(3)]
    return np.asarray(inside[0] & inside[1] & inside[2])


def _blobs(
    local: FloatArray, faces: IntArray, body: Surface, distance: FloatArray, near: BoolArray, away: FloatArray
) -> BoolArray:
    """(n,) vertices of what stands off the body without being gingiva or a tooth: blobs that reach down to the gum."""
    blob = np.zeros(len(local), np.bool_)
    loop = around_axis(local, boundary_loops(faces, _near(local, body, NEAR)), _reach_across(body) + NEAR)
    if loop is None:
        return blob
    gum = median_filter(_heights(local[loop]), BINS // 3, mode="wrap")
    points = local[near]
    above = points[:, 2] - gum[_bin(points)] > BLOB_ABOVE
    normals = vertex_normals(local, faces)[near]
    facing = np.einsum("ij,ij->i", normals, away) > FACES_AWAY * np.linalg.norm(normals, axis=1)
    blob[near] = above & facing & (distance[near] < BLOB_REACH)
    return blob


def _bin(points: FloatArray) -> LongArray:
    turn = np.arctan2(points[:, 1], points[:, 0])
    return np.clip(((turn + np.pi) / (2.0 * np.pi) * BINS).astype(np.int64), 0, BINS - 1)


def _without_scraps(local: FloatArray, kept: IntArray, body: Surface) -> IntArray:
    """The faces but for small pieces beside the body that hang on nothing else."""
    beside = _near(local, body, NEAR)
    around = np.flatnonzero(touching(kept, beside))
    ends = np.concatenate([kept[around][:, [0, 1]], kept[around][:, [1, 2]]])
    graph = coo_array((np.ones(len(ends), np.int8), (ends[:, 0], ends[:, 1])), shape=(len(local), len(local)))
    piece = connected_components(graph, directed=False)[1][kept[around, 0]]
    leaves = np.bincount(piece, ~beside[kept[around]].all(axis=1))
    scrap = (np.bincount(piece) < SCRAP_FACES) & (leaves == 0)
    whole = np.ones(len(kept), np.bool_)
    whole[around[scrap[piece]]] = False
    return np.asarray(kept[whole])


def _joined(local: FloatArray, faces: IntArray, body: Surface) -> tuple[FloatArray, IntArray, bool]:
    """Scan and CAD surface welded along the gum line; beside each other where the scan has no edge all round."""
    reach = _reach_across(body) + NEAR
    loop = around_axis(local, boundary_loops(faces, _near(local, body, NEAR)), reach)
    height = np.full(BINS, -np.inf) if loop is None else _heights(local[loop]) + ABOVE
    top = float(body.vertices[:, 2].max())
    cad = clipped(body, _cut_at(height, top))
    start = len(local)
    vertices = np.concatenate([local, cad.vertices])
    joined = np.concatenate([faces, (cad.faces + start).astype(np.int32)])
    if loop is None:
        return vertices, joined, False
    loops = boundary_loops(cad.faces)
    edge = around_axis(cad.vertices, loops, np.inf)
    if edge is None:
        return vertices, joined, False
    band = zipped_band(vertices, edge + start, loop)
    return vertices, np.concatenate([joined, band]).astype(np.int32), True


def _reach_across(body: Surface) -> float:
    return float(np.hypot(body.vertices[:, 0], body.vertices[:, 1]).max())


def _heights(loop: FloatArray) -> FloatArray:
    """(BINS,) height of the scan's edge by direction about the axis, smoothed; directions without one interpolated."""
    turn = np.arctan2(loop[:, 1], loop[:, 0])
    order = np.argsort(turn)
    middle = (np.arange(BINS) + 0.5) * 2.0 * np.pi / BINS - np.pi
    height = np.interp(middle, turn[order], loop[order, 2], period=2.0 * np.pi)
    return np.asarray(gaussian_filter1d(height, SMOOTH_BINS, mode="wrap"))


def _cut_at(height: FloatArray, top: float) -> FloatArray:
    """The same, nowhere above the top of the body less a tenth of a mm, so that some of it is always left."""
    return np.minimum(height, top - 0.1)


def _without_unused(vertices: FloatArray, faces: IntArray) -> Surface:
    used = np.zeros(len(vertices), np.bool_)
    used[faces] = True
    number = np.cumsum(used) - 1
    return Surface(vertices[used], number[faces].astype(np.int32))
