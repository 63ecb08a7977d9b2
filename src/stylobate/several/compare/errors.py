"""How poses of one scan err together: what the result states, scaled, and drift along the arch.

C(θ) = s² C_stated + C_reseated + Σ θ_j² D_j   (method/compare, eq. 2)
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.several.lay import LEVER

PER_MM = 50.0
"""Arch length after which a walk has the sd by which it is named."""
STEP_MM = 2.0
"""A walk between two implants is summed over steps of about this length."""

NAMES = ("noise", "shift walk", "turn walk", "turn walk with its lever", "scale")
PRIOR_MEDIAN = np.array([1.0, 0.010, np.radians(0.02), np.radians(0.01), 0.005])
"""Factor on the stated sd; mm, radians, radians and mm, each after 50 mm. Full arches are said to repeat within some
40 µm (BMC Oral Health 2024, PMC11636004); how that is shared out is our choice, no source."""
PRIOR_SPREAD = np.array([0.35, 1.2, 1.2, 1.2, 1.2])
"""Standard deviation of the natural logarithm: ours, no source. A factor of 10 up or down is within 95 % for drift."""


@dataclass(frozen=True)
class Drift:
    """parts: (4, 6n, 6n) covariances of a unit of each kind of drift, in the connection frames."""

    parts: FloatArray

    @staticmethod
    def over(poses: FloatArray) -> Drift:
        """Of implants with these common_from_connection (n, 4, 4), in order along the arch."""
        centres = poses[:, :3, 3]
        count = len(poses)
        shift, turn, lever = np.zeros((3, 6 * count, 6 * count))
        for gap in range(count - 1):
            way = centres[gap + 1] - centres[gap]
            length = float(np.linalg.norm(way))
            steps = max(1, round(length / STEP_MM))
            variance = length / steps / PER_MM
            for step in range(steps):
                at = centres[gap] + way * ((step + 0.5) / steps)
                shift += variance * _square(_moved(poses, gap, at, with_lever=True)[:, :3])
                turn += variance * _square(_moved(poses, gap, at, with_lever=False)[:, 3:])
                lever += variance * _square(_moved(poses, gap, at, with_lever=True)[:, 3:])
        spread = np.concatenate(
            [np.concatenate([p[:3, :3].T @ (p[:3, 3] / PER_MM), np.zeros(3)]) for p in poses]
        )  # a scale about the common origin
        centred = _centred(np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses]))
        return Drift(centred @ np.stack([shift, turn, lever, np.outer(spread, spread)]) @ centred.T)


def _centred(lever: FloatArray) -> FloatArray:
    """(6n, 6n) taking off the common motion of least squares: a scan's own frame has no drift of its own."""
    weight = np.tile([1.0, 1.0, 1.0, LEVER**2, LEVER**2, LEVER**2], len(lever) // 6)[:, None]
    return np.asarray(np.eye(len(lever)) - lever @ np.linalg.solve(lever.T @ (weight * lever), (weight * lever).T))


def _square(motions: FloatArray) -> FloatArray:
    return motions @ motions.T


def _moved(poses: FloatArray, gap: int, at: FloatArray, with_lever: bool) -> FloatArray:
    """(6n, 6) ξ of each implant beyond `gap` by a unit motion of the common frame at the point `at` (3,)."""
    motions = np.zeros((6 * len(poses), 6))
    for i in range(gap + 1, len(poses)):
        pose = poses[i]
        about = at if with_lever else pose[:3, 3]
        motions[6 * i : 6 * i + 6] = rigid.adjoint(rigid.inverse(pose)) @ rigid.adjoint(rigid.pose(np.eye(3), about))
    return motions


def covariances(theta: FloatArray, stated: FloatArray, reseated: FloatArray, drift: FloatArray) -> FloatArray:
    """(T, m, m) of one scan for T draws of θ (T, 5): noise factor, then the four kinds of drift (eq. 2)."""
    squares = theta**2
    scaled = squares[:, 0, None, None] * stated + reseated
    return np.asarray(scaled + np.tensordot(squares[:, 1:], drift, axes=1))
