"""A plain table in the terminal."""

from __future__ import annotations

import sys
from collections.abc import Sequence


def print_table(columns: Sequence[str], rows: Sequence[Sequence[object]], right: Sequence[str] = ()) -> None:
    """A table on standard output; None is shown as a dash. right: columns set to the right."""
    from rich import box
    from rich.table import Table
    from rich.text import Text

    from stylobate.report.table import PLAIN_WIDTH, Terminal
    from stylobate.report.words import printable

    table = Table(box=box.SIMPLE_HEAD, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")
    for name in columns:
        table.add_column(name, justify="right" if name in right else "left", overflow="fold")
    for row in rows:
        table.add_row(*(Text("–" if value is None else printable(str(value))) for value in row))
    Terminal(width=None if sys.stdout.isatty() else PLAIN_WIDTH).print(table)
