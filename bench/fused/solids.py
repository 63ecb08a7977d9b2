"""Ten invented scan bodies: platform at z = 0, axis along +z, mark towards +x, mm."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from importlib import import_module
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.parts.region import clip_above

CAD_FACETS, REAL_FACETS = 128, 256
"""Facets round a circle of the drawing that is fitted, and of the body that is scanned: 0.7 and 0.2 µm off at most."""


def _solid() -> Any:
    return import_module("manifold3d").Manifold


def _round(diameter: float, low: float, high: float, n: int, top: float | None = None) -> Any:
    """Round about z, tapered to the diameter `top` where that is given."""
    end = diameter if top is None else top
    return _solid().cylinder(high - low, diameter / 2.0, end / 2.0, n).translate((0.0, 0.0, low))


def _block(low: tuple[float, float, float], high: tuple[float, float, float]) -> Any:
    return _solid().cube(tuple(b - a for a, b in zip(low, high, strict=True))).translate(low)


def ball(radius: float, n: int, z: float = 0.0) -> Any:
    """About (0, 0, z)."""
    return _solid().sphere(radius, n).translate((0.0, 0.0, z))


def _cut(solid: Any, point: ArrayLike, normal: ArrayLike) -> Any:
    """Without what lies beyond the plane through `point`, towards `normal`."""
    n = np.asarray(normal, dtype=np.float64) / np.linalg.norm(normal)
    return solid.trim_by_plane(tuple(-n), -float(n @ np.asarray(point)))


def _prism(radius: FloatArray, height: float, scale: float = 1.0, start: float = 0.0) -> Any:
    """Over the outline of these radii, even round the circle from `start` rad; shrunk by `scale` at its top."""
    angle = start + np.arange(len(radius)) * 2.0 * np.pi / len(radius)
    outline = radius[:, None] * np.stack([np.cos(angle), np.sin(angle)], axis=1)
    section = import_module("manifold3d").CrossSection([outline.tolist()])
    return _solid().extrude(section, height, 0, 0.0, (scale, scale))


def hexpost(n: int) -> Any:
    """A hexagon, 4 mm across flats, on a round foot, one upper edge cut off."""
    hexagon = _prism(np.full(6, 2.0 / np.cos(np.pi / 6)), 7.0, start=np.pi / 6).translate((0.0, 0.0, 1.2))
    return _cut(_round(3.5, 0.0, 1.4, n) + hexagon, (2.0, 0.0, 7.0), (1, 0, 1))


def slimcone(n: int) -> Any:
    """A cone with a narrow groove."""
    return _round(4.0, 0.0, 9.0, n, 2.6) - _block((1.05, -0.4, 4.2), (4.0, 0.4, 12.0))


def puck(n: int) -> Any:
    """Low and wide, with a groove over its whole height."""
    return _round(6.4, 0.0, 3.6, n, 6.0) - _block((2.1, -0.6, -1.0), (5.0, 0.6, 8.0))


def ballneck(n: int) -> Any:
    """A ball with a flat, on a neck."""
    return _cut(_round(2.8, 0.0, 5.5, n) + ball(2.35, n, 6.3), (1.75, 0.0, 6.3), (1, 0, 0))


def trilobe(n: int) -> Any:
    """Three lobes, tapered."""
    return _prism(2.05 + 0.22 * np.cos(3.0 * np.arange(n) * 2.0 * np.pi / n), 7.2, 0.93)


def domed(n: int) -> Any:
    """A cylinder with a half ball on top and a flat."""
    post = _round(3.9, 0.0, 6.0, n) + ball(1.95, n, 6.0)
    return post - _block((1.2, -5.0, 3.5), (5.0, 5.0, 12.0))


def holecyl(n: int) -> Any:
    """A cylinder with a bore, its top cut aslant in part."""
    return _cut(_round(4.6, 0.0, 8.6, n) - _round(2.1, 5.0, 9.0, n), (0.4, 0.0, 8.6), (np.sin(0.6), 0.0, np.cos(0.6)))


def tower(n: int) -> Any:
    """A square with rounded corners, tapered."""
    corner = _solid().cylinder(0.01, 0.8, 0.8, n)
    foot = _solid().batch_hull([corner.translate((1.4 * x, 1.4 * y, 0.0)) for x in (-1, 1) for y in (-1, 1)])
    return _solid().extrude(foot.project(), 9.0, 0, 0.0, (0.76, 0.76))


def upper(n: int) -> Any:
    """Wider above than below, two flats."""
    post = _round(3.2, 0.0, 2.0, n) + _round(3.2, 2.0, 4.0, n, 4.4) + _round(4.4, 4.0, 9.0, n)
    side = np.array([np.cos(np.radians(130.0)), np.sin(np.radians(130.0)), 0.0])
    return _cut(_cut(post, (1.75, 0.0, 0.0), (1, 0, 0)), 1.95 * side, side)


def oblique(n: int) -> Any:
    """The hull of two circles that do not stand above each other."""
    return _solid().batch_hull([_round(4.4, 0.0, 0.01, n), _round(2.6, 8.0, 8.01, n).translate((0.7, 0.0, 0.0))])


SHAPES: dict[str, Callable[[int], Any]] = {
    shape.__name__: shape
    for shape in (hexpost, slimcone, puck, ballneck, trilobe, domed, holecyl, tower, upper, oblique)
}
FAMILIES = {
    "willow": ("hexpost", "slimcone", "puck"),
    "rowan": ("ballneck", "trilobe", "domed"),
    "hazel": ("holecyl", "tower", "upper", "oblique"),
}
"""Which shapes are candidates together."""
EQUAL_TURNS = {"trilobe": 3, "tower": 4}
"""Index marks of the connection of a shape that looks the same at several turns; else one: every wrong turn counts."""
REGION_ABOVE = {"upper": 4.0}
"""Height above which a shape is scan region, mm; else the whole."""


def surface_of(solid: Any) -> Surface:
    """Its boundary, outward."""
    mesh = solid.to_mesh64()
    return Surface(np.array(mesh.vert_properties[:, :3], np.float64), np.array(mesh.tri_verts, np.int32))


def parts_of(family: str) -> PartsFolder:
    """The folder of a family: a connection for each of its scan bodies."""
    bodies = []
    for name in FAMILIES[family]:
        whole = surface_of(SHAPES[name](CAD_FACETS))
        region = clip_above(whole, REGION_ABOVE[name]) if name in REGION_ABOVE else whole
        digest = hashlib.sha256(region.vertices.tobytes() + region.faces.tobytes()).hexdigest()
        bodies.append(ScanBody(name, f"of-{name}", whole, region, digest))
    connections = tuple(Connection(b.seats_on, "other", EQUAL_TURNS.get(b.id, 1), 4.2) for b in bodies)
    return PartsFolder(family, "1", "CC0-1.0", "", connections, tuple(bodies))
