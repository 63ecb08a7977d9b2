"""A scan body's heights and turns on an axis, searched in full on a grid of signed distances, the best refined."""

from __future__ import annotations

import numpy as np

from stylobate.core.buckets import within
from stylobate.core.jit import compiled
from stylobate.core.normal import factored, solution
from stylobate.core.types import Float32Array, FloatArray, IntArray, LongArray
from stylobate.find.template import GRID_CELL
from stylobate.find.vote import agreement, oriented

LEAST_AREA_SHARE = 0.14  # of the scan region, net, for a place to be a candidate
HEIGHT_STEP, HEIGHT_REACH = 0.25, 3.0
TURNS = 30
TURNS_TRIED = 2  # refined at each height
LEVEL_STEP, TURN_STEP, REFINE_STEP = 4, 4, 2  # every how many points speak: height, turn, refinement
STRONG = 0.35  # of the scan region, net: what lies on a place this good is not tried a third time
BAND = 0.25  # mm: within it a point speaks for a pose
READINGS = 2  # poses kept of one scan body at one place


@compiled
def _taken(
    near: LongArray, count: int, step: int, points: FloatArray, normals: FloatArray, area: FloatArray
) -> FloatArray:
    """(7, k): coordinates of point and normal, and area, of every `step`th of the first `count` numbers of `near`."""
    result = np.empty((7, (count + step - 1) // step))
    for k in range(result.shape[1]):
        j = near[k * step]
        for d in range(3):
            result[d, k] = points[j, d]
            result[3 + d, k] = normals[j, d]
        result[6, k] = area[j]
    return result


@compiled
def _in_grid(
    rotation: FloatArray, shift: FloatArray, seen: FloatArray, grid: IntArray, grid_low: FloatArray, local: FloatArray,
    sample: IntArray,
) -> None:  # fmt: skip
    """Fill in where scan points `seen` (7, n) lie in the post frame, local (3, ≥ n), and the grid's nearest sample
    there, −1 beyond its band."""
    xx, xy, xz = rotation[0, 0], rotation[1, 0], rotation[2, 0]
    yx, yy, yz = rotation[0, 1], rotation[1, 1], rotation[2, 1]
    zx, zy, zz = rotation[0, 2], rotation[1, 2], rotation[2, 2]
    sx, sy, sz = shift[0], shift[1], shift[2]
    gx, gy, gz = grid_low[0], grid_low[1], grid_low[2]
    ends = float(grid.shape[0]), float(grid.shape[1]), float(grid.shape[2])
    wide, deep, per_cell = np.int32(grid.shape[1]), np.int32(grid.shape[2]), 1.0 / GRID_CELL
    for k in range(seen.shape[1]):  # without a branch, for vector instructions
        x, y, z = seen[0, k] - sx, seen[1, k] - sy, seen[2, k] - sz
        px = xx * x + xy * y + xz * z
        py = yx * x + yy * y + yz * z
        pz = zx * x + zy * y + zz * z
        local[0, k], local[1, k], local[2, k] = px, py, pz
        a, b, c = np.floor((px - gx) * per_cell), np.floor((py - gy) * per_cell), np.floor((pz - gz) * per_cell)
        inside = (a >= 0.0) & (b >= 0.0) & (c >= 0.0) & (a < ends[0]) & (b < ends[1]) & (c < ends[2])
        sample[k] = (np.int32(a) * wide + np.int32(b)) * deep + np.int32(c) if inside else np.int32(-1)
    flat = grid.reshape(-1)
    for k in range(seen.shape[1]):
        if sample[k] >= 0:
            sample[k] = flat[np.uint32(sample[k])]


@compiled
def _facing(rotation: FloatArray, nx: float, ny: float, nz: float, sample: FloatArray) -> float:
    """Cosine between a scan normal and a sample's."""
    return float(
        sample[3] * (rotation[0, 0] * nx + rotation[1, 0] * ny + rotation[2, 0] * nz)
        + sample[4] * (rotation[0, 1] * nx + rotation[1, 1] * ny + rotation[2, 1] * nz)
        + sample[5] * (rotation[0, 2] * nx + rotation[1, 2] * ny + rotation[2, 2] * nz)
    )


@compiled
def _grid_score(
    rotation: FloatArray, shift: FloatArray, seen: FloatArray, grid: IntArray, grid_low: FloatArray,
    samples: FloatArray, local: FloatArray, sample: IntArray,
) -> float:  # fmt: skip
    """Net area on the surface: points within BAND count by closeness, points inside the body count against."""
    _in_grid(rotation, shift, seen, grid, grid_low, local, sample)
    total = 0.0
    for k in range(seen.shape[1]):
        if sample[k] < 0:
            continue
        q = samples[np.uint32(sample[k])]
        d = (local[0, k] - q[0]) * q[3] + (local[1, k] - q[1]) * q[4] + (local[2, k] - q[2]) * q[5]
        if abs(d) < BAND:
            dot = _facing(rotation, seen[3, k], seen[4, k], seen[5, k], q)
            if dot > 0.7:
                total += seen[6, k] * (1.0 - (d / BAND) ** 2)
        elif d < 0.0:
            total -= seen[6, k]
    return total


@compiled
def on_surface(
    rotation: FloatArray, shift: FloatArray, points: FloatArray, grid: IntArray, grid_low: FloatArray
) -> LongArray:
    """Numbers of the points (n, 3) that lie within the grid's band of the surface."""
    seen = np.ascontiguousarray(points.T)
    local, sample = np.empty((3, len(points))), np.empty(len(points), np.int32)
    _in_grid(rotation, shift, seen, grid, grid_low, local, sample)
    return np.nonzero(sample >= 0)[0]


@compiled
def _refine(
    rotation: FloatArray, shift: FloatArray, seen: FloatArray, grid: IntArray, grid_low: FloatArray,
    samples: FloatArray, local: FloatArray, sample: IntArray,
) -> None:  # fmt: skip
    """A few robust Gauss–Newton steps on the grid's distances, in place (Tukey weights, width falling to 0.15 mm)."""
    row = np.empty(7)
    for iteration in range(8):
        width = max(0.15, 0.4 * 0.8**iteration)
        square = np.zeros((7, 7))
        _in_grid(rotation, shift, seen, grid, grid_low, local, sample)
        for k in range(seen.shape[1]):
            if sample[k] < 0:
                continue
            q = samples[np.uint32(sample[k])]
            px, py, pz = local[0, k], local[1, k], local[2, k]
            d = (px - q[0]) * q[3] + (py - q[1]) * q[4] + (pz - q[2]) * q[5]
            if abs(d) >= width:
                continue
            dot = _facing(rotation, seen[3, k], seen[4, k], seen[5, k], q)
            if dot < 0.7:
                continue
            w = seen[6, k] * (1.0 - (d / width) ** 2) ** 2
            row[0], row[1], row[2] = q[3], q[4], q[5]
            row[3], row[4], row[5] = py * q[5] - pz * q[4], pz * q[3] - px * q[5], px * q[4] - py * q[3]
            row[6] = d
            for m in range(7):
                for n in range(m + 1):
                    square[m, n] += w * row[m] * row[n]
        damping = 1e-3 * (square[0, 0] + square[1, 1] + square[2, 2]) + 1e-9
        for m in range(6):
            square[m, m] += damping
        factored(square)
        move(rotation, shift, solution(square))


@compiled
def move(rotation: FloatArray, shift: FloatArray, step: FloatArray) -> None:
    """The pose · exp(step (6,)) to first order of the shift, in place; turns by at most 0.3 rad."""
    angle = np.sqrt(step[3] ** 2 + step[4] ** 2 + step[5] ** 2)
    if angle > 0.3:
        step *= 0.3 / angle
        angle = 0.3
    s1 = np.sin(angle) / angle if angle > 1e-9 else 1.0
    s2 = (1.0 - np.cos(angle)) / angle**2 if angle > 1e-9 else 0.5
    x, y, z = step[3], step[4], step[5]
    for d in range(3):
        a, b, c = rotation[d, 0], rotation[d, 1], rotation[d, 2]
        shift[d] += a * step[0] + b * step[1] + c * step[2]
        # Row · (1 + s1·K + s2·K²), with row · K = row × axis (K the matrix of axis × ·).
        u, v, w = b * z - c * y, c * x - a * z, a * y - b * x
        rotation[d, 0] = a + s1 * u + s2 * (v * z - w * y)
        rotation[d, 1] = b + s1 * v + s2 * (w * x - u * z)
        rotation[d, 2] = c + s1 * w + s2 * (u * y - v * x)


@compiled
def places_on(
    axes: FloatArray, feet: FloatArray, radius: float, height_low: float, height_high: float,
    points: FloatArray, normals: FloatArray, area: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    bucket: float, profile: Float32Array, profile_low: float, grid: IntArray, grid_low: FloatArray, samples: FloatArray,
    full_area: float,
) -> tuple[FloatArray, FloatArray]:  # fmt: skip
    """Best READINGS poses for each axis: poses (n, READINGS, 3, 4) scan_from_post and net areas (n, READINGS)."""
    least_area = LEAST_AREA_SHARE * full_area
    flat = profile.reshape(-1, 3)
    last_r, last_z = float(profile.shape[0] - 1), float(profile.shape[1] - 2)
    strong = np.empty((axes.shape[0], 6))
    known = 0
    n = axes.shape[0]
    poses, scores = np.zeros((n, READINGS, 3, 4)), np.zeros((n, READINGS))
    near = np.empty(8192, np.int64)
    local, sample = np.empty((3, len(near))), np.empty(len(near), np.int32)
    heights = int(2 * HEIGHT_REACH / HEIGHT_STEP) + 1
    level = np.empty(heights)
    turns = np.empty(TURNS)
    reach = np.sqrt(radius**2 + (0.5 * (height_high - height_low)) ** 2) + 0.5
    for i in range(n):
        axis = axes[i]
        middle = feet[i] + axis * (0.5 * (height_low + height_high))
        if _times_known(strong[:known], middle, axis) >= 2:
            continue
        count = within(middle, reach + HEIGHT_REACH, points, first, low, shape, bucket, near)
        seen_area = 0.0
        for k in range(count):
            seen_area += area[near[k]]
        every, tests = oriented(near[:count:LEVEL_STEP], points, normals)
        for k in range(heights):
            foot = feet[i] + axis * (k * HEIGHT_STEP - HEIGHT_REACH)
            level[k] = agreement(axis, foot, every, tests, flat, last_r, last_z, profile_low, -1.0)
        side = np.array([1.0, 0.0, 0.0]) if abs(axis[0]) < 0.7 else np.array([0.0, 1.0, 0.0])
        side = side - axis * (axis[0] * side[0] + axis[1] * side[1] + axis[2] * side[2])
        side /= np.sqrt((side**2).sum())
        other = np.array(
            [
                axis[1] * side[2] - axis[2] * side[1],
                axis[2] * side[0] - axis[0] * side[2],
                axis[0] * side[1] - axis[1] * side[0],
            ]
        )
        for _ in range(2):
            k = int(np.argmax(level))
            if level[k] * seen_area < least_area:
                break
            shift0 = feet[i] + axis * (k * HEIGHT_STEP - HEIGHT_REACH)
            level[max(0, k - 2) : k + 3] = -1.0
            middle = shift0 + axis * (0.5 * (height_low + height_high))
            count = within(middle, reach, points, first, low, shape, bucket, near)
            for_turn = _taken(near, count, TURN_STEP, points, normals, area)
            for_refinement = _taken(near, count, REFINE_STEP, points, normals, area)
            all_ = _taken(near, count, 1, points, normals, area)
            rotation = np.empty((3, 3))
            rotation[:, 2] = axis
            for t in range(TURNS):
                c, s = np.cos(2 * np.pi * t / TURNS), np.sin(2 * np.pi * t / TURNS)
                rotation[:, 0] = c * side + s * other
                rotation[:, 1] = -s * side + c * other
                score = _grid_score(rotation, shift0, for_turn, grid, grid_low, samples, local, sample)
                turns[t] = score * TURN_STEP
            for _ in range(TURNS_TRIED):
                t = int(np.argmax(turns))
                if turns[t] <= 0.0:
                    break
                c, s = np.cos(2 * np.pi * t / TURNS), np.sin(2 * np.pi * t / TURNS)
                rotation[:, 0] = c * side + s * other
                rotation[:, 1] = -s * side + c * other
                for m in range(-3, 4):
                    turns[(t + m) % TURNS] = -1.0
                shift = shift0.copy()
                turned = rotation.copy()
                _refine(turned, shift, for_refinement, grid, grid_low, samples, local, sample)
                value = _grid_score(turned, shift, all_, grid, grid_low, samples, local, sample)
                if value <= scores[i, READINGS - 1]:
                    continue
                slot = READINGS - 1
                while slot > 0 and scores[i, slot - 1] < value:
                    scores[i, slot] = scores[i, slot - 1]
                    poses[i, slot] = poses[i, slot - 1]
                    slot -= 1
                scores[i, slot] = value
                poses[i, slot, :, :3] = turned
                poses[i, slot, :, 3] = shift
        if scores[i, 0] > STRONG * full_area:
            for d in range(3):
                strong[known, 3 + d] = poses[i, 0, d, 2]
                strong[known, d] = poses[i, 0, d, 3] + poses[i, 0, d, 2] * (0.5 * (height_low + height_high))
            known += 1
    return poses, scores


@compiled
def _times_known(strong: FloatArray, middle: FloatArray, axis: FloatArray) -> int:
    """How many of the strong places (n, 6: middle, axis) are within 1 mm and 20° of an axis."""
    times = 0
    for k in range(strong.shape[0]):
        away, along = 0.0, 0.0
        for d in range(3):
            away += (strong[k, d] - middle[d]) ** 2
            along += strong[k, 3 + d] * axis[d]
        if away < 1.0 and along > np.cos(np.radians(20.0)):
            times += 1
    return times
