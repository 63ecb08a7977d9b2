"""A part in its frame, from three sides, with the axes and the platform: to see whether the frame is right."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from stylobate.core.rigid import pose
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.report.picture import ACCENT, DPI, MARGIN, PANEL, SOFT, WIDTH, Page
from stylobate.report.raster import View, draw
from stylobate.report.solids import disc, rod
from stylobate.report.words import printable

PART, X_AXIS, Z_AXIS, PLATFORM = (170, 186, 196), (196, 84, 30), (13, 91, 102), (222, 205, 150)
VIEWS = ((0.0, 0.0, "from +x"), (90.0, 0.0, "from +y"), (35.0, 35.0, "from above"))
KEY = "z (teal): the axis, away from the bone  ·  x (orange): the index  ·  disc: the platform"
SIDE, HEAD = 2.95, 1.0  # inches


def part_png(surface: Surface, platform_diameter: float, name: str, said: Sequence[str]) -> bytes:
    """The picture as a PNG file. surface: in its part's frame."""
    page = Page(MARGIN + HEAD + SIDE + 0.45 + 0.18 * len(said) + MARGIN)
    page.text(MARGIN, MARGIN + 0.22, printable(name), size=17, weight="bold")
    page.text(MARGIN, MARGIN + 0.5, KEY, size=8.5, colour=SOFT)
    page.rule(MARGIN, MARGIN + 0.64, WIDTH - 2 * MARGIN, ACCENT)
    reach = max(float(np.abs(surface.vertices[:, :2]).max()), platform_diameter) + 1.0
    low, high = float(surface.vertices[:, 2].min()) - 1.0, float(surface.vertices[:, 2].max()) + 3.0
    pixels = round(SIDE * DPI)
    scale = pixels / max(2.0 * reach, high - low)
    pieces = [
        (surface, PART),
        (disc(platform_diameter / 2.0 + 0.8), PLATFORM),
        (rod(np.array([0.0, 0.0, low]), np.array([0.0, 0.0, 1.0]), high - low - 0.5), Z_AXIS),
        (rod(np.zeros(3), np.array([1.0, 0.0, 0.0]), reach), X_AXIS),
    ]
    for number, (azimuth, elevation, words) in enumerate(VIEWS):
        rotation = _facing(math.radians(azimuth), math.radians(elevation))
        view = View(pose(rotation, -rotation @ np.array([0.0, 0.0, (low + high) / 2.0])), (pixels, pixels), scale)
        left = MARGIN + number * (SIDE + 0.12)
        vertices = np.concatenate([piece.vertices for piece, _ in pieces])
        starts = np.cumsum([0, *(len(piece.vertices) for piece, _ in pieces)])
        faces = np.concatenate([piece.faces + start for (piece, _), start in zip(pieces, starts, strict=False)])
        colours = np.concatenate([np.tile(np.array(c, np.uint8), (len(piece.vertices), 1)) for piece, c in pieces])
        page.image(left, MARGIN + HEAD - 0.2, draw(view, vertices, faces.astype(np.int32), colours, 0.5, PANEL))
        page.text(left + SIDE / 2, MARGIN + HEAD + SIDE - 0.02, words, size=8, colour=SOFT, align="center")
    for number, words in enumerate(said):
        page.text(MARGIN, MARGIN + HEAD + SIDE + 0.3 + 0.18 * number, printable(words), size=8.5)
    return page.png()


def _facing(azimuth: float, elevation: float) -> FloatArray:
    """Rows right, up, towards the viewer."""
    towards = np.array(
        [math.cos(azimuth) * math.cos(elevation), math.sin(azimuth) * math.cos(elevation), math.sin(elevation)]
    )
    right = np.array([-math.sin(azimuth), math.cos(azimuth), 0.0])
    return np.array([right, np.cross(towards, right), towards])
