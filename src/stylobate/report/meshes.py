"""Surfaces as files for other programs: binary STL, or PLY with 64-bit coordinates where STL would round them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from stylobate.core.surface import Surface
from stylobate.core.types import IntArray

FARTHEST_STL = 1024.0
"""mm. Up to here the 32-bit coordinates of STL hold a place to 0.03 µm."""

_RECORD = np.dtype([("normal", "<f4", (3,)), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])
FACE = np.dtype([("count", "u1"), ("vertex_indices", "<i4", (3,))])
COLOURS = ("red", "green", "blue")
PLY_TYPES = {"<f8": "double", "<f4": "float", "|u1": "uchar", "<i4": "int"}


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
    channels = {} if surface.colours is None else dict.fromkeys(COLOURS, "u1")
    vertices = np.empty(len(surface.vertices), [*((axis, "<f8") for axis in "xyz"), *channels.items()])
    for axis, values in zip("xyz", surface.vertices.T, strict=True):
        vertices[axis] = values
    if surface.colours is not None:
        for name, values in zip(COLOURS, surface.colours.T, strict=True):
            vertices[name] = values
    return ply(vertices, surface.faces, (about,))


def ply(vertices: npt.NDArray[np.void], faces: IntArray, comments: Sequence[str]) -> bytes:
    """Binary PLY, little endian: each field of the vertices (n,) a property, faces (m, 3). comments: one line each."""
    corners = np.empty(len(faces), FACE)
    corners["count"] = 3
    corners["vertex_indices"] = faces
    fields = [(name, PLY_TYPES[vertices.dtype[name].str]) for name in vertices.dtype.names or ()]
    lines = [
        "ply",
        "format binary_little_endian 1.0",
        *(f"comment {' '.join(text.split())}" for text in comments),
        f"element vertex {len(vertices)}",
        *(f"property {kind} {name}" for name, kind in fields),
        f"element face {len(corners)}",
        "property list uchar int vertex_indices",
        "end_header\n",
    ]
    return "\n".join(lines).encode("ascii", "replace") + vertices.tobytes() + corners.tobytes()
