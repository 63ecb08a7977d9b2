"""A master model: the scan made solid, with sockets for the analogs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import numpy as np

from stylobate.build.around import require_near
from stylobate.build.cone import unit
from stylobate.build.footing import Footing, footings
from stylobate.build.kernel import along, cylinder, kernel, largest, left_out, moved, solid_of, surface_of, widened
from stylobate.build.refit import Interface, Structure
from stylobate.build.request import by_site, require_sites
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray
from stylobate.parts import load_parts
from stylobate.parts.edges import Edges, joined
from stylobate.parts.model import Analog, PartsFolder
from stylobate.parts.shape import border
from stylobate.record import read_result
from stylobate.scan import read_scan

DEEP = 40.0
"""mm below the model's floor to which the scan's rim is drawn down before it is cut level."""
OPEN_ABOVE = 25.0
"""mm above a platform up to which the way into its socket is cleared."""
MOST_PASSES = 50
"""Rounds in which a ragged rim is trimmed."""
BODY_REACH = 0.3
"""mm. What lies this near to a scan body's CAD is scan body: noise and the fillet that a scan makes at the gingiva."""


def master_model_of(
    scan: str | Path,
    result: str | Path,
    parts: str | Path,
    sites: Sequence[str] = (),
    analogs: Sequence[str] = (),
    clearance: float = 0.03,
    base: float = 3.0,
    accept: Sequence[str] = (),
) -> Structure:
    """A master model from files, its scan bodies taken out. sites: names, all where none is given; analogs: "SITE=ID".

    Raises UsageError, ResultError, PartsError, ScanError or FitError.
    """
    record, folder = read_result(result), load_parts(parts)
    known = tuple(site.site for site in record.sites)
    require_sites("--site", dict.fromkeys(sites), known)
    named = by_site("--analog", analogs)
    require_sites("--analog", named, known)
    chosen = tuple(site for site in record.sites if not sites or site.site in sites)
    if not chosen:
        raise UsageError(f"{record.name}: the result has no site; measure again.")
    feet = footings(chosen, by_site("--accept", accept), known)
    read = read_scan(scan)
    surface = read.whole()
    centres = np.array([site.scan_from_connection[:3, 3] for site in chosen])
    require_near(surface, centres, str(read.file))
    bodies = {body.id: body.surface for body in folder.scan_bodies}
    placed = [(bodies[s.scan_body], s.scan_from_connection) for s in chosen if s.scan_body in bodies]
    return master_model(without(surface, placed), feet, folder, clearance, base, named)


def master_model(
    scan: Surface,
    footings: Sequence[Footing],
    folder: PartsFolder,
    clearance: float = 0.03,
    base: float = 3.0,
    analogs: Mapping[str, str] | None = None,
) -> Structure:
    """The scan as a solid block with a socket at each site, into which the analog goes from above.

    scan: in scan coordinates. clearance: mm around an analog, across its axis; along it the socket's floor stops the
    analog exactly. base: mm of material below the lowest socket or the lowest point of the scan. analogs: id by site,
    where a connection has several. Raises UsageError or FitError.
    """
    if not 0.0 <= clearance <= 0.5:
        raise UsageError(f"--clearance {clearance:g}: write 0 to 0.5 mm.")
    if not 1.0 <= base <= 30.0:
        raise UsageError(f"--base {base:g}: write 1 to 30 mm.")
    sites = [foot.site for foot in footings]
    up = unit(np.sum([site.scan_from_connection[:3, 2] for site in sites], axis=0))
    middle = np.mean([site.scan_from_connection[:3, 3] for site in sites], axis=0)
    frame = along(middle, up, np.eye(3)[int(np.argmin(np.abs(up)))])
    placed = []
    for site in sites:
        analog = _analog(folder, site.site, site.connection, analogs or {})
        placed.append((site, _socket(analog, clearance, site.platform_diameter), analog))
    lowest = min(float(_heights(socket, site.scan_from_connection, frame).min()) for site, socket, _ in placed)
    local = scan.moved(inverse(frame))
    floor = min(lowest, float(local.vertices[:, 2].min())) - base
    block = _block(local, floor)
    cuts = [moved(socket, inverse(frame) @ site.scan_from_connection) for site, socket, _ in placed]
    whole = kernel().Manifold.batch_boolean([block, *cuts], kernel().OpType.Subtract)
    finished, lost = largest(whole, "the model")
    interfaces = [_interface(site.site, site.scan_from_connection, socket, analog) for site, socket, analog in placed]
    return Structure("model", finished.moved(frame), tuple(interfaces), left_out(lost))


def _analog(folder: PartsFolder, site: str, connection: str, named: Mapping[str, str]) -> Analog:
    """The analog of a site. Raises UsageError where there is none, or several and none is named."""
    fitting = [analog for analog in folder.analogs if analog.connection == connection]
    if site in named:
        fitting = [analog for analog in fitting if analog.id == named[site]]
        if not fitting:
            raise UsageError(f"--analog {site}={named[site]}: no such analog for '{connection}' in the parts folder.")
    if not fitting:
        raise UsageError(
            f"site {site}: the parts folder has no analog for '{connection}'; add one, or leave the site out."
        )
    if len(fitting) > 1:
        ids = ", ".join(analog.id for analog in fitting)
        raise UsageError(f"site {site}: which analog? '{connection}' has {ids}; say --analog {site}=ID.")
    return fitting[0]


def _socket(analog: Analog, clearance: float, platform_diameter: float) -> Any:
    """The room for an analog and the way into it, in the connection frame.

    The hull of the analog, widened across the axis by the clearance and not along it: what is below its widest part is
    filled, so that it goes in from above.
    """
    vertices = analog.surface.vertices
    room = widened(vertices, clearance)
    widest = max(float(np.hypot(vertices[:, 0], vertices[:, 1]).max()), platform_diameter / 2.0)
    return room + cylinder(widest + clearance, -1e-3, OPEN_ABOVE)


def _heights(socket: Any, stands: FloatArray, frame: FloatArray) -> FloatArray:
    vertices = socket.to_mesh64().vert_properties[:, :3]
    motion = inverse(frame) @ stands
    return np.asarray(vertices @ motion[2, :3] + motion[2, 3])


def _block(local: Surface, floor: float) -> Any:
    """The scan, its rim drawn straight down and cut level at `floor`, its holes closed; z up. Raises FitError."""
    clean = _oriented(Surface(local.vertices, _largest(local.faces, len(local.vertices))))
    start, end = border(Edges.of(clean))
    if not len(start):
        raise UsageError("the scan is closed already, so there is no rim to build a model from; give an open scan.")
    loop = joined(start, end, len(clean.vertices))[start]
    names, length = np.unique(loop), []
    for name in names:
        on = loop == name
        length.append(float(np.linalg.norm(clean.vertices[start[on]] - clean.vertices[end[on]], axis=1).sum()))
    rim = loop == names[int(np.argmax(length))]
    vertices, faces = [clean.vertices], [clean.faces.astype(np.int64)]
    count = len(clean.vertices)
    for name in names:
        on = loop == name
        if not (on & rim).any():
            vertices.append(clean.vertices[start[on]].mean(axis=0)[None])
            faces.append(np.column_stack([end[on], start[on], np.full(int(on.sum()), count)]))
            count += 1
    skirt, walls = _skirt(clean.vertices, start[rim], end[rim], floor - DEEP, count)
    surface = Surface(np.concatenate([*vertices, skirt]), np.concatenate([*faces, walls]).astype(np.int32))
    try:
        block = solid_of(surface, "the scan")
    except FitError:
        raise FitError("the scan: cannot be made solid; does its surface face outwards, and hang together?") from None
    return block.trim_by_plane((0.0, 0.0, 1.0), floor)


def _skirt(
    vertices: FloatArray, start: LongArray, end: LongArray, bottom: float, count: int
) -> tuple[FloatArray, LongArray]:  # fmt: skip
    """Walls from the rim straight down to `bottom`, closed there: new vertices, and faces with `count` before them."""
    ids, inverse_ids = np.unique(np.concatenate([start, end]), return_inverse=True)
    low = vertices[ids].copy()
    low[:, 2] = bottom
    centre = np.array([[*low[:, :2].mean(axis=0), bottom]])
    a, b = count + inverse_ids[: len(start)], count + inverse_ids[len(start) :]
    tip = np.full(len(start), count + len(ids))
    walls = [np.column_stack([end, start, a]), np.column_stack([end, a, b]), np.column_stack([b, a, tip])]
    return np.concatenate([low, centre]), np.concatenate(walls)


def _oriented(surface: Surface) -> Surface:
    """The largest piece of a surface, without the faces at which it is no surface.

    These are faces whose directed edge another face has too, and all faces at a vertex where the rim pinches. Raises
    FitError where that does not come to an end.
    """
    faces = surface.faces
    for _ in range(MOST_PASSES):
        bad = _doubled(faces, len(surface.vertices)) | _pinched(Surface(surface.vertices, faces))
        if not bad.any():
            return Surface(surface.vertices, faces)
        faces = _largest(faces[~bad], len(surface.vertices))
    raise FitError("the scan: too ragged to be made solid; export it again, with its surface mended")


def _largest(faces: IntArray, count: int) -> IntArray:
    """The faces of the piece that has most of them."""
    ends = faces.astype(np.int64)
    one, other = np.concatenate([ends[:, 0], ends[:, 1]]), np.concatenate([ends[:, 1], ends[:, 2]])
    label = joined(one, other, count)[faces[:, 0]]
    return np.asarray(faces[label == np.bincount(label).argmax()]) if len(faces) else faces


def _doubled(faces: IntArray, count: int) -> BoolArray:
    """Faces with a directed edge that another face has too."""
    start, end = faces.astype(np.int64), np.roll(faces, -1, axis=1).astype(np.int64)
    _, which, times = np.unique(start * count + end, return_inverse=True, return_counts=True)
    return np.asarray((times[which.reshape(-1, 3)] > 1).any(axis=1))


def _pinched(surface: Surface) -> BoolArray:
    """Faces at a vertex from which more than one edge of the rim goes on."""
    start, _ = border(Edges.of(surface))
    twice = np.bincount(start, minlength=len(surface.vertices)) > 1
    return np.asarray(twice[surface.faces].any(axis=1))


def _interface(site: str, stands: FloatArray, socket: Any, analog: Analog) -> Interface:
    """The socket's inside: the surface of its room with the material outside."""
    return Interface(site, stands, surface_of(socket), float(analog.surface.vertices[:, 2].min()), 0.0)


def without(surface: Surface, bodies: Sequence[tuple[Surface, FloatArray]]) -> Surface:
    """A scan without what lies within BODY_REACH of the bodies at their poses (body, scan_from_body)."""
    keep = np.ones(len(surface.vertices), np.bool_)
    for body, scan_from_body in bodies:
        local = surface.moved(inverse(scan_from_body)).vertices
        keep &= ~np.isfinite(SurfaceTree.of(body).closest(local, BODY_REACH).distance)
    return Surface(surface.vertices, surface.faces[keep[surface.faces].all(axis=1)])
