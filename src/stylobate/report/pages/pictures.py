"""The pictures of a report as PNG files, and where on the arch each site's number goes."""

from __future__ import annotations

import io
import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.surface import Scan, Surface
from stylobate.core.types import ByteArray, FloatArray
from stylobate.report.colours import RANGE_UM, table
from stylobate.report.pages.dossier import Dossier, MappedSite
from stylobate.report.raster import View, draw
from stylobate.report.views import extent, from_above, side_view, with_bodies

ARCH_SIZE = (1500, 900)
VIEW_SIZE = (560, 310)
VIEWS_DEG = (0, 120, 240)
MARK_AWAY = 0.075
"""How far a number stands from its site, share of the picture's width."""


@dataclass(frozen=True)
class Mark:
    """A site's place on the arch picture and its number's, shares of width and height from the upper left."""

    label: str
    at: tuple[float, float]
    named: tuple[float, float]


@dataclass(frozen=True)
class Pictures:
    """PNG files by name, the marks of the arch, and the three views of each site by its name."""

    files: dict[str, bytes]
    marks: tuple[Mark, ...]
    views: dict[str, tuple[str, ...]]


def png(pixels: ByteArray) -> bytes:
    """(height, width, 3) uint8 as a PNG file; the same bytes for the same pixels."""
    from PIL import Image

    buffer = io.BytesIO()
    Image.fromarray(pixels).save(buffer, "PNG", compress_level=6)
    return buffer.getvalue()


def pictures(dossier: Dossier, labels: dict[str, str]) -> Pictures:
    """Every picture of a report. labels: site → what the reader calls it."""
    files = {"legend.png": png(_legend())}
    marks: tuple[Mark, ...] = ()
    shown = [site for site in dossier.sites if site.map is not None]
    scan = dossier.scan if dossier.scan is not None else _of_maps(shown)
    if scan is not None and len(scan.surface.faces):
        image, marks = _arch(dossier.sites, scan, labels)
        files["arch.png"] = png(image)
    views: dict[str, tuple[str, ...]] = {}
    scale = _scale(shown)
    for number, site in enumerate(dossier.sites, start=1):
        if site.map is None:
            continue
        names = []
        for azimuth in VIEWS_DEG:
            name = f"site-{number}-{azimuth}.png"
            files[name] = png(side_view(site, site.map, float(azimuth), VIEW_SIZE, scale))
            names.append(name)
        views[site.record.site] = tuple(names)
    return Pictures(files, marks, views)


def _legend() -> ByteArray:
    return np.tile(table()[np.linspace(0, 255, 512).astype(np.intp)], (24, 1, 1))


def _of_maps(sites: list[MappedSite]) -> Scan | None:
    """Where the scan itself is not at hand: the surfaces around the sites."""
    maps = [site.map for site in sites if site.map is not None]
    if not maps:
        return None
    starts = np.cumsum([0, *(len(found.vertices) for found in maps)])
    vertices = np.concatenate([found.vertices for found in maps])
    faces = np.concatenate([found.faces + start for found, start in zip(maps, starts, strict=False)])
    origin = np.round(vertices.mean(axis=0))
    return Scan(Surface(vertices - origin, faces.astype(np.int32)), origin, "", "")


def _arch(sites: tuple[MappedSite, ...], scan: Scan, labels: dict[str, str]) -> tuple[ByteArray, tuple[Mark, ...]]:
    """The scan seen along the mean of the axes, filling the picture's width, its height cut to what is needed."""
    view_from_local = from_above(sites, scan)
    seen = scan.surface.vertices @ view_from_local[:3, :3].T
    low, high = seen.min(axis=0), seen.max(axis=0)
    view_from_local[:3, 3] = -(low + high) / 2
    across, tall = np.maximum(high - low, 1e-6)[:2]
    scale = 0.96 * min(ARCH_SIZE[0] / across, ARCH_SIZE[1] / tall)
    size = (ARCH_SIZE[0], min(ARCH_SIZE[1], math.ceil(tall * scale / 0.96)))
    view = View(view_from_local, size, scale)
    vertices, faces, painted = with_bodies(sites, scan, view_from_local)
    image = draw(view, vertices, faces, painted, ambient=0.42, background="#ffffff")
    return image, tuple(_mark(view, site, scan, labels) for site in sites)


def _mark(view: View, site: MappedSite, scan: Scan, labels: dict[str, str]) -> Mark:
    size = np.array(view.size, dtype=np.float64)
    at: FloatArray = view.pixels((site.scan_from_connection[:3, 3] - scan.origin)[None])[0, :2]
    away = at - size / 2
    length = float(np.linalg.norm(away))
    away = away / length if length > 1e-6 else np.array([0.0, -1.0])
    named = np.clip(at + MARK_AWAY * size[0] * away, 0.035 * size[0], size - 0.035 * size[0])
    there, name = at / size, named / size
    return Mark(labels[site.record.site], (float(there[0]), float(there[1])), (float(name[0]), float(name[1])))


def _scale(sites: list[MappedSite]) -> float:
    """Pixels a mm: one for all sites, so that sizes compare; the largest body fits with 1 mm around it."""
    boxes = [extent(site) for site in sites]
    across = max((2 * radius for _, _, radius in boxes), default=1.0) + 2.0
    tall = max((high - low for low, high, _ in boxes), default=1.0) + 3.0
    return min(VIEW_SIZE[0] / across, VIEW_SIZE[1] / tall)


def range_words() -> tuple[str, str]:
    """The two ends of the colour scale."""
    return f"−{RANGE_UM:g} µm", f"+{RANGE_UM:g} µm"
