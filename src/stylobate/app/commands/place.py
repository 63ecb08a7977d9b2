"""`stylobate place`: parts onto measured connections."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.report.folder import staging

FilePath = click.Path(path_type=Path, readable=False)


@click.command()
@click.argument("result", type=FilePath)
@click.option("--parts", required=True, type=FilePath, help="The parts folder, or a zip of it.")
@click.option(
    "--site", "sites", multiple=True, metavar="SITE=PART[@TURN][,…]",
    help="Parts for one site, from below; repeatable. [default: the best for every site]",
)  # fmt: skip
@click.option(
    "--aim", "aims", multiple=True, metavar="[SITE:]X,Y,Z",
    help="Where screw channels should leave, for all sites or one. [default: the mean of the axes]",
)  # fmt: skip
@click.option("--teeth", type=FilePath, metavar="SURFACE", help="Planned teeth: they set the aims, and show the walls.")
@click.option("--tissue", type=FilePath, metavar="SCAN", help="Scan without scan bodies: height of the tissue.")
@click.option("--opposing", type=FilePath, metavar="SCAN", help="Scan of the other jaw: room along the channel.")
@click.option(
    "--join", "join_to", type=FilePath, metavar="SCAN",
    help="The measured scan: tissue and opposing are in frames of their own, and are joined to it over the teeth.",
)  # fmt: skip
@click.option(
    "--bite", type=FilePath, metavar="SCAN", help="With --join: both jaws closed, by which opposing is joined."
)
@click.option(
    "--below", multiple=True, metavar="SITE=PART[@MARK]",
    help="The abutment in the mouth on which a site was measured; repeatable.",
)  # fmt: skip
@click.option("--one-path", is_flag=True, help="Prefer parts that give all sites one path of insertion.")
@click.option(
    "--channel-diameter", type=float, default=2.5, show_default=True, metavar="MM", help="Width of screw channels."
)
@click.option(
    "--accept", multiple=True, metavar="SITE=REASON",
    help="Build on a site whose verdict is `do not use`; the reason is kept.",
)  # fmt: skip
@click.option("--picture", is_flag=True, help="Write place.png as well: the placed parts, in the tissue if given.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the result.")
def command(
    result: Path, parts: Path, sites: tuple[str, ...], aims: tuple[str, ...], teeth: Path | None, tissue: Path | None,
    opposing: Path | None, join_to: Path | None, bite: Path | None, below: tuple[str, ...], one_path: bool,
    channel_diameter: float, accept: tuple[str, ...], picture: bool, out: Path,
) -> int:  # fmt: skip
    """Put abutments and bases on measured connections.

    RESULT is a result.json or its folder. DIR gets place.json and the surface of each placed part. Tissue, opposing
    and planned teeth are STL, PLY or OBJ in the coordinates of the scan; with --join, tissue and opposing in any, and
    DIR gets them in those of the scan (joined-tissue, joined-opposing).

    A turn is counted in index positions of the connection below; without one the best is taken.
    """
    with staging(out) as area:
        from stylobate.build.placing import place
        from stylobate.joining import moved_scan
        from stylobate.report.placement import save_placement
        from stylobate.scan import read_scan

        gum, other = (None if file is None else read_scan(file) for file in (tissue, opposing))
        placement = place(
            result, parts, sites=sites, aims=aims, tissue=gum, opposing=other, teeth=teeth, below=below,
            accept=accept, one_path=one_path, channel_diameter=channel_diameter, join_to=join_to, bite=bite,
        )  # fmt: skip
        scans = {"tissue": gum, "opposing": other}
        laid = {
            role: moved_scan(scan, placement.joins[role].first_from_second)
            for role, scan in scans.items()
            if scan is not None and role in placement.joins
        }
        drawn = None
        if picture:
            from stylobate.report.placement_picture import placement_png

            drawn = placement_png(placement, laid.get("tissue", gum))
        save_placement(placement, area, drawn, {role: scan.surface for role, scan in laid.items()})
    from stylobate.report.placement_table import show_placement

    show_placement(placement)
    return 0
