"""Evidence put together by hand: a post with a flat, residuals drawn from a known field."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence, Points, weighed
from stylobate.fit.descend import rows
from stylobate.fit.edges import SHAPES
from stylobate.uncertainty.field import Field, groups_of, patches_of

RADIUS, HEIGHT = 2.0, 6.0
FIELD = Field(0.008, 0.010, 0.6, 1.5)


def post() -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) and normals (n, 3) of a cylinder with a flat and a top."""
    angle, height = np.meshgrid(np.arange(0, 2 * np.pi, 0.09), np.arange(0.3, HEIGHT, 0.18))
    wall = np.stack([RADIUS * np.cos(angle), RADIUS * np.sin(angle), height], axis=-1).reshape(-1, 3)
    normal = wall * [1, 1, 0] / RADIUS
    flat = (wall[:, 0] > 1.5) & (wall[:, 2] > 3.0)
    wall[flat, 0], normal[flat] = 1.5, [1.0, 0.0, 0.0]
    x, y = np.meshgrid(np.arange(-1.8, 1.9, 0.18), np.arange(-1.8, 1.9, 0.18))
    top = np.stack([x, y, np.full_like(x, HEIGHT)], axis=-1).reshape(-1, 3)
    top = top[(np.hypot(top[:, 0], top[:, 1]) < 1.9) & (top[:, 0] < 1.5)]
    return np.concatenate([wall, top]), np.concatenate([normal, np.tile([0.0, 0.0, 1.0], (len(top), 1))])


def evidence(displacement: FloatArray, field: Field = FIELD) -> Evidence:
    """Evidence of points displaced by (n,) mm along the normal, weighed by a field."""
    points, normals = post()
    n = len(points)
    matrix = np.hstack([rows(points, normals), np.ones((n, 1)), np.zeros((n, SHAPES))])
    away, none = np.full(n, np.inf), np.zeros(n)
    group = groups_of(points, normals)
    area, flat = np.full(n, 0.0324), np.zeros(SHAPES)
    return weighed(Points(points, normals, displacement, matrix, area, away, none, none, group, flat), field)


def drawn(count: int, seed: int, field: Field = FIELD) -> FloatArray:
    """(count, n): displacements drawn from a field, point by point."""
    points, normals = post()
    alone = patches_of(points, np.zeros(len(points)), normals, np.arange(len(points)))
    factor = np.linalg.cholesky(field.covariance(alone))
    return np.asarray(np.random.default_rng(seed).normal(size=(count, len(points))) @ factor.T)
