"""Small meshes written in every variant of the formats, plainly and slowly; shares no code with the readers."""

from __future__ import annotations

import gzip
import struct
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

FORMATS = ("stl-binary", "stl-ascii", "ply-ascii", "ply-little", "ply-big", "obj")
CODES = {"char": "b", "uchar": "B", "short": "h", "ushort": "H", "int": "i", "uint": "I", "float": "f", "double": "d",
         "int8": "b", "uint8": "B", "int16": "h", "uint16": "H", "int32": "i", "uint32": "I", "float32": "f",
         "float64": "d"}  # fmt: skip


@dataclass(frozen=True)
class Variant:
    """How a mesh is written. coordinate, shade, count, index: PLY types; shade "" writes no colours.

    extra: further properties and elements (PLY), texture and normals (OBJ), several solids (ASCII STL).
    negative: OBJ counts vertices from the end.
    """

    kind: str
    coordinate: str = "float"
    shade: str = ""
    count: str = "uchar"
    index: str = "int"
    extra: bool = False
    negative: bool = False
    line_end: str = "\n"
    packed: bool = False


def write(points: npt.NDArray[np.float64], polygons: list[list[int]], variant: Variant,
          colours: npt.NDArray[np.uint8] | None = None) -> bytes:  # fmt: skip
    """The bytes of a file. Polygons become triangles (fans) in STL, which has no others."""
    if variant.kind == "stl-binary":
        data = _stl_binary(points, polygons)
    elif variant.kind == "stl-ascii":
        data = _stl_ascii(points, polygons, variant)
    elif variant.kind == "obj":
        data = _obj(points, polygons, variant, colours)
    else:
        data = _ply(points, polygons, variant, colours)
    return gzip.compress(data, mtime=0) if variant.packed else data


def fan(polygon: list[int]) -> list[tuple[int, int, int]]:
    """Triangles of a polygon from its first corner."""
    return [(polygon[0], polygon[k], polygon[k + 1]) for k in range(1, len(polygon) - 1)]


def _stl_binary(points: npt.NDArray[np.float64], polygons: list[list[int]]) -> bytes:
    triangles = [t for p in polygons for t in fan(p)]
    out = [b"harbour street".ljust(80, b"\0"), struct.pack("<I", len(triangles))]
    out += [struct.pack("<12fH", 0, 0, 0, *(float(x) for v in t for x in points[v]), 7) for t in triangles]
    return b"".join(out)


def _stl_ascii(points: npt.NDArray[np.float64], polygons: list[list[int]], variant: Variant) -> bytes:
    triangles = [t for p in polygons for t in fan(p)]
    half = len(triangles) // 2 if variant.extra else len(triangles)
    lines = []
    for name, some in (("alder vertex facet", triangles[:half]), ("hazel", triangles[half:])):
        if not some:
            continue
        lines.append(f"solid {name}")
        for t in some:
            lines += ["  facet normal 0 0 1", "    outer loop"]
            lines += ["      vertex " + " ".join(repr(float(x)) for x in points[v]) for v in t]
            lines += ["    endloop", "  endfacet"]
        lines.append(f"endsolid {name}")
    return (variant.line_end.join(lines) + variant.line_end).encode()


def _obj(points: npt.NDArray[np.float64], polygons: list[list[int]], variant: Variant,
         colours: npt.NDArray[np.uint8] | None) -> bytes:  # fmt: skip
    lines = ["# harbour street", "mtllib none.mtl", "o rowan"]
    for k, p in enumerate(points):
        shade = [] if colours is None else [repr(float(c) / 255) for c in colours[k]]
        lines.append("v " + " ".join([repr(float(x)) for x in p] + shade))
    if variant.extra:
        lines += ["vt 0 0", "vn 0 0 1", "s off", "usemtl grey"]
    for polygon in polygons:
        corners = [v - len(points) if variant.negative else v + 1 for v in polygon]
        tail = ["/1/1", "//1", "/1"][len(polygon) % 3] if variant.extra else ""
        middle = " \\" + variant.line_end if variant.extra and len(polygon) > 3 else " "
        lines.append(f"f {corners[0]}{tail}{middle}" + " ".join(f"{c}{tail}" for c in corners[1:]))
    return (variant.line_end.join(lines) + variant.line_end).encode()


def _ply(points: npt.NDArray[np.float64], polygons: list[list[int]], variant: Variant,
         colours: npt.NDArray[np.uint8] | None) -> bytes:  # fmt: skip
    """Rows are lists of (type, value); a list is (count type, length) and its items."""
    shade = variant.shade if colours is not None else ""
    kind = {"ply-ascii": "ascii", "ply-little": "binary_little_endian", "ply-big": "binary_big_endian"}[variant.kind]
    head = ["ply", f"format {kind} 1.0", "comment harbour street"]
    rows: list[list[tuple[str, float]]] = []
    if variant.extra:
        head += ["element camera 2", "property double view", "property list ushort float lens"]
        rows += [[("double", 1.5), ("ushort", 2), ("float", 0.5), ("float", 2.5)], [("double", -1.0), ("ushort", 0)]]
    head += [f"element vertex {len(points)}", *(f"property {variant.coordinate} {axis}" for axis in "xyz")]
    if variant.extra:
        head.append("property float confidence")
    if shade:
        head += [f"property {shade} {c}" for c in ("red", "green", "blue")]
    for k, p in enumerate(points):
        row = [(variant.coordinate, float(x)) for x in p] + ([("float", 0.25)] if variant.extra else [])
        if shade and colours is not None:
            row += [(shade, float(c) / 255 if CODES[shade] in "fd" else int(c)) for c in colours[k]]
        rows.append(row)
    head += [f"element face {len(polygons)}", *(["property uchar flags"] if variant.extra else [])]
    head += [f"property list {variant.count} {variant.index} vertex_indices", "end_header"]
    for polygon in polygons:
        start: list[tuple[str, float]] = [("uchar", 9)] if variant.extra else []
        rows.append([*start, (variant.count, len(polygon)), *((variant.index, v) for v in polygon)])
    header = (variant.line_end.join(head) + variant.line_end).encode()
    if variant.kind == "ply-ascii":
        return header + "".join(" ".join(repr(v) for _, v in row) + variant.line_end for row in rows).encode()
    order = "<" if variant.kind == "ply-little" else ">"
    return header + b"".join(struct.pack(order + CODES[t], v) for row in rows for t, v in row)
