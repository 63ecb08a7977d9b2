"""One picture of a placement: all parts from above, and each site from two sides with the tissue cut open."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.build.model import Link, PlacedSite, Placement
from stylobate.core.rigid import pose
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import ByteArray, FloatArray
from stylobate.parts.model import TitaniumBase
from stylobate.report.picture import ACCENT, DPI, GAP, MARGIN, PANEL, PLASTER, SOFT, WIDTH, Page, mark
from stylobate.report.placement_table import CAUTION
from stylobate.report.raster import View, draw
from stylobate.report.solids import rod
from stylobate.report.words import printable

HEADER, OVERVIEW, CARD, FOOTER = 0.95, 4.6, 3.1, 0.3  # inches, heights from top to bottom
BASE, ABUTMENT, CHANNEL, AIM = (122, 176, 178), (208, 162, 92), (176, 58, 46), (60, 66, 74)
LINE_LENGTH = 13.0
"""mm: how far channels and aims are drawn."""
REACH = 9.0
"""mm around a site's axis shown in its own views."""
LOWEST, HIGHEST = -4.0, 13.0
"""mm along the axis shown in a site's own views."""


@dataclass(frozen=True)
class Piece:
    """A surface in one colour."""

    surface: Surface
    colour: tuple[int, int, int]


def placement_png(placement: Placement, tissue: Scan | None) -> bytes:
    """The picture as a PNG file. tissue: drawn around the parts where it is given."""
    rows = math.ceil(len(placement.sites) / 2)
    page = Page(MARGIN + HEADER + OVERVIEW + rows * (CARD + GAP) + FOOTER + MARGIN)
    gum = None if tissue is None else tissue.whole()
    _header(page, placement)
    _overview(page, MARGIN + HEADER, placement, gum)
    for number, site in enumerate(placement.sites):
        top = MARGIN + HEADER + OVERVIEW + (number // 2) * (CARD + GAP)
        _card(page, number % 2, top, site, gum)
    page.text(MARGIN, page.height - MARGIN - 0.05, CAUTION, size=7.5, colour=SOFT)
    return page.png()


def _header(page: Page, placement: Placement) -> None:
    page.text(MARGIN, MARGIN + 0.22, "Placed parts", size=19, weight="bold")
    parts = f"{printable(placement.parts.name)}, {printable(placement.parts.revision)}"
    about = f"{printable(placement.result)}  ·  parts: {parts}"
    page.text(MARGIN, MARGIN + 0.50, about, size=9, colour=SOFT)
    page.rule(MARGIN, MARGIN + 0.68, WIDTH - 2 * MARGIN, ACCENT)
    x = MARGIN
    for name, colour in (("base", BASE), ("abutment", ABUTMENT), ("screw channel", CHANNEL), ("aim", AIM)):
        swatch = np.tile(np.array(colour, np.uint8), (round(0.12 * DPI), round(0.12 * DPI), 1))
        page.image(x, MARGIN + 0.76, swatch)
        page.text(x + 0.18, MARGIN + 0.86, name, size=7.5, colour=SOFT)
        x += 0.32 + 0.075 * len(name)


def _overview(page: Page, top: float, placement: Placement, gum: Surface | None) -> None:
    """All sites, seen along the middle of the axes' cone."""
    size = (round((WIDTH - 2 * MARGIN) * DPI), round((OVERVIEW - 0.35) * DPI))
    shown = [piece for site in placement.sites for piece in _pieces(site)]
    if gum is not None:
        shown.append(Piece(gum, PLASTER))
    points = np.concatenate([piece.surface.vertices for piece in shown])
    rotation = _from_above(placement)
    seen = points @ rotation.T
    low, high = seen.min(axis=0), seen.max(axis=0)
    scale = 0.92 * float(min(size[0] / (high - low)[0], size[1] / (high - low)[1]))
    view = View(pose(rotation, -(low + high) / 2), size, scale)
    page.image(MARGIN, top, _drawn(view, shown))
    centres = np.array([site.channel.origin for site in placement.sites])
    for site, (x, y, _) in zip(placement.sites, view.pixels(centres), strict=True):
        sides = (size[0] / DPI, size[1] / DPI)
        mark(page, (MARGIN, top), (float(x) / DPI, float(y) / DPI), sides, printable(site.site))
    page.text(MARGIN, top + OVERVIEW - 0.2, "Seen along the middle of the axes", size=7.5, colour=SOFT)


def _from_above(placement: Placement) -> FloatArray:
    """Rows right, up, towards the viewer; the first site on the left."""
    towards = placement.insertion.axis
    first, last = (placement.sites[k].channel.origin for k in (0, -1))
    along = last - first - ((last - first) @ towards) * towards
    if float(np.linalg.norm(along)) < 1.0:
        along = np.cross(towards, np.eye(3)[int(np.argmin(np.abs(towards)))])
    right = along / np.linalg.norm(along)
    return np.array([right, np.cross(towards, right), towards])


def _pieces(site: PlacedSite) -> list[Piece]:
    """The parts of a site, its channel and its aim."""
    found = [Piece(link.surface(), _colour(link)) for link in site.chain]
    origin = site.channel.origin
    found.append(Piece(rod(origin, site.channel.direction, LINE_LENGTH), CHANNEL))
    if site.channel.angle_to_aim_deg > 0.1:
        found.append(Piece(rod(origin, site.aim, LINE_LENGTH), AIM))
    return found


def _colour(link: Link) -> tuple[int, int, int]:
    return BASE if isinstance(link.part, TitaniumBase) else ABUTMENT


def _drawn(view: View, shown: list[Piece]) -> ByteArray:
    starts = np.cumsum([0, *(len(piece.surface.vertices) for piece in shown)])
    vertices = np.concatenate([piece.surface.vertices for piece in shown])
    faces = np.concatenate([piece.surface.faces + start for piece, start in zip(shown, starts, strict=False)])
    colours = np.concatenate([np.tile(np.array(p.colour, np.uint8), (len(p.surface.vertices), 1)) for p in shown])
    return draw(view, vertices, faces.astype(np.int32), colours, ambient=0.45, background=PANEL)


def _card(page: Page, column: int, top: float, site: PlacedSite, gum: Surface | None) -> None:
    """One site: its parts from two sides, the tissue cut open through the axis, and its figures."""
    wide = (WIDTH - 2 * MARGIN - GAP) / 2
    left = MARGIN + column * (wide + GAP)
    page.text(left, top + 0.16, printable(site.site), size=12, weight="bold", colour=ACCENT)
    chain = " + ".join(f"{link.part.id} @{link.turn}" for link in site.chain) or "no part"
    page.text(left + 0.25, top + 0.16, chain, size=8.5, weight="bold")
    size = (round((wide - 0.08) / 2 * DPI), round((CARD - 0.75) * DPI))
    for number, azimuth in enumerate((0.0, 90.0)):
        page.image(left + number * (size[0] / DPI + 0.08), top + 0.3, _side(site, gum, azimuth, size))
    page.text(left, top + CARD - 0.28, _figures(site), size=7)


def _figures(site: PlacedSite) -> str:
    words = [f"channel {site.channel.angle_to_aim_deg:.1f}° from aim (± {site.channel.u95_deg:.2f}°)"]
    if site.channel.lean_deg > 0.05:
        words.append(f"leans {site.channel.lean_deg:.1f}°")
    if site.tissue is not None and site.tissue.least is not None:
        words.append(f"tissue {site.tissue.least:.1f}–{site.tissue.greatest:.1f} mm")
    if site.room_mm is not None:
        words.append(f"room {site.room_mm:.1f} mm")
    return "  ·  ".join(words)


def _side(site: PlacedSite, gum: Surface | None, azimuth_deg: float, size: tuple[int, int]) -> ByteArray:
    """From `azimuth_deg` about the connection's axis, which stands upright; what lies before it is cut away."""
    stands = site.footing.site.scan_from_connection
    azimuth = math.radians(azimuth_deg)
    towards = stands[:3, :3] @ np.array([math.cos(azimuth), math.sin(azimuth), 0.0])
    up = stands[:3, 2]
    rotation = np.array([np.cross(up, towards), up, towards])
    middle = stands[:3, 3] + (LOWEST + HIGHEST) / 2.0 * up
    scale = min(size[0] / (2 * REACH), size[1] / (HIGHEST - LOWEST))
    shown = _pieces(site)
    if gum is not None:
        shown.append(Piece(_cut(gum, stands[:3, 3], towards), PLASTER))
    return _drawn(View(pose(rotation, -rotation @ middle), size, scale), [p for p in shown if len(p.surface.faces)])


def _cut(gum: Surface, centre: FloatArray, towards: FloatArray) -> Surface:
    """The faces around a site behind the plane through its axis."""
    away = gum.vertices - centre
    keep = (away @ towards < 0.0) & (np.sum(away**2, axis=1) < (3.0 * REACH) ** 2)
    return Surface(gum.vertices, gum.faces[keep[gum.faces].all(axis=1)])
