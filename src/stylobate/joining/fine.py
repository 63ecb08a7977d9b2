"""The robust fit of one scan on another (method/join, eqs. 5–6): what agrees counts, what differs does not."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.fit.descend import TUKEY, tukey
from stylobate.joining.thin import Points

SPACING = 0.25
"""mm between the points of the second scan that are laid on the first."""
BLOCK = 1.5
"""mm: side of the blocks over which residuals are averaged before it is judged whether that surface has moved."""
FACING = 0.7
"""Least cosine between the two scans' normals."""
REACHES = (1.0, 0.6, 0.4, 0.3, 0.25, 0.25, 0.25, 0.25, 0.25)
"""mm within which a point has a counterpart, step by step."""
FIRST_SD, LEAST_SD = 0.15, 0.004
"""mm: how well blocks agree, at the start of the fit and at best."""
LEAST_IN_BLOCK = 4
NARROWED = 1.10
"""Root of the normal's variance over that of what Tukey's weights leave of it."""
CONSENSUS, DRAWN, ABOUT, STILL_SD = 5, 150, 4.0, 0.02
"""The step at which it is asked which blocks lie still together; from how many draws; blocks how near (mm) to the two
places of a draw; and with which standard deviation (mm)."""
QUIET = 0.4
"""Share of the blocks that is taken to have kept still, when the spread of blocks is judged."""
NORMAL_QUANTILE = 0.5244005127080407
"""Of |z| at QUIET."""


@dataclass(frozen=True)
class Fit:
    """first_from_second: (4, 4). Arrays run over the points of the second scan that have a counterpart.

    at (n, 3): first scan's frame; gradient (n, 3) unit normal of the first scan's surface; gap (n,) mm, along it;
    weight (n,) 0 to 1. block_sd: robust standard deviation of the blocks' means, mm.
    """

    first_from_second: FloatArray
    at: FloatArray
    gradient: FloatArray
    gap: FloatArray
    weight: FloatArray
    block_sd: float


@dataclass(frozen=True)
class Target:
    """The first scan made ready. normals (m, 3): smooth, of each face of the tree."""

    tree: SurfaceTree
    normals: FloatArray

    @staticmethod
    def of(surface: Surface, normals: FloatArray) -> Target:
        """normals (n, 3): smooth, of the vertices."""
        per_face = normals[surface.faces[surface.face_areas() > 1e-14]].sum(axis=1)
        per_face /= np.maximum(np.linalg.norm(per_face, axis=1, keepdims=True), 1e-30)
        return Target(SurfaceTree.of(surface), per_face)

    def gaps(self, points: Points, reach: float) -> tuple[BoolArray, FloatArray, FloatArray]:
        """Which points (n,) have a counterpart; their gap (n,) and the surface's normal there (n, 3)."""
        # Beyond the band of the cubes: the tree of boxes is ready sooner than they are.
        found = self.tree.closest(points.at, max(reach, 1.6))
        normal = self.normals[np.maximum(found.face, 0)]
        near = (found.face >= 0) & ~found.on_boundary & (np.abs(found.distance) < reach)
        near &= np.einsum("ij,ij->i", normal, points.normals) > FACING
        gap = np.where(near, found.distance * np.einsum("ij,ij->i", found.gradient, normal), 0.0)
        return near, np.nan_to_num(gap), normal


def fitted(target: Target, points: Points, start: FloatArray) -> Fit:
    """Lay `points` of the second scan on the first, from a rough pose."""
    pose, sd = start, FIRST_SD
    for k, reach in enumerate(REACHES):
        moved = points.moved(pose)
        near, gap, normal = target.gaps(moved, reach)
        at, gap, normal = moved.at[near], gap[near], normal[near]
        if len(at) < 100:
            return Fit(pose, at, normal, gap, np.zeros(len(at)), FIRST_SD)
        middle = at.mean(axis=0)
        jacobian = np.concatenate([normal, np.cross(at - middle, normal)], axis=1)
        blocks = _Blocks.of(at, gap, jacobian)
        if k == CONSENSUS:
            sd = STILL_SD
            step = _consensus(blocks.centre[blocks.many], blocks.jacobian[blocks.many], blocks.mean[blocks.many])
        else:
            weight, sd = blocks.weights(FIRST_SD * 0.6**k if k < CONSENSUS else sd)
            step = _step(jacobian, gap, weight)
        if k + 1 < len(REACHES):
            pose = rigid.exp_about(step, middle) @ pose
    return Fit(rigid.orthonormal(pose), at, normal, gap, weight, sd)


def _step(jacobian: FloatArray, gap: FloatArray, weight: FloatArray) -> FloatArray:
    weighted = jacobian * weight[:, None]
    return np.asarray(-np.linalg.solve(weighted.T @ jacobian + 1e-9 * np.eye(6), weighted.T @ gap))


@dataclass(frozen=True)
class _Blocks:
    """Gaps (n,) by blocks. block (n,): number of each point's; centre (b, 3), jacobian (b, 6) and mean (b,): of those
    points of each block that are no strays; many (b,): whether they are enough to judge."""

    gap: FloatArray
    block: LongArray
    centre: FloatArray
    jacobian: FloatArray
    mean: FloatArray
    many: BoolArray

    @staticmethod
    def of(at: FloatArray, gap: FloatArray, jacobian: FloatArray) -> _Blocks:
        block, count = cubes(at, BLOCK)
        middling = np.abs(gap) < TUKEY * max(FIRST_SD / 2.0, _spread(gap))
        total = np.maximum(np.bincount(block, middling, count), 1.0)
        columns = np.column_stack([at, jacobian, gap]) * middling[:, None]
        means = np.column_stack([np.bincount(block, column, count) for column in columns.T]) / total[:, None]
        return _Blocks(gap, block, means[:, :3], means[:, 3:9], means[:, 9], total >= LEAST_IN_BLOCK)

    def weights(self, sd: float) -> tuple[FloatArray, float]:
        """Tukey's biweight of each point's gap (n,) against its block's mean, and of that mean; and the blocks' spread.

        The spread is that of the blocks that agree when `sd` is taken for it.
        """
        share = tukey(self.mean, TUKEY * sd) * self.many
        spread = np.sqrt((share * self.mean**2).sum() / max(share.sum(), 1e-9)) * NARROWED
        sd = float(np.clip(spread, LEAST_SD, FIRST_SD))
        within = self.gap - self.mean[self.block]
        own = tukey(within, TUKEY * max(LEAST_SD, _spread(within)))
        return own * (tukey(self.mean, TUKEY * sd) * self.many)[self.block], sd


def _consensus(centre: FloatArray, jacobian: FloatArray, mean: FloatArray) -> FloatArray:
    """The small motion (6,) after which most blocks lie still: of many drawn from blocks about two places each.

    Where gingiva has moved together, it may be more than half of what is shared; teeth stand out by agreeing closely.
    """
    if len(mean) < 12:
        return np.zeros(6)
    rng = np.random.default_rng(20261128)
    best = -1.0
    step: FloatArray = np.zeros(6)
    ridge = np.diag([1e-6] * 3 + [1e-3] * 3)
    for _ in range(DRAWN):
        two = centre[rng.integers(len(centre), size=2)]
        share = (np.linalg.norm(centre[:, None] - two[None], axis=2).min(axis=1) < ABOUT).astype(np.float64)
        for _ in range(2):
            weighted = jacobian * share[:, None]
            trial = -np.linalg.solve(weighted.T @ jacobian + ridge, weighted.T @ mean)
            share = tukey(mean + jacobian @ trial, TUKEY * STILL_SD)
        if share.sum() > best:
            best, step = float(share.sum()), trial
    return step


def _spread(values: FloatArray) -> float:
    """Standard deviation about zero by the QUIET share that is nearest to it."""
    return float(np.quantile(np.abs(values), QUIET)) / NORMAL_QUANTILE if len(values) else 0.0


def cubes(at: FloatArray, side: float) -> tuple[LongArray, int]:
    """Number (n,) of each point's cube of `side` mm, and how many there are."""
    cube = np.floor(at / side).astype(np.int64)
    _, number = np.unique(cube, axis=0, return_inverse=True)
    number = number.reshape(-1)
    return number, int(number.max()) + 1 if len(number) else 0
