"""Is a CAD surface fit to be measured against: unit, place, orientation, and whether its faces agree."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, LongArray
from stylobate.parts.edges import Edges, joined
from stylobate.parts.freedom import LOOSE, WEAK, describe, freedom

# Largest extent of a part in the file's unit: parts span 2 to 40 mm, that is 0.002 to 0.04 m, 0.08 to 1.6 in.
METRES_BELOW, SMALL_BELOW, LARGE_ABOVE, MICROMETRES_ABOVE = 0.05, 1.6, 60.0, 1000.0
PLATFORM_WITHIN = 5.0
"""mm. A part's surface starts within this of the platform (z = 0), and the axis passes within this of it."""
BESIDE, ABOVE = 0.12, 1.0
"""Share of its width by which a scan body's middle may lie beside the axis, and mm that it may start above the
platform, before it is asked whether its frame is right (common practice, no source)."""
LEAST_REGION = 5.0
"""mm². A scan region smaller than this (a disc of 2.5 mm) fixes nothing."""
FACET_RISE_UM = 5.0
"""CAD coarser than this shifts a fit by an amount that shows beside 10 µm of noise."""
MANY = 0.05
"""Share of the edges from which on faces that disagree make the surface unusable."""
INWARD = 0.05
"""|signed volume| / (area · ρ) below which a surface encloses too little to tell its outside (a plate)."""


@dataclass(frozen=True)
class Remark:
    """A finding about a surface. loose: it is a motion that the region cannot fix."""

    what: str
    remedy: str
    blocks: bool = False
    loose: bool = False


def check_place(surface: Surface, below: bool = False) -> list[Remark]:
    """Unit and frame: size, platform and axis. below: whether the part lies below the platform, as an analog does."""
    low, high = surface.vertices.min(axis=0), surface.vertices.max(axis=0)
    extent = float((high - low).max())
    unit = _unit(extent)
    if unit:
        return [Remark(f"spans {extent:.4g} of its units: {unit}", "export it in millimetres", blocks=True)]
    remarks = []
    sideways = float(np.linalg.norm(np.maximum(np.maximum(low[:2], -high[:2]), 0.0)))
    upright = max(float(low[2]), float(-high[2]), 0.0)
    frame = "export it in the frame of its connection: platform at z = 0, +z along the axis"
    if high[2] <= 0.0 and not below:
        remarks.append(Remark("lies wholly below the platform (z ≤ 0): upside down?", frame, blocks=True))
    elif upright > PLATFORM_WITHIN:
        remarks.append(Remark(f"starts {upright:.3g} mm above the platform (z = 0)", frame, blocks=True))
    if sideways > 0.0:
        far = sideways > PLATFORM_WITHIN
        remarks.append(Remark(f"stands {sideways:.3g} mm beside the axis (x = y = 0)", frame, blocks=far))
    return remarks


def check_stance(surface: Surface) -> list[Remark]:
    """Whether a scan body seems to stand upright on its platform: worth a question, no more."""
    low, high = surface.vertices.min(axis=0), surface.vertices.max(axis=0)
    middle = np.average(surface.vertices[surface.faces].mean(axis=1), axis=0, weights=surface.face_areas())
    beside, above = float(np.linalg.norm(middle[:2])), float(low[2])
    remedy = (
        "see that its frame is that of its connection: platform at z = 0, +z along the axis; if it is, no need to act"
    )
    remarks = []
    holds_axis = bool(np.all(low[:2] <= 0.0) and np.all(high[:2] >= 0.0))  # else it has been said already
    if holds_axis and beside > BESIDE * float((high - low)[:2].max()):
        remarks.append(
            Remark(f"has its middle {beside:.2g} mm beside the axis: is it off its axis, or on its side?", remedy)
        )
    if ABOVE < above <= PLATFORM_WITHIN:
        remarks.append(Remark(f"starts {above:.2g} mm above the platform: does its CAD end there?", remedy))
    return remarks


def _unit(extent: float) -> str | None:
    if extent < METRES_BELOW:
        return "these look like metres"
    if extent < SMALL_BELOW:
        return "these look like inches or centimetres"
    if extent > MICROMETRES_ABOVE:
        return "these look like micrometres"
    return "larger than any part" if extent > LARGE_ABOVE else None


def check_faces(edges: Edges) -> list[Remark]:
    """Self-consistency and orientation."""
    surface = edges.surface
    remarks = []
    doubled = len(surface.faces) - len(np.unique(np.sort(surface.faces, axis=1), axis=0))
    if doubled:
        many = doubled > MANY * len(surface.faces)
        remarks.append(Remark(f"{doubled} faces stand there twice", "export it as one clean surface", blocks=many))
    crowded = int(np.count_nonzero(edges.count > 2))
    if crowded and not doubled:
        many = crowded > MANY * len(edges.ends)
        what = f"{crowded} edges are shared by more than two faces"
        remarks.append(Remark(what, "export it as one clean surface", blocks=many))
    if edges.against:
        many = edges.against > MANY * len(edges.ends)
        what = f"{edges.against} edges lie between faces that are turned against each other"
        remarks.append(Remark(what, "unify the normals so that all faces point outwards", blocks=many))
    share = outwardness(edges)
    if share < -INWARD:
        remarks.append(Remark("is inside out: its faces point inwards", "flip its normals", blocks=True))
    return remarks


def outwardness(edges: Edges) -> float:
    """Signed volume over (area · ρ), about 0.3 for a closed post: positive where faces point outwards.

    An open surface is closed by cones from each border to its own middle, which is exact for a plane border.
    """
    surface = edges.surface
    area = surface.face_areas()
    centres = surface.vertices[surface.faces].mean(axis=1)
    middle = np.average(centres, axis=0, weights=area)
    moved = surface.vertices - middle
    corners = moved[surface.faces]
    volume = float(np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0)
    volume += _lid_volume(edges, moved)
    spread = float(np.sqrt(np.average(((centres - middle) ** 2).sum(axis=1), weights=area)))
    return volume / (float(area.sum()) * max(spread, 1e-12))


def _lid_volume(edges: Edges, moved: FloatArray) -> float:
    """Signed volume of cones over the open borders, each to the middle of its own loop."""
    start, end = border(edges)
    if not len(start):
        return 0.0
    loop = _loops(start, end)
    count = np.bincount(loop)
    middles = np.stack([np.bincount(loop, moved[start, k]) / count for k in range(3)], axis=1)
    p, q = moved[start], moved[end]
    return float(np.einsum("ij,ij->", middles[loop], np.cross(q, p)) / 6.0)


def border(edges: Edges) -> tuple[LongArray, LongArray]:
    """Half-edges without a neighbour, in the direction of their faces: start and end vertex of each."""
    is_open = edges.count[edges.of_face] == 1
    faces = edges.surface.faces.astype(np.int64)
    return faces[is_open], np.roll(faces, -1, axis=1)[is_open]


def _loops(start: LongArray, end: LongArray) -> LongArray:
    """Which connected border each half-edge belongs to, counted from 0."""
    names, flat = np.unique(np.concatenate([start, end]), return_inverse=True)
    one, other = flat[: len(start)], flat[len(start) :]
    return np.unique(joined(one, other, len(names))[one], return_inverse=True)[1]


def check_facets(edges: Edges) -> list[Remark]:
    """Whether the facets keep close enough to the curved surface they stand for."""
    rise_um = edges.facet_rise() * 1e3
    if rise_um <= FACET_RISE_UM:
        return []
    what = f"is coarse: its facets stand off the curved surface by about {rise_um:.0f} µm"
    return [Remark(what, f"export it finer, to {FACET_RISE_UM:.0f} µm or better")]


def check_region(edges: Edges, index_order: int) -> list[Remark]:
    """Whether the scan region fixes all six degrees of freedom (the turn only where the connection is indexed)."""
    area = float(edges.surface.face_areas().sum())
    if area < LEAST_REGION:
        return [Remark(f"the scan region has only {area:.2g} mm²", "give a larger scan_region", blocks=True)]
    found = freedom(edges)
    loose = describe(found, LOOSE)
    if loose is None:
        weak = describe(found, WEAK)
        if weak is None or (weak.only_spin and index_order == 0):
            return []
        return [
            Remark(f"the scan region holds this only weakly: {weak.words}", "expect a large uncertainty", loose=True)
        ]
    if loose.only_spin:
        if index_order == 0:
            return []
        what = f"loose: {loose.words}: the body is round here, so a scan gives no index"
        return [Remark(what, "use a body with a flat, or take its flat into scan_region", loose=True)]
    what = f"loose: {loose.words}: a scan cannot fix the position"
    return [Remark(what, "take more of the body (its top, its flat) into scan_region", blocks=True, loose=True)]
