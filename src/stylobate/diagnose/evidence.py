"""The residuals of one site as evidence: what a shape of displacement would add, and how sure that is.

Residual r = A·θ + H·a + e, e normal with the site's own covariance K; θ (pose, offset, profile at edges) is fitted
anyway, so it is projected out (method/trust, eq. 1–3).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.fit.descend import REACH, Around, to_connection
from stylobate.fit.design import design
from stylobate.fit.edges import SharpEdges
from stylobate.uncertainty.field import Field, Patches, groups_of, patches_of
from stylobate.uncertainty.likelihood import estimate, usual
from stylobate.uncertainty.pose import PRIOR_SD, PROFILE, Pose, solve

NEXT_TO_NONE = 1e-6
WHOLE = 100  # rows of a matrix that is inverted as it is


@dataclass(frozen=True)
class Points:
    """What carries the evidence, by point; connection frame, mm.

    feet (n, 3) on the CAD surface, gradient (n, 3) and residual (n,) there, rows (n, q) of θ, area (n,) mm²; to_edge
    (n,) and edge_angle (n,) rad of the nearest sharp edge, inf and 0 where there is none; edge (n,) how much it is at
    hand; group (n,): patch of each. profile (SHAPES,): at edges, which the residual is without.
    """

    feet: FloatArray
    gradient: FloatArray
    residual: FloatArray
    rows: FloatArray
    area: FloatArray
    to_edge: FloatArray
    edge_angle: FloatArray
    edge: FloatArray
    group: LongArray
    profile: FloatArray

    def mean(self, values: FloatArray) -> FloatArray:
        """Values (n, …) averaged over patches (m, …)."""
        flat = values.reshape(len(values), -1)
        count = np.bincount(self.group)
        sums = [np.bincount(self.group, weights=column) / count for column in flat.T]
        return np.stack(sums, axis=1).reshape(len(count), *values.shape[1:])


@dataclass(frozen=True)
class Evidence:
    """Residuals of one site, averaged over m patches, and what weighs them.

    The patches' residuals still hold the profile at edges: of it is known where it lies beforehand.

    normal (m, 3), area (m,) mm²: of each patch. weight (m, m) = K⁻¹. covariance (q, q) of θ. gain (q, m): what a
    displacement of each patch does to θ. projected (m, m): weight with θ projected out.
    """

    points: Points
    patches: Patches
    normal: FloatArray
    area: FloatArray
    field: Field
    weight: FloatArray
    covariance: FloatArray
    gain: FloatArray
    projected: FloatArray

    @cached_property
    def score(self) -> FloatArray:
        """(m,) projected residuals."""
        return np.asarray(self.projected @ self.patches.residual)

    def amplitudes(self, shapes: FloatArray, prior_sd: FloatArray | None = None) -> tuple[FloatArray, FloatArray]:
        """Least squares amplitudes (k,) of shapes (m, k) and their covariance (k, k), θ fitted with them (eq. 3).

        prior_sd (k,): standard deviation known beforehand.
        """
        information = shapes.T @ self.projected @ shapes
        if prior_sd is not None:
            covariance = np.asarray(np.linalg.inv(information + np.diag(1.0 / prior_sd**2)), dtype=np.float64)
        else:
            covariance = inverse_of_known(information, shapes, float(np.diag(self.weight).max()))
        return covariance @ (shapes.T @ self.score), covariance

    def moved_by(self, shapes: FloatArray) -> FloatArray:
        """(q, k): by how much θ is off for a unit of each shape (m, k) that is there and not fitted (eq. 4)."""
        return np.asarray(self.gain @ shapes)

    def freeing(self, shapes: FloatArray, prior_sd: FloatArray | None = None) -> Evidence:
        """The same evidence with shapes (m, k) fitted besides θ (eq. 5)."""
        _, spread = self.amplitudes(shapes, prior_sd)
        half = self.projected @ shapes
        moved = self.moved_by(shapes)
        return replace(
            self,
            covariance=self.covariance + moved @ spread @ moved.T,
            gain=self.gain - moved @ spread @ half.T,
            projected=self.projected - half @ spread @ half.T,
        )

    def without(self, which: LongArray) -> Evidence:
        """The same evidence with patches `which` left out: each has a displacement of its own."""
        if not len(which):
            return self
        return self.freeing(unit_shapes(which, len(self.patches.count)))

    @property
    def step(self) -> FloatArray:
        """(q,) from θ at the points' residuals to the likeliest."""
        step = self.gain @ self.patches.residual
        step[PROFILE] -= self.points.profile
        return np.asarray(step)


def inverse_of_known(information: FloatArray, shapes: FloatArray, most: float) -> FloatArray:
    """Inverse (k, k) over the directions that hold information; zero along those that the fit itself takes up.

    most: largest weight of a patch, against which a direction holds next to none.
    """
    scale = np.sqrt(np.einsum("ij,ij->j", shapes, shapes))
    scale[scale == 0.0] = 1.0
    values, vectors = np.linalg.eigh(information / np.outer(scale, scale))
    kept = values > NEXT_TO_NONE * most
    some = vectors[:, kept] / scale[:, None]
    return np.asarray(some / values[kept] @ some.T)


def unit_shapes(which: LongArray, size: int) -> FloatArray:
    """(size, k): one column a patch of `which`."""
    shapes = np.zeros((size, len(which)))
    shapes[which, np.arange(len(which))] = 1.0
    return shapes


def gather(
    tree: SurfaceTree, edges: SharpEdges, around: Around, which: LongArray, pose: Pose, field: Field | None = None,
    closest: Closest | None = None,
) -> Evidence:  # fmt: skip
    """The evidence of points `which` (k,) of Around at a weighted pose, under its field made wary or another."""
    return weighed(points_at(tree, edges, around, which, pose, closest), field or pose.field.wary())


def points_at(
    tree: SurfaceTree, edges: SharpEdges, around: Around, which: LongArray, pose: Pose, closest: Closest | None = None
) -> Points:
    """Points `which` (k,) of Around at a weighted pose, over even patches.

    closest: theirs at that pose, where they are known. Raises ValueError where one lies out of reach.
    """
    points = to_connection(pose.scan_from_connection, around.points[which])
    closest = tree.curved_at(points, closest or tree.closest(points, REACH))
    if not np.all(np.abs(closest.distance) < REACH):
        raise ValueError("a point lies out of reach of the CAD surface")
    here = design(points, closest, edges, pose.offset, pose.profile)
    group = groups_of(here.feet, closest.gradient)
    return Points(
        here.feet, closest.gradient, here.residual, here.rows, around.area[which], here.to_edge, here.edge_angle,
        here.edge, group, pose.profile,
    )  # fmt: skip


def weighed(points: Points, field: Field) -> Evidence:
    """The evidence of points under a field."""
    residual = points.residual + points.rows[:, PROFILE] @ points.profile
    patches = patches_of(points.feet, residual, points.rows, points.group, points.edge)
    area = np.bincount(points.group, weights=points.area).astype(np.float64)
    weight = inverted(field.covariance(patches))
    half = weight @ patches.matrix
    covariance = np.asarray(np.linalg.inv(patches.matrix.T @ half + np.diag(1.0 / PRIOR_SD**2)), dtype=np.float64)
    gain = covariance @ half.T
    normal = points.mean(points.gradient)
    return Evidence(points, patches, normal, area, field, weight, covariance, gain, weight - half @ gain)


def inverted(matrix: FloatArray) -> FloatArray:
    """Inverse of a positive definite matrix. Raises ValueError where it is none."""
    try:
        return _inverse(matrix)
    except np.linalg.LinAlgError as error:
        raise ValueError("the covariance of the residuals is not positive definite") from error


def _inverse(matrix: FloatArray) -> FloatArray:
    """By halves, with Schur's complement: stable where the matrix is positive definite, twice as fast as by LU."""
    if len(matrix) <= WHOLE:
        return np.asarray(np.linalg.inv(matrix))
    half = len(matrix) // 2
    first = _inverse(matrix[:half, :half])
    across = matrix[half:, :half] @ first
    last = _inverse(matrix[half:, half:] - across @ matrix[:half, half:])
    low = last @ across
    return np.block([[first + across.T @ low, -low.T], [-low, last]])


def refielded(evidence: Evidence, shapes: FloatArray, out: BoolArray) -> Evidence:
    """The same residuals under the field that they make likeliest once shapes (m, k) are fitted and `out` (m,) left.

    The field so far may have taken the shapes for noise, and then weighs them wrongly: they are fitted anew, at first
    under a field as scanners have it.
    """
    patches, kept = evidence.patches, ~out
    wide = np.hstack([patches.matrix, shapes])[kept]
    some = Patches(
        patches.centre[kept], patches.residual[kept], wide, patches.count[kept], patches.spread[kept],
        None if patches.edge is None else patches.edge[kept],
    )  # fmt: skip
    prior = np.concatenate([1.0 / PRIOR_SD**2, np.ones(shapes.shape[1])])  # of the shapes ±1 mm and rad: no more
    field, known = usual(evidence.field.white_sd), None
    for _ in range(2):
        step, _, _ = solve(some, field, prior)
        left = replace(some, residual=some.residual - wide @ step)
        field = known = estimate(left, known)
    return weighed(evidence.points, field.wary())
