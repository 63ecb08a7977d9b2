"""A measurement put together by hand: posts with a flat on a curved ridge. For the doors only."""

from __future__ import annotations

import numpy as np

from stylobate.core.result import (
    Alternative,
    Bounds,
    Deviation,
    Finding,
    NotShown,
    Pair,
    PartsInfo,
    Result,
    ScanInfo,
    Site,
    SiteMap,
)
from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray, IntArray

ORIGIN = np.array([10.0, -20.0, 1500.0])
RADIUS, HEIGHT, FLAT = 2.1, 8.0, 1.6


def grid_faces(rows: int, columns: int) -> IntArray:
    """Faces of a grid of vertices, row by row."""
    k = np.arange(rows * columns).reshape(rows, columns)
    a, b, c, d = (part.ravel() for part in (k[:-1, :-1], k[:-1, 1:], k[1:, 1:], k[1:, :-1]))
    return np.concatenate([np.column_stack([a, b, c]), np.column_stack([a, c, d])]).astype(np.int32)


def post(per_turn: int = 96, rows: int = 60) -> tuple[FloatArray, IntArray]:
    """A cylinder along z with a flat towards +x on its upper half and a closed top, connection frame."""
    angle = np.linspace(0, 2 * np.pi, per_turn)
    height = np.linspace(0.5, HEIGHT, rows)[:, None]
    x = np.where(height > HEIGHT / 2, np.minimum(RADIUS * np.cos(angle), FLAT), RADIUS * np.cos(angle))
    y = np.broadcast_to(RADIUS * np.sin(angle), x.shape)
    wall = np.stack([x, y, np.broadcast_to(height, x.shape)], axis=-1)
    cap = [wall[-1] * [s, s, 1.0] for s in np.linspace(1, 0, 24)[1:]]
    vertices = np.concatenate([wall, np.array(cap)])
    return vertices.reshape(-1, 3), grid_faces(len(vertices), per_turn)


def site_at(number: int, scan_from_connection: FloatArray, rng: np.random.Generator) -> Site:
    """A site whose map is a noisy post with its lowest 2 mm under the gingiva."""
    local, faces = post()
    deviation = rng.normal(0, 8, len(local)) + 25 * np.cos(np.arctan2(local[:, 1], local[:, 0])) * local[:, 2] / HEIGHT
    deviation[local[:, 2] < 2.0] = np.nan
    vertices = local @ scan_from_connection[:3, :3].T + scan_from_connection[:3, 3]
    return Site(
        site=str(number),
        scan_body="alder-tall",
        connection="alder",
        platform_diameter=4.2,
        index_order=6,
        scan_from_connection=scan_from_connection,
        covariance=np.diag([1e-6, 1e-6, 1e-6, 1e-7, 1e-7, 1e-6]),
        u95=Bounds(9.1, 0.053, 0.21),
        deviation=Deviation(int(np.isfinite(deviation).sum()), 0.8, 11.2, 24.0),
        coverage=0.83,
        alternatives=(Alternative("alder-short", 60.0, 1e300),),
        map=SiteMap(vertices, faces, deviation.astype(np.float64)),
    )


def poses(count: int) -> list[FloatArray]:
    """Connections along a half ellipse, each leaning a little its own way."""
    found = []
    for k, angle in enumerate(np.linspace(0.25, np.pi - 0.25, count) if count != 1 else [np.pi / 2]):
        lean = rotation_exp(np.array([0.15 * np.sin(3.0 * k), 0.15 * np.cos(2.0 * k), 0.0]))
        turn = rotation_exp(np.array([0.0, 0.0, angle]))
        found.append(pose(lean @ turn, ORIGIN + np.array([-26 * np.cos(angle), 34 * np.sin(angle) - 14, 0.0])))
    return found


def measurement(count: int = 3, finding: bool = False) -> tuple[Result, Scan]:
    """A result of `count` sites and the scan it claims to be of."""
    rng = np.random.default_rng(5)
    sites = [site_at(k + 1, placed, rng) for k, placed in enumerate(poses(count))]
    if finding and sites:
        advice = "Clean the scan body and scan it again."
        sites[0] = Site(**{**vars(sites[0]), "findings": (Finding("added layer", advice, 31.0, 4.0),)})
    pairs = tuple(
        Pair((a.site, b.site), float(np.linalg.norm(a.scan_from_connection[:3, 3] - b.scan_from_connection[:3, 3])),
             13.0, 11.42, 0.08)
        for k, a in enumerate(sites) for b in sites[k + 1 :]
    )  # fmt: skip
    result = Result(
        ScanInfo("arch.stl", "ab" * 32, 812334),
        PartsInfo("Harbour Street demo parts", "2026-11", "cd" * 32),
        "bridge",
        tuple(sites),
        pairs,
        (NotShown("seating", "tighten to the stated torque and confirm on a radiograph"),),
    )
    return result, ridge(sites)


def ridge(sites: list[Site]) -> Scan:
    """A horseshoe of gingiva with the posts standing in it, in local coordinates."""
    angle, across = np.meshgrid(np.linspace(-0.2, np.pi + 0.2, 300), np.linspace(-6, 6, 60), indexing="ij")
    x, y = -(26 + across) * np.cos(angle), (34 + across) * np.sin(angle) - 14
    z = 3.0 - across**2 / 6 + 0.4 * np.sin(9 * angle) * np.cos(across / 3)
    vertices, faces = [np.stack([x, y, z], axis=-1).reshape(-1, 3)], [grid_faces(*x.shape)[:, ::-1]]
    count = len(vertices[0])
    for site in sites:
        assert site.map is not None
        vertices.append(site.map.vertices - ORIGIN)
        faces.append(site.map.faces + count)
        count += len(site.map.vertices)
    surface = Surface(np.concatenate(vertices), np.concatenate(faces).astype(np.int32))
    return Scan(surface, ORIGIN, "arch.stl", "ab" * 32)
