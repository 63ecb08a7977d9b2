"""PLY, ASCII and binary of both byte orders: any elements and properties, polygons of any size."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from stylobate.core.errors import ScanError
from stylobate.core.types import ByteArray, IntArray
from stylobate.scan import ply_rows
from stylobate.scan.corners import merge_corners
from stylobate.scan.numerals import excerpt, line_of
from stylobate.scan.ply_header import Element, Header, Property, cut, read_header
from stylobate.scan.raw import Raw, colour_bytes, fans

Array = npt.NDArray[Any]
_COLOURS = (("red", "r", "diffuse_red"), ("green", "g", "diffuse_green"), ("blue", "b", "diffuse_blue"))
_LEAST_POLYGON = 3


@dataclass
class _Tables:
    """What is taken from the body: wanted vertex columns, and the faces' lists."""

    columns: list[Array]
    counts: Array
    items: Array


def read(data: ByteArray, name: str) -> Raw:
    """A PLY file. Raises ScanError: cut short, too long, negative or unknown vertices, unreadable numbers."""
    header = read_header(data, name)
    tables = _Tables([], np.empty(0), np.empty(0))
    at = header.body
    for element in header.elements:
        at = (_binary_rows if header.byte_order else _text_rows)(data, at, header, element, tables, name)
    warnings = _check_rest(data, at, header, name)
    return _assemble(header, tables, name, warnings)


def _wanted(element: Element) -> list[int]:
    """Indices of the vertex properties that are kept: x, y, z and, where all three are there, the colours."""
    axes = [element.find(axis) for axis in "xyz"]
    shades = [element.find(*names) for names in _COLOURS]
    lists = any(element.properties[k].count_code for k in shades if k >= 0)
    return axes + (shades if min(shades) >= 0 and not lists else [])


def _assemble(header: Header, tables: _Tables, name: str, warnings: tuple[str, ...]) -> Raw:
    vertex = header.element("vertex")
    assert vertex is not None
    items = tables.items
    if len(items) and (int(items.min()) < 0 or int(items.max()) >= vertex.count):
        bad = int(np.flatnonzero((items < 0) | (items >= vertex.count))[0])
        face = int(np.searchsorted(np.cumsum(tables.counts, dtype=np.int64), bad, side="right")) + 1
        raise ScanError(
            f"{name}: face {face} names vertex {int(items[bad])}, but there are only 0 to {vertex.count - 1}; "
            "export the scan again"
        )
    axes = tables.columns[:3]
    single = all(axis.dtype == np.float32 for axis in axes)
    points = np.stack([axis.astype(np.float32 if single else np.float64) for axis in axes], axis=1)
    try:
        vertices, index, first = merge_corners(points)
    except ScanError as fault:
        raise ScanError(f"{name}: {fault}; export the scan again") from None
    colours = None
    if len(tables.columns) > 3:
        whole = vertex.properties[_wanted(vertex)[3]].code[0] != "f"
        colours = colour_bytes(tables.columns[3:], whole)[first]
    triangles = fans(tables.counts, tables.items)
    bent = int(np.count_nonzero(tables.counts < _LEAST_POLYGON))
    return Raw(vertices, index[triangles], colours, single, bent, warnings)


def _check_rest(data: ByteArray, at: int, header: Header, name: str) -> tuple[str, ...]:
    """Nothing that could be a row may follow the last one."""
    rest = len(data) - at
    if not header.byte_order:
        if (rest and bytes(data[at : at + 4096]).strip()) or (rest > 4096 and bytes(data[at:]).strip()):
            raise ScanError(
                f"{name}, line {line_of(data, at) + 1}: more follows than the header announces; export the scan again"
            )
        if data[-1] not in (10, 13, 32):
            return (f"{name}: its last line has no end and may be cut short; compare it with the original",)
        return ()
    last = next(e for e in reversed(header.elements) if e.count)
    row = sum(p.least + (_LEAST_POLYGON * p.size if p.count_code else 0) for p in last.properties)
    if rest >= max(row, 1):
        raise ScanError(f"{name}: {rest} bytes more than the header announces; it is damaged, export the scan again")
    return (f"{name}: {rest} bytes after the last element were ignored; they hold no face",) if rest else ()


def _cut_short(name: str, element: Element, row: int) -> ScanError:
    return ScanError(
        f"{name}: announces {element.count} rows of '{cut(element.name)}' but ends in row {row + 1}; "
        "it is cut short or damaged, export the scan again"
    )


def _binary_rows(data: ByteArray, at: int, header: Header, element: Element, tables: _Tables, name: str) -> int:
    """Take what is wanted of one element; the position after it."""
    if not element.properties or not element.count:
        return at
    if element.count > (len(data) - at) // element.least:
        raise _cut_short(name, element, (len(data) - at) // element.least)
    table = _uniform(data, at, header, element)
    if table is None:
        return _uneven_rows(data, at, header, element, tables, name)
    if element.name == "vertex":
        tables.columns = [_native(table[f"v{k}"]) for k in _wanted(element)]
    elif element.name == "face":
        k = element.find("vertex_indices", "vertex_index")
        tables.counts, tables.items = table[f"n{k}"], _native(table[f"v{k}"].reshape(-1))
    return at + table.nbytes


def _uniform(data: ByteArray, at: int, header: Header, element: Element) -> Array | None:
    """The element as a structured array, where all its lists are as long as in its first row; None otherwise."""
    fields: list[tuple[Any, ...]] = []
    size = 0
    for k, p in enumerate(element.properties):
        length = 1
        if p.count_code:
            step = int(p.count_code[1])
            if at + size + step > len(data):
                return None
            raw = bytes(data[at + size : at + size + step])
            length = int.from_bytes(raw, "big" if header.byte_order == ">" else "little", signed=p.count_code[0] == "i")
            fields.append((f"n{k}", header.byte_order + p.count_code))
            size += step
        if length < 0 or length * p.size > len(data):
            return None
        fields.append((f"v{k}", header.byte_order + p.code, *([(length,)] if p.count_code else [])))
        size += length * p.size
        if size > (len(data) - at) // element.count:
            return None
    table = np.frombuffer(data, dtype=np.dtype(fields), count=element.count, offset=at)
    lists = [f"n{k}" for k, p in enumerate(element.properties) if p.count_code]
    return table if all(bool(np.all(table[n] == table[n][0])) for n in lists) else None


def _uneven_rows(data: ByteArray, at: int, header: Header, element: Element, tables: _Tables, name: str) -> int:
    """The same for lists of mixed lengths."""
    properties = element.properties
    big = header.byte_order == ">"
    starts, lengths = (np.empty((element.count, len(properties)), dtype=np.int64) for _ in range(2))
    sizes = np.array([p.size for p in properties], dtype=np.int64)
    counts = np.array([_count_code(p) for p in properties], dtype=np.int64)
    status, row, at = ply_rows.walk(data, at, sizes, counts, big, starts, lengths)
    if status == ply_rows.CUT:
        raise _cut_short(name, element, row)
    if status == ply_rows.NEGATIVE:
        raise ScanError(
            f"{name}: row {row + 1} of '{cut(element.name)}' has a list of negative length; export the scan again"
        )
    if element.name == "vertex":
        tables.columns = [
            _scattered(data, starts[:, k], header.byte_order + properties[k].code) for k in _wanted(element)
        ]
    elif element.name == "face":
        k = element.find("vertex_indices", "vertex_index")
        tables.counts = lengths[:, k].copy()
        tables.items = np.empty(int(tables.counts.sum()), dtype=np.int64)
        ply_rows.gather(
            data,
            starts[:, k].copy(),
            tables.counts,
            properties[k].size,
            properties[k].code[0] == "i",
            big,
            tables.items,
        )
    return at


def _count_code(p: Property) -> int:
    if p.count_code is None:
        return 0
    return int(p.count_code[1]) * (-1 if p.count_code[0] == "i" else 1)


def _native(values: Array) -> Array:
    return np.ascontiguousarray(values, dtype=values.dtype.newbyteorder("="))


def _scattered(data: ByteArray, starts: Array, code: str) -> Array:
    picked = data[starts[:, None] + np.arange(np.dtype(code).itemsize)]
    return _native(picked.view(code).reshape(-1))


def _text_rows(data: ByteArray, at: int, _header: Header, element: Element, tables: _Tables, name: str) -> int:
    """Take what is wanted of one element in ASCII; the position after it."""
    if not element.properties or not element.count:
        return at
    room = (len(data) - at + 1) // (2 * len(element.properties))
    if element.count > room:
        raise _cut_short(name, element, room)
    slots = np.array([-2 if p.count_code else -1 for p in element.properties], dtype=np.int64)
    wanted: list[int] = []
    items: IntArray = np.empty(0, dtype=np.int32)
    if element.name == "vertex":
        wanted = _wanted(element)
        slots[wanted] = np.arange(len(wanted))
    elif element.name == "face":
        slots[element.find("vertex_indices", "vertex_index")] = -3
        items = np.empty((len(data) - at) // 2 + 2, dtype=np.int32)
    columns = np.empty((element.count, len(wanted)))
    counts = np.zeros(element.count, dtype=np.int32)
    status, row, at, kept = ply_rows.parse(data, at, slots, columns, counts, items)
    if status == ply_rows.CUT:
        raise _cut_short(name, element, row)
    if status != ply_rows.DONE:
        word = excerpt(data, at)
        what = "list length" if status == ply_rows.COUNT else "finite number" if wanted else "vertex index"
        raise ScanError(f"{name}, line {line_of(data, at)}: '{word}' is no {what}; export the scan again")
    if wanted:
        tables.columns = [columns[:, k] for k in range(len(wanted))]
    elif len(items):
        tables.counts, tables.items = counts, items[:kept]
    return at
