"""What a reader of one format hands on: the file's own points and triangles, before any repair."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from stylobate.core.types import ByteArray, FloatArray, IntArray, LongArray


@dataclass(frozen=True)
class Raw:
    """Merged points and triangles as a file states them.

    vertices (n, 3) float64, mm; faces (m, 3) int32, all within the vertices; colours (n, 3) uint8 or None.
    single: coordinates stood in the file as 32-bit floats. bent: faces with fewer than three corners, left out.
    """

    vertices: FloatArray
    faces: IntArray
    colours: ByteArray | None = None
    single: bool = False
    bent: int = 0
    warnings: tuple[str, ...] = ()


def fans(counts: npt.NDArray[Any], items: npt.NDArray[Any]) -> npt.NDArray[Any]:
    """Triangles of polygons: corner 0 with each following edge.

    counts: (m,) corners of each polygon; items: (Σ counts,) their vertices. Returns (t, 3) of the items' type;
    polygons of fewer than three corners give none.
    """
    if len(counts) and np.all(counts == 3):
        return items.reshape(-1, 3)
    sizes: LongArray = np.maximum(counts.astype(np.int64) - 2, 0)
    starts = np.cumsum(counts, dtype=np.int64) - counts
    polygon_start = np.repeat(starts, sizes)
    step = np.arange(len(polygon_start)) - np.repeat(np.cumsum(sizes) - sizes, sizes)
    return np.stack([items[polygon_start], items[polygon_start + step + 1], items[polygon_start + step + 2]], axis=1)


def colour_bytes(channels: Sequence[npt.NDArray[Any]], whole: bool) -> ByteArray:
    """Red, green and blue, (n,) each, as (n, 3) uint8.

    whole: integers, 0 to 255 or, where any is larger, 0 to 65535. Otherwise reals, 0 to 1 or, where any is larger,
    0 to 255. What lies outside is clipped; NaN counts as 0.
    """
    if all(channel.dtype == np.uint8 for channel in channels):
        return np.stack(channels, axis=1)
    with np.errstate(invalid="ignore"):
        values = np.nan_to_num(np.stack([channel.astype(np.float64) for channel in channels], axis=1))
    largest = float(values.max(initial=0.0))
    if largest <= 1 and not whole:
        values *= 255.0
    elif largest > 255 and whole:
        values *= 255.0 / 65535.0
    return np.clip(np.rint(values), 0, 255).astype(np.uint8)
