"""OBJ: `v x y z [w | r g b]` and `f` with any number of corners; texture, normals and groups are skipped."""

from __future__ import annotations

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, FloatArray, IntArray
from stylobate.scan.corners import merge_corners
from stylobate.scan.numerals import (
    after_line,
    after_space,
    excerpt,
    is_blank,
    is_space,
    line_of,
    read_integer,
    read_number,
    read_word,
    word_code,
)
from stylobate.scan.raw import Raw, colour_bytes

_V, _F = word_code("v"), word_code("f")
_SKIPPED_WORDS = (  # noqa: SIM905 - one word a line would not fit on a screen
    "vt vn vp o g s mg l p usemtl mtllib usemap maplib shadow_obj trace_obj lod bevel c_interp d_interp "
    "cstype deg bmat step curv curv2 surf parm trim hole scrv sp end con ctech stech call csh"
).split()
_SKIPPED = np.array([word_code(word) for word in _SKIPPED_WORDS], dtype=np.uint64)
FIRST_WORDS = frozenset(word.encode() for word in ["v", "f", *_SKIPPED_WORDS])
"""Words by which a text may be taken for OBJ."""

_DONE, _UNKNOWN, _NUMBER, _WIDTH, _INDEX, _RANGE = 0, 1, 2, 3, 4, 5


@compiled
def _after_gap(text: ByteArray, at: int) -> int:
    """First byte in the line that is no blank; a backslash before a line end joins the next line."""
    while at < len(text):
        c = text[at]
        if is_blank(c):
            at += 1
        elif c == 92 and at + 1 < len(text) and text[at + 1] == 10:
            at += 2
        elif c == 92 and at + 1 < len(text) and text[at + 1] == 13:
            at += 3 if at + 2 < len(text) and text[at + 2] == 10 else 2
        else:
            break
    return at


@compiled
def _ends(text: ByteArray, at: int) -> bool:
    """True where the line's content ends at `at`."""
    return at >= len(text) or text[at] == 10 or text[at] == 13 or text[at] == 35


@compiled
def _corner(text: ByteArray, at: int, vertices: int) -> tuple[int, int]:
    """Vertex (from 0) of the corner `i`, `i/j`, `i//k` or `i/j/k` at `at` and the position after it; −1: unreadable."""
    value, at = read_integer(text, at)
    if at < 0 or value == 0:
        return 0, -1
    for _ in range(2):
        if at < len(text) and text[at] == 47:
            at += 1
            if at < len(text) and not is_space(text[at]) and text[at] != 47:
                _, at = read_integer(text, at)
                if at < 0:
                    return 0, -1
    if at < len(text) and not is_space(text[at]):
        return 0, -1
    return (value - 1 if value > 0 else vertices + value), at


@compiled
def _parse(
    text: ByteArray, fill: bool, points: FloatArray, colours: FloatArray, faces: IntArray, limit: int
) -> tuple[int, int, int, int, int, int, int]:
    """One pass: counts only, or (`fill`) into points (n, 3), colours (n or 0, 3) and faces (m, 3) as well.

    Indices must lie in [0, limit). Returns vertices, triangles, coloured vertices, faces of fewer than three corners,
    the position of the first line that begins with a word unknown to OBJ (−1: none), a status and the position that it
    is about.
    """
    at, vertices, triangles, coloured, bent, strange = 0, 0, 0, 0, 0, -1
    values = np.zeros(8)
    while True:
        at = after_space(text, at)
        if at >= len(text):
            return vertices, triangles, coloured, bent, strange, _DONE, at
        if text[at] == 35:
            at = after_line(text, at)
            continue
        mark = at
        word, at = read_word(text, at)
        if word != _V and word != _F:
            known = False
            for skipped in _SKIPPED:
                known = known or word == skipped
            if not known:
                for k in range(mark, at):
                    if not (97 <= text[k] | 32 <= 122 or text[k] == 95 or (k > mark and 48 <= text[k] <= 57)):
                        return 0, 0, 0, 0, 0, _UNKNOWN, mark
                strange = mark if strange < 0 else strange
            at = after_line(text, at)
            while text[at - 1] == 92 and at < len(text):
                at = after_line(text, at + (2 if at + 1 < len(text) and text[at] == 13 and text[at + 1] == 10 else 1))
            continue
        count, first, second = 0, 0, 0
        while True:
            at = _after_gap(text, at)
            if _ends(text, at):
                break
            if word == _V:
                if count == 7:
                    return 0, 0, 0, 0, 0, _WIDTH, mark
                if fill:
                    mark = at
                    values[count], at = read_number(text, at)
                    if at < 0:
                        return 0, 0, 0, 0, 0, _NUMBER, mark
            elif fill:
                mark = at
                third, at = _corner(text, at, vertices)
                if at < 0:
                    return 0, 0, 0, 0, 0, _INDEX, mark
                if third < 0 or third >= limit:
                    return 0, 0, 0, 0, 0, _RANGE, mark
                if count == 0:
                    first = third
                elif count >= 2:
                    faces[triangles + count - 2, 0] = first
                    faces[triangles + count - 2, 1] = second
                    faces[triangles + count - 2, 2] = third
                second = third
            if not fill:
                while at < len(text) and not is_space(text[at]):
                    if text[at] == 92 and at + 1 < len(text) and (text[at + 1] == 10 or text[at + 1] == 13):
                        break
                    at += 1
                if at < len(text) and text[at] == 92 and _after_gap(text, at) == at:
                    return 0, 0, 0, 0, 0, _INDEX if word == _F else _NUMBER, at
            count += 1
        if word == _F:
            triangles += max(count - 2, 0)
            if count < 3:
                bent += 1
        else:
            if count < 3 or count == 5:
                return 0, 0, 0, 0, 0, _WIDTH, mark
            if count >= 6:
                if fill:
                    for k in range(3):
                        colours[vertices, k] = values[3 + k]
                coloured += 1
            if fill:
                for k in range(3):
                    points[vertices, k] = values[k]
            vertices += 1


def read(data: ByteArray, name: str) -> Raw:
    """OBJ text. Raises ScanError with the line where it stops making sense."""
    nothing, no_faces = np.empty((0, 3)), np.empty((0, 3), dtype=np.int32)
    vertices, triangles, coloured, _, strange, status, at = _parse(data, False, nothing, nothing, no_faces, 0)
    _check(data, name, status, at, vertices)
    if triangles == 0:
        raise ScanError(f"{name}: holds no face ({vertices} points only); export the scan as a surface")
    points, faces = np.empty((vertices, 3)), np.empty((triangles, 3), dtype=np.int32)
    shades = np.ones((vertices if coloured else 0, 3))
    *_, bent, _, status, at = _parse(data, True, points, shades, faces, vertices)
    _check(data, name, status, at, vertices)
    merged, index, first = merge_corners(points)
    colours = colour_bytes(list(shades.T), whole=False)[first] if coloured else None
    warnings = []
    if data[-1] not in (10, 13):
        warnings.append(f"{name}: its last line has no end and may be cut short; compare it with the original")
    if strange >= 0:
        word, line = excerpt(data, strange), line_of(data, strange)
        warnings.append(f"{name}: '{word}' in line {line} is no word of OBJ; lines like it were skipped")
    if 0 < coloured < vertices:
        warnings.append(f"{name}: {vertices - coloured} vertices have no colour and were taken as white")
    return Raw(merged, index[faces], colours, bent=bent, warnings=tuple(warnings))


def _check(data: ByteArray, name: str, status: int, at: int, vertices: int) -> None:
    if status == _DONE:
        return
    word = excerpt(data, min(at, len(data) - 1))
    text = {
        _UNKNOWN: f"'{word}' is no word of OBJ",
        _NUMBER: f"'{word}' is no finite coordinate",
        _WIDTH: "a vertex has 3 coordinates, with a weight 4, with a colour 6 or 7 numbers",
        _INDEX: f"'{word}' is no corner of a face",
        _RANGE: f"corner '{word}' names a vertex that does not exist (there are {vertices})",
    }[status]
    raise ScanError(f"{name}, line {line_of(data, at)}: {text}; export the scan again")
