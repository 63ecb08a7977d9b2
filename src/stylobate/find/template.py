"""What the search needs of a scan body's shape, computed once from its scan region.

The post frame has the post's own axis as z: mostly the connection's axis, else the direction that the region's
normals share least. Three things are kept in it: a table over (distance from the axis, height) of the nearest surface
at any turn; a narrow grid of signed distances for the turn; and the pairs of oriented points that the surface holds.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.jit import compiled
from stylobate.core.recent import Recent
from stylobate.core.sampling import sampled
from stylobate.core.shelf import Array, kept
from stylobate.core.types import Float32Array, FloatArray, IntArray, LongArray
from stylobate.parts.model import ScanBody

SAMPLE = 0.12  # mm between the dense samples of the CAD surface
PAIR_CELL = 0.7  # mm between the oriented points of which pairs are kept
PROFILE_CELL = 0.1
LEAST_IN_PLANE = 0.3  # of a unit normal in the plane of radius and axis: with less its direction there means little
PROFILE_BAND = 0.6
GRID_CELL = 0.15
GRID_BAND = 0.45
PAIR_NEAR, PAIR_FAR = 1.5, 4.5  # mm between the two points of a pair
PAIR_STEP = 0.4
DISTANCES = 8
ANGLES = 12  # bins over 180°
KEYS = DISTANCES * ANGLES * ANGLES * ANGLES * 2


@dataclass(frozen=True)
class Template:
    """One scan body prepared for the search. Post frame; lengths mm.

    connection_from_post (4, 4). area: of the scan region, mm². radius, height_low, height_high: bounds of the region.
    profile (nr + 1, nz + 2, 3): signed distance to the nearest surface at any turn, and the direction of that surface's
    normal in the plane of radius and axis (what of it goes around is left out); NaN beyond the band, and in a border
    beyond r and on both sides of z. grid (nx, ny, nz) int32: index of the nearest sample, −1 beyond the band;
    grid_low (3,). samples (k, 6): position and normal. first (KEYS + 1,), entries (e, 6): axis direction and foot (the
    post's origin) in the frame of a pair, by the pair's key.
    """

    connection_from_post: FloatArray
    area: float
    radius: float
    height_low: float
    height_high: float
    profile: Float32Array
    grid: IntArray
    grid_low: FloatArray
    samples: FloatArray
    first: LongArray
    entries: Float32Array

    def arrays(self) -> list[Array]:
        """All of it, as `of_arrays` takes it."""
        sizes = np.array([self.area, self.radius, self.height_low, self.height_high])
        return [
            self.connection_from_post, sizes, self.profile, self.grid, self.grid_low, self.samples, self.first,
            self.entries,
        ]  # fmt: skip

    @staticmethod
    def of_arrays(connection_from_post: FloatArray, sizes: FloatArray, *rest: Array) -> Template:
        """What `arrays` gave."""
        area, radius, low, high = (float(size) for size in sizes)
        return Template(connection_from_post, area, radius, low, high, *rest)


def _post_frame(points: FloatArray, normals: FloatArray) -> FloatArray:
    """connection_from_post: the axis about which the surface is most nearly one of revolution."""
    scatter = normals.T @ normals / len(normals)
    best, best_cost = np.eye(4), np.inf
    for k, axis in enumerate([np.array([0.0, 0.0, 1.0]), *np.linalg.eigh(scatter)[1].T]):
        axis = axis if axis[2] >= 0 else -axis
        rotation = _rotation_to(axis)
        local_p, local_n = points @ rotation, normals @ rotation
        if k == 0:
            centre = np.zeros(2)
        else:
            # Least squares: the point in the plane nearest to all normal lines.
            flat = local_n[:, :2]
            weight = np.sum(flat**2, axis=1)
            moment = np.eye(2) * weight.sum() - flat.T @ flat
            along = np.einsum("ij,ij->i", flat, local_p[:, :2])
            right = (weight[:, None] * local_p[:, :2]).sum(axis=0) - (flat * along[:, None]).sum(axis=0)
            if np.linalg.cond(moment) > 1e6:
                continue
            centre = np.linalg.solve(moment, right)
        offset = local_p[:, :2] - centre
        miss = np.abs(offset[:, 0] * local_n[:, 1] - offset[:, 1] * local_n[:, 0])
        cost = float(np.mean(miss)) - (0.02 if k == 0 else 0.0)
        if cost < best_cost:
            best_cost = cost
            best = rigid.pose(rotation, rotation @ np.array([centre[0], centre[1], 0.0]))
    return best


def _rotation_to(axis: FloatArray) -> FloatArray:
    """A rotation whose third column is `axis` (unit, not along −z)."""
    turn = np.cross([0.0, 0.0, 1.0], axis)
    sine = float(np.linalg.norm(turn))
    angle = float(np.arctan2(sine, axis[2]))
    return rigid.rotation_exp(turn * (angle / sine) if sine > 1e-12 else np.zeros(3))


@compiled
def _profile(points: FloatArray, normals: FloatArray, low: float, cells_r: int, cells_z: int) -> Float32Array:
    result = np.full((cells_r, cells_z, 3), np.nan, np.float32)
    best = np.full((cells_r, cells_z), np.inf)
    reach = int(PROFILE_BAND / PROFILE_CELL) + 1
    for i in range(points.shape[0]):
        r = np.sqrt(points[i, 0] ** 2 + points[i, 1] ** 2)
        nr = (points[i, 0] * normals[i, 0] + points[i, 1] * normals[i, 1]) / max(r, 1e-9)
        nz = normals[i, 2]
        length = max(np.sqrt(nr * nr + nz * nz), LEAST_IN_PLANE)
        nr, nz = nr / length, nz / length
        kr, kz = int(r / PROFILE_CELL), int((points[i, 2] - low) / PROFILE_CELL)
        for a in range(max(0, kr - reach), min(cells_r, kr + reach + 1)):
            for b in range(max(0, kz - reach), min(cells_z, kz + reach + 1)):
                dr = (a + 0.5) * PROFILE_CELL - r
                dz = low + (b + 0.5) * PROFILE_CELL - points[i, 2]
                d2 = dr * dr + dz * dz
                if d2 < best[a, b] and d2 < PROFILE_BAND**2:
                    best[a, b] = d2
                    result[a, b, 0] = np.sqrt(d2) if dr * nr + dz * nz >= 0.0 else -np.sqrt(d2)
                    result[a, b, 1] = nr
                    result[a, b, 2] = nz
    return result


@compiled
def _grid(points: FloatArray, low: FloatArray, nx: int, ny: int, nz: int) -> IntArray:
    result = np.full((nx, ny, nz), -1, np.int32)
    best = np.full((nx, ny, nz), np.float32(np.inf), np.float32)
    reach = int(GRID_BAND / GRID_CELL) + 1
    for i in range(points.shape[0]):
        cx = int((points[i, 0] - low[0]) / GRID_CELL)
        cy = int((points[i, 1] - low[1]) / GRID_CELL)
        cz = int((points[i, 2] - low[2]) / GRID_CELL)
        for a in range(max(0, cx - reach), min(nx, cx + reach + 1)):
            dx = low[0] + (a + 0.5) * GRID_CELL - points[i, 0]
            for b in range(max(0, cy - reach), min(ny, cy + reach + 1)):
                dy = low[1] + (b + 0.5) * GRID_CELL - points[i, 1]
                for c in range(max(0, cz - reach), min(nz, cz + reach + 1)):
                    dz = low[2] + (c + 0.5) * GRID_CELL - points[i, 2]
                    d2 = dx * dx + dy * dy + dz * dz
                    if d2 < best[a, b, c] and d2 < GRID_BAND**2:
                        best[a, b, c] = d2
                        result[a, b, c] = i
    return result


@compiled
def pair_key(d: float, along1: float, along2: float, between: float, side: bool) -> int:
    """Key of a pair: distance, cosines (normal 1, line), (normal 2, line), (normal 1, normal 2), and handedness."""
    kd = min(DISTANCES - 1, max(0, int((d - PAIR_NEAR) / PAIR_STEP)))
    step = np.pi / ANGLES
    k1 = min(ANGLES - 1, int(np.arccos(min(1.0, max(-1.0, along1))) / step))
    k2 = min(ANGLES - 1, int(np.arccos(min(1.0, max(-1.0, along2))) / step))
    k3 = min(ANGLES - 1, int(np.arccos(min(1.0, max(-1.0, between))) / step))
    return (((kd * ANGLES + k1) * ANGLES + k2) * ANGLES + k3) * 2 + (1 if side else 0)


@compiled
def _pairs(points: FloatArray, normals: FloatArray) -> tuple[LongArray, Float32Array]:
    """Keys (e,) and entries (e, 6) of all usable ordered pairs."""
    n = points.shape[0]
    keys = np.empty(2 * n * n, np.int64)
    entries = np.empty((2 * n * n, 6), np.float32)
    used = 0
    for i in range(n):
        p, m = points[i], normals[i]
        for j in range(n):
            dx, dy, dz = points[j, 0] - p[0], points[j, 1] - p[1], points[j, 2] - p[2]
            d = np.sqrt(dx * dx + dy * dy + dz * dz)
            if d < PAIR_NEAR or d >= PAIR_FAR:
                continue
            between = m[0] * normals[j, 0] + m[1] * normals[j, 1] + m[2] * normals[j, 2]
            if abs(between) > 0.95:
                continue
            dx, dy, dz = dx / d, dy / d, dz / d
            along1 = m[0] * dx + m[1] * dy + m[2] * dz
            along2 = normals[j, 0] * dx + normals[j, 1] * dy + normals[j, 2] * dz
            ex, ey, ez = dx - along1 * m[0], dy - along1 * m[1], dz - along1 * m[2]
            length = np.sqrt(ex * ex + ey * ey + ez * ez)
            if length < 0.2:
                continue
            ex, ey, ez = ex / length, ey / length, ez / length
            fx, fy, fz = m[1] * ez - m[2] * ey, m[2] * ex - m[0] * ez, m[0] * ey - m[1] * ex
            side = normals[j, 0] * fx + normals[j, 1] * fy + normals[j, 2] * fz
            for s in range(2):
                if (s == 1 and side < -0.15) or (s == 0 and side > 0.15):
                    continue
                keys[used] = pair_key(d, along1, along2, between, s == 1)
                entries[used, 0] = m[2]
                entries[used, 1] = ez
                entries[used, 2] = fz
                entries[used, 3] = -(p[0] * m[0] + p[1] * m[1] + p[2] * m[2])
                entries[used, 4] = -(p[0] * ex + p[1] * ey + p[2] * ez)
                entries[used, 5] = -(p[0] * fx + p[1] * fy + p[2] * fz)
                used += 1
    return keys[:used].copy(), entries[:used].copy()


def _sorted_entries(points: FloatArray, normals: FloatArray) -> tuple[LongArray, Float32Array]:
    """Entries by key; those that put the axis in the same place (0.35 mm, 8°) are kept once."""
    keys, entries = _pairs(points, normals)
    step = np.array([0.14, 0.14, 0.14, 0.35, 0.35, 0.35])
    cell = np.floor(entries / step + 0.5).astype(np.int64) + 64
    code = keys
    for k in range(6):
        code = code * 128 + np.clip(cell[:, k], 0, 127)
    kept = np.unique(code, return_index=True)[1]
    first = np.searchsorted(keys[kept], np.arange(KEYS + 1)).astype(np.int64)
    return first, np.ascontiguousarray(entries[kept])


def _thinned(points: FloatArray, normals: FloatArray, cell: float) -> tuple[FloatArray, FloatArray]:
    """One oriented point a cell and main direction of the normal."""
    side = np.argmax(np.abs(normals), axis=1)
    side = side * 2 + (normals[np.arange(len(normals)), side] > 0)
    at = np.floor((points - points.min(axis=0)) / cell).astype(np.int64)
    code = ((at[:, 0] * 1000 + at[:, 1]) * 1000 + at[:, 2]) * 6 + side
    _, group, count = np.unique(code, return_inverse=True, return_counts=True)
    p, n = np.zeros((len(count), 3)), np.zeros((len(count), 3))
    np.add.at(p, group, points)
    np.add.at(n, group, normals)
    keep = count > 0.2 * np.median(count)
    length = np.linalg.norm(n, axis=1)
    keep &= length > 0.8 * count
    return (p / count[:, None])[keep], (n / np.maximum(length, 1e-9)[:, None])[keep]


def _make(body: ScanBody) -> Template:
    points, normals = sampled(body.region, SAMPLE)
    connection_from_post = _post_frame(points, normals)
    r, t = connection_from_post[:3, :3], connection_from_post[:3, 3]
    points, normals = (points - t) @ r, normals @ r
    radius = float(np.hypot(points[:, 0], points[:, 1]).max())
    low, high = float(points[:, 2].min()), float(points[:, 2].max())
    cells_r = int((radius + PROFILE_BAND) / PROFILE_CELL) + 1
    cells_z = int((high - low + 2 * PROFILE_BAND) / PROFILE_CELL) + 1
    profile = _profile(points, normals, low - PROFILE_BAND, cells_r, cells_z)
    grid_low = points.min(axis=0) - GRID_BAND
    shape = ((np.ptp(points, axis=0) + 2 * GRID_BAND) / GRID_CELL).astype(int) + 1
    first, entries = _sorted_entries(*_thinned(points, normals, PAIR_CELL))
    return Template(
        connection_from_post=connection_from_post,
        area=float(body.region.face_areas().sum()),
        radius=radius,
        height_low=low,
        height_high=high,
        profile=np.pad(profile, ((0, 1), (1, 1), (0, 0)), constant_values=np.nan),
        grid=_grid(points, grid_low, *(int(s) for s in shape)),
        grid_low=grid_low,
        samples=np.ascontiguousarray(np.hstack([points, normals])),
        first=first,
        entries=entries,
    )


MOST_KNOWN = 64  # templates held ready, some 3 MB each
_known: Recent[Template] = Recent(MOST_KNOWN)


def template_of(body: ScanBody) -> Template:
    """The template of a scan body; kept on disk, and from scan to scan by the hash of its surfaces."""

    def made() -> Template:
        shape = body.region.vertices, body.region.faces
        return Template.of_arrays(*kept("template", shape, (__file__, rigid.__file__), lambda: _make(body).arrays()))

    return _known.of(body.sha256, made)
