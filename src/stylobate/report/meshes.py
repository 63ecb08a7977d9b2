"""Surfaces as files for other programs: binary STL, or PLY with 64-bit coordinates where STL would round them."""

from __future__ import annotations

import numpy as np

from stylobate.core.surface import Surface

FARTHEST_STL = 1024.0
"""mm. Up to here the 32-bit coordinates of STL hold a place to 0.03 µm."""

_RECORD = np.dtype([("normal", "<f4", (3,)), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])
_FACE = np.dtype([("count", "u1"), ("vertex_indices", "<i4", (3,))])


def mesh_file(surface: Surface, about: str) -> tuple[bytes, str]:
    """Content and suffix of a file that loses nothing of `surface`. about: one ASCII line in its header."""
    if float(np.abs(surface.vertices).max(initial=0.0)) <= FARTHEST_STL:
        return stl_bytes(surface, about), ".stl"
    return ply_bytes(surface, about), ".ply"


def stl_bytes(surface: Surface, about: str) -> bytes:
    """Binary STL. Faces keep their order; normals are those of the faces."""
    products = surface.corner_products()
    length = np.maximum(np.linalg.norm(products, axis=1, keepdims=True), 1e-300)
    records = np.zeros(len(surface.faces), _RECORD)
    records["normal"] = products / length
    records["corners"] = surface.vertices[surface.faces]
    # A header that starts with "solid" is taken for ASCII STL by some readers.
    header = f"binary: {about}".encode("ascii", "replace")[:80].ljust(80)
    return header + np.array(len(records), "<u4").tobytes() + records.tobytes()


def ply_bytes(surface: Surface, about: str) -> bytes:
    """Binary PLY, little endian, 64-bit coordinates, with the colours of the vertices where there are some."""
    faces = np.empty(len(surface.faces), _FACE)
    faces["count"] = 3
    faces["vertex_indices"] = surface.faces
    lines = [
        "ply",
        "format binary_little_endian 1.0",
        f"comment {' '.join(about.split())}",
        f"element vertex {len(surface.vertices)}",
        *(f"property double {name}" for name in "xyz"),
        *(f"property uchar {name}" for name in ("red", "green", "blue") if surface.colours is not None),
        f"element face {len(faces)}",
        "property list uchar int vertex_indices",
        "end_header\n",
    ]
    vertices = np.ascontiguousarray(surface.vertices, dtype="<f8")
    if surface.colours is not None:
        coloured = np.empty(len(vertices), [("at", "<f8", (3,)), ("colour", "u1", (3,))])
        coloured["at"], coloured["colour"] = vertices, surface.colours
        vertices = coloured
    return "\n".join(lines).encode("ascii", "replace") + vertices.tobytes() + faces.tobytes()
