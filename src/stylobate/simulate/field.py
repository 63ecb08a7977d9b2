"""The scene before scanning: tissue and posts as one implicit solid, with the fillet where tissue meets a post."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.jit import compiled
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray
from stylobate.parts.model import ScanBody
from stylobate.simulate.tissue import tissue_gradients, tissue_values

LIPSCHITZ = 1.45
"""Greatest slope of the field: √2 where two solids meet at a narrow angle under a fillet."""


@dataclass(frozen=True)
class Post:
    """A made body standing in the scene.

    shape: distance structure of the CAD surface, connection frame. radius, top: of a cylinder on z = 0 about the post.
    stretch: (2,) factors of the made part across and along the axis.
    cuts, blobs: (k, 4) spheres (centre, radius) taken away from or added to it, connection frame, mm.
    """

    shape: SurfaceTree
    mouth_from_connection: FloatArray
    radius: float
    top: float
    stretch: FloatArray
    cuts: FloatArray
    blobs: FloatArray


@dataclass(frozen=True)
class Field:
    """rows: tissue primitives. fillet: radius between tissue and posts, mm."""

    rows: FloatArray
    posts: tuple[Post, ...]
    fillet: float

    def values(self, points: FloatArray) -> FloatArray:
        """Value (n,) at `points` (n, 3), mouth frame: negative inside, slope at most LIPSCHITZ."""
        value = tissue_values(points, self.rows)
        for post in self.posts:
            near = _within(points, post, value, self.fillet)
            distance, _ = post_distance(post, points[near])
            value[near] = _joined(value[near], distance, self.fillet)
        return value

    def gradients(self, points: FloatArray) -> tuple[FloatArray, FloatArray, IntArray]:
        """Value (n,), gradient (n, 3) and owner (n,) of points: post index where only that post shapes it, else −1."""
        value, gradient = tissue_gradients(points, self.rows)
        owner = np.full(len(points), -1, np.int32)
        for index, post in enumerate(self.posts):
            near = _within(points, post, value, self.fillet)
            distance, slope = post_distance(post, points[near])
            _join_into(
                value, gradient, owner, np.flatnonzero(near).astype(np.int32), distance, slope, self.fillet, index
            )
        return value, gradient, owner


def _within(points: FloatArray, post: Post, value: FloatArray, fillet: float) -> BoolArray:
    to_local = inverse(post.mouth_from_connection)
    return _near_cylinder(points, to_local[:3, :3], to_local[:3, 3], post.radius, post.top, value, fillet)


@compiled
def _near_cylinder(
    points: FloatArray, turn: FloatArray, shift: FloatArray, radius: float, top: float, value: FloatArray, fillet: float
) -> BoolArray:
    """Whether the distance to the cylinder about a post is below the value so far (or the fillet, if larger)."""
    result = np.empty(points.shape[0], np.bool_)
    for i in range(points.shape[0]):
        x, y, z = points[i, 0], points[i, 1], points[i, 2]
        u = turn[0, 0] * x + turn[0, 1] * y + turn[0, 2] * z + shift[0]
        v = turn[1, 0] * x + turn[1, 1] * y + turn[1, 2] * z + shift[1]
        w = turn[2, 0] * x + turn[2, 1] * y + turn[2, 2] * z + shift[2]
        out = max(np.sqrt(u * u + v * v) - radius, 0.0)
        over = max(max(w - top, -w), 0.0)
        limit = max(value[i], fillet)
        result[i] = out * out + over * over < limit * limit
    return result


@compiled
def moved(points: FloatArray, turn: FloatArray, shift: FloatArray) -> FloatArray:
    """turn @ point + shift for each of `points` (n, 3); one thread, no temporary."""
    result = np.empty(points.shape)
    for i in range(points.shape[0]):
        for d in range(3):
            result[i, d] = turn[d, 0] * points[i, 0] + turn[d, 1] * points[i, 1] + turn[d, 2] * points[i, 2] + shift[d]
    return result


def post_distance(post: Post, points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Signed distance (n,) and its gradient (n, 3) to the made post, at `points` of the mouth frame."""
    to_local = inverse(post.mouth_from_connection)
    local = moved(points, to_local[:3, :3], to_local[:3, 3])
    scale = np.array([post.stretch[0], post.stretch[0], post.stretch[1]])
    found = post.shape.closest(local / scale)
    distance, gradient = found.distance, found.gradient / scale
    steep = np.linalg.norm(gradient, axis=1)
    distance, gradient = distance / steep, gradient / steep[:, None]
    for sphere in post.cuts:
        away = local - sphere[:3]
        length = np.linalg.norm(away, axis=1)
        inside = sphere[3] - length > distance
        distance = np.where(inside, sphere[3] - length, distance)
        gradient = np.where(inside[:, None], -away / np.maximum(length, 1e-9)[:, None], gradient)
    for sphere in post.blobs:
        away = local - sphere[:3]
        length = np.linalg.norm(away, axis=1)
        outside = length - sphere[3] < distance
        distance = np.where(outside, length - sphere[3], distance)
        gradient = np.where(outside[:, None], away / np.maximum(length, 1e-9)[:, None], gradient)
    return distance, moved(gradient, post.mouth_from_connection[:3, :3], np.zeros(3))


@compiled
def _joined(first: FloatArray, second: FloatArray, fillet: float) -> FloatArray:
    """Union with a circular fillet: exact minimum wherever one of the two is farther than the fillet radius."""
    result = np.empty(first.shape[0])
    for i in range(first.shape[0]):
        a, b = first[i], second[i]
        if a < fillet and b < fillet:
            result[i] = fillet - np.sqrt((fillet - a) ** 2 + (fillet - b) ** 2)
        else:
            result[i] = min(a, b)
    return result


@compiled
def _join_into(
    value: FloatArray, gradient: FloatArray, owner: IntArray, where: IntArray, distance: FloatArray, slope: FloatArray,
    fillet: float, index: int,
) -> None:  # fmt: skip
    for k in range(where.shape[0]):
        i = where[k]
        a, b = value[i], distance[k]
        if a < fillet and b < fillet:
            u, v = fillet - a, fillet - b
            length = np.sqrt(u * u + v * v)
            value[i] = fillet - length
            for d in range(3):
                gradient[i, d] = (u * gradient[i, d] + v * slope[k, d]) / length
            owner[i] = -1
        elif b < a:
            value[i] = b
            owner[i] = index
            for d in range(3):
                gradient[i, d] = slope[k, d]


_SHAPES: dict[str, SurfaceTree] = {}


def shape_of(body: ScanBody) -> SurfaceTree:
    """Distance structure of the whole body, made once for each shape."""
    if body.sha256 not in _SHAPES:
        _SHAPES[body.sha256] = SurfaceTree.of(closed_below(body.surface))
    return _SHAPES[body.sha256]


def closed_below(surface: Surface) -> Surface:
    """The same surface with its open rims closed by a fan about each rim's centre, so that inside is defined."""
    faces = surface.faces.astype(np.int64)
    ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
    n = len(surface.vertices)
    lone = ends[~np.isin(ends[:, 0] * n + ends[:, 1], ends[:, 1] * n + ends[:, 0])]
    following = dict(lone.tolist())
    vertices, added = [surface.vertices], [surface.faces]
    while following:
        start, loop = next(iter(following)), []
        while start in following:
            loop.append(start)
            start = following.pop(start)
        middle = n + len(vertices) - 1
        vertices.append(surface.vertices[loop].mean(axis=0, keepdims=True))
        added.append(np.array([[b, a, middle] for a, b in zip(loop, [*loop[1:], loop[0]], strict=True)], np.int32))
    return Surface(np.concatenate(vertices), np.concatenate(added))
