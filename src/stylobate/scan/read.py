"""The doors: a file on disk becomes a Scan, a file or bytes become a Surface."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import ByteArray
from stylobate.scan import obj, ply, stl
from stylobate.scan.checks import distance_warning, middle, tidied, unit_warning
from stylobate.scan.raw import Raw
from stylobate.scan.source import Digest, load, shown, unpack

_SNIFFED_BYTES = 1 << 16
_READERS = {"STL": (stl.read_binary, ".stl"), "ASCII STL": (stl.read_text, ".stl"), "PLY": (ply.read, ".ply"),
            "OBJ": (obj.read, ".obj")}  # fmt: skip
_TEXT_PROOF = bytes(set(range(9)) | set(range(14, 32)) - {0x1A, 0x1B})


@dataclass(frozen=True)
class Mesh:
    """A surface in the file's own coordinates. single: these are 32-bit floats in the file.

    kind: STL, ASCII STL, PLY or OBJ, by its content.
    """

    surface: Surface
    single: bool
    warnings: tuple[str, ...]
    kind: str


def kind_of(data: ByteArray, name: str) -> str:
    """Which of the formats the content is, whatever the file is called. Raises ScanError for anything else."""
    head = bytes(data[:_SNIFFED_BYTES])
    if re.match(rb"ply[ \t]*[\r\n]", head):
        return "PLY"
    if len(data) >= stl.HEADER_BYTES:
        records = stl.declared_triangles(data)
        if 0 <= len(data) - stl.HEADER_BYTES - stl.RECORD_BYTES * records < stl.RECORD_BYTES:
            return "STL"
    if head.translate(None, _TEXT_PROOF) == head:
        text = head.removeprefix(b"\xef\xbb\xbf").lstrip()
        if re.match(rb"solid(?=\s|$)", text, re.IGNORECASE):
            return "ASCII STL"
        if _first_word(text) in obj.FIRST_WORDS:
            return "OBJ"
        raise ScanError(f"{name}: this is text, but not STL, PLY or OBJ; export the scan in one of these")
    if Path(name.removesuffix(".gz")).suffix.lower() == ".stl" or head[:5].lower() == b"solid":
        return "STL"
    raise ScanError(f"{name}: this is not STL, PLY or OBJ; export the scan in one of these")


def _first_word(text: bytes) -> bytes:
    """First word of the first line that is neither blank nor a comment."""
    for line in text.splitlines():
        words = line.split(maxsplit=1)
        if words and not words[0].startswith(b"#"):
            return words[0]
    return b"v" if text.startswith(b"#") else b""


def _parse(stored: ByteArray, name: str) -> tuple[Raw, tuple[str, ...], str]:
    content = unpack(stored, name)
    if not len(content.data):
        raise ScanError(f"{name}: the file is empty; export the scan again")
    kind = kind_of(content.data, name)
    reader, usual = _READERS[kind]
    data = content.data
    if kind != "STL" and bytes(data[:3]) == b"\xef\xbb\xbf":
        data = data[3:]
    raw = reader(np.ascontiguousarray(data), name)
    suffix = Path(name.lower().removesuffix(".gz")).suffix
    if suffix in (usual, ""):
        return raw, (), kind
    return raw, (f"{name}: is {kind} by its content and was read as such; name it {usual}",), kind


def _mesh(stored: ByteArray, name: str) -> Mesh:
    try:
        raw, early, kind = _parse(stored, name)
        surface, warnings = tidied(raw, name)
    except MemoryError:
        raise ScanError(f"{name}: too large for the memory of this machine; export it with fewer triangles") from None
    return Mesh(surface, raw.single, early + warnings, kind)


def read_mesh(source: str | Path | bytes, name: str | None = None) -> Mesh:
    """A surface in the coordinates of its file, with warnings.

    source: path, or the bytes of a file. name: how messages call it. Raises ScanError.
    """
    if isinstance(source, bytes):
        return _mesh(np.frombuffer(source, dtype=np.uint8), shown(name or "mesh"))
    path = Path(source)
    return _mesh(load(path), shown(name or path.name))


def read_surface(source: str | Path | bytes, name: str | None = None) -> Surface:
    """A surface in the coordinates of its file, float64, mm. Arguments and errors as for `read_mesh`."""
    return read_mesh(source, name).surface


def read_scan(path: str | Path) -> Scan:
    """Read a scan into a local frame. Raises ScanError in one line: what is wrong, where, what to do.

    The origin is the middle of the bounding box, rounded to whole millimetres, so that subtracting it costs no
    more than the last bit of a double; `sha256` is of the file as stored.
    """
    path = Path(path)
    stored = load(path)
    digest = Digest(stored)
    name = shown(path.name)
    mesh = _mesh(stored, name)
    origin, size = middle(mesh.surface.vertices)
    local = Raw(mesh.surface.vertices - origin, mesh.surface.faces, mesh.surface.colours, mesh.single)
    surface, late = tidied(local, name)  # once more: triangles far below the last bit of a double at the origin
    odd = (unit_warning(size, name), distance_warning(origin, mesh.single, name))
    warnings = mesh.warnings + late + tuple(line for line in odd if line)
    return Scan(surface, origin, path.name, digest.hex(), warnings)
