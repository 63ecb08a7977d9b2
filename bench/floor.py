"""What the best possible join would reach on the pairs of bench.joins: python -m bench.floor FIRST LAST.

The oracle knows which surface is teeth, where both scans stand, and the law of all that is drawn: noise with its
seams (simulation, eq. S6), its drift as a random walk of known sizes, its scale exactly; not what was drawn. Its
error at a site is the posterior's (best linear unbiased prediction), so no linear estimate from the teeth is better. Of
more than MOST points some are taken, with as much of their white noise averaged as if all were.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass

import numpy as np
from scipy.linalg import cho_factor, cho_solve
from scipy.spatial import cKDTree

from bench.joins import drawn
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.simulate import Drift, Scene, Settings, Visit, again, draw_bodies, scene, tissue
from stylobate.simulate.drift import CORE_MM, PLATEAU_MM, SPAN_MM
from stylobate.simulate.layout import Layout, lay_out
from stylobate.simulate.making import FRAME_SHIFT_MM, _turn, streams_of

MOST = 3000
ON_TOOTH = 0.06
"""mm: a point farther from every tooth may be gingiva that moved."""
SHOWN = 0.4
"""mm from a point of one scan within which the other must show the tooth."""


@dataclass(frozen=True)
class Teeth:
    """What both scans show of the teeth, mouth frame: points (n, 3), normals (n, 3); share: of all such points."""

    points: FloatArray
    normals: FloatArray
    share: float


def scan_from_mouth(seed: int) -> FloatArray:
    """(4, 4), as the simulator draws it."""
    rng = streams_of(seed)["frame"]
    turn = _turn(rng)
    return rigid.pose(turn, rng.uniform(-FRAME_SHIFT_MM, FRAME_SHIFT_MM, 3))


def teeth(layout: Layout, scans: tuple[Scene, Scene], frames: tuple[FloatArray, FloatArray]) -> Teeth:
    """The first scan's points on teeth that the second shows as well."""
    hard = layout.rows[1 : len(layout.rows) - len(layout.sites)]
    seen = []
    for made, frame in zip(scans, frames, strict=True):
        points = np.ascontiguousarray((made.true_vertices - frame[:3, 3]) @ frame[:3, :3])
        on = (made.label < 0) & (np.abs(tissue.tissue_values(points, hard)) < ON_TOOTH)
        seen.append((points[on], made.true_normals[on] @ frame[:3, :3]))
    near = cKDTree(seen[1][0]).query(seen[0][0])[0] < SHOWN
    kept = np.flatnonzero(near)
    if len(kept) > MOST:
        kept = np.sort(np.random.default_rng(0).permutation(kept)[:MOST])
    return Teeth(seen[0][0][kept], seen[0][1][kept], len(kept) / int(near.sum()))


def noise(made: Scene, frame: FloatArray, on: Teeth) -> FloatArray:
    """(n, n) mm² of one scan's noise at the teeth."""
    points, normals = on.points @ frame[:3, :3].T + frame[:3, 3], on.normals @ frame[:3, :3].T
    whole = made.noise.covariance(points, normals)
    whole[np.diag_indices(len(points))] -= (1.0 - on.share) * made.noise.white_sd(normals) ** 2
    return np.asarray(whole)


def arcs_of(points: FloatArray, layout: Layout) -> FloatArray:
    """(n,) at which arc length each point drifts (simulate/drift.py)."""
    arcs = np.array([site.arc for site in layout.sites])
    radius = np.where(points[:, 1] >= 0.0, np.hypot(points[:, 0], points[:, 1]), np.abs(points[:, 0]))
    gaps = np.diff(arcs)
    half = np.minimum(PLATEAU_MM, 0.48 * np.minimum(np.append(gaps, np.inf), np.append(np.inf, gaps)))
    ends = layout.ends[0] - 12.0, layout.ends[1] + 12.0
    stops = np.concatenate([[ends[0]], np.stack([arcs - half, arcs + half], axis=1).ravel(), [ends[1]]])
    arc = tissue.arc_length(points) * np.clip(radius / CORE_MM, 0.0, 1.0)
    return np.asarray(np.interp(arc, stops, np.concatenate([[ends[0]], np.repeat(arcs, 2), [ends[1]]])))


def arm(points: FloatArray, about: FloatArray) -> FloatArray:
    """(n, 6, 6) motion at points (n, 3) of a small motion about `about` (n, 3)."""
    result = np.tile(np.eye(6), (len(points), 1, 1))
    for k, lever in enumerate(points - about):
        result[k, :3, 3:] = -rigid.skew(lever)
    return result


def posterior(on: Teeth, layout: Layout, scatter: FloatArray, drifts: tuple[Drift, ...]) -> FloatArray:
    """(6s, 6s) of what is left of the sites' small motions; scatter (n, n): of both scans' noise together."""
    sites = np.array([site.mouth_from_connection[:3, 3] for site in layout.sites])
    arcs = np.concatenate([arcs_of(on.points, layout), [site.arc for site in layout.sites]])
    track = np.array([tissue.along(arc)[0] for arc in arcs])
    n, middle = len(on.points), on.points.mean(axis=0)
    along = np.minimum(arcs[:, None], arcs) - (layout.ends[0] - 12.0)
    local = np.concatenate([on.normals, np.cross(on.points - track[:n], on.normals)], axis=1)
    of_sites = arm(sites, track[n:])
    crossed, own = np.zeros((6 * len(sites), n)), np.zeros((6 * len(sites),) * 2)
    for drift in drifts:
        sd = np.array([1e-3 * drift.walk_um] * 3 + [np.radians(drift.walk_deg)] * 3) / np.sqrt(SPAN_MM)
        scatter = scatter + along[:n, :n] * ((local * sd**2) @ local.T)
        crossed += np.concatenate([(of_sites[k] * sd**2) @ local.T * along[n + k, :n] for k in range(len(sites))])
        own += np.block([[(a * sd**2) @ b.T * along[n + j, n + k] for k, b in enumerate(of_sites)]
                         for j, a in enumerate(of_sites)])  # fmt: skip
    factor = cho_factor(scatter + 1e-9 * np.eye(n), lower=True)
    design = np.concatenate([on.normals, np.cross(on.points - middle, on.normals)], axis=1)
    link = cho_solve(factor, crossed.T)
    rest = np.concatenate(arm(sites, np.tile(middle, (len(sites), 1)))) - link.T @ design
    return np.asarray(own - crossed @ link + rest @ np.linalg.inv(design.T @ cho_solve(factor, design)) @ rest.T)


def floors(seed: int) -> list[tuple[float, ...]]:
    """A row a site: drift or not, and the rms shift that is left, µm: as it is, and had there been no drift."""
    bodies = draw_bodies(seed=1, count=6)
    settings, later, visit = drawn(seed)
    layout = lay_out(settings, bodies, streams_of(settings.seed)["layout"])
    scans, frames = _both(settings, later, visit)
    on = teeth(layout, scans, frames)
    scatter = sum((noise(made, frame, on) for made, frame in zip(scans, frames, strict=True)), np.zeros(()))
    rows: list[tuple[float, ...]] = []
    known = [posterior(on, layout, scatter, drifts) for drifts in ((settings.drift, later.drift), ())]
    for k in range(len(layout.sites)):
        left = [1e3 * float(np.sqrt(np.trace(one[6 * k : 6 * k + 3, 6 * k : 6 * k + 3]))) for one in known]
        rows.append((float(seed % 3 != 0), *left))
    return rows


def _both(
    settings: Settings, later: Settings, visit: Visit
) -> tuple[tuple[Scene, Scene], tuple[FloatArray, FloatArray]]:
    bodies = draw_bodies(seed=1, count=6)
    scans = scene(settings, bodies), again(later, bodies, visit)
    return scans, (scan_from_mouth(settings.seed), scan_from_mouth(visit.seed))


def main(first: int, last: int) -> None:
    """Print what is left at best, of all sites and by whether there is drift."""
    found = np.array([row for seed in range(first, last) for row in floors(seed)])
    for name, which in (("all", found[:, 0] >= 0), ("no drift", found[:, 0] == 0), ("drift", found[:, 0] == 1)):
        mean = np.sqrt((found[which] ** 2).mean(axis=0))
        print(
            f"{name:9s} {which.sum():4d} sites  rms at best {mean[1]:5.1f} µm, had there been no drift {mean[2]:.1f} µm"
        )


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
