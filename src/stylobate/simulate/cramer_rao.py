"""The least covariance that any unbiased estimator of a pose can reach on a scene (Cramér–Rao; method, eq. S7)."""

from __future__ import annotations

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray, IntArray, LongArray
from stylobate.simulate.making import Scene
from stylobate.simulate.noise import NoiseModel

MOST_VERTICES = 4000
"""More vertices than this are averaged in cells first: the dense factor grows with their cube."""
FEW = 4
"""Points of a cell over which what is correlated is averaged."""
REGION_MM = 0.05
"""A vertex this near the scan region's drawing belongs to it (edge rounding and made-part errors lie below)."""


def bound(scene: Scene, site: int) -> FloatArray:
    """Covariance (6, 6) of ξ (mm, rad; T_true = T_est · exp(ξ)) for sites[site], from the scene's own noise.

    Uses every vertex of the body's scan region above the gum whose place the drawing explains; a bent, split or coated
    body is taken at its noise-free vertices, as if its shape were known. More than MOST_VERTICES vertices
    are first averaged in cells, and the noise with them: that loses a little information (under 3 % of an sd in
    the tests) and errs to the high side. Heavy tails enter by their second moments: the bound of linear estimators.
    Raises ValueError where the vertices shown leave a motion loose.
    """
    truth = scene.sites[site]
    pose = truth.scan_from_connection
    mine = np.flatnonzero((scene.label == site) & scene.as_drawn)
    points = (scene.true_vertices[mine] - pose[:3, 3]) @ pose[:3, :3]
    if truth.body.region is not truth.body.surface:
        off = SurfaceTree.of(truth.body.region).closest(points, REGION_MM)
        inside = off.face >= 0
        mine, points = mine[inside], points[inside]
    normals = scene.true_normals[mine] @ pose[:3, :3]
    return pose_covariance(
        scene.noise, scene.true_vertices[mine], scene.true_normals[mine], points, normals, scene.rough_sd[mine]
    )


def pose_covariance(
    noise: NoiseModel, scan_points: FloatArray, scan_normals: FloatArray, points: FloatArray, normals: FloatArray,
    rough: FloatArray,
) -> FloatArray:  # fmt: skip
    """(Jᵀ C⁻¹ J)⁻¹, rows J = [n, p × n]; scan_points (n, 3) place the noise, points (n, 3) the motion (connection)."""
    jacobian = np.concatenate([normals, np.cross(points, normals)], axis=1)
    if len(points) > MOST_VERTICES:
        information = _averaged_information(noise, scan_points, scan_normals, jacobian, rough)
    else:
        covariance = noise.covariance(scan_points, scan_normals)
        covariance[np.diag_indices(len(points))] += rough**2
        information = _information(covariance, jacobian)
    return inverted(information)


def inverted(information: FloatArray) -> FloatArray:
    """Inverse of a (6, 6) information matrix. Raises ValueError where a motion has next to none (1e-12 of the most)."""
    scale = 1.0 / np.sqrt(np.maximum(np.diag(information), 1e-300))
    balanced = information * scale[:, None] * scale
    if np.linalg.eigvalsh(balanced)[0] < 1e-10:
        raise ValueError("the vertices shown leave a motion loose: no bound")
    return np.asarray(np.linalg.inv(balanced) * scale[:, None] * scale)


def _information(covariance: FloatArray, jacobian: FloatArray) -> FloatArray:
    from scipy.linalg import cholesky, solve_triangular

    mean_variance = float(np.trace(covariance)) / len(covariance)
    covariance[np.diag_indices(len(covariance))] += 1e-9 * mean_variance
    factor = cholesky(covariance, lower=True, overwrite_a=True, check_finite=False)
    white = solve_triangular(factor, jacobian, lower=True, check_finite=False)
    return np.asarray(white.T @ white)


def _averaged_information(
    noise: NoiseModel, points: FloatArray, normals: FloatArray, jacobian: FloatArray, rough: FloatArray
) -> FloatArray:
    """Information of weighted means over cells of like place and normal, with the exact covariance of the white part.

    The correlated part's covariance between means is taken between the cells' mean points, within a cell averaged.
    """
    side = _cell_side(points, normals)
    cell, count = _cells(points, normals, side)
    variance = noise.white_sd(normals) ** 2 + rough**2
    weight = 1.0 / np.maximum(variance, 1e-12)
    total = np.bincount(cell, weight, count)

    def mean(values: FloatArray) -> FloatArray:
        sums = np.stack([np.bincount(cell, weight * column, count) for column in values.T], axis=1)
        return np.asarray(sums / total[:, None])

    middle = mean(points)
    covariance = noise.correlated(middle, middle)
    inside = _mean_within(noise, points, cell, count)
    covariance[np.diag_indices(count)] = inside + np.bincount(cell, weight**2 * variance, count) / total**2
    if noise.noise.seam_um > 0.0:
        basis = mean(noise.seams(points, normals)) * (noise.noise.seam_um * 1e-3)
        covariance += basis @ basis.T
    return _information(covariance, mean(jacobian))


def covariance_of_means(noise: NoiseModel, points: FloatArray, normals: FloatArray, cell: LongArray) -> FloatArray:
    """Covariance (m, m) mm² of the noise's plain means over cells, numbered in `cell` (n,); points, normals (n, 3).

    What is correlated is averaged over FEW of a cell's points, evenly taken.
    """
    order = np.argsort(cell, kind="stable")
    count = np.bincount(cell)
    place = np.arange(len(cell)) - np.repeat(np.cumsum(count) - count, count)
    some = order[place * FEW // count[cell[order]] != (place - 1) * FEW // count[cell[order]]]
    taken = np.bincount(cell[some])
    starts = np.cumsum(taken) - taken
    one = noise.correlated(points[some], points[some])
    if noise.noise.seam_um > 0.0:
        basis = noise.seams(points[some], normals[some]) * (noise.noise.seam_um * 1e-3)
        one += basis @ basis.T
    covariance = np.add.reduceat(np.add.reduceat(one, starts, axis=0), starts, axis=1) / np.outer(taken, taken)
    covariance[np.diag_indices(len(count))] += np.bincount(cell, noise.white_sd(normals) ** 2) / count**2
    return np.asarray(covariance)


def _cell_side(points: FloatArray, normals: FloatArray) -> float:
    side = 0.08
    while _cells(points, normals, side)[1] > MOST_VERTICES:
        side *= 1.1
    return side


def _cells(points: FloatArray, normals: FloatArray, side: float) -> tuple[IntArray, int]:
    """Cell (n,) of each point and their count; a cell spans `side` mm in place and about 0.2 in the normal."""
    key = np.concatenate([np.floor(points / side), np.round(normals * 2.5)], axis=1).astype(np.int64) + (1 << 9)
    packed = np.zeros(len(points), np.uint64)
    for column in (key - key.min(axis=0)).T:
        packed = packed * np.uint64(int(column.max()) + 1) + column.astype(np.uint64)
    _, cell = np.unique(packed, return_inverse=True)
    return cell.astype(np.int32), int(cell.max()) + 1


def _mean_within(noise: NoiseModel, points: FloatArray, cell: IntArray, count: int) -> FloatArray:
    """Mean covariance (count,) of the correlated part over all pairs of points in each cell."""
    order = np.argsort(cell, kind="stable")
    starts = np.searchsorted(cell[order], np.arange(count + 1))
    result = np.empty(count)
    for k in range(count):
        inside = points[order[starts[k] : starts[k + 1]]]
        result[k] = float(noise.correlated(inside, inside).mean())
    return result
