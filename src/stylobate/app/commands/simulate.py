"""`stylobate simulate`: an invented case as a scan, with the truth beside it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.core.errors import UsageError

if TYPE_CHECKING:
    from stylobate.parts.model import ScanBody
    from stylobate.simulate import Fault, Scene


class Numbers(click.ParamType[tuple[float, ...]]):
    """A fixed count of finite numbers, comma between."""

    name = "numbers"

    def __init__(self, count: int, example: str) -> None:
        self.count = count
        self.example = example

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> tuple[float, ...]:
        """The numbers, or a usage error that shows what was read."""
        import math

        if isinstance(value, tuple):
            return value
        try:
            numbers = tuple(float(word) for word in str(value).split(","))
        except ValueError:
            numbers = ()
        if len(numbers) != self.count or not all(map(math.isfinite, numbers)):
            self.fail(f"'{value}' is not {self.count} numbers; write them like {self.example}", param, ctx)
        return numbers


@click.command()
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the case.")
@click.option(
    "--parts", type=click.Path(path_type=Path), help="Parts to draw from. [default: demo parts, in DIR/parts]"
)
@click.option("--seed", type=click.IntRange(min=0), default=0, show_default=True, help="Same seed, same scan.")
@click.option("--arch", type=click.Choice(["single", "quadrant", "full"]), default="quadrant", show_default=True)
@click.option("--bodies", type=click.IntRange(0, 8), default=2, show_default=True, help="How many scan bodies.")
@click.option("--scan-body", "named", multiple=True, metavar="ID", help="This body, instead of --bodies; repeatable.")
@click.option("--edge", type=float, default=0.15, show_default=True, metavar="MM", help="Median mesh edge.")
@click.option("--adaptive", is_flag=True, help="Longer edges where the surface is flat.")
@click.option(
    "--noise-um", type=Numbers(3, "8,10,0.8"), default="8,10,0.8", show_default=True, metavar="WHITE,CORR,LENGTH_MM",
    help="Noise: white sd, correlated sd, and its length in mm.",
)  # fmt: skip
@click.option(
    "--kernel", type=click.Choice(["exponential", "matern32", "matern52", "squared-exponential"]), default="matern32",
    show_default=True, help="Shape of the noise's correlation.",
)  # fmt: skip
@click.option("--gum", type=float, metavar="SHARE", help="Share of each body below the gum. [default: 0.05 to 0.33]")
@click.option("--unseen", type=float, metavar="SHARE", help="Share of each body not shown. [default: 0 to 0.1]")
@click.option("--rounding", type=float, default=0.0, show_default=True, metavar="MM", help="Radius at sharp edges.")
@click.option("--made-um", type=float, default=0.0, show_default=True, help="Error of made diameter and height, sd.")
@click.option(
    "--drift", type=Numbers(3, "100,30,0.05"), default="0,0,0", show_default=True, metavar="PPM,UM,DEG",
    help="Stitching error: scale, and random walk per 50 mm of arch.",
)  # fmt: skip
@click.option("--stumps", type=click.IntRange(0, 8), default=0, show_default=True, help="How many prepared teeth.")
@click.option("--palate", is_flag=True, help="The scan shows the palate as well.")
@click.option(
    "--fault", "faults", multiple=True, metavar="SITE=CAUSE[/STYLE]:SIZE",
    help="A fault, like '1=added layer:30' (µm), '2=bent body/hinge:0.8' (degrees); repeatable.",
)  # fmt: skip
@click.option("--format", "form", type=click.Choice(["stl", "ply"]), default="stl", show_default=True)
def command(
    out: Path, parts: Path | None, seed: int, arch: str, bodies: int, named: tuple[str, ...], edge: float,
    adaptive: bool, noise_um: tuple[float, float, float], kernel: str, gum: float | None, unseen: float | None,
    rounding: float, made_um: float, drift: tuple[float, float, float], stumps: int, palate: bool,
    faults: tuple[str, ...], form: str,
) -> int:  # fmt: skip
    """Make a scan of an invented case, with the truth beside it.

    DIR gets scan.stl (or scan.ply, with the site of each vertex), truth.json and, without --parts, a folder of demo
    parts. Sites count from 1 along the arch. Causes: added layer, bent body, lost material, added material, rough
    surface, missing surface, split surface, other part fits better, no part fits, index ambiguous, unseated.
    """
    from stylobate.simulate import Drift, Noise, Settings, demo_bodies, demo_files, scene
    from stylobate.simulate.files import folder, put, scene_files

    settings = Settings(
        seed=seed, arch=arch, bodies=named or bodies, edge_mm=edge, adaptive=adaptive,
        gum=(0.05, 0.33) if gum is None else (gum, gum), unseen=(0.0, 0.1) if unseen is None else (unseen, unseen),
        stumps=stumps, palate=palate, noise=Noise(*noise_um, kernel=kernel), rounding_mm=rounding, made_um=made_um,
        drift=Drift(*drift), faults=tuple(_fault(text) for text in faults),
    )  # fmt: skip
    chosen = demo_bodies() if parts is None else _bodies_of(parts)
    with folder(out) as stage:
        made = scene(settings, chosen)
        put(stage, scene_files(made, form))
        if parts is None:
            put(stage, {f"parts/{name}": content for name, content in demo_files().items()})
    click.echo(_summary(made, out, form))
    return 0


def _bodies_of(parts: Path) -> tuple[ScanBody, ...]:
    from stylobate.parts import load_parts

    return load_parts(parts).scan_bodies


def _fault(text: str) -> Fault:
    """SITE=CAUSE[/STYLE]:SIZE. Raises UsageError."""
    from stylobate.simulate import Fault

    try:
        site, rest = text.split("=", 1)
        cause, size = rest.rsplit(":", 1)
        cause, _, style = cause.partition("/")
        return Fault(int(site), cause.strip(), float(size), style.strip())
    except ValueError as error:
        raise UsageError(f"--fault '{text}' is not SITE=CAUSE:SIZE; write it like '1=added layer:30'.") from error


def _summary(made: Scene, out: Path, form: str) -> str:
    shown = ", ".join(f"{truth.site} {truth.body.id}" for truth in made.sites) or "none"
    count = f"{len(made.surface.faces):,} triangles"
    return f"{out / f'scan.{form}'}: {count}; scan bodies: {shown}; the truth stands in {out / 'truth.json'}"
