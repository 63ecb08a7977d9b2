"""Rigid motions: 4×4 poses, the exponential map and its inverse.

A pose is named `target_from_source`. The small motion ξ = (tx, ty, tz, rx, ry, rz), mm and radians, is
applied in the source frame: T_true = T_estimate · exp(ξ)  (method, eq. 1).
"""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.types import FloatArray


def skew(v: FloatArray) -> FloatArray:
    """(3, 3) matrix S with S @ w = v × w."""
    x, y, z = v
    return np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])


def rotation_exp(w: FloatArray) -> FloatArray:
    """(3, 3) rotation by the vector w, radians (Rodrigues); exact to rounding near zero."""
    angle = float(np.linalg.norm(w))
    s = skew(w)
    return _ONE + _sinc(angle) * s + 0.5 * _sinc(angle / 2) ** 2 * (s @ s)


_ONE = np.eye(3)


def _sinc(angle: float) -> float:
    """sin(angle) / angle, 1 at zero; NumPy's own takes ten times as long for one number."""
    return float(np.sin(angle)) / angle if angle != 0.0 else 1.0


def rotation_log(rotation: FloatArray) -> FloatArray:
    """(3,) rotation vector, radians, angle in [0, π], by the unit quaternion: accurate near 0 and near π."""
    q = quaternion(rotation)
    vector, scalar = (q[1:], q[0]) if q[0] >= 0 else (-q[1:], -q[0])
    sine = float(np.linalg.norm(vector))
    angle = 2.0 * np.arctan2(sine, scalar)
    return np.asarray(vector * (angle / sine if sine > 1e-150 else 2.0))


def quaternion(rotation: FloatArray) -> FloatArray:
    """(4,) unit quaternion (scalar first) of a rotation: eigenvector of Bar-Itzhack's matrix (2000)."""
    r = rotation
    k = np.array(
        [
            [r[0, 0] + r[1, 1] + r[2, 2], r[2, 1] - r[1, 2], r[0, 2] - r[2, 0], r[1, 0] - r[0, 1]],
            [r[2, 1] - r[1, 2], r[0, 0] - r[1, 1] - r[2, 2], r[1, 0] + r[0, 1], r[2, 0] + r[0, 2]],
            [r[0, 2] - r[2, 0], r[1, 0] + r[0, 1], r[1, 1] - r[0, 0] - r[2, 2], r[2, 1] + r[1, 2]],
            [r[1, 0] - r[0, 1], r[2, 0] + r[0, 2], r[2, 1] + r[1, 2], r[2, 2] - r[0, 0] - r[1, 1]],
        ]
    )
    return np.asarray(np.linalg.eigh(k)[1][:, -1])


def pose(rotation: FloatArray, shift: FloatArray) -> FloatArray:
    """4×4 pose from a rotation (3, 3) and a shift (3,)."""
    matrix = np.eye(4)
    matrix[:3, :3] = rotation
    matrix[:3, 3] = shift
    return matrix


def inverse(target_from_source: FloatArray) -> FloatArray:
    """source_from_target."""
    r = target_from_source[:3, :3]
    return pose(r.T, -r.T @ target_from_source[:3, 3])


ANY_TURN = math.pi / math.sqrt(3.0)
"""rad: standard uncertainty of a turn that is not known at all (rectangular over a full turn)."""


def turn_z(angle: float) -> FloatArray:
    """4×4 turn about +z by `angle`, rad."""
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[c, -s, 0.0, 0.0], [s, c, 0.0, 0.0], [0.0, 0.0, 1.0, 0.0], [0.0, 0.0, 0.0, 1.0]])


def turn_of(motion: FloatArray) -> float:
    """Turn about z of a 4×4 motion, rad."""
    return float(np.arctan2(motion[1, 0] - motion[0, 1], motion[0, 0] + motion[1, 1]))


def exp(xi: FloatArray) -> FloatArray:
    """4×4 pose exp(ξ), ξ = (t, w): full twist, so that exp(ξ)·exp(−ξ) = 1 (method, eq. 1)."""
    w = np.asarray(xi[3:], dtype=np.float64)
    angle = float(np.linalg.norm(w))
    s = skew(w)
    square = s @ s
    sine = _sinc(angle)
    a = 0.5 * _sinc(angle / 2) ** 2
    b = (1.0 - sine) / angle**2 if angle > 1e-4 else 1.0 / 6.0 - angle**2 / 120.0
    return pose(_ONE + sine * s + a * square, (_ONE + a * s + b * square) @ xi[:3])


def exp_about(xi: FloatArray, middle: FloatArray) -> FloatArray:
    """4×4 pose of the small motion ξ about a point (3,): its turn leaves that point where it is."""
    about = pose(np.eye(3), middle)
    return about @ exp(xi) @ inverse(about)


def log(motion: FloatArray) -> FloatArray:
    """(6,) ξ with exp(ξ) = motion, rotation angle below π."""
    w = rotation_log(motion[:3, :3])
    angle = float(np.linalg.norm(w))
    s = skew(w)
    a = 0.5 * _sinc(angle / 2) ** 2
    b = (1.0 - _sinc(angle)) / angle**2 if angle > 1e-4 else 1.0 / 6.0 - angle**2 / 120.0
    v = _ONE + a * s + b * (s @ s)
    return np.concatenate([np.linalg.solve(v, motion[:3, 3]), w])


def orthonormal(target_from_source: FloatArray) -> FloatArray:
    """The nearest poses (…, 4, 4) with a proper orthonormal rotation (polar factor by SVD)."""
    u, _, vt = np.linalg.svd(target_from_source[..., :3, :3])
    u[..., -1] *= np.sign(np.linalg.det(u @ vt))[..., None]
    result = np.zeros(target_from_source.shape)
    result[..., :3, :3] = u @ vt
    result[..., :3, 3] = target_from_source[..., :3, 3]
    result[..., 3, 3] = 1.0
    return result


def adjoint(target_from_source: FloatArray) -> FloatArray:
    """(6, 6) matrix Ad with T·exp(ξ)·T⁻¹ = exp(Ad ξ)."""
    r, t = target_from_source[:3, :3], target_from_source[:3, 3]
    result = np.zeros((6, 6))
    result[:3, :3] = r
    result[3:, 3:] = r
    result[:3, 3:] = skew(t) @ r
    return result
