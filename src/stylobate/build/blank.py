"""A blank of a custom abutment: from what carries it, exactly, up along the emergence; drilled along the channel."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from stylobate.build.around import require_near
from stylobate.build.emergence import DIRECTIONS, Emergence, azimuths, given, measured
from stylobate.build.head import FLAT, RIM, head_of, standing
from stylobate.build.kernel import along, cylinder, largest, left_out, moved, solid_of, surface_of, widened
from stylobate.build.model import PlacedSite
from stylobate.build.placing import place
from stylobate.build.refit import Interface, Structure
from stylobate.build.wishes import CHANNEL_DIAMETER
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import inverse, pose
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray
from stylobate.parts import PartsFolder
from stylobate.parts.model import TitaniumBase
from stylobate.record import Record
from stylobate.scan import read_scan

OVER = 1.0
"""mm by which the blank stands over what it must cover, where no height is asked for (invented)."""
LEAST_OVER = 0.1
"""mm by which it stands over that at least."""
LEVEL_MM = 0.25
"""mm. The side of the blank has points no farther apart than this along the axis."""
FAR = 40.0
"""mm. How far the channel is drilled."""
FROM = 0.5
"""mm above the seat from which on the wall is looked at: nearer, the part below sets it."""


@dataclass(frozen=True)
class Form:
    """channel: diameter of the screw channel. clearance: room for cement around a base. wall: the least that is left.

    height: of the blank over the platform; None: 1 mm above the part below and the margin, whichever is higher. All mm.
    """

    channel: float = CHANNEL_DIAMETER
    clearance: float = 0.03
    wall: float = 0.4
    height: float | None = None


@dataclass(frozen=True)
class Seat:
    """What carries a blank. frame: scan_from_part (4, 4) of the base, or scan_from_connection above an abutment.

    height: of the seat in that frame; rim: its radius. head: points (n, 3) of what stands on it, from the seat. mm.
    """

    frame: FloatArray
    height: float
    rim: float
    head: FloatArray

    @property
    def stands(self) -> FloatArray:
        """scan_from_seat."""
        return np.asarray(self.frame @ _raised(self.height))


def blank(
    result: str | Path | Record,
    parts: str | Path | PartsFolder,
    sites: Sequence[str] = (),
    aims: Sequence[str] = (),
    tissue: str | Path | None = None,
    emergence: str | None = None,
    accept: Sequence[str] = (),
    form: Form | None = None,
) -> tuple[Structure, PlacedSite]:
    """A blank on one site of a result, and the site as placed. sites, aims, accept: as for `place`.

    tissue: a scan in scan coordinates; emergence: "HEIGHT:DIAMETER,…" instead. Raises UsageError, FitError, and what
    `place` and `read_scan` raise.
    """
    if (tissue is None) == (emergence is None):
        raise UsageError("say what the blank follows: either --tissue SCAN or --emergence HEIGHT:DIAMETER,…")
    form = form or Form()
    _require(form)
    placement = place(result, parts, sites=sites, aims=aims, accept=accept, channel_diameter=form.channel)
    if len(placement.sites) != 1:
        raise UsageError("a blank stands on one site; name it, like --site 1=alder-base-10.")
    site = placement.sites[0]
    seat = seat_of(site)
    if emergence is not None:
        return blank_on(site, seat, given(emergence, seat.height, seat.rim), form), site
    assert tissue is not None
    surface = read_scan(tissue).whole()
    require_near(surface, seat.stands[None, :3, 3], "--tissue")
    return blank_on(site, seat, measured(surface, seat.stands, seat.rim, site.site), form), site


def _raised(height: float) -> FloatArray:
    """(4, 4): up along z by `height` mm."""
    return pose(np.eye(3), np.array([0.0, 0.0, height]))


def _require(form: Form) -> None:
    for name, value, low, high in (
        ("--clearance", form.clearance, 0.0, 0.5),
        ("--wall", form.wall, 0.0, 3.0),
        ("--height", form.height, 1.0, 30.0),
    ):
        if value is not None and not low <= value <= high:
            raise UsageError(f"{name} {value:g}: write {low:g} to {high:g} mm.")


def seat_of(site: PlacedSite) -> Seat:
    """Where a blank seats: the shoulder of a base, or the platform of an abutment. Raises UsageError."""
    if not site.chain:
        raise UsageError(f"site {site.site}: no part of the folder fits on it, so nothing carries a blank.")
    top = site.chain[-1]
    if isinstance(top.part, TitaniumBase):
        local = top.part.surface.vertices - [0.0, 0.0, top.part.gingival_height]
        on = np.hypot(*local[np.abs(local[:, 2]) <= FLAT][:, :2].T)
        rim = float(on.max(initial=0.0))
        head = standing(local, rim - RIM)
        if rim == 0.0 or head is None:
            raise UsageError(
                f"site {site.site}: the surface of {top.part.id} has no shoulder at its gingival height "
                f"({top.part.gingival_height:g} mm), so nothing carries a blank; name another part."
            )
        return Seat(top.scan_from_part, top.part.gingival_height, rim, head)
    head = head_of(site)
    if head is None:
        raise UsageError(f"site {site.site}: {top.part.id} has no head above its platform; name another part.")
    return Seat(site.upper.scan_from_connection, 0.0, site.upper.connection.platform_diameter / 2.0, head)


def blank_on(site: PlacedSite, seat: Seat, emergence: Emergence, form: Form) -> Structure:
    """The blank on a seat. Raises UsageError where it is too low, FitError where too little wall is left."""
    covered = float(max(emergence.heights.max(), seat.head[:, 2].max() + form.clearance))
    top = covered + OVER if form.height is None else form.height - seat.height
    if top < covered + LEAST_OVER:
        raise UsageError(
            f"--height {form.height:g}: write {covered + seat.height + 2 * LEAST_OVER:.1f} mm or more, so that "
            f"the blank of site {site.site} covers the part below it and the margin."
        )
    outside = _outside(emergence, seat.rim, top)
    channel = along(site.channel.origin, site.channel.direction, seat.stands[:3, 0])
    drill = moved(cylinder(form.channel / 2.0, 0.0, FAR), inverse(seat.stands) @ channel)
    room = widened(seat.head, form.clearance, form.clearance) + drill
    wall, height = _least_wall(outside, room)
    if wall < form.wall:
        raise FitError(
            f"site {site.site}: {max(wall, 0.0):.2f} mm of wall are left {height + seat.height:.1f} mm above the "
            f"platform, less than the {form.wall:g} asked for; take a smaller base or channel, another aim, or a "
            "smaller --wall"
        )
    finished, lost = largest(solid_of(outside, "the blank") - room, "the blank")
    seated = surface_of(cylinder(seat.rim + 1.0, 0.0, top) - room).moved(_raised(seat.height))
    high = seat.height + float(seat.head[:, 2].max())
    interface = Interface(site.site, seat.frame, seated, seat.height, high)
    return Structure("blank", finished.moved(seat.stands), (interface,), left_out(lost), wall)


def _outside(emergence: Emergence, rim: float, top: float) -> Surface:
    """From the seat's rim over the emergence straight up to a level top, closed, in the frame of the seat."""
    flat = np.ones((1, DIRECTIONS))
    heights = np.concatenate([0.0 * flat, emergence.heights, top * flat])
    radii = np.concatenate([rim * flat, emergence.radii, emergence.radii[-1:]])
    between = np.concatenate(
        [k + np.arange(n) / n for k, n in enumerate(np.ceil(np.diff(heights, axis=0).max(axis=1) / LEVEL_MM))]
    )
    at = np.append(between, len(heights) - 1.0)
    heights, radii = (
        np.column_stack([np.interp(at, np.arange(len(v)), v[:, k]) for k in range(DIRECTIONS)])
        for v in (heights, radii)
    )
    angle = azimuths()
    rings = np.stack([radii * np.cos(angle), radii * np.sin(angle), heights], axis=-1).reshape(-1, 3)
    ends = np.array([[0.0, 0.0, 0.0], [0.0, 0.0, top]])
    return Surface(np.concatenate([rings, ends]), _faces(len(heights)))


def _faces(levels: int) -> IntArray:
    """Faces over `levels` rings of DIRECTIONS points, closed by a point below and one above."""
    k = np.arange(DIRECTIONS)
    after, below, above = (k + 1) % DIRECTIONS, np.full(DIRECTIONS, levels * DIRECTIONS), (levels - 1) * DIRECTIONS
    low = DIRECTIONS * np.repeat(np.arange(levels - 1), DIRECTIONS)
    k_, after_ = np.tile(k, levels - 1), np.tile(after, levels - 1)
    up = low + DIRECTIONS
    faces = [
        np.column_stack([low + k_, low + after_, up + after_]),
        np.column_stack([low + k_, up + after_, up + k_]),
        np.column_stack([after, k, below]),
        np.column_stack([above + k, above + after, below + 1]),
    ]
    return np.concatenate(faces).astype(np.int32)


def _least_wall(outside: Surface, room: Any) -> tuple[float, float]:
    """Least distance from the side of the blank to what is hollow in it, and how high above the seat that is, mm.

    Negative where the room breaks through.
    """
    side = outside.vertices[:-2]
    side = side[side[:, 2] >= FROM]
    away = SurfaceTree.of(surface_of(room)).closest(side).distance
    least = int(np.argmin(away))
    return float(away[least]), float(side[least, 2])
