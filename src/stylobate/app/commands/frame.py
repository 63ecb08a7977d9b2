"""`stylobate frame`: the seats in the surface of a finished frame."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.app.commands.measure import Point, PointType
from stylobate.report.folder import staging


@click.command()
@click.argument("surface", type=click.Path(path_type=Path))
@click.option(
    "--like", required=True, type=click.Path(path_type=Path), metavar="RESULT",
    help="What it was made to; over abutments, the folder that `place` wrote.",
)  # fmt: skip
@click.option("--parts", required=True, type=click.Path(path_type=Path), help="The parts folder, or a zip of it.")
@click.option(
    "--near", multiple=True, type=PointType(), metavar="X,Y,Z",
    help="A rough point at a seat, one for each site, where the frame lies elsewhere than the result.",
)  # fmt: skip
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for result.json.")
def command(surface: Path, like: Path, parts: Path, near: tuple[Point, ...], out: Path) -> None:
    """Find the seats in the SURFACE of a designed or scanned frame, as a result.

    The parts folder says what a seat looks like: a bonded titanium base shows itself, a frame milled to an abutment
    or an analog shows its negative; where it stands on the platform itself, it shows a plain ring, which has no turn.
    `stylobate seat --frame DIR --on RESULT` then tells how the frame as made would rest: a wrong scale, part or turn
    shows before the patient comes.
    """
    with staging(out) as area:
        from stylobate.report.save import save
        from stylobate.report.table import show
        from stylobate.report.words import FRAME
        from stylobate.several.made.verb import frame

        found = frame(surface, like, parts, near=near)
        save(found, area, maps=False)
    show(found, FRAME)
