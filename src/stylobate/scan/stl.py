"""STL, binary and ASCII. The attribute bytes and the normals of a file are not used."""

from __future__ import annotations

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, FloatArray, IntArray
from stylobate.scan.corners import merge_corners, merge_records
from stylobate.scan.numerals import (
    after_blank,
    after_line,
    after_space,
    excerpt,
    line_of,
    read_number,
    read_word,
    word_code,
)
from stylobate.scan.raw import Raw

HEADER_BYTES = 84
RECORD_BYTES = 50
_LEAST_FACET_BYTES = 60
"""No facet in ASCII is shorter: `facet`, `outer`, three `vertex 0 0 0`, `endloop`, `endfacet` and line ends make 68."""

_SOLID, _END_SOLID = word_code("solid"), word_code("endsolid")
_FACET, _END_FACET = word_code("facet"), word_code("endfacet")
_OUTER, _END_LOOP, _VERTEX = word_code("outer"), word_code("endloop"), word_code("vertex")

_OUTSIDE, _IN_SOLID, _IN_FACET, _IN_LOOP, _LOOP_DONE = 0, 1, 2, 3, 4
_DONE, _NO_END, _CUT, _ORDER, _UNKNOWN, _NUMBER, _EXTRA = 0, 1, 2, 3, 4, 5, 6


def declared_triangles(data: ByteArray) -> int:
    """Triangle count in the header of a binary STL of at least 84 bytes."""
    return int.from_bytes(bytes(data[80:84]), "little")


def read_binary(data: ByteArray, name: str) -> Raw:
    """Binary STL: 80 bytes of header, a count, 50 bytes a triangle. Raises ScanError."""
    if len(data) < HEADER_BYTES:
        raise ScanError(f"{name}: ends within its first {HEADER_BYTES} bytes; export the scan again")
    count = declared_triangles(data)
    room, rest = divmod(len(data) - HEADER_BYTES, RECORD_BYTES)
    if count > room:
        raise ScanError(
            f"{name}: as binary STL it announces {count} triangles but holds {room}; "
            "it is cut short or not a mesh file, export the scan again"
        )
    if count < room:
        raise ScanError(
            f"{name}: as binary STL it announces {count} triangles but has room for {room}; "
            "it is damaged or not a mesh file, export the scan again"
        )
    if count == 0:
        raise ScanError(f"{name}: holds no triangle; export the scan as a surface")
    vertices, index, _ = _named(name, data, count)
    warnings = (f"{name}: {rest} bytes after the last triangle were ignored; they hold no triangle",) if rest else ()
    return Raw(vertices, index.reshape(-1, 3), single=True, warnings=warnings)


def _named(name: str, data: ByteArray, count: int) -> tuple[FloatArray, IntArray, IntArray]:
    try:
        return merge_records(data[HEADER_BYTES + 12 :], RECORD_BYTES, 3, count, False)
    except ScanError as fault:
        raise ScanError(f"{name}: {fault}; export the scan again") from None


@compiled
def _parse(text: ByteArray, corners: FloatArray) -> tuple[int, int, int]:
    """Fill corners (3·n, 3) from ASCII STL; returns facets read, a status and the position it is about."""
    at, state, filled, mark = 0, _OUTSIDE, 0, 0
    while True:
        at = after_space(text, at)
        if at >= len(text):
            if state == _OUTSIDE:
                return filled // 3, _DONE, at
            return filled // 3, (_NO_END if state == _IN_SOLID else _CUT), at
        mark = at
        word, at = read_word(text, at)
        if word == _VERTEX:
            if state != _IN_LOOP:
                return 0, _ORDER, mark
            for axis in range(3):
                at = after_blank(text, at)
                mark = at
                corners[filled, axis], at = read_number(text, at)
                if at < 0:
                    return 0, _NUMBER, mark
            at = after_blank(text, at)
            if at < len(text) and text[at] != 10 and text[at] != 13:
                return 0, _EXTRA, at
            filled += 1
            if filled % 3 == 0:
                state = _LOOP_DONE
        elif word == _FACET:
            if state != _IN_SOLID:
                return 0, _ORDER, mark
            state, at = _IN_FACET, after_line(text, at)
        elif word == _OUTER:
            if state != _IN_FACET:
                return 0, _ORDER, mark
            state, at = _IN_LOOP, after_line(text, at)
        elif word == _END_LOOP:
            if state != _LOOP_DONE:
                return 0, _ORDER, mark
            state = _LOOP_DONE + 1
        elif word == _END_FACET:
            if state != _LOOP_DONE + 1:
                return 0, _ORDER, mark
            state = _IN_SOLID
        elif word == _SOLID:
            if state != _OUTSIDE:
                return 0, _ORDER, mark
            state, at = _IN_SOLID, after_line(text, at)
        elif word == _END_SOLID:
            if state != _IN_SOLID:
                return 0, _ORDER, mark
            state, at = _OUTSIDE, after_line(text, at)
        else:
            return 0, _UNKNOWN, mark


def read_text(data: ByteArray, name: str) -> Raw:
    """ASCII STL, one or more solids. Raises ScanError with the line where it stops making sense."""
    corners = np.empty((3 * (len(data) // _LEAST_FACET_BYTES + 1), 3), dtype=np.float64)
    facets, status, at = _parse(data, corners)
    if status > _NO_END:
        raise ScanError(f"{name}, line {line_of(data, at)}: {_complaint(data, status, at)}; export the scan again")
    if facets == 0:
        raise ScanError(f"{name}: holds no triangle; export the scan as a surface")
    vertices, index, _ = merge_corners(corners[: 3 * facets])
    warnings = (
        (f"{name}: does not end with 'endsolid' and may be cut short; compare it with the original",)
        if status == _NO_END
        else ()
    )
    return Raw(vertices, index.reshape(-1, 3), warnings=warnings)


def _complaint(data: ByteArray, status: int, at: int) -> str:
    word = excerpt(data, min(at, len(data) - 1))
    if status == _CUT:
        return "the file ends inside a triangle"
    if status == _ORDER:
        return (
            f"'{word}' does not belong here (a triangle has exactly three vertices between 'outer loop' and 'endloop')"
        )
    if status == _UNKNOWN:
        return f"'{word}' is no word of ASCII STL"
    if status == _EXTRA:
        return f"'{word}' stands after the three coordinates"
    return f"'{word}' is no finite coordinate" if word else "a coordinate is missing"
