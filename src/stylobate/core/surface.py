"""Triangle surfaces as they pass between stages."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import ByteArray, FloatArray, IntArray


@dataclass(frozen=True)
class Surface:
    """A triangle surface.

    vertices: (n, 3) float64, mm. faces: (m, 3) int32, counter-clockwise seen from outside.
    colours: (n, 3) uint8 red, green, blue, or None.
    """

    vertices: FloatArray
    faces: IntArray
    colours: ByteArray | None = None

    def moved(self, target_from_source: FloatArray) -> Surface:
        """The same surface in another frame; `target_from_source` is a 4×4 pose."""
        rotation, shift = target_from_source[:3, :3], target_from_source[:3, 3]
        return Surface(self.vertices @ rotation.T + shift, self.faces, self.colours)

    def corner_products(self) -> FloatArray:
        """Twice the area-weighted outward normal of each face, (m, 3), mm²."""
        a, b, c = (self.vertices[self.faces[:, k]] for k in range(3))
        return np.cross(b - a, c - a)

    def face_areas(self) -> FloatArray:
        """Area of each face, (m,), mm²."""
        return np.asarray(np.linalg.norm(self.corner_products(), axis=1) / 2.0)


@dataclass(frozen=True)
class Scan:
    """A scan in a local frame: scan coordinates = surface.vertices + origin.

    origin: (3,) mm, near the middle of the scan, so that coordinates of thousands of mm lose nothing.
    """

    surface: Surface
    origin: FloatArray
    file: str
    sha256: str
    warnings: tuple[str, ...] = ()

    def whole(self) -> Surface:
        """The surface in scan coordinates."""
        return Surface(self.surface.vertices + self.origin, self.surface.faces, self.surface.colours)
