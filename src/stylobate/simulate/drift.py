"""Stitching error along the arch: every body moves rigidly, the tissue between follows."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.rigid import exp
from stylobate.core.types import FloatArray, IntArray
from stylobate.simulate import tissue
from stylobate.simulate.settings import Drift

KNOT_MM = 1.0
SPAN_MM = 50.0
"""Arch length after which a walk has the sd that the settings name."""
PLATEAU_MM = 3.7
"""Arch length to either side of a body that moves with it."""
CORE_MM = 8.0


@dataclass(frozen=True)
class Walk:
    """Knots (k,) of arc length and the small motions there (k, 6), about the arch's point of that arc length."""

    knots: FloatArray
    motions: FloatArray

    def at(self, arc: FloatArray) -> FloatArray:
        """Small motion (n, 6) at arc lengths (n,)."""
        return np.stack([np.interp(arc, self.knots, self.motions[:, k]) for k in range(6)], axis=1)

    def site_motion(self, arc: float) -> FloatArray:
        """(4, 4) motion of what stands at `arc`, in the mouth frame."""
        centre = tissue.along(arc)[0]
        motion = exp(self.at(np.array([arc]))[0])
        motion[:3, 3] += centre - motion[:3, :3] @ centre
        return motion


def walk_of(drift: Drift, ends: tuple[float, float], rng: np.random.Generator) -> Walk:
    """Draw the error: a scale about the low end and a random walk in shift and turn from there."""
    knots = np.arange(ends[0] - 12.0, ends[1] + 12.0, KNOT_MM)
    step = math.sqrt(KNOT_MM / SPAN_MM)
    sd = step * np.array([drift.walk_um * 1e-3] * 3 + [math.radians(drift.walk_deg)] * 3)
    motions = np.cumsum(rng.normal(size=(len(knots), 6)) * sd, axis=0)
    track = np.array([tissue.along(t)[0] for t in knots])
    motions[:, :3] += (track - track[0]) * drift.scale_ppm * 1e-6
    return Walk(knots, motions)


def drifted(
    walk: Walk, points: FloatArray, normals: FloatArray, owner: IntArray, arcs: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Points (n, 3) and normals of the mouth frame after the drift; arcs: (sites,) where the owners stand."""
    x, y = points[:, 0], points[:, 1]
    radius = np.where(y >= 0.0, np.hypot(x, y), np.abs(x))
    arc = tissue.arc_length(points) * np.clip(radius / CORE_MM, 0.0, 1.0)
    if len(arcs):
        half = np.full(len(arcs), PLATEAU_MM)
        if len(arcs) > 1:
            gaps = np.diff(arcs)
            half = np.minimum(half, 0.48 * np.minimum(np.append(gaps, np.inf), np.append(np.inf, gaps)))
        low, high = walk.knots[0], walk.knots[-1]
        stops = np.concatenate([[low], np.stack([arcs - half, arcs + half], axis=1).ravel(), [high]])
        arc = np.interp(arc, stops, np.concatenate([[low], np.repeat(arcs, 2), [high]]))
        arc = np.where(owner >= 0, arcs[np.maximum(owner, 0)], arc)
    motion = walk.at(arc)
    track = np.stack(
        [np.interp(arc, walk.knots, c) for c in np.array([tissue.along(t)[0] for t in walk.knots]).T], axis=1
    )
    if len(arcs):
        exact = np.array([tissue.along(a)[0] for a in arcs])
        track = np.where(owner[:, None] >= 0, exact[np.maximum(owner, 0)], track)
    turned = _turn(motion[:, 3:], points - track)
    return track + turned + _shift(motion), _turn(motion[:, 3:], normals)


def _turn(w: FloatArray, v: FloatArray) -> FloatArray:
    """exp(w) v for each row (Rodrigues)."""
    angle = np.linalg.norm(w, axis=1)[:, None]
    once = np.cross(w, v)
    return np.asarray(v + np.sinc(angle / np.pi) * once + 0.5 * np.sinc(angle / 2 / np.pi) ** 2 * np.cross(w, once))


def _shift(motion: FloatArray) -> FloatArray:
    """Shift part of exp(ξ) for each row, ξ so small that terms of third order vanish in double precision."""
    t, w = motion[:, :3], motion[:, 3:]
    angle = np.linalg.norm(w, axis=1)[:, None]
    once = np.cross(w, t)
    third = np.where(angle > 1e-4, (1.0 - np.sinc(angle / np.pi)) / np.maximum(angle, 1e-9) ** 2, 1.0 / 6.0)
    return np.asarray(t + 0.5 * np.sinc(angle / 2 / np.pi) ** 2 * once + third * np.cross(w, once))
