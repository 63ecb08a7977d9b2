"""`stylobate seat`: how a rigid frame made to one result would rest on the implants."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.report.folder import staging


@click.command()
@click.option("--frame", required=True, type=click.Path(path_type=Path), metavar="A", help="Result it is made to.")
@click.option("--on", type=click.Path(path_type=Path), metavar="B", help="Result on whose poses it rests.")
@click.option("--limit-um", type=float, default=100.0, show_default=True, metavar="UM", help="Largest gap to accept.")
@click.option(
    "--side-limit-um", type=float, default=100.0, show_default=True, metavar="UM", help="Largest side to accept."
)
@click.option(
    "--rim-diameter", type=float, metavar="D", help="Diameter of every rim, mm; 0: centres. [default: the platforms']"
)
@click.option(
    "--draws", type=click.IntRange(100, 1_000_000), default=10_000, show_default=True, metavar="N",
    help="Draws from the uncertainty of A.",
)  # fmt: skip
@click.option(
    "--profile", type=click.Path(path_type=Path), metavar="P", help="Profile of the scanner, whose drift is counted."
)
@click.option("--seed", type=click.IntRange(min=0), default=1, show_default=True, help="Of the draws.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for seat.json.")
def command(
    frame: Path,
    on: Path | None,
    limit_um: float,
    side_limit_um: float,
    rim_diameter: float | None,
    draws: int,
    profile: Path | None,
    seed: int,
    out: Path,
) -> None:
    """How would a rigid frame, made exactly to the poses of result A, rest on the implants?

    A and B are result.json or folders that hold one; over abutments, the folder that `place` wrote. With --on the
    frame rests on the poses of B, its sites matched by how they stand to each other. Without, it rests on draws from
    the uncertainty of A.

    The frame penetrates no rim, and its largest gap is least. `gap` is the largest distance between a platform's rim
    and the frame's seat, `side` how far off the axis the seat lies. No limit of misfit is proven: set your own.
    """
    with staging(out) as area:
        from stylobate.report.seat import save_seat, show_seat
        from stylobate.several.seating.verb import seat

        found = seat(
            frame,
            on,
            limit_um=limit_um,
            side_limit_um=side_limit_um,
            rim_diameter=rim_diameter,
            draws=draws,
            seed=seed,
            profile=profile,
        )
        save_seat(found, area)
    show_seat(found)
