"""Options that the register's commands share."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])

FromScanner = "-"


def register_option(function: F) -> F:
    """--register FILE."""
    return click.option(
        "--register",
        "file",
        type=click.Path(path_type=Path),
        metavar="FILE",
        help="The register's file. [default: in the user's data folder]",
    )(function)


def at_option(function: F) -> F:
    """--at DATE."""
    return click.option("--at", metavar="DATE", help="When, like 2026-11-25 or 2026-11-25T14:30. [default: now]")(
        function
    )


def numbers_argument(required: bool = True) -> Callable[[F], F]:
    """NUMBER…, the units; '-' reads their codes from standard input."""
    return click.argument("numbers", nargs=-1, required=required, metavar="NUMBER...")


def numbers_of(given: Sequence[str]) -> list[str]:
    """The numbers as given, those from standard input in the place of '-'."""
    from stylobate.register.entries import codes

    found: list[str] = []
    for name in given:
        found += codes(sys.stdin) if name == FromScanner else [name]
    return found


def many(count: int, what: str) -> str:
    """1 unit, 2 units."""
    return f"{count} {what}{'' if count == 1 else 's'}"
