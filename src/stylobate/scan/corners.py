"""Merging of identical corners: a triangle soup becomes a surface whose triangles share vertices."""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

from stylobate.core.errors import ScanError
from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, FloatArray, IntArray

_M1, _M2, _M3 = np.uint64(0x9E3779B97F4A7C15), np.uint64(0xC2B2AE3D27D4EB4F), np.uint64(0x165667B19E3779F9)
_SHIFT = np.uint64(29)
AHEAD = 128  # corners that are looked up together
_ZERO, _ONE = np.uint64(0), np.uint64(1)
_SIGN_32, _SIGN_64 = np.uint64(1 << 31), np.uint64(1 << 63)
_EXPONENT_32, _EXPONENT_64 = np.uint64(0xFF << 23), np.uint64(0x7FF << 52)


@compiled
def _load(data: ByteArray, at: int, wide: bool) -> np.uint64:
    """Bits of the little-endian float32 (float64 where `wide`) at byte `at`; −0 as +0."""
    low = (
        np.uint64(data[at])
        | (np.uint64(data[at + 1]) << np.uint64(8))
        | (np.uint64(data[at + 2]) << np.uint64(16))
        | (np.uint64(data[at + 3]) << np.uint64(24))
    )
    if not wide:
        return _ZERO if low == _SIGN_32 else low
    high = (
        np.uint64(data[at + 4])
        | (np.uint64(data[at + 5]) << np.uint64(8))
        | (np.uint64(data[at + 6]) << np.uint64(16))
        | (np.uint64(data[at + 7]) << np.uint64(24))
    )
    bits = low | (high << np.uint64(32))
    return _ZERO if bits == _SIGN_64 else bits


@compiled
def _slot(x: np.uint64, y: np.uint64, z: np.uint64, shift: np.uint64) -> np.int64:
    mixed = (x * _M1) ^ (y * _M2) ^ (z * _M3)
    mixed = (mixed ^ (mixed >> _SHIFT)) * _M1
    return np.int64(mixed >> shift)


@compiled
def _grown(vertices: Any, used: int, bits: int) -> tuple[IntArray, Any]:
    """A table of 2^bits slots with the first `used` of the vertices, and an array of vertices half as long."""
    size = 1 << bits
    table, larger = np.full(size, -1, np.int32), np.empty((size // 2, 3), np.uint64)
    larger[:used] = vertices[:used]
    for v in range(used):
        slot = _slot(vertices[v, 0], vertices[v, 1], vertices[v, 2], np.uint64(64 - bits))
        while table[slot] >= 0:
            slot = (slot + 1) & (size - 1)
        table[slot] = v
    return table, larger


@compiled
def _merge(data: ByteArray, stride: int, group: int, records: int, wide: bool) -> tuple[Any, IntArray, IntArray, int]:
    """Open-addressing hash merge of `group` points in each of `records` records that lie `stride` bytes apart.

    Returns the bits of each vertex (u, 3) in order of first appearance, the vertex of each corner, the first corner
    of each vertex, and the first corner that is not finite (−1: none; the rest is then void).
    """
    width = 24 if wide else 12
    exponent = _EXPONENT_64 if wide else _EXPONENT_32
    corners = records * group
    bits = 10
    while (1 << bits) < (2 * corners if group == 1 else corners // 2):
        bits += 1
    table, vertices = _grown(np.empty((0, 3), np.uint64), 0, bits)
    first, index = np.empty(corners, np.int32), np.empty(corners, np.int32)
    points, slots, seen = np.empty((AHEAD, 3), np.uint64), np.empty(AHEAD, np.int64), np.empty(AHEAD, np.int32)
    used = 0
    for start in range(0, corners, AHEAD):
        if used + AHEAD > len(vertices):
            bits += 1
            table, vertices = _grown(vertices, used, bits)
        count = min(AHEAD, corners - start)
        for k in range(count):
            at = (start + k) // group * stride + (start + k) % group * width
            x = _load(data, at, wide)
            y = _load(data, at + width // 3, wide)
            z = _load(data, at + 2 * (width // 3), wide)
            if x & exponent == exponent or y & exponent == exponent or z & exponent == exponent:
                return vertices[:0], index, first[:0], start + k
            points[k, 0], points[k, 1], points[k, 2] = x, y, z
            slots[k] = _slot(x, y, z, np.uint64(64 - bits))
        for k in range(count):  # only to have memory answer all of these at a time: half the time of the whole
            seen[k] = table[slots[k]]
        for k in range(count):
            x, y, z, slot = points[k, 0], points[k, 1], points[k, 2], slots[k]
            vertex = table[slot]
            while vertex >= 0:
                if vertices[vertex, 0] == x and vertices[vertex, 1] == y and vertices[vertex, 2] == z:
                    break
                slot = (slot + 1) & (len(table) - 1)
                vertex = table[slot]
            if vertex < 0:
                vertex = np.int32(used)
                table[slot] = vertex
                vertices[used, 0], vertices[used, 1], vertices[used, 2] = x, y, z
                first[used] = start + k
                used += 1
            index[start + k] = vertex
    return vertices[:used], index, first[:used], -1


def merge_records(
    data: ByteArray, stride: int, group: int, records: int, wide: bool
) -> tuple[FloatArray, IntArray, IntArray]:
    """Merge corners that stand in a byte buffer as little-endian floats.

    data: (≥ (records − 1)·stride + group·width,) uint8; width 12 for float32 triples, 24 for float64 (`wide`).
    Returns vertices (u, 3) float64, vertex of each corner (records·group,), first corner of each vertex (u,).
    Raises ScanError (without a file name) where a coordinate is not finite.
    """
    bits, index, first, bad = _merge(data, stride, group, records, wide)
    if bad >= 0:
        what = f"corner {bad % group + 1} of triangle {bad // group + 1}" if group > 1 else f"vertex {bad + 1}"
        raise ScanError(f"{what} has a coordinate that is not a finite number")
    if wide:
        return bits.view(np.float64), index, first
    return bits.astype(np.uint32).view(np.float32).astype(np.float64), index, first


def merge_corners(
    corners: npt.NDArray[np.float32] | npt.NDArray[np.float64],
) -> tuple[FloatArray, IntArray, IntArray]:
    """Merge points whose coordinates are equal bit for bit (−0 counts as +0).

    corners: (n, 3) float32 or float64. Returns vertices (u, 3) float64 in order of first appearance, the vertex of
    each corner (n,) int32, and the first corner of each vertex (u,) int32. Raises ScanError for NaN and infinity.
    """
    wide = corners.dtype.itemsize == 8
    packed = np.ascontiguousarray(corners, dtype="<f8" if wide else "<f4")
    data = packed.reshape(-1).view(np.uint8)
    data.flags.writeable = False  # one compiled version for buffers of files and of arrays
    return merge_records(data, 24 if wide else 12, 1, len(packed), wide)
