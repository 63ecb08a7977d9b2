"""Stills of triangle surfaces: parallel projection, depth buffer, one light. No window, no graphics card."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import ByteArray, Float32Array, FloatArray, IntArray

_LIGHT = np.array([-0.35, 0.45, 0.82])
"""Direction to the light in view coordinates (right, up, towards the viewer): over the left shoulder."""

_SAMPLES = 2
"""Samples a pixel edge, averaged."""


@compiled
def _vertex_normals(points: FloatArray, faces: IntArray) -> FloatArray:
    normals = np.zeros_like(points)
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        ux, uy, uz = points[b, 0] - points[a, 0], points[b, 1] - points[a, 1], points[b, 2] - points[a, 2]
        vx, vy, vz = points[c, 0] - points[a, 0], points[c, 1] - points[a, 1], points[c, 2] - points[a, 2]
        nx, ny, nz = uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx
        for corner in (a, b, c):
            normals[corner, 0] += nx
            normals[corner, 1] += ny
            normals[corner, 2] += nz
    return normals


@compiled
def _rasterise(
    points: FloatArray, faces: IntArray, colours: Float32Array, image: Float32Array, depth: Float32Array
) -> None:
    """Fill `image` (h, w, 3) and `depth` (h, w) from points in pixels: column, row, nearness."""
    height, width = depth.shape
    for f in range(faces.shape[0]):
        a, b, c = faces[f, 0], faces[f, 1], faces[f, 2]
        ax, ay, bx, by, cx, cy = points[a, 0], points[a, 1], points[b, 0], points[b, 1], points[c, 0], points[c, 1]
        area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
        if area == 0.0:
            continue
        first_column = max(0, math.ceil(min(ax, bx, cx)))
        last_column = min(width - 1, math.floor(max(ax, bx, cx)))
        first_row = max(0, math.ceil(min(ay, by, cy)))
        last_row = min(height - 1, math.floor(max(ay, by, cy)))
        for row in range(first_row, last_row + 1):
            for column in range(first_column, last_column + 1):
                wb = ((column - ax) * (cy - ay) - (row - ay) * (cx - ax)) / area
                wc = ((bx - ax) * (row - ay) - (by - ay) * (column - ax)) / area
                wa = 1.0 - wb - wc
                if wa < 0.0 or wb < 0.0 or wc < 0.0:
                    continue
                near = wa * points[a, 2] + wb * points[b, 2] + wc * points[c, 2]
                if near > depth[row, column]:
                    depth[row, column] = near
                    for channel in range(3):
                        image[row, column, channel] = (
                            wa * colours[a, channel] + wb * colours[b, channel] + wc * colours[c, channel]
                        )


class View:
    """A parallel projection on a picture of `size` (width, height) pixels.

    view_from_scene: 4×4; x right, y up, z towards the viewer; its origin falls on the middle of the picture.
    scale: pixels a mm.
    """

    def __init__(self, view_from_scene: FloatArray, size: tuple[int, int], scale: float) -> None:
        self.view_from_scene = view_from_scene
        self.size = size
        self.scale = scale

    def pixels(self, points: FloatArray) -> FloatArray:
        """(n, 3) scene points to (n, 3): column and row from the upper left corner, and nearness in mm."""
        seen = points @ self.view_from_scene[:3, :3].T + self.view_from_scene[:3, 3]
        width, height = self.size
        return np.column_stack(
            [seen[:, 0] * self.scale + width / 2 - 0.5, height / 2 - 0.5 - seen[:, 1] * self.scale, seen[:, 2]]
        )


def draw(
    view: View, vertices: FloatArray, faces: IntArray, colours: ByteArray, ambient: float, background: str
) -> ByteArray:
    """A shaded picture, (height, width, 3) uint8.

    vertices (n, 3) mm; faces (m, 3); colours (n, 3), of the surface in full light. ambient: share of the light that
    is everywhere. background: "#rrggbb".
    """
    width, height = view.size
    fine = View(view.view_from_scene, (width * _SAMPLES, height * _SAMPLES), view.scale * _SAMPLES)
    normals = _vertex_normals(vertices, faces) @ view.view_from_scene[:3, :3].T
    lengths = np.maximum(np.linalg.norm(normals, axis=1), 1e-300)
    lit = np.clip(normals @ (_LIGHT / np.linalg.norm(_LIGHT)) / lengths, 0.0, 1.0)
    shaded = (colours * (ambient + (1.0 - ambient) * lit)[:, None]).astype(np.float32)
    image = np.empty((height * _SAMPLES, width * _SAMPLES, 3), np.float32)
    image[:] = [int(background[k : k + 2], 16) for k in (1, 3, 5)]
    depth = np.full(image.shape[:2], -np.inf, np.float32)
    _rasterise(fine.pixels(vertices), faces, shaded, image, depth)
    shifts = [(row, column) for row in range(_SAMPLES) for column in range(_SAMPLES)]
    averaged = np.add.reduce([image[row::_SAMPLES, column::_SAMPLES] for row, column in shifts]) / _SAMPLES**2
    return np.asarray(np.clip(np.rint(averaged), 0, 255), dtype=np.uint8)
