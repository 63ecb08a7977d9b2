"""All poses of all scans weighed into one, with what the joins leave open (method/join, eqs. 13–16)."""

from __future__ import annotations

from collections.abc import Set
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.record import RecordSite
from stylobate.several.comparing.layout import LEAST_SD, RESEATED, UNKNOWN_TURN, Cell, about_z, reseating, step_to
from stylobate.several.comparing.multiplicity import LEVEL, SHARES
from stylobate.several.joined.mouth import Mouth

FIRSTS_SHARE = 0.5
"""Of a join's covariance, what is the first scan's and so the same for all that are joined to it: both scans count
alike."""
HEIGHT = 2


@dataclass(frozen=True)
class Weighed:
    """K scans of n implants. poses: (n, 4, 4), and covariance (6n, 6n) of their ξ, in the first scan.

    own: (K, n, 6, 6) what each scan states of each implant by itself. used: (K, n) which counted.
    """

    poses: FloatArray
    covariance: FloatArray
    own: FloatArray
    used: BoolArray


@dataclass(frozen=True)
class Differs:
    """A site of a scan that does not stand as the other scans show it. shift: (3,) mm, connection frame; u95: of it,
    mm, each way; p: every test counted."""

    cell: Cell
    shift: FloatArray
    covariance: FloatArray
    p: float


@dataclass(frozen=True)
class _Rows:
    """What the scans say, a row a motion shown: value and covariance; which motion of which implant, of which scan."""

    poses: FloatArray
    own: FloatArray
    used: BoolArray
    motion: LongArray
    scan: LongArray
    value: FloatArray
    covariance: FloatArray

    def of(self, cell: Cell) -> LongArray:
        """Numbers of a cell's rows."""
        return np.flatnonzero((self.scan == cell[0]) & (self.motion // 6 == cell[1]))

    def mean(self) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Information (R, R), best motions (6n,) and their covariance (6n, 6n)."""
        information = np.asarray(np.linalg.inv(self.covariance), np.float64)
        design = np.eye(6 * len(self.poses))[self.motion]
        covariance = np.asarray(np.linalg.inv(design.T @ information @ design), np.float64)
        return information, covariance @ (design.T @ (information @ self.value)), covariance


def weighed(mouth: Mouth, left_out: Set[Cell]) -> Weighed:
    """Generalised least squares over all that is not left out."""
    rows = _rows(mouth, left_out)
    _, shift, covariance = rows.mean()
    poses = [pose @ rigid.exp(shift[6 * i : 6 * i + 6]) for i, pose in enumerate(rows.poses)]
    return Weighed(np.array(poses), (covariance + covariance.T) / 2.0, rows.own, rows.used)


def differing(mouth: Mouth, left_out: Set[Cell]) -> tuple[Differs, ...]:
    """Sites that do not stand as elsewhere, the clearest first, each left out before the next is looked for."""
    found: list[Differs] = []
    tried = len(_testable(mouth, left_out))
    while True:
        gone = set(left_out) | {one.cell for one in found}
        clearest = _clearest(_rows(mouth, gone), _testable(mouth, gone), tried)
        if clearest is None:
            return tuple(found)
        found.append(clearest)


def _testable(mouth: Mouth, left_out: Set[Cell]) -> list[Cell]:
    """Cells of implants shown twice: of two, the later one; of more, each."""
    cells = []
    for i, row in enumerate(mouth.sites):
        shown = [k for k, site in enumerate(row) if site is not None and (k, i) not in left_out]
        cells += [(k, i) for k in (shown if len(shown) > 2 else shown[1:])]
    return cells


def _clearest(rows: _Rows, cells: list[Cell], tried: int) -> Differs | None:
    """The cell whose height or pose stands off most, if by more than chance would in one join of a hundred."""
    from scipy.special import chdtrc

    information, mean, covariance = rows.mean()
    design = np.eye(len(mean))[rows.motion]
    weighted = information @ design
    known = information - weighted @ covariance @ weighted.T
    pull = known @ rows.value
    best: Differs | None = None
    for cell in cells:
        at = rows.of(cell)
        height = at[rows.motion[at] % 6 == HEIGHT]
        p = 1.0
        for test, these in (("height", height), ("pose", at)):
            square = float(pull[these] @ np.linalg.solve(known[np.ix_(these, these)], pull[these]))
            p = min(p, float(chdtrc(len(these), square)) / SHARES[test])
        p = min(1.0, p * tried)
        if p <= LEVEL and (best is None or p < best.p):
            spread = np.asarray(np.linalg.inv(known[np.ix_(at, at)]), np.float64)
            best = Differs(cell, (spread @ pull[at])[:3], spread[:3, :3], p)
    return best


def _rows(mouth: Mouth, left_out: Set[Cell]) -> _Rows:
    scans, count = len(mouth.records), len(mouth.sites)
    used = np.array(
        [[row[k] is not None and (k, i) not in left_out for i, row in enumerate(mouth.sites)] for k in range(scans)]
    )
    reference = [int(np.argmax(used[:, i])) for i in range(count)]
    moved = np.stack([np.zeros(6 * count), *(one.mean for one in mouth.left)]).reshape(scans, count, 6)
    poses = np.array([mouth.rough[i] @ rigid.exp(moved[k, i]) for i, k in enumerate(reference)])
    value, seen = np.zeros((scans, count, 6)), np.zeros((scans, count, 6), np.bool_)
    own, added = np.zeros((2, scans, count, 6, 6))
    marks = np.zeros((scans, 6 * count, 6 * count))
    for k, i in zip(*np.nonzero(used), strict=True):
        site = mouth.in_first(int(k), _site(mouth, int(i), int(k)))
        stands = replace(site, scan_from_connection=site.scan_from_connection @ _carried(moved[k, i], poses[i], site))
        value[k, i], turn = step_to(poses[i], np.eye(4), stands)
        at = slice(6 * i, 6 * i + 6)
        marks[k, at, at] = rigid.adjoint(about_z(turn))
        own[k, i] = marks[k, at, at] @ site.covariance @ marks[k, at, at].T + np.diag(LEAST_SD**2)
        seen[k, i] = True
        if k != reference[i]:
            seen[k, i, 5] = site.index_order > 0 and site.covariance[5, 5] < UNKNOWN_TURN**2
            added[k, i] = 2.0 * reseating(site, RESEATED)
    covariance = _of_joins([one.covariance for one in mouth.left], count)
    for k in range(scans):
        block = slice(6 * count * k, 6 * count * (k + 1))
        covariance[block, block] += marks[k] @ _stated(mouth, k) @ marks[k].T
        for i in range(count):
            at = slice(block.start + 6 * i, block.start + 6 * i + 6)
            covariance[at, at] += added[k, i] + np.diag(LEAST_SD**2)
    shown = np.flatnonzero(seen.ravel())
    return _Rows(
        poses, own, used, shown % (6 * count), shown // (6 * count), value.ravel()[shown],
        covariance[np.ix_(shown, shown)],
    )  # fmt: skip


def _carried(left: FloatArray, pose: FloatArray, site: RecordSite) -> FloatArray:
    """(4, 4) the small motion ξ that is left, of the connection at `pose`, as one of the site's own frame: another
    index mark of it may point the body's way."""
    between = rigid.inverse(pose) @ site.scan_from_connection
    turn = between[:3, :3]
    return rigid.exp(np.concatenate([turn.T @ left[:3], turn.T @ left[3:]]))


def _stated(mouth: Mouth, scan: int) -> FloatArray:
    """(6n, 6n) covariance of a scan's poses as its result states it, by implants."""
    record, count = mouth.records[scan], len(mouth.sites)
    place = {site.site: k for k, site in enumerate(record.sites)}
    chosen = np.zeros((6 * count, 6 * len(record.sites)))
    for i, row in enumerate(mouth.sites):
        site = row[scan]
        if site is not None:
            at = place[site.site]
            chosen[6 * i : 6 * i + 6, 6 * at : 6 * at + 6] = np.eye(6)
    return np.asarray(chosen @ record.covariance() @ chosen.T)


def _of_joins(covariances: list[FloatArray], count: int) -> FloatArray:
    """(6nK, 6nK) of all joins together, the first scan's zero: they have FIRSTS_SHARE of their covariance in common."""
    size = 6 * count
    roots = [np.zeros((size, size)), *map(_root, covariances)]
    joint = np.block([[FIRSTS_SHARE * one @ two.T for two in roots] for one in roots])
    for k, root in enumerate(roots):
        at = slice(size * k, size * (k + 1))
        joint[at, at] = root @ root.T
    return np.asarray(joint)


def _root(covariance: FloatArray) -> FloatArray:
    """Symmetric root R, R Rᵀ = covariance, of mm and radians brought to one scale."""
    scale = np.sqrt(np.maximum(np.diag(covariance), 1e-300))
    values, vectors = np.linalg.eigh(covariance / np.outer(scale, scale))
    return np.asarray(scale[:, None] * (vectors * np.sqrt(np.clip(values, 0.0, None)) @ vectors.T))


def _site(mouth: Mouth, implant: int, scan: int) -> RecordSite:
    site = mouth.sites[implant][scan]
    assert site is not None
    return site
