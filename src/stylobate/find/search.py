"""From votes to candidates: axes averaged and told apart, scan bodies placed on them, the best of each place kept."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray, LongArray
from stylobate.find.placing import LEAST_AREA_SHARE, READINGS, on_surface, places_on
from stylobate.find.template import PROFILE_BAND, Template, template_of
from stylobate.find.thin import Thinned, thin
from stylobate.find.tissue import Post, on_its_head
from stylobate.find.vote import Axes, seeds_of, vote
from stylobate.fit.descend import around
from stylobate.parts.model import ScanBody

LEAST_AGREEMENT = 0.2
AXES_KEPT = 120  # places tried for each scan body
SHARED = 0.4  # of a place's surface may lie on a better place's
APART, APART_RAD = 0.8, np.radians(15.0)  # mm at mid height, between axes that are tried separately
ALIKE, ALIKE_RAD = 0.3, 0.15  # mm and rad between two poses that are one
ALIKE_TRACE = 1.0 + 2.0 * np.cos(ALIKE_RAD) - 1e-9  # of the turn from one to the other, least
LOOK, WORTH = 10.0, 0.5  # mm about a place, for the tissue; of the best reading's area, of one worth trying
NEARLY = 0.7  # of the best score about it: axes that are averaged with it


@dataclass(frozen=True)
class Reading:
    """One scan body at one pose: scan_from_connection (4, 4), and the net area that speaks for it, mm²."""

    body: int
    scan_from_connection: FloatArray
    area: float


@dataclass(frozen=True)
class Candidate:
    """A place where a scan body may be, with what could stand there, best first."""

    readings: tuple[Reading, ...]


def _distinct(axes: Axes, template: Template, most: int) -> tuple[FloatArray, FloatArray]:
    """The best axes that differ by more than APART at mid height or APART_RAD, each the mean of those about it that
    score nearly as well: directions and feet.
    """
    order = np.argsort(-axes.score, kind="stable")
    rise = 0.5 * (template.height_low + template.height_high)
    axis = axes.axis[order]
    direction, middle = _means(axes.score[order], axis, axes.foot[order] + axis * rise, most)
    return direction, middle - direction * rise


@compiled
def _means(score: FloatArray, axis: FloatArray, middle: FloatArray, most: int) -> tuple[FloatArray, FloatArray]:
    """Directions and middles (k, 3), k ≤ most, of the axes (n, 3) that differ, best first, as means of those about."""
    free = np.ones(len(score), np.bool_)
    directions, middles = np.zeros((most, 3)), np.zeros((most, 3))
    count = 0
    for k in range(len(score)):
        if not free[k] or count == most:
            continue
        total = 0.0
        for j in range(len(score)):
            away, along = 0.0, 0.0
            for d in range(3):
                away += (middle[j, d] - middle[k, d]) ** 2
                along += axis[j, d] * axis[k, d]
            if away >= APART**2 or along <= np.cos(APART_RAD):
                continue
            free[j] = False
            if score[j] > NEARLY * score[k]:
                weight = score[j] ** 2
                total += weight
                for d in range(3):
                    directions[count, d] += weight * axis[j, d]
                    middles[count, d] += weight * middle[j, d]
        directions[count] /= np.sqrt((directions[count] ** 2).sum())
        middles[count] /= total
        count += 1
    return directions[:count].copy(), middles[:count].copy()


def readings_of(body: int, template: Template, axis: FloatArray, foot: FloatArray, thinned: Thinned) -> list[Reading]:
    """Poses of one scan body on the given axes (n, 3) and post origins (n, 3)."""
    if not len(axis):
        return []
    near = thinned.buckets
    poses, areas = places_on(
        axis, foot, template.radius, template.height_low, template.height_high, near.points, thinned.normals,
        thinned.area, near.first, near.low, near.shape, near.side, template.profile,
        template.height_low - PROFILE_BAND, template.grid, template.grid_low, template.samples, template.area,
    )  # fmt: skip
    enough = areas > LEAST_AREA_SHARE * template.area
    scan_from_post = np.zeros((int(enough.sum()), 4, 4))
    scan_from_post[:, :3] = poses[enough]
    scan_from_post[:, 3, 3] = 1.0
    stands = rigid.orthonormal(scan_from_post @ rigid.inverse(template.connection_from_post))
    return [Reading(body, pose, float(area)) for pose, area in zip(stands, areas[enough], strict=True)]


def _middle(reading: Reading, template: Template) -> FloatArray:
    post = reading.scan_from_connection @ template.connection_from_post
    return np.asarray(post[:3, 3] + post[:3, 2] * (0.5 * (template.height_low + template.height_high)))


def _both_ways(candidate: Candidate, templates: Sequence[Template], thinned: Thinned) -> Candidate:
    """The same place with every scan body tried about its axis both ways up, at most READINGS more of each."""
    first = candidate.readings[0]
    post = first.scan_from_connection @ templates[first.body].connection_from_post
    middle = _middle(first, templates[first.body])
    axes = np.stack([post[:3, 2], -post[:3, 2]])
    tried: list[Reading] = []
    for body, template in enumerate(templates):
        feet = middle - axes * (0.5 * (template.height_low + template.height_high))
        tried += readings_of(body, template, axes, feet, thinned)
    return next(_grouped(_upright([*candidate.readings, *tried], templates, middle, thinned), templates, thinned))


def _upright(
    readings: Sequence[Reading], templates: Sequence[Template], middle: FloatArray, thinned: Thinned
) -> Sequence[Reading]:
    """Without those that stand on their head, where one that does not is worth trying."""
    near = around(thinned.buckets.points, thinned.normals * thinned.area[:, None], middle, LOOK)
    upright = []
    for reading in readings:
        shape = templates[reading.body]
        post = Post(shape.height_low, shape.height_high, shape.radius)
        if not on_its_head(post, near, reading.scan_from_connection @ shape.connection_from_post):
            upright.append(reading)
    best = max(reading.area for reading in readings)
    return upright if any(reading.area > WORTH * best for reading in upright) else readings


def _grouped(readings: Sequence[Reading], templates: Sequence[Template], thinned: Thinned) -> Iterator[Candidate]:
    """Readings at one place together, READINGS of each scan body; places on surface of their own, best first."""
    places: list[list[Reading]] = []
    centres, radii = np.empty((len(readings), 3)), np.empty(len(readings))
    for reading in sorted(readings, key=lambda r: -r.area):
        template = templates[reading.body]
        middle = _middle(reading, template)
        away = np.sum((centres[: len(places)] - middle) ** 2, axis=1)
        same = np.nonzero(away < (0.8 * (radii[: len(places)] + template.radius)) ** 2)[0]
        if not len(same):
            centres[len(places)], radii[len(places)] = middle, template.radius
            places.append([reading])
            continue
        members = places[same[0]]
        mine = [m for m in members if m.body == reading.body]
        if len(mine) < READINGS and reading.area > 0.5 * members[0].area and not _alike(reading, mine):
            members.append(reading)
    taken = np.zeros(len(thinned.area), np.bool_)
    for members in places:
        own = _surface_of(members[0], templates[members[0].body], thinned)
        if thinned.area[own[taken[own]]].sum() < SHARED * thinned.area[own].sum():
            yield Candidate(tuple(members))
            taken[own] = True


def _surface_of(reading: Reading, template: Template, thinned: Thinned) -> LongArray:
    post = reading.scan_from_connection @ template.connection_from_post
    rotation, shift = np.ascontiguousarray(post[:3, :3]), np.ascontiguousarray(post[:3, 3])
    return np.asarray(on_surface(rotation, shift, thinned.buckets.points, template.grid, template.grid_low))


def _alike(reading: Reading, others: Sequence[Reading]) -> bool:
    for other in others:
        turned = np.sum(other.scan_from_connection[:3, :3] * reading.scan_from_connection[:3, :3])
        if turned < ALIKE_TRACE:
            continue
        motion = rigid.log(rigid.inverse(other.scan_from_connection) @ reading.scan_from_connection)
        if np.linalg.norm(motion[:3]) < ALIKE and np.linalg.norm(motion[3:]) < ALIKE_RAD:
            return True
    return False


def find(
    vertices: FloatArray,
    normals: FloatArray,
    bodies: Sequence[ScanBody],
    progress: Callable[[float], None] | None = None,
    threads: int = 2,
) -> list[Candidate]:
    """All places where one of `bodies` may stand in the scan, best first.

    vertices (n, 3) mm; normals (n, 3) as thin.vertex_normals gives them. threads: that search side by side.
    """
    thinned = thin(vertices, normals)
    if not len(thinned.area):
        return []
    seeds = seeds_of(thinned)
    with ThreadPoolExecutor(threads) as pool:
        templates = list(pool.map(template_of, bodies))

        def search(body: int) -> list[Reading]:
            template = templates[body]
            axes = vote(seeds, thinned, template, LEAST_AGREEMENT)
            return readings_of(body, template, *_distinct(axes, template, AXES_KEPT), thinned)

        readings = []
        for done, some in enumerate(pool.map(search, range(len(bodies)))):
            readings += some
            if progress:
                progress((done + 1) / len(bodies))
        places = list(_grouped(readings, templates, thinned))
        return list(pool.map(lambda one: _both_ways(one, templates, thinned), places))
