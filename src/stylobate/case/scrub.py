"""A mesh file without what people write into it: names, headers and comments. The surface stays bit for bit."""

from __future__ import annotations

import re

import numpy as np

from stylobate.scan.read import kind_of
from stylobate.scan.source import unpack
from stylobate.scan.stl import HEADER_BYTES, RECORD_BYTES, declared_triangles

STL_HEADER = b"binary STL, millimetres".ljust(HEADER_BYTES - 4)
_SOLID = re.compile(rb"(?im)^([ \t]*(?:end)?solid)\b[^\r\n]*")
_PLY_WORDS = re.compile(rb"(?m)^(?:comment|obj_info)\b[^\r\n]*(?:\r\n|\r|\n)")
_OBJ_NAMES = re.compile(rb"(?m)^[ \t]*(?:o|g|mtllib|usemtl)\b[^\r\n]*")
_OBJ_COMMENTS = re.compile(rb"#[^\r\n]*")


def extension(content: bytes, name: str) -> str:
    """stl, ply or obj, by content; a gzipped file by what is in it. Raises ScanError."""
    data = unpack(np.frombuffer(content, np.uint8), name).data
    return {"STL": "stl", "ASCII STL": "stl", "PLY": "ply", "OBJ": "obj"}[kind_of(data, name)]


def scrubbed(content: bytes, name: str) -> bytes:
    """STL, PLY or OBJ, gzipped or not, as plain bytes without header text, comments, object and material names.

    Also gone: what stands after the last triangle of a binary STL. Raises ScanError: not a mesh file.
    """
    data = unpack(np.frombuffer(content, np.uint8), name).data
    plain = data.tobytes()
    match kind_of(data, name):
        case "STL":
            end = HEADER_BYTES + RECORD_BYTES * declared_triangles(data)
            return STL_HEADER + plain[HEADER_BYTES - 4 : end]
        case "ASCII STL":
            return _SOLID.sub(rb"\1", plain)
        case "PLY":
            found = re.search(rb"(?m)^end_header[ \t]*(?:\r\n|\r|\n)", plain)
            end = found.end() if found else len(plain)
            return _PLY_WORDS.sub(b"", plain[:end]) + plain[end:]
        case _:
            return _OBJ_COMMENTS.sub(b"", _OBJ_NAMES.sub(b"", plain))
