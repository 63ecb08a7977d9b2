"""Surfaces scanned from real things (tests/data/meshes/SOURCES.md): nothing is found in them that is not there, and a
post that stands in one is measured, under the noise of another real scan.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy.spatial import cKDTree

from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.scan import read_mesh
from stylobate.simulate import demo_bodies
from tests.outside.rim import noise

trimesh = pytest.importorskip("trimesh")
MESHES = Path(__file__).parent.parent / "data" / "meshes"
NAMES = ("demosthenes-low-res.obj", "hammer.obj")
EXTENT = {NAMES[0]: 70.0, NAMES[1]: 110.0}  # mm, as no unit is stated: so long, the handle is as thick as a tooth
RMS = 0.010  # mm: dental scanners show 5 to 13 µm on a flat wafer (PLoS ONE 2017, PMC5549906)
EDGE = 0.3  # mm


@cache
def bodies() -> tuple[ScanBody, ...]:
    """Three unlike posts; more candidates would only take longer."""
    return tuple(body for body in demo_bodies() if body.id in ("alder-tall", "alder-lobed", "hazel-square"))


def folder() -> PartsFolder:
    names = sorted({body.seats_on for body in bodies()})
    return PartsFolder("demo", "1", "", "", tuple(Connection(name, "other", 1, 4.2) for name in names), bodies())


@cache
def surface_of(name: str) -> Surface:
    surface = read_mesh(MESHES / name).surface
    size = float(np.ptp(surface.vertices, axis=0).max())
    return Surface((surface.vertices - surface.vertices.mean(axis=0)) * EXTENT[name] / size, surface.faces)


def scan_of(surface: Surface) -> Scan:
    return Scan(surface, np.zeros(3), "real", "0")


def top_of(name: str, centre: tuple[float, float], reach: float) -> int:
    """The vertex highest in y within `reach` mm of (x, z)."""
    vertices = surface_of(name).vertices
    near = np.linalg.norm(vertices[:, [0, 2]] - centre, axis=1) < reach
    return int(np.argmax(np.where(near, vertices[:, 1], -np.inf)))


def with_post(name: str, body: ScanBody, place: int, sunk: float, seed: int) -> tuple[Surface, FloatArray]:
    """The post stands in the surface at the vertex `place`, along its normal, `sunk` mm deep: pose and joined surface.

    What lies inside the other is taken away on both sides, as a scan would show it.
    """
    rest = surface_of(name)
    mesh = trimesh.Trimesh(rest.vertices, rest.faces, process=False)
    normals = np.asarray(mesh.vertex_normals)
    z = normals[place]
    x = np.cross(z, [0.3, 0.5, 0.8])
    x /= np.linalg.norm(x)
    pose = rigid.pose(np.stack([x, np.cross(z, x), z], axis=1), rest.vertices[place] - sunk * z)
    points, faces = trimesh.remesh.subdivide_to_size(body.surface.vertices, body.surface.faces, EDGE)
    post = trimesh.Trimesh(points, faces, process=True)
    noisy = post.vertices + noise(np.asarray(post.vertices), seed, RMS)[:, None] * post.vertex_normals
    placed = noisy @ pose[:3, :3].T + pose[:3, 3]
    _, near = cKDTree(rest.vertices).query(placed)
    outside = np.einsum("ij,ij->i", placed - rest.vertices[near], normals[near]) > 0.0
    local = (rest.vertices - pose[:3, 3]) @ pose[:3, :3]
    off = SurfaceTree.of(body.surface).closest(local, 3.0)
    free = ~((off.face >= 0) & (off.distance < 0.0)) & ~(
        (np.hypot(*local[:, :2].T) < 1.5) & (np.abs(local[:, 2]) < 4.0)
    )
    kept = [rest.faces[free[rest.faces].all(axis=1)], post.faces[outside[post.faces].all(axis=1)] + len(rest.vertices)]
    return Surface(np.concatenate([rest.vertices, placed]), np.concatenate(kept).astype(np.int32)), pose


@pytest.mark.parametrize("name", NAMES)
def test_no_scan_body_is_found_where_none_is(name: str) -> None:
    assert measure(scan_of(surface_of(name)), folder(), maps=False).sites == ()


@pytest.mark.parametrize(("name", "centre", "reach"), [(NAMES[0], (0.0, 0.0), 60.0), (NAMES[1], (0.0, -20.0), 2.0)])
def test_a_post_in_a_real_surface_is_found_and_measured(name: str, centre: tuple[float, float], reach: float) -> None:
    """On the bust's highest point, and in the middle of the hammer's handle."""
    body = bodies()[0]
    joined, pose = with_post(name, body, top_of(name, centre, reach), 1.5, 17)
    sites = measure(scan_of(joined), folder(), maps=False).sites
    site = min(sites, key=lambda s: float(np.linalg.norm(s.scan_from_connection[:3, 3] - pose[:3, 3])))
    assert site.scan_body == body.id
    xi = rigid.log(rigid.inverse(site.scan_from_connection) @ pose)
    # Three times a 95 % bound is beyond six standard deviations of a true one.
    assert 1e3 * np.linalg.norm(xi[:3]) < 3 * site.u95.platform_um
    assert np.degrees(np.linalg.norm(xi[3:5])) < 3 * site.u95.axis_deg
    assert site.u95.platform_um < 50.0
    assert 5.0 < site.deviation.rms_um < 15.0  # the rim's noise, and no more
