"""What can be wrong with a body or its image, each with a size; all shapes of faults are invented.

Material lost or added changes the solid before it is meshed (`spheres`); all else moves vertices of the finished mesh
in the connection frame (`deformed`), or takes them away (see `unseen`).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.rigid import exp
from stylobate.core.sampling import sampled
from stylobate.core.types import FloatArray, LongArray
from stylobate.parts.model import ScanBody
from stylobate.simulate.edges import SharpEdges, rounded
from stylobate.simulate.noise import UM, wave_sum, waves
from stylobate.simulate.settings import STYLES, Fault

BEND_FROM = 0.3
"""Share of the height at which a bend begins, or at the gum where that is higher."""
HINGE_TO = 0.6
"""Share of what is above that start up to which a hinge may lie."""
LAYER_UNEVEN = 0.2
LAYER_LENGTH_MM = 2.0
POOL_MM = 1.0
"""Height over which a pooled layer thins out above the gum."""
WORN_MM = 2.0
"""Distance from the worst spot at which an edge is no longer worn."""
WORN_COSINE = float(np.cos(np.radians(75.0)))
"""Between the faces of an edge that is worn, where a body has such: a flatter one needs too large a radius."""
HALVINGS, PROBED_MM = 14, 0.1
ROUGH_MM = 0.15
SPHERE_MM = 0.6
"""Least radius of the sphere that a chip takes away, or that stands out of the surface."""

Generator = np.random.Generator


@dataclass(frozen=True)
class Spheres:
    """cuts, blobs: (k, 4) centre and radius, connection frame."""

    cuts: FloatArray
    blobs: FloatArray


def style_of(fault: Fault) -> str:
    """The style asked for, or the first of its cause."""
    return fault.style or STYLES.get(fault.cause, ("",))[0]


def spot_on_edge(body: ScanBody, edges: SharpEdges, low: float, rng: Generator) -> tuple[FloatArray, FloatArray]:
    """A point (3,) of a convex edge above `low` mm and its outward bisector (3,); of the wall where there is none."""
    usable = _usable(edges, low)
    if not len(usable):
        return spot_on_wall(body, low, rng)
    k = int(rng.choice(usable))
    middle = edges.normals[k].sum(axis=0)
    return edges.ends[k].mean(axis=0), middle / np.linalg.norm(middle)


def worn_spot(body: ScanBody, edges: SharpEdges, low: float, rng: Generator) -> FloatArray:
    """The point (3,) of a convex edge above `low` mm that is worn most."""
    usable = _usable(edges, low)
    turn = np.einsum("ij,ij->i", edges.normals[usable, 0], edges.normals[usable, 1])
    usable = usable[turn <= WORN_COSINE] if np.any(turn <= WORN_COSINE) else usable
    return edges.ends[rng.choice(usable)].mean(axis=0) if len(usable) else spot_on_wall(body, low, rng)[0]


def _usable(edges: SharpEdges, low: float) -> LongArray:
    """Numbers of the pieces of convex edges above `low` mm."""
    return np.flatnonzero((edges.convex > 0) & (edges.ends.mean(axis=1)[:, 2] > low + 0.5))


def _fade(points: FloatArray, spot: FloatArray) -> FloatArray:
    """1 about the spot, falling to 0 at WORN_MM from it."""
    return np.asarray(np.clip(2.0 - 2.0 * np.linalg.norm(points - spot, axis=1) / WORN_MM, 0.0, 1.0))


def _worn_radius(body: ScanBody, edges: SharpEdges, spot: FloatArray, depth: float) -> float:
    """Radius, mm, whose rounding moves what lies about `spot` by `depth` mm at most (bisection, up to WORN_MM).

    Where a large ball would move the surface beside an edge farther than the edge itself, that bounds it.
    """
    middle = edges.ends.mean(axis=1)[edges.convex > 0]
    spread, outward = sampled(body.surface, PROBED_MM)
    probes, normals = np.vstack([middle, spread]), np.vstack([edges.normals[edges.convex > 0, 0], outward])
    near = np.linalg.norm(probes - spot, axis=1) < WORN_MM
    probes, normals, fade = probes[near], normals[near], _fade(probes[near], spot)
    low, high = 0.0, WORN_MM
    for _ in range(HALVINGS):
        trial = (low + high) / 2.0
        moved, _ = rounded(probes, normals, edges, np.zeros(len(probes)), trial * fade)
        taken = np.linalg.norm(moved - probes, axis=1).max(initial=0.0)
        low, high = (trial, high) if taken < depth else (low, trial)
    return low


def spot_on_wall(body: ScanBody, low: float, rng: Generator) -> tuple[FloatArray, FloatArray]:
    """A point (3,) of the surface above `low` mm, drawn by area, and the outward normal there."""
    corners = body.surface.vertices[body.surface.faces]
    area = body.surface.face_areas() * (corners[:, :, 2].max(axis=1) > low + 0.8)
    for _ in range(1000):
        k = int(rng.choice(len(area), p=area / area.sum()))
        share = rng.dirichlet(np.ones(3))
        point = share @ corners[k]
        if point[2] > low + 0.8:
            break
    normal = body.surface.corner_products()[k]
    return point, normal / np.linalg.norm(normal)


def spheres(faults: tuple[Fault, ...], body: ScanBody, edges: SharpEdges, low: float, rng: Generator) -> Spheres:
    """Chips and lumps of one body; `low`: height of the gum, mm."""
    cuts, blobs = [], []
    for fault in faults:
        depth = fault.size * UM
        radius = max(SPHERE_MM, depth)
        if fault.cause == "lost material" and style_of(fault) == "chip":
            point, outward = spot_on_edge(body, edges, low, rng)
            cuts.append([*(point + outward * (radius - depth)), radius])
        if fault.cause == "added material":
            point, outward = spot_on_wall(body, low, rng)
            blobs.append([*(point + outward * (depth - radius)), radius])
    return Spheres(np.array(cuts).reshape(-1, 4), np.array(blobs).reshape(-1, 4))


def worn_radius(
    faults: tuple[Fault, ...], body: ScanBody, edges: SharpEdges, points: FloatArray, plain: float, low: float,
    rng: Generator,
) -> FloatArray:  # fmt: skip
    """Rounding radius (n,) mm at points (n, 3) where an edge is worn by the fault's depth; 0 where none is more than
    `plain` rounds it.
    """
    radius = np.zeros(len(points))
    for fault in faults:
        if fault.cause == "lost material" and style_of(fault) == "worn edge":
            spot = worn_spot(body, edges, low, rng)
            radius = np.maximum(radius, _worn_radius(body, edges, spot, fault.size * UM) * _fade(points, spot))
    return np.where(radius > plain, radius, 0.0)


def deformed(
    faults: tuple[Fault, ...], points: FloatArray, normals: FloatArray, gum: float, top: float, rng: Generator
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Vertices (n, 3) and normals of one body after its faults, and the extra white sd (n,) mm of a rough surface.

    gum, top: heights in the connection frame, mm.
    """
    points, normals, rough = points.copy(), normals.copy(), np.zeros(len(points))
    for fault in faults:
        if fault.cause == "added layer":
            points += normals * _layer(fault, points, gum, rng)[:, None]
        elif fault.cause == "bent body":
            points, normals = _bent(fault, points, normals, max(gum, BEND_FROM * top), top, rng)
        elif fault.cause == "split surface":
            azimuth, shift = rng.uniform(0.0, 2.0 * math.pi), rng.normal(size=3)
            beyond = points[:, 0] * math.cos(azimuth) + points[:, 1] * math.sin(azimuth) > 0.0
            points[beyond] += fault.size * UM * shift / np.linalg.norm(shift)
        elif fault.cause == "rough surface":
            rough = np.hypot(rough, fault.size * UM * math.sqrt(0.5))
            grain = wave_sum(points, *waves("exponential", ROUGH_MM, rng))
            points += normals * (fault.size * UM * math.sqrt(0.5) * grain)[:, None]
    return points, normals, rough


def _layer(fault: Fault, points: FloatArray, gum: float, rng: Generator) -> FloatArray:
    uneven = 1.0 + LAYER_UNEVEN * wave_sum(points, *waves("squared-exponential", LAYER_LENGTH_MM, rng))
    if style_of(fault) == "pooled" and len(points):
        pool = 0.3 + np.exp(-np.maximum(points[:, 2] - gum, 0.0) / POOL_MM)
        uneven = uneven * pool / pool.mean()
    return np.asarray(fault.size * UM * np.maximum(uneven, 0.0))


def _bent(
    fault: Fault, points: FloatArray, normals: FloatArray, start: float, top: float, rng: Generator
) -> tuple[FloatArray, FloatArray]:
    """Sections turned, towards one side, by an angle that grows along the axis from `start`, or jumps.

    It jumps for a `low hinge` at `start`, for a `hinge` anywhere from there to HINGE_TO of what is above.
    """
    azimuth = rng.uniform(0.0, 2.0 * math.pi)
    if style_of(fault) == "hinge":
        start += rng.uniform(0.0, HINGE_TO) * (top - start)
    side = np.array([math.cos(azimuth), math.sin(azimuth), 0.0])
    whole, rise = math.radians(fault.size), np.maximum(points[:, 2] - start, 0.0)
    if style_of(fault) in ("hinge", "low hinge"):
        angle = np.where(rise > 0.0, whole, 0.0)
        lateral, drop = rise * math.sin(whole), rise * (1.0 - math.cos(whole))
    else:
        angle = whole * rise / (top - start)
        lateral, drop = rise * angle / 2.0, rise * angle**2 / 6.0
    out = points @ side
    shift = lateral + out * (np.cos(angle) - 1.0)
    moved = points + shift[:, None] * side - (out * np.sin(angle) + drop)[:, None] * np.array([0.0, 0.0, 1.0])
    along_side, up = normals @ side, normals[:, 2]
    turned = normals + (along_side * (np.cos(angle) - 1.0) + up * np.sin(angle))[:, None] * side
    turned[:, 2] += up * (np.cos(angle) - 1.0) - along_side * np.sin(angle)
    return moved, turned


def lift(faults: tuple[Fault, ...], rng: Generator) -> FloatArray:
    """(4, 4) implant_from_connection: identity, or how far an unseated body stands off the implant, a little tilted."""
    rise = sum(fault.size for fault in faults if fault.cause == "unseated") * UM
    tilt = rng.normal(0.0, 1.0, 2) * rise / 4.0
    return exp(np.array([0.0, 0.0, rise, *tilt, 0.0]))
