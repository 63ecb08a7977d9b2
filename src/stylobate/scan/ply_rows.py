"""Compiled walks over the rows of a PLY body, for tables whose rows differ in length and for ASCII."""

from __future__ import annotations

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, FloatArray, IntArray, LongArray
from stylobate.scan.numerals import after_space, is_space, read_integer, read_number

DONE, CUT, NEGATIVE, NUMBER, COUNT = 0, 1, 2, 3, 4


@compiled
def _integer_at(data: ByteArray, at: int, size: int, signed: bool, big: bool) -> int:
    """The whole number of `size` ≤ 4 bytes at byte `at`."""
    value: int = 0
    for k in range(size):
        value = (value << 8) | int(np.int64(data[at + k if big else at + size - 1 - k]))
    if signed and value >= 1 << (8 * size - 1):
        value -= 1 << (8 * size)
    return value


@compiled
def walk(
    data: ByteArray, at: int, sizes: LongArray, counts: LongArray, big: bool, starts: LongArray, lengths: LongArray
) -> tuple[int, int, int]:
    """Find where each property of each row starts in a binary body.

    sizes (p,): bytes of a value. counts (p,): 0 for a scalar, else bytes of the list's count, negative if signed.
    Fills starts (rows, p) with byte positions of the values and lengths (rows, p) with how many there are.
    Returns a status, the row it is about and the position after the last row.
    """
    rows, width = starts.shape
    for row in range(rows):
        for k in range(width):
            length = 1
            if counts[k] != 0:
                step = abs(counts[k])
                if at + step > len(data):
                    return CUT, row, at
                length = _integer_at(data, at, step, counts[k] < 0, big)
                at += step
                if length < 0:
                    return NEGATIVE, row, at
            if length > (len(data) - at) // sizes[k]:
                return CUT, row, at
            starts[row, k] = at
            lengths[row, k] = length
            at += length * sizes[k]
    return DONE, rows, at


@compiled
def gather(
    data: ByteArray, starts: LongArray, lengths: LongArray, size: int, signed: bool, big: bool, out: LongArray
) -> None:
    """Copy lists of whole numbers, lengths[i] of them from byte starts[i], one after another into `out`."""
    filled = 0
    for row in range(len(starts)):
        for k in range(lengths[row]):
            out[filled] = _integer_at(data, starts[row] + k * size, size, signed, big)
            filled += 1


@compiled
def parse(
    text: ByteArray, at: int, slots: LongArray, columns: FloatArray, counts: IntArray, items: IntArray
) -> tuple[int, int, int, int]:
    """Read the rows of one element from ASCII; line ends count as blanks.

    slots (p,): where a property goes: k ≥ 0: column k of `columns` (rows, c); −1: a scalar to skip; −2: a list to skip;
    −3: the list to keep: its length in `counts` (rows,), its whole numbers in `items`, held within int32.
    Returns a status, the row and the position that it is about, and how many items were kept.
    """
    rows, kept = len(counts), 0
    for row in range(rows):
        for k in range(len(slots)):
            slot = slots[k]
            at = after_space(text, at)
            if at >= len(text):
                return CUT, row, at, kept
            mark = at
            if slot >= 0:
                columns[row, slot], at = read_number(text, at)
                if at < 0:
                    return NUMBER, row, mark, kept
                continue
            length = 1
            if slot != -1:
                length, at = read_integer(text, at)
                if at < 0 or length < 0 or (at < len(text) and not is_space(text[at])):
                    return COUNT, row, mark, kept
                if length > (len(text) - at) // 2 + 1:
                    return CUT, row, mark, kept
            if slot == -3:
                counts[row] = length
            for _ in range(length):
                at = after_space(text, at)
                if at >= len(text):
                    return CUT, row, at, kept
                if slot == -3:
                    mark = at
                    value, at = read_integer(text, at)
                    if at < 0 or (at < len(text) and not is_space(text[at])):
                        return NUMBER, row, mark, kept
                    items[kept] = max(min(value, 2147483647), -2147483648)
                    kept += 1
                else:
                    while at < len(text) and not is_space(text[at]):
                        at += 1
    return DONE, rows, at, kept
