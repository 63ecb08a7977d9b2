"""One picture of a measurement: the arch from above, the figures, and each scan body from three sides."""

from __future__ import annotations

import io
import math

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from stylobate.core.result import Result, Site
from stylobate.core.surface import Scan
from stylobate.core.types import ByteArray
from stylobate.report.colours import NO_VALUE, RANGE_UM, table
from stylobate.report.figures import turn_bound
from stylobate.report.raster import View, draw
from stylobate.report.views import PANEL as PANEL
from stylobate.report.views import PLASTER as PLASTER
from stylobate.report.views import extent, from_above, side_view, with_bodies
from stylobate.report.words import CAUTION, printable

DPI = 200
WIDTH, MARGIN = 10.0, 0.45  # inches
HEADER, OVERVIEW, LEGEND, CARD, FOOTER = 0.95, 3.9, 0.75, 2.95, 0.55  # inches, heights from top to bottom
GAP = 0.25
PAPER, INK, SOFT, LINE, ACCENT = "#fbfaf6", "#1f2a33", "#66717a", "#d8d4c8", "#0d5b66"
VIEWS_DEG = (0.0, 120.0, 240.0)
LABEL_DISTANCE = 0.48  # inches from a platform to its number


def picture_png(result: Result, scan: Scan) -> bytes:
    """The picture as a PNG file. `result` carries its maps; `scan` is the scan it was measured in."""
    rows = math.ceil(len(result.sites) / 2)
    height = MARGIN + HEADER + OVERVIEW + (LEGEND + rows * (CARD + GAP) if rows else 0.0) + FOOTER + MARGIN
    page = Page(height)
    _header(page, result)
    top = MARGIN + HEADER
    _overview(page, top, result, scan)
    _figures(page, top, result)
    top += OVERVIEW
    if rows:
        _legend(page, top)
        top += LEGEND
        scale = _common_scale(result.sites)
        for number, site in enumerate(result.sites):
            _card(page, number % 2, top + (number // 2) * (CARD + GAP), site, scale)
    page.text(MARGIN, height - MARGIN - 0.05, CAUTION, size=7.5, colour=SOFT)
    return page.png()


class Page:
    """A sheet with its origin in the upper left corner; lengths in inches."""

    def __init__(self, height: float) -> None:
        self.height = height
        self.figure = Figure(figsize=(WIDTH, height), dpi=DPI, facecolor=PAPER)
        self.canvas = FigureCanvasAgg(self.figure)

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 8.5,
        colour: str = INK,
        weight: str = "normal",
        align: str = "left",
    ) -> None:
        """Words whose baseline starts, ends or centres at (x, y)."""
        self.figure.text(
            x / WIDTH,
            1.0 - y / self.height,
            words,
            size=size,
            color=colour,
            weight=weight,
            ha=align,
            va="baseline",
            parse_math=False,
        )

    def rule(self, x: float, y: float, length: float, colour: str = LINE) -> None:
        """A thin line to the right."""
        self.figure.add_artist(
            Line2D([x / WIDTH, (x + length) / WIDTH], [1.0 - y / self.height] * 2, color=colour, linewidth=0.7)
        )

    def image(self, x: float, y: float, pixels: ByteArray) -> None:
        """A picture with its upper left corner at (x, y), one pixel a pixel."""
        high, wide = pixels.shape[0] / DPI, pixels.shape[1] / DPI
        axes = self.figure.add_axes((x / WIDTH, 1.0 - (y + high) / self.height, wide / WIDTH, high / self.height))
        axes.imshow(pixels, interpolation="none", aspect="auto")
        axes.set_axis_off()

    def png(self) -> bytes:
        """The sheet as a PNG file, the same bytes for the same sheet."""
        buffer = io.BytesIO()
        self.canvas.print_figure(
            buffer,
            format="png",
            dpi=DPI,
            facecolor=PAPER,
            metadata={"Software": None},
            pil_kwargs={"compress_level": 2},
        )
        return buffer.getvalue()


def _header(page: Page, result: Result) -> None:
    count = len(result.sites)
    page.text(MARGIN, MARGIN + 0.22, f"{count} implant position{'' if count == 1 else 's'}", size=19, weight="bold")
    source = f"{printable(result.scan.file)}  ·  {result.scan.triangles:,} triangles"
    parts = f"{printable(result.parts.name)}, {printable(result.parts.revision)}"
    page.text(MARGIN, MARGIN + 0.50, f"{source}  ·  parts: {parts}  ·  for: {result.work}", size=9, colour=SOFT)
    page.rule(MARGIN, MARGIN + 0.68, WIDTH - 2 * MARGIN, ACCENT)


def _overview(page: Page, top: float, result: Result, scan: Scan) -> None:
    """The whole scan, seen along the mean of the axes, with the number of each site."""
    wide, high = 5.2, OVERVIEW - 0.25
    size = (round(wide * DPI), round(high * DPI))
    view_from_local = from_above(result.sites, scan)
    seen = scan.surface.vertices @ view_from_local[:3, :3].T
    low, top_corner = seen.min(axis=0), seen.max(axis=0)
    view_from_local[:3, 3] = -(low + top_corner) / 2
    extent = np.maximum(top_corner - low, 1e-6)
    view = View(view_from_local, size, 0.94 * float(min(size[0] / extent[0], size[1] / extent[1])))
    vertices, faces, painted = with_bodies(result.sites, scan, view_from_local)
    page.image(MARGIN, top, draw(view, vertices, faces, painted, ambient=0.42, background=PANEL))
    for site, (x, y) in zip(result.sites, _on_picture(view, result.sites, scan), strict=True):
        mark(page, (MARGIN, top), (x / DPI, y / DPI), (wide, high), site.site)
    page.text(MARGIN, top + high + 0.16, "Seen along the mean of the implant axes", size=7.5, colour=SOFT)


def _on_picture(view: View, sites: tuple[Site, ...], scan: Scan) -> list[tuple[float, float]]:
    """Column and row of each platform centre."""
    centres = [site.scan_from_connection[:3, 3] - scan.origin for site in sites]
    return [(float(x), float(y)) for x, y, _ in view.pixels(np.array(centres).reshape(-1, 3))]


def mark(
    page: Page, corner: tuple[float, float], at: tuple[float, float], size: tuple[float, float], label: str
) -> None:
    """A number beside its site, on the side away from the middle of the picture, with a line to it; inches."""
    away = np.array(at) - np.array(size) / 2
    length = float(np.linalg.norm(away))
    away = away / length if length > 1e-6 else np.array([0.0, -1.0])
    named = np.clip(np.array(at) + LABEL_DISTANCE * away, 0.15, np.array(size) - 0.15)
    x = [(corner[0] + value) / WIDTH for value in (at[0], named[0])]
    y = [1.0 - (corner[1] + value) / page.height for value in (at[1], named[1])]
    page.figure.add_artist(Line2D(x, y, color="white", linewidth=2.6))
    page.figure.add_artist(Line2D(x, y, color=ACCENT, linewidth=1.2))
    page.figure.add_artist(Line2D(x[1:], y[1:], marker="o", markersize=15, color=ACCENT, markeredgecolor="white"))
    page.figure.text(x[1], y[1], label, size=8.5, color="white", weight="bold", ha="center", va="center_baseline")


def _figures(page: Page, top: float, result: Result) -> None:
    """The table beside the overview."""
    left, right = 5.95, WIDTH - MARGIN
    columns = (("platform", right - 1.72), ("axis", right - 1.08), ("turn", right - 0.5), ("seen", right))
    page.text(left, top + 0.14, "95 % bounds, of this scan alone", size=8.5, weight="bold", colour=ACCENT)
    y = top + 0.45
    page.text(left, y, "Site", size=8, colour=SOFT)
    for name, x in columns:
        page.text(x, y, name, size=8, colour=SOFT, align="right")
    page.rule(left, y + 0.09, right - left)
    for site in result.sites:
        y += 0.32
        page.text(left, y, site.site, size=9, weight="bold")
        page.text(left + 0.22, y, _short(site.scan_body, 17), size=8.5)
        turn = turn_bound(site.u95, site.index_order, "°")
        values = (f"{site.u95.platform_um:.1f} µm", f"{site.u95.axis_deg:.3f}°", turn, f"{100 * site.coverage:.0f} %")
        for value, (_, x) in zip(values, columns, strict=True):
            page.text(x, y, value, size=8.5, align="right")
    if not result.sites:
        page.text(left, y + 0.32, "No scan body was found in this scan.")
    notes = [f"Site {site.site}: {finding.cause}" for site in result.sites for finding in site.findings]
    warnings = [warning.partition(": ")[0] for warning in result.warnings]
    for note in [*notes, *warnings][:4]:
        y += 0.24
        page.text(left, y + 0.1, _short(printable(note), 58), size=7.5, colour=SOFT)


def _short(words: str, length: int) -> str:
    words = printable(words)
    return words if len(words) <= length else words[: length - 1] + "…"


def _legend(page: Page, top: float) -> None:
    wide, left = 3.3, MARGIN + 2.85
    page.rule(MARGIN, top + 0.12, WIDTH - 2 * MARGIN)
    y = top + 0.32
    page.text(MARGIN, y + 0.12, "Deviation from the CAD surface", size=9, weight="bold", colour=ACCENT)
    strip = np.tile(table()[np.linspace(0, 255, round(wide * DPI)).astype(np.intp)], (round(0.16 * DPI), 1, 1))
    page.image(left, y, strip)
    for value in (-RANGE_UM, -RANGE_UM / 2, 0.0, RANGE_UM / 2, RANGE_UM):
        x = left + wide * (value + RANGE_UM) / (2 * RANGE_UM)
        page.text(
            x, y + 0.32, f"{value:+.0f}".replace("-", "−") if value else "0 µm", size=7.5, colour=SOFT, align="center"
        )
    page.text(left - 0.08, y + 0.12, "inside", size=7.5, colour=SOFT, align="right")
    page.text(left + wide + 0.08, y + 0.12, "outside", size=7.5, colour=SOFT)
    swatch = np.tile(np.array(NO_VALUE, np.uint8), (round(0.16 * DPI), round(0.16 * DPI), 1))
    page.image(left + wide + 0.75, y, swatch)
    page.text(left + wide + 0.99, y + 0.12, "not part of the scan body", size=7.5, colour=SOFT)


def _card(page: Page, column: int, top: float, site: Site, scale: float) -> None:
    """One site: name, three views, figures."""
    wide = (WIDTH - 2 * MARGIN - GAP) / 2
    left = MARGIN + column * (wide + GAP)
    page.text(left, top + 0.16, site.site, size=12, weight="bold", colour=ACCENT)
    page.text(left + 0.25, top + 0.16, _short(f"{site.scan_body} on {site.connection}", 44), size=9.5, weight="bold")
    size = (round((wide - 0.16) / 3 * DPI), round((CARD - 0.85) * DPI))
    for number, azimuth in enumerate(VIEWS_DEG):
        x = left + number * (size[0] / DPI + 0.08)
        if site.map is not None:
            page.image(x, top + 0.3, side_view(site, site.map, azimuth, size, scale))
        side = "from the index mark" if azimuth == 0 else f"turned {azimuth:.0f}°"
        page.text(x + size[0] / DPI / 2, top + CARD - 0.40, side, size=7, colour=SOFT, align="center")
    x_mm, y_mm, z_mm = (float(value) for value in site.scan_from_connection[:3, 3])
    centre = f"platform centre  {x_mm:.3f}, {y_mm:.3f}, {z_mm:.3f} mm".replace("-", "−")
    spread = f"rms {site.deviation.rms_um:.1f} µm, mean {site.deviation.mean_um:+.1f} µm".replace("-", "−")
    page.text(left, top + CARD - 0.14, centre, size=7.5)
    page.text(left + wide, top + CARD - 0.14, spread, size=7.5, align="right")


def _common_scale(sites: tuple[Site, ...]) -> float:
    """Pixels a mm at which the largest body fits its view with 1 mm around it: one scale, so that sizes compare."""
    wide = (WIDTH - 2 * MARGIN - GAP) / 2
    boxes = [extent(site) for site in sites]
    across = max(2 * radius for _, _, radius in boxes) + 2.0
    tall = max(high - low for low, high, _ in boxes) + 3.0
    return min((wide - 0.16) / 3 * DPI / across, (CARD - 0.85) * DPI / tall)
