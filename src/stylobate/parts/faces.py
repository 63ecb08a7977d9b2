"""What a raw CAD surface is made of: planes, and the cylinders and cones about its main axis."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.errors import FitError, PartsError
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, LongArray
from stylobate.parts.edges import Edges, joined
from stylobate.parts.features import Feature, fit_cone, fit_cylinder, fit_plane

FLAT = np.radians(0.05)
"""Faces that turn by less than this against each other are one plane."""
LEAST_AREA = 0.3
"""mm². A smaller plane is no feature to set a frame by (a disc of 0.6 mm)."""
LIKE_NEIGHBOURS = 4.0
"""A plane is a facet of something curved unless it is this many times larger than what adjoins it smoothly."""
WITHIN = 0.005
"""mm. A face is a cylinder or cone where this share of it lies this near to one: what CAD exports keep to."""
SHARE = 0.6
LEAST_WRAP = np.radians(100.0)
"""A cylinder or cone that shows less of its turn than this does not fix an axis well."""
SAME_AXIS_DEG, SAME_AXIS_MM = 0.1, 0.01


@dataclass(frozen=True)
class Face:
    """A plane, cylinder or cone of a surface. area: mm². rim: radius of the ball about `middle` that holds it.

    middle: (3,) area centroid. feature: fitted; of a plane the direction points outwards.
    """

    feature: Feature
    area: float
    middle: FloatArray
    rim: float

    @property
    def kind(self) -> str:
        """plane, cylinder or cone."""
        return self.feature.kind


@dataclass(frozen=True)
class Anatomy:
    """planes: largest first. round: the cylinders and cones about the main axis, largest first. axis: from them.

    point: (3,) on the axis.
    """

    planes: tuple[Face, ...]
    round: tuple[Face, ...]
    axis: FloatArray
    point: FloatArray

    def across(self) -> tuple[Face, ...]:
        """Planes at a right angle to the axis, and around it."""
        return tuple(
            face for face in self.planes if _angle(face.feature.direction, self.axis) < np.radians(SAME_AXIS_DEG)
        )

    def along(self) -> tuple[Face, ...]:
        """Planes parallel to the axis: flats."""
        limit = np.pi / 2 - np.radians(SAME_AXIS_DEG)
        return tuple(face for face in self.planes if _angle(face.feature.direction, self.axis) > limit)


def _angle(one: FloatArray, other: FloatArray) -> float:
    """Between two lines, 0 to π/2."""
    return float(np.arctan2(np.linalg.norm(np.cross(one, other)), abs(one @ other)))


def anatomy(surface: Surface, name: str, picked_axis: FloatArray | None = None) -> Anatomy:
    """Planes, cylinders and cones of `surface`. picked_axis: two points (2, 3) on the axis, where it has none to find.

    Raises PartsError where no cylinder or cone gives an axis and none was picked.
    """
    edges = Edges.of(surface)
    cluster = _coplanar(edges)
    is_plane = _planes(edges, cluster)
    planes = [_plane(surface, cluster == one) for one in np.unique(cluster[is_plane])]
    curved = _curved(edges, ~is_plane)
    rounds = [face for one in np.unique(curved[curved >= 0]) if (face := _round(surface, curved == one)) is not None]
    planes.sort(key=lambda face: -face.area)
    if picked_axis is not None:
        along = picked_axis[1] - picked_axis[0]
        return Anatomy(tuple(planes), (), along / np.linalg.norm(along), picked_axis[0])
    if not rounds:
        raise PartsError(f"{name}: no cylinder or cone that gives an axis; pick two points on it: --axis=X,Y,Z,X,Y,Z")
    main = _main_axis(rounds)
    return Anatomy(tuple(planes), main, main[0].feature.direction, main[0].feature.point)


def _coplanar(edges: Edges) -> LongArray:
    """(m,): a number for each face, the same where faces continue each other in one plane."""
    angle, _ = edges.rise
    _, one, other = edges.sides
    keep = angle < FLAT
    return joined(one[keep] // 3, other[keep] // 3, len(edges.surface.faces))


def _planes(edges: Edges, cluster: LongArray) -> BoolArray:
    """(m,): whether a face belongs to a plane of the part, not to a facet of something curved."""
    area = np.bincount(cluster, edges.surface.face_areas(), len(cluster))
    _, one, other = edges.sides
    smooth = edges.smooth & (cluster[one // 3] != cluster[other // 3])
    beside = np.zeros(len(cluster))
    for a, b in ((one, other), (other, one)):
        np.maximum.at(beside, cluster[a[smooth] // 3], area[cluster[b[smooth] // 3]])
    return np.asarray((area > LEAST_AREA)[cluster] & (area > LIKE_NEIGHBOURS * beside)[cluster])


def _curved(edges: Edges, left: BoolArray) -> LongArray:
    """(m,): a number for each smooth run of the faces that are left, −1 for the others."""
    _, one, other = edges.sides
    keep = edges.smooth & left[one // 3] & left[other // 3]
    label = joined(one[keep] // 3, other[keep] // 3, len(left))
    return np.where(left, label, -1)


def _points(surface: Surface, which: BoolArray) -> tuple[FloatArray, FloatArray]:
    """Vertices of some faces, and the area that each stands for."""
    faces = surface.faces[which]
    weight = np.bincount(faces.ravel(), np.repeat(surface.face_areas()[which] / 3.0, 3), len(surface.vertices))
    used = weight > 0.0
    return surface.vertices[used], np.asarray(weight[used], np.float64)


def _plane(surface: Surface, which: BoolArray) -> Face:
    points, weights = _points(surface, which)
    feature = fit_plane(points, weights)
    products = surface.corner_products()[which]
    return _face(
        surface,
        which,
        feature if feature.direction @ products.sum(axis=0) > 0 else replace(feature, direction=-feature.direction),
    )


def _face(surface: Surface, which: BoolArray, feature: Feature) -> Face:
    area = surface.face_areas()[which]
    corners = surface.vertices[surface.faces[which]]
    middle = np.average(corners.mean(axis=1), axis=0, weights=area)
    rim = float(np.linalg.norm(corners.reshape(-1, 3) - middle, axis=1).max())
    return Face(feature, float(area.sum()), middle, rim)


def _round(surface: Surface, which: BoolArray) -> Face | None:
    """The cylinder or cone that a smooth run of faces is, if it is one and wraps far enough."""
    points, weights = _points(surface, which)
    if len(points) < 12 or weights.sum() < LEAST_AREA:
        return None
    products = surface.corner_products()[which]
    spread = products.T @ (products / np.maximum(np.linalg.norm(products, axis=1, keepdims=True), 1e-300))
    axis = np.linalg.eigh(spread)[1][:, 0]
    best: Feature | None = None
    for start in (axis, _centred_axis(products)):
        for fit in (fit_cylinder, fit_cone):
            try:
                feature = fit(points, start, weights, robust=True)
            except (FitError, np.linalg.LinAlgError):
                continue
            held = weights[np.abs(feature.distances(points)) < WITHIN].sum() / weights.sum()
            simpler = best is None or feature.rms < 0.5 * best.rms - 1e-9
            if held > SHARE and simpler:
                best = feature
    if best is None or _wrap(best, points) < LEAST_WRAP:
        return None
    return _face(surface, which, best)


def _centred_axis(products: FloatArray) -> FloatArray:
    """The axis of a cone: the direction to which its normals all stand at one angle."""
    normals = products / np.maximum(np.linalg.norm(products, axis=1, keepdims=True), 1e-300)
    away = normals - np.average(normals, axis=0, weights=np.linalg.norm(products, axis=1))
    return np.asarray(np.linalg.svd(away * np.linalg.norm(products, axis=1)[:, None], full_matrices=False)[2][-1])


def _wrap(feature: Feature, points: FloatArray) -> float:
    """How much of the turn about the axis the points show, rad: the whole turn less the widest gap."""
    u = np.cross(feature.direction, np.eye(3)[int(np.argmin(np.abs(feature.direction)))])
    u /= np.linalg.norm(u)
    away = (points - feature.point)[np.abs(feature.distances(points)) < WITHIN]
    angle = np.sort(np.arctan2(away @ np.cross(feature.direction, u), away @ u))
    if len(angle) < 3:
        return 0.0
    return float(2.0 * np.pi - np.diff(np.concatenate([angle, angle[:1] + 2.0 * np.pi])).max())


def _main_axis(rounds: list[Face]) -> tuple[Face, ...]:
    """Of the groups of faces about one axis the one with most area, its largest face first."""
    best: list[Face] = []
    for lead in rounds:
        group = [face for face in rounds if _coaxial(lead.feature, face.feature)]
        if sum(face.area for face in group) > sum(face.area for face in best):
            best = group
    return tuple(sorted(best, key=lambda face: -face.area))


def _coaxial(one: Feature, other: Feature) -> bool:
    away = other.point - one.point
    off = float(np.linalg.norm(away - (away @ one.direction) * one.direction))
    return _angle(one.direction, other.direction) < np.radians(SAME_AXIS_DEG) and off < SAME_AXIS_MM
