"""Cones of directions: the smallest one that holds all axes, and whether one path of insertion serves them all.

Everything here is exact: the optimum lies on one, two or three of the given directions, and all such are tried
(method/place, eq. 4 to 6).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from stylobate.core.types import FloatArray

SLACK = 1e-9
"""rad. A direction this far outside a cone is taken for one on its edge: rounding."""
HALVINGS = 60


@dataclass(frozen=True)
class Cone:
    """axis: (3,) unit. radius: half its opening, rad."""

    axis: FloatArray
    radius: float


def unit(vectors: FloatArray) -> FloatArray:
    """The same directions (…, 3) at length 1."""
    return np.asarray(vectors / np.linalg.norm(vectors, axis=-1, keepdims=True))


def angles_between(one: FloatArray, other: FloatArray) -> FloatArray:
    """Angle between directions (…, 3) and (…, 3), broadcast, rad; exact near 0 and near π."""
    sine = np.linalg.norm(np.cross(one, other), axis=-1)
    return np.asarray(np.arctan2(sine, np.sum(one * other, axis=-1)))


def smallest_cone(axes: FloatArray) -> Cone:
    """The smallest cone that holds all directions `axes` (n, 3), n ≥ 1.

    Its edge passes through two axes that span it or through three (eq. 4), so it is the smallest of such that hold all.
    """
    directions = np.unique(unit(np.asarray(axes, dtype=np.float64)), axis=0)
    if len(directions) == 1:
        return Cone(directions[0], 0.0)
    pairs = np.array(list(combinations(range(len(directions)), 2)))
    centres = [directions[pairs[:, 0]] + directions[pairs[:, 1]]]
    triples = np.array(list(combinations(range(len(directions)), 3)))
    if len(triples):
        a, b, c = (directions[triples[:, k]] for k in range(3))
        across = np.cross(b - a, c - a)
        centres += [across, -across]
    candidates = np.concatenate(centres)
    length = np.linalg.norm(candidates, axis=1)
    candidates = candidates[length > 1e-14]
    if not len(candidates):
        return Cone(_any_across(directions[0]), np.pi / 2)
    candidates = unit(candidates)
    reach = [float(angles_between(centre, directions).max()) for centre in candidates]
    best = int(np.argmin(reach))
    return Cone(candidates[best], reach[best])


def _any_across(direction: FloatArray) -> FloatArray:
    """Some unit direction at a right angle to this one."""
    return unit(np.cross(direction, np.eye(3)[int(np.argmin(np.abs(direction)))]))


@dataclass(frozen=True)
class Path:
    """The best path of insertion for a rigid frame over several seats.

    direction: (3,) unit, along which the frame leaves. margin: rad, by how much the narrowest cone holds it; negative
    where there is no common path.
    """

    direction: FloatArray
    margin: float


def best_path(axes: FloatArray, half_angles: FloatArray) -> Path:
    """The direction deepest inside all cones of `half_angles` (n,), rad, about `axes` (n, 3).

    margin = max over d of min over i of (half_angle_i − ∠(d, axis_i)): by halving, since caps grown by the same angle
    either share a point or do not (eq. 5). Equal half-angles a give a − the radius of the smallest cone.
    """
    axes = unit(np.asarray(axes, dtype=np.float64))
    cone = smallest_cone(axes)
    low = float(np.min(half_angles)) - cone.radius - SLACK
    high = float(np.min(half_angles))
    direction = cone.axis
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        found = common_direction(axes, half_angles - middle)
        if found is None:
            high = middle
        else:
            low, direction = middle, found
    return Path(direction, float(np.min(half_angles - angles_between(direction, axes))))


def common_direction(axes: FloatArray, radii: FloatArray) -> FloatArray | None:
    """A direction within `radii` (n,), rad, of every one of `axes` (n, 3); None where there is none.

    A non-empty intersection of caps holds the centre of one of them or a point where two edges cross.
    """
    if np.any(radii < 0.0):
        return None
    candidates = corners(axes, radii)
    held = np.all(angles_between(candidates[:, None], axes[None]) <= radii + SLACK, axis=1)
    return np.asarray(candidates[int(np.argmax(held))]) if held.any() else None


def corners(axes: FloatArray, radii: FloatArray) -> FloatArray:
    """(m, 3): the centres of caps on the sphere and every point where the edges of two of them cross (eq. 6)."""
    n = len(axes)
    if n < 2:
        return axes
    one, two = np.triu_indices(n, 1)
    a, b = axes[one], axes[two]
    along = np.sum(a * b, axis=1)
    across = np.cross(a, b)
    square = np.sum(across**2, axis=1)
    apart = square > 1e-24
    one, two, a, b = one[apart], two[apart], a[apart], b[apart]
    along, across, square = along[apart], across[apart], square[apart]
    ca, cb = np.cos(radii[one]), np.cos(radii[two])
    flat = ((ca - cb * along) / square)[:, None] * a + ((cb - ca * along) / square)[:, None] * b
    rest = (1.0 - np.sum(flat**2, axis=1)) / square
    crossing = rest >= -SLACK
    lift = np.sqrt(np.clip(rest[crossing], 0.0, None))[:, None] * across[crossing]
    points = np.concatenate([flat[crossing] + lift, flat[crossing] - lift])
    return np.concatenate([axes, unit(points)]) if len(points) else axes
