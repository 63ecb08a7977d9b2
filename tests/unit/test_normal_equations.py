"""Small least squares in compiled loops, and a start without SciPy's linear algebra."""

from __future__ import annotations

import subprocess
import sys

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.normal import factored, solution
from stylobate.find.placing import move


@pytest.mark.parametrize("k", [1, 3, 7])
def test_parameters_and_what_is_left_are_those_of_least_squares(k: int) -> None:
    rng = np.random.default_rng(k)
    matrix, residual = rng.normal(size=(20, k)), rng.normal(size=20)
    wide = np.column_stack([matrix, residual])
    square = wide.T @ wide
    factored(square)
    expected, left, _, _ = np.linalg.lstsq(matrix, residual)
    assert solution(square) == pytest.approx(expected, rel=1e-10)
    assert square[k, k] == pytest.approx(left[0], rel=1e-10)
    assert 2.0 * np.log(np.diag(square)[:k]).sum() == pytest.approx(np.linalg.slogdet(matrix.T @ matrix)[1], rel=1e-10)


def test_a_step_of_the_search_moves_as_a_rigid_motion_does() -> None:
    rng = np.random.default_rng(5)
    pose = rigid.exp(rng.normal(size=6))
    step = np.concatenate([rng.normal(size=3), rng.uniform(-0.15, 0.15, 3)])
    rotation, shift = pose[:3, :3].copy(), pose[:3, 3].copy()
    move(rotation, shift, step.copy())
    expected = pose @ rigid.pose(rigid.rotation_exp(step[3:]), step[:3])
    assert np.abs(rotation - expected[:3, :3]).max() < 1e-14
    assert np.abs(shift - expected[:3, 3]).max() < 1e-14


def test_measuring_does_not_load_scipys_linear_algebra() -> None:
    code = "import sys, stylobate.measuring; sys.exit('scipy.linalg' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False, timeout=120).returncode == 0
