"""Constructive solids with a bounded chord error: what the invented bodies are made of."""

from __future__ import annotations

import math
from importlib import import_module
from typing import Any

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

CHORD_MM = 0.001
"""Greatest distance of a facet from the true round surface (invented; half of what the parts promise)."""


def _kernel() -> Any:
    """The solid modeller, imported when first needed."""
    return import_module("manifold3d")


def segments(radius: float) -> int:
    """Facets round a circle of `radius` mm so that none is farther than CHORD_MM from it; a multiple of 4."""
    return 4 * math.ceil(math.pi / math.acos(1.0 - CHORD_MM / max(radius, 0.05)) / 4)


def cylinder(radius: float, low: float, high: float, top_radius: float | None = None) -> Any:
    """Round solid about z from `low` to `high` mm, tapered where `top_radius` is given."""
    top = radius if top_radius is None else top_radius
    return _kernel().Manifold.cylinder(high - low, radius, top, segments(max(radius, top))).translate((0.0, 0.0, low))


def chamfered(radius: float, low: float, high: float, chamfer: float) -> Any:
    """Round solid with a 45° chamfer at its top."""
    return cylinder(radius, low, high - chamfer) + cylinder(radius, high - chamfer, high, radius - chamfer)


def prism(outline: FloatArray, low: float, high: float, top_scale: float = 1.0) -> Any:
    """Upright solid over a counter-clockwise outline (n, 2) mm, shrunk towards the axis by `top_scale` at its top."""
    section = _kernel().CrossSection([outline.tolist()])
    return _kernel().Manifold.extrude(section, high - low, 0, 0.0, (top_scale, top_scale)).translate((0.0, 0.0, low))


def regular(sides: int, across_flats: float) -> FloatArray:
    """Outline (sides, 2) of a regular polygon with one flat facing +x."""
    angle = (np.arange(sides) + 0.5) * 2.0 * np.pi / sides
    radius = across_flats / 2.0 / math.cos(math.pi / sides)
    return radius * np.stack([np.cos(angle), np.sin(angle)], axis=1)


def lobed(radius: float, depth: float, lobes: int) -> FloatArray:
    """Outline of r(θ) = radius · (1 + depth · cos(lobes · θ)); depth < 1 / (lobes² − 1) keeps it convex."""
    angle = np.arange(2 * segments(radius)) * np.pi / segments(radius)
    r = radius * (1.0 + depth * np.cos(lobes * angle))
    return np.asarray(np.stack([r * np.cos(angle), r * np.sin(angle)], axis=1))


def ball(radius: float, z: float) -> Any:
    """Sphere about (0, 0, z); its facets' chord error is twice that of its circles."""
    return _kernel().Manifold.sphere(radius, segments(2.0 * radius)).translate((0.0, 0.0, z))


def box(low: tuple[float, float, float], high: tuple[float, float, float]) -> Any:
    """Axis-parallel block between two corners."""
    size = tuple(b - a for a, b in zip(low, high, strict=True))
    return _kernel().Manifold.cube(size).translate(low)


def flat(solid: Any, distance: float, low: float, turn_deg: float = 0.0, lean_deg: float = 0.0) -> Any:
    """Mill a flat at `distance` mm from the axis, facing +x turned by `turn_deg`, from z = low up.

    `lean_deg` tilts the flat towards the axis at its top.
    """
    cutter = box((0.0, -20.0, 0.0), (20.0, 20.0, 40.0)).rotate((0.0, -lean_deg, 0.0))
    return solid - cutter.translate((distance, 0.0, low)).rotate((0.0, 0.0, turn_deg))


def bevel(solid: Any, top: float, drop: float, tilt_deg: float, turn_deg: float) -> Any:
    """Cut the top by a plane through (0, 0, top − drop), tilted by `tilt_deg` down towards `turn_deg`."""
    tilt, turn = math.radians(tilt_deg), math.radians(turn_deg)
    normal = (-math.sin(tilt) * math.cos(turn), -math.sin(tilt) * math.sin(turn), -math.cos(tilt))
    return solid.trim_by_plane(normal, normal[2] * (top - drop))


def surface_of(solid: Any) -> Surface:
    """The outward boundary of a solid. Raises ValueError where the solid is empty or in pieces."""
    if solid.is_empty() or len(solid.decompose()) != 1:
        raise ValueError("the solid is empty or in pieces")
    mesh = solid.to_mesh64()
    return Surface(np.array(mesh.vert_properties[:, :3], dtype=np.float64), np.array(mesh.tri_verts, dtype=np.int32))
