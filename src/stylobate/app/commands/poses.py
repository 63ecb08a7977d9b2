"""`stylobate poses`: poses measured elsewhere, from a table, as a result."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.report.folder import staging


@click.command()
@click.argument("table", type=click.Path(path_type=Path))
@click.option("--like", type=click.Path(path_type=Path), metavar="RESULT", help="A result of the same implants.")
@click.option("--u-um", type=click.FloatRange(min=0.0), metavar="U", help="Standard uncertainty, each direction.")
@click.option("--u-axis-deg", type=click.FloatRange(min=0.0), metavar="U", help="The same, of each tilt.")
@click.option("--u-turn-deg", type=click.FloatRange(min=0.0), metavar="U", help="The same, of the turn about the axis.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for result.json.")
def command(
    table: Path,
    like: Path | None,
    u_um: float | None,
    u_axis_deg: float | None,
    u_turn_deg: float | None,
    out: Path,
) -> None:
    """Take poses that were measured elsewhere from a TABLE (CSV), as a result.

    For a photogrammetric or tactile measurement, or a verification cast. Columns: site, x, y, z (platform centre, mm),
    ax, ay, az (axis, away from the bone); where known mx, my, mz (direction of an index mark), connection,
    platform_diameter, index_order, and the uncertainty. --like takes over from a result of the same implants what the
    table does not say.

    The result can then be compared with a scan and weighed into one with it, sat upon, or used as a reference.
    """
    with staging(out) as area:
        from stylobate.report.save import save
        from stylobate.report.table import show
        from stylobate.several.elsewhere.verb import poses

        found = poses(table, like=like, u_um=u_um, u_axis_deg=u_axis_deg, u_turn_deg=u_turn_deg)
        save(found, area, maps=False)
    show(found)
