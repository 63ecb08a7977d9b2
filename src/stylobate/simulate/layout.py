"""Where things stand in the mouth: the slots of the arch, and what is drawn into each."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.errors import UsageError
from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.types import FloatArray
from stylobate.parts.model import ScanBody
from stylobate.simulate import tissue
from stylobate.simulate.settings import Placed, Settings

SLOT = 7.6
"""Arch length of one tooth, mm (invented, between a front tooth and a molar)."""
SLOTS = {"single": range(3), "quadrant": range(7), "full": range(-7, 7)}
TISSUE_FILLET = 0.6
CLEARANCE = 0.35
"""Least distance between a post and a tooth, mm: one that stands nearer is left out."""

ATTEMPTS = 10

Generator = np.random.Generator


@dataclass(frozen=True)
class Site:
    """A body as it shall stand. gum: share of its height below the gum. stands: False where it is not screwed in."""

    body: ScanBody
    slot: int
    arc: float
    mouth_from_connection: FloatArray
    gum: float
    stands: bool = True


@dataclass(frozen=True)
class Layout:
    """sites along the arch; rows: tissue primitives; low, high: box of the scanned region, mouth frame; ends: arc."""

    sites: tuple[Site, ...]
    rows: FloatArray
    low: FloatArray
    high: FloatArray
    ends: tuple[float, float]


def lay_out(settings: Settings, bodies: tuple[ScanBody, ...], rng: Generator) -> Layout:
    """Draw the scene. Raises UsageError for more bodies and stumps than slots, or a body that is not among `bodies`."""
    slots = list(SLOTS[settings.arch])
    wanted = _wanted(settings, bodies, rng)
    if len(wanted) + settings.stumps > len(slots):
        raise UsageError(
            f"{len(wanted)} bodies and {settings.stumps} stumps do not fit: a {settings.arch} arch has "
            f"{len(slots)} places; ask for fewer or a larger arch."
        )
    chosen = rng.permutation(slots)[: len(wanted) + settings.stumps].tolist()
    if settings.arch == "single" and len(wanted) == 1 and not settings.stumps:
        chosen = [1]
    body_slots, stump_slots = sorted(chosen[: len(wanted)]), set(chosen[len(wanted) :])
    ends = (slots[0] * SLOT - 1.0, (slots[-1] + 1) * SLOT + 1.0)
    drawn: list[Site] = []
    for one, slot in zip(wanted, body_slots, strict=True):
        drawn.append(_apart(settings, one, slot, drawn, rng))
    sites = tuple(sorted(drawn, key=lambda site: site.arc))
    rows = [_ridge_row(rng, ends)]
    if settings.palate:
        rows.append(tissue.row(tissue.VAULT, 2.0, np.array([0.0, 0.0, -4.4]), np.eye(3), (9.5, 13.0), 0.0))
    for slot in slots:
        if slot in body_slots:
            continue
        draw = _stump if slot in stump_slots else _tooth
        if slot in stump_slots or (settings.teeth and rng.random() < 0.85):
            made = draw(slot, rng)
            if all(_clear(made, site) for site in sites):
                rows += made
    rows += [_cuff(site, rng) for site in sites]
    lateral = tissue.ARCH_RADIUS + 11.0
    track = np.array([tissue.along(t)[0] for t in np.linspace(*ends, 60)])
    low, high = track.min(axis=0) - 9.5, track.max(axis=0) + 9.5
    low[2], high[2] = -4.0, 16.0
    if settings.palate:
        low[0], high[0] = (-lateral if settings.arch == "full" else low[0]), max(high[0], lateral)
        low[1] = min(low[1], -10.0)
    return Layout(sites, np.array(rows), low, high, ends)


def _wanted(settings: Settings, bodies: tuple[ScanBody, ...], rng: Generator) -> list[tuple[ScanBody, Placed]]:
    by_name = {body.id: body for body in bodies}
    if isinstance(settings.bodies, int):
        if settings.bodies and not bodies:
            raise UsageError("the parts folder has no scan body to place; add one or ask for 0 bodies.")
        return (
            [(bodies[k], Placed(bodies[k].id)) for k in rng.integers(len(bodies), size=settings.bodies)]
            if bodies
            else []
        )
    placed = [Placed(b) if isinstance(b, str) else b for b in settings.bodies]
    for one in placed:
        if one.scan_body not in by_name:
            raise UsageError(f"scan body '{one.scan_body}' is not in the parts; choose one of: {', '.join(by_name)}.")
    return [(by_name[one.scan_body], one) for one in placed]


def _frame(t: float) -> FloatArray:
    """Mouth-frame axes (3, 3) at arc length t: columns along the arch, outward (cheek side), up."""
    _, tangent = tissue.along(t)
    up = np.array([0.0, 0.0, 1.0])
    return np.stack([tangent, np.cross(up, tangent), up], axis=1)


def _site(settings: Settings, wanted: tuple[ScanBody, Placed], slot: int, lean_deg: float, rng: Generator) -> Site:
    body, placed = wanted
    gum = float(rng.uniform(*settings.gum))
    arc = (slot + 0.5) * SLOT + float(rng.uniform(-0.4, 0.4))
    height = float(body.surface.vertices[:, 2].max())
    axes = _frame(arc)
    lean = math.radians(lean_deg)
    along_arch, across = rng.uniform(-0.4, 0.4) * lean, rng.uniform(-1.0, 1.0) * lean
    turn = rng.uniform(-math.pi, math.pi)
    rotation = (
        rotation_exp(axes @ np.array([across, along_arch, 0.0])) @ axes @ rotation_exp(np.array([0.0, 0.0, turn]))
    )
    centre = tissue.along(arc)[0] + axes @ np.array([0.0, rng.uniform(-0.6, 0.6), -gum * height])
    stands = pose(rotation, centre) if placed.mouth_from_connection is None else placed.mouth_from_connection
    if placed.mouth_from_connection is not None:
        arc = float(tissue.arc_length(stands[None, :3, 3])[0])
    return Site(body, slot, arc, stands, gum)


def _apart(settings: Settings, wanted: tuple[ScanBody, Placed], slot: int, drawn: list[Site], rng: Generator) -> Site:
    """A site that stands clear of those drawn so far: leaning less at each attempt. A pose asked for stays as it is."""
    for attempt in range(ATTEMPTS):
        lean = settings.lean_deg * (1.0 - attempt / ATTEMPTS)
        site = _site(settings, wanted, slot, lean, rng)
        if wanted[1].mouth_from_connection is not None or all(_gap(site, other) > CLEARANCE for other in drawn):
            break
    return site


def _gap(first: Site, second: Site) -> float:
    """Least distance of two bodies' axes less their greatest radii, mm."""
    tracks = []
    for site in (first, second):
        up = np.linspace(0.0, 1.0, 20)[:, None] * site.body.surface.vertices[:, 2].max()
        tracks.append(site.mouth_from_connection[:3, 3] + up * site.mouth_from_connection[:3, 2])
    radii = sum(np.linalg.norm(site.body.surface.vertices[:, :2], axis=1).max() for site in (first, second))
    return float(np.linalg.norm(tracks[0][:, None] - tracks[1], axis=2).min() - radii)


def _ridge_row(rng: Generator, ends: tuple[float, float]) -> FloatArray:
    half_height = 9.0
    parameters = (
        rng.uniform(4.8, 6.2), half_height, rng.uniform(0.02, 0.07), 2.0 * math.pi / rng.uniform(9.0, 20.0), *ends,
    )  # fmt: skip
    centre = np.array([0.0, 0.0, -half_height - 0.2])
    return tissue.row(tissue.RIDGE, TISSUE_FILLET, centre, np.eye(3), parameters, 0.0)


def _tooth(slot: int, rng: Generator) -> list[FloatArray]:
    """A crown: flat blade in front, broad with four cusps behind."""
    t = (slot + 0.5) * SLOT
    axes = _frame(t) @ rotation_exp(rng.normal(0.0, 0.07, 3))
    back = min(1.0, abs(t) / 35.0)
    wide = SLOT / 2.0 * rng.uniform(0.9, 0.98)
    deep, tall = 2.4 + 2.4 * back * rng.uniform(0.9, 1.1), rng.uniform(7.5, 9.5) - 1.5 * back
    base = tissue.along(t)[0] + axes @ np.array([0.0, rng.uniform(-0.4, 0.4), -1.0])
    rows = [
        _blob(base + axes @ np.array([0.0, 0.0, tall * 0.35]), axes, (wide, deep, tall * 0.62), rng.uniform(2.4, 3.2))
    ]
    if back > 0.4:
        for x, y in ((-1, -1), (-1, 1), (1, -1), (1, 1)):
            at = np.array([x * wide * 0.48, y * deep * 0.48, tall * rng.uniform(0.78, 0.88)])
            rows.append(_blob(base + axes @ at, axes, (wide * 0.45, deep * 0.45, tall * rng.uniform(0.2, 0.3)), 2.0))
    return rows


def _blob(centre: FloatArray, axes: FloatArray, semi: tuple[float, float, float], exponent: float) -> FloatArray:
    reach = 3.0 ** (0.5 - 1.0 / exponent) * max(semi)
    return tissue.row(tissue.ELLIPSOID, TISSUE_FILLET, centre, axes, (*semi, exponent), reach)


def _stump(slot: int, rng: Generator) -> list[FloatArray]:
    """A prepared tooth: tapered cylinder of 4 to 6 mm on a rounded shoulder."""
    t = (slot + 0.5) * SLOT
    axes = _frame(t) @ rotation_exp(rng.normal(0.0, 0.08, 3))
    radius, height = rng.uniform(2.0, 3.0), rng.uniform(4.5, 7.5)
    upper = radius - height * math.tan(math.radians(rng.uniform(2.0, 10.0)))
    base = tissue.along(t)[0] + axes @ np.array([0.0, 0.0, -0.8])
    shoulder = (radius + rng.uniform(0.5, 1.0), radius + 0.4, 1.6, 0.4)
    core = (radius, max(upper, 1.0), height, rng.uniform(0.3, 0.7))
    return [
        tissue.row(tissue.FRUSTUM, 0.4, base, axes, shoulder, 6.0),
        tissue.row(tissue.FRUSTUM, 0.5, base, axes, core, height + radius),
    ]


def _cuff(site: Site, rng: Generator) -> FloatArray:
    """Gum about a body, its top at the height that `site.gum` says, a little uneven."""
    vertices = site.body.surface.vertices
    height = float(vertices[:, 2].max())
    low = vertices[vertices[:, 2] < 0.4 * height]
    radius = float(np.linalg.norm((low if len(low) else vertices)[:, :2], axis=1).max()) + 1.3
    top = max(site.gum * height, 0.05)
    tilt = rotation_exp(np.array([*rng.normal(0.0, math.radians(3.0), 2), 0.0]))
    stands = site.mouth_from_connection
    depth = 5.0
    base = stands[:3, 3] + stands[:3, :3] @ (np.array([0.0, 0.0, top]) - tilt[:, 2] * depth)
    return tissue.row(
        tissue.FRUSTUM, 1.2, base, stands[:3, :3] @ tilt, (radius + 1.5, radius, depth, 0.6), depth + radius + 2.0
    )


def _clear(rows: list[FloatArray], site: Site) -> bool:
    """Whether no point of the body comes nearer to these primitives than CLEARANCE."""
    vertices = site.body.surface.vertices
    ends = np.concatenate([vertices, vertices * np.array([1.0, 1.0, 0.75]), vertices * np.array([1.0, 1.0, 0.5])])
    points = ends @ site.mouth_from_connection[:3, :3].T + site.mouth_from_connection[:3, 3]
    return bool(tissue.tissue_values(np.ascontiguousarray(points), np.array(rows)).min() > CLEARANCE)
