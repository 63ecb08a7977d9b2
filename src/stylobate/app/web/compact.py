"""A surface made small for its way to the browser: fewer triangles, positions as 16-bit steps, indices as differences.

The form is that of `scene`, gzipped, with these changes: positions are steps of `step` mm from `origin`; an index is
the difference to the one before it; deviations are steps of 0.1 µm, UNKNOWN where nothing is known. `triangles` and
`of` in the header say how many there are, and how many the scan has. Only the picture is made of it.
"""

from __future__ import annotations

import gzip
import json
import struct
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from stylobate.app.web.scene import NAMES, Proxy, packed, proxy
from stylobate.core.types import IntArray

ENDING = "-compact"
ALL = 200_000
"""Triangles up to which a surface keeps them all."""
CELL = 0.2
"""mm: cell in which vertices become one, in a larger surface; it is below what the screen shows of a whole arch."""
STEPS = 65_535
DEVIATION_STEP_UM = 0.1
UNKNOWN = -32_768
LEVEL = 6
"""Of gzip: higher ones save a few per cent for several times the time."""

Arrays = dict[str, npt.NDArray[Any]]


def unpacked(content: bytes) -> tuple[dict[str, Any], Arrays]:
    """Header and arrays of a file in the form of `scene`; arrays of width w are (n, w)."""
    (length,) = struct.unpack_from("<I", content)
    header = json.loads(content[4 : 4 + length])
    arrays: Arrays = {}
    for name, entry in header["arrays"].items():
        kind = np.dtype(NAMES[entry["type"]])
        flat = np.frombuffer(content, kind, entry["count"] * entry["width"], 4 + length + entry["offset"])
        arrays[name] = flat.reshape(-1, entry["width"]) if entry["width"] > 1 else flat
    return header, arrays


def compact_geometry(content: bytes) -> tuple[bytes, Proxy]:
    """A packed geometry made small, and which of its vertices each of the surface's own became."""
    header, arrays = unpacked(content)
    vertices, faces = arrays["position"].astype(np.float64), arrays["index"].astype(np.int32)
    few = len(faces) <= ALL
    small = Proxy(vertices, faces, np.arange(len(vertices))) if few else proxy(vertices, faces, CELL)
    low = small.vertices.min(axis=0)
    step = float((small.vertices - low).max()) / STEPS or 1.0
    place = np.rint((small.vertices - low) / step).astype("<u2")
    normal = np.zeros((len(small.vertices), 4), np.int8)
    normal[small.index] = arrays["normal"]
    about = {
        "origin": (np.array(header["origin"]) + low).tolist(), "step": step, "triangles": len(small.faces),
        "of": len(faces),
    }  # fmt: skip
    made = packed(about, {"position": place, "normal": normal, "index": _differences(small.faces)})
    return gzip.compress(made, LEVEL, mtime=0), small


def _differences(faces: IntArray) -> npt.NDArray[np.int32]:
    """The corners one after another as differences, the triangles sorted by their least corner."""
    first = faces.argmin(axis=1)
    turned = faces[np.arange(len(faces))[:, None], (first[:, None] + np.arange(3)) % 3]
    flat = turned[np.lexsort((turned[:, 1], turned[:, 0]))].ravel().astype("<i4")
    differences: npt.NDArray[np.int32] = np.diff(flat, prepend=np.int32(0)).astype("<i4")
    return differences


def compact_paint(content: bytes, small: Proxy) -> bytes:
    """Packed deviations for the small surface: mean of what is known, and the site."""
    header, arrays = unpacked(content)
    deviation, cells = arrays["deviation"], len(small.vertices)
    known = np.isfinite(deviation)
    number = np.bincount(small.index[known], minlength=cells)
    total = np.bincount(small.index[known], deviation[known], minlength=cells)
    mean = np.clip(np.rint(total / np.maximum(number, 1) / DEVIATION_STEP_UM), UNKNOWN + 1, -UNKNOWN - 1)
    site = np.zeros(cells, np.uint8)
    np.maximum.at(site, small.index, arrays["site"])
    steps = np.where(number > 0, mean, UNKNOWN).astype("<i2")
    return gzip.compress(packed({"origin": header["origin"]}, {"deviation": steps, "site": site}), LEVEL, mtime=0)


class Compactor:
    """Makes the small form of the surfaces in a cache folder when they are asked for."""

    def __init__(self, cache: Path) -> None:
        self._cache = cache
        self._small: dict[str, Proxy] = {}

    def made(self, key: str) -> bytes | None:
        """The gzipped small form of a geometry or a paint, by its key with ENDING; None where there is none."""
        path, source = self._cache / key, self._cache / key.removesuffix(ENDING)
        if not key.startswith(("scan-", "sites-", "paint-")) or "-coarse" in key or not source.is_file():
            return None
        geometry = key.removesuffix(ENDING)
        if geometry.startswith("paint-"):
            geometry = geometry.split("-", 2)[2]
        if geometry not in self._small:
            content, small = compact_geometry((self._cache / geometry).read_bytes())
            (self._cache / f"{geometry}{ENDING}").write_bytes(content)
            self._small = {geometry: small}
        if not path.is_file():
            path.write_bytes(compact_paint(source.read_bytes(), self._small[geometry]))
        return path.read_bytes()
