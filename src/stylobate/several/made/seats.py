"""What the surface of a finished frame looks like where it seats: taken from the parts that lie in it or below it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse, turn_z
from stylobate.core.sampling import sampled
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.fit.edges import SharpEdges
from stylobate.parts.model import Connection, PartsFolder
from stylobate.parts.region import clip_above

BELOW = 0.02
"""mm below the platform down to which a frame milled to an abutment or an analog touches it."""


LEDGE = 0.01
"""mm below the gingival height at which a base is cut, so that the ledge to which the frame is bonded is left out."""
INWARD = 0.1
"""Cosine between a face's normal and the way to the axis from which on it counts as facing the axis."""


PLAIN = "plain seat"
"""Name of the form that is no part's: the frame stands on the platform itself."""
SPACING = 0.1
FACETS, FEW = 0.01, 0.005
"""mm between the points by which a form is asked whether it is round; mm by which facets may lie off, and the share of
points that may lie farther off all the same."""
TURNS = np.radians([7.0, 19.0, 45.0, 53.0, 60.0, 101.0, 149.0])
"""Turns that leave no part with index marks as it is, all together."""
SEGMENTS = 256
PLAIN_INNER, PLAIN_RISE = 0.7, 1.0
"""Of a plain seat: the widest screw channel, as a share of the platform; mm of its wall that stand free."""


@dataclass(frozen=True)
class Form:
    """One form of seat, in the frame of the connection on which it seats. surface: it faces out of the frame.
    edges: its sharp ones. round: turned about z it is the same, so that it shows no turn.
    """

    part: str
    connection: str
    surface: Surface
    tree: SurfaceTree
    edges: SharpEdges
    middle: FloatArray
    reach: float
    round: bool


def forms_of(parts: PartsFolder) -> tuple[Form, ...]:
    """Forms of seat that a parts folder knows.

    A titanium base shows its own outside up to its gingival height, where the bonded frame begins; its screw channel is
    left out, as the frame's own goes on where it ends. A frame milled to an
    abutment's upper connection, or to an implant's, shows the negative of the abutment or analog there.
    """
    found = [
        _form(base.id, base.seats_on, _outside(_below(base.surface, base.gingival_height - LEDGE)))
        for base in parts.titanium_bases
    ]
    upright = sorted(parts.multi_unit_abutments, key=lambda abutment: abutment.angle_deg)
    for abutment in {one.provides: one for one in reversed(upright)}.values():  # all of a connection are alike above
        upper = abutment.surface.moved(inverse(abutment.lower_from_upper))
        found.append(_form(abutment.id, abutment.provides, _negative(clip_above(upper, -BELOW))))
    for analog in parts.analogs:
        above = clip_above(analog.surface, -BELOW)
        if len(above.faces) and float(above.vertices[:, 2].max()) > BELOW:
            found.append(_form(analog.id, analog.connection, _negative(above)))
    return tuple(form for form in found if len(form.surface.faces))


def plain_form(connection: Connection) -> Form:
    """A flat ring as wide as the platform, and the foot of the wall above it: no index, so the turn stays open."""
    angle = 2.0 * np.pi * np.arange(SEGMENTS) / SEGMENTS
    circle = np.stack([np.cos(angle), np.sin(angle)], axis=1) * connection.platform_diameter / 2.0
    rings = [(PLAIN_INNER, 0.0), (1.0, 0.0), (1.0, PLAIN_RISE)]
    vertices = np.concatenate([np.column_stack([share * circle, np.full(SEGMENTS, z)]) for share, z in rings])
    here = np.arange(SEGMENTS)
    there = (here + 1) % SEGMENTS
    faces = [
        triangle
        for k in range(len(rings) - 1)
        for low, high in [(k * SEGMENTS, (k + 1) * SEGMENTS)]
        for triangle in (
            np.stack([low + here, low + there, high + there], axis=1),
            np.stack([low + here, high + there, high + here], axis=1),
        )
    ]
    return _form(PLAIN, connection.id, Surface(vertices, np.concatenate(faces).astype(np.int32)))


def _form(part: str, connection: str, surface: Surface) -> Form:
    low, high = (
        (surface.vertices.min(axis=0), surface.vertices.max(axis=0)) if len(surface.faces) else (np.zeros(3),) * 2
    )
    reach = float(np.linalg.norm(high - low)) / 2
    tree = SurfaceTree.of(surface)
    return Form(part, connection, surface, tree, SharpEdges.of(surface), (low + high) / 2, reach, _round(surface, tree))


def _round(surface: Surface, tree: SurfaceTree) -> bool:
    """Whether the surface, turned about z by any of TURNS, lies on itself but for the facets of its mesh."""
    if not len(surface.faces):
        return False
    points = sampled(surface, SPACING)[0]
    off = [tree.closest(points @ turn_z(turn)[:3, :3].T, 10.0 * FACETS).distance for turn in TURNS]
    return bool(np.mean(np.abs(np.nan_to_num(off, nan=np.inf)) > FACETS) < FEW)


def _negative(surface: Surface) -> Surface:
    return Surface(surface.vertices, np.ascontiguousarray(surface.faces[:, ::-1]))


def _below(surface: Surface, z: float) -> Surface:
    return _turned_over(clip_above(_turned_over(surface), -z))


def _outside(surface: Surface) -> Surface:
    """Without what faces the axis."""
    middle = surface.vertices[surface.faces].mean(axis=1)
    across = np.linalg.norm(middle[:, :2], axis=1) * np.linalg.norm(surface.corner_products(), axis=1)
    inward = np.sum(surface.corner_products()[:, :2] * middle[:, :2], axis=1) < -INWARD * across
    kept, faces = np.unique(surface.faces[~inward], return_inverse=True)
    return Surface(surface.vertices[kept], np.ascontiguousarray(faces.reshape(-1, 3).astype(np.int32)))


def _turned_over(surface: Surface) -> Surface:
    """Mirrored in z, outside still outside."""
    return _negative(Surface(surface.vertices * np.array([1.0, 1.0, -1.0]), surface.faces))
