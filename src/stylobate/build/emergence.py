"""The emergence over a seat: the wall of the gingiva from the seat up to its margin, as measured or as given."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.build.around import HIGHEST
from stylobate.build.collisions import around_of
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray

DIRECTIONS = 180
"""Around the axis: the outline of a round seat of 5 mm then keeps to 0.4 µm of a circle."""
STEP = 0.05
"""mm along the axis between the points of the wall."""
REACH = 9.0
"""mm from the axis within which the margin is looked for (invented: a molar's emergence is 5 to 6 mm wide)."""
LEVEL = np.tan(np.radians(20.0))
"""Rise over run below which the tissue's surface is no wall any more: 20° to the platform (invented)."""
DROP = 0.15
"""mm by which the tissue must fall behind a line of that slope beyond the margin, above a scan's noise (invented)."""
BRIDGED = 1.0
"""mm along the axis over which a hole in the wall is bridged (invented)."""
MISSING = 0.25
"""Share of the directions that may show no margin, a tooth beside it for one; they are bridged (invented)."""
STEEPEST = np.tan(np.radians(60.0))
"""Run over rise of the wall next to the seat, at most: only the seat lies in the seat's plane (invented)."""


@dataclass(frozen=True)
class Emergence:
    """heights, radii: (levels, DIRECTIONS) mm over the seat and from its axis, from the lowest to the margin.

    Directions are even about the axis, from +x; heights rise in each.
    """

    heights: FloatArray
    radii: FloatArray


def azimuths() -> FloatArray:
    """(DIRECTIONS,) rad."""
    return np.arange(DIRECTIONS) * 2.0 * np.pi / DIRECTIONS


def measured(tissue: Surface, scan_from_seat: FloatArray, rim: float, site: str) -> Emergence:
    """The emergence in a tissue scan, in scan coordinates, over a seat of radius `rim` mm (method/structure, eq. 2).

    Raises FitError where too few directions show a margin, or the opening is narrower than the seat.
    """
    near = around_of(tissue, scan_from_seat[None, :3, 3], HIGHEST + REACH)
    local = near.moved(inverse(scan_from_seat))
    grid = np.arange(0.0, HIGHEST, STEP)
    walls = np.array([_wall(local, angle, grid) for angle in azimuths()])
    tops = [_margin(wall, grid) for wall in walls]
    seen = np.array([top is not None for top in tops])
    if np.mean(~seen) > MISSING:
        raise FitError(
            f"--tissue: the gingiva's margin around site {site} shows above the seat in {int(seen.sum())} of "
            f"{DIRECTIONS} directions only; scan it with the healing cap just out, or give the --emergence"
        )
    margin = np.array([grid[top or 0] for top in tops])
    outer = np.array([wall[top or 0] for wall, top in zip(walls, tops, strict=True)])
    margin, outer = _bridged(margin, seen), _bridged(outer, seen)
    narrow = int(np.argmin(outer))
    if outer[narrow] < rim:
        raise FitError(
            f"site {site}: the part below is wider ({rim:.2f} mm from its axis) than the gingiva's opening "
            f"({outer[narrow]:.2f} mm); take a narrower one"
        )
    levels = np.linspace(0.0, 1.0, max(2, int(np.ceil(margin.max() / (2.0 * STEP)))) + 1)[1:]
    heights = levels[:, None] * margin
    radii = np.column_stack(
        [_filled(wall, grid, rim, margin[k], outer[k], heights[:, k]) for k, wall in enumerate(walls)]
    )
    return Emergence(heights, np.clip(radii, rim, rim + heights * STEEPEST))


def given(text: str, seat: float, rim: float) -> Emergence:
    """A round emergence from "HEIGHT:DIAMETER,…", mm, heights over the platform; the seat lies `seat` mm above that.

    Raises UsageError.
    """
    pairs = [word.split(":") for word in text.split(",")]
    try:
        numbers = np.array([[float(height), float(diameter)] for height, diameter in pairs])
    except ValueError:
        numbers = np.full((1, 2), np.nan)
    if not np.isfinite(numbers).all() or np.any(np.abs(numbers) > 30.0):
        raise UsageError(f"--emergence {text}: write HEIGHT:DIAMETER in mm, like --emergence 2:5,3.5:7.")
    heights, radii = numbers[:, 0] - seat, numbers[:, 1] / 2.0
    if np.any(np.diff(heights, prepend=0.0) < STEP):
        raise UsageError(
            f"--emergence {text}: heights must rise by {STEP} mm or more, from the seat at {seat:g} mm up."
        )
    if np.any(radii < rim):
        raise UsageError(f"--emergence {text}: the part below is {2 * rim:.2f} mm wide; write diameters above that.")
    steep = np.diff(radii, prepend=rim) > STEEPEST * np.diff(heights, prepend=0.0)
    if steep[0]:
        raise UsageError(
            f"--emergence {text}: flares by more than 60° next to the seat; begin with a smaller diameter."
        )
    around = np.ones((1, DIRECTIONS))
    return Emergence(heights[:, None] * around, radii[:, None] * around)


def _wall(local: Surface, angle: float, grid: FloatArray) -> FloatArray:
    """Distance (n,) from the axis to the surface in one direction at each height of `grid`; NaN where none is."""
    out, across = np.array([np.cos(angle), np.sin(angle), 0.0]), np.array([-np.sin(angle), np.cos(angle), 0.0])
    side = local.vertices @ across
    sides = side[local.faces]
    cut = (sides.min(axis=1) < 0.0) & (sides.max(axis=1) >= 0.0)
    corners, sides = local.vertices[local.faces[cut]], sides[cut]
    # Of the three edges of a face that the plane cuts, two cross it.
    after, other = np.roll(corners, -1, axis=1), np.roll(sides, -1, axis=1)
    crosses = (sides < 0.0) != (other < 0.0)
    share = np.divide(sides, sides - other, out=np.zeros_like(sides), where=crosses)
    points = (corners + share[:, :, None] * (after - corners))[crosses].reshape(-1, 2, 3)
    r, z = points @ out, points[:, :, 2]
    keep = (r.min(axis=1) > 0.0) & (np.ptp(z, axis=1) > 0.0)
    r, z = r[keep], z[keep]
    low, high = z.min(axis=1), z.max(axis=1)
    slope = (r[:, 1] - r[:, 0]) / (z[:, 1] - z[:, 0])
    at = r[:, 0] + (grid[:, None] - z[:, 0]) * slope
    at = np.where((grid[:, None] >= low) & (grid[:, None] <= high), at, np.inf)
    nearest = at.min(axis=1, initial=np.inf)
    return np.where(np.isfinite(nearest), nearest, np.nan)


def _margin(wall: FloatArray, grid: FloatArray) -> int | None:
    """Index of the margin: going up the wall, where height − LEVEL · radius is greatest before it falls by DROP."""
    best: int | None = None
    last = 0
    for k in np.flatnonzero(np.isfinite(wall)):
        if best is not None and (grid[k] - grid[last] > BRIDGED or wall[k] > REACH):
            return best
        if wall[k] > REACH:
            return None
        rise = grid[k] - LEVEL * wall[k]
        if best is None or rise > grid[best] - LEVEL * wall[best]:
            best = int(k)
        elif rise < grid[best] - LEVEL * wall[best] - DROP:
            return best
        last = int(k)
    return best if last + 1 < len(grid) else None


def _bridged(values: FloatArray, seen: BoolArray) -> FloatArray:
    """Values (DIRECTIONS,) with those of unseen directions drawn straight between their neighbours."""
    return np.asarray(np.interp(azimuths(), azimuths()[seen], values[seen], period=2.0 * np.pi))


def _filled(
    wall: FloatArray, grid: FloatArray, rim: float, margin: float, outer: float, heights: FloatArray
) -> FloatArray:
    """Radii (n,) at `heights`, straight across holes and from the seat to the lowest point that shows."""
    shown = np.isfinite(wall) & (grid > 0.0) & (grid < margin) & (wall <= REACH)
    return np.asarray(np.interp(heights, [0.0, *grid[shown], margin], [rim, *wall[shown], outer]))
