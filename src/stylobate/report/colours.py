"""Deviation to colour: one diverging map, blue inside, red outside, readable with any colour vision."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np

from stylobate.core.types import ByteArray, FloatArray

RANGE_UM = 50.0
"""Deviation at the ends of the scale; beyond it the colour stays. About 5 times the noise of a good scan."""

NO_VALUE = (128, 128, 128)
"""Colour of what is not part of the scan body: mid grey, which the map itself does not hold."""


@cache
def table() -> ByteArray:
    """(256, 3) uint8 red green blue of CET-D1A; source and licence stand in the file."""
    return np.loadtxt(Path(__file__).with_name("cet_d1a.txt"), dtype=np.uint8)


def colours(deviation_um: FloatArray) -> ByteArray:
    """Colours of signed deviations in µm, (n,) to (n, 3) uint8: zero in the middle, ±RANGE_UM at the ends, NaN grey."""
    known = np.isfinite(deviation_um)
    scaled = np.where(known, deviation_um, 0.0) * (127.5 / RANGE_UM) + 127.5
    painted = table()[np.clip(np.rint(scaled), 0, 255).astype(np.intp)]
    painted[~known] = NO_VALUE
    return painted
