"""`stylobate profile`: how a scanner drifts along the arch, from repeat scans."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.report.folder import staging


@click.command()
@click.argument("results", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--scanner", required=True, metavar="NAME", help="Which scanner made the scans.")
@click.option("--unit", default="", metavar="ID", help="Which one, where there are several of the kind.")
@click.option("--reference", type=click.Path(path_type=Path), metavar="R", help="The same bodies, measured better.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for profile.json.")
def command(results: tuple[Path, ...], scanner: str, unit: str, reference: Path | None, out: Path) -> None:
    """How does a scanner drift along the arch?

    RESULTS are three or more results (result.json or folders that hold one) of repeat scans of the same scan bodies,
    not touched in between, all by one scanner. With --reference, a result of the same bodies by a better instrument,
    the profile tells the scale as well; without, it is of precision only.

    `stylobate measure --profile` and `stylobate seat --profile` count what it says.
    """
    with staging(out) as area:
        from stylobate.report.profile import save_profile, show_profile
        from stylobate.several.drifting.verb import profile

        found = profile(results, scanner, unit=unit, reference=reference)
        save_profile(found, area)
    show_profile(found)
