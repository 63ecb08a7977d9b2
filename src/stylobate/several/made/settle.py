"""One seat in the surface of a frame: the form laid on it, and how well that fixes it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.rigid import ANY_TURN, adjoint, exp, inverse, orthonormal, turn_of, turn_z
from stylobate.core.types import FloatArray, LongArray
from stylobate.fit.descend import REACH, Around, around, descend, to_connection, usable, within_reach
from stylobate.fit.design import design
from stylobate.fit.edges import SHAPES, SharpEdges
from stylobate.several.made.seats import Form
from stylobate.uncertainty.field import groups_of, patches_of
from stylobate.uncertainty.likelihood import estimate
from stylobate.uncertainty.pose import PRIOR_SD, solve

LEAST_SUPPORT = 150
"""Points of the frame's surface that must carry a seat."""
LEAST_SEEN = 0.1
"""Share of the form that the surface must show."""
WORST_SD = 0.06
"""mm: residuals wider than this are no seat of that form."""
MARGIN = 1.5
"""mm of the frame's surface taken around a form: how far a start may be off."""
FIRST_WIDTH, WIDTH, LAST_WIDTH = 1.2, 0.35, 0.1
"""mm: widths of the loss with which a form is drawn to the surface, from far, from near, and at the end."""
COARSE_POINTS = 1500
AS_GOOD = 0.002
"""mm: residuals narrower than this, as a design has, say nothing between two forms."""
INLIER = 4.0
"""Robust standard deviations beyond which a point is no longer of the seat."""
BESIDE_EDGE = 5.0
"""Standard deviations from a sharp edge within which noise carries a point's foot over it: such points would pull along
another face at each round, by some µm of height together."""
ROUNDS = 3
UNROUNDED = SharpEdges(None, np.zeros(0))
"""The edges of a seat as made: taken to be sharp."""


@dataclass(frozen=True)
class Lain:
    """A form laid on the surface: pose, uniform offset and sd (mm), and the points that lie on it."""

    scan_from_connection: FloatArray
    offset: float
    sd: float
    support: LongArray


@dataclass(frozen=True)
class Seated:
    """A seat found. covariance (6, 6) of ξ; residual (k,) mm of the points that carry it; seen: share of the form."""

    form: Form
    scan_from_connection: FloatArray
    covariance: FloatArray
    residual: FloatArray
    seen: float


def reach_of(forms: Sequence[Form]) -> float:
    """mm from a start within which all surface of its seat lies."""
    return max(float(np.linalg.norm(form.middle)) + form.reach for form in forms) + MARGIN


def seated(vertices: FloatArray, normals: FloatArray, forms: Sequence[Form], start: FloatArray) -> Seated | None:
    """The form that the surface shows best near `start` (4, 4), laid on it; None where none is there."""
    near = around(vertices, normals, start[:3, 3], reach_of(forms))
    if len(near.points) < LEAST_SUPPORT:
        return None
    found: list[tuple[float, Form, Lain]] = []
    pairs = [(form, one) for form in forms for one in (start, _drawn(form, near, start, FIRST_WIDTH))]
    for form, one in pairs:
        lain = _lain(form, near, _drawn(form, near, one, WIDTH))
        if lain.sd < WORST_SD and len(lain.support) >= LEAST_SUPPORT:
            found.append((float(near.area[lain.support].sum()), form, lain))
    shown = [(area, form, fitted) for area, form, fitted in found if area > LEAST_SEEN * _area(form)]
    if not shown:
        return None
    area, form, fitted = max(shown, key=lambda one: one[0] / max(one[2].sd, AS_GOOD))  # most surface, lying best
    found_there = _weighed(form, near, fitted, min(area / _area(form), 1.0))
    return _unturned(found_there, start) if form.round else found_there


def _drawn(form: Form, near: Around, start: FloatArray, width: float) -> FloatArray:
    which = within_reach(form.tree, near, start, COARSE_POINTS)
    return descend(form.tree, near, start, which, width).scan_from_connection


def _lain(form: Form, near: Around, start: FloatArray) -> Lain:
    """The points that carry a seat: all that lie on it; there is no fillet of gingiva to keep off."""
    which = within_reach(form.tree, near, start, COARSE_POINTS)
    descent = descend(form.tree, near, start, which, LAST_WIDTH)
    closest = form.tree.closest(to_connection(descent.scan_from_connection, near.points), REACH)
    on = usable(closest, near.normals @ descent.scan_from_connection[:3, :3])
    off = np.abs(np.nan_to_num(closest.distance, nan=np.inf) - descent.offset)
    support = np.flatnonzero(on & (off < INLIER * descent.sd))
    return Lain(descent.scan_from_connection, descent.offset, descent.sd, support)


def _area(form: Form) -> float:
    return float(form.surface.face_areas().sum())


def _weighed(form: Form, near: Around, fitted: Lain, seen: float) -> Seated:
    """Pose and covariance by the correlation of the residuals (method/measure, eq. 5–7), of points off sharp edges.

    Shifts of views (6a) are left out: a frame is scanned on a bench, and a seat is small. What the last round still
    moves is added to the covariance.
    """
    pose, offset = fitted.scan_from_connection, fitted.offset
    points = _off_edges(form, near.points[fitted.support], fitted)
    field, covariance, step = None, np.zeros((len(PRIOR_SD),) * 2), np.zeros(len(PRIOR_SD))
    for _ in range(ROUNDS):
        local = to_connection(pose, points)
        closest = form.tree.closest_curved(local, REACH)
        on = closest.face >= 0
        here = design(local[on], closest.at(on), UNROUNDED, offset, np.zeros(SHAPES))
        patches = patches_of(here.feet, here.residual, here.rows, groups_of(here.feet, closest.gradient[on]))
        field = replace(estimate(patches, field, covariance), view_sd=0.0, edge_sd=0.0)
        step, covariance, _ = solve(patches, field, 1.0 / PRIOR_SD**2)
        pose, offset = pose @ exp(step[:6]), offset + float(step[6])
    final = form.tree.closest(to_connection(pose, points), REACH)
    residual = final.distance[final.face >= 0]
    return Seated(form, orthonormal(pose), (covariance + np.outer(step, step))[:6, :6], residual, seen)


def _unturned(seat: Seated, start: FloatArray) -> Seated:
    """A seat that shows no turn, turned as `start` is: what facets say of the turn is not so."""
    pose = seat.scan_from_connection
    back = turn_z(turn_of(inverse(pose) @ start))
    about_z = adjoint(inverse(back))
    covariance = about_z @ seat.covariance @ about_z.T
    covariance[5], covariance[:, 5] = 0.0, 0.0
    covariance[5, 5] = ANY_TURN**2
    return replace(seat, scan_from_connection=orthonormal(pose @ back), covariance=covariance)


def _off_edges(form: Form, points: FloatArray, fitted: Lain) -> FloatArray:
    """Those of the points (n, 3) that noise does not bring over a sharp edge; all where too few would be left."""
    local = to_connection(fitted.scan_from_connection, points)
    closest = form.tree.closest_curved(local, REACH)
    to_edge = form.edges.near(local - closest.distance[:, None] * closest.gradient)[0]
    off = (closest.face >= 0) & (to_edge > BESIDE_EDGE * fitted.sd)
    return points[off] if off.sum() >= LEAST_SUPPORT else points
