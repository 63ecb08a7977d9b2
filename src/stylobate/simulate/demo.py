"""The Harbour Street demo parts: an invented family of parts over three connections, with their surfaces."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

from stylobate.core.surface import Surface
from stylobate.parts.model import ScanBody
from stylobate.simulate import bodies, solids
from stylobate.simulate.files import folder, put, stl_bytes

HEAD = """format = "stylobate-parts"
version = 1
name = "Harbour Street demo parts"
revision = "2026-11"
licence = "CC0-1.0"

[[connection]]
id = "alder"
kind = "internal hex"
index_order = 6
play_deg = 1.5
platform_diameter = 4.2

[[connection]]
id = "hazel"
kind = "conical"
index_order = 3
platform_diameter = 3.6

[[connection]]
id = "alder-mu"
kind = "multi-unit"
index_order = 0
platform_diameter = 4.8

[[implant]]
id = "alder-42-10"
connection = "alder"
length = 10.0

[[implant]]
id = "alder-42-12"
connection = "alder"
length = 12.0

[[implant]]
id = "hazel-36-11"
connection = "hazel"
length = 11.0
"""


def demo_bodies() -> tuple[ScanBody, ...]:
    """The six scan bodies of the demo parts, a near twin pair (4.80 and 4.95 mm) among them."""
    return tuple(bodies.body_of(name, seats, surface, material) for name, seats, surface, material in _bodies())


def demo_parts(out_dir: Path) -> None:
    """Write the demo parts folder. Raises OutputError; what stood there before is then kept."""
    with folder(out_dir) as stage:
        put(stage, demo_files())


def demo_files() -> dict[str, bytes]:
    """Relative name and content of each file of the demo parts folder."""
    files: dict[str, bytes] = {}
    text = [HEAD]
    for name, seats, surface, material in _bodies():
        cycles = "single_use = true" if "polymer" in material else "max_cycles = 50"
        text.append(
            f'[[scan_body]]\nid = "{name}"\nseats_on = "{seats}"\nsurface = "scan-bodies/{name}.stl"\n'
            f'scan_region = "whole"\nmaterial = "{material}"\n{cycles}\ntorque_ncm = [10.0, 15.0]\nmade_u_um = 6.0\n'
        )
        files[f"scan-bodies/{name}.stl"] = stl_bytes(surface)
    for kind, name, keys, solid in _others():
        folder_name = {"multi_unit_abutment": "abutments", "titanium_base": "bases", "analog": "analogs"}[kind]
        lines = "\n".join(f"{key} = {_toml(value)}" for key, value in keys.items())
        text.append(f'[[{kind}]]\nid = "{name}"\n{lines}\nsurface = "{folder_name}/{name}.stl"\n')
        files[f"{folder_name}/{name}.stl"] = stl_bytes(solids.surface_of(solid))
    return {"parts.toml": "\n".join(text).encode(), **files}


def _toml(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    return f'"{value}"' if isinstance(value, str) else str(value)


def _bodies() -> list[tuple[str, str, Surface, str]]:
    """Name, connection, surface and material of each scan body."""
    square = solids.box((-1.7, -1.7, 0.0), (1.7, 1.7, 7.0))
    for corner, distance in enumerate((2.3, 2.2, 2.1, 1.95)):
        square = solids.flat(square, distance, 0.0, 45.0 + 90.0 * corner)
    lobes = solids.prism(solids.lobed(2.1, 0.1, 3), 0.0, 8.5)
    lobes -= solids.box((1.75, -0.35, 4.5), (9.0, 0.35, 9.0))
    low = solids.bevel(solids.cylinder(2.4, 0.0, 6.0), 6.0, 0.9, 22.0, 150.0)
    return [
        ("alder-tall", "alder", bodies.twin_post(4.80, 9.0, 4.6), "titanium, sandblasted"),
        ("alder-wide", "alder", bodies.twin_post(4.95, 9.0, 4.6), "titanium, sandblasted"),
        ("alder-lobed", "alder", solids.surface_of(lobes), "polymer"),
        ("hazel-square", "hazel", solids.surface_of(solids.bevel(square, 7.0, 0.5, 15.0, 45.0)), "titanium, coated"),
        ("hazel-slender", "hazel", _slender(), "polymer, titanium below"),
        ("alder-mu-low", "alder-mu", solids.surface_of(solids.flat(low, 1.7, 2.6)), "titanium, polished"),
    ]


def _slender() -> Surface:
    solid = solids.cylinder(1.9, 0.0, 1.2) + solids.chamfered(1.65, 0.0, 9.5, 0.2)
    return solids.surface_of(solids.flat(solid, 1.15, 5.0))


def _others() -> list[tuple[str, str, dict[str, Any], Any]]:
    """Kind, name, keys and solid of every part that is no scan body."""
    parts: list[tuple[str, str, dict[str, Any], Any]] = []
    for angle, collar in ((0.0, 1.5), (0.0, 3.0), (16.0, 2.5), (28.0, 3.5)):
        keys = {
            "seats_on": "alder", "provides": "alder-mu", "angle_deg": angle, "collar_height": collar,
            "cone_half_angle_deg": 20.0, "torque_ncm": [30.0, 30.0] if angle == 0.0 else [15.0, 15.0],
        }  # fmt: skip
        parts.append(("multi_unit_abutment", f"alder-mu-{angle:.0f}-{collar * 10:.0f}", keys, _abutment(angle, collar)))
    for seats, radius, name, gum, height, engaging, tilt in (
        ("alder", 2.1, "alder-base-10", 1.0, 5.0, True, 20.0),
        ("alder", 2.1, "alder-base-25", 2.5, 4.0, True, 0.0),
        ("hazel", 1.8, "hazel-base-10", 1.0, 5.0, True, 20.0),
        ("alder-mu", 2.4, "alder-mu-base", 0.5, 4.0, False, 15.0),
    ):
        keys = {
            "seats_on": seats, "gingival_height": gum, "height": height, "engaging": engaging,
            "channel_tilt_max_deg": tilt, "cone_half_angle_deg": 4.0,
            "torque_ncm": [30.0, 35.0] if engaging else [15.0, 15.0],
        }  # fmt: skip
        top = radius * 0.85
        solid = solids.cylinder(radius, 0.0, gum, radius + 0.15)
        solid += solids.cylinder(top, gum, gum + height, top - height * math.tan(math.radians(4.0)))
        solid -= solids.cylinder(1.1, -1.0, gum + height + 1.0)
        parts.append(("titanium_base", name, keys, solids.flat(solid, top * 0.85, gum + 1.0) if engaging else solid))
    for name, radius in (("alder", 2.1), ("hazel", 1.8)):
        solid = solids.flat(solids.cylinder(radius * 0.8, -12.0, 0.0, radius), radius * 0.6, -12.0)
        parts.append(("analog", f"{name}-analog", {"connection": name}, solid))
    return parts


def _abutment(angle_deg: float, collar: float) -> Any:
    """Collar on the lower platform, then the seat of the upper connection with its cone, leaning with it.

    The collar ends 0.1 mm below the plane of the seat, or 0.8 mm below its middle.
    """
    lean = math.radians(angle_deg)
    end = collar - max(0.8, (2.3 * math.sin(lean) + 0.1) / math.cos(lean))
    body = solids.cylinder(2.1, 0.0, max(end, 0.2), 2.3)
    head = solids.cylinder(2.4, -0.9, 0.0) + solids.cylinder(1.9, 0.0, 1.2, 1.9 - 1.2 * math.tan(math.radians(20.0)))
    head -= solids.cylinder(0.9, 0.2, 3.0)
    return body + head.rotate((0.0, angle_deg, 0.0)).translate((0.0, 0.0, collar))
