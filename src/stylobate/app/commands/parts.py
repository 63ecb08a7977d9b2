"""`stylobate parts`: what is wrong in a parts folder, all at once; how well its scan bodies will do."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.app.commands.adding import add
from stylobate.app.commands.foretelling import foretell

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stylobate.parts import Note, Report


@click.group()
def command() -> None:
    """Check a parts folder, add to it, and foretell how well its scan bodies will do."""


command.add_command(foretell)
command.add_command(add)


@command.command()
@click.argument("parts", type=click.Path(path_type=Path))
def check(parts: Path) -> int:
    """Check a parts folder, or a zip of one.

    Lists every fault in parts.toml and in the surfaces, each with its file, its key and what to do; motions that a
    scan body's scan region leaves loose; and scan bodies that no scan can tell apart. Entries of parts.toml are
    counted from 1.

    Exit status: 0 the folder can be used; 2 it cannot.
    """
    from stylobate.core.errors import PartsError
    from stylobate.parts import check_parts

    report = check_parts(parts)
    for line in _lines(report):
        click.echo(line)
    if report.faults:
        number = len(report.faults)
        faults = "1 fault; put it right as listed" if number == 1 else f"{number} faults; put them right as listed"
        raise PartsError(f"{parts}: {faults}", tuple(note.line() for note in report.faults))
    return 0


def _lines(report: Report) -> list[str]:
    lines = [click.style(_shown(report.name or report.path), bold=True)]
    if report.name is not None:
        revision = f"revision {_shown(report.revision)}, " if report.revision else ""
        lines.append(f"{revision}in {report.path}")
        lines.append(
            ", ".join(f"{count} {what if count != 1 else what[:-1]}" for what, count in report.counts if count)
        )
    lines += _section("Faults: the folder cannot be used with these", report.faults, "red")
    free = [note for note in report.loose_motions if not note.blocks]
    lines += _section("Loose motions: what a scan of these bodies does not fix", free, "yellow")
    lines += _section("Look-alikes: no scan can tell these bodies apart", report.look_alikes, "yellow")
    lines += _section("Warnings: look whether these are as intended", report.warnings, "yellow")
    if not report.faults:
        rest = "" if report.notes else "; nothing to remark"
        lines += ["", click.style(f"The folder can be used{rest}.", fg="green")]
    return lines


def _shown(text: str) -> str:
    """Without control characters: a terminal obeys what it is sent."""
    return "".join(character for character in text if character.isprintable())


def _section(title: str, notes: Sequence[Note], colour: str) -> list[str]:
    if not notes:
        return []
    lines = ["", click.style(f"{title} ({len(notes)})", fg=colour, bold=True)]
    for number, note in enumerate(notes, start=1):
        place = f"{note.file}  {note.key}" if note.key else note.file
        lines += ["", f"{number:3}. {click.style(place, bold=True)}", f"     {note.what}", f"     → {note.remedy}"]
    return lines
