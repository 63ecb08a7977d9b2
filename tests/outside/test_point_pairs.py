"""Poses from known pairs of points, against SciPy and against published motions (tests/data/registration/SOURCES.md).

Each pair speaks along three axes, so that `rows` and `solve`, which know only distances along a direction, must arrive
at the closed-form answer of Kabsch (1976), which shares nothing with them.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.fit.descend import rows
from stylobate.uncertainty.field import Field, Patches
from stylobate.uncertainty.pose import solve

PAIRS = Path(__file__).parent.parent / "data" / "registration"


def laid(source: FloatArray, target: FloatArray, steps: int = 60) -> tuple[FloatArray, FloatArray]:
    """target_from_source and its covariance, by repeated linear fits with white noise of 1."""
    pose = np.eye(4)
    pose[:3, 3] = target.mean(axis=0) - source.mean(axis=0)
    field = Field(1.0, 1e-9, 1.0, 0.5)
    covariance = np.eye(6)
    for _ in range(steps):
        local = (target - pose[:3, 3]) @ pose[:3, :3]
        gradient = np.repeat(np.eye(3), len(source), axis=0)
        points = np.tile(source, (3, 1))
        residual = (local - source).T.ravel()
        n = len(residual)
        patches = Patches(points, residual, rows(points, gradient), np.ones(n), np.zeros(n))
        xi, covariance, _ = solve(patches, field, np.zeros(6))
        pose = pose @ rigid.exp(xi)
    return pose, covariance


def kabsch(source: FloatArray, target: FloatArray) -> FloatArray:
    turn, _ = Rotation.align_vectors(target - target.mean(axis=0), source - source.mean(axis=0))
    return rigid.pose(turn.as_matrix(), target.mean(axis=0) - turn.as_matrix() @ source.mean(axis=0))


@pytest.mark.parametrize("angle_deg", [0.01, 5.0, 60.0, 120.0])
def test_noisy_pairs_give_the_pose_that_scipy_gives(angle_deg: float) -> None:
    rng = np.random.default_rng(7)
    source = rng.normal(size=(40, 3)) * [3.0, 2.0, 5.0]
    axis = np.array([0.48, -0.6, 0.64])
    truth = rigid.pose(rigid.rotation_exp(np.radians(angle_deg) * axis), np.array([12.0, -7.0, 3.0]))
    target = source @ truth[:3, :3].T + truth[:3, 3] + 0.01 * rng.normal(size=source.shape)
    pose, _ = laid(source, target)
    assert np.abs(rigid.log(rigid.inverse(kabsch(source, target)) @ pose)).max() < 1e-9
    assert np.abs(rigid.log(rigid.inverse(truth) @ pose)).max() > 1e-5  # the noise is there: not the truth copied


def read(folder: Path) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Source points, scaled; target points; the published motion."""
    source, target = (np.loadtxt(folder / name, skiprows=7) for name in ("src.ply", "dst.ply"))
    scale = float(np.loadtxt(folder / "s_ref.csv"))
    motion = rigid.pose(np.loadtxt(folder / "R_ref.csv", delimiter=","), np.loadtxt(folder / "t_ref.csv"))
    return scale * source, target, motion


@pytest.mark.parametrize("folder", range(1, 7))
def test_published_motions_are_found_from_their_true_pairs(folder: int) -> None:
    """Without noise to the digits of the files; with noise of 0.01 (folder 6) within its own bounds."""
    source, target, motion = read(PAIRS / str(folder))
    off = np.linalg.norm(source @ motion[:3, :3].T + motion[:3, 3] - target, axis=1)
    noise = 0.01 if folder == 6 else 0.0
    true = off < max(5 * noise, 1e-3)
    assert int(true.sum()) >= 7
    pose, covariance = laid(source[true], target[true])
    xi = rigid.log(rigid.inverse(motion) @ pose)
    if noise:
        assert float(xi @ np.linalg.solve(covariance * noise**2, xi)) < 22.5  # chi-square, 6 dof, 99.9 %
    else:
        assert np.abs(xi).max() < 1e-5
    assert np.abs(rigid.log(rigid.inverse(kabsch(source[true], target[true])) @ pose)).max() < 1e-8
