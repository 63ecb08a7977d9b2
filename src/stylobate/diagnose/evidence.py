"""The residuals of one site as evidence: what a shape of displacement would add, and how sure that is.

Residual r = A·θ + H·a + e, e normal with the site's own covariance K; θ (pose, offset, radius of edges) is fitted
anyway, so it is projected out (method/trust, eq. 1–3).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray, LongArray
from stylobate.edges import RADII, SharpEdges, sunk
from stylobate.field import Field, Patches, groups_of, patches_of
from stylobate.fit import REACH, Around, Fit, rows, to_connection
from stylobate.pose import PRIOR_SD, RADIUS_STEP, Pose

PARAMETERS = 8
OFFSET = 6


@dataclass(frozen=True)
class Evidence:
    """Residuals of one site, averaged over patches, and what weighs them.

    points (n, 3), gradient (n, 3) and residual (n,) of the points that carry the fit, connection frame, mm; group (n,)
    the patch of each. normal (m, 3): mean gradient of a patch. weight (m, m) = K⁻¹. covariance (8, 8) of θ.
    gain (8, m): what a displacement of each patch does to θ. projected (m, m): weight with θ projected out.
    """

    points: FloatArray
    gradient: FloatArray
    residual: FloatArray
    group: LongArray
    patches: Patches
    normal: FloatArray
    field: Field
    weight: FloatArray
    covariance: FloatArray
    gain: FloatArray
    projected: FloatArray

    @property
    def score(self) -> FloatArray:
        """(m,) projected residuals."""
        return np.asarray(self.projected @ self.patches.residual)

    def mean(self, values: FloatArray) -> FloatArray:
        """Values (n, …) of points averaged over patches (m, …)."""
        flat = values.reshape(len(values), -1)
        count = self.patches.count
        sums = [np.bincount(self.group, weights=column, minlength=len(count)) / count for column in flat.T]
        return np.stack(sums, axis=1).reshape(len(count), *values.shape[1:])

    def amplitudes(self, shapes: FloatArray, prior_sd: FloatArray | None = None) -> tuple[FloatArray, FloatArray]:
        """Least squares amplitudes (k,) of shapes (m, k) and their covariance (k, k), θ fitted with them (eq. 3).

        prior_sd (k,): standard deviation known beforehand.
        """
        information = shapes.T @ self.projected @ shapes
        if prior_sd is not None:
            information = information + np.diag(1.0 / prior_sd**2)
        covariance = np.asarray(np.linalg.inv(information), dtype=np.float64)
        return covariance @ (shapes.T @ self.score), covariance

    def moved_by(self, shapes: FloatArray) -> FloatArray:
        """(8, k): by how much θ is off for a unit of each shape (m, k) that is there and not fitted (eq. 4)."""
        return np.asarray(self.gain @ shapes)

    def freed(self, shapes: FloatArray, prior_sd: FloatArray | None = None) -> tuple[FloatArray, FloatArray]:
        """Step (8,) and covariance (8, 8) of θ when shapes (m, k) are fitted with it (eq. 5)."""
        amplitude, spread = self.amplitudes(shapes, prior_sd)
        moved = self.moved_by(shapes)
        step = self.gain @ self.patches.residual - moved @ amplitude
        return step, self.covariance + moved @ spread @ moved.T


def gather(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit, pose: Pose) -> Evidence:
    """The evidence at a weighted pose."""
    points = to_connection(pose.scan_from_connection, around.points[fit.support])
    closest = tree.closest(points, REACH)
    kept = closest.face >= 0
    points, gradient, distance = points[kept], closest.gradient[kept], closest.distance[kept]
    to_edge, angle = edges.near(points - distance[:, None] * gradient)
    radius = pose.edge_radius
    slope = (sunk(to_edge, angle, radius + RADIUS_STEP) - sunk(to_edge, angle, max(radius - RADIUS_STEP, 0.0))) / (
        RADIUS_STEP + min(radius, RADIUS_STEP)
    )
    matrix = np.hstack([rows(points, gradient), np.ones((len(points), 1)), slope[:, None]])
    residual = distance - pose.offset - sunk(to_edge, angle, radius)
    return weighed(points, gradient, residual, matrix, groups_of(points, gradient), pose.field)


def weighed(
    points: FloatArray, gradient: FloatArray, residual: FloatArray, matrix: FloatArray, group: LongArray, field: Field
) -> Evidence:
    """Evidence of points (n, 3) with residual (n,), rows (n, 8) and patch numbers (n,) under a field."""
    patches = patches_of(points, residual, matrix, group)
    size = len(patches.count)
    normal = np.stack(
        [np.bincount(group, weights=gradient[:, k], minlength=size) / patches.count for k in range(3)], axis=1
    )
    weight = np.linalg.inv(field.covariance(patches))
    weight = (weight + weight.T) / 2.0
    half = weight @ patches.matrix
    covariance = np.asarray(np.linalg.inv(patches.matrix.T @ half + np.diag(1.0 / PRIOR_SD**2)), dtype=np.float64)
    gain = covariance @ half.T
    return Evidence(
        points, gradient, residual, group, patches, normal, field, weight, covariance, gain, weight - half @ gain
    )


def stepped(pose: Pose, step: FloatArray, covariance: FloatArray) -> tuple[FloatArray, FloatArray, float, float]:
    """Pose (4, 4), covariance (6, 6), offset and radius (mm) after a step (8,) of θ with covariance (8, 8)."""
    moved = rigid.orthonormal(pose.scan_from_connection @ rigid.exp(step[:6]))
    radius = float(np.clip(pose.edge_radius + step[7], 0.0, RADII[-1]))
    return moved, covariance[:6, :6], pose.offset + float(step[OFFSET]), radius
