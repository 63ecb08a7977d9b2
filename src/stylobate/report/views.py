"""How scans and sites are looked at in every picture: the arch from above, a scan body from the side."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Protocol

import numpy as np

from stylobate.core.result import SiteMap
from stylobate.core.rigid import inverse, pose
from stylobate.core.surface import Scan
from stylobate.core.types import ByteArray, FloatArray, IntArray
from stylobate.report.colours import colours
from stylobate.report.raster import View, draw

PANEL = "#f1efe8"
PLASTER = (226, 217, 200)
MEASURED = (122, 176, 178)
ELEVATION_DEG = 18.0


class Mapped(Protocol):
    """A site with its coloured surface."""

    @property
    def scan_from_connection(self) -> FloatArray:
        """(4, 4) pose."""

    @property
    def map(self) -> SiteMap | None:
        """The surface around the site, None where there is none."""


def from_above(sites: Sequence[Mapped], scan: Scan) -> FloatArray:
    """View whose z is the mean axis, whose x is the long side of the scan, and which has the first site on the left."""
    axes = [site.scan_from_connection[:3, 2] for site in sites]
    up = np.sum(axes, axis=0) if axes else np.array([0.0, 0.0, 1.0])
    length = float(np.linalg.norm(up))
    up = up / length if length > 1e-6 else axes[0]
    across = scan.surface.vertices - np.outer(scan.surface.vertices @ up, up)
    right = np.linalg.eigh(np.cov(across.T))[1][:, -1]
    right = right - (right @ up) * up
    right /= np.linalg.norm(right)
    if len(sites) > 1:
        along = sites[-1].scan_from_connection[:3, 3] - sites[0].scan_from_connection[:3, 3]
        right = right if right @ along >= 0 else -right
    return pose(np.array([right, np.cross(up, right), up]), np.zeros(3))


def with_bodies(
    sites: Sequence[Mapped], scan: Scan, view_from_local: FloatArray
) -> tuple[FloatArray, IntArray, ByteArray]:
    """The scan in plaster colour and, a hair nearer to the viewer, what was measured of it."""
    nearer = 0.03 * view_from_local[2, :3]
    points: list[FloatArray] = [scan.surface.vertices]
    faces: list[IntArray] = [scan.surface.faces]
    for site in sites:
        if site.map is None:
            continue
        on_body = np.isfinite(site.map.deviation_um)[site.map.faces].all(axis=1)
        faces.append((site.map.faces[on_body] + sum(map(len, points))).astype(np.int32))
        points.append(site.map.vertices - scan.origin + nearer)
    vertices = np.concatenate(points)
    painted = np.tile(np.array(MEASURED, np.uint8), (len(vertices), 1))
    painted[: len(scan.surface.vertices)] = PLASTER
    return vertices, np.concatenate(faces), painted


def extent(site: Mapped) -> tuple[float, float, float]:
    """Lowest and highest z and largest radius of the measured surface, connection frame, mm."""
    if site.map is None or not np.isfinite(site.map.deviation_um).any():
        return 0.0, 1.0, 1.0
    local = in_connection(site, site.map)[np.isfinite(site.map.deviation_um)]
    return float(local[:, 2].min()), float(local[:, 2].max()), float(np.hypot(local[:, 0], local[:, 1]).max())


def in_connection(site: Mapped, site_map: SiteMap) -> FloatArray:
    connection_from_scan = inverse(site.scan_from_connection)
    return np.asarray(site_map.vertices @ connection_from_scan[:3, :3].T + connection_from_scan[:3, 3])


def side_view(site: Mapped, site_map: SiteMap, azimuth_deg: float, size: tuple[int, int], scale: float) -> ByteArray:
    """The coloured surface with the connection's axis upright, from `azimuth_deg` about it (0: from the index mark)."""
    low, high, _ = extent(site)
    azimuth, elevation = math.radians(azimuth_deg), math.radians(ELEVATION_DEG)
    towards = np.array(
        [math.cos(azimuth) * math.cos(elevation), math.sin(azimuth) * math.cos(elevation), math.sin(elevation)]
    )
    right = np.array([-math.sin(azimuth), math.cos(azimuth), 0.0])
    rotation = np.array([right, np.cross(towards, right), towards])
    middle = np.array([0.0, 0.0, (low + high) / 2])
    view = View(pose(rotation, -rotation @ middle), size, scale)
    painted = colours(site_map.deviation_um)
    return draw(view, in_connection(site, site_map), site_map.faces, painted, ambient=0.55, background=PANEL)
