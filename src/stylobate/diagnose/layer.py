"""Added layer: the uniform offset that is fitted together with the pose, set against what it is known to (eq. 10)."""

from __future__ import annotations

import numpy as np

from stylobate.core.result import Finding
from stylobate.diagnose.significance import corrected, upper_tail

ADVICE = (
    "The surface stands outside the drawing all round, and the pose is corrected for it. Spray adds volume: clean the"
    " scan body, or scan a matt (sandblasted) one, which needs none."
)
Z95 = 1.959963984540054


def added_layer(offset: float, sd: float) -> tuple[float, Finding]:
    """p of an offset (mm, outward) with standard deviation `sd`, made part included, and the finding it would be."""
    p = corrected(upper_tail(offset / sd))
    size, bound = 1e3 * offset, 1e3 * Z95 * sd
    return p, Finding("added layer", ADVICE, float(np.round(size, 3)), float(np.round(bound, 3)), p=p)
