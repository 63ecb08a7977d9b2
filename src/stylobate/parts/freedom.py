"""Which motions a scan region fixes. A motion along which the surface slides in itself cannot be measured.

The information that points spread evenly over the region give about ξ = (t, w), motions at its centroid c, is

    H = mean of jᵀj over the area,   j = [n, (p − c) × n / ρ],   ρ² = mean |p − c|²        (1)

with n the normal of the curved surface behind the facets (edges.py), so that a round post in 64 facets is round.
An eigenvalue λ of H is the mean square of the surface's normal displacement per unit of the motion.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.edges import Edges

LOOSE = 2e-4
"""λ below which a motion counts as loose: at 10 µm noise and 400 independent points its standard uncertainty σ / √(N λ)
is above 35 µm, or 0.7° for a region of ρ = 2.8 mm. A round wall in irregular triangles that stand off it by 10 µm
keeps below (6e-5 to 1.4e-4 measured); a flat 0.1 mm deep on a post of 4.8 mm has 1.1e-3."""
WEAK = 1e-3
"""λ below which a motion is held weakly."""

# Six points, exact to degree 4: Dunavant 1985, Int. J. Numer. Methods Eng. 21:1129, table II, p = 4.
_A, _B = 0.445948490915965, 0.091576213509771
_POINTS = np.array(
    [
        [1 - 2 * _A, _A, _A], [_A, 1 - 2 * _A, _A], [_A, _A, 1 - 2 * _A],
        [1 - 2 * _B, _B, _B], [_B, 1 - 2 * _B, _B], [_B, _B, 1 - 2 * _B],
    ]
)  # fmt: skip
_WEIGHTS = np.array([0.223381589678011] * 3 + [0.109951743655322] * 3)


@dataclass(frozen=True)
class Freedom:
    """What a region fixes. centre (3,) mm; gyration ρ, mm; information H (6, 6), rotations scaled by ρ."""

    centre: FloatArray
    gyration: float
    information: FloatArray

    def motions(self, below: float) -> FloatArray:
        """(k, 6) orthonormal motions whose information is less than `below`, rotations scaled by ρ."""
        values, vectors = np.linalg.eigh(self.information)
        return np.asarray(vectors[:, values < below].T)


def freedom(edges: Edges) -> Freedom:
    """The information of a region about its own motion (eq. 1 above)."""
    surface: Surface = edges.surface
    corners, normals = surface.vertices[surface.faces], edges.corner_normals()
    weight = (surface.face_areas()[:, None] * _WEIGHTS).ravel()
    weight /= weight.sum()
    p = np.einsum("qk,mkd->mqd", _POINTS, corners).reshape(-1, 3)
    n = np.einsum("qk,mkd->mqd", _POINTS, normals).reshape(-1, 3)
    n /= np.maximum(np.linalg.norm(n, axis=1, keepdims=True), 1e-300)
    centre = weight @ p
    arm = p - centre
    gyration = float(np.sqrt(weight @ np.einsum("ij,ij->i", arm, arm)))
    rows = np.hstack([n, np.cross(arm, n) / gyration])
    return Freedom(centre, gyration, (rows * weight[:, None]).T @ rows)


@dataclass(frozen=True)
class Looseness:
    """Motions in words. only_spin: nothing but the turn about the part's axis is among them."""

    words: str
    only_spin: bool


def describe(found: Freedom, below: float) -> Looseness | None:
    """The motions with information less than `below`, in words; None where there are none."""
    motions = found.motions(below)
    if not len(motions):
        return None
    turn = motions[:, 3:]
    left, size, _ = np.linalg.svd(turn.T @ turn)
    turns = [left[:, k] for k in range(3) if size[k] > 0.05]
    shifts = _pure_shifts(motions)
    words = [*_shift_words(shifts), *_turn_words(turns, motions)]
    only_spin = not shifts and len(turns) == 1 and _along_axis(turns[0]) and not _is_screw(motions)
    return Looseness(" and ".join(words), only_spin)


def _along_axis(direction: FloatArray) -> bool:
    return bool(abs(direction[2]) > np.cos(np.radians(10.0)))


def _pure_shifts(motions: FloatArray) -> list[FloatArray]:
    """Orthonormal shifts that need no turn, out of the span of `motions`."""
    _, size, right = np.linalg.svd(motions[:, 3:].T)
    rank = int(np.count_nonzero(size > 0.2))
    rest = right[rank:] @ motions[:, :3]
    return [row / np.linalg.norm(row) for row in rest if np.linalg.norm(row) > 0.5]


def _is_screw(motions: FloatArray) -> bool:
    """Whether the only motion turns about an axis and shifts along it at once."""
    if len(motions) != 1:
        return False
    shift, turn = motions[0, :3], motions[0, 3:]
    return bool(abs(shift @ turn) > 0.1 * (turn @ turn))


def _shift_words(shifts: list[FloatArray]) -> list[str]:
    if len(shifts) == 3:
        return ["any shift"]
    if len(shifts) == 2:
        normal = np.cross(shifts[0], shifts[1])
        return ["any sideways shift" if _along_axis(normal) else f"any shift across {_direction(normal)}"]
    return ["height along the axis" if _along_axis(shift) else f"shift along {_direction(shift)}" for shift in shifts]


def _turn_words(turns: list[FloatArray], motions: FloatArray) -> list[str]:
    if len(turns) == 3:
        return ["any turn about one point (the region is a ball)"]
    if _is_screw(motions):
        return ["a screw motion (turn and shift at once)"]
    words = []
    for turn in turns:
        name = "the axis" if _along_axis(turn) else f"an axis along {_direction(turn)}"
        words.append(f"turn about {name}")
    return words


def _direction(vector: FloatArray) -> str:
    largest = vector[int(np.argmax(np.abs(vector)))]
    x, y, z = vector * np.sign(largest) + 0.0
    return f"({x:.2f}, {y:.2f}, {z:.2f})"
