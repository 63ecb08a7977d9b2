"""How a rigid frame comes to rest on connections: laid sideways, then down and level (method/seat, 1–9)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.errors import FitError
from stylobate.core.types import FloatArray, LongArray
from stylobate.several.lay import laid, landmarks
from stylobate.several.seating.minimax import CAPPED, COUNTED, FREE, least_largest_gaps

ROUNDS = 12
SETTLED = 1e-6
SETTLED_SHARE = 1e-4
"""The linear programme is set up anew at its own answer until the largest gap changes by no more than SETTLED, mm, or
by this share of itself."""
CAP_SLACK = 1e-6
"""mm by which the gap at the tight screw may give way while the others are made least."""


@dataclass(frozen=True)
class Rests:
    """Rests of a frame, one a draw.

    gap, side: (draws, n) mm. scan_from_frame: (draws, 4, 4), motion of the frame from where its seats are given.
    """

    gap: FloatArray
    side: FloatArray
    scan_from_frame: FloatArray


@dataclass(frozen=True)
class _Ground:
    """What does not move: connections (draws, n, 4, 4); mean axis and middle (draws, 3); rim radius (n,), mm.

    across: (draws, 2, 3) 1/mm, two directions across the axis, divided by the distance of the farthest centre from the
    middle: a tilt about one of them counts as the way, in mm, that it moves the farthest centre.
    """

    implants: FloatArray
    axis: FloatArray
    middle: FloatArray
    across: FloatArray
    radius: FloatArray


def rests(frame: FloatArray, implants: FloatArray, diameters: FloatArray, tight: int | None = None) -> Rests:
    """Rest of a frame with seats `frame` (n, 4, 4) on connections `implants` (draws, n, 4, 4).

    diameters (n,): of the rims, mm, 0 for the centre alone. tight: index of the only screw that is tightened; without
    it the largest of all gaps counts. Raises FitError where a rest is not reached.
    """
    motion = laid(landmarks(np.broadcast_to(frame, implants.shape)), landmarks(implants))
    seats = motion[:, None] @ frame
    ground = _ground(implants, np.asarray(diameters, dtype=np.float64) / 2.0)
    no_cap, n = np.zeros(len(implants)), implants.shape[1]
    if tight is None:
        _settle(seats, ground, np.full(n, COUNTED), no_cap)
    else:
        largest = _settle(seats, ground, _roles(n, tight, COUNTED, FREE), no_cap)
        _settle(seats, ground, _roles(n, tight, CAPPED, COUNTED), largest + CAP_SLACK)
    height, lean = _gaps(seats, ground)
    gap = height + ground.radius * np.linalg.norm(lean, axis=-1)
    return Rests(gap, _off_axis(seats, implants), seats[:, 0] @ np.linalg.inv(frame[0]))


def _roles(n: int, tight: int, there: int, elsewhere: int) -> LongArray:
    roles = np.full(n, elsewhere)
    roles[tight] = there
    return roles


def _settle(seats: FloatArray, ground: _Ground, role: LongArray, cap: FloatArray) -> FloatArray:
    """Solve, move, set up anew, until at rest; `seats` (draws, n, 4, 4) move. The largest gaps (draws,), mm."""
    largest = np.full(len(seats), np.inf)
    moving = np.arange(len(seats))
    for _ in range(ROUNDS):
        part = _part(ground, moving)
        x, reached = least_largest_gaps(*_linear(seats[moving], part), ground.radius, role, cap[moving])
        if not reached.all():
            break
        seats[moving] = _moved(seats[moving], part, x[:, :3])
        settled = np.abs(x[:, 3] - largest[moving]) < np.maximum(SETTLED, SETTLED_SHARE * x[:, 3])
        largest[moving] = x[:, 3]
        moving = moving[~settled]
        if not len(moving):
            return largest
    raise FitError(
        f"the rest of the frame was not reached in {len(moving)} of {len(seats)} cases: the poses are too far from "
        "standing alike; check that both are of the same implants"
    )


def _ground(implants: FloatArray, radius: FloatArray) -> _Ground:
    centres = implants[..., :3, 3]
    middle = centres.mean(axis=1)
    lever = np.maximum(np.linalg.norm(centres - middle[:, None], axis=-1).max(axis=1), 1.0)
    axis = implants[..., :3, 2].mean(axis=1)
    axis /= np.linalg.norm(axis, axis=-1, keepdims=True)
    least = np.eye(3)[np.abs(axis).argmin(axis=-1)]
    one = np.cross(axis, least)
    one /= np.linalg.norm(one, axis=-1, keepdims=True)
    across = np.stack([one, np.cross(axis, one)], axis=1) / lever[:, None, None]
    return _Ground(implants, axis, middle, across, radius)


def _part(ground: _Ground, which: LongArray) -> _Ground:
    return _Ground(
        ground.implants[which], ground.axis[which], ground.middle[which], ground.across[which], ground.radius
    )


def _moved(seats: FloatArray, ground: _Ground, way: FloatArray) -> FloatArray:
    """Seats (draws, n, 4, 4) turned about the middle and raised along the mean axis by `way` (draws, 3) (eq. 2)."""
    turn = _turns(np.einsum("dk,dkc->dc", way[:, 1:], ground.across))
    moved = seats.copy()
    moved[..., :3, :3] = turn[:, None] @ seats[..., :3, :3]
    from_middle = seats[..., :3, 3] - ground.middle[:, None]
    lifted = ground.middle + way[:, :1] * ground.axis
    moved[..., :3, 3] = from_middle @ np.swapaxes(turn, -1, -2) + lifted[:, None]
    return moved


def _gaps(seats: FloatArray, ground: _Ground) -> tuple[FloatArray, FloatArray]:
    """Gap at each centre (draws, n) and the two slopes of the frame's plane across it (draws, n, 2) (eq. 3)."""
    normal = seats[..., :3, 2]
    along = np.einsum("dnc,dncj->dnj", normal, ground.implants[..., :3, :3])
    height = np.sum(normal * (seats[..., :3, 3] - ground.implants[..., :3, 3]), axis=-1)
    return height / along[..., 2], along[..., :2] / along[..., 2:]


def _linear(seats: FloatArray, ground: _Ground) -> tuple[FloatArray, FloatArray]:
    """height (draws, n, 4) and lean (draws, n, 2, 4): value, and change with rise and the two tilts (eq. 4)."""
    normal = seats[..., :3, 2]
    height, lean = np.zeros((*normal.shape[:2], 4)), np.zeros((*normal.shape[:2], 2, 4))
    height[..., 0], lean[..., 0] = _gaps(seats, ground)
    facing = np.sum(normal * ground.implants[..., :3, 2], axis=-1)[..., None]
    height[..., 1] = np.einsum("dnc,dc->dn", normal, ground.axis) / facing[..., 0]
    turned = [np.einsum("dkc,dnc->dnk", ground.across, np.cross(normal, ground.implants[..., :3, j])) for j in range(3)]
    moment = np.cross(ground.implants[..., :3, 3] - ground.middle[:, None], normal)
    lifted = np.einsum("dkc,dnc->dnk", ground.across, moment)
    height[..., 2:] = (lifted - height[..., :1] * turned[2]) / facing
    for j in range(2):
        lean[..., j, 2:] = (turned[j] - lean[..., j, :1] * turned[2]) / facing
    return height, lean


def _off_axis(seats: FloatArray, implants: FloatArray) -> FloatArray:
    """(draws, n) mm: distance of each seat's centre from its connection's axis."""
    return np.asarray(np.linalg.norm(np.cross(seats[..., :3, 3] - implants[..., :3, 3], implants[..., :3, 2]), axis=-1))


def _turns(w: FloatArray) -> FloatArray:
    """(draws, 3, 3) rotations by the vectors w (draws, 3), radians (Rodrigues)."""
    angle = np.linalg.norm(w, axis=-1)[:, None, None]
    s = np.zeros((len(w), 3, 3))
    s[:, 0, 1], s[:, 0, 2], s[:, 1, 2] = -w[:, 2], w[:, 1], -w[:, 0]
    s[:, 1, 0], s[:, 2, 0], s[:, 2, 1] = w[:, 2], -w[:, 1], w[:, 0]
    return np.asarray(np.eye(3) + np.sinc(angle / np.pi) * s + 0.5 * np.sinc(angle / 2 / np.pi) ** 2 * (s @ s))
