"""Cases by number: a generated or stored file, most of them damaged.

Case k of a series is the same in every run, as long as the stored files are.
"""

from __future__ import annotations

import gzip
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from fuzz.writers import FORMATS, Variant, write

STORED = Path(__file__).parent.parent / "tests" / "data"
_LARGEST_STORED = 20_000
_EXTREMES = [
    b"4294967295", b"4294967296", b"2000000000", b"-1", b"0", b"nan", b"inf", b"-inf", b"1e999", b"1e-999", b"1e38",
    b"99999999999999999999", b"0x10", b"1.5", b"+", b".", b"1e", b"3", b"7", b"256", b"65536", b"-0.0",
]  # fmt: skip
_WORDS = [
    b"solid", b"endsolid", b"facet", b"vertex", b"endfacet", b"endloop", b"outer loop", b"ply", b"end_header",
    b"element", b"face", b"property", b"list", b"uchar", b"int", b"double", b"vertex_indices", b"f", b"v", b"vn",
    b"#", b"\\", b"\n", b"\r\n", b"\r", b"\0", b"format ascii 1.0", b"format binary_big_endian 1.0", b"/", b"//",
    b" ", b"\t",
]  # fmt: skip
_SUFFIX = {"stl-binary": ".stl", "stl-ascii": ".stl", "obj": ".obj"}


@dataclass(frozen=True)
class Case:
    """One file. on_disk: to be read by its path."""

    data: bytes
    name: str
    on_disk: bool


@cache
def _stored() -> list[tuple[bytes, str]]:
    files = sorted(p for folder in ("meshes", "fuzz") for p in (STORED / folder).glob("**/*"))
    return [
        (p.read_bytes(), p.suffix)
        for p in files
        if p.suffix in (".stl", ".ply", ".obj", ".gz") and p.stat().st_size <= _LARGEST_STORED
    ]


def mesh_case(seed: int, number: int) -> Case:
    """Case `number` of the series `seed`."""
    rng = np.random.default_rng([seed, number])
    if _stored() and rng.random() < 0.25:
        data, suffix = _stored()[rng.integers(len(_stored()))]
    else:
        data, suffix = _generated(rng)
    if data[:2] == b"\x1f\x8b" and rng.random() < 0.7:
        data = gzip.compress(_damaged(gzip.decompress(data), rng), mtime=0)
    else:
        data = _damaged(data, rng)
    if rng.random() < 0.05:
        data, suffix = gzip.compress(data, mtime=0), suffix + ".gz"
    if rng.random() < 0.1:
        suffix = [".stl", ".ply", ".obj", ".bin", ""][rng.integers(5)]
    return Case(data, f"case{suffix}", bool(rng.random() < 0.2))


def _generated(rng: np.random.Generator) -> tuple[bytes, str]:
    count = int(rng.integers(3, 12))
    points = rng.choice([1.0, 30.0, 4000.0]) * rng.standard_normal((count, 3))
    polygons = [
        [int(v) for v in rng.integers(0, count, size=3 if rng.random() < 0.7 else rng.integers(1, 7))]
        for _ in range(rng.integers(1, 12))
    ]
    colours = rng.integers(0, 256, (count, 3)).astype(np.uint8) if rng.random() < 0.4 else None
    kind = FORMATS[rng.integers(len(FORMATS))]

    def pick(names: str) -> str:
        return str(rng.choice(names.split()))

    variant = Variant(
        kind, pick("float double float32 float64"), pick("uchar float"), pick("uchar char ushort short uint int"),
        pick("int uint short ushort uchar char"), bool(rng.random() < 0.4), bool(rng.random() < 0.3),
        ["\n", "\r\n", "\r"][rng.integers(3)] if rng.random() < 0.2 else "\n",
    )  # fmt: skip
    return write(points, polygons, variant, colours), _SUFFIX.get(kind, ".ply")


def _damaged(data: bytes, rng: np.random.Generator) -> bytes:
    """Zero to three faults, zero in one case of ten."""
    for _ in range(0 if rng.random() < 0.1 else int(rng.integers(1, 4))):
        fault = _FAULTS[rng.integers(len(_FAULTS))]
        data = fault(data, rng)
    return data


def _place(data: bytes, rng: np.random.Generator) -> int:
    """Often near the head, where counts and names stand."""
    return int(rng.integers(0, max(1, min(len(data), 400) if rng.random() < 0.5 else len(data))))


def _flip(data: bytes, rng: np.random.Generator) -> bytes:
    out = bytearray(data)
    for _ in range(rng.integers(1, 4)):
        if out:
            out[_place(data, rng)] ^= 1 << int(rng.integers(8))
    return bytes(out)


def _set(data: bytes, rng: np.random.Generator) -> bytes:
    at, size = _place(data, rng), int(rng.integers(1, 5))
    return data[:at] + bytes([int(rng.choice([0, 0xFF, 0x7F, 0x80]))]) * size + data[at + size :]


def _cut(data: bytes, rng: np.random.Generator) -> bytes:
    return data[: int(rng.integers(0, len(data) + 1))]


def _grow(data: bytes, rng: np.random.Generator) -> bytes:
    return data + rng.bytes(int(rng.integers(1, 120)))


def _remove(data: bytes, rng: np.random.Generator) -> bytes:
    at = _place(data, rng)
    return data[:at] + data[at + int(rng.integers(1, 60)) :]


def _repeat(data: bytes, rng: np.random.Generator) -> bytes:
    at, size = _place(data, rng), int(rng.integers(1, 80))
    return data[:at] + data[at : at + size] * int(rng.integers(2, 5)) + data[at + size :]


def _number(data: bytes, rng: np.random.Generator) -> bytes:
    found = list(re.finditer(rb"[-+0-9.eE]+", data[:4000]))
    if not found:
        return _set(data, rng)
    spot = found[rng.integers(len(found))]
    return data[: spot.start()] + _EXTREMES[rng.integers(len(_EXTREMES))] + data[spot.end() :]


def _word(data: bytes, rng: np.random.Generator) -> bytes:
    at = _place(data, rng)
    return data[:at] + _WORDS[rng.integers(len(_WORDS))] + data[at + int(rng.integers(0, 8)) :]


def _lines(data: bytes, rng: np.random.Generator) -> bytes:
    rows = data.split(b"\n")
    a, b = rng.integers(len(rows), size=2)
    rows[a], rows[b] = rows[b], rows[a]
    if rng.random() < 0.3:
        del rows[int(rng.integers(len(rows)))]
    return b"\n".join(rows)


def _long(data: bytes, rng: np.random.Generator) -> bytes:
    at = _place(data, rng)
    return (
        data[:at] + [b"9", b"a", b" ", b"\n", b"\0", b"-"][rng.integers(6)] * int(rng.integers(100, 20000)) + data[at:]
    )


def _splice(data: bytes, rng: np.random.Generator) -> bytes:
    other, _ = _generated(rng)
    return data[: _place(data, rng)] + other[_place(other, rng) :]


_FAULTS = (
    _flip,
    _flip,
    _set,
    _cut,
    _cut,
    _grow,
    _remove,
    _repeat,
    _number,
    _number,
    _number,
    _word,
    _lines,
    _long,
    _splice,
)
