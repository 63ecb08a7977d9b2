"""place.json and the surfaces of placed parts: a placement as files."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from stylobate import __version__
from stylobate.build.model import Below, Channel, Insertion, Joint, Link, Option, PlacedSite, Placement, Upper
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment
from stylobate.report.document import matrix
from stylobate.report.folder import Staging
from stylobate.report.joins import join_values
from stylobate.report.laid_out import laid_out
from stylobate.report.meshes import mesh_file

FORMAT = "stylobate-place"
VERSION = 1
PLACE = "place.json"
PICTURE = "place.png"
JOINED = "joined-"
"""How the names of tissue and opposing scan begin that were laid in the coordinates of the measured one."""
OWNED = re.compile(rf"site-.+-part-\d+-.+\.(?:stl|ply)|{JOINED}(?:tissue|opposing)\.(?:stl|ply)|place\.png")
"""What a placement leaves beside place.json, and takes away again when a newer one is complete."""


def save_placement(
    placement: Placement, staging: Staging, picture: bytes | None = None, joined: Mapping[str, Surface] | None = None
) -> None:
    """Write place.json, the surface of each placed part, the picture where there is one, and joined scans by their
    role, in scan coordinates. Raises OutputError.
    """
    for role, surface in (joined or {}).items():
        content, suffix = mesh_file(surface, f"{role}, mm, scan coordinates")
        staging.write(JOINED + role + suffix, content)
    for site in placement.sites:
        for number, link in enumerate(site.chain, start=1):
            content, suffix = mesh_file(link.surface(), f"{link.part.id} on site {site.site}, mm, scan coordinates")
            staging.write(_stem(site, number, link) + suffix, content)
    if picture is not None:
        staging.write(PICTURE, picture)
    staging.write(PLACE, placement_json(placement).encode())
    staging.commit(PLACE, OWNED)


def _stem(site: PlacedSite, number: int, link: Link) -> str:
    """site-2-part-1-alder-mu-16-25: names hold what every file system takes."""
    name = re.sub(r"[^\w.+-]", "_", site.site)
    return f"site-{name}-part-{number}-{link.part.id}"


def placement_json(placement: Placement) -> str:
    """The text of place.json (docs/conventions)."""
    return laid_out(placement_document(placement))


def placement_document(placement: Placement) -> dict[str, Any]:
    """The same as nested dicts and lists."""
    parts = placement.parts
    return {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "result": {"file": placement.result, "scan_sha256": placement.scan_sha256},
        "parts": {"name": parts.name, "revision": parts.revision, "sha256": parts.sha256},
        "work": placement.work,
        "sites": [_site(site) for site in placement.sites],
        "insertion": _insertion(placement.insertion, [site.site for site in placement.sites]),
        "joint": [_joint(joint, [site.site for site in placement.sites]) for joint in placement.joint],
        "near": [
            {"sites": list(near.sites), "parts": list(near.parts), "clearance_mm": near.clearance_mm}
            for near in placement.near
        ],
        "torques": [
            {"site": site.site, "part": link.part.id, "torque_ncm": _pair(link.part.torque_ncm)}
            for site in placement.sites
            for link in site.chain
        ],
        "joins": {role: join_values(join) for role, join in placement.joins.items()},
        "warnings": list(placement.warnings),
    }


def _site(site: PlacedSite) -> dict[str, Any]:
    values: dict[str, Any] = {
        "site": site.site,
        "aim": _numbers(site.aim),
        "chain": [_link(site, k, link) for k, link in enumerate(site.chain, start=1)],
        "chosen": site.chosen,
        "channel": _channel(site.channel),
        "options": [_option(option) for option in site.options],
        "tissue_height_mm": None,
        "room_mm": site.room_mm,
        "uppermost": _upper(site.upper),
        "verdict": site.footing.site.verdict,
        "notes": list(site.notes),
    }
    if site.tissue is not None:
        around = list(site.tissue.heights_mm)
        values["tissue_height_mm"] = {"least": site.tissue.least, "greatest": site.tissue.greatest, "around": around}
    if site.footing.accepted is not None:
        values["accepted"] = {"verdict": site.footing.site.verdict, "reason": site.footing.accepted}
    if site.below is not None:
        values["below"] = _below(site.below)
    return values


def _link(site: PlacedSite, number: int, link: Link) -> dict[str, Any]:
    kind = "multi-unit abutment" if isinstance(link.part, MultiUnitAbutment) else "titanium base"
    return {
        "part": link.part.id,
        "kind": kind,
        "turn": link.turn,
        "scan_from_part": matrix(link.scan_from_part),
        "torque_ncm": _pair(link.part.torque_ncm),
        "surface": _stem(site, number, link) + mesh_file(link.surface(), "")[1],
    }


def _channel(channel: Channel) -> dict[str, Any]:
    values: dict[str, Any] = {
        "origin": _numbers(channel.origin),
        "direction": _numbers(channel.direction),
        "angle_to_aim_deg": channel.angle_to_aim_deg,
        "lean_deg": channel.lean_deg,
        "u95_deg": channel.u95_deg,
    }
    if channel.exit is not None:
        point = channel.exit.point
        values["exit"] = None if point is None else _numbers(point)
        values["exit_from_middle_mm"] = channel.exit.from_middle_mm
        values["wall_mm"] = channel.exit.wall_mm
    return values


def _option(option: Option) -> dict[str, Any]:
    return {
        "chain": _chain(option.chain),
        "angle_to_aim_deg": option.angle_to_aim_deg,
        "lean_deg": option.lean_deg,
        "notes": list(option.notes),
    }


def _chain(chain: tuple[tuple[str, int], ...]) -> list[dict[str, Any]]:
    return [{"part": part, "turn": turn} for part, turn in chain]


def _upper(upper: Upper) -> dict[str, Any]:
    return {
        "connection": upper.connection.id,
        "platform_diameter": upper.connection.platform_diameter,
        "index_order": upper.connection.index_order,
        "scan_from_connection": matrix(upper.scan_from_connection),
        "covariance": matrix(upper.covariance),
        "u95": {
            "platform_um": upper.u95.platform_um,
            "axis_deg": upper.u95.axis_deg,
            "index_deg": upper.u95.index_deg,
        },
    }


def _below(below: Below) -> dict[str, Any]:
    pose = below.scan_from_implant
    return {
        "part": below.abutment.id,
        "connection": below.abutment.seats_on,
        "mark": below.turn,
        "scan_from_implant": None if pose is None else matrix(pose),
        "note": below.note,
    }


def _insertion(insertion: Insertion, names: list[str]) -> dict[str, Any]:
    path = insertion.direction
    return {
        "spread_deg": insertion.spread_deg,
        "axis": _numbers(insertion.axis),
        "u95_deg": insertion.u95_deg,
        "seats": [
            {"site": name, "half_angle_deg": allowed}
            for name, allowed in zip(names, insertion.allowed_deg, strict=True)
        ],
        "one_path": insertion.one_path,
        "path": None if path is None else _numbers(path),
        "margin_deg": insertion.margin_deg,
        "because": insertion.because,
    }


def _joint(joint: Joint, names: list[str]) -> dict[str, Any]:
    return {
        "sites": [{"site": name, "chain": _chain(chain)} for name, chain in zip(names, joint.chains, strict=True)],
        "worst_angle_to_aim_deg": joint.worst_angle_to_aim_deg,
        "mean_angle_to_aim_deg": joint.mean_angle_to_aim_deg,
        "path": _numbers(joint.path),
    }


def _pair(torque: tuple[float, float] | None) -> list[float] | None:
    return None if torque is None else list(torque)


def _numbers(values: FloatArray) -> list[float]:
    return [float(value) for value in values]
