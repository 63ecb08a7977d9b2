"""Fit → Pose: the pose that the residual field makes likeliest, and its covariance.

Generalised least squares over patches (method, eq. 5): ξ = (Aᵀ K⁻¹ A)⁻¹ Aᵀ K⁻¹ r.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.types import FloatArray
from stylobate.edges import RADII, SharpEdges, likeliest_radius, sunk
from stylobate.field import Field, Patches, estimate, groups_of, patches_of
from stylobate.fit import OFFSET_SD, REACH, Around, Fit, rows, to_connection


@dataclass(frozen=True)
class Pose:
    """A weighted pose.

    scan_from_connection (4, 4); covariance (6, 6) of ξ, mm and radians; offset of the surface and its sd, mm;
    radius at which the scan shows sharp edges, mm; the residual field; effective_points: independent points that would
    fix the offset as well.
    """

    scan_from_connection: FloatArray
    covariance: FloatArray
    offset: float
    offset_sd: float
    edge_radius: float
    field: Field
    effective_points: float

    def turn_known_within(self, widest: float) -> Pose:
        """The same pose, its turn known no better than ±`widest` rad with 95 %."""
        least = (widest / 1.96) ** 2
        if self.covariance[5, 5] >= least:
            return self
        covariance = self.covariance.copy()
        covariance[5, 5] = least
        return replace(self, covariance=covariance)


# What is known before the fit: the search has found the place, so nothing here weighs against real data; it keeps a
# motion that the surface does not fix (the turn of a round body) finite. Standard deviations: 0.5 mm, 0.3 rad, any
# turn; the offset as in the fit; the rounding of edges 0.1 mm.
PRIOR_SD = np.array([0.5, 0.5, 0.5, 0.3, 0.3, np.pi / np.sqrt(3.0), OFFSET_SD, 0.1])
FIELD_ROUNDS, MOST_ROUNDS = 2, 12  # the field is estimated anew in the first rounds, then kept
SETTLED = 0.1  # a weighted step shorter than √0.1 standard deviations, in all directions at once, has converged
SWINGS = 1.0  # a step still swinging at the end, within a standard deviation, is added to the uncertainty
RADIUS_STEP = 0.01  # mm, for the derivative by the radius of edges


def solve(patches: Patches, field: Field, prior: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Generalised least squares: parameters (k,), their covariance and information (k, k). prior (k,): information
    added, 1/unit².

    One Cholesky factor of [[K, B], [Bᵀ, c]] with B = [A r] holds L⁻¹B in its last rows.
    """
    k = field.covariance(patches)
    b = np.hstack([patches.matrix, patches.residual[:, None]])
    n, m = b.shape
    wide = np.zeros((n + m, n + m))
    wide[:n, :n] = k
    wide[n:, :n] = b.T
    wide[:n, n:] = b
    wide[np.arange(n, n + m), np.arange(n, n + m)] = 1e20
    white = np.linalg.cholesky(wide)[n:, :n]
    information = white[:-1] @ white[:-1].T + np.diag(prior)
    covariance: FloatArray = np.asarray(np.linalg.inv(information), dtype=np.float64)
    return covariance @ (white[:-1] @ white[-1]), covariance, information


def weigh(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit) -> Pose | None:
    """The pose weighted by the correlation of its own residuals. Rounds of
    rounding, field and pose, until it rests; None where it does not.

    Parameters: ξ (6), the offset, and where edges are rounded the change of their radius.
    """
    pose, offset, radius = fit.scan_from_connection, fit.offset, 0.0
    known: tuple[Field, FloatArray] | None = None
    points = around.points[fit.support]
    for turn in range(MOST_ROUNDS):
        local = to_connection(pose, points)
        closest = tree.closest(local, REACH)
        if np.any(closest.face < 0):
            return None
        residual = closest.distance - offset
        distance, angle = edges.near(local - closest.distance[:, None] * closest.gradient)
        if turn == 0:
            group = groups_of(local, closest.gradient)
            radius = likeliest_radius(distance, angle, residual)
        slope = (
            sunk(distance, angle, radius + RADIUS_STEP) - sunk(distance, angle, max(radius - RADIUS_STEP, 0.0))
        ) / (RADIUS_STEP + min(radius, RADIUS_STEP))
        matrix = np.hstack([rows(local, closest.gradient), np.ones((len(local), 1)), slope[:, None]])
        patches = patches_of(local, residual - sunk(distance, angle, radius), matrix, group)
        field = estimate(patches, known) if known is None or turn < FIELD_ROUNDS else known[0]
        step, covariance, information = solve(patches, field, 1.0 / PRIOR_SD**2)
        moved = float(step @ information @ step)
        if turn >= FIELD_ROUNDS:  # half a step: feet that jump across an edge and back make a full one swing
            step = step / 2.0
        pose = pose @ rigid.exp(step[:6])
        offset += float(step[6])
        radius = float(np.clip(radius + step[7], 0.0, RADII[-1]))
        last = turn == MOST_ROUNDS - 1
        if turn > 0 and (moved < SETTLED or (last and moved < SWINGS)):
            if last:
                covariance = covariance + np.outer(step, step)
            effective = float(information[6, 6]) * (field.white_sd**2 + field.correlated_sd**2)
            return Pose(
                rigid.orthonormal(pose), covariance[:6, :6], offset, float(np.sqrt(covariance[6, 6])), radius, field,
                effective,
            )  # fmt: skip
        known = (field, covariance)
    return None
