"""95 % bounds from covariances: of a vector's length, of an angle, of pairs of sites.

A length near zero has its own distribution: the bound is a quantile of the length itself, never a linearised one
(JCGM 101:2008, 9.4).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cache

import numpy as np

from stylobate.core import rigid
from stylobate.core.result import Bounds, Pair
from stylobate.core.types import FloatArray

LEVEL = 0.95
NORMAL_95 = 1.959963984540054
DRAWS = 40_000
ANGLES, HEIGHTS = 32, 32  # directions over a quarter circle, and over the height of a half sphere


@cache
def _draws(dimensions: int) -> FloatArray:
    """Fixed standard normal draws (dimensions, DRAWS), in pairs ±, so that a bound is repeatable."""
    half = np.random.default_rng(20261125).standard_normal((DRAWS // 2, dimensions)).T
    return np.concatenate([half, -half], axis=1)


@cache
def _directions(dimensions: int) -> tuple[FloatArray, FloatArray]:
    """Squared components (n, k) of directions spread over the unit sphere in k = 1 to 3 dimensions, and weights (n,).

    Midpoints in the angle (periodic: converges exponentially), Gauss–Legendre nodes in the height.
    """
    if dimensions == 1:
        return np.ones((1, 1)), np.ones(1)
    angle = (np.arange(ANGLES) + 0.5) / ANGLES * np.pi / 2.0
    flat = np.stack([np.cos(angle) ** 2, np.sin(angle) ** 2], axis=1)
    if dimensions == 2:
        return flat, np.full(ANGLES, 1.0 / ANGLES)
    height, weight = np.polynomial.legendre.leggauss(HEIGHTS)
    height, weight = (height + 1.0) / 2.0, weight / 2.0
    around = flat[None] * (1.0 - height[:, None, None] ** 2)
    square = np.concatenate([around, np.broadcast_to(height[:, None, None] ** 2, (HEIGHTS, ANGLES, 1))], axis=2)
    return square.reshape(-1, 3), np.repeat(weight / ANGLES, ANGLES)


_erf = np.frompyfunc(math.erf, 1, 1)


def _zero_of(function: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function is zero between low and high: false position, Illinois variant (Dowell & Jarratt 1971).

    SciPy's would cost 0.2 s to import, a sixth of the time in which a single scan body is to be measured.
    """
    at_low, at_high, side = function(low), function(high), 0
    for _ in range(100):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        value = function(middle)
        if abs(value) < 1e-13 or high - low < 1e-12:
            break
        if value > 0.0:
            high, at_high = middle, value
            at_low, side = (at_low / 2.0, 1) if side == 1 else (at_low, 1)
        else:
            low, at_low = middle, value
            at_high, side = (at_high / 2.0, -1) if side == -1 else (at_high, -1)
    return middle


def _held(values: FloatArray, square: float) -> float:
    """P(Σ λᵢ zᵢ² ≤ square), λ = values (k,), k ≤ 3.

    A standard normal vector has a length, whose square is chi-square with k degrees of freedom, and a direction u that
    is independent of it: P is the mean over u of F_k(square / Σ λᵢ uᵢ²).
    """
    directions, weight = _directions(len(values))
    half = square / np.maximum(directions @ values, 1e-300) / 2.0
    if len(values) == 2:
        return float(weight @ -np.expm1(-half))
    root = np.sqrt(half)
    inside = np.asarray(_erf(root), dtype=np.float64)
    held = inside if len(values) == 1 else inside - 2.0 / np.sqrt(np.pi) * root * np.exp(-half)
    return float(weight @ held)


def length_95(covariance: FloatArray) -> float:
    """Radius that holds a zero-mean normal vector of this covariance (k, k), k ≤ 3, with 95 % probability."""
    values = np.clip(np.linalg.eigvalsh(covariance), 0.0, None)
    most = float(values[-1])
    if most <= 0.0:
        return 0.0
    # Between the longest axis alone and a ball of that radius in all k (JCGM 102:2011: 1.960, 2.795).
    share = _zero_of(lambda square: _held(values / most, square) - LEVEL, 3.8, 7.9)
    return float(np.sqrt(share * most))


def within(covariance: FloatArray, limit: float) -> float:
    """Probability that a zero-mean normal vector of this covariance (k, k), k ≤ 3, is no longer than `limit`."""
    return _held(np.clip(np.linalg.eigvalsh(covariance), 0.0, None), limit**2)


def bounds(covariance: FloatArray, index_order: int) -> Bounds:
    """Bounds of a pose from the covariance (6, 6) of ξ, the turn within ±180°."""
    index = None
    if index_order > 0:
        index = min(float(np.degrees(NORMAL_95 * np.sqrt(covariance[5, 5]))), 180.0)
    return Bounds(
        platform_um=1e3 * length_95(covariance[:3, :3]),
        axis_deg=float(np.degrees(length_95(covariance[3:5, 3:5]))),
        index_deg=index,
    )


def pair(
    names: tuple[str, str],
    poses: tuple[FloatArray, FloatArray],
    covariances: tuple[FloatArray, FloatArray],
    cross: FloatArray | None = None,
) -> Pair:
    """Distance of two platform centres and angle between two axes, with 95 % bounds.

    cross: (6, 6) covariance of ξ of the first site with ξ of the second; without it they are independent.
    """
    one, two = (pose[:3, :3] for pose in poses)
    root, draws = _root_of(covariances, cross), _draws(12)
    between = poses[1][:3, 3] - poses[0][:3, 3]
    distance = float(np.linalg.norm(between))
    tilted = [
        np.stack([-turn[:, 1], turn[:, 0]], axis=1) @ tilts for turn, tilts in ((one, root[3:5]), (two, root[9:11]))
    ]
    moved = np.vstack([two @ root[6:9] - one @ root[:3], *tilted]) @ draws
    moved += np.concatenate([between, one[:, 2], two[:, 2]])[:, None]
    drawn = np.linalg.norm(moved[:3], axis=0)
    angle = axis_angle_deg(poses[0], poses[1])
    a, b, c, d, e, f = moved[3:]  # row by row: several times as fast as np.cross
    sine = np.sqrt((b * f - c * e) ** 2 + (c * d - a * f) ** 2 + (a * e - b * d) ** 2)
    angles = np.degrees(np.arctan2(sine, a * d + b * e + c * f))
    return Pair(
        sites=names,
        distance_mm=distance,
        u95_um=1e3 * float(np.quantile(np.abs(drawn - distance), LEVEL)),
        angle_deg=angle,
        angle_u95_deg=float(np.quantile(np.abs(angles - angle), LEVEL)),
    )


def _root_of(covariances: tuple[FloatArray, FloatArray], cross: FloatArray | None) -> FloatArray:
    """(12, 12) that makes ξ of two sites, one below the other, of standard normal draws (12,)."""
    if cross is not None:
        return _root(np.block([[covariances[0], cross], [cross.T, covariances[1]]]))
    root = np.zeros((12, 12))
    root[:6, :6], root[6:, 6:] = map(_root, covariances)
    return root


def _root(covariance: FloatArray) -> FloatArray:
    values, vectors = np.linalg.eigh(covariance)
    return np.asarray(vectors * np.sqrt(np.clip(values, 0.0, None)))


def axis_angle_deg(one: FloatArray, two: FloatArray) -> float:
    """Angle between the z axes of two poses, degrees; exact near zero."""
    a, b = one[:3, 2], two[:3, 2]
    return float(np.degrees(np.arctan2(np.linalg.norm(np.cross(a, b)), a @ b)))


def turn_between_deg(one: FloatArray, two: FloatArray, index_order: int) -> float:
    """Turn about z from one pose to another, degrees, brought to the nearest equal index mark."""
    turn = float(np.degrees(rigid.turn_of(rigid.inverse(one) @ two)))
    period = 360.0 / index_order if index_order > 0 else 360.0
    return (turn + period / 2) % period - period / 2
