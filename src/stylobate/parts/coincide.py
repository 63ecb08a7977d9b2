"""Whether one scan region, moved as a rigid body, lies on another.

Motions are tried in three ways: the ones that mean the same place, any turn about the axis with the tops at one
height, and any alignment of the principal axes. Each guess is refined by least squares on the exact distance, then
both surfaces are measured against each other over what they share.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.edges import Edges
from stylobate.parts.region import clip_above

TOLERANCE = 0.010
"""mm. Surfaces closer than this everywhere are the same to a scan: scanners have 5 to 13 µm of noise (rms)."""
FLOOR_MARGIN = 0.05
"""mm above the lower end where comparing starts, so that a bottom face does not count: nobody sees it."""
SHARED = 2.0 / 3.0
"""Least share of the taller region's height that both must have: gingiva may hide up to a third."""
SLAB = 1.0
"""mm below the top: bodies are compared over this depth first, which settles nearly every pair."""
SPINS = 72
COARSE_SAMPLES, FINE_SAMPLES = 120, 1500
COARSE_REACH = 0.3
MAX_REFINED = 12

# Figures that no rigid turn changes must agree to this before distances are looked at: facets of either surface take
# up to 2 × 10 µm from radii; the area differs by less than a percent.
AREA_WITHIN, LENGTH_WITHIN, INERTIA_WITHIN = 0.02, 0.04, 0.04


@dataclass(frozen=True)
class Outline:
    """What a scan can show of a region: its part above the platform. floor, top: its lowest and highest z, mm."""

    visible: Surface
    floor: float
    top: float

    @staticmethod
    def of(region: Surface) -> Outline | None:
        """The outline of `region`; None where nothing of it lies above the platform."""
        visible = region if float(region.vertices[:, 2].min()) >= 0.0 else clip_above(region, 0.0)
        if not len(visible.faces) or float(visible.face_areas().sum()) < 1e-6:
            return None
        z = visible.vertices[:, 2]
        return Outline(visible, float(z.min()), float(z.max()))

    @cached_property
    def tree(self) -> SurfaceTree:
        """The visible surface, ready for distances."""
        return SurfaceTree.of(self.visible)

    @cached_property
    def rise(self) -> float:
        """How far facets stand off the curve they stand for, mm, at most as much as the tolerance."""
        return min(Edges.of(self.visible).facet_rise(), TOLERANCE)

    @cached_property
    def upper(self) -> Surface:
        """All of it but the lowest margin."""
        return self.above(self.floor + FLOOR_MARGIN)

    @cached_property
    def slab(self) -> Figures:
        """Figures of its topmost millimetre."""
        return self.figures(self.above(self.top - SLAB))

    @cached_property
    def whole(self) -> Whole:
        """Figures of all of it but the lowest margin, which no motion changes."""
        return Whole.of(self.upper)

    @cached_property
    def _clipped(self) -> dict[float, Surface]:
        return {}

    def above(self, z: float) -> Surface:
        """The part above `z`; asked for again and again with the few heights at which other bodies end."""
        key = round(z, 9)
        if key not in self._clipped:
            self._clipped[key] = clip_above(self.visible, key)
        return self._clipped[key]

    @cached_property
    def _figures(self) -> dict[int, Figures]:
        return {}

    def figures(self, part: Surface) -> Figures:
        """Figures of one of its parts."""
        if id(part) not in self._figures:
            self._figures[id(part)] = Figures.of(part, self.top)
        return self._figures[id(part)]


@dataclass(frozen=True)
class Figures:
    """Area mm²; greatest and rms distance from the axis and mean depth below the top, mm."""

    area: float
    lengths: FloatArray

    @staticmethod
    def of(surface: Surface, top: float) -> Figures:
        """Figures of `surface`; mean squares by the midpoint rule, exact for quadratics."""
        corners, area = surface.vertices[surface.faces], surface.face_areas()
        middles = (corners + np.roll(corners, -1, axis=1)) / 2.0
        square = (middles[:, :, :2] ** 2).sum(axis=2).mean(axis=1)
        total = float(area.sum())
        depth = top - corners[:, :, 2].mean(axis=1)
        greatest = float(np.hypot(surface.vertices[:, 0], surface.vertices[:, 1]).max())
        lengths = np.array([greatest, np.sqrt(area @ square / total), area @ depth / total])
        return Figures(total, lengths)

    def agrees(self, other: Figures) -> bool:
        """Whether the two can be of surfaces that coincide."""
        if abs(self.area - other.area) > AREA_WITHIN * max(self.area, other.area):
            return False
        return bool(np.abs(self.lengths - other.lengths).max() < LENGTH_WITHIN)


@dataclass(frozen=True)
class Whole:
    """Area mm², centroid mm, mean squares along the principal axes mm², and the axes as columns, the odd one last."""

    area: float
    middle: FloatArray
    size: FloatArray
    axes: FloatArray

    @staticmethod
    def of(surface: Surface) -> Whole:
        """Figures of `surface`, by the midpoint rule."""
        corners, area = surface.vertices[surface.faces], surface.face_areas()
        total = float(area.sum())
        if total < 1e-9:
            return Whole(0.0, np.zeros(3), np.zeros(3), np.eye(3))
        middles, weight = (corners + np.roll(corners, -1, axis=1)) / 2.0, area / total / 3.0
        centre = np.einsum("m,mkd->d", weight, middles)
        arm = middles - centre
        size, axes = np.linalg.eigh(np.einsum("m,mki,mkj->ij", weight, arm, arm))
        order = [0, 1, 2] if size[2] - size[1] > size[1] - size[0] else [1, 2, 0]
        axes = axes[:, order]
        axes[:, 0] *= np.sign(np.linalg.det(axes))
        return Whole(total, centre, size[order], axes)

    def agrees(self, other: Whole) -> bool:
        """Whether the two can be of surfaces that coincide."""
        if min(self.area, other.area) < 1e-9 or abs(self.area - other.area) > AREA_WITHIN * self.area:
            return False
        return bool(np.abs(self.size - other.size).max() < INERTIA_WITHIN * self.size.max())


def same_place(motion: FloatArray, index_order: int) -> bool:
    """Whether a motion of the connection frame is one of its equal index positions, to 20 µm, 0.2° and 0.5°."""
    lean = np.arccos(np.clip(motion[2, 2], -1.0, 1.0))
    if np.linalg.norm(motion[:3, 3]) > 0.02 or lean > np.radians(0.2):
        return False
    if index_order == 0:
        return True
    step = 2.0 * np.pi / index_order
    turn = np.arctan2(motion[1, 0], motion[0, 0])
    return bool(abs(turn - step * np.round(turn / step)) < np.radians(0.5))


def coinciding(one: Outline, other: Outline, equal: Iterable[FloatArray]) -> FloatArray | None:
    """A 4×4 motion other_from_one that lays region `one` on region `other`, or None where there is none.

    equal: motions to try first, those that mean the same place of the connection.
    """
    found = _along_the_axis(one, other, equal)
    return found if found is not None else _by_principal_axes(one, other)


def _along_the_axis(one: Outline, other: Outline, equal: Iterable[FloatArray]) -> FloatArray | None:
    lift = other.top - one.top
    floor = max(one.floor + lift, other.floor) + FLOOR_MARGIN
    taller = max(one.top - one.floor, other.top - other.floor)
    if other.top - floor < SHARED * taller - FLOOR_MARGIN:
        return None
    if other.top - floor > SLAB and not one.slab.agrees(other.slab):
        return None
    part_one, part_other = one.above(floor - lift), other.above(floor)
    if not len(part_one.faces) or not len(part_other.faces):
        return None
    if not one.figures(part_one).agrees(other.figures(part_other)):
        return None
    match = _Match(one, other, part_one, part_other)
    shift = rigid.pose(np.eye(3), np.array([0.0, 0.0, lift]))
    for motion in equal:
        for guess in [motion] if abs(lift) < TOLERANCE / 10 else [motion, shift @ motion]:
            if match.holds(guess):
                return guess
    return match.best_of(shift @ rigid.turn_z(2.0 * np.pi * k / SPINS) for k in range(SPINS))


def _by_principal_axes(one: Outline, other: Outline) -> FloatArray | None:
    """For bodies that lean or stand beside their axis: the whole of both regions must agree."""
    if not one.whole.agrees(other.whole):
        return None
    flips = (np.eye(3), np.diag([1.0, -1.0, -1.0]))

    def guesses() -> Iterator[FloatArray]:
        for flip in flips:
            for k in range(SPINS):
                turn = other.whole.axes @ rigid.turn_z(2.0 * np.pi * k / SPINS)[:3, :3] @ flip @ one.whole.axes.T
                yield rigid.pose(turn, other.whole.middle - turn @ one.whole.middle)

    return _Match(one, other, one.upper, other.upper).best_of(guesses())


class _Match:
    """Two surfaces to be laid on each other: what they share of each, and distances to the whole of the other."""

    def __init__(self, one: Outline, other: Outline, part_one: Surface, part_other: Surface) -> None:
        self._one, self._other = one, other
        self._part_one, self._part_other = part_one, part_other
        self._coarse = scattered(part_one, COARSE_SAMPLES)
        self._coarse_other = scattered(part_other, COARSE_SAMPLES)

    def holds(self, motion: FloatArray) -> bool:
        """Whether each lies on the other, within the tolerance, everywhere."""
        within = TOLERANCE + self._one.rise + self._other.rise
        back = rigid.inverse(motion)
        if not _all_within(self._coarse, motion, self._other.tree, within):
            return False
        if not _all_within(self._coarse_other, back, self._one.tree, within):
            return False
        fine = np.concatenate([scattered(self._part_one, FINE_SAMPLES), self._part_one.vertices])
        if not _all_within(fine, motion, self._other.tree, within):
            return False
        fine = np.concatenate([scattered(self._part_other, FINE_SAMPLES), self._part_other.vertices])
        return _all_within(fine, back, self._one.tree, within)

    def best_of(self, guesses: Iterable[FloatArray]) -> FloatArray | None:
        """The first of the best guesses that holds once it is refined, or None."""
        ranked = sorted(((self._cost(guess), k, guess) for k, guess in enumerate(guesses)), key=lambda item: item[:2])
        for _, _, guess in ranked[:MAX_REFINED]:
            motion = self._refined(guess)
            if self.holds(motion):
                return motion
        return None

    def _cost(self, motion: FloatArray) -> float:
        found = self._other.tree.closest(_moved(self._coarse, motion), COARSE_REACH)
        return float((np.nan_to_num(found.distance, nan=COARSE_REACH) ** 2).mean())

    def _refined(self, motion: FloatArray) -> FloatArray:
        """Gauss–Newton on the distance; motions that the surface leaves loose stay where they are."""
        for _ in range(8):
            points = _moved(self._coarse, motion)
            found = self._other.tree.closest(points, COARSE_REACH)
            seen = np.isfinite(found.distance)
            if np.count_nonzero(seen) < 20:
                return motion
            centre = points[seen].mean(axis=0)
            gradient, distance = found.gradient[seen], found.distance[seen]
            rows = np.hstack([gradient, np.cross(points[seen] - centre, gradient)])
            normal = rows.T @ rows + 1e-4 * len(rows) * np.eye(6)
            step = rigid.exp(np.linalg.solve(normal, -rows.T @ distance))
            about = rigid.pose(np.eye(3), centre)
            motion = rigid.orthonormal(about @ step @ rigid.inverse(about) @ motion)
        return motion


def _moved(points: FloatArray, motion: FloatArray) -> FloatArray:
    return np.asarray(points @ motion[:3, :3].T + motion[:3, 3])


def _all_within(points: FloatArray, motion: FloatArray, tree: SurfaceTree, within: float) -> bool:
    found = tree.closest(_moved(points, motion), within)
    return bool(np.isfinite(found.distance).all())


def scattered(surface: Surface, count: int) -> FloatArray:
    """(count, 3) points spread evenly over the area, the same each time.

    Faces by equal steps of area; inside a face by Roberts' R2 sequence (2018), folded into the triangle.
    """
    reached = np.cumsum(surface.face_areas())
    face = np.searchsorted(reached, (np.arange(count) + 0.5) / count * reached[-1])
    plastic = 1.32471795724474602596
    u = np.modf(0.5 + np.outer(np.arange(count), [1.0 / plastic, 1.0 / plastic**2]))[0]
    u = np.where(u.sum(axis=1, keepdims=True) > 1.0, 1.0 - u, u)
    a, b, c = (surface.vertices[surface.faces[np.minimum(face, len(reached) - 1), k]] for k in range(3))
    return np.asarray(a + u[:, :1] * (b - a) + u[:, 1:] * (c - a))


def lies_on_itself(outline: Outline, motions: Iterable[FloatArray]) -> list[bool]:
    """For each of `motions` whether the region, moved by it, lies on itself."""
    match = _Match(outline, outline, outline.upper, outline.upper)
    return [match.holds(motion) for motion in motions]
