"""Results made by hand for comparisons: an arch of implants, scanned with known errors, in any frame and order."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np

from stylobate.core import rigid
from stylobate.core.types import FloatArray

U95_UM = 15.0
SD_MM = U95_UM / 2.7955e3  # chi(3) quantile: JCGM 102
TILT = np.radians(0.05 / 2.4477)
TURN = np.radians(0.1)
COVARIANCE = np.diag([SD_MM**2] * 3 + [TILT**2] * 2 + [TURN**2])


def arch(count: int, rng: np.random.Generator) -> FloatArray:
    """(count, 4, 4) poses over an arch 44 mm wide, axes leaning by some degrees."""
    along = np.linspace(-1.0, 1.0, count)
    poses = []
    for t in along:
        axis = np.array([0.15 * t, 0.1, 1.0]) + rng.normal(0.0, 0.1, 3)
        axis /= np.linalg.norm(axis)
        x = np.cross([0.0, 1.0, 0.0], axis)
        x /= np.linalg.norm(x)
        centre = np.array([22.0 * t, 36.0 * (1.0 - t**2), 0.0]) + rng.normal(0.0, 1.5, 3)
        poses.append(rigid.pose(np.stack([x, np.cross(axis, x), axis], axis=1), centre))
    return np.array(poses)


def drifted(poses: FloatArray, rng: np.random.Generator, over_arch: float) -> FloatArray:
    """The poses after a random walk of shifts whose sd is `over_arch` mm, each way, from one end to the other."""
    steps = np.linalg.norm(np.diff(poses[:, :3, 3], axis=0), axis=1)
    result, shift = poses.copy(), np.zeros(3)
    for k, step in enumerate(steps, start=1):
        shift = shift + rng.normal(0.0, over_arch * np.sqrt(step / steps.sum()), 3)
        result[k, :3, 3] += shift
    return result


def document(
    poses: FloatArray, rng: np.random.Generator, name: str, index_order: int = 6, shuffled: bool = False,
    noise: FloatArray | None = COVARIANCE, which: list[int] | None = None, connection: str = "alder",
    scan_from_mouth: FloatArray | None = None,
) -> dict[str, object]:  # fmt: skip
    """result.json of one scan: its own frame, its own numbering and marks, errors drawn from `noise` (None: none)."""
    if scan_from_mouth is None:
        scan_from_mouth = rigid.exp(np.concatenate([rng.normal(0.0, 20.0, 3), rng.normal(0.0, 1.0, 3)]))
    order = list(range(len(poses)) if which is None else which)
    if shuffled:
        rng.shuffle(order)
    sites = []
    for number, k in enumerate(order, start=1):
        pose = scan_from_mouth @ poses[k]
        if noise is not None:
            pose = pose @ rigid.exp(np.linalg.cholesky(noise) @ rng.normal(size=6))
        if shuffled and index_order:
            turn = 2.0 * np.pi * rng.integers(index_order) / index_order
            pose = pose @ rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, turn]))
        sites.append(
            {
                "site": str(number), "scan_body": "alder-tall", "connection": connection, "platform_diameter": 4.2,
                "index_order": index_order, "scan_from_connection": pose.tolist(), "covariance": COVARIANCE.tolist(),
                "u95": {"platform_um": U95_UM, "axis_deg": 0.05, "index_deg": 0.2 if index_order else None},
                "deviation": {"points": 9000, "mean_um": 0.1, "rms_um": 9.0, "p95_um": 20.0}, "coverage": 0.8,
                "findings": [],
            }
        )  # fmt: skip
    return {
        "format": "stylobate-result", "version": 1,
        "scan": {"file": f"{name}.stl", "sha256": "ab" * 32, "triangles": 100},
        "parts": {"name": "Harbour Street demo parts", "revision": "2026-11", "sha256": "cd" * 32},
        "work": "bridge", "sites": sites,
    }  # fmt: skip


def write(folder: Path, values: dict[str, object]) -> Path:
    """The document as folder/result.json; returns the file."""
    folder.mkdir(parents=True, exist_ok=True)
    file = folder / "result.json"
    file.write_text(json.dumps(values), encoding="utf-8")
    return file


def unseated(poses: FloatArray, site: int, height: float) -> FloatArray:
    """The poses with one body standing `height` mm above its seat."""
    result = poses.copy()
    result[site] = poses[site] @ rigid.exp(np.array([0.0, 0.0, height, 0.0, 0.0, 0.0]))
    return result
