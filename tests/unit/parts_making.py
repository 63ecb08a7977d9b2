"""Shapes of closed form and parts folders made of them, for the tests of the parts folder."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping
from pathlib import Path

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

Radius = Callable[[FloatArray], FloatArray]

CONNECTION = '[[connection]]\nid = "{id}"\nkind = "other"\nindex_order = {order}\nplatform_diameter = 4.2\n'
BODY = '[[scan_body]]\nid = "{id}"\nseats_on = "{on}"\nsurface = "{id}.stl"\nscan_region = {region}\n'
HEAD = 'format = "stylobate-parts"\nversion = 1\nname = "Harbour Street"\nrevision = "1"\nlicence = "CC0-1.0"\n'


def post(
    radius: float | Radius = 2.4, height: float = 8.0, facets: int = 128, cap: bool = True, base: float = 0.0
) -> Surface:
    """A wall over a closed outline r(θ), open below, with a flat top where `cap`; outward."""
    angle = np.arange(facets) * 2.0 * np.pi / facets
    r = radius(angle) if callable(radius) else np.full(facets, radius)
    ring = np.stack([r * np.cos(angle), r * np.sin(angle), np.full(facets, base)], axis=1)
    low, high = np.arange(facets), np.arange(facets) + facets
    after = np.roll(low, -1)
    faces = [np.stack([low, after, after + facets], 1), np.stack([low, after + facets, high], 1)]
    vertices = [ring, ring + [0.0, 0.0, height]]
    if cap:
        vertices.append(np.array([[0.0, 0.0, base + height]]))
        faces.append(np.stack([high, after + facets, np.full(facets, 2 * facets)], 1))
    return Surface(np.concatenate(vertices), np.concatenate(faces).astype(np.int32))


def flat(radius: float = 2.4, depth: float = 0.4, at: float = 0.0) -> Radius:
    """Outline of a cylinder with one flat, `depth` mm deep, facing the direction `at`, rad."""

    def outline(angle: FloatArray) -> FloatArray:
        along = np.cos(angle - at)
        return np.where(along * radius > radius - depth, (radius - depth) / np.maximum(along, 1e-9), radius)

    return outline


def lobed(lobes: int, radius: float = 2.4, rise: float = 0.2) -> Radius:
    """Outline of a cylinder with smooth lobes."""
    return lambda angle: radius + rise * np.cos(lobes * angle)


def sphere(radius: float = 2.4, centre: tuple[float, float, float] = (0.0, 0.0, 3.0), steps: int = 96) -> Surface:
    """A closed ball in rings of latitude, outward."""
    polar = np.linspace(0.0, np.pi, steps // 2 + 1)[1:-1]
    angle = np.arange(steps) * 2.0 * np.pi / steps
    ring = np.stack(
        [np.outer(np.sin(polar), np.cos(angle)), np.outer(np.sin(polar), np.sin(angle)),
         np.outer(np.cos(polar), np.ones(steps))], axis=2,
    ).reshape(-1, 3)  # fmt: skip
    rows = len(polar)
    vertices = np.concatenate([ring, [[0.0, 0.0, 1.0], [0.0, 0.0, -1.0]]]) * radius + np.array(centre)
    k, after = np.arange(steps), np.roll(np.arange(steps), -1)
    faces = [np.stack([np.full(steps, rows * steps), k, after], 1)]
    for row in range(rows - 1):
        a, b, c, d = row * steps + k, row * steps + after, (row + 1) * steps + k, (row + 1) * steps + after
        faces += [np.stack([a, c, d], 1), np.stack([a, d, b], 1)]
    faces.append(np.stack([np.full(steps, rows * steps + 1), (rows - 1) * steps + after, (rows - 1) * steps + k], 1))
    return Surface(vertices, np.concatenate(faces).astype(np.int32))


def plate(width: float = 4.0, height: float = 3.0, z: float = 2.0) -> Surface:
    """A rectangle, facing up."""
    x, y = width / 2.0, height / 2.0
    corners = np.array([[-x, -y, z], [x, -y, z], [x, y, z], [-x, y, z]])
    return Surface(corners, np.array([[0, 1, 2], [0, 2, 3]], np.int32))


def flipped(surface: Surface) -> Surface:
    """The same surface with its faces turned over."""
    return Surface(surface.vertices, np.ascontiguousarray(surface.faces[:, ::-1]))


def stl(surface: Surface) -> bytes:
    """Binary STL."""
    record = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("attribute", "<u2")])
    rows = np.zeros(len(surface.faces), record)
    rows["corners"] = surface.vertices[surface.faces]
    return b"\0" * 80 + np.uint32(len(rows)).tobytes() + rows.tobytes()


def toml(
    bodies: Mapping[str, str], orders: Mapping[str, int] | None = None, regions: Mapping[str, str] | None = None
) -> str:
    """parts.toml with these scan bodies on these connections. regions: scan_region as written, "whole" if absent."""
    orders, regions = orders or {"alder": 6}, regions or {}
    text = HEAD + "".join(CONNECTION.format(id=name, order=order) for name, order in orders.items())
    for name, on in bodies.items():
        text += BODY.format(id=name, on=on, region=regions.get(name, '"whole"'))
    return text


def write(root: Path, text: str, surfaces: Mapping[str, Surface | bytes]) -> Path:
    """A parts folder at `root`; surfaces by file name."""
    root.mkdir(parents=True, exist_ok=True)
    (root / "parts.toml").write_text(text, encoding="utf-8")
    for name, surface in surfaces.items():
        content = surface if isinstance(surface, bytes) else stl(surface)
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_bytes(content)
    return root


def zipped(members: Mapping[str, bytes | str]) -> bytes:
    """A zip with these members, deflated."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in members.items():
            archive.writestr(name, content)
    return buffer.getvalue()


def members(root: Path, prefix: str = "") -> dict[str, bytes]:
    """All files of a folder, by the names they get in a zip."""
    return {
        prefix + str(path.relative_to(root)): path.read_bytes() for path in sorted(root.rglob("*")) if path.is_file()
    }
