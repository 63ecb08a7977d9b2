"""Turns about the axis after which a scan region looks the same, and regions that stray from their body."""

from __future__ import annotations

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import turn_z
from stylobate.core.surface import Surface
from stylobate.parts.coincide import Outline, lies_on_itself, scattered
from stylobate.parts.edges import Edges
from stylobate.parts.shape import Remark

MOST_TURNS = 12
STRAY_SAMPLES, STRAY_UM = 2000, 20.0


def check_turns(edges: Edges, index_order: int) -> list[Remark]:
    """Whether a body can be told from itself turned by 360°/n, n = 2 … 12, where that is another index position."""
    outline = Outline.of(edges.surface)
    if outline is None:
        return []
    numbers = [n for n in range(MOST_TURNS, 1, -1) if index_order % n]
    holds = lies_on_itself(outline, [turn_z(2.0 * np.pi / n) for n in numbers])
    same = [n for n, held in zip(numbers, holds, strict=True) if held]
    if not same:
        return []
    step = 360.0 / same[0]
    what = f"the index is ambiguous: the body looks the same after each turn of {step:.4g}°, the connection does not"
    return [Remark(what, "use a body whose shape tells its turns apart", loose=True)]


def check_stray(region: Surface, surface: Surface) -> list[Remark]:
    """Whether a scan region from a file of its own lies on the body's surface."""
    points = np.concatenate([region.vertices, scattered(region, STRAY_SAMPLES)])
    far_um = 1e3 * float(np.abs(SurfaceTree.of(surface).closest(points).distance).max())
    if far_um <= STRAY_UM:
        return []
    what = f"the scan region lies up to {far_um:.0f} µm off the body's surface"
    return [Remark(what, "cut the region from the same CAD surface, in the same frame")]
