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
"""Detail smaller than this goes: far below an interface's 2 µm, above what a 32-bit coordinate holds."""
DUST = 0.01
"""mm³. A loose piece smaller than this is rounding."""
CHIP = 1.0
"""mm³. A loose piece smaller than this, cut off where a leaning part meets a seat, is left out."""


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


def tidy(solid: Any) -> Any:
    """The solid without the slivers that 32-bit coordinates would fold up."""
    return solid.simplify(TIDY_MM)


def surface_of(solid: Any, name: str) -> Surface:
    """The outward boundary of a solid. Raises FitError where nothing is left of it, or it is in pieces."""
    if solid.status() != kernel().Error.NoError or solid.is_empty():
        raise FitError(f"{name}: nothing is left of it; look at the sizes asked for")
    pieces = sorted(solid.decompose(), key=lambda piece: -float(piece.volume()))
    if len(pieces) > 1 and float(pieces[1].volume()) > CHIP:
        raise FitError(f"{name}: falls into {len(pieces)} pieces; look at the sizes asked for")
    mesh = tidy(pieces[0]).to_mesh64()
    return Surface(np.array(mesh.vert_properties[:, :3], np.float64), np.array(mesh.tri_verts, np.int32))


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


def along(origin: FloatArray, z: FloatArray, up: FloatArray) -> FloatArray:
    """(4, 4) scan_from_local: origin, z along `z`, y towards `up` as far as it is square to z."""
    z = z / np.linalg.norm(z)
    y = up - (up @ z) * z
    y /= np.linalg.norm(y)
    frame = np.eye(4)
    frame[:3, :3] = np.column_stack([np.cross(y, z), y, z])
    frame[:3, 3] = origin
    return frame
