"""A slow second reading of mesh files, by other means than the package: what triangles does this file state?

It need not refuse well; it is asked only about files that the package accepted.
"""

from __future__ import annotations

import gzip
import io
import re
import struct

import numpy as np
import numpy.typing as npt

from fuzz.writers import CODES, fan

Triangles = npt.NDArray[np.float64]


def triangles(data: bytes) -> Triangles:
    """(m, 3, 3) corners of every triangle stated, polygons as fans, degenerate ones included."""
    if data[:2] == b"\x1f\x8b":
        with gzip.open(io.BytesIO(data)) as file:
            data = file.read()
    if data[:3] == b"ply":
        return _ply(data)
    if len(data) >= 84:
        count = struct.unpack_from("<I", data, 80)[0]
        if 0 <= len(data) - 84 - 50 * count < 50:
            rows = [struct.unpack_from("<9f", data, 96 + 50 * k) for k in range(count)]
            return np.array(rows, dtype=np.float64).reshape(-1, 3, 3)
    text = data.removeprefix(b"\xef\xbb\xbf")
    return _stl(text) if text.lstrip().lower().startswith(b"solid") else _obj(text)


def _number(word: bytes) -> float:
    """A decimal, Fortran's exponent letter included."""
    return float(word.lower().replace(b"d", b"e"))


def _stl(text: bytes) -> Triangles:
    text = re.sub(rb"(?<!\S)(solid|endsolid|facet|outer)(?!\S)[^\r\n]*", rb"\1", text.lower())
    words = text.split()
    corners = [[_number(x) for x in words[k + 1 : k + 4]] for k, word in enumerate(words) if word == b"vertex"]
    facets = words.count(b"facet")
    assert len(corners) == 3 * facets, "vertices do not make up the facets"
    return np.array(corners, dtype=np.float64).reshape(-1, 3, 3)


def _obj(text: bytes) -> Triangles:
    text = text.replace(b"\\\r\n", b" ").replace(b"\\\n", b" ").replace(b"\\\r", b" ").replace(b"\r", b"\n")
    points: list[list[float]] = []
    faces: list[tuple[int, int, int]] = []
    for line in text.split(b"\n"):
        words = line.split(b"#")[0].split()
        if words and words[0].lower() == b"v":
            points.append([_number(x) for x in words[1:4]])
        elif words and words[0].lower() == b"f":
            polygon = [int(w.split(b"/")[0]) for w in words[1:]]
            faces += fan([v - 1 if v > 0 else len(points) + v for v in polygon]) if len(polygon) > 2 else []
    return np.array([[points[v] for v in t] for t in faces], dtype=np.float64).reshape(-1, 3, 3)


def _ply(data: bytes) -> Triangles:
    newline = rb"\r?\n" if re.match(rb"ply[ \t]*\r?\n", data) else rb"\r"
    end = re.search(newline + rb"end_header[ \t]*" + newline, data)
    assert end is not None
    body = end.end()
    lines = [line.strip() for line in re.split(newline, data[: end.start()])]
    kind = next(line.split()[1] for line in lines if line.startswith(b"format")).decode()
    words = iter(data[body:].split()) if kind == "ascii" else None
    order, at = (">" if "big" in kind else "<"), body

    def take(code: str) -> float | bytes:
        nonlocal at
        if words is not None:
            return next(words)
        value: float = struct.unpack_from(order + CODES[code], data, at)[0]
        at += struct.calcsize(CODES[code])
        return value

    elements: list[tuple[str, int, list[list[str]]]] = []
    for line in lines:
        w = [word.decode("latin-1") for word in line.split()]
        if w[:1] == ["element"]:
            elements.append((w[1], int(w[2]), []))
        elif w[:1] == ["property"]:
            elements[-1][2].append(w[1:])
    points: list[list[float]] = []
    faces: list[tuple[int, int, int]] = []
    for name, count, properties in elements:
        for _ in range(count if properties else 0):
            row: dict[str, list[float | bytes]] = {}
            for *kinds, title in properties:
                length = int(take(kinds[1])) if kinds[0] == "list" else 1
                row[title] = [take(kinds[-1]) for _ in range(length)]
            if name == "vertex":
                points.append([_number(v) if isinstance(v, bytes) else v for axis in "xyz" for v in row[axis]])
            elif name == "face":
                polygon = [int(v) for v in row.get("vertex_indices", row.get("vertex_index", []))]
                faces += fan(polygon) if len(polygon) > 2 else []
    return np.array([[points[v] for v in t] for t in faces], dtype=np.float64).reshape(-1, 3, 3)
