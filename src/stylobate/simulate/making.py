"""Truth to scan: the order in which a scene is made."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.rigid import inverse, pose
from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray
from stylobate.parts.model import ScanBody
from stylobate.simulate import faults as fault
from stylobate.simulate.bodies import draw_body
from stylobate.simulate.coarsen import coarsened
from stylobate.simulate.drift import drifted, walk_of
from stylobate.simulate.edges import SharpEdges, rounded, sharp_edges
from stylobate.simulate.field import Field, Post, post_distance, shape_of
from stylobate.simulate.layout import Layout, Site, lay_out
from stylobate.simulate.meshing import Mesh, mesh_of
from stylobate.simulate.noise import NoiseModel, model_of
from stylobate.simulate.settings import Fault, Settings
from stylobate.simulate.unseen import hidden, index_features, keep, manifold, vertex_areas

STREAMS = ("layout", "made", "faults", "lattice", "unseen", "drift", "frame", "noise", "merge")
ON_SHAPE_MM = 1e-5
ADAPTIVE_FACTOR = 3.0
SCAN_FLOOR_MM = -3.2
FLOOR_WAVE_MM = 0.6
FRAME_SHIFT_MM = 60.0

Generator = np.random.Generator


@dataclass(frozen=True)
class Truth:
    """What stands at one site.

    site: its number along the arch. body: what the scan shows; `expected` is the body that the user will name (another
    one where the fault says so). scan_from_connection: the body's pose as the scan shows it, drift included.
    scan_from_implant: the connection below, which differs where the body is unseated. gum_mm: height of the gum in the
    connection frame. made_um: diameter and height of the made body above the drawing's.
    """

    site: str
    body: ScanBody
    expected: str
    scan_from_connection: FloatArray
    scan_from_implant: FloatArray
    gum_mm: float
    made_um: tuple[float, float]
    faults: tuple[Fault, ...]


@dataclass(frozen=True)
class Scene:
    """A simulated scan with its truth; arrays run over the vertices of `surface`, all in scan coordinates.

    label: (n,) index into sites, −1 for tissue, teeth and the fillet at the gum. true_vertices (n, 3): before noise.
    true_normals (n, 3): of the noise-free surface. as_drawn (n,): shaped by the body's drawing alone (no chip or lump).
    rough_sd (n,): extra white sd in mm where a fault says so. noise: the model that made the noise.
    """

    settings: Settings
    surface: Surface
    sites: tuple[Truth, ...]
    label: IntArray
    true_vertices: FloatArray
    true_normals: FloatArray
    as_drawn: BoolArray
    rough_sd: FloatArray
    noise: NoiseModel


@dataclass(frozen=True)
class _State:
    """The mesh on its way: mouth frame, one row a vertex."""

    vertices: FloatArray
    normals: FloatArray
    owner: IntArray
    as_drawn: BoolArray
    rough: FloatArray
    faces: IntArray

    def taken(self, faces: IntArray) -> _State:
        """Only the vertices that `faces` use."""
        used = np.zeros(len(self.vertices), np.bool_)
        used[faces] = True
        number = (np.cumsum(used) - 1).astype(np.int32)
        return _State(
            self.vertices[used], self.normals[used], self.owner[used], self.as_drawn[used], self.rough[used],
            number[faces],
        )  # fmt: skip


def scene(settings: Settings, bodies: tuple[ScanBody, ...]) -> Scene:
    """Make the scan that `settings` describe, with bodies drawn or named from `bodies`. Same settings, same scan.

    Raises UsageError where the settings do not fit each other or the bodies.
    """
    streams = streams_of(settings.seed)
    layout = lay_out(settings, bodies, streams["layout"])
    return scanned(settings, layout, bodies, streams)


def streams_of(seed: int) -> dict[str, Generator]:
    """A generator for each thing that is drawn, so that one leaves the others alone."""
    return {name: np.random.default_rng([seed, k]) for k, name in enumerate(STREAMS)}


def scanned(
    settings: Settings, layout: Layout, bodies: tuple[ScanBody, ...], streams: dict[str, Generator],
    moved: Callable[[FloatArray], FloatArray] | None = None,
) -> Scene:  # fmt: skip
    """Scan a layout. moved: how far (n,) tissue at points (n, 3), mouth frame, has moved along its normals, mm."""
    by_site = [tuple(f for f in settings.faults if f.site == k + 1) for k in range(len(layout.sites))]
    shown = [_shown(s, by_site[k], bodies, streams["faults"]) for k, s in enumerate(layout.sites)]
    edges = [sharp_edges(body.surface) for body in shown]
    fillet = float(streams["layout"].uniform(*settings.fillet_mm))
    posts = tuple(_post(settings, site, shown[k], edges[k], by_site[k], streams) for k, site in enumerate(layout.sites))
    standing = [k for k, site in enumerate(layout.sites) if site.stands]
    field = Field(layout.rows, tuple(posts[k] for k in standing), fillet)
    mesh = mesh_of(field, layout.low, layout.high, settings.edge_mm, _turn(streams["lattice"]))
    owner = np.array([*standing, -1], np.int32)[mesh.owner]
    state = _trimmed(replace(mesh, owner=owner), posts, layout)
    if moved is not None:
        soft = (state.owner < 0)[:, None] * state.normals
        state = replace(state, vertices=state.vertices + moved(state.vertices)[:, None] * soft)
    if settings.adaptive:
        faces = coarsened(state.vertices, state.normals, state.faces, state.owner, settings.edge_mm, ADAPTIVE_FACTOR)
        state = replace(state, faces=faces).taken(faces)
    for k, site in enumerate(layout.sites):
        state = _shaped(settings, state, k, site, posts[k], shown[k], edges[k], by_site[k], streams["faults"])
    wanted = np.ones(len(state.vertices), np.bool_)
    area = vertex_areas(state.vertices, state.faces)
    for k in range(len(posts)):
        mine = np.flatnonzero(state.owner == k).astype(np.int32)
        wanted[mine[_unseen(settings, state, mine, area[mine], posts[k], by_site[k], streams["unseen"])]] = False
    state = state.taken(keep(state.faces, wanted))
    return _finished(settings, layout, state, shown, posts, by_site, streams)


def _turn(rng: Generator) -> FloatArray:
    """(3, 3) rotation drawn uniformly."""
    q, r = np.linalg.qr(rng.normal(size=(3, 3)))
    q = q * np.sign(np.diag(r))
    q[:, 0] *= np.sign(np.linalg.det(q))
    return np.asarray(q)


def _shown(site: Site, faults: tuple[Fault, ...], bodies: tuple[ScanBody, ...], rng: Generator) -> ScanBody:
    """The body that stands there: not the expected one where a fault says so."""
    causes = {f.cause for f in faults}
    if "no part fits" in causes:
        return draw_body(rng, "not in the folder", site.body.seats_on)
    if "other part fits better" in causes:
        others = [body for body in bodies if body.id != site.body.id]
        if others:
            return others[int(rng.integers(len(others)))]
    return site.body


def _post(
    settings: Settings, site: Site, body: ScanBody, edges: SharpEdges, faults: tuple[Fault, ...],
    streams: dict[str, Generator],
) -> Post:  # fmt: skip
    vertices = body.surface.vertices
    radius, top = float(np.linalg.norm(vertices[:, :2], axis=1).max()), float(vertices[:, 2].max())
    made = streams["made"].normal(0.0, settings.made_um * 1e-3, 2)
    stretch = 1.0 + made / np.array([2.0 * radius, top])
    balls = fault.spheres(faults, body, edges, site.gum * top, streams["faults"])
    return Post(shape_of(body), site.mouth_from_connection, radius + 0.5, top + 0.5, stretch, balls.cuts, balls.blobs)


def _trimmed(mesh: Mesh, posts: tuple[Post, ...], layout: Layout) -> _State:
    """What the scanner takes in: everything above a ragged line on the ridge, nothing of the solids' undersides."""
    v = mesh.vertices
    wave = np.sin(v[:, 0] * 0.9 + 1.3 * np.sin(v[:, 1] * 0.7)) + np.sin(v[:, 1] * 1.1)
    inside = np.all((v > layout.low + 0.3) & (v < layout.high - 0.3), axis=1)
    floor = SCAN_FLOOR_MM if layout.low[2] > -4.5 else layout.low[2] + 0.5
    wanted = (mesh.owner >= 0) | (inside & (v[:, 2] > floor + FLOOR_WAVE_MM * wave / 2.0))
    as_drawn = np.ones(len(v), np.bool_)
    for k, post in enumerate(posts):
        if len(post.cuts) or len(post.blobs):
            mine = np.flatnonzero(mesh.owner == k)
            plain = replace(post, cuts=np.empty((0, 4)), blobs=np.empty((0, 4)))
            as_drawn[mine] = np.abs(post_distance(plain, v[mine])[0]) < ON_SHAPE_MM
    state = _State(v, mesh.normals, mesh.owner, as_drawn, np.zeros(len(v)), mesh.faces)
    return state.taken(keep(manifold(mesh.faces, len(v)), wanted))


def _shaped(
    settings: Settings, state: _State, k: int, site: Site, post: Post, body: ScanBody, edges: SharpEdges,
    faults: tuple[Fault, ...], rng: Generator,
) -> _State:  # fmt: skip
    """Edges rounded and faults applied, in the connection frame of one body."""
    mine = np.flatnonzero(state.owner == k).astype(np.int32)
    turn, shift = post.mouth_from_connection[:3, :3], post.mouth_from_connection[:3, 3]
    scale = np.array([post.stretch[0], post.stretch[0], post.stretch[1]])
    points, normals = (state.vertices[mine] - shift) @ turn / scale, state.normals[mine] @ turn
    top = float(body.surface.vertices[:, 2].max())
    gum = site.gum * top
    drawn = state.as_drawn[mine]
    worn = fault.worn_radius(faults, body, edges, points, settings.rounding_mm, gum, rng) * drawn
    points, normals = rounded(points, normals, edges, np.where(drawn, settings.rounding_mm, 0.0), worn)
    points, normals, rough = fault.deformed(faults, points * scale, normals, gum, top, rng)
    vertices, turned, extra = state.vertices.copy(), state.normals.copy(), state.rough.copy()
    vertices[mine], turned[mine], extra[mine] = points @ turn.T + shift, normals @ turn.T, rough
    return replace(state, vertices=vertices, normals=turned, rough=extra)


def _unseen(
    settings: Settings, state: _State, mine: IntArray, area: FloatArray, post: Post, faults: tuple[Fault, ...],
    rng: Generator,
) -> BoolArray:  # fmt: skip
    """Which of one body's vertices are not shown."""
    share = float(rng.uniform(*settings.unseen))
    turn, shift = post.mouth_from_connection[:3, :3], post.mouth_from_connection[:3, 3]
    points, normals = (state.vertices[mine] - shift) @ turn, state.normals[mine] @ turn
    for one in faults:
        if one.cause == "missing surface":
            share = max(share, one.size)
    gone = hidden(points, normals, area, share, rng)
    if any(one.cause == "index ambiguous" for one in faults):
        gone |= index_features(points, post.shape)
    return gone


def _finished(
    settings: Settings, layout: Layout, state: _State, shown: list[ScanBody], posts: tuple[Post, ...],
    by_site: list[tuple[Fault, ...]], streams: dict[str, Generator],
) -> Scene:  # fmt: skip
    """Drift, scan frame, noise; then the merging of vertices if asked for."""
    walk = walk_of(settings.drift, layout.ends, streams["drift"])
    arcs = np.array([site.arc for site in layout.sites])
    points, normals = drifted(walk, state.vertices, state.normals, state.owner, arcs)
    frame = _turn(streams["frame"])
    shift = streams["frame"].uniform(-FRAME_SHIFT_MM, FRAME_SHIFT_MM, 3)
    scan_from_mouth = pose(frame, shift) if settings.spin else np.eye(4)
    points = points @ scan_from_mouth[:3, :3].T + scan_from_mouth[:3, 3]
    normals = normals @ scan_from_mouth[:3, :3].T
    middle = points.mean(axis=0) if len(points) else np.zeros(3)
    noise = model_of(settings.noise, scan_from_mouth[:3, 2], middle, streams["noise"])
    moved = noise.sample(points, normals, streams["noise"]) + streams["noise"].normal(size=len(points)) * state.rough
    sites = []
    for k, site in enumerate(layout.sites):
        shows = scan_from_mouth @ walk.site_motion(site.arc) @ site.mouth_from_connection
        below = shows @ inverse(fault.lift(by_site[k], streams["faults"]))
        size = np.array([2.0 * (posts[k].radius - 0.5), posts[k].top - 0.5]) * (posts[k].stretch - 1.0) * 1e3
        gum = site.gum * float(shown[k].surface.vertices[:, 2].max())
        sites.append(
            Truth(str(k + 1), shown[k], site.body.id, shows, below, gum, (float(size[0]), float(size[1])), by_site[k])
        )
    surface = Surface(points + moved[:, None] * normals, state.faces)
    made = Scene(settings, surface, tuple(sites), state.owner, points, normals, state.as_drawn, state.rough, noise)
    return made if settings.decimate >= 1.0 else _decimated(made)


def _decimated(made: Scene) -> Scene:
    """The scan stored with fewer vertices: short edges merged until about the share asked for is left."""
    edge = made.settings.edge_mm / math.sqrt(made.settings.decimate)
    faces = coarsened(made.true_vertices, made.true_normals, made.surface.faces, made.label, edge, 1.0)
    used = np.zeros(len(made.label), np.bool_)
    used[faces] = True
    number = (np.cumsum(used) - 1).astype(np.int32)
    return replace(
        made, surface=Surface(made.surface.vertices[used], number[faces]), label=made.label[used],
        true_vertices=made.true_vertices[used], true_normals=made.true_normals[used], as_drawn=made.as_drawn[used],
        rough_sd=made.rough_sd[used],
    )  # fmt: skip
