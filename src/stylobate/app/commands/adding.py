"""`stylobate parts add`: a raw CAD file gets its frame and its entry."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.core.errors import UsageError

if TYPE_CHECKING:
    from stylobate.core.surface import Surface
    from stylobate.core.types import FloatArray
    from stylobate.parts.adding import Value
    from stylobate.parts.framing import Framed, Pick

FilePath = click.Path(path_type=Path, readable=False)


@click.command("add")
@click.argument("file", type=FilePath)
@click.option("--to", "folder", required=True, type=FilePath, metavar="PARTS", help="The parts folder to add it to.")
@click.option("--id", "identifier", required=True, metavar="ID", help="What the part is to be called.")
@click.option("--seats-on", "connection", required=True, metavar="CONNECTION", help="The connection it seats on.")
@click.option(
    "--kind", type=click.Choice(["scan-body", "abutment", "base", "analog"]), default="scan-body", show_default=True
)
@click.option("--platform", metavar="N|X,Y,Z", help="The plane on which it seats: its number, or a point on it.")
@click.option("--index", metavar="N|X,Y,Z", help="The flat that marks the index: its number, or a point towards it.")
@click.option("--axis", metavar="X,Y,Z,X,Y,Z", help="Two points on the axis, for a part without a round surface.")
@click.option(
    "--scan-region", metavar="whole|Z", default="whole", show_default=True, help="A scan body's: from Z mm up."
)
@click.option(
    "--match", type=FilePath, metavar="FILE", help="A part in the same coordinates that must share the frame."
)
@click.option("--set", "more", multiple=True, metavar="KEY=VALUE", help="Another key of its entry; repeatable.")
@click.option("--look", is_flag=True, help="Only list the planes and flats to pick from.")
def add(
    file: Path, folder: Path, identifier: str, connection: str, kind: str, platform: str | None, index: str | None,
    axis: str | None, scan_region: str, match: Path | None, more: tuple[str, ...], look: bool,
) -> int:  # fmt: skip
    """Set the frame of a CAD file, and add it to a parts folder.

    FILE is STL, PLY or OBJ in mm, with its origin and axes anywhere. The axis is that of its round surfaces; the
    platform and the index are found or, where there are several, picked by number or by a point in the coordinates of
    FILE. PARTS gets the surface in the part's frame, a picture to check it by, and the entry in parts.toml.
    """
    from stylobate.parts import load_parts
    from stylobate.parts.adding import connection_of
    from stylobate.parts.framing import framed, prove
    from stylobate.scan import read_surface

    if not folder.is_dir():
        raise UsageError(f"--to {folder}: not a folder; parts are added to a folder, not to a zip.")
    seat = connection_of(load_parts(folder), connection)
    surface, below = read_surface(file), kind == "analog"
    two = None if axis is None else _numbers("--axis", axis, 6).reshape(2, 3)
    if look:
        _list(surface, file.name, below, two)
        return 0
    other = None if match is None else read_surface(match)
    found = framed(
        surface, file.name, seat.index_order, below, _pick("--platform", platform), _pick("--index", index), two, other
    )
    said = list(found.said)
    if other is not None and match is not None:
        said.append(prove(found.part_from_file, other, match.name, seat.index_order, not below))
    target = _write(folder, kind, identifier, connection, _values(kind, scan_region, more), found, said)
    for line in [f"{identifier} is in {folder}: {target.relative_to(folder)}", *said]:
        click.echo(line)
    click.echo(f"look at {target.with_suffix('.png')}, then run: stylobate parts check {folder}")
    return 0


def _write(
    folder: Path, kind: str, identifier: str, connection: str, values: dict[str, Value], found: Framed, said: list[str]
) -> Path:  # fmt: skip
    from stylobate.parts import load_parts
    from stylobate.parts.adding import add_part, entry
    from stylobate.report.meshes import stl_bytes
    from stylobate.report.part_picture import part_png

    text = entry(kind, identifier, connection, values)
    diameter = load_parts(folder).connection(connection).platform_diameter
    picture = part_png(found.surface, diameter, identifier, said)
    return add_part(folder, kind, identifier, text, stl_bytes(found.surface, identifier), picture)


def _values(kind: str, scan_region: str, more: tuple[str, ...]) -> dict[str, Value]:
    from stylobate.parts.adding import value_of

    values: dict[str, Value] = {}
    if kind == "scan-body":
        low = None if scan_region == "whole" else float(_numbers("--scan-region", scan_region, 1)[0])
        values["scan_region"] = "whole" if low is None else {"above": low}
    for text in more:
        key, value = value_of(text)
        if key in ("id", "surface", "seats_on", "connection", "scan_region") or key in values:
            raise UsageError(f"--set {text}: '{key}' is set already, or has an option of its own.")
        values[key] = value
    return values


def _list(surface: Surface, name: str, below: bool, axis: FloatArray | None) -> None:
    from stylobate.parts.faces import anatomy
    from stylobate.parts.framing import flats, seats

    found = anatomy(surface, name, axis)
    click.echo("Planes across the axis (--platform):")
    for seat in seats(surface, found, below):
        click.echo(f"  {seat.words()}")
    click.echo("Flats along the axis (--index):")
    for flat in flats(found):
        click.echo(f"  {flat.words()}")


def _pick(option: str, text: str | None) -> Pick | None:
    """N or X,Y,Z. Raises UsageError."""
    if text is None:
        return None
    if text.strip().isascii() and text.strip().isdigit():
        return int(text)
    return _numbers(option, text, 3)


def _numbers(option: str, text: str, count: int) -> FloatArray:
    """Finite numbers, comma between. Raises UsageError."""
    import numpy as np

    try:
        values = [float(word) for word in text.split(",")]
    except ValueError:
        values = []
    if len(values) != count or not all(map(math.isfinite, values)):
        raise UsageError(f"{option}={text}: write {count} number{'s' * (count > 1)} in mm, comma between.")
    return np.array(values)
