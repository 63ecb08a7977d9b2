"""Numbers and words in ASCII mesh files, read from a uint8 buffer by compiled code.

A decimal becomes the nearest double in all but rare ties, never off by more than one unit in the last place: up to
18 digits are held exactly in an integer and multiplied by a power of ten held as the sum of two doubles (products by
Dekker, Numer. Math. 18, 1971, 224–242). Values below 1e-62 may read as zero, above 1e60 as infinity.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, FloatArray

LEAST_POWER, GREATEST_POWER = -80, 60
MAX_DIGITS = 18
_SPLITTER = 134217729.0  # 2**27 + 1
_FNV_START, _FNV_PRIME = 14695981039346656037, 1099511628211
_START, _PRIME = np.uint64(_FNV_START), np.uint64(_FNV_PRIME)

_EXACT = [Fraction(10) ** power for power in range(LEAST_POWER, GREATEST_POWER + 1)]
_HIGH: FloatArray = np.array([float(exact) for exact in _EXACT])
_LOW: FloatArray = np.array([float(exact - Fraction(float(exact))) for exact in _EXACT])


def word_code(word: str) -> np.uint64:
    """Code of a lower-case word as `read_word` returns it (64-bit FNV-1a)."""
    code = _FNV_START
    for byte in word.encode():
        code = ((code ^ byte) * _FNV_PRIME) % 2**64
    return np.uint64(code)


@compiled
def is_space(c: int) -> bool:
    """White space of ASCII, line ends included; other control characters are none."""
    return c == 32 or 9 <= c <= 13


@compiled
def is_blank(c: int) -> bool:
    """White space that stays in the line."""
    return c == 32 or c == 9 or c == 11 or c == 12


@compiled
def _scaled(digits: int, power: int) -> float:
    """digits · 10**power for 0 ≤ digits < 10**18."""
    if digits == 0 or power < LEAST_POWER:
        return 0.0
    if power > GREATEST_POWER:
        return np.inf
    if digits < 9007199254740992:
        if 0 <= power <= 22:
            return float(digits) * float(_HIGH[power - LEAST_POWER])
        if -22 <= power < 0:
            return float(digits) / float(_HIGH[-power - LEAST_POWER])
    a = float(digits)
    a_rest = float(digits - int(a))
    b, b_rest = float(_HIGH[power - LEAST_POWER]), float(_LOW[power - LEAST_POWER])
    product = a * b
    carry = _SPLITTER * a
    a_high = carry - (carry - a)
    a_low = a - a_high
    carry = _SPLITTER * b
    b_high = carry - (carry - b)
    b_low = b - b_high
    error = ((a_high * b_high - product) + a_high * b_low + a_low * b_high) + a_low * b_low
    return product + (error + (a * b_rest + a_rest * b))


@compiled
def read_number(text: ByteArray, at: int) -> tuple[float, int]:
    """The decimal that starts at `at` and the position after it; position −1 where there is no finite decimal.

    It must end at white space or at the end of the text. Fortran's exponent letter d is understood.
    """
    end = len(text)
    negative = False
    if at < end and (text[at] == 45 or text[at] == 43):
        negative = text[at] == 45
        at += 1
    digits, held, power, seen, fraction = 0, 0, 0, False, False
    while at < end:
        c = text[at]
        if 48 <= c <= 57:
            seen = True
            if held < MAX_DIGITS:
                digits = digits * 10 + (int(np.int64(c)) - 48)
                if digits != 0:
                    held += 1
                if fraction:
                    power -= 1
            elif not fraction:
                power += 1
        elif c == 46 and not fraction:
            fraction = True
        else:
            break
        at += 1
    if not seen:
        return 0.0, -1
    if at < end and (text[at] | 32 == 101 or text[at] | 32 == 100):
        at += 1
        sign = 1
        if at < end and (text[at] == 45 or text[at] == 43):
            sign = -1 if text[at] == 45 else 1
            at += 1
        exponent, any_digit = 0, False
        while at < end and 48 <= text[at] <= 57:
            any_digit = True
            exponent = min(exponent * 10 + (int(np.int64(text[at])) - 48), 1 << 40)
            at += 1
        if not any_digit:
            return 0.0, -1
        power += sign * exponent
    if at < end and not is_space(text[at]):
        return 0.0, -1
    value = _scaled(digits, power)
    if value == np.inf:
        return value, -1
    return (-value if negative else value), at


@compiled
def read_integer(text: ByteArray, at: int) -> tuple[int, int]:
    """The whole number that starts at `at` (held within ±2**40) and the position after it; −1 where there is none."""
    end = len(text)
    negative = False
    if at < end and (text[at] == 45 or text[at] == 43):
        negative = text[at] == 45
        at += 1
    start, value = at, 0
    while at < end and 48 <= text[at] <= 57:
        value = min(value * 10 + (int(np.int64(text[at])) - 48), 1 << 40)
        at += 1
    if at == start:
        return 0, -1
    return (-value if negative else value), at


@compiled
def read_word(text: ByteArray, at: int) -> tuple[np.uint64, int]:
    """Code of the word at `at`, letters taken as lower case, and the position after it."""
    code = _START
    while at < len(text) and not is_space(text[at]):
        c = text[at]
        if 65 <= c <= 90:
            c += np.uint8(32)
        code = (code ^ np.uint64(c)) * _PRIME
        at += 1
    return code, at


@compiled
def after_line(text: ByteArray, at: int) -> int:
    """Position of the end of the line (line feed, carriage return or end of text) at or after `at`."""
    while at < len(text) and text[at] != 10 and text[at] != 13:
        at += 1
    return at


@compiled
def after_space(text: ByteArray, at: int) -> int:
    """Position of the first byte at or after `at` that is no white space."""
    while at < len(text) and is_space(text[at]):
        at += 1
    return at


@compiled
def after_blank(text: ByteArray, at: int) -> int:
    """The same, but staying in the line."""
    while at < len(text) and is_blank(text[at]):
        at += 1
    return at


def line_of(text: ByteArray, at: int) -> int:
    """Number of the line (from 1) that holds position `at`."""
    before = text[: max(at, 0)]
    feeds = int(np.count_nonzero(before == 10))
    return 1 + (feeds if feeds or np.any(text[:65536] == 10) else int(np.count_nonzero(before == 13)))


def excerpt(text: ByteArray, at: int) -> str:
    """The word at `at` as it can stand in a message: at most 24 characters, no control characters."""
    raw = bytes(text[at : at + 200]).split(maxsplit=1)
    word = raw[0].decode("ascii", "replace") if raw and text[at] > 32 else ""
    clean = "".join(c if c.isprintable() else "?" for c in word)
    return clean if len(clean) <= 24 else clean[:23] + "…"
