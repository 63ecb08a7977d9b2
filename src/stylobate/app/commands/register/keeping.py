"""The register as a whole: tables in and out, checking the file, the last good copy."""

from __future__ import annotations

import re
from pathlib import Path

import click

from stylobate.app.commands.register.options import many, register_option


@click.command("export")
@click.argument("table", type=click.Path(path_type=Path), metavar="FILE.csv")
@register_option
def export_table(table: Path, file: Path | None) -> int:
    """Write all units as CSV."""
    from stylobate.core.errors import UsageError
    from stylobate.register import open_register
    from stylobate.register.table import csv_text
    from stylobate.report.folder import staging

    if table.is_dir() or not table.name:
        raise UsageError(f"{table}: is a folder; name the file to write")
    with open_register(file) as register:
        text = csv_text(register)
    with staging(table.parent) as area:
        area.write(table.name, ("\ufeff" + text).encode())
        area.commit(table.name, re.compile(r"(?!)"))
    click.echo(f"{many(text.count(chr(10)) - 1, 'unit')} written to {table}")
    return 0


@click.command("import")
@click.argument("table", type=click.Path(path_type=Path), metavar="FILE.csv")
@register_option
def import_table(table: Path, file: Path | None) -> int:
    """Enter units from a CSV file: all of it, or with a bad row nothing.

    The first row names the columns, as `export` writes them; number and scan_body are needed. Every bad row is listed.
    """
    from stylobate.core.errors import RegisterError
    from stylobate.register import open_register
    from stylobate.register.table import enter_table

    try:
        content = table.read_bytes()
    except OSError as error:
        cause = (error.strerror or str(error)).lower()
        raise RegisterError(f"{table}: {cause}; name a CSV file") from error
    try:
        with open_register(file, create=True) as register:
            entered = enter_table(register, content)
    except RegisterError as error:
        for fault in error.faults:
            click.echo(fault)
        raise
    click.echo(f"entered {many(len(entered), 'unit')}")
    return 0


@click.command()
@register_option
def verify(file: Path | None) -> int:
    """Check the register's file, and say which copies of it are kept."""
    from stylobate.register import copies, default_path, open_register

    path = default_path() if file is None else file
    with open_register(path):
        click.echo(f"{path}: sound")
    kept = copies.every(path)
    if kept:
        click.echo(f"copies kept: {len(kept)}, in {copies.folder_of(path)}, the newest of {copies.when(kept[-1])}")
    return 0


@click.command()
@register_option
def restore(file: Path | None) -> int:
    """Bring back the last good copy of a damaged or lost register; the damaged file is kept beside it."""
    from stylobate.register import copies, default_path
    from stylobate.register.store import restore as bring_back

    path = default_path() if file is None else file
    copy, aside = bring_back(path)
    click.echo(f"{path}: as it was at {copies.when(copy)}")
    if aside is not None:
        click.echo(f"the damaged file is kept as {aside}")
    return 0


COMMANDS = (export_table, import_table, verify, restore)
