"""Peers without a hint: a general-purpose global registration for each candidate body, ICP, best accepted, repeat.

None of them is made for an unknown number of unknown objects, so each gets the same loop about it: register every
candidate body to what is left of the scan, refine by robust point-to-plane ICP, keep the best if the scan shows enough
of it, take its surface away, and go on until nothing is accepted twice running.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.spatial import cKDTree

from bench.cloud import Cloud, around, body_cloud, o3d_cloud, plane_icp, scan_cloud, shown
from bench.method import Found
from bench.scenes import Task
from stylobate.core.types import FloatArray
from stylobate.parts.model import ScanBody

MOST_SITES = 10
TAKEN_MM = 0.5  # the scan this near to an accepted body is taken away


@dataclass(frozen=True)
class Tuning:
    """Settings of the loop; `python -m bench.tune` searches them on seeds of their own.

    voxel: of the clouds for features, mm; normals as the mesh gives them; feature: radius of FPFH in voxels; pair:
    greatest distance of a pair in RANSAC and FGR, in voxels; iterations: of RANSAC; shown: least share of the CAD
    surface; rms: most, mm; tukey: of the ICP, mm.
    """

    voxel: float = 0.3
    feature: float = 6.0
    pair: float = 1.5
    iterations: int = 200_000
    shown: float = 0.25
    rms: float = 0.045
    tukey: float = 0.05


RANSAC = Tuning()
FGR = Tuning()
KISS = Tuning()

Global = Callable[[Cloud, ScanBody, Tuning], FloatArray | None]


def ransac(task: Task, tuning: Tuning = RANSAC) -> list[Found]:
    """Open3D: FPFH and RANSAC."""
    return _loop(task, _Open3D(_ransac), tuning)


def fgr(task: Task, tuning: Tuning = FGR) -> list[Found]:
    """Open3D: FPFH and fast global registration."""
    return _loop(task, _Open3D(_fgr), tuning)


def kiss(task: Task, tuning: Tuning = KISS) -> list[Found]:
    """KISS-Matcher, with its own features and solver."""
    import kiss_matcher

    def match(scan: Cloud, body: ScanBody, tuning: Tuning) -> FloatArray | None:
        matcher = kiss_matcher.KISSMatcher(kiss_matcher.KISSMatcherConfig(voxel_size=tuning.voxel))
        source = np.ascontiguousarray(body_cloud(body).points, dtype=np.float32)
        found = matcher.estimate(source, np.ascontiguousarray(scan.points, dtype=np.float32))
        if not found.valid:
            return None
        pose = np.eye(4)
        pose[:3, :3], pose[:3, 3] = np.asarray(found.rotation), np.asarray(found.translation).ravel()
        return pose

    return _loop(task, match, tuning)


class _Open3D:
    """Features of scan and bodies, computed once each, and one of Open3D's two global registrations."""

    def __init__(self, register: Callable[[Any, Any, Any, Any, Tuning], Any]) -> None:
        self.register = register
        self.bodies: dict[str, tuple[Any, Any]] = {}
        self.scan: tuple[Cloud, tuple[Any, Any]] | None = None

    def __call__(self, scan: Cloud, body: ScanBody, tuning: Tuning) -> FloatArray | None:
        if body.id not in self.bodies:
            self.bodies[body.id] = self._prepared(body_cloud(body), tuning)
        source, source_feature = self.bodies[body.id]
        if self.scan is None or self.scan[0] is not scan:
            self.scan = (scan, self._prepared(scan, tuning))
        target, target_feature = self.scan[1]
        if len(target.points) < 50:
            return None
        found = self.register(source, target, source_feature, target_feature, tuning)
        pose = np.asarray(found.transformation)
        return None if np.allclose(pose, np.eye(4)) else pose

    @staticmethod
    def _prepared(cloud: Cloud, tuning: Tuning) -> tuple[Any, Any]:
        import open3d as o3d

        thin = o3d_cloud(cloud).voxel_down_sample(tuning.voxel)
        thin.normalize_normals()
        search = o3d.geometry.KDTreeSearchParamHybrid(radius=tuning.feature * tuning.voxel, max_nn=120)
        registration: Any = o3d.pipelines.registration  # its stubs name an argument that need not be given
        return thin, registration.compute_fpfh_feature(thin, search)


def _ransac(source: Any, target: Any, one: Any, two: Any, tuning: Tuning) -> Any:
    import open3d as o3d

    registration = o3d.pipelines.registration
    pair = tuning.pair * tuning.voxel
    checks = [
        registration.CorrespondenceCheckerBasedOnEdgeLength(0.9),
        registration.CorrespondenceCheckerBasedOnDistance(pair),
    ]
    return registration.registration_ransac_based_on_feature_matching(
        source, target, one, two, False, pair, registration.TransformationEstimationPointToPoint(False), 3, checks,
        registration.RANSACConvergenceCriteria(tuning.iterations, 0.9999),
    )  # fmt: skip


def _fgr(source: Any, target: Any, one: Any, two: Any, tuning: Tuning) -> Any:
    import open3d as o3d

    registration = o3d.pipelines.registration
    option = registration.FastGlobalRegistrationOption(
        maximum_correspondence_distance=tuning.pair * tuning.voxel, use_absolute_scale=True, iteration_number=64,
        maximum_tuple_count=2000,
    )  # fmt: skip
    return registration.registration_fgr_based_on_feature_matching(source, target, one, two, option)


def _loop(task: Task, match: Global, tuning: Tuning) -> list[Found]:
    left = scan_cloud(task.vertices, task.faces)
    dense = {body.id: o3d_cloud(body_cloud(body)) for body in task.parts.scan_bodies}
    found: list[Found] = []
    failed = 0
    while failed < 2 and len(found) < MOST_SITES and len(left.points) > 100:
        tree = cKDTree(left.points)
        best: tuple[float, ScanBody, FloatArray] | None = None
        for body in task.parts.scan_bodies:
            start = match(left, body, tuning)
            if start is None:
                continue
            pose = _refined(left, tree, body, dense[body.id], start, tuning)
            share, rms = shown(left, tree, body, pose)
            if share >= tuning.shown and rms <= tuning.rms and (best is None or share > best[0]):
                best = (share, body, pose)
        if best is None:
            failed += 1
            continue
        failed = 0
        found.append(Found(best[1].id, best[2]))
        left = _without(left, best[1], best[2])
    return found


def _refined(left: Cloud, tree: cKDTree, body: ScanBody, dense: Any, start: FloatArray, tuning: Tuning) -> FloatArray:
    near = around(left, tree, body, start)
    return start if len(near.points) < 50 else plane_icp(near, dense, start, (0.8, 0.3, 0.15), tuning.tukey)


def _without(left: Cloud, body: ScanBody, pose: FloatArray) -> Cloud:
    local = (left.points - pose[:3, 3]) @ pose[:3, :3]
    distance, _ = cKDTree(body_cloud(body).points).query(local, distance_upper_bound=TAKEN_MM)
    return left.taken(~np.isfinite(distance))
