"""Laying one set of connections on another by least squares (Kabsch 1976; det fixed as in Umeyama 1991)."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from stylobate.core.types import FloatArray

LEVER = 5.0
"""mm up the axis: the second point by which a connection is laid (stable interface, Seat)."""


def landmarks(poses: FloatArray | Sequence[FloatArray]) -> FloatArray:
    """(…, 2n, 3) points of n poses (…, n, 4, 4): the n platform centres, then the n points 5 mm up the axes."""
    stacked = np.asarray(poses)
    centres, axes = stacked[..., :3, 3], stacked[..., :3, 2]
    return np.concatenate([centres, centres + LEVER * axes], axis=-2)


def laid(source: FloatArray, target: FloatArray) -> FloatArray:
    """(…, 4, 4) target_from_source that brings points (…, k, 3) nearest to their partners, all weighted alike.

    Points that leave a turn free (all on one line) get one of the equally good answers.
    """
    middle_s, middle_t = source.mean(axis=-2, keepdims=True), target.mean(axis=-2, keepdims=True)
    spread = np.swapaxes(target - middle_t, -1, -2) @ (source - middle_s)
    u, _, vt = np.linalg.svd(spread)
    u[..., :, 2] *= np.sign(np.linalg.det(u) * np.linalg.det(vt))[..., None]
    rotation = u @ vt
    motion = np.zeros((*rotation.shape[:-2], 4, 4))
    motion[..., :3, :3] = rotation
    motion[..., :3, 3] = (middle_t - middle_s @ np.swapaxes(rotation, -1, -2))[..., 0, :]
    motion[..., 3, 3] = 1.0
    return motion
