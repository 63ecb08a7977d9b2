"""Poses drawn from a joint covariance."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray


def drawn(poses: FloatArray, covariance: FloatArray, normal: FloatArray) -> FloatArray:
    """(draws, n, 4, 4) poses T·exp(ξ) with ξ of this joint covariance (6n, 6n).

    poses (n, 4, 4); normal (draws, 6n): standard normal numbers.
    """
    scale = np.sqrt(np.maximum(np.diag(covariance), 1e-300))
    values, vectors = np.linalg.eigh(covariance / np.outer(scale, scale))
    root = vectors * np.sqrt(np.clip(values, 0.0, None)) @ vectors.T * scale[:, None]
    xi = (normal @ root.T).reshape(len(normal), len(poses), 6)
    return np.asarray(poses @ exp_many(xi))


def exp_many(xi: FloatArray) -> FloatArray:
    """(…, 4, 4) poses exp(ξ) for ξ (…, 6): `core.rigid.exp`, many at once (method/measure, eq. 1)."""
    w = xi[..., 3:]
    angle = np.linalg.norm(w, axis=-1)[..., None, None]
    s = np.zeros((*xi.shape[:-1], 3, 3))
    s[..., 0, 1], s[..., 0, 2], s[..., 1, 2] = -w[..., 2], w[..., 1], -w[..., 0]
    s[..., 1, 0], s[..., 2, 0], s[..., 2, 1] = w[..., 2], -w[..., 1], w[..., 0]
    square = s @ s
    a, half = np.sinc(angle / np.pi), 0.5 * np.sinc(angle / 2 / np.pi) ** 2
    large = np.where(angle > 1e-4, angle, 1.0)
    b = np.where(angle > 1e-4, (1.0 - a) / large**2, 1.0 / 6.0 - angle**2 / 120.0)
    poses = np.zeros((*xi.shape[:-1], 4, 4))
    poses[..., :3, :3] = np.eye(3) + a * s + half * square
    poses[..., :3, 3] = ((np.eye(3) + half * s + b * square) @ xi[..., :3, None])[..., 0]
    poses[..., 3, 3] = 1.0
    return poses
