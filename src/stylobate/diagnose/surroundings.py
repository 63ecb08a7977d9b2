"""All of the scan around a fitted body: what is the body's, what is foreign, how high the gingiva stands."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.fit.descend import Around, to_connection, usable
from stylobate.uncertainty.pose import Pose

LOOK = 1.5  # mm from the CAD surface
FOREIGN = 0.15  # mm off the surface beyond which a point is not the body's
BESIDE = 0.7  # mm off the surface within which the gingiva's height is read
SECTORS = 24
TALLER = 1.0  # mm above the median by which one sector's gingiva may stand (a papilla); more is something else


@dataclass(frozen=True)
class Surroundings:
    """Points of the scan within LOOK of the CAD surface: index (k,) into Around, points (k, 3) connection frame,
    closest: theirs, own (k,) whether the surface faces as the body's does.

    gum (SECTORS,): height of the gingiva in each sector about the axis, mm; −inf where none is seen anywhere.
    """

    index: LongArray
    points: FloatArray
    closest: Closest
    own: BoolArray
    gum: FloatArray

    @property
    def distance(self) -> FloatArray:
        """(k,) mm."""
        return self.closest.distance

    @property
    def gum_height(self) -> float:
        """Of the gingiva about the body, mm, the median sector; inf where none is seen."""
        seen = self.gum[np.isfinite(self.gum)]
        return float(np.median(seen)) if len(seen) else np.inf

    def above_gum(self, points: FloatArray, margin: float = 0.0) -> BoolArray:
        """Which points (n, 3), connection frame, stand more than `margin` mm above the gingiva."""
        return np.asarray(points[:, 2] > self.gum[sector_of(points)] + margin)


def sector_of(points: FloatArray) -> LongArray:
    """Sector (n,) about the axis."""
    angle = np.arctan2(points[:, 1], points[:, 0])
    return np.asarray(np.floor((angle + np.pi) / (2.0 * np.pi) * SECTORS), dtype=np.int64) % SECTORS


def look(tree: SurfaceTree, around: Around, pose: Pose) -> Surroundings:
    """What lies around a body at its pose."""
    points = to_connection(pose.scan_from_connection, around.points)
    closest = tree.closest(points, LOOK)
    seen = np.asarray(np.nonzero(closest.face >= 0)[0], dtype=np.int64)
    points, closest = points[seen], closest.at(seen)
    own = usable(closest, around.normals[seen] @ pose.scan_from_connection[:3, :3])
    off = ~own | (np.abs(closest.distance - pose.offset) > FOREIGN)
    beside = off & (closest.distance > 0.0) & (closest.distance < BESIDE)
    return Surroundings(seen, points, closest, own, _gum(points[beside]))


def _gum(points: FloatArray) -> FloatArray:
    if len(points) < SECTORS:
        return np.full(SECTORS, -np.inf)
    sector = sector_of(points)
    heights = np.full(SECTORS, np.nan)
    for k in range(SECTORS):
        inside = points[sector == k, 2]
        if len(inside) >= 3:
            heights[k] = np.quantile(inside, 0.9)
    middle = float(np.nanmedian(heights)) if np.any(np.isfinite(heights)) else -np.inf
    return np.asarray(np.minimum(np.where(np.isfinite(heights), heights, middle), middle + TALLER))
