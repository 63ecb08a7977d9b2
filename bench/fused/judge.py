"""A scan against its truth: how true its faces are, what least squares of all points give, and what was found."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from bench.fused.scan import Made
from bench.fused.scene import Standing
from bench.fused.solids import EQUAL_TURNS, REAL_FACETS, SHAPES, surface_of
from bench.judge import Json, paired
from bench.method import Found
from stylobate.core import rigid
from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

ON_BODY = 0.12  # mm from the true body within which a point is of it
CLEAR = 0.5  # mm that such a point keeps from all others
FLAT = 0.35  # mm from the border of a plane beyond which it counts as undisturbed
BEND_DEG = 1.0  # an edge over which the normal turns by more is a border; facets of round faces have such on all sides
TUKEY, STEPS = 4.685, 12  # width in robust standard deviations (95 % efficiency), and steps of reweighting


@dataclass(frozen=True)
class Shown:
    """What a scan shows of a body: points (n, 3) in its connection's frame, and the surface point closest to each."""

    body: Surface
    points: FloatArray
    closest: Closest


def shown(surface: Surface, site: Standing) -> Shown:
    """The scan's vertices on a body, clear of gingiva and of whatever fills its corners."""
    body = surface_of(SHAPES[site.shape](REAL_FACETS))
    local = surface.moved(rigid.inverse(site.scan_from_connection)).vertices
    low, high = body.vertices.min(axis=0) - 1.0, body.vertices.max(axis=0) + 1.0
    local = local[((local > low) & (local < high)).all(axis=1)]
    closest = SurfaceTree.of(body).closest(local)
    on = np.abs(closest.distance) < ON_BODY
    if not on.all():
        on &= cKDTree(local[~on]).query(local)[0] > CLEAR
    return Shown(body, local[on], closest.at(on))


def flat_um(seen: Shown) -> tuple[float, float]:
    """Mean and standard deviation, µm, of the distance from truth to scan on planes, away from their borders."""
    away = cKDTree(_borders(seen.body)).query(seen.points)[0] > FLAT
    off = 1e3 * seen.closest.distance[away]
    return (float(off.mean()), float(off.std())) if len(off) else (np.nan, np.nan)


def _borders(body: Surface) -> FloatArray:
    """(n, 3) points along edges over which the normal turns by more than BEND_DEG."""
    import trimesh

    mesh = trimesh.Trimesh(body.vertices, body.faces, process=False)
    edges = mesh.face_adjacency_edges[mesh.face_adjacency_angles > np.radians(BEND_DEG)]
    ends = body.vertices[edges]
    share = np.linspace(0.0, 1.0, 60)[:, None, None]
    return np.asarray((ends[:, 0] * (1.0 - share) + ends[:, 1] * share).reshape(-1, 3))


def least_squares(seen: Shown) -> FloatArray:
    """(6,) ξ of the pose that Tukey's loss on the distances of all points gives, one linear step from the truth."""
    normal = seen.closest.gradient
    foot = seen.points - seen.closest.distance[:, None] * normal
    design = np.concatenate([normal, np.cross(foot, normal)], axis=1)
    weight, motion = np.ones(len(design)), np.zeros(6)
    for _ in range(STEPS):
        motion[:] = np.linalg.lstsq(design * weight[:, None], seen.closest.distance * weight, rcond=None)[0]
        left = seen.closest.distance - design @ motion
        width = TUKEY * 1.4826 * float(np.median(np.abs(left)))
        weight = np.clip(1.0 - (left / width) ** 2, 0.0, 1.0)  # square root of Tukey's weight
    return -motion


def judged(scan: Made, found: list[Found]) -> list[Json]:
    """A line for each true site. What was found without a true site near it is counted on the first."""
    pairs = paired([site.scan_from_connection for site in scan.sites], found)
    lines = []
    for k, site in enumerate(scan.sites):
        seen = shown(scan.surface, site)
        lines.append(
            {
                "table": "fused", "scene": f"{scan.figures.seed} site {k + 1}", "method": "ours",
                "seed": scan.figures.seed, "of": len(scan.sites), "body": site.shape, "flat_um": flat_um(seen),
                "least_squares": least_squares(seen).tolist(), "stray": 0 if k else len(found) - len(pairs),
                "found": against(site, found[pairs[k]]) if k in pairs else None,
            }
        )  # fmt: skip
    return lines


def against(site: Standing, found: Found) -> Json:
    """ξ with T_true = T_est · exp(ξ), at the nearest of equal turns, and what was said of it."""
    motion = rigid.inverse(found.scan_from_connection) @ site.scan_from_connection
    equal = 2.0 * np.pi / EQUAL_TURNS.get(site.shape, 1)
    motion = motion @ rigid.turn_z(-equal * np.round(rigid.turn_of(motion) / equal))
    xi = rigid.log(motion)
    assert found.covariance is not None
    return {
        "scan_body": found.scan_body, "right_part": found.scan_body == site.shape, "flags": list(found.flags),
        "xi": xi.tolist(), "turn_deg": float(np.degrees(rigid.turn_of(motion))), "u95": found.u95,
        "nees": float(xi @ np.linalg.solve(found.covariance, xi)),
    }  # fmt: skip
