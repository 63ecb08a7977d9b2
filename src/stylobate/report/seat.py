"""How a frame would rest: seat.json, and the same in the terminal."""

from __future__ import annotations

import re
import sys
from typing import Any

from rich import box
from rich.console import Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from stylobate import __version__
from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.report.table import PLAIN_WIDTH, Terminal
from stylobate.report.words import printable
from stylobate.several.seating.model import OneScrew, Probability, Seat

FORMAT = "stylobate-seat"
VERSION = 1
SEAT = "seat.json"
OWNED = re.compile(r"(?!)")
"""No other file of an earlier run is to be taken away."""
NO_LIMIT_PROVEN = (
    "No limit of misfit is proven; levels named in the literature are 10, 30, 50, 100 and 150 µm. The limit is yours. "
    "A gap in µm is not a strain: a try-in, the one-screw test and a radiograph decide."
)


def save_seat(seat: Seat, staging: Staging) -> None:
    """Write seat.json. Raises OutputError, with the folder as it was."""
    staging.write(SEAT, laid_out(document(seat)).encode())
    staging.commit(SEAT, OWNED)


def document(seat: Seat) -> dict[str, Any]:
    """seat.json as nested dicts and lists (docs/conventions)."""
    values: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "frame": seat.frame,
        "on": seat.on,
        "scans_sha256": list(seat.scans),
        "limit_um": seat.limit_um,
        "side_limit_um": seat.side_limit_um,
        "rim_diameter": seat.rim_diameter,
        "sites": [],
        "worst_gap_um": seat.worst.gap_um,
        "worst_side_um": seat.worst.side_um,
        "one_screw": [_one_screw(test) for test in seat.one_screw],
    }
    for site in seat.sites:
        entry: dict[str, Any] = {"site": site.site, "gap_um": site.gap_um, "side_um": site.side_um}
        if seat.on is None:
            entry |= {"gap_p95_um": site.gap_p95_um, "side_p95_um": site.side_p95_um, "share_worst": site.share_worst}
        else:
            entry["turn_deg"] = site.turn_deg
        values["sites"].append(entry)
    if seat.on is None:
        values |= _drawn(seat)
    else:
        values["matched"] = [{"frame": one, "on": two} for one, two in seat.matched]
        values["stands_out"] = seat.stands_out
        values["without"] = [
            {"site": left.site, "worst_gap_um": left.worst_gap_um, "worst_side_um": left.worst_side_um}
            for left in seat.without
        ]
    return values | {"notes": list(seat.notes)}


def _drawn(seat: Seat) -> dict[str, Any]:
    assert seat.gap_within is not None
    assert seat.all_within is not None
    return {
        "worst_gap_p95_um": seat.worst.gap_p95_um,
        "worst_side_p95_um": seat.worst.side_p95_um,
        "probability_gap_within_limit": seat.gap_within.value,
        "probability_within_limits": seat.all_within.value,
        "probability_gap_within_limit_interval": [seat.gap_within.low, seat.gap_within.high],
        "probability_within_limits_interval": [seat.all_within.low, seat.all_within.high],
        "draws": seat.draws,
        "seed": seat.seed,
        "counted": list(seat.counted),
        "repeat": [
            {
                "site": repeat.site,
                "share": repeat.share,
                "worst_gap_p95_um": repeat.worst_gap_p95_um,
                "worst_side_p95_um": repeat.worst_side_p95_um,
                "probability_within_limits": repeat.probability_within_limits,
            }
            for repeat in seat.repeat
        ],
    }


def _one_screw(test: OneScrew) -> dict[str, Any]:
    values: dict[str, Any] = {"tight": test.tight, "gaps_um": dict(test.gaps_um)}
    return values if test.gaps_p95_um is None else values | {"gaps_p95_um": dict(test.gaps_p95_um)}


def show_seat(seat: Seat) -> None:
    """Print it on standard output. Raises BrokenPipeError."""
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(rendered(seat))


def rendered(seat: Seat) -> RenderableType:
    """The whole of it, to be printed at any width from 80 columns on."""
    rim = "each platform's rim" if seat.rim_diameter is None else f"rims of {seat.rim_diameter:g} mm"
    limits = f"limits {seat.limit_um:g} µm gap, {seat.side_limit_um:g} µm side · {rim}"
    below = f"on the poses of {printable(seat.on)}" if seat.on is not None else "on its own uncertainty"
    title = f"A rigid frame made to {printable(seat.frame)}, {below}"
    blocks: list[RenderableType] = [Text(title, style="bold"), Text(limits, style="dim"), _sites(seat)]
    if seat.all_within is not None and seat.gap_within is not None:
        blocks.append(Text(f"Every gap within its limit: {_percent(seat.gap_within)}"))
        blocks.append(Text(f"Every gap and side within limits: {_percent(seat.all_within)}", style="bold"))
        blocks.append(Text(f"{seat.draws} draws of: {', '.join(map(printable, seat.counted))}", style="dim"))
    blocks.append(_one_screws(seat))
    if seat.repeat:
        blocks.append(_repeats(seat))
    if seat.without:
        blocks.append(_without(seat))
    if seat.stands_out is not None:
        name = printable(seat.stands_out)
        blocks.append(Text(f"Site {name} stands out: without it the others are within limits.", style="bold yellow"))
    blocks += [Padding(Text(printable(note)), (1, 0, 0, 0)) for note in (*seat.notes, NO_LIMIT_PROVEN)]
    return Group(*blocks)


def _percent(probability: Probability) -> str:
    figures = (100 * value for value in (probability.value, probability.low, probability.high))
    return "{:.2f} % (95 %: {:.2f} to {:.2f})".format(*figures)


def _table(*columns: str) -> Table:
    table = Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
    for k, name in enumerate(columns):
        table.add_column(name, justify="left" if k == 0 else "right", no_wrap=k > 0, overflow="fold")
    return table


def _sites(seat: Seat) -> Table:
    drawn = seat.on is None
    table = _table("Site", "gap µm", "95 %", "side µm", "95 %", "worst one %") if drawn else _table(
        "Site", "rests on", "gap µm", "side µm", "turned °"
    )  # fmt: skip
    others = dict(seat.matched)
    for site in seat.sites:
        name = printable(site.site)
        if drawn:
            figures = (site.gap_um, site.gap_p95_um, site.side_um, site.side_p95_um)
            share = 0.0 if site.share_worst is None else 100 * site.share_worst
            table.add_row(name, *map(_um, figures), f"{share:.0f}")
        else:
            turned = "–" if site.turn_deg is None else f"{site.turn_deg:.2f}"
            table.add_row(name, printable(others[site.site]), _um(site.gap_um), _um(site.side_um), turned)
    worst = seat.worst
    if drawn:
        figures = (worst.gap_um, worst.gap_p95_um, worst.side_um, worst.side_p95_um)
        table.add_row("largest", *map(_um, figures), "", style="bold")
    else:
        table.add_row("largest", "", _um(worst.gap_um), _um(worst.side_um), style="bold")
    return table


def _um(value: float | None) -> str:
    return "–" if value is None else f"{abs(value):.1f}"


def _one_screws(seat: Seat) -> Table:
    table = _table("One screw tight", *(f"gap {printable(site.site)}" for site in seat.sites))
    for test in seat.one_screw:
        table.add_row(printable(test.tight), *(_um(test.gaps_um[site.site]) for site in seat.sites))
    return table


def _repeats(seat: Seat) -> Table:
    table = _table("A second scan of site", "its share %", "gap 95 % µm", "side 95 % µm", "within limits %")
    for repeat in seat.repeat:
        table.add_row(
            printable(repeat.site),
            f"{100 * repeat.share:.0f}",
            _um(repeat.worst_gap_p95_um),
            _um(repeat.worst_side_p95_um),
            f"{100 * repeat.probability_within_limits:.1f}",
        )
    return table


def _without(seat: Seat) -> Table:
    table = _table("Were this site not there", "largest gap µm", "largest side µm")
    for left in seat.without:
        table.add_row(printable(left.site), _um(left.worst_gap_um), _um(left.worst_side_um))
    return table
