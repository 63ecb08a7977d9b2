"""How poses of one scan err together: what the result states, scaled, and drift along the arch.

C(θ) = s² C_stated + C_reseated + Σ θ_j² D_j   (method/compare, eq. 2)
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.arch import ways
from stylobate.core.types import FloatArray
from stylobate.record.model import Record, RecordSite
from stylobate.settings import DRIFT_MM
from stylobate.several.comparing.layout import from_elsewhere
from stylobate.several.drifting.model import Profile
from stylobate.several.lay import LEVER

STEP_MM = 2.0
"""A walk between two implants is summed over steps of about this length."""


@dataclass(frozen=True)
class Prior:
    """What is held likely of θ before the scans are looked at: log-normal.

    median: (5,) factor on the stated standard uncertainties; shift walk, mm; turn walk, rad; turn walk with its lever,
    rad; scale, mm; drift each after 50 mm. spread: (5,) standard deviation of the natural logarithm. source: in words.
    """

    median: FloatArray
    spread: FloatArray
    source: str


NOISE_SPREAD = 0.25
"""A stated uncertainty is taken to be right within a factor of 1.6, 95 times in 100: ours, no source."""
NOT_STATED = Prior(
    np.array([1.0, 0.015, np.radians(0.01), np.radians(0.005), 0.005]),
    np.array([NOISE_SPREAD, 1.2, 1.2, 1.2, 1.0]),
    "no drift stated: anything from none to that of the worst full arches is held possible",
)
"""Full arches are said to repeat within some 40 µm (BMC Oral Health 2024, PMC11636004), within the 95 % here; how drift
is shared out among its kinds is our choice, no source."""
LEAST = 1e-4
"""mm after 50 mm, and rad: a drift that is as good as none."""
STATED_SPREAD = 0.5
"""Of a drift that a budget states without its uncertainty: a factor of 2.7 either way, ours, no source."""
PROFILE_LEAST = 0.1


def prior_of(records: Sequence[Record], profile: Profile | None) -> Prior:
    """Of drift as the profile says, else as all budgets say, else unknown."""
    if profile is not None:
        told = np.array([profile.shift_um.value * 1e-3, np.radians(profile.turn_deg.value)])
        relative = np.array([profile.shift_um.u * 1e-3, np.radians(profile.turn_deg.u)]) / np.maximum(told, LEAST)
        spread = np.maximum(np.sqrt(np.log1p(relative**2)), PROFILE_LEAST)
        return _stated(told, spread, f"profile of {profile.scanner} {profile.unit}".strip())
    walks = [_walk(record, site) for record in records if not from_elsewhere(record) for site in record.sites]
    known = [walk for walk in walks if walk is not None]
    if not known or len(known) < len(walks):
        return NOT_STATED
    return _stated(np.median(known, axis=0), np.full(2, STATED_SPREAD), "drift as the budgets state it")


def _stated(told: FloatArray, spread: FloatArray, source: str) -> Prior:
    """A prior of shift and turn walk (2,), the other kinds as good as none: a scale that all scans share cancels."""
    median = np.array([1.0, *np.maximum(told, LEAST * np.array([1.0, 1e-2])), LEAST * 1e-2, LEAST])
    return Prior(median, np.array([NOISE_SPREAD, *spread, PROFILE_LEAST, PROFILE_LEAST]), source)


def _walk(record: Record, site: RecordSite) -> FloatArray | None:
    """(2,) mm and rad after 50 mm, from the site's budget: what drift adds towards the site farthest along the arch."""
    row = next((row for row in site.budget if row.source == "drift"), None)
    if row is None or row.platform_um is None:
        return None
    along = ways(np.array([other.scan_from_connection[:3, 3] for other in record.sites]))
    at = along[record.sites.index(site)]
    share = np.sqrt(max(at, along[-1] - at) / DRIFT_MM)
    if share == 0.0:
        return None
    walk = np.array([row.platform_um * 1e-3 / np.sqrt(3.0), np.radians(row.axis_deg or 0.0) / np.sqrt(2.0)])
    return np.asarray(walk / share, np.float64)


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
            variance = length / steps / DRIFT_MM
            for step in range(steps):
                at = centres[gap] + way * ((step + 0.5) / steps)
                shift += variance * _square(_moved(poses, gap, at, with_lever=True)[:, :3])
                turn += variance * _square(_moved(poses, gap, at, with_lever=False)[:, 3:])
                lever += variance * _square(_moved(poses, gap, at, with_lever=True)[:, 3:])
        turn += _before(centres) * _square(_moved(poses, -1, centres[0], with_lever=False)[:, 3:])
        spread = np.concatenate(
            [np.concatenate([p[:3, :3].T @ (p[:3, 3] / DRIFT_MM), np.zeros(3)]) for p in poses]
        )  # a scale about the common origin
        centred = _centred(np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses]))
        return Drift(centred @ np.stack([shift, turn, lever, np.outer(spread, spread)]) @ centred.T)


def _before(centres: FloatArray) -> float:
    """Variance of the turn that axes have in common against their places: the walk began one implant earlier."""
    return float(np.linalg.norm(np.diff(centres, axis=0), axis=1).mean()) / DRIFT_MM if len(centres) > 1 else 0.0


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
