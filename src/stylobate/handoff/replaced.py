"""The scan with each scan body replaced by its exact CAD surface at the measured pose (method/replaced).

Around each body the scan is cut away where it lies on the body; the CAD surface is cut along the line at which the
gingiva meets it; a band of triangles welds the two edges. Above that line nothing but the CAD surface is left, so
that whatever is fitted to it lands on the measured pose.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter1d
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray
from stylobate.handoff.edges import around_axis, boundary_loops, clipped, refined, zipped_band

BODY_REACH = 0.30
"""mm from the CAD surface within which the scan shows the body: beyond layers, noise and rounded edges, short of the
gingiva but for the fillet that a scan makes there."""
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
    for pose, body in zip(poses, bodies, strict=True):
        connection_from_scan = inverse(pose)
        local = vertices @ connection_from_scan[:3, :3].T + connection_from_scan[:3, 3]
        faces = _cut_away(local, faces, body)
        local, faces, joined = _joined(local, faces, refined(body, CAD_EDGE))
        vertices = local @ pose[:3, :3].T + pose[:3, 3]
        welded.append(joined)
    return Replaced(_without_unused(vertices, faces), tuple(welded))


def _near(local: FloatArray, body: Surface, reach: float) -> BoolArray:
    low, high = body.vertices.min(axis=0) - reach, body.vertices.max(axis=0) + reach
    return np.asarray(((local > low) & (local < high)).all(axis=1))


def _cut_away(local: FloatArray, faces: IntArray, body: Surface) -> IntArray:
    """The faces that do not show the body: no corner lies on it or in it, and they are no scrap beside it."""
    near = np.flatnonzero(_near(local, body, BODY_REACH))
    found = SurfaceTree.of(body).closest(local[near], np.inf)
    gone = np.zeros(len(local), np.bool_)
    gone[near[(found.distance < BODY_REACH) & ~found.on_boundary]] = True
    gone[near[found.on_boundary & (np.abs(found.distance) < BODY_REACH)]] = True
    kept = faces[~gone[faces].any(axis=1)]
    beside = _near(local, body, NEAR)
    ends = np.concatenate([kept[:, [0, 1]], kept[:, [1, 2]]])
    graph = coo_array((np.ones(len(ends), np.int8), (ends[:, 0], ends[:, 1])), shape=(len(local), len(local)))
    piece = connected_components(graph, directed=False)[1][kept[:, 0]]
    count = np.bincount(piece)
    touches = np.zeros(len(count), np.bool_)
    touches[piece[beside[kept].all(axis=1)]] = True
    scrap = touches & (count < SCRAP_FACES)
    return np.asarray(kept[~scrap[piece]])


def _joined(local: FloatArray, faces: IntArray, body: Surface) -> tuple[FloatArray, IntArray, bool]:
    """Scan and CAD surface welded along the gum line; beside each other where the scan has no edge all round."""
    loop = around_axis(local, boundary_loops(faces), _reach_across(body) + NEAR)
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
