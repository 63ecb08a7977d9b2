"""Rigid motions keep their axioms, near the identity and near half a turn too."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from stylobate.core import rigid

ANGLES = (0.0, 1e-12, 1e-7, 1e-3, 1.0, 3.0, np.pi - 1e-6)


def drawn(seed: int, angle: float) -> np.ndarray:
    rng = np.random.default_rng(seed)
    axis = rng.normal(size=3)
    return np.concatenate([rng.normal(scale=20.0, size=3), angle * axis / np.linalg.norm(axis)])


@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("seed", range(5))
def test_log_undoes_exp(seed: int, angle: float) -> None:
    xi = drawn(seed, angle)
    assert_allclose(rigid.log(rigid.exp(xi)), xi, atol=2e-8)


@pytest.mark.parametrize("angle", ANGLES)
def test_exp_of_minus_is_the_inverse_and_a_rotation(angle: float) -> None:
    motion = rigid.exp(drawn(3, angle))
    assert_allclose(rigid.exp(-drawn(3, angle)), rigid.inverse(motion), atol=1e-11)
    assert_allclose(motion[:3, :3] @ motion[:3, :3].T, np.eye(3), atol=1e-13)
    assert np.linalg.det(motion[:3, :3]) > 0


def test_the_adjoint_carries_a_small_motion_to_the_other_frame() -> None:
    pose, xi = rigid.exp(drawn(1, 1.1)), drawn(2, 0.4)
    assert_allclose(pose @ rigid.exp(xi) @ rigid.inverse(pose), rigid.exp(rigid.adjoint(pose) @ xi), atol=1e-12)


def test_a_degree_about_z_has_the_published_trace() -> None:
    """Trace of Rz(1°) = 1 + 2 cos 1° = 2.9996953903 (arithmetic)."""
    turn = rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, np.radians(1.0)]))
    assert_allclose(np.trace(turn[:3, :3]), 2.9996953903, atol=5e-11)
