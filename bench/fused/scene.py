"""What a seed draws: the scanner's figures, and bodies that stand in gingiva between teeth."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from bench.fused.solids import FAMILIES, REAL_FACETS, SHAPES, ball, surface_of
from stylobate.core import rigid
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray

APART, APART_WITH_TOOTH = 10.5, 20.0  # mm between neighbours of an arch of four, and of fewer
GRID = 0.4  # mm, of the gingiva
TISSUE_WIDTH = 7.5  # mm to each side of the arch
TOOTH_FACETS = 96

Height = Callable[[FloatArray, FloatArray], FloatArray]


@dataclass(frozen=True)
class Figures:
    """Of one scan. Noise along the ray, shift and turn of a view (each axis) are standard deviations.

    length_mm: standard deviation of the Gaussian that white noise is smoothed with to correlate it. views: of one body.
    blurred: the distances before they are cut; smoothed: the triangles after.
    """

    seed: int
    family: str
    bodies: tuple[str, ...]
    voxel_mm: float
    white_um: float
    correlated_um: float
    length_mm: float
    shift_um: float
    turn_deg: float
    views: int
    blurred: bool
    smoothed: bool


@dataclass(frozen=True)
class Standing:
    """A body of the truth: which shape, and where."""

    shape: str
    scan_from_connection: FloatArray


@dataclass(frozen=True)
class Mouth:
    """corners (m, 3, 3) of all triangles, outward; looked_at (k, 3) middles of what views are taken of."""

    sites: tuple[Standing, ...]
    corners: FloatArray
    looked_at: FloatArray


def draw(seed: int) -> Figures:
    """The figures of a seed."""
    rng = np.random.default_rng([seed, 0xF05E])
    family = str(rng.choice(list(FAMILIES)))
    return Figures(
        seed=seed,
        family=family,
        bodies=tuple(str(name) for name in rng.choice(FAMILIES[family], int(rng.integers(2, 5)))),
        voxel_mm=float(rng.uniform(0.08, 0.16)),
        white_um=float(rng.uniform(8.0, 25.0)),
        correlated_um=float(rng.uniform(3.0, 12.0)),
        length_mm=float(rng.uniform(0.3, 0.9)),
        shift_um=float(rng.choice([0.0, 3.0, 6.0])),
        turn_deg=float(rng.choice([0.0, 0.02, 0.04])),
        views=int(rng.integers(10, 21)),
        blurred=bool(rng.random() < 0.5),
        smoothed=bool(rng.random() < 1 / 3),
    )


def mouth(figures: Figures) -> Mouth:
    """Bodies along an arch, 0.6 to 2.8 mm below the gingiva, teeth between and beside them."""
    rng = np.random.default_rng([figures.seed, 0x5CE])
    count = len(figures.bodies)
    apart = APART if count > 3 else APART_WITH_TOOTH
    along = (np.arange(count) - (count - 1) / 2.0) * apart
    height = _height(rng)
    sites, surfaces, looked_at = [], [], []
    for name, t in zip(figures.bodies, along, strict=True):
        body = surface_of(SHAPES[name](REAL_FACETS))
        pose = _pose(rng, _arch(t) + 0.7 * rng.normal(size=2), height)
        sites.append(Standing(name, pose))
        surfaces.append(body.moved(pose))
        looked_at.append(pose[:3, 3] + pose[:3, 2] * 0.6 * body.vertices[:, 2].max())
    between = (along[:-1] + along[1:]) / 2.0 if apart == APART_WITH_TOOTH else along[:0]
    for t in np.concatenate([between, [along[0] - 9.5, along[-1] + 9.5]]):
        x, y = _arch(t)
        centre = np.array([x, y, float(height(x, y)) + rng.uniform(1.5, 3.0)])
        surfaces.append(_tooth(rng, centre))
        looked_at.append(centre + [0.0, 0.0, 2.0])
    surfaces.append(_gingiva(height, along[0] - 13.0, along[-1] + 13.0))
    corners = np.concatenate([surface.vertices[surface.faces] for surface in surfaces])
    return Mouth(tuple(sites), corners, np.array(looked_at))


def _arch(t: float | FloatArray) -> FloatArray:
    """(…, 2) points of the arch, a parabola."""
    return np.stack([np.asarray(t), -0.022 * np.asarray(t) ** 2], axis=-1)


def _height(rng: np.random.Generator) -> Height:
    """The gingiva's height over (x, y), mm."""
    a, b, c = rng.uniform(0.0, 2.0 * np.pi, 3)
    return lambda x, y: 0.35 * np.sin(0.35 * x + a) * np.cos(0.3 * y + b) + 0.25 * np.sin(0.9 * x + c)


def _pose(rng: np.random.Generator, at: FloatArray, height: Height) -> FloatArray:
    """Leaning by up to 12° to any side, at any turn."""
    side, turn = rng.uniform(0.0, 2.0 * np.pi, 2)
    lean = np.radians(rng.uniform(0.0, 12.0)) * np.array([-np.sin(side), np.cos(side), 0.0])
    rotation = rigid.rotation_exp(lean) @ rigid.turn_z(turn)[:3, :3]
    return rigid.pose(rotation, np.array([*at, float(height(at[0], at[1])) - rng.uniform(0.6, 2.8)]))


def _gingiva(height: Height, low: float, high: float) -> Surface:
    """An open surface over a band along the arch, low to high in x."""
    xs, ys = np.arange(low, high, GRID), np.arange(_arch(np.array([low, high]))[:, 1].min() - 8.0, 9.0, GRID)
    x, y = np.meshgrid(xs, ys, indexing="ij")
    number = np.arange(x.size, dtype=np.int32).reshape(x.shape)
    a, b, c, d = number[:-1, :-1], number[1:, :-1], number[1:, 1:], number[:-1, 1:]
    faces: IntArray = np.concatenate([np.stack(t, axis=-1).reshape(-1, 3) for t in ((a, b, c), (a, c, d))])
    points = np.stack([x, y, height(x, y)], axis=-1).reshape(-1, 3)
    curve = _arch(np.linspace(low, high, 400))
    off = np.linalg.norm(points[:, None, :2] - curve[None, ::4], axis=2).min(axis=1)
    return Surface(points, faces[(off[faces] < TISSUE_WIDTH).all(axis=1)])


def _tooth(rng: np.random.Generator, centre: FloatArray) -> Surface:
    """A lump with cusps: a superellipsoid, waved above."""
    size = np.array([3.4, 4.2, 4.6]) * rng.uniform(0.85, 1.0, 3)
    a, b = rng.uniform(0.0, 2.0 * np.pi, 2)
    whole = surface_of(ball(1.0, TOOTH_FACETS))
    unit = np.sign(whole.vertices) * np.abs(whole.vertices) ** np.array([0.8, 0.8, 0.75])
    points = unit * size
    points[:, 2] += (
        0.45 * np.cos(1.3 * points[:, 0] + a) * np.cos(1.2 * points[:, 1] + b) * np.clip(unit[:, 2], 0.0, 1.0)
    )
    return Surface(points + centre, whole.faces)
