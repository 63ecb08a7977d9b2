"""`stylobate receive`: is a package whole, from whom it should be, and does its scan measure the same here?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.app.progress import progress_bar

if TYPE_CHECKING:
    from stylobate.handoff.receive import Again

EXIT_DIFFERS = 4


@click.command()
@click.argument("package", type=click.Path(path_type=Path))
@click.option("--from", "sender", type=click.Path(path_type=Path), metavar="KEY.pub",
              help="Refuse it unless this key signed it.")  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), metavar="DIR", help="Unpack it there, a new folder.")
@click.option("--no-measure", is_flag=True, help="Verify only; do not measure the scan again.")
def command(package: Path, sender: Path | None, out: Path | None, no_measure: bool) -> int:
    """Verify every byte of a package, unpack it, and measure its scan again.

    Exit status: 0 whole, and measured the same; 2 not whole, or not from that sender; 4 whole, but a site measured
    again lies elsewhere.
    """
    from stylobate.handoff import receive
    from stylobate.handoff.sign import public_key

    key = None if sender is None else public_key(sender)
    with progress_bar() as progress:
        found = receive(package, key, out, not no_measure, progress)
    click.echo(f"{package}: whole. Case {_shown(found.code)}, {found.files} files, {found.log_lines} lines of log.")
    click.echo(f"log head {found.log_head}")
    if found.signer is None:
        click.echo("not signed: this proves that nothing changed on the way, not who sent it")
    else:
        click.echo(f"signed by key {found.signer}" + (", as asked for" if sender else "; compare it with the sender's"))
    for line in map(_line, found.again):
        click.echo(line)
    if found.elsewhere:
        named = ", ".join(map(_shown, found.elsewhere))
        click.echo(f"not measured again, as only another scan that was joined shows them: {named}")
    if found.again and found.other_version:
        click.echo(f"measured in the package by {_shown(found.software)}, here by another version of it")
    if out is not None:
        click.echo(f"unpacked into {out}")
    if not found.same:
        click.echo(
            "stylobate: measured again, not every site is where the package says; do not use it as it is", err=True
        )
        return EXIT_DIFFERS
    return 0


def _line(again: Again) -> str:
    if again.shift_um is None or again.turn_deg is None:
        return f"site {_shown(again.site)}: NOT FOUND when measured again"
    words = f"{again.shift_um:.2f} µm and {again.turn_deg:.4f}° from what the package says"
    verdict = "the same" if again.same else "differs within its bounds" if again.within else "DIFFERS"
    told = ", looked for where the package says" if again.told else ""
    return f"site {_shown(again.site)}: {verdict}, {words} ({_shown(again.scan_body)}{told})"


def _shown(text: str) -> str:
    return "".join(character for character in text if character.isprintable())
