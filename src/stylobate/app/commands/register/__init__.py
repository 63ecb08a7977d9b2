"""`stylobate register`: what is known of each physical scan body."""

from __future__ import annotations

import click

from stylobate.app.commands.register import keeping, measuring, units


@click.group()
def command() -> None:
    """Keep a register of scan bodies: who used which, how often, and how they wear.

    Each physical scan body is a unit with a number of its own, as engraved or tagged. The register is one file in the
    user's data folder; --register names another. Numbers may come from a hand-held code scanner: write '-' in their
    place and read one code after the other, each ended by Enter, then Ctrl-D.
    """


for _module in (units, measuring, keeping):
    for _command in _module.COMMANDS:
        command.add_command(_command)
