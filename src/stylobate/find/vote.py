"""Pairs of oriented scan points name the axes that a scan body allows; the neighbourhood accepts or rejects them.

After Papazov & Burschka (2010, ACCV, "An efficient RANSAC for 3D object recognition in noisy and occluded scenes"),
with the turn about the post's axis left out: it is searched later, in full.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.buckets import within
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, Float32Array, FloatArray, LongArray
from stylobate.find.template import PAIR_FAR, PAIR_NEAR, PROFILE_BAND, PROFILE_CELL, Template, pair_key
from stylobate.find.thin import Thinned

MAX_SEEDS = 4000
PARTNERS = 4
TESTS = 48
TEST_RADIUS = 4.0  # mm around a seed in which its test points lie
NEAR = 0.22  # mm: a test point this near the profile, with its normal, speaks for an axis
KEPT = 2  # axes kept for a seed and part
LANES = 8  # test points looked at together
NOWHERE = np.float32(1e6)  # mm: where points that only fill up lie


@dataclass(frozen=True)
class Seeds:
    """Seed points of a scan with their partners (s, PARTNERS) and test points (s, TESTS); −1 where there are fewer."""

    index: LongArray
    partners: LongArray
    tests: LongArray


@dataclass(frozen=True)
class Axes:
    """Axes: score (n,) share of test points that agree; axis (n, 3) unit; foot (n, 3) post origin; seed (n,)."""

    score: FloatArray
    axis: FloatArray
    foot: FloatArray
    seed: LongArray


@compiled
def _gather(
    seeds: LongArray, points: FloatArray, normals: FloatArray, first: LongArray, low: FloatArray, shape: LongArray,
    bucket: float, usable: BoolArray,
) -> tuple[LongArray, LongArray]:  # fmt: skip
    partners = np.full((seeds.shape[0], PARTNERS), -1, np.int64)
    tests = np.full((seeds.shape[0], TESTS), -1, np.int64)
    found = np.empty(4096, np.int64)
    state = np.uint64(88172645463325252)
    for s in range(seeds.shape[0]):
        i = seeds[s]
        count = within(points[i], TEST_RADIUS, points, first, low, shape, bucket, found)
        for k in range(count):  # a repeatable shuffle
            state ^= state << np.uint64(13)
            state ^= state >> np.uint64(7)
            state ^= state << np.uint64(17)
            j = k + np.int64(state % np.uint64(count - k))
            found[k], found[j] = found[j], found[k]
        have = 0
        for k in range(min(count, TESTS)):
            tests[s, k] = found[k]
        for k in range(count):
            j = found[k]
            d = np.sqrt(
                (points[j, 0] - points[i, 0]) ** 2
                + (points[j, 1] - points[i, 1]) ** 2
                + (points[j, 2] - points[i, 2]) ** 2
            )
            dot = normals[i, 0] * normals[j, 0] + normals[i, 1] * normals[j, 1] + normals[i, 2] * normals[j, 2]
            if not usable[j] or d < PAIR_NEAR or d >= PAIR_FAR or abs(dot) > 0.93:
                continue
            partners[s, have] = j
            have += 1
            if have == PARTNERS:
                break
    return partners, tests


@compiled
def oriented(index: LongArray, points: FloatArray, normals: FloatArray) -> tuple[Float32Array, int]:
    """(6, k): the coordinates of points and normals of the numbers `index`, up to the first negative one, and how many.

    Filled up to whole LANES by points that are near nothing. In single precision, of which vector instructions take
    twice as many at once: a vote is about tenths of a millimetre.
    """
    count = 0
    while count < index.shape[0] and index[count] >= 0:
        count += 1
    result = np.full((6, (count + LANES - 1) // LANES * LANES), NOWHERE, np.float32)
    for k in range(count):
        for d in range(3):
            result[d, k] = points[index[k], d]
            result[3 + d, k] = normals[index[k], d]
    return result, count


@compiled
def agreement(
    axis: FloatArray, foot: FloatArray, tests: Float32Array, count: int, profile: Float32Array, last_r: float,
    last_z: float, profile_low: float, beyond: float,
) -> float:  # fmt: skip
    """Share of the test points (`oriented`) that lie on the profile, less those that lie inside the body.

    profile (cells, 3): of a template, its first two axes as one; last_r, last_z: as many cells as they have without
    their border. beyond: what is asked for; as soon as no more can be reached, or is likely to be, the answer is 0.
    Negative: all.
    """
    ax, ay, az = np.float32(axis[0]), np.float32(axis[1]), np.float32(axis[2])
    fx, fy, fz = np.float32(foot[0]), np.float32(foot[1]), np.float32(foot[2])
    r_end, z_end, low = np.float32(last_r), np.float32(last_z), np.float32(profile_low)
    near, inside = 0, 0
    for start in range(0, count, LANES):
        on, under, early = _tally(ax, ay, az, fx, fy, fz, tests, start, profile, r_end, z_end, low)
        near, inside = near + on, inside + under
        if beyond >= 0.0 and (
            near - inside + max(0, count - start - LANES) <= beyond * count
            or (start == 0 and ((count > 4 and early < 1) or (count > 7 and near < 2)))
            or (start == 8 and count > 15 and near < 4)
            or (start == 16 and count > 23 and near < 6)
        ):
            return 0.0
    return float((near - inside) / max(count, 1))


@compiled
def _tally(
    ax: np.float32, ay: np.float32, az: np.float32, fx: np.float32, fy: np.float32, fz: np.float32,
    tests: Float32Array, start: int, profile: Float32Array, last_r: np.float32, last_z: np.float32,
    profile_low: np.float32,
) -> tuple[int, int, int]:  # fmt: skip
    """Of LANES test points: on the profile, inside the body, and how many of the first five are on the profile.

    Without a branch, so that all of them go through vector instructions together.
    """
    near, inside, early = np.int32(0), np.int32(0), np.int32(0)
    per_cell, none, border = np.float32(1.0 / PROFILE_CELL), np.float32(1e-9), np.float32(-1.0)
    reach, asked, wide = np.float32(NEAR), np.float32(0.85), np.int32(last_z + np.float32(2.0))
    for lane in range(LANES):
        k = np.uint32(start) + np.uint32(lane)
        vx, vy, vz = tests[0, k] - fx, tests[1, k] - fy, tests[2, k] - fz
        z = vx * ax + vy * ay + vz * az
        wx, wy, wz = vx - z * ax, vy - z * ay, vz - z * az
        r = np.sqrt(wx * wx + wy * wy + wz * wz)
        radial = tests[3, k] * wx + tests[4, k] * wy + tests[5, k] * wz
        axial = tests[3, k] * ax + tests[4, k] * ay + tests[5, k] * az
        kr = np.int32(min(r * per_cell, last_r))
        kz = np.int32(min(max(np.floor((z - profile_low) * per_cell), border), last_z))
        cell = np.uint32(kr * wide + kz + np.int32(1))
        d = profile[cell, 0]
        on = (abs(d) < reach) & (radial * profile[cell, 1] > (asked - axial * profile[cell, 2]) * max(r, none))
        near += np.int32(on)
        early += np.int32(on & (lane < 5))
        inside += np.int32(d < -reach)
    return int(near), int(inside), int(early)


@compiled
def _vote(
    seeds: LongArray, partners: LongArray, tests: LongArray, points: FloatArray, normals: FloatArray,
    key_first: LongArray, entries: Float32Array, profile: Float32Array, profile_low: float, least: float,
) -> tuple[FloatArray, FloatArray, LongArray]:  # fmt: skip
    flat = profile.reshape(-1, 3)
    last_r, last_z = float(profile.shape[0] - 1), float(profile.shape[1] - 2)
    score = np.zeros((seeds.shape[0], KEPT))
    poses = np.zeros((seeds.shape[0], KEPT, 6))
    axis, foot = np.empty(3), np.empty(3)
    for s in range(seeds.shape[0]):
        p, m = points[seeds[s]], normals[seeds[s]]
        around, count = oriented(tests[s], points, normals)
        for k in range(PARTNERS):
            j = partners[s, k]
            if j < 0:
                break
            dx, dy, dz = points[j, 0] - p[0], points[j, 1] - p[1], points[j, 2] - p[2]
            d = np.sqrt(dx * dx + dy * dy + dz * dz)
            dx, dy, dz = dx / d, dy / d, dz / d
            along1 = m[0] * dx + m[1] * dy + m[2] * dz
            along2 = normals[j, 0] * dx + normals[j, 1] * dy + normals[j, 2] * dz
            between = m[0] * normals[j, 0] + m[1] * normals[j, 1] + m[2] * normals[j, 2]
            ex, ey, ez = dx - along1 * m[0], dy - along1 * m[1], dz - along1 * m[2]
            length = np.sqrt(ex * ex + ey * ey + ez * ez)
            if length < 0.2:
                continue
            ex, ey, ez = ex / length, ey / length, ez / length
            fx, fy, fz = m[1] * ez - m[2] * ey, m[2] * ex - m[0] * ez, m[0] * ey - m[1] * ex
            side = normals[j, 0] * fx + normals[j, 1] * fy + normals[j, 2] * fz
            key = pair_key(d, along1, along2, between, side > 0.0)
            for e in range(key_first[key], key_first[key + 1]):
                a, b, c = entries[e, 0], entries[e, 1], entries[e, 2]
                axis[0], axis[1], axis[2] = (
                    a * m[0] + b * ex + c * fx,
                    a * m[1] + b * ey + c * fy,
                    a * m[2] + b * ez + c * fz,
                )
                a, b, c = entries[e, 3], entries[e, 4], entries[e, 5]
                foot[0] = p[0] + a * m[0] + b * ex + c * fx
                foot[1] = p[1] + a * m[1] + b * ey + c * fy
                foot[2] = p[2] + a * m[2] + b * ez + c * fz
                beyond = max(score[s, KEPT - 1], np.nextafter(least, 0.0))
                value = agreement(axis, foot, around, count, flat, last_r, last_z, profile_low, beyond)
                if value <= beyond:
                    continue
                slot = KEPT - 1
                while slot > 0 and score[s, slot - 1] < value:
                    score[s, slot] = score[s, slot - 1]
                    poses[s, slot] = poses[s, slot - 1]
                    slot -= 1
                score[s, slot] = value
                poses[s, slot, :3] = axis
                poses[s, slot, 3:] = foot
    found = np.nonzero(score.ravel() > 0.0)[0]
    return score.ravel()[found], poses.reshape(-1, 6)[found], seeds[found // KEPT]


def seeds_of(thinned: Thinned) -> Seeds:
    """Seeds spread over the scan, with partners and test points drawn around each."""
    usable = thinned.flat > 0.9
    candidates = np.nonzero(usable)[0]
    step = max(1, -(-len(candidates) // MAX_SEEDS))
    index = np.ascontiguousarray(candidates[::step])
    near = thinned.buckets
    partners, tests = _gather(index, near.points, thinned.normals, near.first, near.low, near.shape, near.side, usable)
    return Seeds(index, partners, tests)


def vote(seeds: Seeds, thinned: Thinned, template: Template, least: float) -> Axes:
    """Axes on which a scan body of this template could stand, at most KEPT a seed, agreeing with a share ≥ least."""
    score, poses, seed = _vote(
        seeds.index, seeds.partners, seeds.tests, thinned.buckets.points, thinned.normals, template.first,
        template.entries, template.profile, template.height_low - PROFILE_BAND, least,
    )  # fmt: skip
    return Axes(score, np.ascontiguousarray(poses[:, :3]), np.ascontiguousarray(poses[:, 3:]), seed)
