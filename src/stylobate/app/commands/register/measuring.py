"""Measurements with units: entering, acceptance, wear; how frames fitted."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.app.commands.register.options import (
    at_option,
    many,
    numbers_argument,
    numbers_of,
    register_option,
)
from stylobate.app.tables import print_table

if TYPE_CHECKING:
    from stylobate.register.frames import Fitted, Gap


@click.command()
@click.argument("number")
@click.argument("result", type=click.Path(path_type=Path))
@click.option("--site", required=True, help="At which site of the result the unit stood.")
@click.option("--case", metavar="NAME", help="The case it was used in.")
@click.option("--bench", is_flag=True, help="It was scanned on the bench, in no patient.")
@click.option("--scanner", metavar="NAME", help="Which scanner; drift is compared within one scanner.")
@click.option("--sprayed", is_flag=True, help="It was sprayed for the scan; such scans are left out of the drift.")
@click.option("--override", metavar="REASON", help="Enter it although the unit may not be used; logged.")
@at_option
@register_option
def measured(
    number: str, result: Path, site: str, case: str | None, bench: bool, scanner: str | None, sprayed: bool,
    override: str | None, at: str | None, file: Path | None,
) -> int:  # fmt: skip
    """Add a measurement to a unit's history.

    RESULT is a result.json or the folder that holds one. A unit that is retired, used up or not yet accepted on the
    bench is refused; what happened all the same is entered with --override.
    """
    from stylobate.core.errors import UsageError
    from stylobate.record import read_result
    from stylobate.register import open_register
    from stylobate.register.entries import moment
    from stylobate.register.measured import Use, enter_measurement, wear

    if bench == (case is not None):
        raise UsageError("say where it was scanned: --case NAME, or --bench")
    record = read_result(result)
    use = Use(case, moment(at), scanner, sprayed, override)
    with open_register(file) as register:
        unit = enter_measurement(register, number, record, site, use)
        views = [view for view in wear(register) if view.unit.number == unit.number]
    where = "on the bench" if case is None else f"in case {case}"
    click.echo(f"unit {unit.number}: measurement {where} entered, after {many(unit.cycles, 'cycle')}")
    for warning in (text for view in views for text in view.warnings):
        click.echo(f"unit {unit.number}: {warning}")
    return 0


@click.command()
@numbers_argument()
@click.option("--limit-um", type=click.FloatRange(min=0, min_open=True), metavar="X", help="Largest p95 deviation.")
@click.option("--without-scan", metavar="REASON", help="Accept without a bench scan, by your word; logged.")
@at_option
@register_option
def accept(
    numbers: tuple[str, ...], limit_um: float | None, without_scan: str | None, at: str | None, file: Path | None
) -> int:
    """Judge new units by their bench scans against their CAD.

    Accepted where the mean p95 deviation plus its uncertainty is within the limit; rejected where it is beyond even
    less the uncertainty; else undecided. Two scans or more are needed, and the scanner's own noise counts against the
    unit.
    """
    from stylobate.core.errors import UsageError
    from stylobate.register import open_register
    from stylobate.register.bench import accept as judge
    from stylobate.register.bench import accept_unseen
    from stylobate.register.entries import moment

    if (limit_um is None) == (without_scan is None):
        raise UsageError("give --limit-um, or --without-scan with the reason")
    names, when = numbers_of(numbers), moment(at)
    with open_register(file) as register:
        if limit_um is None:
            for name in accept_unseen(register, names, without_scan or "", when):
                click.echo(f"{name}: accepted without a bench scan")
            return 0
        for found in judge(register, names, limit_um, when):
            click.echo(f"{found.unit}: {found.verdict}; {found.because}")
    return 0


@click.command()
@numbers_argument()
@click.option("--case", metavar="NAME", help="The case they are meant for.")
@register_option
def check(numbers: tuple[str, ...], case: str | None, file: Path | None) -> int:
    """Ask before use: may these units be used?

    Exit status: 0 all may; 2 not all, with the reasons.
    """
    from stylobate.core.errors import RegisterError
    from stylobate.register import open_register
    from stylobate.register.entries import known
    from stylobate.register.units import objections, units

    with open_register(file) as register:
        found = units(register, known(register, numbers_of(numbers)))
    against = [f"{unit.number}: {'; '.join(reasons)}" for unit in found if (reasons := objections(unit, case))]
    if against:
        raise RegisterError(f"may not be used: {' | '.join(against)}", tuple(against))
    click.echo(f"may be used: {', '.join(unit.number for unit in found)}")
    return 0


@click.command()
@register_option
def due(file: Path | None) -> int:
    """List units that need something: retiring, acceptance, a look at their wear."""
    from stylobate.register import open_register
    from stylobate.register.measured import wear
    from stylobate.register.units import SOON, units

    rows: list[tuple[str, str, str]] = []
    with open_register(file) as register:
        for unit in units(register):
            if unit.retired_at is not None:
                continue
            kind, left = unit.kind, unit.cycles_left
            if kind.single_use and unit.cases:
                rows.append((unit.number, "retire", f"for single use, and used in case {unit.cases[0]}"))
            if left is not None and left <= SOON:
                word = "retire" if left <= 0 else "soon"
                rows.append((unit.number, word, f"{unit.cycles} cycles of {kind.max_cycles} allowed"))
            if unit.bench is None:
                rows.append((unit.number, "accept", "not yet accepted on the bench"))
            if unit.bench == "rejected":
                rows.append((unit.number, "retire", "rejected on the bench"))
        rows += [(view.unit.number, "wear", text) for view in wear(register) for text in view.warnings]
    if not rows:
        click.echo("nothing is due")
        return 0
    print_table(("Unit", "Due", "Why"), rows)
    return 0


@click.command()
@register_option
def wear(file: Path | None) -> int:
    """Show how units change with their cycles, with 95 % uncertainty.

    A unit is said to drift when its slope would come up by chance in less than 1 % of looks at a unit that does not.
    """
    from stylobate.register import open_register
    from stylobate.register.measured import common_slopes
    from stylobate.register.measured import wear as outlooks

    with open_register(file) as register:
        views, common = outlooks(register), common_slopes(register)
    if not views:
        click.echo("no measurement of a unit in use is entered yet; 'stylobate register measured' enters one")
        return 0
    rows: list[tuple[object, ...]] = []
    for view in views:
        if not view.outlooks:
            rows.append(
                (view.unit.number, "–", view.points, None, None, "too few measurements, or all after the same cycles")
            )
        for name, look in view.outlooks.items():
            slope = look.slope
            said = ["drifts"] if look.drifts else []
            if look.limit is not None:
                said.append(f"limit {view.unit.kind.wear_limit_um:g} µm: {look.limit}")
            rows.append((
                view.unit.number, name, slope.points, f"{slope.per_cycle_um:+.2f} ± {slope.u95_um(1):.2f}",
                f"{look.change_um:+.0f} ± {look.change_u95_um:.0f}", "; ".join(said) or None,
            ))  # fmt: skip
    for body, slopes in common.items():
        for name, slope in slopes.items():
            line = f"{slope.per_cycle_um:+.2f} ± {slope.u95_um(1):.2f}"
            rows.append((f"all {body}", name, slope.points, line, None, None))
    columns = ("Unit", "Of", "Scans", "µm a cycle", "since new, µm", "")
    print_table(columns, rows, right=("Scans", "µm a cycle", "since new, µm"))
    return 0


class GapType(click.ParamType[tuple[str, float]]):
    """SITE=µm."""

    name = "site=µm"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> tuple[str, float]:
        """A site's name and a gap of 0 µm or more."""
        if isinstance(value, tuple):
            return value
        site, _, text = str(value).rpartition("=")
        try:
            gap = float(text)
        except ValueError:
            gap = math.nan
        if not site or not math.isfinite(gap) or gap < 0:
            self.fail(f"'{value}' is no gap; write site and µm, like --gap 2=60", param, ctx)
        return site, gap


@click.command()
@click.argument("case")
@click.option(
    "--seat", required=True, type=click.Path(path_type=Path), help="What was predicted: seat.json or its folder."
)
@click.option("--gap", "gaps", multiple=True, type=GapType(), metavar="SITE=UM", help="A gap as measured.")
@click.option("--fits/--does-not-fit", "fits", default=None, help="How it was judged in the mouth.")
@click.option("--note", metavar="TEXT", help="How it was looked at: one-screw test, radiograph, ….")
@at_option
@register_option
def fitted(
    case: str, seat: Path, gaps: tuple[tuple[str, float], ...], fits: bool | None, note: str | None, at: str | None,
    file: Path | None,
) -> int:  # fmt: skip
    """Enter how a frame really fitted, beside what `seat` predicted."""
    from stylobate.register import open_register
    from stylobate.register.entries import moment
    from stylobate.register.frames import enter_fit

    with open_register(file, create=True) as register:
        found = enter_fit(register, case, seat, dict(gaps), fits, moment(at), note)
    click.echo(f"fit of case {case} entered")
    for gap in found:
        bound = "" if gap.predicted_p95_um is None else f", 95 % below {gap.predicted_p95_um:.0f}"
        click.echo(f"site {gap.site}: {gap.measured_um:.0f} µm; predicted {gap.predicted_um:.0f}{bound} µm")
    return 0


@click.command()
@register_option
def fits(file: Path | None) -> int:
    """Set how frames fitted against what was predicted, over all cases."""
    from stylobate.register import open_register
    from stylobate.register.frames import fitted as entered

    with open_register(file) as register:
        frames, gaps = entered(register)
    if not frames:
        click.echo("no frame's fit is entered yet; 'stylobate register fitted' enters one")
        return 0
    words = {True: "fits", False: "does not fit", None: None}
    print_table(
        ("Case", "When", "Fit", "Predicted", "Note"),
        [(f.case, f.at[:10], words[f.fits], None if f.probability is None else f"{f.probability:.0%}", f.note)
         for f in frames],
    )  # fmt: skip
    for line in _summary(frames, gaps):
        click.echo(line)
    return 0


def _summary(frames: list[Fitted], gaps: list[Gap]) -> list[str]:
    from stylobate.register.frames import brier, kept

    lines = []
    rate = kept(gaps)
    if rate is not None:
        lines.append(
            f"{rate.held} of {rate.count} gaps lay within their predicted 95 % figure: the rate behind it lies between"
            f" {rate.low:.0%} and {rate.high:.0%} (95 %); it should hold 95 %"
        )
    score = brier(frames)
    if score is not None:
        lines.append(f"Brier score of the predicted probabilities: {score:.3f} (0 perfect, 0.25 a coin)")
    return lines


COMMANDS = (measured, accept, check, due, wear, fitted, fits)
