"""Planes, cylinders, cones and spheres through points: orthogonal distances, least squares or robust.

Distances and their derivatives after Shakarji (1998), J. Res. NIST 103:633. Robust fits are least squares repeated with
Tukey's weights, so that chamfers, fillets and stray points do not count.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.errors import FitError
from stylobate.core.types import FloatArray

STEPS = 200
TUKEY = 4.685
"""In robust standard deviations: 95 % efficient for normal noise (Huber & Ronchetti, Robust Statistics, 2009)."""
LEAST_SD = 1e-4
"""mm. CAD has no noise; below this a deviation is rounding of the file."""
ROUNDS = 30
"""Reweightings at most."""


@dataclass(frozen=True)
class Feature:
    """A fitted feature. kind: plane, cylinder, cone or sphere.

    point: (3,) on the plane, on the axis nearest to the middle of the points, or the centre. direction: (3,) unit,
    normal or axis (zeros for a sphere); of a cone the side to which it widens. radius: at `point`, mm, 0 for a plane.
    half_angle: of a cone, rad. weights: (n,), 0 for points that do not count. rms: mm, of those that do.
    """

    kind: str
    point: FloatArray
    direction: FloatArray
    radius: float
    half_angle: float
    weights: FloatArray
    rms: float

    def distances(self, points: FloatArray) -> FloatArray:
        """Signed distances (n,) of points (n, 3), mm; positive outside, for a plane on the side of its direction."""
        return _residuals(self, points)[0]


def fit_plane(points: FloatArray, weights: FloatArray | None = None, robust: bool = False) -> Feature:
    """Plane through points (n, 3). Raises FitError where they lie on a line."""
    return _fitted("plane", points, weights, np.array([0.0, 0.0, 1.0]), robust)


def fit_cylinder(
    points: FloatArray, axis: FloatArray, weights: FloatArray | None = None, robust: bool = False
) -> Feature:  # fmt: skip
    """Cylinder through points (n, 3), from a rough `axis` (3,). Raises FitError."""
    return _fitted("cylinder", points, weights, axis, robust)


def fit_cone(
    points: FloatArray, axis: FloatArray, weights: FloatArray | None = None, robust: bool = False
) -> Feature:  # fmt: skip
    """Cone through points (n, 3), from a rough `axis` (3,). Raises FitError."""
    return _fitted("cone", points, weights, axis, robust)


def fit_sphere(points: FloatArray, weights: FloatArray | None = None, robust: bool = False) -> Feature:
    """Sphere through points (n, 3). Raises FitError."""
    return _fitted("sphere", points, weights, np.zeros(3), robust)


LEAST_POINTS = {"plane": 3, "cylinder": 5, "cone": 6, "sphere": 4}


def _fitted(kind: str, points: FloatArray, weights: FloatArray | None, axis: FloatArray, robust: bool) -> Feature:
    if len(points) < LEAST_POINTS[kind]:
        raise FitError(f"a {kind} needs {LEAST_POINTS[kind]} points; there are {len(points)}")
    given = np.ones(len(points)) if weights is None else np.asarray(weights, np.float64)
    middle = np.average(points, axis=0, weights=given)
    local = points - middle
    found = _solve(_start(kind, local, given, axis), local, given)
    for _ in range(ROUNDS if robust else 0):
        away = _residuals(found, local)[0]
        sd = max(1.4826 * _median(np.abs(away), given), LEAST_SD)
        tukey = np.clip(1.0 - (away / (TUKEY * sd)) ** 2, 0.0, None) ** 2
        before, found = found, _solve(found, local, given * tukey)
        if np.abs(_residuals(before, local)[0] - away).max() == 0.0 and np.allclose(
            found.point, before.point, 0, 1e-12
        ):
            break
    return replace(_tidied(found, local), point=_tidied(found, local).point + middle)


def _median(values: FloatArray, weights: FloatArray) -> float:
    order = np.argsort(values)
    share = np.cumsum(weights[order])
    return float(values[order][np.searchsorted(share, share[-1] / 2.0)])


def _start(kind: str, local: FloatArray, weights: FloatArray, axis: FloatArray) -> Feature:
    spread = (local * weights[:, None]).T @ local / weights.sum()
    values, vectors = np.linalg.eigh(spread)
    zero = np.zeros(3)
    if kind == "plane":
        if values[1] < 1e-18 * max(values[2], 1e-300) or values[2] == 0.0:
            raise FitError("a plane needs points that do not lie on one line")
        return Feature(kind, zero, vectors[:, 0], 0.0, 0.0, weights, 0.0)
    if kind == "sphere":
        centre, radius = _circle(local, weights)
        return Feature(kind, centre, zero, radius, 0.0, weights, 0.0)
    axis = axis / np.linalg.norm(axis)
    u, v = _across(axis)
    flat, radius = _circle(np.column_stack([local @ u, local @ v]), weights)
    point = flat[0] * u + flat[1] * v
    height, reach = (
        (local - point) @ axis,
        np.linalg.norm(local - point - np.outer((local - point) @ axis, axis), axis=1),
    )
    slope = np.polyfit(height, reach, 1, w=np.sqrt(weights))[0] if kind == "cone" else 0.0
    return Feature(kind, point, axis, radius, float(np.arctan(slope)), weights, 0.0)


def _circle(points: FloatArray, weights: FloatArray) -> tuple[FloatArray, float]:
    """Centre and radius of a circle or sphere, algebraic: |p|² = 2 p·c + k."""
    root = np.sqrt(weights)[:, None]
    system = np.column_stack([2.0 * points, np.ones(len(points))]) * root
    solution = np.linalg.lstsq(system, np.sum(points**2, axis=1) * root[:, 0], rcond=None)[0]
    centre = solution[:-1]
    return centre, float(np.sqrt(max(solution[-1] + centre @ centre, 1e-12)))


def _across(axis: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Two unit directions at right angles to `axis` and to each other."""
    u = np.cross(axis, np.eye(3)[int(np.argmin(np.abs(axis)))])
    u /= np.linalg.norm(u)
    return u, np.cross(axis, u)


def _residuals(f: Feature, points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Signed distances (n,) and their derivatives (n, k) by the motions that `_moved` applies."""
    away = points - f.point
    if f.kind == "sphere":
        length = np.maximum(np.linalg.norm(away, axis=1), 1e-300)
        return length - f.radius, np.column_stack([-away / length[:, None], -np.ones(len(points))])
    u, v = _across(f.direction)
    height, x, y = away @ f.direction, away @ u, away @ v
    if f.kind == "plane":
        return height, np.column_stack([-np.ones(len(points)), x, y])
    reach = np.maximum(np.hypot(x, y), 1e-300)
    x, y = x / reach, y / reach
    slope, cosine = np.tan(f.half_angle), np.cos(f.half_angle)
    off = reach - f.radius - height * slope
    lever = -height - slope * reach
    columns = [-x * cosine, -y * cosine, lever * x * cosine, lever * y * cosine, np.full(len(points), -cosine)]
    if f.kind == "cone":
        columns.append(-height / cosine - np.sin(f.half_angle) * off)
    return off * cosine, np.column_stack(columns)


def _moved(f: Feature, step: FloatArray) -> Feature:
    """The feature moved by a small step in the parameters of `_residuals`."""
    if f.kind == "sphere":
        return replace(f, point=f.point + step[:3], radius=f.radius + float(step[3]))
    u, v = _across(f.direction)
    if f.kind == "plane":
        direction = f.direction + step[1] * u + step[2] * v
        return replace(f, point=f.point + step[0] * f.direction, direction=direction / np.linalg.norm(direction))
    direction = f.direction + step[2] * u + step[3] * v
    half_angle = f.half_angle + (float(step[5]) if f.kind == "cone" else 0.0)
    return replace(
        f,
        point=f.point + step[0] * u + step[1] * v,
        direction=direction / np.linalg.norm(direction),
        radius=f.radius + float(step[4]),
        half_angle=float(np.clip(half_angle, -1.55, 1.55)),
    )


def _solve(f: Feature, points: FloatArray, weights: FloatArray) -> Feature:
    """Levenberg and Marquardt's descent of Σ w r². Raises FitError where it does not come to rest."""
    damping, cost = 1e-3, _cost(f, points, weights)
    for _ in range(STEPS):
        away, by = _residuals(f, points)
        normal = (by * weights[:, None]).T @ by
        gradient = (by * weights[:, None]).T @ away
        scale = np.diag(normal) + 1e-12 * max(float(np.trace(normal)), 1e-300)
        step = np.asarray(-np.linalg.solve(normal + damping * np.diag(scale), gradient), np.float64)
        tried = _moved(f, step)
        new = _cost(tried, points, weights)
        if new <= cost:
            rest = cost - new <= 1e-15 * cost and damping <= 1e-6
            f, cost, damping = tried, new, max(damping / 10.0, 1e-12)
            if rest or float(np.abs(step).max()) < 1e-14:
                break
        elif damping > 1e9:
            break
        else:
            damping *= 10.0
    total = float(weights.sum())
    if not np.isfinite(cost) or total <= 0.0:
        raise FitError(f"no {f.kind} fits these points")
    return replace(f, weights=weights, rms=float(np.sqrt(cost / total)))


def _cost(f: Feature, points: FloatArray, weights: FloatArray) -> float:
    return float(weights @ _residuals(f, points)[0] ** 2)


def _tidied(f: Feature, points: FloatArray) -> Feature:
    """The point of an axis at the middle of the points; a cone that widens along its direction."""
    if f.kind == "sphere":
        return f
    middle = np.average(points, axis=0, weights=f.weights)
    if f.kind == "plane":
        return replace(f, point=middle - ((middle - f.point) @ f.direction) * f.direction)
    along = float((middle - f.point) @ f.direction)
    radius = f.radius + along * float(np.tan(f.half_angle))
    f = replace(f, point=f.point + along * f.direction, radius=radius)
    return replace(f, direction=-f.direction, half_angle=-f.half_angle) if f.half_angle < 0.0 else f
