"""Planned teeth: the aim they give each site, where a channel comes out of them, and the wall left around it."""

from __future__ import annotations

import numpy as np

from stylobate.build.cone import unit
from stylobate.build.model import Exit
from stylobate.build.rays import crossings, first_crossings
from stylobate.core.errors import UsageError
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.parts.edges import joined

SINGLE = 14.0
"""mm. A piece of surface narrower than this is one tooth (common practice, no source: molars reach 12)."""
REACH = 5.0
"""mm. Of teeth that are joined, what lies within this of the axis belongs to the site (half a molar's width)."""
FARTHEST = 12.0
"""mm. A tooth whose biting surface lies farther than this from the axis is not the site's."""
FACING = 0.5
"""Cosine to the axis from which on a face belongs to the biting surface: within 60°."""
AZIMUTHS = 24
HEIGHT_STEP = 0.25
BELOW_EXIT = 1.0
"""mm. The wall is looked at up to this far below the exit, where the channel opens and has no wall."""


def pieces(teeth: Surface) -> list[Surface]:
    """The connected pieces of a surface."""
    faces = teeth.faces.astype(np.int64)
    ends = np.concatenate([faces[:, :2], faces[:, 1:]])
    label = joined(ends[:, 0], ends[:, 1], len(teeth.vertices))[faces[:, 0]]
    return [Surface(teeth.vertices, teeth.faces[label == one]) for one in np.unique(label)]


def tooth_over(parts: list[Surface], scan_from_connection: FloatArray, site: str) -> tuple[Surface, FloatArray]:
    """The planned tooth over a connection and the middle (3,) of its biting surface, mm. Raises UsageError."""
    best: tuple[float, Surface, FloatArray] | None = None
    for part in parts:
        middle = _middle(part, scan_from_connection)
        if middle is None:
            continue
        beside = np.linalg.norm((middle - scan_from_connection[:3, 3]) @ scan_from_connection[:3, :2])
        if best is None or float(beside) < best[0]:
            best = float(beside), part, middle
    if best is None or best[0] > FARTHEST:
        where = "none lies above it" if best is None else f"the nearest is {best[0]:.0f} mm beside its axis"
        raise UsageError(f"--teeth: no planned tooth for site {site}: {where}; leave the site out, or give its --aim.")
    return best[1], best[2]


def _middle(part: Surface, scan_from_connection: FloatArray) -> FloatArray | None:
    """Area centroid of the faces that look along the axis, above the platform; of joined teeth those near the axis."""
    axis, centre = scan_from_connection[:3, 2], scan_from_connection[:3, 3]
    products = part.corner_products()
    area = np.linalg.norm(products, axis=1) / 2.0
    centres = part.vertices[part.faces].mean(axis=1) - centre
    up = (products @ axis > FACING * 2.0 * area) & (centres @ axis > 0.0)
    across = centres @ scan_from_connection[:3, :2]
    if np.ptp(across, axis=0).max(initial=0.0) > SINGLE:
        up &= _within(across, REACH)
    if area[up].sum() <= 0.0:
        return None
    return np.asarray(np.average(centres[up], axis=0, weights=area[up]) + centre)


def _within(across: FloatArray, radius: float) -> BoolArray:
    return np.asarray(np.sum(across**2, axis=1) < radius**2)


def aim_at(middle: FloatArray, origin: FloatArray) -> FloatArray:
    """(3,) unit: from the platform to the middle of the biting surface."""
    return unit(middle - origin)


def exit_of(
    tooth: Surface, middle: FloatArray, origin: FloatArray, direction: FloatArray, start: float, diameter: float
) -> Exit:
    """Where a channel leaves a planned tooth and the least wall beside it (method/place, eq. 9).

    start: mm along the channel from `origin` where the restoration begins. diameter: of the channel, mm.
    """
    out = crossings(tooth, origin, direction)
    if not len(out):
        return Exit(None, None, None)
    end = float(out[-1])
    point = origin + end * direction
    heights = np.arange(start, end - BELOW_EXIT, HEIGHT_STEP)
    wall = _wall(tooth, origin, direction, heights, diameter) if len(heights) else None
    return Exit(point, float(np.linalg.norm(point - middle)), wall)


def _wall(
    tooth: Surface, origin: FloatArray, direction: FloatArray, heights: FloatArray, diameter: float
) -> float | None:  # fmt: skip
    """Least distance across the channel from its edge to the outside of the tooth."""
    one = unit(np.cross(direction, np.eye(3)[int(np.argmin(np.abs(direction)))]))
    angle = np.arange(AZIMUTHS) * 2.0 * np.pi / AZIMUTHS
    around = np.outer(np.cos(angle), one) + np.outer(np.sin(angle), np.cross(direction, one))
    low: LongArray = np.repeat(np.arange(len(heights)), AZIMUTHS)
    reach = first_crossings(tooth, origin + heights[low, None] * direction, np.tile(around, (len(heights), 1)))
    return float(np.nanmin(reach) - diameter / 2.0) if np.isfinite(reach).any() else None
