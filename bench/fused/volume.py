"""Views → truncated signed distances on a grid, after Curless & Levoy (1996), SIGGRAPH 303 → triangles."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from bench.fused.views import HALF, PIXEL, View
from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, ByteArray, Float32Array, FloatArray, IntArray

TRUNCATION = 3.2  # voxels
BEHIND = 0.66  # of that: farther behind a surface a view says nothing
JUMP = 0.3  # mm between neighbouring pixels, over which there is no surface
REACH = 12.2  # mm from its origin within which a view is fused
LEAST_WEIGHT, LEAST_SUM = 0.05, 0.15  # of a view, and of all together, at a voxel
FREE_VIEWS = 2  # that must look through a voxel for it to count as free
BLUR = 0.6  # voxels
ISLAND = 200  # faces; smaller pieces are dropped


@dataclass(frozen=True)
class Volume:
    """total, weight (x, y, z): sums of weighted distances (mm, positive outside), of weights, at low + index · voxel.

    What lies more than a voxel behind the surface of a view counts only where no view has it nearer to one (`near`):
    else faces would stand out beside sharp edges. free: how many views look through.
    """

    low: FloatArray
    voxel: float
    total: Float32Array
    weight: Float32Array
    near: BoolArray
    free: ByteArray

    @staticmethod
    def over(low: FloatArray, high: FloatArray, voxel: float) -> Volume:
        """An empty one from corner to corner."""
        shape = tuple(np.ceil((high - low) / voxel).astype(int) + 1)
        sums = np.zeros((2, *shape), np.float32)
        return Volume(low, voxel, sums[0], sums[1], np.zeros(shape, np.bool_), np.zeros(shape, np.uint8))

    def add(self, view: View) -> None:
        """Fuse a view."""
        _fused(
            self.total, self.weight, self.near, self.free, self.voxel, (view.origin - self.low), view.axes,
            view.depth, view.cosine, view.weight,
        )  # fmt: skip

    def distances(self) -> tuple[Float32Array, BoolArray]:
        """Distance at each voxel, mm, and where it is known."""
        empty = (self.free >= FREE_VIEWS) & ~(self.near & (self.weight > LEAST_SUM))
        known = (self.weight > LEAST_SUM) | empty
        mean = self.total / np.where(self.weight > 0.0, self.weight, 1.0)
        return np.where(known & ~empty, mean, np.float32(TRUNCATION * self.voxel)), known

    def surface(self, blurred: bool) -> Surface:
        """Where the distance is zero. Raises ImportError without scikit-image."""
        from skimage.measure import marching_cubes

        distance, known = self.distances()
        if blurred:
            share = np.maximum(gaussian_filter(known.astype(np.float32), BLUR), 1e-3)
            distance = gaussian_filter(np.where(known, distance, np.float32(0.0)), BLUR) / share
        for axis in range(3):  # a cube is cut where all its corners are known
            known = known & np.roll(known, 1, axis)
        vertices, faces, _, _ = marching_cubes(
            distance, 0.0, spacing=(self.voxel,) * 3, allow_degenerate=False, mask=known
        )  # faces are wound outward where the distance grows outward
        return _without_islands(vertices.astype(np.float64) + self.low, faces.astype(np.int32))


@compiled
def _fused(
    total: Float32Array, weight: Float32Array, near: BoolArray, free: ByteArray, voxel: float, origin: FloatArray,
    axes: FloatArray, depth: FloatArray, cosine: FloatArray, share: FloatArray,
) -> None:  # fmt: skip
    """Add a view's distances: along the ray times the cosine of incidence, by bilinear interpolation of its maps."""
    low, high = np.empty(3, np.int64), np.empty(3, np.int64)
    for axis in range(3):
        low[axis] = max(0, int((origin[axis] - REACH) / voxel))
        high[axis] = min(total.shape[axis], int((origin[axis] + REACH) / voxel) + 2)
    side = depth.shape[0]
    for i in range(low[0], high[0]):
        for j in range(low[1], high[1]):
            for k in range(low[2], high[2]):
                x, y, z = i * voxel - origin[0], j * voxel - origin[1], k * voxel - origin[2]
                p = (x * axes[0, 0] + y * axes[0, 1] + z * axes[0, 2] + HALF) / PIXEL
                q = (x * axes[1, 0] + y * axes[1, 1] + z * axes[1, 2] + HALF) / PIXEL
                if p < 0.0 or q < 0.0 or p >= side - 1 or q >= side - 1:
                    continue
                a, b = int(p), int(q)
                w = share[a, b]
                corners = depth[a, b], depth[a + 1, b], depth[a, b + 1], depth[a + 1, b + 1]
                if w < LEAST_WEIGHT or max(corners) == np.inf or max(corners) - min(corners) > JUMP:
                    continue
                u, v = p - a, q - b
                seen = (1 - u) * ((1 - v) * corners[0] + v * corners[2]) + u * ((1 - v) * corners[1] + v * corners[3])
                facing = (1 - u) * ((1 - v) * cosine[a, b] + v * cosine[a, b + 1])
                facing += u * ((1 - v) * cosine[a + 1, b] + v * cosine[a + 1, b + 1])
                off = (seen - (x * axes[2, 0] + y * axes[2, 1] + z * axes[2, 2])) * facing
                if off > TRUNCATION * voxel:
                    free[i, j, k] = min(free[i, j, k] + 1, 255)
                    continue
                if off < -BEHIND * TRUNCATION * voxel or (off < -voxel and near[i, j, k]):
                    continue
                if off >= -voxel and not near[i, j, k]:
                    near[i, j, k] = True
                    total[i, j, k] = 0.0
                    weight[i, j, k] = 0.0
                total[i, j, k] += w * off
                weight[i, j, k] += w


def _without_islands(vertices: FloatArray, faces: IntArray) -> Surface:
    """Only pieces of more than ISLAND faces, and only their vertices."""
    one, two = np.concatenate([faces[:, :2], faces[:, 1:]]).T
    size = len(vertices)
    _, piece = connected_components(coo_matrix((np.ones(len(one), np.int8), (one, two)), (size, size)), directed=False)
    kept = faces[np.bincount(piece[faces[:, 0]], minlength=size)[piece[faces[:, 0]]] > ISLAND]
    used, flat = np.unique(kept, return_inverse=True)
    return Surface(np.ascontiguousarray(vertices[used]), flat.reshape(-1, 3).astype(np.int32))
