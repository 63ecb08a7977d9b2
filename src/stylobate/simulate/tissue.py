"""Tissue as an implicit solid: a gum ridge along a U-shaped arch, teeth, stumps and cuffs, joined by fillets.

Mouth frame: the arch lies in x, y (front at +y), z points to the chewing side. A primitive is one row of a table;
its value is a lower bound of the distance outside, zero on the surface, negative inside.
"""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray

ARCH_RADIUS = 22.0
"""Radius of the front half circle of the arch, mm (invented, about a grown person's)."""
RIDGE, ELLIPSOID, FRUSTUM, VAULT = range(4)
COLUMNS = 22
"""kind, fillet radius, centre 3, rotation 9 (mouth_from_local, row by row), parameters 7, bounding radius."""
STEP = 1e-5


def along(t: float) -> tuple[FloatArray, FloatArray]:
    """Point (3,) of the arch at arc length t mm from its front, and its unit tangent (3,)."""
    bend = math.pi * ARCH_RADIUS / 2.0
    if abs(t) <= bend:
        angle = t / ARCH_RADIUS
        return (
            np.array([ARCH_RADIUS * math.sin(angle), ARCH_RADIUS * math.cos(angle), 0.0]),
            np.array([math.cos(angle), -math.sin(angle), 0.0]),
        )
    side = math.copysign(1.0, t)
    return np.array([side * ARCH_RADIUS, bend - abs(t), 0.0]), np.array([0.0, -side, 0.0])


def arc_length(points: FloatArray) -> FloatArray:
    """Arc length (n,) of the arch's nearest point to each of `points` (n, 3)."""
    x, y = points[:, 0], points[:, 1]
    legs = np.sign(x) * (math.pi * ARCH_RADIUS / 2.0 - y)
    return np.where(y >= 0.0, ARCH_RADIUS * np.arctan2(x, y), legs)


def row(
    kind: int, fillet: float, centre: FloatArray, rotation: FloatArray, parameters: tuple[float, ...], reach: float
) -> FloatArray:
    """One primitive (COLUMNS,)."""
    result = np.zeros(COLUMNS)
    result[0], result[1], result[2:5], result[5:14] = kind, fillet, centre, rotation.ravel()
    result[14 : 14 + len(parameters)] = parameters
    result[21] = reach
    return result


@compiled
def _ridge(x: float, y: float, z: float, row: FloatArray) -> float:
    """Tube about the arch: half width, half height, undulation (amplitude, wave number), ends."""
    bend = 0.5 * np.pi * ARCH_RADIUS
    width, height, wave, number, low, high = row[14], row[15], row[16], row[17], row[18], row[19]
    t = ARCH_RADIUS * np.arctan2(x, y) if y >= 0.0 else np.sign(x) * (bend - y)
    if t < low or t > high:
        t = min(max(t, low), high)
        if abs(t) <= bend:
            fx, fy = ARCH_RADIUS * np.sin(t / ARCH_RADIUS), ARCH_RADIUS * np.cos(t / ARCH_RADIUS)
        else:
            fx, fy = np.sign(t) * ARCH_RADIUS, bend - abs(t)
        s = np.sqrt((x - fx) ** 2 + (y - fy) ** 2)
    elif y >= 0.0:
        s = abs(np.sqrt(x * x + y * y) - ARCH_RADIUS)
    else:
        s = abs(abs(x) - ARCH_RADIUS)
    u = s / (width * (1.0 + wave * np.sin(number * t)))
    v = abs(z - row[4] - 0.5 * wave * height * np.sin(1.7 * number * t + 1.0)) / height
    gauge = (u * u * np.sqrt(u) + v * v * np.sqrt(v)) ** 0.4
    return float((gauge - 1.0) * min(width, height) * 0.8)


@compiled
def _ellipsoid(x: float, y: float, z: float, row: FloatArray) -> float:
    """Superellipsoid: semi-axes and exponent."""
    a, b, c, n = row[14], row[15], row[16], row[17]
    gauge = ((abs(x) / a) ** n + (abs(y) / b) ** n + (abs(z) / c) ** n) ** (1.0 / n)
    return float((gauge - 1.0) * min(a, min(b, c)))


@compiled
def _frustum(x: float, y: float, z: float, row: FloatArray) -> float:
    """Rounded cone stump on z = 0: lower and upper radius, height, rounding of its edges (exact distance)."""
    rounding = row[17]
    low, high, h = row[14] - rounding, row[15] - rounding, row[16] / 2.0 - rounding
    q = np.sqrt(x * x + y * y)
    v = z - row[16] / 2.0
    cap_q = q - min(q, low if v < 0.0 else high)
    cap_v = abs(v) - h
    ex, ey = high - low, 2.0 * h
    along_side = min(max(((high - q) * ex + (h - v) * ey) / (ex * ex + ey * ey), 0.0), 1.0)
    side_q = q - high + ex * along_side
    side_v = v - h + ey * along_side
    sign = -1.0 if side_q < 0.0 and cap_v < 0.0 else 1.0
    return float(sign * np.sqrt(min(cap_q**2 + cap_v**2, side_q**2 + side_v**2)) - rounding)


@compiled
def _vault(x: float, y: float, z: float, row: FloatArray) -> float:
    """Everything below a shallow dome: its height, radius and top."""
    top, height, radius = row[4], row[14], row[15]
    r2 = (x * x + (y - 2.0) ** 2) / radius**2
    return float((z - top - height * np.exp(-r2)) * 0.8)


@compiled
def tissue_at(x: float, y: float, z: float, rows: FloatArray) -> float:
    """Value of the joined tissue at one point of the mouth frame."""
    value = 1e9
    for k in range(rows.shape[0]):
        row = rows[k]
        kind, fillet = int(row[0]), row[1]
        dx, dy, dz = x - row[2], y - row[3], z - row[4]
        if kind == RIDGE:
            g = _ridge(x, y, z, row)
        elif kind == VAULT:
            g = _vault(x, y, z, row)
        else:
            bound = np.sqrt(dx * dx + dy * dy + dz * dz) - row[21]
            if bound > max(value, fillet):
                continue
            u = row[5] * dx + row[8] * dy + row[11] * dz
            v = row[6] * dx + row[9] * dy + row[12] * dz
            w = row[7] * dx + row[10] * dy + row[13] * dz
            g = _ellipsoid(u, v, w, row) if kind == ELLIPSOID else _frustum(u, v, w, row)
        if value < fillet and g < fillet:
            value = fillet - np.sqrt((fillet - value) ** 2 + (fillet - g) ** 2)
        else:
            value = min(value, g)
    return value


@compiled
def tissue_values(points: FloatArray, rows: FloatArray) -> FloatArray:
    """Value at each of `points` (n, 3), mouth frame."""
    result = np.empty(points.shape[0])
    for i in range(points.shape[0]):
        result[i] = tissue_at(points[i, 0], points[i, 1], points[i, 2], rows)
    return result


@compiled
def tissue_gradients(points: FloatArray, rows: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Value (n,) and gradient (n, 3), by forward differences of STEP mm."""
    value, gradient = np.empty(points.shape[0]), np.empty(points.shape)
    for i in range(points.shape[0]):
        x, y, z = points[i, 0], points[i, 1], points[i, 2]
        here = tissue_at(x, y, z, rows)
        value[i] = here
        gradient[i, 0] = (tissue_at(x + STEP, y, z, rows) - here) / STEP
        gradient[i, 1] = (tissue_at(x, y + STEP, z, rows) - here) / STEP
        gradient[i, 2] = (tissue_at(x, y, z + STEP, rows) - here) / STEP
    return value, gradient
