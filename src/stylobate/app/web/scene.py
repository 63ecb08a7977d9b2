"""Surfaces as the browser takes them: a small JSON header, then raw typed arrays, little endian.

    4 bytes   length n of the header (unsigned)
    n bytes   header: {"origin": [x, y, z], "arrays": {name: {"type", "width", "offset", "count"}}}, blanks
    arrays    each at its offset from the end of the header, a multiple of 4

Positions are relative to `origin` (scan coordinates = position + origin), so that 32-bit floats lose nothing.
"""

from __future__ import annotations

import json
import struct
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from stylobate.core.surface import Scan, Surface
from stylobate.core.types import Float32Array, FloatArray, IntArray

SAME_VERTEX = 1e-5
"""mm: vertices of a site's surface and of the scan nearer than this are one; they are copies, bar rounding."""
COARSE_CELL = 0.45
"""mm: cell of the coarse proxy that is drawn while the picture moves on a machine without a graphics processor."""
TYPES = {"<f4": "f32", "<u4": "u32", "<i4": "i32", "<u2": "u16", "<i2": "i16", "|i1": "i8", "|u1": "u8"}
NAMES = {name: kind for kind, name in TYPES.items()}


@dataclass(frozen=True)
class Painted:
    """A surface with the deviation and the site (counted from 1; 0: none) of each vertex.

    vertices: (n, 3), relative to origin (3,). deviation_um: (n,), NaN off the scan bodies.
    """

    vertices: FloatArray
    faces: IntArray
    origin: FloatArray
    deviation_um: Float32Array
    site: npt.NDArray[np.uint8]


@dataclass(frozen=True)
class Map:
    """A site's coloured surface as read from its file, scan coordinates."""

    vertices: FloatArray
    faces: IntArray
    deviation_um: Float32Array


_VERTEX = np.dtype([("xyz", "<f8", (3,)), ("deviation_um", "<f4"), ("colour", "u1", (3,))])
_FACE = np.dtype([("count", "u1"), ("corners", "<i4", (3,))])


def read_map(path: Path) -> Map | None:
    """A site-N.ply of our own, or None where it is missing or not what this program writes."""
    try:
        content = path.read_bytes()
    except OSError:
        return None
    head, _, body = content.partition(b"end_header\n")
    counts = {line.split()[1]: line.split()[2] for line in head.splitlines() if line.startswith(b"element ")}
    try:
        n, m = int(counts[b"vertex"]), int(counts[b"face"])
        vertices = np.frombuffer(body, _VERTEX, n)
        faces = np.frombuffer(body, _FACE, m, offset=n * _VERTEX.itemsize)
    except (KeyError, ValueError):
        return None
    corners = faces["corners"].astype(np.int32)
    if n == 0 or not np.isfinite(vertices["xyz"]).all() or (m and (corners.min() < 0 or corners.max() >= n)):
        return None
    return Map(vertices["xyz"].astype(np.float64), corners, vertices["deviation_um"].astype(np.float32))


def painted_scan(scan: Scan, maps: list[Map | None]) -> Painted:
    """The whole scan, painted with what the sites' surfaces say of its vertices."""
    from scipy.spatial import cKDTree

    vertices = scan.surface.vertices
    deviation = np.full(len(vertices), np.nan, np.float32)
    site = np.zeros(len(vertices), np.uint8)
    tree = cKDTree(vertices)
    for number, surface in enumerate(maps, start=1):
        if surface is None:
            continue
        known = np.isfinite(surface.deviation_um)
        distance, index = tree.query(surface.vertices[known] - scan.origin, distance_upper_bound=SAME_VERTEX)
        found = np.isfinite(distance)
        deviation[index[found]] = surface.deviation_um[known][found]
        site[index[found]] = number
    return Painted(vertices, scan.surface.faces, scan.origin, deviation, site)


def painted_maps(maps: list[Map | None]) -> Painted | None:
    """The surroundings of the sites alone, where the scan is not at hand; None where there are none either."""
    held = [(number, surface) for number, surface in enumerate(maps, start=1) if surface is not None]
    if not held:
        return None
    starts = np.cumsum([0] + [len(surface.vertices) for _, surface in held])
    vertices = np.concatenate([surface.vertices for _, surface in held])
    faces = np.concatenate([s.faces + start for (_, s), start in zip(held, starts, strict=False)])
    deviation = np.concatenate([surface.deviation_um for _, surface in held])
    number = np.concatenate([np.full(len(surface.vertices), k, np.uint8) for k, surface in held])
    number[~np.isfinite(deviation)] = 0
    origin = np.round((vertices.min(axis=0) + vertices.max(axis=0)) / 2.0)
    return Painted(vertices - origin, faces.astype(np.int32), origin, deviation, number)


@dataclass(frozen=True)
class Proxy:
    """A coarse stand-in for a surface: (k, 3) vertices, (m, 3) faces, and for each fine vertex its coarse one, (n,)."""

    vertices: FloatArray
    faces: IntArray
    index: npt.NDArray[np.intp]


def proxy(vertices: FloatArray, faces: IntArray, cell: float = COARSE_CELL) -> Proxy:
    """The vertices of each cell of a grid become their mean; triangles that shrink to an edge or a point go."""
    key = np.floor(vertices / cell).astype(np.int64)
    key -= key.min(axis=0)
    size = key.max(axis=0) + 1
    _, index = np.unique((key[:, 0] * size[1] + key[:, 1]) * size[2] + key[:, 2], return_inverse=True)
    count = np.bincount(index)
    means = np.stack([np.bincount(index, vertices[:, k]) / count for k in range(3)], axis=1)
    a, b, c = index[faces].T
    kept = index[faces][(a != b) & (b != c) & (a != c)]
    return Proxy(means, kept.astype(np.int32), index)


def packed_geometry(vertices: FloatArray, faces: IntArray, origin: FloatArray) -> bytes:
    """Vertices relative to origin, their normals and the triangles, in the form above."""
    arrays = {
        "position": vertices.astype("<f4"),
        "normal": _normals(vertices, faces),
        "index": faces.astype("<u4"),
    }
    return packed({"origin": origin.tolist()}, arrays)


def packed_paint(painted: Painted, coarse: Proxy) -> bytes:
    """Deviation and site of each vertex, of the surface itself and of its proxy (mean of what is known; first site)."""
    known = np.isfinite(painted.deviation_um)
    cells = len(coarse.vertices)
    number = np.bincount(coarse.index[known], minlength=cells)
    total = np.bincount(coarse.index[known], painted.deviation_um[known], minlength=cells)
    with np.errstate(invalid="ignore", divide="ignore"):
        mean = total / number
    site = np.zeros(cells, np.uint8)
    np.maximum.at(site, coarse.index, painted.site)
    arrays = {
        "deviation": painted.deviation_um.astype("<f4"),
        "site": painted.site,
        "coarse_deviation": mean.astype("<f4"),
        "coarse_site": site,
    }
    return packed({"origin": painted.origin.tolist()}, arrays)


def packed_body(surface: Surface) -> bytes:
    """A CAD surface in its connection's frame."""
    arrays = {"position": surface.vertices.astype("<f4"), "index": surface.faces.astype("<u4")}
    return packed({"origin": [0.0, 0.0, 0.0]}, arrays)


def _normals(vertices: FloatArray, faces: IntArray) -> npt.NDArray[np.int8]:
    """(n, 4) signed bytes: the unit normal of each vertex × 127, and a zero that fills the word."""
    from stylobate.find.thin import vertex_normals

    normals = vertex_normals(vertices, faces)
    length = np.linalg.norm(normals, axis=1, keepdims=True)
    result = np.zeros((len(normals), 4), np.int8)
    result[:, :3] = np.rint(normals / np.where(length > 0.0, length, 1.0) * 127.0)
    return result


def packed(header: dict[str, Any], arrays: dict[str, npt.NDArray[Any]]) -> bytes:
    """A header and arrays in the form above."""
    table: dict[str, dict[str, Any]] = {}
    at = 0
    for name, array in arrays.items():
        width = array.shape[1] if array.ndim == 2 else 1
        table[name] = {"type": TYPES[array.dtype.str], "width": width, "offset": at, "count": len(array)}
        at += -(-array.nbytes // 4) * 4
    text = json.dumps({**header, "arrays": table}, allow_nan=False).encode()
    text += b" " * (-len(text) % 4)
    body = b"".join(array.tobytes() + b"\0" * (-array.nbytes % 4) for array in arrays.values())
    return struct.pack("<I", len(text)) + text + body
