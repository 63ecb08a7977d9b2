"""A bar of a chosen section over the uppermost connections of some sites, exact where it seats."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

import numpy as np

from stylobate.build.cone import unit
from stylobate.build.head import head_of
from stylobate.build.kernel import along, cylinder, hull_of, kernel, largest, left_out, moved, surface_of
from stylobate.build.model import PlacedSite, Placement
from stylobate.build.refit import Interface, Structure
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

FREE = 0.3
"""mm. The least height of a pillar below the bar, so that its seat stays whole (invented)."""
FAR = 40.0
"""mm. How far a channel is drilled."""
CLEAR = 3.0
"""mm below a seat in which nothing of the bar stays beside what carries it (invented: an abutment's collar)."""
LESS = 1e-3
"""Share of a section or a seat that may be missing before that is said."""
PROUD = 0.05
"""mm by which the corners stand out from the beams."""
THROUGH = 0.5
"""mm by which what is cut level begins below the cut, so that no two faces lie in one plane before it."""
CHIP = 1.0
"""mm³. A loose piece smaller than this, cut off where a leaning part meets a seat, is left out."""


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
    solids += [moved(_pillar(site, section), site.upper.scan_from_connection) for site in sites]
    cuts = [cut for site in sites for cut in _cuts(site, section)]
    add, subtract = kernel().OpType.Add, kernel().OpType.Subtract
    whole = kernel().Manifold.batch_boolean(solids, add)
    whole = kernel().Manifold.batch_boolean([whole, *cuts], subtract)
    local, lost = largest(whole, "the bar")
    if lost and lost[0] > CHIP:
        raise FitError(f"the bar: falls into {len(lost) + 1} pieces; look at the sizes asked for")
    surface = Surface(local.vertices + middle, local.faces)
    interfaces = [_interface(site, section) for site in placement.sites]
    warnings = left_out(lost) + _thin(whole, sites, knots, up, section) + _bitten(whole, sites, section)
    return Structure("bar", surface, tuple(interfaces), warnings)


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


def _thin(
    whole: Any, sites: Sequence[PlacedSite], knots: Sequence[FloatArray], up: FloatArray, section: Section
) -> tuple[str, ...]:
    """A line for each beam that has less than the section asked for half way, where a seat or a channel needs room."""
    lines = []
    for (one, a), (two, b) in pairwise(zip(sites, knots, strict=True)):
        across = inverse(along((a + b) / 2.0, b - a, up))
        box = kernel().Manifold.cube((section.width, section.height, THROUGH), True)
        area = float((moved(whole, across) ^ box).volume()) / THROUGH
        if area < (1.0 - LESS) * section.width * section.height:
            lines.append(
                f"between sites {one.site} and {two.site} the bar has {area:.1f} mm² half way, not "
                f"{section.width * section.height:.1f}: a seat or a screw channel needs room there; "
                "try another --rise or --width"
            )
    return tuple(lines)


def _bitten(whole: Any, sites: Sequence[PlacedSite], section: Section) -> tuple[str, ...]:
    """A line for each seat into which what another site needs has cut."""
    lines = []
    for site in sites:
        slab = _seat(site, section) ^ cylinder(site.upper.connection.platform_diameter, 0.0, PROUD)
        left = float((moved(whole, inverse(site.upper.scan_from_connection)) ^ slab).volume())
        lost = 1.0 - left / float(slab.volume())
        if lost > LESS:
            lines.append(f"site {site.site}: {lost:.1%} of its seat is cut away by what another site needs")
    return tuple(lines)


def _joint(knot: FloatArray, up: FloatArray, section: Section) -> Any:
    """An upright round that fills the corner where beams meet; a little larger, so that faces do not just touch."""
    half = section.height / 2.0 + PROUD
    round_ = cylinder(section.width / 2.0 + PROUD, -half, half)
    return moved(round_, along(knot, up, np.eye(3)[int(np.argmin(np.abs(up)))]))


def _pillar(site: PlacedSite, section: Section) -> Any:
    """From below the platform to above the bar, not cut yet, in the frame of the uppermost connection."""
    top = section.rise + section.height / 2.0 + 2.0 * PROUD
    return cylinder(site.upper.connection.platform_diameter / 2.0, -THROUGH, top)


def _cuts(site: PlacedSite, section: Section) -> list[Any]:
    """What must stay free at a seat, in scan coordinates: the screw channel, and what carries the seat."""
    stands = site.upper.scan_from_connection
    drill = cylinder(section.channel / 2.0, -1.0, FAR)
    below = cylinder(site.upper.connection.platform_diameter / 2.0 + 1.0, -CLEAR, 0.0)
    head = head_of(site)
    # Joined in their own frame, where the head's foot lies exactly in the plane of the seat.
    room = below if head is None else below + hull_of(head)
    return [moved(room, stands), moved(drill, along(site.channel.origin, site.channel.direction, stands[:3, 0]))]


def _seat(site: PlacedSite, section: Section) -> Any:
    """The pillar alone, hollowed and drilled, in the frame of the uppermost connection."""
    pillar = _pillar(site, section)
    for cut in _cuts(site, section):
        pillar -= moved(cut, inverse(site.upper.scan_from_connection))
    return pillar


def _interface(site: PlacedSite, section: Section) -> Interface:
    high = section.rise - section.height / 2.0
    return Interface(site.site, site.upper.scan_from_connection, surface_of(_seat(site, section)), 0.0, high)
