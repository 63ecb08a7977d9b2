"""A measurement in the terminal, as a clinician reads it: positions first, then what stands against them."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from itertools import pairwise

from rich import box
from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from stylobate.core.result import Pair, Result, Site
from stylobate.report.figures import number, turn_bound
from stylobate.report.words import SCAN, Wording, finding_sentence, printable, verdict_lines

PLAIN_WIDTH = 100
"""Columns when the output is not a terminal."""


class Terminal(Console):
    """Standard output; a reader that has gone is the caller's to deal with, not an exit from here."""

    def on_broken_pipe(self) -> None:
        """Raises BrokenPipeError."""
        raise BrokenPipeError


def show(result: Result, words: Wording = SCAN) -> None:
    """Print a measurement on standard output. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(rendered(result, words))


def rendered(result: Result, words: Wording = SCAN) -> RenderableType:
    """The whole of it, to be printed at any width from 80 columns on."""
    count = len(result.sites)
    title = f"{count} {words.one if count == 1 else words.many} in {printable(result.scan.file)}"
    under = [f"{result.scan.triangles:,} triangles"] if result.scan.triangles else []
    if result.parts.name:
        under.append(f"parts: {printable(result.parts.name)}, {printable(result.parts.revision)}")
    blocks: list[RenderableType] = [Text(title, style="bold"), Text(" · ".join(under), style="dim")]
    if result.sites:
        blocks.append(_sites(result.sites, words.laid))
        blocks.append(Text(words.key, style="dim"))
    else:
        blocks.append(Text(f"\n{words.none}"))
    if result.pairs:
        blocks += [Text(""), _pairs(neighbours(result))]
    blocks += _list("Verdict", verdict_lines(result), "bold")
    findings = [finding_sentence(site.site, finding) for site in result.sites for finding in site.findings]
    blocks += _list("Findings", findings, "bold yellow")
    blocks += _list("Warnings", (printable(text) for text in result.warnings), "bold yellow")
    blocks += _list(words.cannot, (f"{item.what}: {item.check}" for item in result.not_shown), "bold")
    blocks += [Text(""), Text(words.caution, style="italic"), Text("")]
    return Group(*blocks)


def neighbours(result: Result) -> list[Pair]:
    """The pairs that follow each other along the arch, and the two ends: what a frame has to span."""
    order = [site.site for site in result.sites]
    wanted = {frozenset(pair) for pair in pairwise(order)} | {frozenset((order[0], order[-1]))}
    return [pair for pair in result.pairs if frozenset(pair.sites) in wanted]


def _table() -> Table:
    return Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")


def _sites(sites: tuple[Site, ...], laid: str) -> Table:
    table = _table()
    table.add_column("\nSite", justify="right", no_wrap=True)
    table.add_column(f"\n{laid}", overflow="fold")
    for name in ("x\nmm", "y\nmm", "z\nmm", "centre\n± µm", "axis\n± °", "turn\n± °", "rms\nµm", "seen\n%"):
        table.add_column(name, justify="right", no_wrap=True)
    for site in sites:
        x, y, z = (float(value) for value in site.scan_from_connection[:3, 3])
        table.add_row(
            site.site,
            Text(f"{printable(site.scan_body)}\non {printable(site.connection)}"),
            *(f"{value:.3f}" for value in (x, y, z)),
            f"{site.u95.platform_um:.1f}",
            f"{site.u95.axis_deg:.3f}",
            turn_bound(site.u95, site.index_order),
            number(site.deviation.rms_um, 1),
            number(100 * site.coverage, 0),
        )
    return table


def _pairs(pairs: list[Pair]) -> Table:
    table = _table()
    for name in ("Between", "distance mm", "± µm", "angle °", "±°"):
        table.add_column(name, justify="right", no_wrap=True)
    for pair in pairs:
        table.add_row(
            f"{pair.sites[0]} – {pair.sites[1]}",
            f"{pair.distance_mm:.3f}",
            f"{pair.u95_um:.1f}",
            f"{pair.angle_deg:.2f}",
            f"{pair.angle_u95_deg:.3f}",
        )
    return table


def _list(heading: str, lines: Iterable[str], style: str) -> list[RenderableType]:
    items = [Padding(Text(line), (0, 0, 0, 2)) for line in lines]
    return [Text(""), Text(heading, style=style), *items] if items else []
