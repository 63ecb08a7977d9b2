"""`stylobate parts foretell`: which scan body will fix its implant best, before any scan."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import click

from stylobate.app.tables import print_table

DEEPEST_MM = 30.0


class HeightsType(click.ParamType[tuple[float, ...]]):
    """A,B,…: heights in millimetres."""

    name = "mm,mm,…"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> tuple[float, ...]:
        """Finite numbers from 0 to DEEPEST_MM, in order."""
        if isinstance(value, tuple):
            return value
        try:
            numbers = tuple(float(word) for word in str(value).split(","))
        except ValueError:
            numbers = (math.nan,)
        if not all(0.0 <= number <= DEEPEST_MM for number in numbers):
            self.fail(f"'{value}' is no list of heights in mm; write it like --tissue 1,2.5,4", param, ctx)
        return tuple(sorted(set(numbers)))


@click.command()
@click.argument("parts", type=click.Path(path_type=Path))
@click.option("--scan-body", "scan_bodies", multiple=True, metavar="ID", help="Only this scan body; may be repeated.")
@click.option(
    "--tissue", type=HeightsType(), default="0,2,4", show_default=True, metavar="MM,MM…",
    help="Heights of the gingiva above the platform.",
)  # fmt: skip
@click.option("--white-um", type=click.FloatRange(1, 200), default=8.0, show_default=True, help="Noise of a point.")
@click.option(
    "--correlated-um", type=click.FloatRange(0.1, 200), default=10.0, show_default=True,
    help="Noise that neighbours share.",
)  # fmt: skip
@click.option(
    "--length", type=click.FloatRange(0.05, 10), default=0.8, show_default=True, help="How far they share it, mm."
)
@click.option(
    "--edge", type=click.FloatRange(0.02, 2), default=0.2, show_default=True, help="Edge of the scan's triangles, mm."
)
def foretell(
    parts: Path, scan_bodies: tuple[str, ...], tissue: tuple[float, ...], white_um: float, correlated_um: float,
    length: float, edge: float,
) -> int:  # fmt: skip
    """Foretell how well each scan body will fix its implant.

    For each height of the gingiva the scan bodies are listed best first, with the 95 % bounds that a scan with this
    noise will have. The noise of your own scanner is what counts: the defaults are no scanner's.
    """
    from stylobate.core.errors import UsageError
    from stylobate.foretell import TYPICAL
    from stylobate.foretell import foretell as look_ahead
    from stylobate.parts import load_parts
    from stylobate.report.figures import turn_bound

    folder = load_parts(parts)
    known = [body.id for body in folder.scan_bodies]
    for name in scan_bodies:
        if name not in known:
            ids = ", ".join(known)
            raise UsageError(f"scan body '{name}' is not in the parts folder '{folder.name}'. It has: {ids}.")
    noise = replace(TYPICAL, white_sd=white_um * 1e-3, correlated_sd=correlated_um * 1e-3, length=length)
    bodies = [body for body in folder.scan_bodies if not scan_bodies or body.id in scan_bodies]
    orders = {body.id: folder.connection(body.seats_on).index_order for body in bodies}
    rows: list[tuple[object, ...]] = []
    for height in tissue:
        found = [look_ahead(body, orders[body.id], height, noise, edge) for body in bodies]
        found.sort(key=lambda f: f.u95.platform_um if f.u95 is not None else math.inf)
        for k, one in enumerate(found):
            place = (f"{height:g}" if k == 0 else "", one.scan_body, f"{100 * one.shown:.0f}")
            if one.u95 is None:
                rows.append((*place, "too little is shown", None, None))
                continue
            turn = turn_bound(one.u95, orders[one.scan_body])
            rows.append((*place, f"{one.u95.platform_um:.1f}", f"{one.u95.axis_deg:.3f}", turn))
    columns = ("Tissue mm", "Scan body", "Shown %", "Centre ± µm", "Axis ± °", "Turn ± °")
    print_table(columns, rows, right=("Tissue mm", "Shown %", "Centre ± µm", "Axis ± °", "Turn ± °"))
    click.echo("of the scan alone; the made part, its seating and drift come on top")
    return 0
