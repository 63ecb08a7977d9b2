"""exp(−x) for compiled loops, which then go through vector instructions: the library's exp takes one at a time."""

from __future__ import annotations

import math

import numpy as np

from stylobate.core.jit import compiled

MOST = 60.0  # beyond, the answer stays at that of here, 1e-26
_PER_LN_2 = 1.0 / math.log(2.0)
_LN_2, _LN_2_REST = 0.693145751953125, 1.4286068203094172e-6  # the first so short that its multiples are exact
_HALVES = 0.5 ** np.arange(int(MOST * _PER_LN_2) + 2)
_C = tuple(1.0 / math.factorial(k) for k in range(13))


@compiled
def decay(x: float) -> float:
    """exp(−x), x ≥ 0, to the last bit or two: a power of 1/2 by table, and Taylor's series of the rest."""
    x = min(x, MOST)
    halvings = np.floor(x * _PER_LN_2 + 0.5)
    r = halvings * _LN_2 - x + halvings * _LN_2_REST
    high = _C[8] + r * (_C[9] + r * (_C[10] + r * (_C[11] + r * _C[12])))
    low = _C[2] + r * (_C[3] + r * (_C[4] + r * (_C[5] + r * (_C[6] + r * (_C[7] + r * high)))))
    return float((1.0 + r * (1.0 + r * low)) * _HALVES[np.uint32(halvings)])
