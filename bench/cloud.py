"""What every peer needs: points with normals from meshes, a robust point-to-plane ICP, and how well a body is shown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.spatial import cKDTree

from stylobate.core.surface import Surface
from stylobate.core.types import BoolArray, FloatArray, IntArray, LongArray
from stylobate.parts.model import ScanBody

DENSE = 20_000  # points that stand for a CAD surface
SHOWN_MM, FACING = 0.15, 0.7  # a CAD point is shown when the scan passes this near, facing its way


@dataclass(frozen=True)
class Cloud:
    """Points (n, 3) and unit normals (n, 3)."""

    points: FloatArray
    normals: FloatArray

    def taken(self, which: BoolArray | LongArray) -> Cloud:
        """Some of the points."""
        return Cloud(self.points[which], self.normals[which])


def scan_cloud(vertices: FloatArray, faces: IntArray) -> Cloud:
    """The vertices of a mesh with their area-weighted normals."""
    product = Surface(vertices, faces).corner_products()
    normals = np.zeros_like(vertices)
    for k in range(3):
        np.add.at(normals, faces[:, k], product)
    length = np.linalg.norm(normals, axis=1)
    keep = length > 0
    return Cloud(vertices[keep], normals[keep] / length[keep, None])


_BODY_CLOUDS: dict[tuple[str, int], Cloud] = {}


def body_cloud(body: ScanBody, count: int = DENSE) -> Cloud:
    """`count` points drawn evenly from a body's scan region, with the normals of their faces; kept once drawn."""
    key = (body.sha256, count)
    if key not in _BODY_CLOUDS:
        surface = body.region
        area = surface.face_areas()
        rng = np.random.default_rng(0)
        face = rng.choice(len(area), count, p=area / area.sum())
        share = rng.dirichlet(np.ones(3), count)
        points = np.einsum("nk,nkd->nd", share, surface.vertices[surface.faces[face]])
        product = surface.corner_products()[face]
        _BODY_CLOUDS[key] = Cloud(points, product / np.linalg.norm(product, axis=1, keepdims=True))
    return _BODY_CLOUDS[key]


def o3d_cloud(cloud: Cloud) -> Any:
    """The same for Open3D."""
    import open3d as o3d

    result = o3d.geometry.PointCloud(o3d.utility.Vector3dVector(cloud.points))
    result.normals = o3d.utility.Vector3dVector(cloud.normals)
    return result


def plane_icp(scan: Cloud, body: Any, start: FloatArray, reaches: tuple[float, ...], tukey: float) -> FloatArray:
    """Open3D's point-to-plane ICP with Tukey's loss from scan points to a dense CAD cloud: scan_from_connection.

    reaches: greatest distance of a pair, mm, one run for each, in which Tukey's width is a third of it, in the last
    `tukey`. The exact normals of the drawing carry the planes.
    """
    import open3d as o3d

    registration = o3d.pipelines.registration
    stop = registration.ICPConvergenceCriteria(relative_fitness=1e-8, relative_rmse=1e-8, max_iteration=60)
    connection_from_scan = np.linalg.inv(start)
    source = o3d_cloud(scan)
    for k, reach in enumerate(reaches):
        width = tukey if k == len(reaches) - 1 else reach / 3.0
        estimation = registration.TransformationEstimationPointToPlane(registration.TukeyLoss(k=width))
        found = registration.registration_icp(source, body, reach, connection_from_scan, estimation, stop)
        connection_from_scan = np.asarray(found.transformation)
    return np.asarray(np.linalg.inv(connection_from_scan))


def around(scan: Cloud, tree: cKDTree, body: ScanBody, pose: FloatArray, margin: float = 1.0) -> Cloud:
    """The scan within `margin` mm of the ball about a body at a pose."""
    low, high = body.region.vertices.min(axis=0), body.region.vertices.max(axis=0)
    centre = pose[:3, :3] @ ((low + high) / 2) + pose[:3, 3]
    which = tree.query_ball_point(centre, float(np.linalg.norm(high - low)) / 2 + margin)
    return scan.taken(np.asarray(which, dtype=np.int64))


def shown(scan: Cloud, tree: cKDTree, body: ScanBody, pose: FloatArray) -> tuple[float, float]:
    """(share of the CAD surface that the scan shows, rms distance there in mm)."""
    cloud = body_cloud(body, 2000)
    points, normals = cloud.points @ pose[:3, :3].T + pose[:3, 3], cloud.normals @ pose[:3, :3].T
    distance, index = tree.query(points, distance_upper_bound=SHOWN_MM * 3)
    near = np.isfinite(distance)
    plane = np.full(len(points), np.inf)
    there = scan.points[index[near]] - points[near]
    plane[near] = np.abs(np.einsum("ij,ij->i", there, normals[near]))
    facing = np.zeros(len(points), np.bool_)
    facing[near] = np.einsum("ij,ij->i", scan.normals[index[near]], normals[near]) > FACING
    good = facing & (plane < SHOWN_MM)
    rms = float(np.sqrt(np.mean(plane[good] ** 2))) if good.any() else np.inf
    return float(good.mean()), rms
