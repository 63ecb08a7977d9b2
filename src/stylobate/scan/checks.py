"""From what a file states to a surface that later stages can trust, and warnings where a value looks odd."""

from __future__ import annotations

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray
from stylobate.scan.raw import Raw

MAX_COORDINATE = 1e9
"""mm. What lies further out is a damaged file; up to here a float64 still steps by 0.0001 µm."""
METRES_BELOW, INCHES_BELOW, LARGE_ABOVE, MICROMETRES_ABOVE = 0.5, 5.0, 250.0, 5000.0
"""Largest extent of a scan, in the file's unit, that makes another unit likely. A scan of a mouth spans 15 to 120 mm,
one of a single site at least 5 mm: in metres 0.005 to 0.12, in inches 0.2 to 4.7, in micrometres 5,000 to 120,000."""
FAR_MM = 1000.0
"""Distance of the scan's middle from the origin from which on a warning tells what a 32-bit file loses."""


@compiled
def _tidy(vertices: FloatArray, faces: IntArray, kept: IntArray, used: BoolArray) -> int:
    """Copy the faces that have an area to `kept`, mark the vertices they use; how many were copied."""
    count = 0
    for f in range(len(faces)):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        if a == b or b == c or c == a:
            continue
        ux, uy, uz = (vertices[b, 0] - vertices[a, 0], vertices[b, 1] - vertices[a, 1], vertices[b, 2] - vertices[a, 2])
        wx, wy, wz = (vertices[c, 0] - vertices[a, 0], vertices[c, 1] - vertices[a, 1], vertices[c, 2] - vertices[a, 2])
        x, y, z = uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx
        if x == 0.0 and y == 0.0 and z == 0.0:
            continue
        kept[count, 0], kept[count, 1], kept[count, 2] = a, b, c
        used[a] = used[b] = used[c] = True
        count += 1
    return count


def bounds(vertices: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Least and greatest coordinates, (3,) each; column by column, which is several times as fast as along an axis."""
    columns = [vertices[:, k] for k in range(3)]
    return np.array([c.min() for c in columns]), np.array([c.max() for c in columns])


def middle(vertices: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Middle of the bounding box, rounded to whole millimetres, and the box's size, (3,) each, mm."""
    low, high = bounds(vertices)
    return np.asarray(np.rint(low / 2 + high / 2) + 0.0), np.asarray(high - low)


def tidied(raw: Raw, name: str) -> tuple[Surface, tuple[str, ...]]:
    """The surface of a file without triangles that have no area and points that no triangle uses, and warnings.

    Raises ScanError where coordinates are beyond reason or no triangle is left.
    """
    if float(np.abs(bounds(raw.vertices)).max()) > MAX_COORDINATE:
        raise ScanError(f"{name}: has coordinates beyond {MAX_COORDINATE:.0e} mm; it is damaged, export the scan again")
    warnings = list(raw.warnings)
    faces = np.ascontiguousarray(raw.faces)
    kept = np.empty_like(faces)
    used = np.zeros(len(raw.vertices), dtype=np.bool_)
    count = _tidy(raw.vertices, faces, kept, used)
    flat = len(faces) - count + raw.bent
    if count == 0:
        raise ScanError(f"{name}: none of its {flat} faces has an area; export the scan again")
    if flat:
        warnings.append(f"{name}: {flat} faces without an area were left out; the surface is the same without them")
    vertices, colours, kept = raw.vertices, raw.colours, kept[:count]
    unused = len(vertices) - int(np.count_nonzero(used))
    if unused:
        warnings.append(f"{name}: {unused} points that belong to no face were left out; the surface is the same")
        kept = (np.cumsum(used, dtype=np.int32) - np.int32(1))[kept]
        vertices, colours = vertices[used], None if colours is None else colours[used]
    return Surface(vertices, kept, colours), tuple(warnings)


def unit_warning(size: FloatArray, name: str) -> str | None:
    """A line where the extent of the scan suggests that its unit is not the millimetre."""
    largest = float(size.max())
    if largest < METRES_BELOW:
        unit = "metres"
    elif largest < INCHES_BELOW:
        unit = "inches or centimetres"
    elif largest > MICROMETRES_ABOVE:
        unit = "micrometres"
    elif largest > LARGE_ABOVE:
        return f"{name}: spans {largest:.4g} mm, more than any mouth; check its unit and cut off what is not the scan"
    else:
        return None
    return f"{name}: spans {largest:.4g} of its units, so these look like {unit}; export it in millimetres"


def distance_warning(origin: FloatArray, single: bool, name: str) -> str | None:
    """A line where the scan lies so far from the origin that 32-bit coordinates are coarse."""
    far = float(np.linalg.norm(origin))
    if far < FAR_MM:
        return None
    step_um = float(np.spacing(np.float32(np.abs(origin).max()))) * 1e3
    loss = (
        f"the 32-bit coordinates of this file step by {step_um:.2g} µm there"
        if single
        else f"as a file of 32-bit coordinates it would step by {step_um:.2g} µm there"
    )
    return f"{name}: lies {far:.0f} mm from the origin; {loss}; centre the scan before it is exported"
