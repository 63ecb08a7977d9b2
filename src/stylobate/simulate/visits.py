"""The same mouth scanned again: other bodies or none, gingiva that has moved, another frame; and a bite scan."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import ScanBody
from stylobate.simulate import tissue
from stylobate.simulate.layout import Layout, Site, lay_out
from stylobate.simulate.making import Scene, scanned, streams_of
from stylobate.simulate.noise import wave_sum, waves
from stylobate.simulate.settings import Settings
from stylobate.simulate.unseen import keep

PALATE_SHARE = 0.2
"""How far the palate moves, of what the gingiva by the teeth does (invented: it is firm)."""
MARGIN_MM = 1.0
"""Distance from a tooth over which the gingiva's movement grows from nothing to all (invented)."""
BUCCAL = 0.35
"""Least component of the normal towards the cheek of what a bite scan shows (invented)."""


@dataclass(frozen=True)
class Visit:
    """How the mouth looks the second time.

    seed: of everything that is drawn anew. standing: sites (from 1) whose body stands. caps: healing caps at the
    others. gum_um: sd of how far the gingiva has moved along its normal, as a whole and from place to place; gum_mm:
    over which length the latter varies.
    """

    seed: int
    standing: tuple[int, ...] = ()
    caps: bool = False
    gum_um: float = 0.0
    gum_mm: float = 4.0


def again(settings: Settings, bodies: tuple[ScanBody, ...], visit: Visit) -> Scene:
    """Scan the mouth that `settings` describe a second time; noise, drift, mesh and frame are drawn anew.

    `settings` may differ from the first scan's in noise, drift, edge_mm, unseen and decimate. The truths of all sites
    stand in the scene, whether a body stands there or not.
    """
    layout = lay_out(settings, bodies, streams_of(settings.seed)["layout"])
    streams = streams_of(visit.seed) | {
        name: rng for name, rng in streams_of(settings.seed).items() if name in ("made", "faults")
    }
    rng = np.random.default_rng([visit.seed, 100])
    first_cuff = len(layout.rows) - len(layout.sites)
    hard, soft = layout.rows[1 + settings.palate : first_cuff], layout.rows[: 1 + settings.palate]
    rows = [layout.rows[:first_cuff]]
    sites = []
    for k, site in enumerate(layout.sites):
        stands = k + 1 in visit.standing
        sites.append(replace(site, stands=stands))
        if stands:
            rows.append(layout.rows[first_cuff + k][None])
        elif visit.caps:
            rows.append(_cap(site, rng)[None])
    changed = Layout(tuple(sites), np.concatenate(rows), layout.low, layout.high, layout.ends)
    vectors, phases = waves("squared-exponential", visit.gum_mm, rng)
    mean = rng.normal()

    def moved(points: FloatArray) -> FloatArray:
        share = np.ones(len(points))
        if len(hard):
            share = np.clip(tissue.tissue_values(points, hard) / MARGIN_MM, 0.0, 1.0)
        if settings.palate:
            ridge, vault = (tissue.tissue_values(points, soft[k : k + 1]) for k in range(2))
            share = np.where(vault < ridge, PALATE_SHARE, 1.0) * share
        return np.asarray(1e-3 * visit.gum_um * share * (mean + wave_sum(points, vectors, phases)))

    return scanned(settings, changed, bodies, streams, moved)


def _cap(site: Site, rng: np.random.Generator) -> FloatArray:
    """A healing cap: a low round post, 1 to 2.5 mm above the gum."""
    stands = site.mouth_from_connection
    radius = float(rng.uniform(1.9, 2.6))
    height = site.gum * float(site.body.surface.vertices[:, 2].max()) + float(rng.uniform(1.0, 2.5))
    return tissue.row(
        tissue.FRUSTUM, 0.4, stands[:3, 3], stands[:3, :3], (radius, radius + 0.2, height, 0.4), height + radius + 1.0
    )


def bite(upper: Scene, lower: Scene, mouth_from_lower: FloatArray, frame: FloatArray) -> Surface:
    """What is seen of both jaws from the cheek with the teeth closed, in a frame of its own: one surface.

    upper, lower: scanned with spin=False. mouth_from_lower: where the lower jaw stands to the upper. frame:
    scan_from_mouth, (4, 4).
    """
    parts = [_buccal(upper), _buccal(lower).moved(mouth_from_lower)]
    count = len(parts[0].vertices)
    both = Surface(
        np.concatenate([part.vertices for part in parts]), np.concatenate([parts[0].faces, parts[1].faces + count])
    )
    return both.moved(frame)


def _buccal(made: Scene) -> Surface:
    points, normals = made.true_vertices, made.true_normals
    out = np.stack([points[:, 0], np.maximum(points[:, 1], 0.0), np.zeros(len(points))], axis=1)
    out /= np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-9)
    seen = np.einsum("ij,ij->i", out, normals) > BUCCAL
    faces = keep(made.surface.faces, seen)
    used = np.zeros(len(points), np.bool_)
    used[faces] = True
    number = (np.cumsum(used) - 1).astype(np.int32)
    return Surface(made.surface.vertices[used], number[faces])
