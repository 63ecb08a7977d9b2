"""One coloured surface a site, as binary PLY."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from stylobate.core.errors import ResultError
from stylobate.core.result import Finding, SiteMap
from stylobate.core.types import BoolArray, FloatArray
from stylobate.report.colours import RANGE_UM, colours
from stylobate.report.meshes import COLOURS, FACE, PLY_TYPES, ply

_VERTEX = np.dtype(
    [("x", "<f8"), ("y", "<f8"), ("z", "<f8"), ("deviation_um", "<f4"), ("red", "u1"), ("green", "u1"), ("blue", "u1")]
)
RINGED = ("lost material", "added material")
RING = 20  # red, green and blue of a ring
RING_MM, LEAST_RING_MM = 0.12, 0.4  # its width, and the least radius


def ply_bytes(site_map: SiteMap, comments: tuple[str, ...] = (), findings: Sequence[Finding] = ()) -> bytes:
    """The surface around one site as a PLY file, little endian, scan coordinates in mm.

    Coordinates are 64-bit, so that a scan far from its origin loses nothing. `deviation_um` is NaN, and the colour
    grey, where a vertex is not part of the scan body. `comments`: one line each, ASCII. `findings`: those with a place
    and an area are ringed in black.
    """
    count = len(site_map.vertices)
    vertices = np.empty(count, _VERTEX)
    for axis, name in enumerate("xyz"):
        vertices[name] = site_map.vertices[:, axis]
    vertices["deviation_um"] = site_map.deviation_um
    painted = colours(site_map.deviation_um)
    painted[ringed(site_map.vertices, findings)] = RING
    for channel, name in enumerate(COLOURS):
        vertices[name] = painted[:, channel]
    about = (
        "deviation_um: signed distance from the CAD surface to the scan, micrometres, positive outside",
        f"colours: CET-D1A, blue -{RANGE_UM:g} um to red +{RANGE_UM:g} um, white 0; grey: not part of the body",
    )
    return ply(vertices, site_map.faces, (*comments, *about))


def read_map(content: bytes, name: str) -> SiteMap:
    """A coloured surface as `ply_bytes` wrote it. Raises ResultError where it is not one."""
    head, mark, body = content.partition(b"end_header\n")
    words = [line.split() for line in head.decode("ascii", "replace").splitlines()]
    fields: list[tuple[str, str]] = []
    counts: dict[str, int] = {}
    stored = {kind: code for code, kind in PLY_TYPES.items()}
    try:
        for line in words:
            if line[0] == "element":
                counts[line[1]] = int(line[2])
            elif line[0] == "property" and line[1] != "list":
                fields.append((line[2], stored[line[1]]))
        dtype = np.dtype(fields)
        vertices = np.frombuffer(body, dtype, counts["vertex"])
        faces = np.frombuffer(body, FACE, counts["face"], offset=vertices.nbytes)
        points = np.column_stack([vertices[axis].astype(np.float64) for axis in "xyz"])
        deviation = vertices["deviation_um"].astype(np.float64)
        corners = np.ascontiguousarray(faces["vertex_indices"])
        whole = bool(mark) and bool(np.isfinite(points).all()) and len(body) == vertices.nbytes + faces.nbytes
        if not whole or not (faces["count"] == 3).all() or corners.min(initial=0) < 0:
            raise ValueError
        if corners.max(initial=-1) >= len(points):
            raise ValueError
    except (KeyError, ValueError, IndexError, TypeError):
        raise ResultError(f"{name}: is not a coloured surface of a site as 'stylobate measure' writes it") from None
    return SiteMap(points, corners, deviation)


def ringed(vertices: FloatArray, findings: Sequence[Finding]) -> BoolArray:
    """Which vertices (n, 3) lie on a ring about a patch that a finding names."""
    on = np.zeros(len(vertices), np.bool_)
    for finding in findings:
        if finding.where is None or finding.cause not in RINGED:
            continue
        radius = max(LEAST_RING_MM, 1.3 * float(np.sqrt((finding.area_mm2 or 0.0) / np.pi)))
        distance = np.linalg.norm(vertices - np.array(finding.where), axis=1)
        on |= np.abs(distance - radius) < RING_MM / 2.0
    return on
