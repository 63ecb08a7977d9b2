"""The frame of a raw CAD surface: platform plane, axis and index, found among its features or picked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core.errors import PartsError, UsageError
from stylobate.core.rigid import inverse, pose
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.edges import Edges
from stylobate.parts.faces import Anatomy, anatomy
from stylobate.parts.shape import border

OUTSTANDING = 1.5
"""A flat is taken for the index without being picked where it is this many times larger than the next."""
ON = 0.2
"""mm. A picked point lies on a feature within this."""
PLANE_MM = 0.01
"""mm. Heights along the axis that differ by less are one plane; an open rim this even lies in a plane."""
SAME_MM, SAME_DEG = 0.01, 0.05
"""How far the axis, platform and index of a matching surface may be off: what CAD exports keep to."""


@dataclass(frozen=True)
class Seat:
    """A plane across the axis on which the part may seat. number: counted along the axis from 1. up: (3,) from it into
    the part. open: an open rim, not a face. area: mm² (of an open rim, of the disc in it)."""

    number: int
    point: FloatArray
    up: FloatArray
    area: float
    open: bool

    def words(self) -> str:
        """For people: number, kind, place and size."""
        where = ",".join(f"{value:.3f}" for value in self.point)
        return f"{self.number}: {'open rim' if self.open else 'plane'} at {where} ({self.area:.1f} mm²)"


@dataclass(frozen=True)
class Flat:
    """A plane along the axis. number: largest first, from 1. normal: (3,) outwards. area: mm²."""

    number: int
    point: FloatArray
    normal: FloatArray
    area: float

    def words(self) -> str:
        """For people."""
        where = ",".join(f"{value:.3f}" for value in self.point)
        return f"{self.number}: flat at {where} ({self.area:.1f} mm²)"


@dataclass(frozen=True)
class Framed:
    """A surface in its part's frame. part_from_file: (4, 4). said: how each part of the frame was found."""

    surface: Surface
    part_from_file: FloatArray
    said: tuple[str, ...]


Pick = int | FloatArray


def seats(surface: Surface, found: Anatomy, below: bool) -> tuple[Seat, ...]:
    """Where the part may seat, along the axis. below: whether the part lies below its platform, as an analog does."""
    side = 1.0 if below else -1.0
    made = [(face.middle, side * face.feature.direction, face.area, False) for face in found.across()]
    made += _rims(surface, found, side)
    made.sort(key=lambda one: float((one[0] - found.point) @ found.axis))
    return tuple(Seat(k, *one) for k, one in enumerate(made, start=1))


def _rims(surface: Surface, found: Anatomy, side: float) -> list[tuple[FloatArray, FloatArray, float, bool]]:
    """Open rims that lie in a plane across the axis, by height."""
    edges = Edges.of(surface)
    start, end = border(edges)
    if not len(start):
        return []
    away = surface.vertices - found.point
    height = away @ found.axis
    made = []
    level = np.sort(height[start])
    for group in np.split(level, np.flatnonzero(np.diff(level) > PLANE_MM) + 1):
        on = (height[start] >= group[0]) & (height[start] <= group[-1])
        if np.ptp(group) > PLANE_MM or np.count_nonzero(on) < 8:
            continue
        p, q = away[start[on]], away[end[on]]
        turning = float(np.cross(p, q).sum(axis=0) @ found.axis) / 2.0
        middle = found.point + float(group.mean()) * found.axis
        # A face keeps its rim on its left, so a rim that turns about +axis bounds a wall that stands on it.
        made.append((middle, np.sign(turning) * -side * found.axis, abs(turning), True))
    return made


def flats(found: Anatomy) -> tuple[Flat, ...]:
    """Planes along the axis, largest first."""
    return tuple(
        Flat(k, face.middle, face.feature.direction, face.area) for k, face in enumerate(found.along(), start=1)
    )


def framed(
    surface: Surface,
    name: str,
    index_order: int,
    below: bool = False,
    platform: Pick | None = None,
    index: Pick | None = None,
    axis: FloatArray | None = None,
    match: Surface | None = None,
) -> Framed:
    """Set the frame: origin where the axis meets the platform plane, +z along the axis into the part, +x to the index.

    platform, index: number of a seat or flat, or a point (3,) on it; index may be any point away from the axis. axis:
    two points (2, 3). match: a surface in the same coordinates on which the part seats: where no platform is picked,
    it is the one plane that both share. Raises PartsError or UsageError: names what there is to pick from.
    """
    found = anatomy(surface, name, axis)
    candidates = seats(surface, found, below)
    if platform is None and match is not None:
        other = anatomy(match, f"what {name} seats on")
        platform = _shared(candidates, seats(match, other, not below), other)
    seat = _seat(candidates, platform, found, name)
    z = found.axis * float(np.sign(found.axis @ seat.up))
    origin = found.point + float((seat.point - found.point) @ z) * z
    x, how = _index(flats(found), index, origin, z, index_order, name)
    rotation = np.array([x, np.cross(z, x), z])
    part_from_file = pose(rotation, -rotation @ origin)
    lead = found.round[0].feature if found.round else None
    said = (
        "axis: picked"
        if lead is None
        else f"axis: {lead.kind}, radius {lead.radius:.3f} mm, off by {1e3 * lead.rms:.2f} µm rms",
        f"platform: {seat.words()}",
        how,
    )
    return Framed(surface.moved(part_from_file), part_from_file, said)


def _seat(candidates: Sequence[Seat], picked: Pick | None, found: Anatomy, name: str) -> Seat:
    listed = "; ".join(seat.words() for seat in candidates)
    if not candidates:
        raise PartsError(f"{name}: no plane or open rim lies across the axis, so there is no platform to find")
    if picked is None:
        if len(candidates) == 1:
            return candidates[0]
        raise UsageError(f"{name}: on which plane does it seat? Say --platform=N or a point on it: {listed}.")
    if isinstance(picked, int):
        if not 1 <= picked <= len(candidates):
            raise UsageError(f"--platform={picked}: {name} has {listed}.")
        return candidates[picked - 1]
    off = [abs(float((picked - seat.point) @ found.axis)) for seat in candidates]
    if min(off) > ON:
        raise UsageError(f"--platform: the point lies {min(off):.2f} mm from the nearest plane; {name} has {listed}.")
    return candidates[int(np.argmin(off))]


def _shared(candidates: Sequence[Seat], others: Sequence[Seat], match: Anatomy) -> int | None:
    """Number of the candidate that lies on a plane of the other surface and faces it; None where none or several do."""
    numbers = [
        seat.number
        for seat in candidates
        if any(
            seat.up @ other.up > 0.0 and abs(float((seat.point - other.point) @ match.axis)) < SAME_MM
            for other in others
        )
    ]
    return numbers[0] if len(numbers) == 1 else None


def _index(
    known: Sequence[Flat], picked: Pick | None, origin: FloatArray, z: FloatArray, index_order: int, name: str
) -> tuple[FloatArray, str]:  # fmt: skip
    """+x (3,) and how it was found."""
    listed = "; ".join(flat.words() for flat in known) or "no flat along the axis"
    if isinstance(picked, int):
        if not 1 <= picked <= len(known):
            raise UsageError(f"--index={picked}: {name} has {listed}.")
        return _level(known[picked - 1].normal, z), f"index: {known[picked - 1].words()}"
    if picked is not None:
        on = [flat for flat in known if abs(float((picked - flat.point) @ flat.normal)) < ON]
        if on:
            nearest = min(on, key=lambda flat: float(np.linalg.norm(picked - flat.point)))
            return _level(nearest.normal, z), f"index: {nearest.words()}"
        away = picked - origin - float((picked - origin) @ z) * z
        if float(np.linalg.norm(away)) < ON:
            raise UsageError(
                f"--index: the point lies on the axis; pick one beside it, or a flat: {name} has {listed}."
            )
        return _level(away, z), "index: towards the picked point"
    if index_order == 0:
        away = np.cross(z, np.eye(3)[int(np.argmin(np.abs(z)))])
        return _level(known[0].normal if known else away, z), "index: none needed, the connection is not indexed"
    if known and (len(known) == 1 or known[0].area > OUTSTANDING * known[1].area):
        return _level(known[0].normal, z), f"index: {known[0].words()}"
    raise UsageError(f"{name}: where is the index? Say --index=N or a point towards it: {listed}.")


def _level(direction: FloatArray, z: FloatArray) -> FloatArray:
    across = direction - (direction @ z) * z
    return np.asarray(across / np.linalg.norm(across))


def prove(part_from_file: FloatArray, match: Surface, name: str, index_order: int, below: bool) -> str:
    """Prove that a matching surface, in the same file coordinates, shares the frame; returns how well.

    Its axis, a plane across it and, on an indexed connection, the nearest of its flats modulo the index must agree with
    axis, platform and +x. Raises PartsError that says what does not.
    """
    found = anatomy(match, name)
    file_from_part = inverse(part_from_file)
    z, origin = file_from_part[:3, 2], file_from_part[:3, 3]
    tilt = float(np.degrees(np.arctan2(np.linalg.norm(np.cross(found.axis, z)), abs(found.axis @ z))))
    away = origin - found.point
    beside = float(np.linalg.norm(away - (away @ found.axis) * found.axis))
    if tilt > SAME_DEG or beside > SAME_MM:
        raise PartsError(
            f"{name}: its axis lies {1e3 * beside:.0f} µm beside and {tilt:.2f}° off, so it does "
            "not share the frame; export both in one set of coordinates"
        )
    heights = [float((seat.point - origin) @ z) for seat in seats(match, found, below)]
    off = min(map(abs, heights), default=np.inf)
    if off > SAME_MM:
        raise PartsError(
            f"{name}: no plane of it lies on the platform (nearest {off:.3f} mm), so it does "
            "not share the frame; export both in one set of coordinates"
        )
    words = f"{name} shares the frame: axis {1e3 * beside:.1f} µm, {tilt:.3f}°; platform {1e3 * off:.1f} µm"
    known = flats(found)
    if not known or index_order == 0:
        return f"{words}; index not judged"
    azimuth = [float(np.degrees(np.arctan2(*(flat.normal @ file_from_part[:3, [1, 0]])))) for flat in known]
    step = 360.0 / index_order
    turn = min((abs((a + step / 2) % step - step / 2) for a in azimuth), default=np.inf)
    if turn > SAME_DEG:
        raise PartsError(f"{name}: its nearest flat stands {turn:.2f}° from an index mark: not the same index")
    return f"{words}; index {turn:.3f}°"
