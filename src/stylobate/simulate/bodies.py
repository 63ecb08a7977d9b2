"""Invented scan bodies: families of posts, each drawn from a random generator, and the twins that resemble them.

Every family is a solid in the connection frame (z = 0 the platform, +z up, +x the index mark), closed and
oriented outward. A family breaks every turn about its axis unless asked not to.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from typing import Any

import numpy as np

from stylobate.core.surface import Surface
from stylobate.parts.model import ScanBody
from stylobate.simulate import solids

Generator = np.random.Generator
DIAMETERS = (3.2, 5.5)
HEIGHTS = (5.0, 11.0)


def _size(rng: Generator, low: float = DIAMETERS[0], high: float = DIAMETERS[1]) -> tuple[float, float]:
    """Radius and height in mm."""
    return rng.uniform(low, high) / 2.0, rng.uniform(max(HEIGHTS[0], 5.5), HEIGHTS[1])


def flatted_cylinder(rng: Generator, indexed: bool) -> Any:
    """Cylinder with a small top chamfer and one flat."""
    r, h = _size(rng)
    solid = solids.chamfered(r, 0.0, h, rng.uniform(0.1, 0.35))
    return solids.flat(solid, r * rng.uniform(0.62, 0.85), h * rng.uniform(0.35, 0.6)) if indexed else solid


def bevelled(rng: Generator, indexed: bool) -> Any:
    """Cylinder whose top slopes, with a flat turned away from the slope."""
    r, h = _size(rng, 3.8)
    solid = solids.cylinder(r, 0.0, h)
    if not indexed:
        return solid
    solid = solids.bevel(solid, h, r * 0.45, rng.uniform(12.0, 32.0), rng.uniform(60.0, 300.0))
    return solids.flat(solid, r * rng.uniform(0.65, 0.85), h * rng.uniform(0.35, 0.55))


def slender(rng: Generator, indexed: bool) -> Any:
    """Tall thin post with a collar below and a flat."""
    r, h = rng.uniform(3.2, 3.8) / 2.0, rng.uniform(8.5, 11.0)
    solid = solids.cylinder(r + 0.3, 0.0, 1.2) + solids.chamfered(r, 0.0, h, 0.2)
    return solids.flat(solid, r * rng.uniform(0.6, 0.8), h * rng.uniform(0.4, 0.6)) if indexed else solid


def three_lobed(rng: Generator, indexed: bool) -> Any:
    """Prism over a soft three-lobed outline; a groove in one lobe tells the lobes apart."""
    r, h = _size(rng, 3.8)
    depth = rng.uniform(0.06, 0.115)
    solid = solids.prism(solids.lobed(r / (1.0 + depth), depth, 3), 0.0, h, rng.uniform(0.9, 1.0))
    if not indexed:
        return solid
    width = rng.uniform(0.5, 0.9)
    return solid - solids.box((r * 0.72, -width / 2, h * rng.uniform(0.4, 0.6)), (9.0, width / 2, h + 1.0))


def hexagonal(rng: Generator, indexed: bool) -> Any:
    """Hexagonal prism, tapered, one corner of its top cut off and one side milled deeper."""
    r, h = _size(rng, 3.8, 5.2)
    solid = solids.prism(solids.regular(6, 2 * r * 0.93), 0.0, h, rng.uniform(0.85, 1.0))
    if not indexed:
        return solid
    solid = solids.bevel(solid, h, r * 0.35, rng.uniform(18.0, 35.0), rng.choice([30.0, 90.0, 150.0]))
    return solids.flat(solid, r * rng.uniform(0.66, 0.76), h * rng.uniform(0.35, 0.5))


def cone(rng: Generator, indexed: bool) -> Any:
    """Tapered post with a leaning flat."""
    r, h = _size(rng, 4.0)
    solid = solids.cylinder(r, 0.0, h, r * rng.uniform(0.62, 0.85))
    if not indexed:
        return solid
    return solids.flat(solid, r * rng.uniform(0.66, 0.78), h * rng.uniform(0.3, 0.5), 0.0, rng.uniform(2.0, 7.0))


def small_head(rng: Generator, indexed: bool) -> Any:
    """Round head on a thin neck, with one flat and a slot over its top."""
    r, h = rng.uniform(3.4, 4.6) / 2.0, rng.uniform(6.0, 9.5)
    neck = r * rng.uniform(0.6, 0.75)
    below = h - rng.uniform(3.0, 4.0)
    shoulder = solids.cylinder(neck, below - (r - neck), below, r)
    solid = solids.cylinder(neck, 0.0, h - 0.5) + shoulder + solids.chamfered(r, below, h, rng.uniform(0.3, 0.6))
    if not indexed:
        return solid
    solid = solids.flat(solid, r * rng.uniform(0.68, 0.8), below + 0.4)
    return solid - solids.box((-9.0, -0.4, h - rng.uniform(0.4, 0.8)), (0.0, 0.4, h + 1.0))


def square_post(rng: Generator, indexed: bool) -> Any:
    """Square post whose upright corners are chamfered, each by another width."""
    r, h = _size(rng, 3.6, 5.0)
    half = r * 0.8
    solid = solids.box((-half, -half, 0.0), (half, half, h))
    widths = rng.permutation([0.12, 0.3, 0.5, 0.75]) if indexed else np.full(4, 0.3)
    for corner, width in enumerate(widths):
        distance = half * np.sqrt(2.0) - width * r / 2.0
        solid = solids.flat(solid, distance, 0.0, 45.0 + 90.0 * corner)
    return solids.bevel(solid, h, half * 0.3, rng.uniform(10.0, 25.0), 45.0) if indexed else solid


def ball_topped(rng: Generator, indexed: bool) -> Any:
    """Post with a hemispherical top and a notch in its side."""
    r, h = _size(rng, 3.6, 5.0)
    solid = solids.cylinder(r, 0.0, h - r) + solids.ball(r, h - r)
    if not indexed:
        return solid
    low = h * rng.uniform(0.4, 0.55)
    return solid - solids.box((r * rng.uniform(0.5, 0.7), -r * 0.55, low), (9.0, r * 0.55, low + rng.uniform(1.2, 2.0)))


def winged(rng: Generator, indexed: bool) -> Any:
    """Post with a wing on one side."""
    r, h = _size(rng, 3.4, 4.4)
    solid = solids.chamfered(r, 0.0, h, rng.uniform(0.15, 0.4))
    if not indexed:
        return solid
    low, reach, half = h * rng.uniform(0.45, 0.55), r + rng.uniform(0.7, 1.3), rng.uniform(0.5, 0.9)
    return solid + solids.box((0.0, -half, low), (reach, half, h * rng.uniform(0.85, 0.95)))


def two_flats(rng: Generator, indexed: bool) -> Any:
    """Cylinder with two flats of unlike depth, about a right angle apart."""
    r, h = _size(rng)
    solid = solids.chamfered(r, 0.0, h, rng.uniform(0.1, 0.5))
    if not indexed:
        return solid
    solid = solids.flat(solid, r * rng.uniform(0.64, 0.74), h * rng.uniform(0.35, 0.5))
    return solids.flat(solid, r * rng.uniform(0.8, 0.9), h * rng.uniform(0.45, 0.65), rng.uniform(80.0, 130.0))


def stepped(rng: Generator, indexed: bool) -> Any:
    """Two cylinders, the upper one thinner, with a flat down to the step."""
    r, h = _size(rng, 4.2)
    step, upper = h * rng.uniform(0.4, 0.55), r * rng.uniform(0.7, 0.85)
    solid = solids.chamfered(r, 0.0, step, 0.25) + solids.chamfered(upper, 0.0, h, 0.2)
    return solids.flat(solid, upper * rng.uniform(0.6, 0.8), step + 0.3) if indexed else solid


FAMILIES: dict[str, Callable[[Generator, bool], Any]] = {
    family.__name__.replace("_", "-"): family
    for family in (
        flatted_cylinder, bevelled, slender, three_lobed, hexagonal, cone, small_head, square_post, ball_topped,
        winged, two_flats, stepped,
    )
}  # fmt: skip


def body_of(identifier: str, seats_on: str, surface: Surface, material: str = "titanium, sandblasted") -> ScanBody:
    """A scan body whose whole surface is its scan region."""
    digest = hashlib.sha256(surface.vertices.tobytes() + surface.faces.tobytes()).hexdigest()
    return ScanBody(identifier, seats_on, surface, surface, digest, material=material)


def draw_body(
    rng: Generator, identifier: str, seats_on: str, family: str | None = None, indexed: bool = True
) -> ScanBody:
    """A body of `family` (a key of FAMILIES), or of any, that nobody has seen before."""
    name = family or str(rng.choice(list(FAMILIES)))
    return body_of(identifier, seats_on, solids.surface_of(FAMILIES[name](rng, indexed)))


def draw_bodies(seed: int, count: int, seats_on: str = "alder") -> tuple[ScanBody, ...]:
    """`count` bodies of different families while these last, named drawn-1, drawn-2, …"""
    rng = np.random.default_rng([seed, 0xB0D1E5])
    names: list[str] = []
    while len(names) < count:
        names += [str(name) for name in rng.permutation(list(FAMILIES))]
    return tuple(draw_body(rng, f"drawn-{k + 1}", seats_on, name) for k, name in enumerate(names[:count]))


def twin_post(diameter: float, height: float, flat_from: float) -> Surface:
    """The post of which near twins are made: cylinder, top chamfer, a flat at 0.75 radius from z = `flat_from` up."""
    solid = solids.chamfered(diameter / 2.0, 0.0, height, 0.2)
    return solids.surface_of(solids.flat(solid, 0.75 * diameter / 2.0, flat_from))


def near_twins(seats_on: str = "alder") -> tuple[ScanBody, ScanBody, ScanBody]:
    """A post, the same 0.15 mm thicker (4.80 against 4.95), and the same with its flat 0.8 mm lower."""
    return (
        body_of("twin-480", seats_on, twin_post(4.80, 8.0, 4.4)),
        body_of("twin-495", seats_on, twin_post(4.95, 8.0, 4.4)),
        body_of("twin-low-flat", seats_on, twin_post(4.80, 8.0, 3.6)),
    )
