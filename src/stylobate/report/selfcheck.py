"""A self-check in the terminal and as selfcheck.json."""

from __future__ import annotations

import re
import sys
from dataclasses import asdict

from rich import box
from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.report.table import PLAIN_WIDTH, Terminal
from stylobate.report.words import printable
from stylobate.selfcheck import Pooled, SelfCheck

FILE = "selfcheck.json"
FORMAT, VERSION = "stylobate-selfcheck", 1
OWNED = re.compile(r"(?!)")  # nothing beside it is its own


def save_selfcheck(found: SelfCheck, area: Staging) -> None:
    """Write selfcheck.json. Raises OutputError."""
    values = {
        "format": FORMAT,
        "version": VERSION,
        "sites": [asdict(one) for one in found.sites],
        "pooled": [asdict(one) | {"holds": one.holds} for one in found.pooled],
    }
    area.write(FILE, laid_out(values).encode())
    area.commit(FILE, OWNED)


def show_selfcheck(found: SelfCheck) -> None:
    """Print it. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(_rendered(found))


def _rendered(found: SelfCheck) -> RenderableType:
    if not found.sites:
        return Text("No site was found that is large enough to be halved.")
    table = Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
    table.add_column("Scan\nsite, scan body", overflow="fold")
    for name in ("cells\nmm", "apart\nµm", "stated\nµm", "tilted\n°", "stated\n°", "χ²", "of", "p"):
        table.add_column(name, justify="right", no_wrap=True)
    for one in found.sites:
        table.add_row(
            Text(f"{printable(one.scan)}\n{one.site}, {printable(one.scan_body)}"),
            f"{one.cell_mm:g}", f"{one.shift_um:.1f}", f"{one.stated_um:.1f}", f"{one.tilt_deg:.3f}",
            f"{one.stated_deg:.3f}", f"{one.chi2:.1f}", str(one.freedom), f"{one.p:.3f}",
        )  # fmt: skip
    return Group(table, *(Text(_sentence(one)) for one in found.pooled))


def _sentence(one: Pooled) -> str:
    """What the pooled figure says."""
    says = "the stated uncertainty holds" if one.holds else "it does not hold"
    if not one.holds:
        says += ": it is too small" if one.ratio > one.high else ": it is too large"
    return (
        f"Cells of {one.cell_mm:g} mm, {one.sites} sites: χ² is {one.ratio:.2f} of its expectation; {one.low:.2f} to "
        f"{one.high:.2f} in 95 of 100 sets: {says}."
    )
