"""Solids by manifold3d: in and out, with what the kernel does not say asked for. Imported when first needed."""

from __future__ import annotations

import math
from importlib import import_module
from typing import Any

import numpy as np

from stylobate.core.errors import FitError
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

CHORD_MM = 0.001
"""Greatest distance of a facet from the true round surface (invented: half of what an interface may be off)."""
TIDY_MM = 1e-4
"""Detail smaller than this goes: far below an interface's 2 µm."""
AROUND = 24
"""Directions in which a hull is widened."""
DUST = 0.01
"""mm³. A loose piece smaller than this is rounding."""


def kernel() -> Any:
    """The module manifold3d."""
    return import_module("manifold3d")


def solid_of(surface: Surface, name: str) -> Any:
    """A closed surface as a solid. Raises FitError where it is open or encloses nothing: the kernel does not say so."""
    mesh = kernel().Mesh64(
        vert_properties=np.ascontiguousarray(surface.vertices, np.float64),
        tri_verts=np.ascontiguousarray(surface.faces, np.uint64),
    )
    solid = kernel().Manifold(mesh)
    if solid.status() != kernel().Error.NoError or solid.is_empty() or solid.volume() <= 0.0:
        raise FitError(f"{name}: its surface is not closed, or inside out; a solid needs a closed one")
    return solid


def largest(solid: Any, name: str) -> tuple[Surface, tuple[float, ...]]:
    """The outward boundary of the largest piece of a solid, and the volumes of what else fell off, mm³, falling.

    Raises FitError where nothing is left.
    """
    if solid.status() != kernel().Error.NoError or solid.is_empty():
        raise FitError(f"{name}: nothing is left of it; look at the sizes asked for")
    pieces = sorted(solid.decompose(), key=lambda piece: -float(piece.volume()))
    lost = tuple(volume for piece in pieces[1:] if (volume := float(piece.volume())) > DUST)
    return surface_of(pieces[0].simplify(TIDY_MM)), lost


def surface_of(solid: Any) -> Surface:
    """The outward boundary of a solid."""
    mesh = solid.to_mesh64()
    return Surface(np.array(mesh.vert_properties[:, :3], np.float64), np.array(mesh.tri_verts, np.int32))


def left_out(lost: tuple[float, ...]) -> tuple[str, ...]:
    """The line that says which loose pieces are not in the file, where there are any."""
    return (f"{len(lost)} loose pieces of {sum(lost):.2f} mm³ in all were left out",) if lost else ()


def moved(solid: Any, target_from_source: FloatArray) -> Any:
    """The solid in another frame."""
    return solid.transform(np.ascontiguousarray(target_from_source[:3, :4]))


def cylinder(radius: float, low: float, high: float) -> Any:
    """Round solid about z from `low` to `high` mm."""
    sides = 4 * math.ceil(math.pi / math.acos(1.0 - CHORD_MM / max(radius, 0.05)) / 4)
    return kernel().Manifold.cylinder(high - low, radius, radius, sides).translate((0.0, 0.0, low))


def hull_of(points: FloatArray) -> Any:
    """The convex hull of points (n, 3)."""
    return kernel().Manifold.hull_points(np.ascontiguousarray(points))


def widened(points: FloatArray, across: float, up: float = 0.0) -> Any:
    """The convex hull of points (n, 3), wider by `across` mm square to z, and higher by `up` mm."""
    if across == up == 0.0:
        return hull_of(points)
    angle = np.arange(AROUND) * 2.0 * np.pi / AROUND
    ring = across / np.cos(np.pi / AROUND) * np.column_stack([np.cos(angle), np.sin(angle), np.zeros(AROUND)])
    hull = hull_of(points).to_mesh64().vert_properties[:, :3]
    hull = np.concatenate([hull, hull + [0.0, 0.0, up]]) if up else hull
    return hull_of((hull[:, None] + ring[None]).reshape(-1, 3))


def along(origin: FloatArray, z: FloatArray, up: FloatArray) -> FloatArray:
    """(4, 4) scan_from_local: origin, z along `z`, y towards `up` as far as it is square to z."""
    z = z / np.linalg.norm(z)
    y = up - (up @ z) * z
    y /= np.linalg.norm(y)
    frame = np.eye(4)
    frame[:3, :3] = np.column_stack([np.cross(y, z), y, z])
    frame[:3, 3] = origin
    return frame
