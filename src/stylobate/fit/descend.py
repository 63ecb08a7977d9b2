"""Candidate → Fit: robust least squares on the exact distance to the CAD surface, scan region only.

Equations: docs/method, section "Fit".
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.buckets import Buckets
from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray

REACH = 0.8  # mm from the CAD surface within which scan points are looked at
TUKEY = 4.685  # 95 % Gaussian efficiency (Huber & Ronchetti 2009, Robust Statistics)
MAD_TO_SD = 1.4826
LEAST_SD = 0.003  # mm: no scan is taken to be better than this
OUTSIDE = 5.0  # standard deviations beyond which a point is not the scan body's
COARSE_POINTS, FINE_POINTS = 900, 4000
STEP_DONE = 5e-4  # mm, rms over the surface: a step that moves it less ends the descent
ROUGH_STEPS, FULL_STEPS = 16, 4
DIAGONAL, PULLED = np.diag_indices(6), np.array([1, 1, 1, 1, 1, 1e-2])  # of the motion; how much each is held back
OFFSET_SD = 0.03  # mm: a layer is expected within this (sprayed powder is 20 to 40 µm; from memory, no source seen)
WORN_SD = 0.008  # mm: the same inward (no source)
EFFECTIVE_SHARE = 30.0  # points that count as one where residuals are correlated; only the pull on the offset uses it
LEAST_POINTS, LEAST_SUPPORT = 12, 100  # in a step; that must carry a site's fit
FACING = 0.3  # cosine between the scan's normal and the CAD surface's above which they face the same way
CROWD = 0.3  # mm around an outlier in which its neighbours are counted
# mm around foreign surface: what a fit leaves out for the fillet that a scan makes there, and from where on nothing of
# it may show: its last micrometres hardly move a pose, but pass for a lean, a split or another shape.
GUM_MARGIN, CLEAR_MARGIN = 0.45, 0.6


@dataclass(frozen=True)
class Around:
    """The scan around one place: index (n,) of the vertices, points (n, 3), unit normals (n, 3), area (n,) mm²."""

    index: LongArray
    points: FloatArray
    normals: FloatArray
    area: FloatArray


@dataclass(frozen=True)
class Fit:
    """One scan body laid on the scan.

    scan_from_connection (4, 4). offset: of the scan's surface outward from the CAD surface, mm. support (k,): indices
    into Around of the points that carry the fit; clear (k,): which of them lie so far from foreign surface that nothing
    of its fillet can show there. near (n,): indices into Around of the points within reach, ascending; closest: theirs.
    sd: robust standard deviation of the residuals, mm. converged, iterations: of the last stage.
    """

    scan_from_connection: FloatArray
    offset: float
    support: LongArray
    clear: BoolArray
    near: LongArray
    closest: Closest
    sd: float
    converged: bool
    iterations: int


@compiled
def _within(
    vertices: FloatArray, normals: FloatArray, centre: FloatArray, radius: float
) -> tuple[LongArray, FloatArray, FloatArray, FloatArray]:
    found = np.empty(vertices.shape[0], np.int64)
    count = 0
    for i in range(vertices.shape[0]):
        dx = vertices[i, 0] - centre[0]
        dy = vertices[i, 1] - centre[1]
        dz = vertices[i, 2] - centre[2]
        if dx * dx + dy * dy + dz * dz < radius * radius:
            found[count] = i
            count += 1
    points, units, area = np.empty((count, 3)), np.empty((count, 3)), np.empty(count)
    kept = 0
    for k in range(count):
        i = found[k]
        area[kept] = np.sqrt(normals[i, 0] ** 2 + normals[i, 1] ** 2 + normals[i, 2] ** 2)
        if area[kept] > 0.0:
            found[kept] = i
            for d in range(3):
                points[kept, d] = vertices[i, d]
                units[kept, d] = normals[i, d] / area[kept]
            kept += 1
    return found[:kept].copy(), points[:kept].copy(), units[:kept].copy(), area[:kept].copy()


def around(vertices: FloatArray, normals: FloatArray, centre: FloatArray, radius: float) -> Around:
    """The scan within `radius` of `centre`. normals (n, 3): area-weighted, mm²."""
    return Around(*_within(vertices, normals, np.ascontiguousarray(centre), radius))


def to_connection(scan_from_connection: FloatArray, points: FloatArray) -> FloatArray:
    """Scan points (n, 3) in the connection frame."""
    return np.asarray((points - scan_from_connection[:3, 3]) @ scan_from_connection[:3, :3])


@compiled
def rows(points: FloatArray, gradient: FloatArray) -> FloatArray:
    """A (n, 6) with residual = A·ξ + noise to first order: [g, p × g] (method, eq. 3)."""
    result = np.empty((len(points), 6))
    for i in range(len(points)):
        p, g = points[i], gradient[i]
        for k in range(3):
            result[i, k] = g[k]
            result[i, 3 + k] = p[(k + 1) % 3] * g[(k + 2) % 3] - p[(k + 2) % 3] * g[(k + 1) % 3]
    return result


@compiled
def robust_sd(residual: FloatArray) -> float:
    """Standard deviation from the median absolute value, never below LEAST_SD."""
    return float(max(LEAST_SD, MAD_TO_SD * np.median(np.abs(residual)))) if len(residual) > 0 else LEAST_SD


@compiled
def tukey(residual: FloatArray, width: float) -> FloatArray:
    """Weights (1 − (r/width)²)², zero beyond the width."""
    return np.maximum(1.0 - (residual / width) ** 2, 0.0) ** 2


def usable(closest: Closest, normals: FloatArray) -> BoolArray:
    """Points whose foot lies inside the region and whose surface does not face away."""
    facing = np.einsum("ij,ij->i", closest.gradient, normals)
    return np.asarray((closest.face >= 0) & ~closest.on_boundary & (facing > FACING))


@dataclass(frozen=True)
class Descent:
    """Where a robust descent ended: pose, uniform offset of the surface (mm, outward), sd (mm), and how."""

    scan_from_connection: FloatArray
    offset: float
    sd: float
    converged: bool
    iterations: int


def surprise(offset: float) -> float:
    """−2 log prior of an offset, mm: a layer lies outside; wear is thinner and rare."""
    return (offset / (OFFSET_SD if offset > 0.0 else WORN_SD)) ** 2


def descend(
    tree: SurfaceTree,
    around: Around,
    start: FloatArray,
    which: LongArray,
    first_width: float,
    offset: float = 0.0,
    steps: int = ROUGH_STEPS,
) -> Descent:
    """Robust Gauss–Newton for pose and offset on the points `which` (method, eq. 4).

    The loss is Tukey's, its width falling from `first_width` to TUKEY standard deviations of the inliers. The offset
    is drawn to zero with OFFSET_SD, so that it stays small where the surface seen cannot tell it from a shift.
    """
    pose, sd, width = start, first_width / TUKEY, first_width
    points, normals, area = around.points[which], around.normals[which], around.area[which]
    by_area = area / max(float(np.mean(area)), 1e-12) if len(area) else area
    for iteration in range(steps):
        local = to_connection(pose, points)
        closest = tree.closest_curved(local, min(REACH, abs(offset) + width))
        count, sd_here, normal, right, total = _normal_equations(
            local, normals @ pose[:3, :3], by_area, closest.distance, closest.gradient, closest.face,
            closest.on_boundary, offset, width,
        )  # fmt: skip
        if count < LEAST_POINTS:
            return Descent(pose, offset, sd, False, iteration)
        sd = sd_here
        damped = normal.copy()
        pull = count / EFFECTIVE_SHARE * (sd / OFFSET_SD) ** 2
        damped[6, 6] += pull
        right[6] -= pull * offset
        # A motion that the points do not fix must not run away: a weak pull on the step, not on the answer.
        damped[DIAGONAL] += 1e-3 * (np.trace(normal[:3, :3]) / 3.0) * PULLED
        step: FloatArray = np.asarray(np.linalg.solve(damped, right), dtype=np.float64)
        pose = pose @ rigid.exp(step[:6])
        offset += float(step[6])
        settled = width <= 1.2 * TUKEY * sd
        moved = float(np.sqrt(max(float(step @ normal @ step), 0.0) / total))
        if settled and moved < STEP_DONE:
            return Descent(rigid.orthonormal(pose), offset, sd, True, iteration + 1)
        width = max(TUKEY * sd, 0.6 * width) if width > TUKEY * sd else TUKEY * sd
    return Descent(rigid.orthonormal(pose), offset, sd, False, steps)


@compiled
def _normal_equations(
    points: FloatArray, normals: FloatArray, by_area: FloatArray, distance: FloatArray, gradient: FloatArray,
    face: IntArray, on_boundary: BoolArray, offset: float, width: float,
) -> tuple[int, float, FloatArray, FloatArray, float]:  # fmt: skip
    """Of the usable points within `width` of the surface: how many, the robust sd (mm) of their residuals, Tukey's
    weighted normal matrix (7, 7) and right side (7,) of pose and offset, and the sum of the weights."""
    good = np.empty(len(points), np.int64)
    residual = np.empty(len(points))
    count = 0
    for i in range(len(points)):
        g, m = gradient[i], normals[i]
        if face[i] < 0 or on_boundary[i] or g[0] * m[0] + g[1] * m[1] + g[2] * m[2] <= FACING:
            continue
        if abs(distance[i] - offset) < width:
            good[count], residual[count] = i, distance[i] - offset
            count += 1
    good, residual = good[:count], residual[:count]
    weight = tukey(residual, width) * by_area[good]
    matrix, right, row = np.zeros((7, 7)), np.zeros(7), np.ones(7)
    for c in range(count):
        p, g = points[good[c]], gradient[good[c]]
        row[0], row[1], row[2] = g[0], g[1], g[2]
        row[3], row[4], row[5] = p[1] * g[2] - p[2] * g[1], p[2] * g[0] - p[0] * g[2], p[0] * g[1] - p[1] * g[0]
        for j in range(7):
            right[j] += weight[c] * row[j] * residual[c]
            for k in range(j + 1):
                matrix[j, k] += weight[c] * row[j] * row[k]
    for j in range(7):
        for k in range(j):
            matrix[k, j] = matrix[j, k]
    return count, robust_sd(residual), matrix, right, float(np.sum(weight))


def within_reach(tree: SurfaceTree, around: Around, pose: FloatArray, most: int) -> LongArray:
    """Up to about `most` points spread over those within REACH of the box around the CAD surface at a pose."""
    low, high = tree.box
    near = _in_box(around.points, pose, low - REACH, high + REACH)
    return near[:: max(1, len(near) // most)]


@compiled
def _in_box(points: FloatArray, pose: FloatArray, low: FloatArray, high: FloatArray) -> LongArray:
    """Those of scan points (n, 3) that lie in a box (corners (3,)) of the connection frame."""
    found = np.empty(len(points), np.int64)
    count = 0
    for i in range(len(points)):
        inside = True
        x, y, z = points[i, 0] - pose[0, 3], points[i, 1] - pose[1, 3], points[i, 2] - pose[2, 3]
        for k in range(3):
            at = x * pose[0, k] + y * pose[1, k] + z * pose[2, k]
            inside = inside and low[k] < at < high[k]
        if inside:
            found[count] = i
            count += 1
    return found[:count].copy()


def fit(tree: SurfaceTree, around: Around, start: Descent) -> Fit:
    """Lay the CAD surface on many points from where a descent on few has ended, then see which of all carry it."""
    which = within_reach(tree, around, start.scan_from_connection, FINE_POINTS)
    width = max(0.06, 1.2 * TUKEY * start.sd)
    full = descend(tree, around, start.scan_from_connection, which, width, start.offset, FULL_STEPS)
    near = within_reach(tree, around, full.scan_from_connection, len(around.points))
    closest = tree.closest(to_connection(full.scan_from_connection, around.points[near]), REACH)
    carrying, clear = support(around, full, near, closest)
    return Fit(
        full.scan_from_connection, full.offset, carrying, clear, near, closest, full.sd,
        full.converged or start.converged, full.iterations,
    )  # fmt: skip


def support(around: Around, descent: Descent, which: LongArray, closest: Closest) -> tuple[LongArray, BoolArray]:
    """Points that carry the fit: on the scan region, and away from surface that is not the scan body's.

    which (n,): all within reach, indices into Around; closest: theirs.
    Foreign surface (gingiva, a neighbour, a chip) shows as points beyond OUTSIDE standard deviations whose
    neighbours are mostly beyond too; GUM_MARGIN around it is left out, and what is not CLEAR_MARGIN away is told.
    A lone outlier is left out alone.
    """
    pose, sd = descent.scan_from_connection, descent.sd
    own = usable(closest, around.normals[which] @ pose[:3, :3])
    seen = closest.face >= 0
    off = np.zeros(len(own), np.bool_)
    off[seen] = np.abs(closest.distance[seen] - descent.offset) > OUTSIDE * sd
    good = which[own & ~off]
    foreign = which[seen & off]
    if len(foreign) and len(good):
        beside = Buckets.of(around.points[good], CROWD).count(around.points[foreign], CROWD)
        same = Buckets.of(around.points[foreign], CROWD).count(around.points[foreign], CROWD)
        crowd = foreign[same > 0.5 * beside]
        if len(crowd):
            distance, _ = Buckets.of(around.points[crowd], CLEAR_MARGIN).nearest(around.points[good], CLEAR_MARGIN)
            kept = distance > GUM_MARGIN
            return good[kept], ~np.isfinite(distance[kept])
    return good, np.ones(len(good), np.bool_)
