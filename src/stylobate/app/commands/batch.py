"""`stylobate batch`: many scans, one summary."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from stylobate.batch.run import Count, Workers

EXIT_STRICT = 4
SAY_EVERY_S = 60.0
"""Between two lines of progress where no terminal shows a bar."""
BAD_SHOWN = 10


@click.command()
@click.argument("source", type=click.Path(path_type=Path))
@click.option("--parts", required=True, type=click.Path(path_type=Path), help="The parts folder, or a zip of it.")
@click.option("--scan-body", "scan_bodies", multiple=True, metavar="ID", help="Only this scan body; may be repeated.")
@click.option(
    "--work", type=click.Choice(["single", "bridge", "arch"]), default="bridge", show_default=True,
    help="What will be built; it sets the limits.",
)  # fmt: skip
@click.option("--settings", type=click.Path(path_type=Path), metavar="FILE", help="Limits and figures of your own.")
@click.option("--maps", is_flag=True, help="Write the coloured surfaces as well.")
@click.option("--workers", type=click.IntRange(min=1), metavar="N", help="Processes. [default: one for each processor]")
@click.option(
    "--minutes", type=click.FloatRange(min=0, min_open=True), default=30.0, show_default=True, metavar="X",
    help="After so long a scan is given up.",
)  # fmt: skip
@click.option("--cluster", metavar="ADDRESS", help="Use this Dask cluster instead, such as tls://host:8786.")
@click.option("--tls-ca", type=click.Path(path_type=Path), metavar="FILE", help="The cluster's certificate authority.")
@click.option("--tls-cert", type=click.Path(path_type=Path), metavar="FILE", help="Certificate to show to the cluster.")
@click.option("--tls-key", type=click.Path(path_type=Path), metavar="FILE", help="Its key.")
@click.option("--plain-text", is_flag=True, help="Allow a cluster without TLS: whoever reaches it reads the scans.")
@click.option("--strict", is_flag=True, help="End with status 4 unless every scan was measured.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for all results.")
def command(
    source: Path, parts: Path, scan_bodies: tuple[str, ...], work: str, settings: Path | None, maps: bool,
    workers: int | None, minutes: float, cluster: str | None, tls_ca: Path | None, tls_cert: Path | None,
    tls_key: Path | None, plain_text: bool, strict: bool, out: Path,
) -> int:  # fmt: skip
    """Measure many scans, and write one table of all.

    SOURCE is a folder, searched through, or a text file with one scan a line. DIR gets a folder for each scan,
    summary.csv and summary.parquet. Interrupted or killed, the same command goes on where it stopped; at most the scans
    that were being measured are measured again. A scan that cannot be measured stands in the table with the reason.

    Exit status: 0 done; 2 bad usage or bad input; 4 with --strict, a scan that was not measured.
    """
    from stylobate.batch.run import Plan, run
    from stylobate.batch.work import Options
    from stylobate.settings import read_settings

    options = Options(scan_bodies, work, None if settings is None else read_settings(settings), maps)
    plan = Plan(source, parts, out, options, workers or _processors(), minutes)
    with _progress() as tell:
        count = run(plan, tell, _cluster(cluster, (tls_ca, tls_cert, tls_key), plain_text, minutes))
    _report(count, out)
    return EXIT_STRICT if strict and count.bad else 0


def _processors() -> int:
    """Processors that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _cluster(
    address: str | None, tls: tuple[Path | None, Path | None, Path | None], plain_text: bool, minutes: float
) -> Workers | None:
    from stylobate.core.errors import UsageError

    if address is None:
        if plain_text or any(tls):
            raise UsageError("--tls-ca, --tls-cert, --tls-key and --plain-text go with --cluster")
        return None
    from stylobate.batch.cluster import cluster

    return cluster(address, tls, plain_text, 60.0 * minutes)


def _report(count: Count, out: Path) -> None:
    measured = count.total - len(count.bad)
    earlier = f", {count.earlier} of them by an earlier run" if count.earlier else ""
    click.echo(f"{measured} of {count.total} scans measured{earlier}; all in {out / 'summary.csv'}")
    for scan, reason in list(count.bad.items())[:BAD_SHOWN]:
        click.echo(f"not measured: {_shown(reason if scan in reason else f'{scan}: {reason}')}")
    if len(count.bad) > BAD_SHOWN:
        click.echo(f"and {len(count.bad) - BAD_SHOWN} more, with their reasons in the table")


def _shown(text: str) -> str:
    return "".join(character if character.isprintable() else " " for character in text)


@contextmanager
def _progress() -> Iterator[Callable[[Count], None]]:
    """A bar with the time left on a terminal; elsewhere a line a minute on stderr."""
    if not sys.stderr.isatty():
        yield _Lines()
        return
    from rich.console import Console
    from rich.progress import (
        BarColumn,
        MofNCompleteColumn,
        Progress,
        TextColumn,
        TimeElapsedColumn,
        TimeRemainingColumn,
    )

    columns = (
        TextColumn("scans"), BarColumn(bar_width=40), MofNCompleteColumn(), TimeElapsedColumn(), TextColumn("left:"),
        TimeRemainingColumn(),
    )  # fmt: skip
    with Progress(*columns, console=Console(stderr=True), transient=True, speed_estimate_period=600) as bar:
        task = bar.add_task("scans", total=None)

        def tell(count: Count) -> None:
            bar.update(task, total=count.total, completed=count.earlier + count.now)

        yield tell


class _Lines:
    """How far it is, at most once in SAY_EVERY_S."""

    def __init__(self) -> None:
        self._start = self._said = time.monotonic()

    def __call__(self, count: Count) -> None:
        """Say it, if it is time."""
        now = time.monotonic()
        if now - self._said < SAY_EVERY_S or not count.now:
            return
        self._said = now
        minutes = (now - self._start) / count.now * count.left / 60.0
        done = count.earlier + count.now
        click.echo(f"stylobate: {done} of {count.total} scans, about {minutes:.0f} min left", err=True)
