"""`stylobate measure`: scan and parts in, implant positions out."""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.app.progress import progress_bar
from stylobate.report.folder import staging

if TYPE_CHECKING:
    from stylobate.core.result import Result
    from stylobate.settings import Settings

EXIT_FEWER = 3
EXIT_STRICT = 4

Point = tuple[float, float, float]


class PointType(click.ParamType[Point]):
    """X,Y,Z: three numbers in millimetres."""

    name = "x,y,z"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> Point:
        """Three finite numbers, or a usage error that shows what was read."""
        if isinstance(value, tuple):
            return value
        try:
            numbers = [float(word) for word in str(value).split(",")]
        except ValueError:
            numbers = []
        if len(numbers) != 3 or not all(map(math.isfinite, numbers)):
            self.fail(f"'{value}' is not a point; write three numbers in mm, like --near=12.5,-3,40", param, ctx)
        return numbers[0], numbers[1], numbers[2]


@click.command()
@click.argument("scan", type=click.Path(path_type=Path, readable=False))
@click.option(
    "--parts", required=True, type=click.Path(path_type=Path, readable=False), help="The parts folder, or a zip of it."
)
@click.option("--scan-body", "scan_bodies", multiple=True, metavar="ID", help="Only this scan body; may be repeated.")
@click.option("--count", type=click.IntRange(min=1), metavar="N", help="How many sites there are. [default: all found]")
@click.option(
    "--near", multiple=True, type=PointType(), metavar="X,Y,Z", help="A rough point at a site, one a site: no search."
)
@click.option(
    "--work",
    type=click.Choice(["single", "bridge", "arch"]),
    default="bridge",
    show_default=True,
    help="What will be built; it sets the limits.",
)
@click.option(
    "--settings",
    type=click.Path(path_type=Path, readable=False),
    help="Limits and figures of your own (TOML). [default: as documented]",
)
@click.option(
    "--profile",
    type=click.Path(path_type=Path, readable=False),
    help="Profile of the scanner: its drift counts in the budget.",
)
@click.option("--scanner", metavar="NAME", help="The scanner; refused where the profile is of another one.")
@click.option("--strict", is_flag=True, help="End with status 4 unless every site's verdict is `use`.")
@click.option("--no-maps", is_flag=True, help="Write no coloured surfaces.")
@click.option("--picture", is_flag=True, help="Write picture.png as well: the arch and each site, with the figures.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the result.")
def command(
    scan: Path,
    parts: Path,
    scan_bodies: tuple[str, ...],
    count: int | None,
    near: tuple[Point, ...],
    work: str,
    settings: Path | None,
    profile: Path | None,
    scanner: str | None,
    strict: bool,
    no_maps: bool,
    picture: bool,
    out: Path,
) -> int:
    """Find the scan bodies in a scan and measure where the implants are.

    SCAN is STL, PLY or OBJ, also gzipped. DIR gets result.json and one coloured surface a site (PLY).

    Exit status: 0 done; 2 bad usage or bad input; 3 fewer sites than --count (the result is written); 4 with
    --strict, a site that may not be used as it stands.
    """
    with staging(out) as area:
        with progress_bar() as progress, ThreadPoolExecutor(1) as beside:
            from stylobate.scan import read_scan

            chosen = chosen_settings(settings, profile, scanner)
            reading = beside.submit(read_scan, scan)
            from stylobate.measuring import made_ready, measure  # loaded while the scan is read

            folder = made_ready(parts, scan_bodies)
            source = reading.result()
            result = measure(
                source,
                folder,
                scan_bodies=scan_bodies,
                count=count,
                near=near,
                work=work,
                settings=chosen,
                maps=picture or not no_maps,
                progress=progress,
            )
        from stylobate.report.save import save

        drawn = None
        if picture:
            from stylobate.report.picture import picture_png

            drawn = picture_png(result, source)
        save(result, area, maps=not no_maps, picture=drawn)
    from stylobate.report.table import show

    show(result)
    return _status(result, count, strict)


def chosen_settings(settings: Path | None, profile: Path | None, scanner: str | None) -> Settings:
    """Settings with the drift of the scanner's profile, where there is one."""
    from stylobate.settings import DEFAULT, read_settings

    chosen = DEFAULT if settings is None else read_settings(settings)
    if profile is None:
        if scanner is not None:
            raise click.UsageError("--scanner says what the profile must be of: give --profile, or leave it out")
        return chosen
    from stylobate.several.drifting import drift_of, read_profile

    return replace(chosen, drift=drift_of(read_profile(profile, scanner)))


def _status(result: Result, count: int | None, strict: bool) -> int:
    found = len(result.sites)
    if count is not None and found < count:
        click.echo(f"stylobate: found {found} of the {count} sites asked for; the result is written", err=True)
        return EXIT_FEWER
    if strict and (refused := _not_usable(result)):
        click.echo(f"stylobate: --strict: {refused}; the result is written", err=True)
        return EXIT_STRICT
    return 0


def _not_usable(result: Result) -> str:
    """Why a result does not pass --strict; empty where it does."""
    if not result.sites:
        return "no site was found, so there is none to use"
    words = [(site.site, site.verdict.verdict if site.verdict else "no verdict") for site in result.sites]
    bad = [f"site {name}: {word}" for name, word in words if word != "use"]
    return ", ".join(bad)
