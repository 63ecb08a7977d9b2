"""The command line: names, one-line helps, and the way from click's errors to ours. No science, no heavy import."""

from __future__ import annotations

import sys
from importlib import import_module
from typing import Any

import click

from stylobate import __version__
from stylobate.core.errors import UsageError

COMMANDS = {
    "measure": "Find the scan bodies in a scan and measure where the implants are.",
    "place": "Put abutments and bases on measured connections.",
    "structure": "Solids to start from: a bar, a custom abutment, a master model.",
    "compare": "Compare repeat scans: repeatability, what moved, one better result.",
    "join": "Scans of one mouth that each show some of the bodies, as one result.",
    "case": "Keep one patient's work in one folder, with checks, releases and a log.",
    "report": "Write the report of a result or a case, as PDF and HTML.",
    "package": "Write a hand-off package: a case as one file that proves itself whole.",
    "receive": "Verify a package, unpack it, and measure its scan again.",
    "batch": "Measure many scans, and write one table of all.",
    "open": "The page in the browser: see the sites, decide, measure.",
    "parts": "Check a parts folder; foretell how well its scan bodies will do.",
    "register": "Keep a register of scan bodies: cycles, cases, wear.",
    "frame": "Find the seats in the surface of a finished frame, as a result.",
    "poses": "Take poses that were measured elsewhere from a table, as a result.",
    "profile": "How a scanner drifts along the arch, from repeat scans.",
    "seat": "How a rigid frame over several implants would rest, and with what gaps.",
    "selfcheck": "Check the stated uncertainty on your own scans, without any truth.",
    "simulate": "Make a scan of an invented case, with the truth beside it.",
}
HELP_OPTIONS = {"help_option_names": ["-h", "--help"], "max_content_width": 100}


class LazyGroup(click.Group):
    """A group that knows its commands by name and one-line help, and imports one only when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Names in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The click command `command` of stylobate.app.commands.NAME, or None where there is no such name."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"stylobate.app.commands.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The list in --help, without importing any command."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=LazyGroup, context_settings=HELP_OPTIONS)
@click.version_option(__version__, prog_name="stylobate", message="%(prog)s %(version)s")
def cli() -> None:
    """From a dental scan to implant positions with honest uncertainties.

    Lengths are millimetres unless a name says µm. Exit status: 0 done; 2 bad usage or bad input, with one
    line that says what is wrong. Decision support, not a medical device: a licensed clinician decides.
    """


def invoke(arguments: list[str] | None = None) -> int:
    """Run one command line; returns its exit status. Not by click's `main`, which would end the process itself.

    Raises StylobateError for what the user can mend (click's usage errors among them) and KeyboardInterrupt.
    """
    try:
        with cli.make_context("stylobate", sys.argv[1:] if arguments is None else arguments) as context:
            status: Any = cli.invoke(context)
    except click.exceptions.Exit as error:
        return error.exit_code
    except click.exceptions.NoArgsIsHelpError as error:
        click.echo(error.format_message())
        return 0
    except click.UsageError as error:
        path = error.ctx.command_path if error.ctx else "stylobate"
        raise UsageError(f"{error.format_message().rstrip('.')}. See '{path} --help'.") from error
    except click.ClickException as error:
        raise UsageError(error.format_message()) from error
    return status if isinstance(status, int) else 0
