"""`stylobate compare`: repeat scans in; repeatability, what moved, and one better result out."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.core.errors import UsageError
from stylobate.report.folder import staging


@click.command()
@click.argument("results", nargs=-1, required=True, metavar="A B [C]...", type=click.Path(path_type=Path))
@click.option(
    "--group",
    "groups",
    multiple=True,
    metavar="NAME=A,B,…",
    help="Results of one scanner, material or operator, as named above; may be repeated.",
)
@click.option(
    "--rescan",
    "rescanned",
    multiple=True,
    metavar="SITE",
    help="This site (as numbered in A) was scanned again: only its last scan counts; may be repeated.",
)
@click.option(
    "--profile",
    "profile_path",
    type=click.Path(path_type=Path),
    metavar="PROFILE",
    help="How the scanner drifts, from 'stylobate profile': finds smaller shifts.",
)
@click.option("--no-plots", is_flag=True, help="Write no plots.")
@click.option(
    "--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for what is written."
)
def command(
    results: tuple[Path, ...],
    groups: tuple[str, ...],
    rescanned: tuple[str, ...],
    profile_path: Path | None,
    no_plots: bool,
    out: Path,
) -> int:
    """Compare repeat scans of the same implants, in any frames and any order of sites.

    A, B, … are result.json files or folders that hold one. DIR gets compare.json, a table (CSV and Parquet), plots,
    and, where the scans agree, result.json: all of them pooled, in the coordinates of A.
    """
    members = _members(groups, results)
    with staging(out) as area:
        from stylobate.several.comparing.verb import compare
        from stylobate.several.drifting import read_profile

        profile = None if profile_path is None else read_profile(profile_path)
        comparison = compare(results, members, rescanned, profile)
        plots: dict[str, bytes] = {}
        if not no_plots:
            from stylobate.report.comparison_plots import plotted

            plots = plotted(comparison)
        from stylobate.report.comparison import save

        save(comparison, area, plots)
    from stylobate.report.comparison_table import show

    show(comparison)
    return 0


def _members(groups: tuple[str, ...], results: tuple[Path, ...]) -> dict[str, list[int]]:
    """Positions of each group's results. Raises UsageError."""
    at = {_plain(path): k for k, path in enumerate(results)}
    members: dict[str, list[int]] = {}
    for text in groups:
        name, sign, listed = text.partition("=")
        if not (sign and name and listed):
            raise UsageError(f"--group '{text}': write a name and its results, like --group one=a,b,c")
        if name in members:
            raise UsageError(f"--group {name}: the name stands twice; give each group its own")
        members[name] = []
        for word in listed.split(","):
            if _plain(Path(word)) not in at:
                raise UsageError(f"--group {name}: '{word}' is none of the results; write it as on the command line")
            members[name].append(at[_plain(Path(word))])
    return members


def _plain(path: Path) -> Path:
    """The folder of a result, whether it or the file was named."""
    return path.parent if path.name == "result.json" else path
