"""Peers from a near start: the body is known, the pose is off by START_MM and START_DEG."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.spatial import cKDTree

from bench.cloud import Cloud, around, body_cloud, o3d_cloud, plane_icp, scan_cloud
from bench.method import Found
from bench.scenes import Task
from stylobate.core.types import FloatArray
from stylobate.parts.model import ScanBody


@dataclass(frozen=True)
class Tuning:
    """Searched by `python -m bench.tune`. reaches: greatest distance of a pair, mm, one run for each; tukey: mm.

    cell: side of the cells in which points are averaged first, mm; neighbours: that give a point its covariance.
    """

    reaches: tuple[float, ...] = (1.0, 0.3)
    tukey: float = 0.05
    cell: float = 0.02
    neighbours: int = 15


PLANE = Tuning()
GICP = Tuning()
GICP_PLANE = Tuning()
TRIMESH = Tuning()


def open3d_plane(task: Task, tuning: Tuning = PLANE) -> list[Found]:
    """Open3D: point-to-plane ICP with Tukey's loss."""

    def fit(scan: Cloud, body: ScanBody, start: FloatArray) -> FloatArray:
        return plane_icp(scan, o3d_cloud(body_cloud(body)), start, tuning.reaches, tuning.tukey)

    return _each(task, fit)


def gicp(task: Task, tuning: Tuning = GICP) -> list[Found]:
    """small_gicp: generalized ICP."""
    return _small(task, tuning, "GICP")


def gicp_plane(task: Task, tuning: Tuning = GICP_PLANE) -> list[Found]:
    """small_gicp: point-to-plane ICP."""
    return _small(task, tuning, "PLANE_ICP")


def _small(task: Task, tuning: Tuning, kind: str) -> list[Found]:
    import small_gicp

    def fit(scan: Cloud, body: ScanBody, start: FloatArray) -> FloatArray:
        target, tree = small_gicp.preprocess_points(body_cloud(body).points, tuning.cell, tuning.neighbours, 2)
        source, _ = small_gicp.preprocess_points(scan.points, tuning.cell, tuning.neighbours, 2)
        connection_from_scan = np.linalg.inv(start)
        for reach in tuning.reaches:
            found = small_gicp.align(
                target, source, tree, connection_from_scan, registration_type=kind, max_correspondence_distance=reach,
                num_threads=2, max_iterations=80, rotation_epsilon=1e-6, translation_epsilon=1e-6,
            )  # fmt: skip
            connection_from_scan = np.asarray(found.T_target_source)
        return np.asarray(np.linalg.inv(connection_from_scan))

    return _each(task, fit)


def trimesh_icp(task: Task, tuning: Tuning = TRIMESH) -> list[Found]:
    """trimesh: point-to-point ICP; pairs farther than a reach are left out before each run, as it weighs all alike."""
    from trimesh.registration import icp

    def fit(scan: Cloud, body: ScanBody, start: FloatArray) -> FloatArray:
        points = body_cloud(body).points
        tree = cKDTree(points)
        connection_from_scan = np.linalg.inv(start)
        for reach in tuning.reaches:
            local = scan.points @ connection_from_scan[:3, :3].T + connection_from_scan[:3, 3]
            near = local[tree.query(local, distance_upper_bound=reach)[0] < np.inf]
            if len(near) < 50:
                break
            step, _, _ = icp(  # type: ignore[no-untyped-call]
                near, points, threshold=1e-9, max_iterations=60, reflection=False, scale=False
            )
            connection_from_scan = step @ connection_from_scan
        return np.asarray(np.linalg.inv(connection_from_scan))

    return _each(task, fit)


def _each(task: Task, fit: Any) -> list[Found]:
    scan = scan_cloud(task.vertices, task.faces)
    tree = cKDTree(scan.points)
    found = []
    for name, start in task.starts:
        body = task.parts.scan_body(name)
        pose = fit(around(scan, tree, body, start), body, start)
        found.append(Found(name, pose))
    return found
