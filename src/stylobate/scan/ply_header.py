"""The header of a PLY file: elements, their properties, and where the body begins."""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.types import ByteArray
from stylobate.scan.source import shown

MAX_HEADER_BYTES = 1 << 18
MAX_PROPERTIES = 256
TYPES = {
    "char": "i1", "int8": "i1", "uchar": "u1", "uint8": "u1", "short": "i2", "int16": "i2", "ushort": "u2",
    "uint16": "u2", "int": "i4", "int32": "i4", "uint": "u4", "uint32": "u4", "float": "f4", "float32": "f4",
    "double": "f8", "float64": "f8",
}  # fmt: skip
FORMATS = {"ascii": "", "binary_little_endian": "<", "binary_big_endian": ">"}


@dataclass(frozen=True)
class Property:
    """One property: numpy type code of its value (of a list: of its items) and of a list's count, None for a scalar."""

    name: str
    code: str
    count_code: str | None

    @property
    def size(self) -> int:
        """Bytes of one value."""
        return int(self.code[1])

    @property
    def least(self) -> int:
        """Bytes that it takes at least in a binary row."""
        return int(self.count_code[1]) if self.count_code else self.size


@dataclass(frozen=True)
class Element:
    """A table of rows."""

    name: str
    count: int
    properties: tuple[Property, ...]

    def find(self, *names: str) -> int:
        """Index of the first property of one of these names, −1 if there is none."""
        return next((k for name in names for k, p in enumerate(self.properties) if p.name == name), -1)

    @property
    def least(self) -> int:
        """Bytes that a binary row takes at least."""
        return sum(p.least for p in self.properties)


@dataclass(frozen=True)
class Header:
    """byte_order: "<" or ">", "" for ASCII. body: position of the first byte after the header."""

    byte_order: str
    elements: tuple[Element, ...]
    body: int

    def element(self, name: str) -> Element | None:
        """The element of that name."""
        return next((e for e in self.elements if e.name == name), None)


def read_header(data: ByteArray, name: str) -> Header:
    """Parse the header. Raises ScanError: no end, unknown words or types, no vertices, no faces."""
    head = bytes(data[:MAX_HEADER_BYTES])
    line_end = b"\n" if re.match(rb"ply[ \t]*\r?\n", head) else b"\r"
    mark = head.find(line_end + b"end_header")
    stop = -1 if mark < 0 else head.find(line_end, mark + len(line_end))
    if stop < 0 or head[mark + len(line_end) : stop].strip() != b"end_header":
        raise ScanError(f"{name}: its PLY header has no end ('end_header'); export the scan again")
    lines = head[:mark].split(line_end)
    byte_order, elements = _parse_lines(lines, name)
    header = Header(byte_order, tuple(elements), stop + len(line_end))
    _check_content(header, name)
    return header


def _parse_lines(lines: list[bytes], name: str) -> tuple[str, list[Element]]:
    byte_order: str | None = None
    elements: list[Element] = []
    for number, line in enumerate(lines[1:], start=2):
        where = f"{name}, line {number}"
        words = [word.decode("latin-1") for word in line.split()]
        match words:
            case [] | ["comment", *_] | ["obj_info", *_]:
                continue
            case ["format", kind, "1.0"] if kind in FORMATS and byte_order is None:
                byte_order = FORMATS[kind]
            case ["element", title, count] if count.isascii() and count.isdigit() and len(count) <= 18:
                if any(e.name == title for e in elements):
                    raise ScanError(f"{where}: element '{cut(title)}' stands twice; export the scan again")
                elements.append(Element(title, int(count), ()))
            case ["property", *rest] if elements:
                last = elements[-1]
                elements[-1] = Element(last.name, last.count, (*last.properties, _property(rest, last, where)))
            case _:
                raise ScanError(f"{where}: '{cut(' '.join(words))}' is no PLY header line; export the scan again")
    if byte_order is None:
        raise ScanError(f"{name}: its PLY header has no format line; export the scan again")
    return byte_order, elements


def _property(words: list[str], element: Element, where: str) -> Property:
    match words:
        case ["list", count, kind, title] if kind in TYPES and TYPES.get(count, "f")[0] != "f":
            result = Property(title, TYPES[kind], TYPES[count])
        case [kind, title] if kind in TYPES:
            result = Property(title, TYPES[kind], None)
        case _:
            raise ScanError(f"{where}: 'property {cut(' '.join(words))}' is of no known type; export the scan again")
    if element.find(result.name) >= 0:
        raise ScanError(f"{where}: property '{cut(result.name)}' stands twice; export the scan again")
    if len(element.properties) >= MAX_PROPERTIES:
        raise ScanError(f"{where}: more than {MAX_PROPERTIES} properties in one element; export the scan again")
    return result


def _check_content(header: Header, name: str) -> None:
    vertex, face = header.element("vertex"), header.element("face")
    if vertex is None or vertex.count == 0:
        raise ScanError(f"{name}: holds no vertices; export the scan as a surface")
    axes = [vertex.find(axis) for axis in "xyz"]
    if min(axes) < 0 or any(vertex.properties[k].count_code for k in axes):
        raise ScanError(f"{name}: its vertices have no x, y and z; export the scan again")
    if header.element("tristrips") is not None and (face is None or face.count == 0):
        raise ScanError(f"{name}: holds triangle strips, which are not read; export the scan with faces")
    if face is None or face.count == 0:
        raise ScanError(f"{name}: holds {vertex.count} points and no faces; export the scan as a surface")
    corners = face.find("vertex_indices", "vertex_index")
    if corners < 0 or face.properties[corners].count_code is None or face.properties[corners].code[0] == "f":
        raise ScanError(f"{name}: its faces have no list of whole numbers 'vertex_indices'; export the scan again")
    if vertex.count >= np.iinfo(np.int32).max:
        raise ScanError(f"{name}: announces {vertex.count} vertices, more than any scan has; export the scan again")


def cut(text: str) -> str:
    """A word of the file as it can stand in one line of a message."""
    clean = shown(text)
    return clean if len(clean) <= 48 else clean[:47] + "…"
