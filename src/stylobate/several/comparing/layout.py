"""Scans laid on each other, to first order: what is left of each pose, and how a motion of the scan would change it.

r = log(M⁻¹ F⁻¹ T) = Ad(M⁻¹) δ + μ − ξ   (method/compare, eq. 1)
"""

from __future__ import annotations

from collections.abc import Set
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.record.model import Record, RecordSite
from stylobate.several.comparing.union import Union
from stylobate.several.lay import laid, landmarks

ROUNDS = 3
RESEATED = ("seating", "play")
"""Rows of the budget that say how differently a body may sit when it is screwed on again."""
OTHERWISE = (*RESEATED, "made part", "temperature")
"""Rows that count where scan bodies are set against what was measured otherwise, without them."""
UNKNOWN_TURN = 1.0
"""rad: a turn stated to be less sure than this is not known."""

LEAST_SD = np.array([1e-4, 1e-4, 1e-4, 2e-5, 2e-5, 2e-5])
"""mm and rad: 0.1 µm, and as much 5 mm up the axis; nothing is known better, whatever is stated."""

Cell = tuple[int, int]
"""(scan, implant)"""


@dataclass(frozen=True)
class Layout:
    """n implants in K scans, in a common frame with its origin amid the implants.

    poses: (n, 4, 4) common_from_connection. frames: (K, 4, 4) scan_from_common. residual: (K, 6n) r, mm and radians.
    seen: (K, 6n) which motions each scan shows (no turn where the connection is not indexed).
    stated: (K, 6n, 6n) covariance of the scan as its result states it. reseated: (K, 6n, 6n) what screwing the bodies
    on again may add. lever: (6n, 6) Ad(M⁻¹), stacked. scanned: (K,) whether the poses are of a scan: those of a table
    do not drift, and what they state stands in `reseated`, whose size is not doubted.
    """

    poses: FloatArray
    frames: FloatArray
    residual: FloatArray
    seen: BoolArray
    stated: FloatArray
    reseated: FloatArray
    lever: FloatArray
    scanned: BoolArray
    left_out: frozenset[Cell]

    def shows(self, scan: int, implant: int) -> bool:
        """Whether the scan shows the implant, and it is not left out."""
        return bool(self.seen[scan, 6 * implant])

    def rows(self, scan: int) -> LongArray:
        """Numbers of the motions that the scan shows."""
        return np.flatnonzero(self.seen[scan])

    def of(self, scans: LongArray) -> Layout:
        """The layout of some of the scans."""
        return replace(
            self,
            frames=self.frames[scans],
            residual=self.residual[scans],
            seen=self.seen[scans],
            stated=self.stated[scans],
            reseated=self.reseated[scans],
            scanned=self.scanned[scans],
        )


def from_elsewhere(record: Record) -> bool:
    """Whether the poses are from a table, not of a scan."""
    return record.scan.triangles == 0


def layout(union: Union, left_out: Set[Cell] = frozenset()) -> Layout:
    """Lay the scans of `union` on each other by least squares over landmarks, leaving out the cells named."""
    count, scans = len(union.sites), len(union.records)
    poses, frames = _start(union, left_out)
    for _ in range(ROUNDS):
        for k in range(scans):
            used = [i for i in range(count) if _used(union, left_out, k, i)]
            if used:
                theirs = np.array([_site(union, i, k).scan_from_connection for i in used])
                frames[k] = laid(landmarks(poses[used]), landmarks(theirs))
        poses = np.array([_mean(union, left_out, frames, poses[i], i) for i in range(count)])
    return _linearised(union, frozenset(left_out), poses, frames)


def _used(union: Union, left_out: Set[Cell], scan: int, implant: int) -> bool:
    return union.sites[implant][scan] is not None and (scan, implant) not in left_out


def _site(union: Union, implant: int, scan: int) -> RecordSite:
    site = union.sites[implant][scan]
    if site is None:
        raise KeyError((implant, scan))
    return site


def _start(union: Union, left_out: Set[Cell]) -> tuple[FloatArray, FloatArray]:
    """Poses from the first scan that shows each implant, origin amid them."""
    poses = []
    for i, row in enumerate(union.sites):
        shown = [k for k, site in enumerate(row) if site is not None]
        k = next((k for k in shown if (k, i) not in left_out), shown[0])
        poses.append(union.first_from_scan[k] @ _site(union, i, k).scan_from_connection)
    stacked = np.array(poses)
    middle = stacked[:, :3, 3].mean(axis=0)
    stacked[:, :3, 3] -= middle
    shift = rigid.pose(np.eye(3), middle)
    frames = np.array([rigid.inverse(first_from_scan) @ shift for first_from_scan in union.first_from_scan])
    return stacked, frames


def _mean(union: Union, left_out: Set[Cell], frames: FloatArray, pose: FloatArray, implant: int) -> FloatArray:
    """Mean of the poses of an implant, from the pose before; the turn stays that of the first scan that shows it."""
    steps = []
    for k in range(len(frames)):
        if _used(union, left_out, k, implant):
            site = _site(union, implant, k)
            step, _ = step_to(pose, frames[k], site)
            steps.append(step)
    return pose if not steps else rigid.orthonormal(pose @ rigid.exp(np.mean(steps, axis=0)))


def step_to(pose: FloatArray, frame: FloatArray, site: RecordSite) -> tuple[FloatArray, float]:
    """ξ (6,) from a common pose to that of a site, and the turn of marks (radians) taken off the site's pose first."""
    motion = rigid.inverse(frame @ pose) @ site.scan_from_connection
    turn = rigid.turn_of(motion)
    if site.index_order > 0:
        turn = round(turn * site.index_order / (2.0 * np.pi)) * 2.0 * np.pi / site.index_order
    return rigid.log(motion @ about_z(-turn)), turn


def about_z(angle: float) -> FloatArray:
    return rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, angle]))


def _linearised(union: Union, left_out: frozenset[Cell], poses: FloatArray, frames: FloatArray) -> Layout:
    count, scans = len(union.sites), len(union.records)
    residual, seen = np.zeros((scans, 6 * count)), np.zeros((scans, 6 * count), dtype=np.bool_)
    stated, reseated = np.zeros((2, scans, 6 * count, 6 * count))
    scanned = np.array([not from_elsewhere(record) for record in union.records])
    added = RESEATED if scanned.all() else OTHERWISE
    for k, record in enumerate(union.records):
        marks = np.zeros((6 * count, 6 * len(record.sites)))
        for i in range(count):
            site = union.sites[i][k]
            if site is None:
                continue
            at, own = slice(6 * i, 6 * i + 6), _place(record, site)
            residual[k, at], turn = step_to(poses[i], frames[k], site)
            marks[at, own] = rigid.adjoint(about_z(turn))
            seen[k, at] = (k, i) not in left_out
            seen[k, 6 * i + 5] &= site.index_order > 0 and site.covariance[5, 5] < UNKNOWN_TURN**2
            reseated[k, at, at] = reseating(site, added)
        known = marks @ record.covariance() @ marks.T + np.diag(np.tile(LEAST_SD, count) ** 2)
        (stated if scanned[k] else reseated)[k] += known
    lever = np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses])
    return Layout(poses, frames, residual, seen, stated, reseated, lever, scanned, left_out)


def _place(record: Record, site: RecordSite) -> slice:
    at = next(k for k, other in enumerate(record.sites) if other.site == site.site)
    return slice(6 * at, 6 * at + 6)


def reseating(site: RecordSite, added: tuple[str, ...]) -> FloatArray:
    """(6, 6) of the budget's rows about seating: their root sums of squares shared out evenly over the axes."""
    variances = np.zeros(6)
    for row in site.budget:
        if row.source in added:
            variances[:3] += (1e-3 * (row.platform_um or 0.0)) ** 2 / 3.0
            variances[3:5] += np.radians(row.axis_deg or 0.0) ** 2 / 2.0
            variances[5] += np.radians(row.index_deg or 0.0) ** 2
    return np.diag(variances)
