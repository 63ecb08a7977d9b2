"""Entering units and what happens to them; looking them up."""

from __future__ import annotations

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
    from stylobate.register.units import Kind, Unit


@click.command()
@numbers_argument()
@click.option("--scan-body", required=True, metavar="ID", help="Which part of the parts folder the units are.")
@click.option("--parts", type=click.Path(path_type=Path), help="Take single use and allowed cycles from there.")
@click.option("--lot", help="The maker's lot.")
@click.option("--bought", metavar="DATE", help="Day of purchase.")
@click.option("--single-use", is_flag=True, help="May be used in one case only.")
@click.option("--max-cycles", type=click.IntRange(min=1), metavar="N", help="Sterilisations that the maker allows.")
@click.option(
    "--wear-limit-um", type=click.FloatRange(min=0, min_open=True), metavar="X",
    help="Change of shape that you accept. No figure for it is published.",
)  # fmt: skip
@register_option
def add(
    numbers: tuple[str, ...], scan_body: str, parts: Path | None, lot: str | None, bought: str | None, single_use: bool,
    max_cycles: int | None, wear_limit_um: float | None, file: Path | None,
) -> int:  # fmt: skip
    """Enter new units; the first one makes the register."""
    from stylobate.register import open_register
    from stylobate.register.units import Kind
    from stylobate.register.units import add as enter

    kind = Kind(scan_body, lot, bought, single_use, max_cycles, wear_limit_um)
    if parts is not None:
        kind = _completed(kind, parts)
    names = numbers_of(numbers)
    with open_register(file, create=True) as register:
        entered = enter(register, names, kind)
    click.echo(f"entered {many(len(entered), 'unit')} of {scan_body}: {', '.join(entered)}")
    return 0


def _completed(kind: Kind, parts: Path) -> Kind:
    """What the parts folder says of the scan body, where the options say nothing. Raises PartsError, UsageError."""
    from dataclasses import replace

    from stylobate.core.errors import UsageError
    from stylobate.parts import load_parts

    folder = load_parts(parts)
    try:
        body = folder.scan_body(kind.scan_body)
    except KeyError:
        ids = ", ".join(b.id for b in folder.scan_bodies)
        raise UsageError(
            f"scan body '{kind.scan_body}' is not in the parts folder '{folder.name}'. It has: {ids}."
        ) from None
    return replace(
        kind,
        single_use=kind.single_use or body.single_use,
        max_cycles=kind.max_cycles if kind.max_cycles is not None else body.max_cycles,
    )


def _record(
    file: Path | None, numbers: tuple[str, ...], kind: str, at: str | None, amount: float | None = None,
    note: str | None = None,
) -> list[Unit]:  # fmt: skip
    from stylobate.register import open_register
    from stylobate.register.entries import moment
    from stylobate.register.units import record

    names, when = numbers_of(numbers), moment(at)
    with open_register(file) as register:
        return record(register, names, kind, when, amount, note)


@click.command()
@numbers_argument()
@at_option
@register_option
def sterilised(numbers: tuple[str, ...], at: str | None, file: Path | None) -> int:
    """Enter one sterilisation cycle for each unit of a load."""
    units = _record(file, numbers, "sterilised", at, amount=1)
    click.echo(f"one cycle entered for {many(len(units), 'unit')}")
    for unit in units:
        if unit.cycles_left is not None and unit.cycles_left <= 0:
            click.echo(f"{unit.number}: {unit.cycles} cycles, {unit.kind.max_cycles} allowed: retire it")
        elif unit.kind.single_use and unit.cases:
            click.echo(f"{unit.number}: for single use, and used in case {unit.cases[0]}: retire it")
    return 0


@click.command()
@numbers_argument()
@click.option("--ncm", required=True, type=click.FloatRange(min=0, min_open=True), metavar="X", help="Torque, N·cm.")
@at_option
@register_option
def torqued(numbers: tuple[str, ...], ncm: float, at: str | None, file: Path | None) -> int:
    """Enter that units were tightened."""
    click.echo(f"tightening entered for {many(len(_record(file, numbers, 'torqued', at, amount=ncm)), 'unit')}")
    return 0


@click.command()
@numbers_argument()
@click.option("--what", required=True, metavar="TEXT", help="What happened: dropped, cross-threaded, ….")
@at_option
@register_option
def incident(numbers: tuple[str, ...], what: str, at: str | None, file: Path | None) -> int:
    """Enter a mishap."""
    click.echo(f"incident entered for {many(len(_record(file, numbers, 'incident', at, note=what)), 'unit')}")
    return 0


@click.command()
@numbers_argument()
@click.option("--why", required=True, metavar="TEXT", help="The reason.")
@at_option
@register_option
def retire(numbers: tuple[str, ...], why: str, at: str | None, file: Path | None) -> int:
    """Take units out of use for good."""
    units = _record(file, numbers, "retired", at, note=why)
    click.echo(f"retired: {', '.join(unit.number for unit in units)}")
    return 0


@click.command()
@click.argument("event", type=int)
@click.option("--why", required=True, metavar="TEXT", help="The reason.")
@register_option
def void(event: int, why: str, file: Path | None) -> int:
    """Take back one event, by its number in the history; it stays there, marked."""
    from stylobate.register import open_register
    from stylobate.register.entries import moment
    from stylobate.register.units import void as take_back

    with open_register(file) as register:
        gone = take_back(register, event, moment(), why)
    click.echo(f"event {gone.id} ({gone.unit} {gone.kind}, {gone.at[:10]}) counts no more")
    return 0


@click.command("list")
@click.option("--lot", help="Units of this lot only.")
@click.option("--retired", is_flag=True, help="Retired units as well.")
@register_option
def list_units(lot: str | None, retired: bool, file: Path | None) -> int:
    """List the units."""
    from stylobate.register import open_register
    from stylobate.register.units import units

    with open_register(file) as register:
        found = [unit for unit in units(register, lot=lot) if retired or unit.retired_at is None]
    columns = ("Unit", "Scan body", "Lot", "Bought", "Cycles", "Allowed", "Uses", "Incidents", "Bench", "Retired")
    print_table(
        columns,
        [
            (
                u.number, u.kind.scan_body, u.kind.lot, u.kind.bought, u.cycles,
                "single use" if u.kind.single_use else u.kind.max_cycles, u.uses, u.incidents, u.bench,
                None if u.retired_at is None else f"{u.retired_at[:10]}: {u.retired_why}",
            )
            for u in found
        ],
        right=("Cycles", "Allowed", "Uses", "Incidents"),
    )  # fmt: skip
    return 0


@click.command()
@numbers_argument(required=False)
@click.option("--lot", help="All units of this lot.")
@register_option
def history(numbers: tuple[str, ...], lot: str | None, file: Path | None) -> int:
    """Show everything that happened to units, and in which cases they were used."""
    from stylobate.core.errors import UsageError
    from stylobate.register import open_register
    from stylobate.register.entries import known
    from stylobate.register.units import history as events
    from stylobate.register.units import units

    if bool(numbers) == (lot is not None):
        raise UsageError("name units, or a lot with --lot, not both")
    with open_register(file) as register:
        names = known(register, numbers_of(numbers)) if lot is None else [u.number for u in units(register, lot=lot)]
        found, standing = events(register, names), units(register, names)
    rows = [
        (
            e.id, e.at[:16].replace("T", " "), e.unit, f"{e.kind} (voided)" if e.voided else e.kind,
            _amount(e.kind, e.amount), e.case, e.note, e.by,
        )
        for e in found
    ]  # fmt: skip
    print_table(("Event", "When (UTC)", "Unit", "What", "", "Case", "Note", "By"), rows, right=("Event",))
    for unit in standing:
        cases = ", ".join(unit.cases) if unit.cases else "none"
        click.echo(f"{unit.number}: {many(unit.cycles, 'cycle')}; cases: {cases}")
    return 0


def _amount(kind: str, amount: float | None) -> str | None:
    if kind == "torqued" and amount is not None:
        return f"{amount:g} N·cm"
    return f"× {amount:g}" if kind == "sterilised" and amount != 1 else None


COMMANDS = (add, sterilised, torqued, incident, retire, void, list_units, history)
