"""A scanner's profile: profile.json, and the same in the terminal."""

from __future__ import annotations

import re
import sys
from typing import Any

from rich import box
from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from stylobate import __version__
from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.report.table import PLAIN_WIDTH, Terminal
from stylobate.report.words import printable
from stylobate.settings import DRIFT_MM
from stylobate.several.drifting.model import Estimate, Profile
from stylobate.several.drifting.read import FORMAT, PROFILE, VERSION

OWNED = re.compile(r"(?!)")
PRECISION_ONLY = (
    "Precision only: no reference was measured, so an error that all scans share, a wrong scale, is not seen."
)


def save_profile(profile: Profile, staging: Staging) -> None:
    """Write profile.json. Raises OutputError, with the folder as it was."""
    staging.write(PROFILE, laid_out(document(profile)).encode())
    staging.commit(PROFILE, OWNED)


def document(profile: Profile) -> dict[str, Any]:
    """profile.json as nested dicts and lists (docs/conventions)."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "scanner": profile.scanner,
        "unit": profile.unit,
        "shift_um": _estimate(profile.shift_um),
        "turn_deg": _estimate(profile.turn_deg),
        "scale_ppm": None if profile.scale_ppm is None else _estimate(profile.scale_ppm),
        "scans": list(profile.scans),
        "reference": profile.reference,
        "sites": profile.sites,
        "span_mm": profile.span_mm,
    }


def _estimate(estimate: Estimate) -> dict[str, float]:
    return {"value": estimate.value, "u": estimate.u, "low": estimate.low, "high": estimate.high}


def show_profile(profile: Profile) -> None:
    """Print it on standard output. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(rendered(profile))


def rendered(profile: Profile) -> RenderableType:
    """The whole of it, to be printed at any width from 80 columns on."""
    name = printable(f"{profile.scanner} {profile.unit}".strip())
    made = f"{len(profile.scans)} scans of {profile.sites} sites over {profile.span_mm:.0f} mm of arch"
    against = "" if profile.reference is None else f", against {printable(profile.reference)}"
    table = Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
    for k, column in enumerate(("Drift of a scan", "value", "u", "95 %")):
        table.add_column(column, justify="left" if k == 0 else "right", no_wrap=k > 0)
    table.add_row(f"shift after {DRIFT_MM:g} mm, each direction, µm", *_figures(profile.shift_um, 1))
    table.add_row(f"turn after {DRIFT_MM:g} mm, about each direction, °", *_figures(profile.turn_deg, 3))
    if profile.scale_ppm is not None:
        table.add_row("scale, millionths (µm a metre)", *_figures(profile.scale_ppm, 0))
    blocks: list[RenderableType] = [Text(f"Profile of {name}", style="bold"), Text(made + against, style="dim"), table]
    if profile.scale_ppm is None:
        blocks.append(Text(PRECISION_ONLY))
    return Group(*blocks)


def _figures(estimate: Estimate, digits: int) -> tuple[str, str, str]:
    value, u, low, high = (f"{v:.{digits}f}" for v in (estimate.value, estimate.u, estimate.low, estimate.high))
    return value, u, f"{low} to {high}"
