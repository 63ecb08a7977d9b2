"""One coloured surface a site, as binary PLY."""

from __future__ import annotations

import numpy as np

from stylobate.core.result import SiteMap
from stylobate.report.colours import RANGE_UM, colours

_VERTEX = np.dtype(
    [("x", "<f8"), ("y", "<f8"), ("z", "<f8"), ("deviation_um", "<f4"), ("red", "u1"), ("green", "u1"), ("blue", "u1")]
)
_FACE = np.dtype([("count", "u1"), ("vertex_indices", "<i4", (3,))])


def ply_bytes(site_map: SiteMap, comments: tuple[str, ...] = ()) -> bytes:
    """The surface around one site as a PLY file, little endian, scan coordinates in mm.

    Coordinates are 64-bit, so that a scan far from its origin loses nothing. `deviation_um` is NaN, and the colour
    grey, where a vertex is not part of the scan body. `comments`: one line each, ASCII.
    """
    count = len(site_map.vertices)
    vertices = np.empty(count, _VERTEX)
    for axis, name in enumerate("xyz"):
        vertices[name] = site_map.vertices[:, axis]
    vertices["deviation_um"] = site_map.deviation_um
    painted = colours(site_map.deviation_um)
    for channel, name in enumerate(("red", "green", "blue")):
        vertices[name] = painted[:, channel]
    faces = np.empty(len(site_map.faces), _FACE)
    faces["count"] = 3
    faces["vertex_indices"] = site_map.faces
    lines = [
        "ply",
        "format binary_little_endian 1.0",
        *(f"comment {' '.join(text.split())}" for text in comments),
        "comment deviation_um: signed distance from the CAD surface to the scan, micrometres, positive outside",
        f"comment colours: CET-D1A, blue -{RANGE_UM:g} um to red +{RANGE_UM:g} um, white 0; grey: not part of the body",
        f"element vertex {count}",
        *(f"property double {name}" for name in "xyz"),
        "property float deviation_um",
        *(f"property uchar {name}" for name in ("red", "green", "blue")),
        f"element face {len(faces)}",
        "property list uchar int vertex_indices",
        "end_header\n",
    ]
    return "\n".join(lines).encode("ascii", "replace") + vertices.tobytes() + faces.tobytes()
