"""Exact closest points on a triangle surface, with sign, gradient and the feature that was met.

Near the surface by cubes that know their triangles (cells.py); farther off by a bounding-volume tree over the
triangles (median splits), walked with the best distance so far as the bound. The sign by angle-weighted
pseudo-normals, Bærentzen & Aanæs (2005), IEEE Trans. Vis. Comput. Graph. 11:243.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from stylobate.core.cells import BAND, Cells
from stylobate.core.jit import compiled
from stylobate.core.surface import Surface
from stylobate.core.triangle import CORNER_A, EDGE_AB, EDGE_CA, FACE, on_triangle
from stylobate.core.types import BoolArray, Float32Array, FloatArray, IntArray, LongArray

LEAF_FACES = 4
CURVED = float(np.cos(np.radians(25.0)))  # cosine between normals of faces that stand for one curved surface
FLAT = 3.0 - 1e-9  # sum of the cosines between a face's normal and its three corners' from which it is flat
NEAR_FACE = float(np.cos(np.radians(12.5)))  # between a gradient and its face's normal: farther, the foot is on an edge
PIECE = 0.6  # mm: longest edge of what a box holds
MOST_PIECES = 400_000


@dataclass(frozen=True)
class Closest:
    """Closest points of a query. A point farther than the limit has face −1, distance and gradient NaN.

    distance: (n,) mm, positive outside. gradient: (n, 3) unit, of the distance by the point's position.
    face: (n,) int32. on_boundary: (n,) whether the closest point lies on an open edge of the surface.
    """

    distance: FloatArray
    gradient: FloatArray
    face: IntArray
    on_boundary: BoolArray

    def at(self, which: BoolArray | LongArray) -> Closest:
        """Those of the queries `which` (k,)."""
        return Closest(self.distance[which], self.gradient[which], self.face[which], self.on_boundary[which])


@dataclass(frozen=True)
class SurfaceTree:
    """A surface prepared for closest-point queries.

    triangles (m, 3, 3) mm; normals (m, 7, 3) unit pseudo-normals of face, edges ab, bc, ca, corners a, b, c;
    open (m, 7) whether that feature lies on an open edge; curved (m, 3, 3) unit normals at the corners of the curved
    surface that a face is a facet of, the face's own where it is flat. What a query needs besides is made when first
    asked for; lasting: and kept on disk for the next process.
    """

    triangles: FloatArray
    normals: FloatArray
    open: BoolArray
    curved: FloatArray
    lasting: bool = False

    @staticmethod
    def of(surface: Surface, lasting: bool = False) -> SurfaceTree:
        """Prepare `surface`; faces without area are left out. Raises ValueError when none is left."""
        faces = np.ascontiguousarray(surface.faces[surface.face_areas() > 1e-14])
        if not len(faces):
            raise ValueError("the surface has no face with an area")
        normals, is_open = _pseudo_normals(surface.vertices, faces)
        triangles = np.ascontiguousarray(surface.vertices[faces])
        curved = _curved(faces, normals[:, FACE].copy(), _corner_angles(triangles), len(surface.vertices))
        return SurfaceTree(triangles, normals, is_open, curved, lasting)

    @cached_property
    def box(self) -> tuple[FloatArray, FloatArray]:
        """Low and high corner (3,) of the surface."""
        corners = self.triangles.reshape(-1, 3)
        return corners.min(axis=0), corners.max(axis=0)

    @cached_property
    def cells(self) -> Cells:
        """The space near the surface cut into cubes."""
        return Cells.of(self.triangles, self.lasting)

    @cached_property
    def far(self) -> Boxes:
        """Boxes around the triangles, for points farther off."""
        return Boxes.of(self.triangles)

    def closest(self, points: FloatArray, limit: float = np.inf) -> Closest:
        """Closest surface point of each of `points` (n, 3), within `limit` mm."""
        n = len(points)
        distance, gradient = np.empty(n), np.empty((n, 3))
        face, boundary = np.empty(n, np.int32), np.empty(n, np.bool_)
        points = np.ascontiguousarray(points)
        if limit <= BAND:
            cells = self.cells
            _closest_in_cells(
                points, float(limit), self.triangles, self.normals, self.open, cells.low, cells.side, cells.nodes,
                cells.items, cells.away, distance, gradient, face, boundary,
            )  # fmt: skip
        else:
            far = self.far
            _closest_in_boxes(
                points, float(limit), self.triangles, self.normals, self.open, far.boxes, far.nodes, far.order,
                distance, gradient, face, boundary,
            )  # fmt: skip
        return Closest(distance, gradient, face, boundary)

    def closest_curved(self, points: FloatArray, limit: float = np.inf) -> Closest:
        """The same with gradients as the curved surface has them that facets stand for.

        A facet's own gradient is the same all over it, so that turning the facet seems to be seen: a cone of 160
        facets, which no scan shows, would fix its turn to some tenths of a degree.
        """
        return self.curved_at(points, self.closest(points, limit))

    def curved_at(self, points: FloatArray, closest: Closest) -> Closest:
        """The same of points (n, 3) whose closest ones are known."""
        gradient = _curved_gradient(
            points, closest.distance, closest.gradient, closest.face, self.triangles, self.normals, self.curved
        )
        return replace(closest, gradient=gradient)


@dataclass(frozen=True)
class Boxes:
    """A bounding-volume tree. boxes (k, 6) low and high corner of each node; nodes (k, 2): children, or −(first + 1)
    and the count of a leaf, whose triangles stand in `order`."""

    boxes: FloatArray
    nodes: IntArray
    order: IntArray

    @staticmethod
    def of(triangles: FloatArray) -> Boxes:
        """The tree over triangles (m, 3, 3)."""
        pieces, whole = _pieces(triangles)
        boxes, nodes, order = _build(pieces)
        return Boxes(boxes, nodes, whole[order])


def _pieces(triangles: FloatArray) -> tuple[FloatArray, IntArray]:
    """Long triangles cut by halving their longest edge, so that boxes are tight; each piece with its whole's number."""
    pieces, whole = triangles, np.arange(len(triangles), dtype=np.int32)
    while len(pieces) < MOST_PIECES:
        edges = pieces[:, [1, 2, 0]] - pieces
        length = np.einsum("ikd,ikd->ik", edges, edges)
        long = np.max(length, axis=1) > PIECE**2
        if not long.any():
            break
        first = np.argmax(length[long], axis=1)
        a, b, c = (pieces[long][np.arange(len(first)), (first + k) % 3] for k in range(3))
        middle = (a + b) / 2.0
        halves = np.concatenate([np.stack([a, middle, c], axis=1), np.stack([middle, b, c], axis=1)])
        pieces = np.concatenate([pieces[~long], halves])
        whole = np.concatenate([whole[~long], whole[long], whole[long]])
    return np.ascontiguousarray(pieces), whole


def _corner_angles(corners: FloatArray) -> FloatArray:
    """(m, 3) angles of triangles (m, 3, 3) at their corners, rad."""
    angles = np.empty(corners.shape[:2])
    for k in range(3):
        u = corners[:, (k + 1) % 3] - corners[:, k]
        v = corners[:, (k + 2) % 3] - corners[:, k]
        cosine = np.einsum("ij,ij->i", u, v) / (np.linalg.norm(u, axis=1) * np.linalg.norm(v, axis=1))
        angles[:, k] = np.arccos(np.clip(cosine, -1.0, 1.0))
    return angles


@compiled
def _curved(faces: IntArray, normal: FloatArray, angle: FloatArray, vertices: int) -> FloatArray:
    """(m, 3, 3) unit normals at the corners of each face, of the faces there that turn little from it, by angle."""
    first = np.zeros(vertices + 1, np.int64)
    for face in faces:
        for corner in face:
            first[corner + 1] += 1
    first = np.cumsum(first)
    filled, at = first.copy(), np.empty(faces.size, np.int64)
    for f in range(len(faces)):
        for k in range(3):
            at[filled[faces[f, k]]] = 3 * f + k
            filled[faces[f, k]] += 1
    result = np.zeros((len(faces), 3, 3))
    for f in range(len(faces)):
        own = normal[f]
        for k in range(3):
            mean = result[f, k]
            for j in range(first[faces[f, k]], first[faces[f, k] + 1]):
                other = normal[at[j] // 3]
                if own[0] * other[0] + own[1] * other[1] + own[2] * other[2] > CURVED:
                    for d in range(3):
                        mean[d] += angle[at[j] // 3, at[j] % 3] * other[d]
            mean /= np.sqrt((mean**2).sum())
    return result


@compiled
def _curved_gradient(
    points: FloatArray, distance: FloatArray, gradient: FloatArray, face: IntArray, triangles: FloatArray,
    normals: FloatArray, curved: FloatArray,
) -> FloatArray:  # fmt: skip
    result = gradient.copy()
    foot, u, v = np.empty(3), np.empty(3), np.empty(3)
    for i in range(len(points)):
        f = face[i]
        if f < 0:
            continue
        met, bent = 0.0, 0.0
        for d in range(3):
            met += gradient[i, d] * normals[f, FACE, d]
            bent += (curved[f, 0, d] + curved[f, 1, d] + curved[f, 2, d]) * normals[f, FACE, d]
        if met < NEAR_FACE or bent > FLAT:
            continue
        uu, uv, vv, wu, wv = 0.0, 0.0, 0.0, 0.0, 0.0
        for d in range(3):
            u[d], v[d] = triangles[f, 1, d] - triangles[f, 0, d], triangles[f, 2, d] - triangles[f, 0, d]
            foot[d] = points[i, d] - distance[i] * gradient[i, d] - triangles[f, 0, d]
            uu, uv, vv = uu + u[d] * u[d], uv + u[d] * v[d], vv + v[d] * v[d]
            wu, wv = wu + foot[d] * u[d], wv + foot[d] * v[d]
        det = uu * vv - uv * uv
        second, third = (vv * wu - uv * wv) / det, (uu * wv - uv * wu) / det
        length = 0.0
        for d in range(3):
            mean = (1.0 - second - third) * curved[f, 0, d] + second * curved[f, 1, d] + third * curved[f, 2, d]
            result[i, d] = mean
            length += mean * mean
        for d in range(3):
            result[i, d] /= np.sqrt(length)
    return result


def _pseudo_normals(vertices: FloatArray, faces: IntArray) -> tuple[FloatArray, BoolArray]:
    corners = vertices[faces]
    normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    at_vertex, angle = np.zeros_like(vertices), _corner_angles(corners)
    for k in range(3):
        np.add.at(at_vertex, faces[:, k], normal * angle[:, k, None])
    ends = np.sort(np.stack([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]], axis=1), axis=2).reshape(-1, 2)
    key = ends[:, 0].astype(np.int64) * len(vertices) + ends[:, 1]
    _, edge, count = np.unique(key, return_inverse=True, return_counts=True)
    at_edge = np.zeros((len(count), 3))
    np.add.at(at_edge, edge, np.repeat(normal, 3, axis=0))
    open_edge = (count == 1)[edge].reshape(-1, 3)
    open_vertex = np.zeros(len(vertices), np.bool_)
    open_vertex[ends[(count == 1)[edge]].ravel()] = True
    result = np.empty((len(faces), 7, 3))
    result[:, FACE] = normal
    result[:, EDGE_AB : EDGE_CA + 1] = at_edge[edge].reshape(-1, 3, 3)
    result[:, CORNER_A:] = at_vertex[faces]
    length = np.linalg.norm(result, axis=2, keepdims=True)
    result = np.where(length > 1e-12, result / np.maximum(length, 1e-12), normal[:, None, :])
    is_open = np.concatenate([np.zeros((len(faces), 1), np.bool_), open_edge, open_vertex[faces]], axis=1)
    return np.ascontiguousarray(result), np.ascontiguousarray(is_open)


@compiled
def _select(order: IntArray, key: FloatArray, low: int, high: int, middle: int) -> None:
    """Quickselect: order[middle] holds the element of that rank by key within order[low:high]."""
    left, right = low, high - 1
    while left < right:
        pivot = key[order[(left + right) // 2]]
        i, j = left, right
        while i <= j:
            while key[order[i]] < pivot:
                i += 1
            while key[order[j]] > pivot:
                j -= 1
            if i <= j:
                order[i], order[j] = order[j], order[i]
                i += 1
                j -= 1
        if middle <= j:
            right = j
        elif middle >= i:
            left = i
        else:
            return


@compiled
def _build(triangles: FloatArray) -> tuple[FloatArray, IntArray, IntArray]:
    m = triangles.shape[0]
    centres = np.empty((3, m))
    for f in range(m):
        for d in range(3):
            centres[d, f] = (triangles[f, 0, d] + triangles[f, 1, d] + triangles[f, 2, d]) / 3.0
    order = np.arange(m).astype(np.int32)
    boxes = np.empty((2 * m + 1, 6))
    nodes = np.empty((2 * m + 1, 2), np.int32)
    stack = np.empty((128, 3), np.int64)
    stack[0] = np.array([0, m, 0])
    top, used = 1, 1
    while top > 0:
        top -= 1
        low, high, node = stack[top]
        for d in range(3):
            boxes[node, d] = np.inf
            boxes[node, 3 + d] = -np.inf
        for i in range(low, high):
            for c in range(3):
                for d in range(3):
                    boxes[node, d] = min(boxes[node, d], triangles[order[i], c, d])
                    boxes[node, 3 + d] = max(boxes[node, 3 + d], triangles[order[i], c, d])
        if high - low <= LEAF_FACES:
            nodes[node, 0] = -(low + 1)
            nodes[node, 1] = high - low
            continue
        axis = 0
        for d in range(1, 3):
            if boxes[node, 3 + d] - boxes[node, d] > boxes[node, 3 + axis] - boxes[node, axis]:
                axis = d
        middle = (low + high) // 2
        _select(order, centres[axis], low, high, middle)
        nodes[node, 0] = used
        nodes[node, 1] = used + 1
        stack[top] = np.array([low, middle, used])
        stack[top + 1] = np.array([middle, high, used + 1])
        top += 2
        used += 2
    return boxes[:used].copy(), nodes[:used].copy(), order


@compiled
def _box_distance2(p: FloatArray, box: FloatArray) -> float:
    total = 0.0
    for d in range(3):
        if p[d] < box[d]:
            total += (box[d] - p[d]) ** 2
        elif p[d] > box[3 + d]:
            total += (p[d] - box[3 + d]) ** 2
    return total


@compiled
def _closest_in_boxes(
    points: FloatArray, limit: float, triangles: FloatArray, normals: FloatArray, is_open: BoolArray,
    boxes: FloatArray, nodes: IntArray, order: IntArray,
    distance: FloatArray, gradient: FloatArray, face: IntArray, boundary: BoolArray,
) -> None:  # fmt: skip
    """Fill distance, gradient, face and boundary for each point (see Closest)."""
    stack = np.empty(128, np.int64)
    bound = np.empty(128)
    for i in range(points.shape[0]):
        p = points[i]
        px, py, pz = points[i, 0], points[i, 1], points[i, 2]
        best = limit * limit
        best_face, feature = np.int64(-1), 0
        fx, fy, fz = 0.0, 0.0, 0.0
        stack[0] = 0
        bound[0] = _box_distance2(p, boxes[0])
        top = 1
        while top > 0:
            top -= 1
            if bound[top] >= best:
                continue
            node = stack[top]
            if nodes[node, 0] < 0:
                first = -nodes[node, 0] - 1
                for k in range(first, first + nodes[node, 1]):
                    kind, qx, qy, qz = on_triangle(px, py, pz, triangles, np.uint32(order[k]))
                    d2 = (px - qx) ** 2 + (py - qy) ** 2 + (pz - qz) ** 2
                    if d2 < best:
                        best, best_face, feature = d2, np.int64(order[k]), kind
                        fx, fy, fz = qx, qy, qz
                continue
            left, right = nodes[node, 0], nodes[node, 1]
            dl, dr = _box_distance2(p, boxes[left]), _box_distance2(p, boxes[right])
            if dl > dr:
                left, right, dl, dr = right, left, dr, dl
            if dr < best:
                stack[top], bound[top] = right, dr
                top += 1
            if dl < best:
                stack[top], bound[top] = left, dl
                top += 1
        away = px - fx, py - fy, pz - fz
        _answer(i, away, best, best_face, feature, normals, is_open, distance, gradient, face, boundary)


@compiled
def _answer(
    i: int, away: tuple[float, float, float], best: float, best_face: np.int64, feature: int, normals: FloatArray,
    is_open: BoolArray, distance: FloatArray, gradient: FloatArray, face: IntArray, boundary: BoolArray,
) -> None:  # fmt: skip
    """Write down what was found for point i: where it lies from its foot, squared distance, face and feature."""
    face[i] = best_face
    if best_face < 0:
        distance[i] = np.nan
        boundary[i] = False
        for d in range(3):
            gradient[i, d] = np.nan
        return
    nx, ny, nz = normals[best_face, feature, 0], normals[best_face, feature, 1], normals[best_face, feature, 2]
    length = np.sqrt(best)
    sign = 1.0 if away[0] * nx + away[1] * ny + away[2] * nz >= 0.0 else -1.0
    distance[i] = sign * length
    boundary[i] = is_open[best_face, feature]
    if feature == FACE or length < 1e-6:
        gradient[i, 0], gradient[i, 1], gradient[i, 2] = nx, ny, nz
    else:
        for d in range(3):
            gradient[i, d] = sign * away[d] / length


@compiled
def _closest_in_cells(
    points: FloatArray, limit: float, triangles: FloatArray, normals: FloatArray, is_open: BoolArray,
    low: FloatArray, side: float, nodes: IntArray, items: IntArray, away: Float32Array,
    distance: FloatArray, gradient: FloatArray, face: IntArray, boundary: BoolArray,
) -> None:  # fmt: skip
    """The same answers as `_closest_in_boxes`, for a limit within the cells' band."""
    for i in range(points.shape[0]):
        best = limit * limit
        best_face, feature = np.int64(-1), 0
        px, py, pz = points[i, 0], points[i, 1], points[i, 2]
        fx, fy, fz = 0.0, 0.0, 0.0
        x, y, z, half = px - low[0], py - low[1], pz - low[2], side
        if 0.0 <= x <= side and 0.0 <= y <= side and 0.0 <= z <= side:
            node = np.uint32(0)
            while nodes[node, 1] < 0 and nodes[node, 0] >= 0:
                half /= 2.0
                node = np.uint32(nodes[node, 0])
                if x >= half:
                    x -= half
                    node += np.uint32(1)
                if y >= half:
                    y -= half
                    node += np.uint32(2)
                if z >= half:
                    z -= half
                    node += np.uint32(4)
            half /= 2.0
            centre = np.sqrt((x - half) ** 2 + (y - half) ** 2 + (z - half) ** 2) + 1e-6
            for k in range(nodes[node, 0], nodes[node, 0] + nodes[node, 1]):
                nearer = away[np.uint32(k)] - centre
                if nearer > 0.0 and nearer * nearer >= best:
                    break
                f = np.uint32(items[np.uint32(k)])
                off = (
                    (px - triangles[f, 0, 0]) * normals[f, FACE, 0]
                    + (py - triangles[f, 0, 1]) * normals[f, FACE, 1]
                    + (pz - triangles[f, 0, 2]) * normals[f, FACE, 2]
                )
                if off * off >= best:
                    continue
                kind, qx, qy, qz = on_triangle(px, py, pz, triangles, f)
                d2 = (px - qx) ** 2 + (py - qy) ** 2 + (pz - qz) ** 2
                if d2 < best:
                    best, best_face, feature = d2, np.int64(f), kind
                    fx, fy, fz = qx, qy, qz
        _answer(
            i, (px - fx, py - fy, pz - fz), best, best_face, feature, normals, is_open, distance, gradient, face,
            boundary,
        )  # fmt: skip
