"""`stylobate structure`: a bar, a custom abutment's blank or a master model to start from."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stylobate.report.folder import Staging, staging

if TYPE_CHECKING:
    from stylobate.build.refit import Structure

FilePath = click.Path(path_type=Path, readable=False)
RESULT = click.argument("result", type=FilePath)
PARTS = click.option("--parts", required=True, type=FilePath, help="The parts folder, or a zip of it.")
ACCEPT = click.option(
    "--accept", multiple=True, metavar="SITE=REASON", help="Build on a site whose verdict is `do not use`."
)
OUT = click.option(
    "--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the result."
)


@click.group()
def command() -> None:
    """Solids to start from, exact where parts seat: a bar, a custom abutment, a master model."""


@command.command()
@RESULT
@PARTS
@click.option(
    "--site", "sites", multiple=True, metavar="SITE=PART[@TURN][,…]",
    help="Parts under the bar at one site, as for place; repeatable. [default: the best for every site]",
)  # fmt: skip
@click.option("--aim", "aims", multiple=True, metavar="[SITE:]X,Y,Z", help="Where screw channels should leave.")
@click.option("--width", type=float, default=4.0, show_default=True, metavar="MM", help="Width of the bar.")
@click.option("--height", type=float, default=5.0, show_default=True, metavar="MM", help="Height of the bar.")
@click.option(
    "--rise", type=float, default=4.0, show_default=True, metavar="MM", help="Its middle above each platform."
)
@click.option(
    "--channel-diameter", type=float, default=2.5, show_default=True, metavar="MM", help="Width of screw channels."
)
@ACCEPT
@OUT
def bar(
    result: Path, parts: Path, sites: tuple[str, ...], aims: tuple[str, ...], width: float, height: float, rise: float,
    channel_diameter: float, accept: tuple[str, ...], out: Path,
) -> int:  # fmt: skip
    """A bar of a chosen section through sites.

    It stands on each uppermost connection with a pillar as wide as the platform, drilled along the screw channel.
    DIR gets bar.stl (bar.ply far from the origin) and structure.json. The file as written is checked: it is
    watertight, and each seat in it, fitted again, lies within 2 µm of its connection.
    """
    with staging(out) as area:
        from stylobate.build.bar import Section
        from stylobate.build.bar import bar as make
        from stylobate.build.placing import place

        section = Section(width, height, rise, channel_diameter)
        placement = place(
            result, parts, sites=sites, aims=aims, accept=accept, channel_diameter=channel_diameter
        )  # fmt: skip
        chains = {site.site: [[link.part.id, link.turn] for link in site.chain] for site in placement.sites}
        accepted = {site.site: site.footing.accepted for site in placement.sites if site.footing.accepted}
        settings = {**vars(section), "chains": chains, "accepted": accepted}
        _finish(make(placement, section), settings, area)
    return 0


@command.command()
@RESULT
@PARTS
@click.option(
    "--site", "sites", multiple=True, metavar="SITE=PART[@TURN][,…]",
    help="The site and the base or abutment below the blank, as for place. [default: the best of the one site]",
)  # fmt: skip
@click.option(
    "--tissue",
    type=FilePath,
    metavar="SCAN",
    help="Gingiva without healing caps, in scan coordinates (as place --join writes it).",
)
@click.option(
    "--emergence", metavar="H:D[,…]", help="Without --tissue: diameters D at heights H over the platform, mm, rising."
)
@click.option("--aim", "aims", multiple=True, metavar="[SITE:]X,Y,Z", help="Where the screw channel should leave.")
@click.option(
    "--channel-diameter", type=float, default=2.5, show_default=True, metavar="MM", help="Width of the screw channel."
)
@click.option("--clearance", type=float, default=0.03, show_default=True, metavar="MM", help="Room around the base.")
@click.option("--wall", type=float, default=0.4, show_default=True, metavar="MM", help="Least wall that may be left.")
@click.option("--height", type=float, metavar="MM", help="Top over the platform. [default: 1 mm over what it covers]")
@ACCEPT
@OUT
def blank(
    result: Path, parts: Path, sites: tuple[str, ...], tissue: Path | None, emergence: str | None,
    aims: tuple[str, ...], channel_diameter: float, clearance: float, wall: float, height: float | None,
    accept: tuple[str, ...], out: Path,
) -> int:  # fmt: skip
    """A custom abutment's blank on one site.

    It stands on the shoulder of the site's base, hollow for the base, or on an abutment's platform, and follows the
    gingiva as scanned up to its margin; above, it goes straight up to a level top. DIR gets blank.stl and
    structure.json. The file as written is checked: it is watertight, and its seat, fitted again, lies within 2 µm of
    where it should. Refused where less than --wall is left around the base and the screw channel.
    """
    with staging(out) as area:
        from stylobate.build.blank import Form
        from stylobate.build.blank import blank as make

        form = Form(channel_diameter, clearance, wall, height)
        made, site = make(
            result, parts, sites=sites, aims=aims, tissue=tissue, emergence=emergence, accept=accept, form=form
        )
        chain = [[link.part.id, link.turn] for link in site.chain]
        accepted = {site.site: site.footing.accepted} if site.footing.accepted else {}
        settings = {**vars(form), "emergence": emergence, "chains": {site.site: chain}, "accepted": accepted}
        _finish(made, settings, area)
    return 0


@command.command()
@click.argument("scan", type=FilePath)
@RESULT
@PARTS
@click.option("--site", "sites", multiple=True, metavar="SITE", help="Only this site; repeatable. [default: all]")
@click.option("--analog", "analogs", multiple=True, metavar="SITE=ID", help="The analog, where there are several.")
@click.option("--clearance", type=float, default=0.03, show_default=True, metavar="MM", help="Room around each analog.")
@click.option(
    "--base", type=float, default=3.0, show_default=True, metavar="MM", help="Material below the lowest point."
)
@ACCEPT
@OUT
def model(
    scan: Path, result: Path, parts: Path, sites: tuple[str, ...], analogs: tuple[str, ...], clearance: float,
    base: float, accept: tuple[str, ...], out: Path,
) -> int:  # fmt: skip
    """A master model: a scan made solid, with sockets for analogs.

    SCAN is the measured scan, whose scan bodies are taken out, or a tissue scan in its coordinates. Analogs go in
    from above down to the floor of their socket. DIR gets model.stl and structure.json. The file as written is
    checked: it is watertight, and each socket in it, fitted again, lies within 2 µm of its connection.
    """
    with staging(out) as area:
        from stylobate.build.master import master_model_of

        made = master_model_of(
            scan, result, parts, sites=sites, analogs=analogs, clearance=clearance, base=base, accept=accept
        )  # fmt: skip
        settings = {"clearance": clearance, "base": base, "accepted": list(accept)}
        _finish(made, settings, area)
    return 0


def _finish(structure: Structure, settings: dict[str, Any], area: Staging) -> None:
    """Write and check a structure, and say what was found."""
    from stylobate.report.structure import save_structure

    refits = save_structure(structure, settings, area)
    worst = max(refits, key=lambda one: one.shift_um)
    size = f"{len(structure.surface.faces):,} triangles, {structure.volume:.0f} mm³"
    click.echo(f"{structure.kind}: {size}, watertight as written")
    click.echo(
        f"seats fitted again: within {worst.shift_um:.3f} µm of their connections (site {worst.site} the farthest)"
    )
    if structure.wall_mm is not None:
        click.echo(f"wall around what is hollow: at least {structure.wall_mm:.2f} mm")
    for line in structure.warnings:
        click.echo(line)
