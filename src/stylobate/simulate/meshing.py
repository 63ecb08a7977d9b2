"""A scanner's mesh of an implicit solid: one surface, about equal triangles that know nothing of the CAD's edges.

Surface nets (Gibson 1998) on a lattice turned at random, only in blocks that the field's slope bound cannot exclude;
then smoothing along the surface and Newton steps onto it, so that every vertex lies on the true surface.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray
from stylobate.simulate.field import LIPSCHITZ, Field, moved

LEAF = 4
"""Cells along the side of a leaf block."""
LEVELS = 3
"""Halvings from the coarsest block to a leaf."""
SPACING = 1.17
"""Lattice spacing for a median triangle edge of 1, measured on the meshes made here."""
SMOOTHINGS = 2
KEY_BASE = 1 << 20
CHUNK = 200_000


@dataclass(frozen=True)
class Mesh:
    """vertices (n, 3) mm on the true surface; normals (n, 3) of it; owner (n,) post index or −1; faces (m, 3)."""

    vertices: FloatArray
    normals: FloatArray
    owner: IntArray
    faces: IntArray


def mesh_of(field: Field, low: FloatArray, high: FloatArray, edge: float, turn: FloatArray) -> Mesh:
    """Mesh the zero set of `field` inside the box low … high (mouth frame) with edges of about `edge` mm.

    `turn` (3, 3): rotation of the lattice against the mouth frame.
    """
    spacing = SPACING * edge
    origin, blocks = _blocks(field, low, high, spacing, turn)
    lattice = _Lattice(origin, spacing, turn)
    values = _leaf_values(field, lattice, blocks)
    neighbours = _neighbours(blocks)
    crossings, cell_of = _cell_vertices(values, blocks)
    quads = _quads(values, cell_of, neighbours)
    vertices = lattice.points(crossings)
    vertices, normals, owner = _settle(field, vertices, quads, spacing)
    return Mesh(vertices, normals, owner, _triangles(vertices, quads))


@dataclass(frozen=True)
class _Lattice:
    origin: FloatArray
    spacing: float
    turn: FloatArray

    def points(self, index: FloatArray) -> FloatArray:
        """Mouth-frame points (n, 3) of lattice coordinates (n, 3)."""
        return moved(index, self.spacing * self.turn, self.origin)


def _blocks(
    field: Field, low: FloatArray, high: FloatArray, spacing: float, turn: FloatArray
) -> tuple[FloatArray, LongArray]:
    """Lattice origin and leaf blocks (k, 3) in units of LEAF cells that may hold surface within the box."""
    middle, half_box = (low + high) / 2.0, (high - low) / 2.0
    extent = np.abs(turn.T) @ half_box
    size = LEAF * spacing * 2**LEVELS
    count = np.ceil(2.0 * extent / size).astype(np.int64) + 1
    origin = middle - turn @ (count * size / 2.0)
    blocks = np.stack(np.meshgrid(*(np.arange(c) for c in count), indexing="ij"), axis=-1).reshape(-1, 3)
    for level in range(LEVELS, -1, -1):
        side = LEAF * spacing * 2**level
        centres = (blocks + 0.5) * side @ turn.T + origin
        reach = side * np.sqrt(3.0) / 2.0
        blocks = blocks[np.all(np.abs(centres - middle) < half_box + reach, axis=1)]
        centres = (blocks + 0.5) * side @ turn.T + origin
        near = np.abs(field.values(centres)) <= LIPSCHITZ * reach
        blocks = blocks[near]
        if level:
            children = np.stack(np.meshgrid([0, 1], [0, 1], [0, 1], indexing="ij"), axis=-1).reshape(-1, 3)
            blocks = (2 * blocks[:, None, :] + children).reshape(-1, 3)
    key = _key(blocks)
    return origin, blocks[np.argsort(key)]


def _key(blocks: LongArray) -> LongArray:
    return np.asarray((blocks[:, 0] * KEY_BASE + blocks[:, 1]) * KEY_BASE + blocks[:, 2])


def _leaf_values(field: Field, lattice: _Lattice, blocks: LongArray) -> FloatArray:
    """Field at the (LEAF+1)³ corners of every block, (k, LEAF+1, LEAF+1, LEAF+1)."""
    side = LEAF + 1
    corner = np.stack(np.meshgrid(*(np.arange(side),) * 3, indexing="ij"), axis=-1).reshape(-1, 3)
    values = np.empty((len(blocks), side**3))
    step = max(1, CHUNK // side**3)
    for start in range(0, len(blocks), step):
        index = (blocks[start : start + step, None, :] * LEAF + corner).reshape(-1, 3)
        values[start : start + step] = field.values(lattice.points(index.astype(np.float64))).reshape(-1, side**3)
    return values.reshape(-1, side, side, side)


def _neighbours(blocks: LongArray) -> IntArray:
    """Index of the block at offset (−1 or 0 along each axis), (k, 2, 2, 2), −1 where there is none."""
    key = _key(blocks)
    result = np.full((len(blocks), 2, 2, 2), -1, np.int32)
    for offset in np.ndindex(2, 2, 2):
        wanted = _key(blocks - np.array(offset))
        place = np.minimum(np.searchsorted(key, wanted), len(key) - 1)
        found = key[place] == wanted
        result[(slice(None), *offset)] = np.where(found, place, -1)
    return result


@compiled
def _cell_vertices(values: FloatArray, blocks: LongArray) -> tuple[FloatArray, IntArray]:
    """One vertex in each cell that the surface crosses: mean of the crossings of its edges, lattice coordinates."""
    count = blocks.shape[0]
    cell_of = np.full((count, LEAF, LEAF, LEAF), -1, np.int32)
    total = 0
    for b in range(count):
        for i in range(LEAF):
            for j in range(LEAF):
                for k in range(LEAF):
                    inside = 0
                    for c in range(8):
                        if values[b, i + (c & 1), j + ((c >> 1) & 1), k + (c >> 2)] < 0.0:
                            inside += 1
                    if 0 < inside < 8:
                        cell_of[b, i, j, k] = total
                        total += 1
    points = np.empty((total, 3))
    for b in range(count):
        for i in range(LEAF):
            for j in range(LEAF):
                for k in range(LEAF):
                    if cell_of[b, i, j, k] < 0:
                        continue
                    sx, sy, sz, n = 0.0, 0.0, 0.0, 0
                    for c in range(8):
                        x, y, z = c & 1, (c >> 1) & 1, c >> 2
                        v = values[b, i + x, j + y, k + z]
                        for axis in range(3):
                            if (c >> axis) & 1:
                                continue
                            u = values[b, i + x + (axis == 0), j + y + (axis == 1), k + z + (axis == 2)]
                            if (v < 0.0) == (u < 0.0):
                                continue
                            share = v / (v - u)
                            sx += x + (share if axis == 0 else 0.0)
                            sy += y + (share if axis == 1 else 0.0)
                            sz += z + (share if axis == 2 else 0.0)
                            n += 1
                    at = cell_of[b, i, j, k]
                    points[at, 0] = blocks[b, 0] * LEAF + i + sx / n
                    points[at, 1] = blocks[b, 1] * LEAF + j + sy / n
                    points[at, 2] = blocks[b, 2] * LEAF + k + sz / n
    return points, cell_of


@compiled
def _cell(cell_of: IntArray, neighbours: IntArray, b: int, i: int, j: int, k: int) -> int:
    """Vertex of cell (i, j, k) of block b, each at least −1; −1 where none."""
    block = neighbours[b, 1 if i < 0 else 0, 1 if j < 0 else 0, 1 if k < 0 else 0]
    return cell_of[block, i % LEAF, j % LEAF, k % LEAF] if block >= 0 else -1


@compiled
def _quads(values: FloatArray, cell_of: IntArray, neighbours: IntArray) -> IntArray:
    """Four cell vertices about each lattice edge that the surface crosses, counter-clockwise from outside."""
    count = values.shape[0]
    quads = np.empty((3 * (cell_of >= 0).sum() + 1, 4), np.int32)
    total = 0
    for b in range(count):
        for i in range(LEAF):
            for j in range(LEAF):
                for k in range(LEAF):
                    inside = values[b, i, j, k] < 0.0
                    for axis in range(3):
                        end = values[b, i + (axis == 0), j + (axis == 1), k + (axis == 2)]
                        if inside == (end < 0.0):
                            continue
                        ux, uy, uz = 1 if axis == 2 else 0, 1 if axis == 0 else 0, 1 if axis == 1 else 0
                        vx, vy, vz = 1 if axis == 1 else 0, 1 if axis == 2 else 0, 1 if axis == 0 else 0
                        q0 = _cell(cell_of, neighbours, b, i - ux - vx, j - uy - vy, k - uz - vz)
                        q1 = _cell(cell_of, neighbours, b, i - vx, j - vy, k - vz)
                        q2 = _cell(cell_of, neighbours, b, i, j, k)
                        q3 = _cell(cell_of, neighbours, b, i - ux, j - uy, k - uz)
                        if q0 < 0 or q1 < 0 or q2 < 0 or q3 < 0:
                            continue
                        quads[total, 0] = q0
                        quads[total, 1] = q1 if inside else q3
                        quads[total, 2] = q2
                        quads[total, 3] = q3 if inside else q1
                        total += 1
    return quads[:total].copy()


@compiled
def _smoothed(vertices: FloatArray, normals: FloatArray, quads: IntArray) -> FloatArray:
    """Each vertex moved half-way to the mean of its neighbours, along the surface only."""
    total, count = np.zeros(vertices.shape), np.zeros(vertices.shape[0])
    for q in range(quads.shape[0]):
        for c in range(4):
            a, b = quads[q, c], quads[q, (c + 1) % 4]
            count[a] += 1.0
            count[b] += 1.0
            for d in range(3):
                total[a, d] += vertices[b, d]
                total[b, d] += vertices[a, d]
    result = vertices.copy()
    for i in range(vertices.shape[0]):
        if count[i] == 0.0:
            continue
        across = 0.0
        for d in range(3):
            across += (total[i, d] / count[i] - vertices[i, d]) * normals[i, d]
        for d in range(3):
            result[i, d] += 0.5 * (total[i, d] / count[i] - vertices[i, d] - across * normals[i, d])
    return result


def _settle(
    field: Field, vertices: FloatArray, quads: IntArray, spacing: float
) -> tuple[FloatArray, FloatArray, IntArray]:
    """Vertices spread evenly and brought onto the zero set; with unit normals and owners."""
    for _ in range(SMOOTHINGS):
        vertices, normals, _ = _onto(field, vertices, spacing, 1)
        vertices = _smoothed(vertices, normals, quads)
    return _onto(field, vertices, spacing, 4)


def _onto(field: Field, vertices: FloatArray, spacing: float, steps: int) -> tuple[FloatArray, FloatArray, IntArray]:
    vertices = vertices.copy()
    normals, owner = np.empty_like(vertices), np.empty(len(vertices), np.int32)
    for start in range(0, len(vertices), CHUNK):
        part = vertices[start : start + CHUNK]
        n, o = np.empty_like(part), np.full(len(part), -1, np.int32)
        left: BoolArray = np.ones(len(part), np.bool_)
        for step in range(steps):
            value, gradient, own = field.gradients(part[left])
            square = np.maximum(np.einsum("ij,ij->i", gradient, gradient), 0.04)
            move = np.clip(value / square, -spacing, spacing)
            n[left] = gradient / np.sqrt(square)[:, None]
            o[left] = own
            part[left] -= move[:, None] * gradient
            if step + 1 < steps:
                left[left] = np.abs(move) > 1e-7
                if not left.any():
                    break
        normals[start : start + CHUNK], owner[start : start + CHUNK] = n, o
    return vertices, normals, owner


@compiled
def _triangles(vertices: FloatArray, quads: IntArray) -> IntArray:
    """Each quad cut along its shorter diagonal."""
    faces = np.empty((2 * quads.shape[0], 3), np.int32)
    for q in range(quads.shape[0]):
        a, b, c, d = quads[q]
        first, second = 0.0, 0.0
        for x in range(3):
            first += (vertices[a, x] - vertices[c, x]) ** 2
            second += (vertices[b, x] - vertices[d, x]) ** 2
        if first <= second:
            faces[2 * q] = np.array([a, b, c], np.int32)
            faces[2 * q + 1] = np.array([a, c, d], np.int32)
        else:
            faces[2 * q] = np.array([a, b, d], np.int32)
            faces[2 * q + 1] = np.array([b, c, d], np.int32)
    return faces
