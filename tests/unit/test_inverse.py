"""The inverse by halves against LAPACK's general one and the identity."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.diagnose.evidence import inverted
from stylobate.uncertainty.field import correlation


@pytest.mark.parametrize("rows", [1, 2, 100, 101, 333, 800])
@pytest.mark.parametrize("white", [1.0, 1e-3])
@pytest.mark.parametrize("smoothness", [0.5, 2.5])
def test_inverse_of_a_covariance(rows: int, white: float, smoothness: float) -> None:
    place = np.random.default_rng(rows).uniform(0.0, 8.0, (rows, 3))
    away = np.linalg.norm(place[:, None] - place[None], axis=2)
    matrix = correlation(away / 0.7, smoothness) + white * np.eye(rows)
    inverse = inverted(matrix)
    scale = np.abs(inverse).max() * np.linalg.cond(matrix)
    assert np.allclose(inverse, np.linalg.inv(matrix), rtol=0.0, atol=1e-14 * scale)
    assert np.allclose(inverse @ matrix, np.eye(rows), rtol=0.0, atol=1e-14 * np.linalg.cond(matrix) * rows)
    assert np.allclose(inverse, inverse.T, rtol=0.0, atol=1e-14 * scale)


def test_a_singular_matrix_is_refused() -> None:
    with pytest.raises(ValueError, match="not positive definite"):
        inverted(np.ones((3, 3)))
    with pytest.raises(ValueError, match="not positive definite"):
        inverted(np.zeros((300, 300)))
