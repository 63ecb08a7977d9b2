"""Least largest gap without penetration: one small semi-infinite linear programme, solved exactly (method/seat, 5–8).

Each rim is a circle, a linear programme with endlessly many rows of which only the worst one at a time matters: it is
known in closed form. Rows are exchanged by the dual method of Goldfarb & Idnani (1983); a quadratic term too small to
be seen picks, where several rests are equally good, the one that moves the frame least (Mangasarian & Meyer 1979).
"""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, LongArray

COUNTED = 0
"""Role of a site whose gap is part of the largest one."""
CAPPED = 1
"""Role of a site whose gap may not grow beyond `cap`."""
FREE = 2
"""Role of a site that only must not be penetrated."""

UNSEEN = 1e-6
"""Weight of the quadratic term, 1/mm: raises the largest gap by less than 1e-6 mm for moves below 1 mm."""
TOLERANCE = 1e-8
"""mm by which a row may stay violated."""
SAME = 1e-13
"""Squared share of a row's normal that must lie outside the active rows for a step along it."""
MOST_STEPS = 400
VARIABLES = 4


@compiled
def least_largest_gaps(
    height: FloatArray, lean: FloatArray, radius: FloatArray, role: LongArray, cap: FloatArray
) -> tuple[FloatArray, BoolArray]:
    """`least_largest_gap` for many draws: height (draws, n, 4), lean (draws, n, 2, 4), cap (draws,)."""
    draws = len(height)
    x, reached = np.zeros((draws, VARIABLES)), np.zeros(draws, np.bool_)
    for d in range(draws):
        x[d], reached[d] = least_largest_gap(height[d], lean[d], radius, role, cap[d])
    return x, reached


@compiled
def least_largest_gap(
    height: FloatArray, lean: FloatArray, radius: FloatArray, role: LongArray, cap: float
) -> tuple[FloatArray, bool]:
    """x (4,) = (rise, two tilts, largest gap) that makes the largest counted gap least; and whether it was reached.

    height (n, 4): gap at the centre of each site as (value, and its change with rise and the two tilts).
    lean (n, 2, 4): the same for the two slopes of the frame's plane across the site; the gap over a rim of `radius`
    (n,) runs from height − radius·|lean| to height + radius·|lean|. role (n,): COUNTED, CAPPED or FREE.
    """
    x = np.zeros(VARIABLES)
    x[3] = -1.0 / UNSEEN
    rows = np.zeros((VARIABLES, VARIABLES))
    force = np.zeros(VARIABLES + 1)
    row = np.zeros(VARIABLES)
    active = 0
    for _ in range(MOST_STEPS):
        short = _worst_row(x, height, lean, radius, role, cap, row)
        if short >= -TOLERANCE:
            return x, True
        active, entered = _enter(x, rows, force, active, row, short)
        if not entered:
            return x, False
    return x, False


@compiled
def _enter(
    x: FloatArray, rows: FloatArray, force: FloatArray, active: int, row: FloatArray, short: float
) -> tuple[int, bool]:
    """Step until `row` holds, dropping active rows whose force would turn negative; the new number of active rows."""
    force[active] = 0.0
    for _ in range(2 * VARIABLES + 2):
        across, share = _split(rows, active, row)
        free = 0.0
        for k in range(VARIABLES):
            free += across[k] * across[k]
        norm = 0.0
        for k in range(VARIABLES):
            norm += row[k] * row[k]
        drop, limit = -1, math.inf
        for j in range(active):
            if share[j] > 0.0 and force[j] / share[j] < limit:
                drop, limit = j, force[j] / share[j]
        full = -short / free if free > SAME * norm else math.inf
        step = min(limit, full)
        if step == math.inf:
            return active, False
        for j in range(active):
            force[j] = max(force[j] - step * share[j], 0.0)
        force[active] += step
        if full < math.inf:
            for k in range(VARIABLES):
                x[k] += step * across[k]
            short += step * free
        if full <= limit:
            rows[active] = row
            return active + 1, True
        for j in range(drop, active):
            force[j] = force[j + 1]
            if j + 1 < active:
                rows[j] = rows[j + 1]
        active -= 1
    return active, False


@compiled
def _split(rows: FloatArray, active: int, row: FloatArray) -> tuple[FloatArray, FloatArray]:
    """What of `row` lies across the active rows (4,), and its shares of them (active,): row = Σ share·rows + across."""
    base = np.zeros((VARIABLES, VARIABLES))
    upper = np.zeros((VARIABLES, VARIABLES))
    for j in range(active + 1):
        vector = rows[j].copy() if j < active else row.copy()
        part = np.zeros(VARIABLES)
        for _ in range(2):  # twice is enough (Kahan; Giraud & others 2005)
            for i in range(j):
                along = 0.0
                for k in range(VARIABLES):
                    along += base[i, k] * vector[k]
                part[i] += along
                for k in range(VARIABLES):
                    vector[k] -= along * base[i, k]
        if j == active:
            share = np.zeros(VARIABLES)
            for i in range(active - 1, -1, -1):
                value = part[i]
                for k in range(i + 1, active):
                    value -= upper[i, k] * share[k]
                share[i] = value / upper[i, i]
            return vector, share
        length = 0.0
        for k in range(VARIABLES):
            length += vector[k] * vector[k]
        length = math.sqrt(length)
        for i in range(j):
            upper[i, j] = part[i]
        upper[j, j] = length
        for k in range(VARIABLES):
            base[j, k] = vector[k] / length
    return row, row


@compiled
def _worst_row(
    x: FloatArray,
    height: FloatArray,
    lean: FloatArray,
    radius: FloatArray,
    role: LongArray,
    cap: float,
    row: FloatArray,
) -> float:
    """The most violated row at x, into `row` (4,); its value, negative where violated (method/seat, eq. 6)."""
    least, site, side = math.inf, 0, 1.0
    for i in range(len(radius)):
        middle = height[i, 0] + height[i, 1] * x[0] + height[i, 2] * x[1] + height[i, 3] * x[2]
        one = lean[i, 0, 0] + lean[i, 0, 1] * x[0] + lean[i, 0, 2] * x[1] + lean[i, 0, 3] * x[2]
        two = lean[i, 1, 0] + lean[i, 1, 1] * x[0] + lean[i, 1, 2] * x[1] + lean[i, 1, 3] * x[2]
        swing = radius[i] * math.sqrt(one * one + two * two)
        if middle - swing < least:
            least, site, side = middle - swing, i, 1.0
        if role[i] != FREE:
            above = (x[3] if role[i] == COUNTED else cap) - middle - swing
            if above < least:
                least, site, side = above, i, -1.0
    _fill_row(x, height[site], lean[site], radius[site], side, row)
    row[3] = 1.0 if side < 0.0 and role[site] == COUNTED else 0.0
    return least


@compiled
def _fill_row(x: FloatArray, height: FloatArray, lean: FloatArray, radius: float, side: float, row: FloatArray) -> None:
    """The row's normal for rise and tilts: of the rim point where the gap is least (side 1) or largest (side −1)."""
    one = lean[0, 0] + lean[0, 1] * x[0] + lean[0, 2] * x[1] + lean[0, 3] * x[2]
    two = lean[1, 0] + lean[1, 1] * x[0] + lean[1, 2] * x[1] + lean[1, 3] * x[2]
    length = math.sqrt(one * one + two * two)
    if length > 0.0:
        one, two = one / length, two / length
    else:
        one, two = 1.0, 0.0
    for k in range(3):
        row[k] = side * height[k + 1] - radius * (one * lean[0, k + 1] + two * lean[1, k + 1])
