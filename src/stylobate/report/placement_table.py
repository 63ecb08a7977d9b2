"""A placement in the terminal: what stands on each site, where its channel leaves, and what else would do."""

from __future__ import annotations

import sys
from collections.abc import Iterable

from rich import box
from rich.console import Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from stylobate.build.model import Insertion, Nearness, PlacedSite, Placement
from stylobate.report.table import PLAIN_WIDTH, Terminal
from stylobate.report.words import printable

MOST_OPTIONS = 3
"""Other options that are shown for a site; place.json holds all."""

CAUTION = (
    "Decision support, not a medical device: the licensed clinician decides, and the makers' instructions prevail."
)
Chain = tuple[tuple[str, int], ...]


def show_placement(placement: Placement) -> None:
    """Print a placement on standard output. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(rendered(placement))


def rendered(placement: Placement) -> RenderableType:
    """The whole of it, to be printed at any width from 80 columns on."""
    count = sum(len(site.chain) for site in placement.sites)
    where = f"{len(placement.sites)} site{'' if len(placement.sites) == 1 else 's'}"
    title = f"{count} part{'' if count == 1 else 's'} on {where} of {printable(placement.result)}"
    blocks: list[RenderableType] = [Text(title, style="bold"), _sites(placement.sites)]
    blocks.append(
        Text("@: turn, counted in index positions. channel: angle to the aim. lean: from the axis.", style="dim")
    )
    if len(placement.sites) > 1:
        blocks += [Text(""), Text("One path of insertion", style="bold"), _line(_path(placement.insertion))]
        blocks += [_line(text) for text in _joint_lines(placement)]
    blocks += _section("Near each other", (_near(near) for near in placement.near), "bold")
    notes = [f"Site {site.site}: {note}" for site in placement.sites for note in site.notes]
    blocks += _section("Look at this", [*placement.warnings, *notes], "bold yellow")
    blocks += _section("Other options", _others(placement.sites), "bold")
    blocks += _section("Torques", _torques(placement.sites), "bold")
    blocks += [Text(""), Text(CAUTION, style="italic"), Text("")]
    return Group(*blocks)


def _sites(sites: tuple[PlacedSite, ...]) -> Table:
    table = Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
    table.add_column("\nSite", justify="right", no_wrap=True)
    table.add_column("\nParts, from below", overflow="fold")
    columns = ["channel\n°", "lean\n°", "± 95 %\n°"]
    tissue, room = any(site.tissue for site in sites), any(site.room_mm is not None for site in sites)
    exits = any(site.channel.exit for site in sites)
    columns += ["tissue\nmm"] * tissue + ["room\nmm"] * room + ["exit off\nmm", "wall\nmm"] * exits
    for name in columns:
        table.add_column(name, justify="right", no_wrap=True)
    for site in sites:
        row = [f"{site.channel.angle_to_aim_deg:.1f}", f"{site.channel.lean_deg:.1f}", f"{site.channel.u95_deg:.2f}"]
        if tissue:
            row.append(_span(site))
        if room:
            row.append(_figure(site.room_mm))
        if exits:
            out = site.channel.exit
            row += [_figure(out.from_middle_mm if out else None), _figure(out.wall_mm if out else None)]
        table.add_row(site.site, Text(_words(tuple((link.part.id, link.turn) for link in site.chain)) or "–"), *row)
    return table


def _span(site: PlacedSite) -> str:
    if site.tissue is None or site.tissue.least is None:
        return "–"
    return f"{site.tissue.least:.1f}–{site.tissue.greatest:.1f}"


def _figure(value: float | None) -> str:
    return "–" if value is None else f"{value:.1f}"


def _words(chain: Chain) -> str:
    return " + ".join(f"{part} @{turn}" for part, turn in chain)


def _path(insertion: Insertion) -> str:
    answer = {True: "yes", False: "no", None: "not certain"}[insertion.one_path]
    return (
        f"{answer}: {insertion.because}; the axes lie in a cone of {insertion.spread_deg:.2f}° "
        f"(± {insertion.u95_deg:.2f}°)"
    )


def _joint_lines(placement: Placement) -> list[str]:
    if not placement.joint:
        return ["no choice of parts gives these sites a common path"]
    best = placement.joint[0]
    if best.chains == tuple(tuple((link.part.id, link.turn) for link in site.chain) for site in placement.sites):
        return []
    chains = "; ".join(
        f"{site.site}: {_words(chain)}" for site, chain in zip(placement.sites, best.chains, strict=True)
    )
    return [f"best choice with one path (channels within {best.worst_angle_to_aim_deg:.1f}° of their aims): {chains}"]


def _near(near: Nearness) -> str:
    one, two = (f"{part} on site {site}" for site, part in zip(near.sites, near.parts, strict=True))
    if near.clearance_mm < 0:
        return f"{one} and {two} overlap by {-near.clearance_mm:.2f} mm"
    return f"{one} and {two}: {near.clearance_mm:.2f} mm apart"


def _others(sites: tuple[PlacedSite, ...]) -> list[str]:
    lines = []
    for site in sites:
        taken = tuple((link.part.id, link.turn) for link in site.chain)
        others = [option for option in site.options if option.chain != taken]
        if not others:
            continue
        shown = "; ".join(
            f"{_words(option.chain)} ({option.angle_to_aim_deg:.1f}°)" for option in others[:MOST_OPTIONS]
        )
        rest = len(others) - MOST_OPTIONS
        lines.append(f"Site {site.site}: {shown}" + (f"; and {rest} more in place.json" if rest > 0 else ""))
    return lines


def _torques(sites: tuple[PlacedSite, ...]) -> list[str]:
    lines = []
    for site in sites:
        for link in site.chain:
            torque = link.part.torque_ncm
            words = "the parts folder states none" if torque is None else _range(torque)
            lines.append(f"Site {site.site}, {link.part.id}: {words}")
    return lines


def _range(torque: tuple[float, float]) -> str:
    low, high = torque
    return f"{low:g} N·cm" if low == high else f"{low:g} to {high:g} N·cm"


def _line(text: str) -> Padding:
    return Padding(Text(printable(text)), (0, 0, 0, 2))


def _section(heading: str, lines: Iterable[str], style: str) -> list[RenderableType]:
    items = [_line(line) for line in lines]
    return [Text(""), Text(heading, style=style), *items] if items else []
