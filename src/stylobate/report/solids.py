"""Thin rods and discs that pictures are marked with."""

from __future__ import annotations

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

ROD_RADIUS = 0.18
"""mm."""
SIDES = 12
DISC_SIDES = 64


def rod(origin: FloatArray, direction: FloatArray, length: float) -> Surface:
    """A thin straight rod from `origin` (3,) along unit `direction` (3,), `length` mm."""
    one = np.cross(direction, np.eye(3)[int(np.argmin(np.abs(direction)))])
    one /= np.linalg.norm(one)
    angle = np.arange(SIDES) * 2.0 * np.pi / SIDES
    ring = ROD_RADIUS * (np.outer(np.cos(angle), one) + np.outer(np.sin(angle), np.cross(direction, one)))
    vertices = np.concatenate([origin + ring, origin + length * direction + ring])
    k, after = np.arange(SIDES), (np.arange(SIDES) + 1) % SIDES
    upper = np.column_stack([k, after, after + SIDES])
    return Surface(vertices, np.concatenate([upper, np.column_stack([k, after + SIDES, k + SIDES])]).astype(np.int32))


def disc(radius: float) -> Surface:
    """A flat disc about the origin, facing +z."""
    angle = np.arange(DISC_SIDES) * 2.0 * np.pi / DISC_SIDES
    ring = np.column_stack([radius * np.cos(angle), radius * np.sin(angle), np.zeros(DISC_SIDES)])
    k = np.arange(DISC_SIDES)
    faces = np.column_stack([k, (k + 1) % DISC_SIDES, np.full(DISC_SIDES, DISC_SIDES)])
    return Surface(np.concatenate([ring, np.zeros((1, 3))]), faces.astype(np.int32))
