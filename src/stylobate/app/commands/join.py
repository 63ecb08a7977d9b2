"""`stylobate join`: scans of one mouth that each show some of the scan bodies, as one result."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.report.folder import staging

FilePath = click.Path(path_type=Path, readable=False)


@click.command()
@click.argument("results", nargs=-1, required=True, metavar="A B [C]...", type=click.Path(path_type=Path))
@click.option(
    "--scan", "scans", multiple=True, required=True, type=FilePath, metavar="SCAN",
    help="The scan of a result: its teeth are needed. Once for each, in any order.",
)  # fmt: skip
@click.option(
    "--rescan", "rescanned", multiple=True, metavar="SITE",
    help="This site (as numbered in A) was scanned again: only its last scan counts; may be repeated.",
)  # fmt: skip
@click.option("--work", type=click.Choice(["single", "bridge", "arch"]), help="What will be built. [default: as in A]")
@click.option("--settings", type=FilePath, help="Limits and figures of your own (TOML). [default: as documented]")
@click.option("--profile", type=FilePath, help="Profile of the scanner: its drift counts in the budget.")
@click.option(
    "--limit-um", type=click.FloatRange(min=0.0, min_open=True), default=100.0, show_default=True, metavar="U",
    help="Refuse a site that comes over with a larger 95 % bound.",
)  # fmt: skip
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for result.json.")
def command(
    results: tuple[Path, ...], scans: tuple[Path, ...], rescanned: tuple[str, ...], work: str | None,
    settings: Path | None, profile: Path | None, limit_um: float, out: Path,
) -> None:  # fmt: skip
    """Make one result of scans of one mouth that each show some of the scan bodies.

    For bodies that were scanned in turn, as they stood in each other's way, and for a site that was scanned again. A,
    B, … are result.json files or folders that hold one. Each scan is laid on that of A over the teeth that both show
    and the bodies that stand in both; the result is in the coordinates of A, and what laying adds is in its bounds.
    """
    with staging(out) as area:
        from stylobate.app.commands.measure import chosen_settings
        from stylobate.report.joined import save_joined
        from stylobate.report.table import show
        from stylobate.several.joined.verb import join

        found = join(results, scans, rescanned, work or "", chosen_settings(settings, profile, None), limit_um)
        save_joined(found, area)
    show(found.result)
