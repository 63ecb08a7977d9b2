"""A comparison of scans as a table on the terminal."""

from __future__ import annotations

import math
import sys

from rich import box
from rich.console import Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from stylobate.report.comparison import FIGURES, scan_names
from stylobate.report.table import PLAIN_WIDTH, Terminal
from stylobate.report.words import CAUTION, printable
from stylobate.several.comparing.components import Spread
from stylobate.several.comparing.model import Agreement, Comparison
from stylobate.several.comparing.moved import Moved
from stylobate.several.comparing.multiplicity import LEVEL

WORDS = {
    "platform": "centre µm",
    "side": "  sideways, each way µm",
    "height": "  in height µm",
    "axis": "axis °",
    "index": "turn °",
    "distance": "distance µm",
}


def show(comparison: Comparison) -> None:
    """Print a comparison on standard output. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(rendered(comparison))


def rendered(comparison: Comparison) -> RenderableType:
    """The whole of it, to be printed at any width from 80 columns on."""
    common = len(comparison.union.common())
    title = f"{len(comparison.union.records)} scans, {common} implants in common"
    blocks: list[RenderableType] = [Text(title, style="bold")]
    if comparison.agreement is not None:
        blocks.append(Text(agreement_sentence(comparison.agreement)))
    blocks += [*_moved(comparison), Text("")]
    blocks += [_repeats(comparison), Text(_key(comparison), style="dim"), Text(""), _pairs(comparison)]
    if comparison.contrasts:
        blocks += [Text(""), _contrasts(comparison)]
    blocks += [Text(""), Text(_pooled(comparison))]
    blocks += [Padding(Text(printable(note)), (0, 0, 0, 2)) for note in comparison.notes]
    return Group(*blocks, Text(""), Text(CAUTION, style="italic"), Text(""))


def agreement_sentence(agreement: Agreement) -> str:
    """Whether poses from elsewhere and scans agree, in words."""
    said = "agree within" if agreement.p >= LEVEL else "differ by more than"
    drift = "" if agreement.drift else " Drift is not counted, as nobody has stated it: it may be what differs."
    return (
        f"Poses from elsewhere and scans {said} what both state: p = {agreement.p:.2g} "
        f"(χ² = {agreement.squares:.1f}, {agreement.freedom} degrees of freedom).{drift}"
    )


def _moved(comparison: Comparison) -> list[RenderableType]:
    if comparison.moved:
        lines = [Text(moved_sentence(comparison, one), style="bold yellow") for one in comparison.moved]
    elif comparison.tried:
        lines = [Text("No site stands otherwise than in the other scans, as far as these scans can show.")]
    else:
        lines = [Text("Too few sites in common to name one that moved.")]
    found = [
        (label, height) for label, height in zip(comparison.union.labels(), comparison.findable, strict=True)
        if not math.isnan(height)
    ]  # fmt: skip
    if found:
        listed = ", ".join(f"site {printable(label)} {1e3 * height:.0f} µm" for label, height in found)
        lines.append(Text(f"Would be found 95 times in 100: a body standing high by {listed}.", style="dim"))
    return list(lines)


def moved_sentence(comparison: Comparison, moved: Moved) -> str:
    """One moved site in words."""
    scan, implant = moved.cell
    site = comparison.union.sites[implant][scan]
    x, y, z = (1e3 * float(value) for value in moved.shift)
    turn = "" if moved.turn_deg is None or abs(moved.turn_deg) < 0.005 else f", turned {moved.turn_deg:+.2f}°"
    labels = comparison.union.labels()
    others = "".join(f" or {printable(labels[i])} instead" for i in moved.instead)
    return (
        f"Site {printable(site.site if site else labels[implant])} of {printable(scan_names(comparison)[scan])} stands "
        f"otherwise: {math.hypot(x, y):.0f} µm sideways, {z:+.0f} µm in height (± {1e3 * moved.u95:.0f}){turn}; "
        f"p = {moved.p:.1g}{others}"
    )


def _repeats(comparison: Comparison) -> Table:
    table = _plain()
    table.add_column("Standard deviation\nof one scan", no_wrap=True)
    sources = [("", comparison.repeats.within)]
    if comparison.groups:
        sources = [(printable(group.name), group.repeats.within) for group in comparison.groups]
        sources += [("within", comparison.repeats.within), ("with groups", comparison.repeats.overall)]
    for name, _ in sources:
        table.add_column(name, justify="right", no_wrap=True)
    for key, words in WORDS.items():
        factor = FIGURES[key][1]
        table.add_row(words, *(_figure(spreads[key], factor, "°" in words) for _, spreads in sources))
    return table


def _figure(spread: Spread | None, factor: float, angle: bool) -> str:
    if spread is None:
        return "–"
    places = 3 if angle else 1
    return f"{factor * spread.sd:.{places}f}\n{factor * spread.low:.{places}f}–{factor * spread.high:.{places}f}"


def _key(comparison: Comparison) -> str:
    without = " Moved sites are left out." if comparison.moved else ""
    grouped = " within: repeatability. with groups: reproducibility." if comparison.groups else ""
    return (
        "Below each its 95 % interval. centre: over three axes; axis: over two tilts. What laying the scans on each "
        f"other takes up is put back.{without}{grouped}"
    )


def _pairs(comparison: Comparison) -> Table:
    labels = comparison.union.labels()
    table = _plain()
    table.add_column("Between", no_wrap=True)
    for name in ("mean mm", "least mm", "most mm", "sd µm"):
        table.add_column(name, justify="right", no_wrap=True)
    for pair in comparison.pairs:
        known = [distance for distance in pair.distances if distance is not None]
        i, j = pair.implants
        sd = "–" if pair.sd is None else f"{1e3 * pair.sd:.1f}"
        figures = (sum(known) / len(known), min(known), max(known))
        table.add_row(f"{printable(labels[i])} – {printable(labels[j])}", *(f"{value:.3f}" for value in figures), sd)
    return table


def _contrasts(comparison: Comparison) -> Table:
    labels = comparison.union.labels()
    table = _plain()
    for name in ("Mean distance", "between", "differs µm", "± µm"):
        table.add_column(name, justify="left" if name in ("Mean distance", "between") else "right", no_wrap=True)
    for one in comparison.contrasts:
        i, j = one.implants
        table.add_row(
            f"{printable(one.groups[1])} – {printable(one.groups[0])}",
            f"{printable(labels[i])} – {printable(labels[j])}",
            f"{1e3 * one.difference:+.1f}",
            f"{1e3 * one.u95:.1f}",
        )
    return table


def _pooled(comparison: Comparison) -> str:
    if comparison.pooled is None:
        return f"Not pooled: {printable(comparison.why_not_pooled)}."
    count = len(comparison.pooled.result.sites)
    scans = len(comparison.pooled.sources)
    return f"result.json: {count} sites, pooled from {scans} scans, in the coordinates of the first."


def _plain() -> Table:
    return Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
