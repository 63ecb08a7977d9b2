"""A bar of a chosen section over the uppermost connections of some sites, exact where it seats."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

import numpy as np

from stylobate.build.cone import unit
from stylobate.build.kernel import along, cylinder, hull_of, kernel, moved, surface_of
from stylobate.build.model import PlacedSite, Placement
from stylobate.build.refit import Interface, Structure
from stylobate.core.errors import UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment

FREE = 0.3
"""mm. The least height of a pillar below the bar, so that its seat stays whole (invented)."""
FAR = 40.0
"""mm. How far a channel is drilled and what lies below a seat is cleared."""
PROUD = 0.05
"""mm by which the corners stand out from the beams."""
THROUGH = 0.5
"""mm by which what is cut level begins below the cut, so that no two faces lie in one plane before it."""
HEAD = 0.01
"""mm above the platform from which on an abutment's surface belongs to its head."""


@dataclass(frozen=True)
class Section:
    """width, height: of the bar, mm, square to its run. rise: of its middle above each platform, mm.

    channel: diameter of screw channels, mm.
    """

    width: float = 4.0
    height: float = 5.0
    rise: float = 4.0
    channel: float = 2.5


def bar(placement: Placement, section: Section) -> Structure:
    """A bar through the sites of a placement, in their order along the arch.

    At each site a pillar as wide as the platform stands on the uppermost connection, drilled along the screw channel
    and hollowed for the head of the abutment below it; straight beams of the section join the pillars. Raises
    UsageError or FitError.
    """
    _require(placement.sites, section)
    middle = np.mean([site.channel.origin for site in placement.sites], axis=0)
    sites = [_shifted(site, -middle) for site in placement.sites]
    up = unit(np.sum([site.upper.scan_from_connection[:3, 2] for site in sites], axis=0))
    knots = [_knot(site, section) for site in sites]
    solids = [_beam(one, two, up, section) for one, two in pairwise(knots)]
    solids += [_joint(knot, up, section) for knot in knots]
    pillars = [_pillar(site, section) for site in sites]
    solids += [moved(pillar, site.upper.scan_from_connection) for pillar, site in zip(pillars, sites, strict=True)]
    cuts = [cut for site in sites for cut in _cuts(site, section)]
    add, subtract = kernel().OpType.Add, kernel().OpType.Subtract
    whole = kernel().Manifold.batch_boolean(solids, add)
    whole = kernel().Manifold.batch_boolean([whole, *cuts], subtract)
    local = surface_of(whole, "the bar")
    surface = Surface(local.vertices + middle, local.faces)
    interfaces = [_interface(site, pillar, section) for site, pillar in zip(placement.sites, pillars, strict=True)]
    return Structure("bar", surface, float(whole.volume()), tuple(interfaces))


def _shifted(site: PlacedSite, shift: FloatArray) -> PlacedSite:
    """The site in coordinates with their origin elsewhere: the kernel loses what lies far from it."""
    stands = site.upper.scan_from_connection.copy()
    stands[:3, 3] += shift
    upper = replace(site.upper, scan_from_connection=stands)
    return replace(site, upper=upper, channel=replace(site.channel, origin=site.channel.origin + shift))


def _require(sites: Sequence[PlacedSite], section: Section) -> None:
    if len(sites) < 2:
        raise UsageError("a bar needs two sites or more; name them with --site.")
    for name, value in (("--width", section.width), ("--height", section.height)):
        if not 0.5 <= value <= 20.0:
            raise UsageError(f"{name} {value:g}: write a size of the bar from 0.5 to 20 mm.")
    least = section.height / 2.0 + FREE
    if not least <= section.rise <= FAR / 2.0:
        raise UsageError(
            f"--rise {section.rise:g}: write {least:g} to {FAR / 2:g} mm, so that the bar clears its seats."
        )
    for site in sites:
        if section.channel >= site.upper.connection.platform_diameter - 0.4:
            raise UsageError(
                f"--channel-diameter {section.channel:g}: site {site.site} has a platform of "
                f"{site.upper.connection.platform_diameter:g} mm, which leaves no seat; write a smaller one."
            )


def _knot(site: PlacedSite, section: Section) -> FloatArray:
    stands = site.upper.scan_from_connection
    return np.asarray(stands[:3, 3] + section.rise * stands[:3, 2])


def _beam(one: FloatArray, two: FloatArray, up: FloatArray, section: Section) -> Any:
    """A straight beam of the section between two knots."""
    length = float(np.linalg.norm(two - one))
    box = kernel().Manifold.cube((section.width, section.height, length), True).translate((0.0, 0.0, length / 2.0))
    return moved(box, along(one, two - one, up))


def _joint(knot: FloatArray, up: FloatArray, section: Section) -> Any:
    """An upright round that fills the corner where beams meet; a little larger, so that faces do not just touch."""
    half = section.height / 2.0 + PROUD
    round_ = cylinder(section.width / 2.0 + PROUD, -half, half)
    return moved(round_, along(knot, up, np.eye(3)[int(np.argmin(np.abs(up)))]))


def _pillar(site: PlacedSite, section: Section) -> Any:
    """From the platform to above the bar, hollowed and drilled, in the frame of the uppermost connection."""
    top = section.rise + section.height / 2.0 + 2.0 * PROUD
    pillar = cylinder(site.upper.connection.platform_diameter / 2.0, -THROUGH, top)
    back = inverse(site.upper.scan_from_connection)
    for cut in _cuts(site, section):
        pillar -= moved(cut, back)
    return pillar


def _cuts(site: PlacedSite, section: Section) -> list[Any]:
    """What must stay free at a seat, in scan coordinates: below it, the abutment's head, and the screw channel."""
    stands = site.upper.scan_from_connection
    radius = site.upper.connection.platform_diameter / 2.0
    drill = cylinder(section.channel / 2.0, -1.0, FAR)
    cuts = [
        moved(cylinder(radius + 1.0, -FAR / 4.0, 0.0), stands),
        moved(drill, along(site.channel.origin, site.channel.direction, stands[:3, 0])),
    ]
    head = _head(site)
    return cuts if head is None else [*cuts, moved(head, stands)]


def _head(site: PlacedSite) -> Any | None:
    """The abutment's head above its upper platform, its screw hole filled, in that connection's frame."""
    below = [link for link in site.chain if isinstance(link.part, MultiUnitAbutment)]
    if not below:
        return None
    abutment = below[-1].part
    assert isinstance(abutment, MultiUnitAbutment)
    local = abutment.surface.moved(inverse(abutment.lower_from_upper)).vertices
    above = local[local[:, 2] > HEAD]
    if len(above) < 4:
        return None
    foot = local[(np.abs(local[:, 2]) <= HEAD) & (np.hypot(local[:, 0], local[:, 1]) < _foot(local, above))]
    return hull_of(np.concatenate([above, foot, foot - [0.0, 0.0, THROUGH]]))


def _foot(local: FloatArray, above: FloatArray) -> float:
    """Radius within which points of the platform belong to the foot of the head: a little more than the head itself."""
    on = np.hypot(*local[np.abs(local[:, 2]) <= HEAD][:, :2].T)
    widest = float(np.hypot(above[:, 0], above[:, 1]).max())
    outer = float(on.max(initial=0.0))
    inner = on[on < outer - 0.05]
    return float(inner.max(initial=widest)) + 0.01


def _interface(site: PlacedSite, pillar: Any, section: Section) -> Interface:
    high = section.rise - section.height / 2.0
    stands = site.upper.scan_from_connection
    return Interface(site.site, stands, surface_of(pillar, f"the pillar of site {site.site}"), 0.0, high)
