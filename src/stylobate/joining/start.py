"""Where one scan lies in another, roughly and with no guess to begin with (method/join, eqs. 1–3).

Spin images (Johnson & Hebert 1999, IEEE Trans. Pattern Anal. Mach. Intell. 21:433) name places that look alike; two
such pairs of oriented points make a pose, and the poses on which most pairs agree are refined on the surface.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.buckets import Buckets, within
from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray
from stylobate.joining.thin import Points, thinned

SPACING = 0.7
"""mm between the points that are compared."""
REACH = 5.0
"""mm around a point that its spin image shows: about a tooth."""
RADIAL, HEIGHTS = 8, 12
PARTNERS = 3
MOST_KEYS = 1800
TRIALS = 1_000_000
AGREE = 1.2
"""mm within which a pair agrees with a pose."""
KEPT = 40
SAME_MM, SAME_RAD = 1.0, 0.05
"""Poses that differ by less over the scan are one."""


@dataclass(frozen=True)
class Start:
    """A rough pose. first_from_second: (4, 4). support: points of the second scan that lie on the first, alike."""

    first_from_second: FloatArray
    support: int


def starts(first: Points, second: Points) -> list[Start]:
    """Poses worth refining, best first; none where nothing looks alike. Same input, same answer."""
    a, b = thinned(first, SPACING), thinned(second, SPACING)
    if min(len(a.at), len(b.at)) < 50:
        return []
    pairs = _pairs(a, b)
    poses = _agreed(a, b, pairs)
    tree = Buckets.of(a.at, SPACING)
    found = [_refined(a, b, tree, pose) for pose in poses]
    found.sort(key=lambda start: -start.support)
    middle = b.at.mean(axis=0)
    distinct: list[Start] = []
    for start in found:
        if not any(same(start.first_from_second, other.first_from_second, middle) for other in distinct):
            distinct.append(start)
    return distinct


def same(one: FloatArray, two: FloatArray, middle: FloatArray) -> bool:
    """Whether two poses put what lies about `middle` to the same place."""
    motion = rigid.inverse(one) @ two
    shift = motion[:3, :3] @ middle + motion[:3, 3] - middle
    return bool(np.linalg.norm(shift) < SAME_MM and np.linalg.norm(rigid.rotation_log(motion[:3, :3])) < SAME_RAD)


def _pairs(a: Points, b: Points) -> IntArray:
    """(k, 2) numbers of points of a and b that look alike: for the most telling points of b, the nearest of a."""
    looks_a, looks_b = _spins(a), _spins(b)
    telling = np.linalg.norm(looks_b - np.concatenate([looks_a, looks_b]).mean(axis=0), axis=1)
    keys = np.argsort(-telling, kind="stable")[: min(MOST_KEYS, len(telling) // 2 + 1)]
    found = []
    for start in range(0, len(keys), 256):
        part = keys[start : start + 256]
        alike = looks_b[part] @ looks_a.T
        best = np.argpartition(-alike, PARTNERS, axis=1)[:, :PARTNERS]
        found.append(np.stack([best.ravel(), np.repeat(part, PARTNERS)], axis=1))
    return np.concatenate(found).astype(np.int32)


def _spins(points: Points) -> FloatArray:
    tree = Buckets.of(points.at, REACH / 2.0)
    images = np.zeros((len(points.at), RADIAL * HEIGHTS))
    _fill(points.at, points.normals, points.normals[tree.order], tree.points, tree.first, tree.low, tree.shape,
          tree.side, images)  # fmt: skip
    images = np.sqrt(images)
    return np.asarray(images / np.maximum(np.linalg.norm(images, axis=1, keepdims=True), 1e-12))


@compiled
def _fill(
    at: FloatArray, normals: FloatArray, others: FloatArray, points: FloatArray, first: LongArray, low: FloatArray,
    shape: LongArray, side: float, images: FloatArray,
) -> None:  # fmt: skip
    """Histogram of each point's surroundings by distance from its normal's line and height along it, bilinear."""
    found = np.empty(points.shape[0], np.int64)
    for i in range(at.shape[0]):
        for j in range(within(at[i], REACH, points, first, low, shape, side, found)):
            k = found[j]
            height, square, facing = 0.0, 0.0, 0.0
            for d in range(3):
                v = points[k, d] - at[i, d]
                height += v * normals[i, d]
                square += v * v
                facing += normals[i, d] * others[k, d]
            if facing < -0.5:
                continue
            u = np.sqrt(max(square - height * height, 0.0)) / REACH * RADIAL - 0.5
            v = (height / REACH + 1.0) / 2.0 * HEIGHTS - 0.5
            u0, v0 = int(np.floor(u)), int(np.floor(v))
            for du in range(2):
                for dv in range(2):
                    x, y = u0 + du, v0 + dv
                    if 0 <= x < RADIAL and 0 <= y < HEIGHTS:
                        images[i, x * HEIGHTS + y] += (1.0 - abs(u - x)) * (1.0 - abs(v - y))


def _agreed(a: Points, b: Points, pairs: IntArray) -> list[FloatArray]:
    """Distinct poses by how many pairs agree with them, best first, at most KEPT."""
    p, n, q, m = a.at[pairs[:, 0]], a.normals[pairs[:, 0]], b.at[pairs[:, 1]], b.normals[pairs[:, 1]]
    count, poses = _vote(p, n, q, m, TRIALS, 4 * KEPT)
    middle = b.at.mean(axis=0)
    kept: list[FloatArray] = []
    for k in np.argsort(-count, kind="stable"):
        if count[k] > 0 and not any(same(poses[k], other, middle) for other in kept):
            kept.append(poses[k])
    return kept[:KEPT]


@compiled
def _axes(start: FloatArray, end: FloatArray, normal: FloatArray, axes: FloatArray) -> None:
    """Rows: along the line, the normals' mean made square to it, and across both."""
    length, lean = 0.0, 0.0
    for d in range(3):
        axes[0, d] = end[d] - start[d]
        length += axes[0, d] ** 2
    for d in range(3):
        axes[0, d] /= np.sqrt(length)
        lean += normal[d] * axes[0, d]
    length = 0.0
    for d in range(3):
        axes[1, d] = normal[d] - lean * axes[0, d]
        length += axes[1, d] ** 2
    for d in range(3):
        axes[1, d] /= np.sqrt(max(length, 1e-12))
    for d in range(3):
        axes[2, d] = axes[0, (d + 1) % 3] * axes[1, (d + 2) % 3] - axes[0, (d + 2) % 3] * axes[1, (d + 1) % 3]


@compiled
def _vote(
    p: FloatArray, n: FloatArray, q: FloatArray, m: FloatArray, trials: int, keep: int
) -> tuple[LongArray, FloatArray]:
    """Poses p ← q from two pairs each, and how many pairs agree with them; the `keep` best, each far from the last."""
    count = np.zeros(keep, np.int64)
    poses = np.zeros((keep, 4, 4))
    size = p.shape[0]
    step = max(1, size // 900)
    state = np.uint64(88172645463325252)
    fp, fq, turn, shift = np.empty((3, 3)), np.empty((3, 3)), np.empty((3, 3)), np.empty(3)
    for _ in range(trials):
        state ^= state << np.uint64(13)
        state ^= state >> np.uint64(7)
        state ^= state << np.uint64(17)
        i = int(state % np.uint64(size))
        j = int((state >> np.uint64(32)) % np.uint64(size))
        dp, dq, np_, nq, ip, iq, jp, jq = 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
        for d in range(3):
            u, v = p[j, d] - p[i, d], q[j, d] - q[i, d]
            dp += u * u
            dq += v * v
            np_ += n[i, d] * n[j, d]
            nq += m[i, d] * m[j, d]
            ip += u * n[i, d]
            iq += v * m[i, d]
            jp += u * n[j, d]
            jq += v * m[j, d]
        dp, dq = np.sqrt(dp), np.sqrt(dq)
        if dp < 6.0 or abs(dp - dq) > 0.8 or abs(np_ - nq) > 0.3:
            continue
        if abs(ip - iq) > 0.3 * dp or abs(jp - jq) > 0.3 * dp:
            continue
        if ip * ip > 0.8 * dp * dp and jp * jp > 0.8 * dp * dp:
            continue
        _axes(p[i], p[j], n[i] + n[j], fp)
        _axes(q[i], q[j], m[i] + m[j], fq)
        for x in range(3):
            for y in range(3):
                turn[x, y] = fp[0, x] * fq[0, y] + fp[1, x] * fq[1, y] + fp[2, x] * fq[2, y]
        for x in range(3):
            shift[x] = (p[i, x] + p[j, x]) / 2.0
            for y in range(3):
                shift[x] -= turn[x, y] * (q[i, y] + q[j, y]) / 2.0
        agree = 0
        for k in range(0, size, step):
            off = 0.0
            for x in range(3):
                v = shift[x] - p[k, x]
                for y in range(3):
                    v += turn[x, y] * q[k, y]
                off += v * v
            if off < AGREE * AGREE:
                agree += 1
        least = 0
        near = -1
        for k in range(keep):
            if count[k] < count[least]:
                least = k
            if count[k] > 0:
                apart, trace = 0.0, 0.0
                for x in range(3):
                    v = poses[k, x, 3] - shift[x]
                    for y in range(3):
                        v += (poses[k, x, y] - turn[x, y]) * (q[i, y] + q[j, y]) / 2.0
                        trace += poses[k, x, y] * turn[x, y]
                    apart += v * v
                if apart < 1.0 and trace > 2.99:
                    near = k
        at = near if near >= 0 else least
        if agree > count[at]:
            count[at] = agree
            poses[at, :3, :3] = turn
            poses[at, :3, 3] = shift
            poses[at, 3, 3] = 1.0
    return count, poses


def _refined(a: Points, b: Points, tree: Buckets, pose: FloatArray) -> Start:
    """Point to plane on the thinned points, the reach shrinking; with how many points then lie on the surface."""
    reach = 2.5
    for _ in range(14):
        moved, gap, normals, fine = _against(a, b, tree, pose, reach)
        if fine.sum() < 30:
            return Start(pose, 0)
        weight = fine / (1.0 + (gap / (0.3 * reach)) ** 2) ** 2
        middle = moved.at[fine].mean(axis=0)
        jacobian = np.concatenate([normals, np.cross(moved.at - middle, normals)], axis=1)
        normal = (jacobian * weight[:, None]).T @ jacobian + 1e-6 * np.eye(6)
        step: FloatArray = -np.linalg.solve(normal, (jacobian * weight[:, None]).T @ gap)
        pose = rigid.exp_about(step, middle) @ pose
        reach = max(0.75, 0.8 * reach)
    _, gap, _, fine = _against(a, b, tree, pose, 0.75)
    return Start(rigid.orthonormal(pose), int((fine & (np.abs(gap) < 0.12)).sum()))


def _against(
    a: Points, b: Points, tree: Buckets, pose: FloatArray, reach: float
) -> tuple[Points, FloatArray, FloatArray, BoolArray]:
    """b moved, its gaps (n,) along the normals (n, 3) of the nearest points of a, and which have one."""
    moved = b.moved(pose)
    _, index = tree.nearest(moved.at, reach)
    fine = index >= 0
    at, normals = a.at[index], a.normals[index]
    fine = fine & (np.einsum("ij,ij->i", normals, moved.normals) > 0.6)
    gap = np.where(fine, np.einsum("ij,ij->i", normals, moved.at - at), 0.0)
    return moved, gap, normals, fine
