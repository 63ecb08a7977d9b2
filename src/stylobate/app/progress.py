"""A progress bar on stderr, where stderr is a terminal; silence elsewhere."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Report = Callable[[str, float], None]


@contextmanager
def progress_bar() -> Iterator[Report | None]:
    """A function of (stage, fraction 0 to 1) that moves the bar, or None where nobody watches. Gone when done."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.description:<28}"), BarColumn(bar_width=40), TimeElapsedColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("", total=1.0)

        def report(stage: str, fraction: float) -> None:
            bar.update(task, description=stage, completed=fraction)

        yield report
