"""Small normal equations inside compiled loops, without LAPACK (numba would fetch it from SciPy: 0.2 s at each start).

`square` (k + 1, k + 1) holds AᵀA, and in its last row Aᵀr and rᵀr; of symmetric entries the lower half counts.
"""

from __future__ import annotations

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray


@compiled
def factored(square: FloatArray) -> None:
    """Cholesky's factor L of AᵀA in place, below it L⁻¹Aᵀr; in the last corner what is left of rᵀr."""
    k = square.shape[0] - 1
    for i in range(k):
        square[i, i] = np.sqrt(square[i, i])
        for j in range(i + 1, k + 1):
            square[j, i] /= square[i, i]
        for j in range(i + 1, k + 1):
            for m in range(i + 1, j + 1):
                square[j, m] -= square[j, i] * square[m, i]


@compiled
def solution(square: FloatArray) -> FloatArray:
    """(k,) least squares parameters, from what `factored` left."""
    k = square.shape[0] - 1
    result = square[k, :k].copy()
    for i in range(k - 1, -1, -1):
        for j in range(i + 1, k):
            result[i] -= square[j, i] * result[j]
        result[i] /= square[i, i]
    return result
