"""Added layer: the uniform offset that is fitted together with the pose, set against what is known of it (eq. 10)."""

from __future__ import annotations

import numpy as np

from stylobate.core.result import Finding
from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence
from stylobate.diagnose.shapes import uneven_layer
from stylobate.diagnose.significance import Z95, corrected, upper_tail

ADVICE = (
    "The surface stands outside the drawing all round, and the pose is corrected for it. Spray adds volume: clean the"
    " scan body, or scan a matt (sandblasted) one, which needs none."
)
THICK = 0.05
"""mm: sprayed powder is mostly 20 to 40 µm (from memory); where more is found, the body may be another one."""
ALIKE = (
    "A layer this thick is rare, and a scan body of about {um:.0f} µm larger diameter would look much the same. Read"
    " the number on it; if it is the right one, clean it and scan again."
)
UNEVEN = 0.3
"""A layer's thickness varies by this share of it from place to place: common practice, no source."""
SIDEWAYS = 0.1
"""The same from one side of the body to the other, which looks like a shift: common practice, no source."""
LEAST = 1e-6  # mm
THICKEST = 0.085
"""mm: hand-sprayed powder is at most this thick (from memory); beyond, the body is another one."""


def added_layer(offset: float, sd: float) -> Finding:
    """What an offset (mm, outward) with standard deviation `sd`, made part included, would be as a finding."""
    p = corrected(upper_tail(offset / sd))
    return Finding("added layer", ADVICE, 1e3 * offset, 1e3 * Z95 * sd, p=p)


def another_body(offset: float) -> Finding | None:
    """That what looks like a layer (mm) may be a body of larger diameter; None where it is thin enough for a layer."""
    return Finding("part ambiguous", ALIKE.format(um=2e3 * offset)) if offset > THICK else None


def uneven_shapes(evidence: Evidence, offset: float) -> tuple[FloatArray, FloatArray]:
    """Shapes (m, 5) of a layer's unevenness and their standard deviations (5,), mm, for a layer of this thickness."""
    share: FloatArray = np.array([UNEVEN, UNEVEN, UNEVEN, SIDEWAYS, SIDEWAYS])
    return uneven_layer(evidence.patches.centre, evidence.normal), share * max(abs(offset), LEAST)


def allowed_for(evidence: Evidence, offset: float) -> Evidence:
    """The evidence with the unevenness of a layer of this thickness fitted as far as it shows (eq. 10)."""
    return evidence.freeing(*uneven_shapes(evidence, offset))
