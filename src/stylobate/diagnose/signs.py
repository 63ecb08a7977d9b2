"""Signs of causes that move the whole surface: a bend, a split. Score tests (method/trust, eq. 11–13)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.diagnose.evidence import Evidence, inverse_of_known
from stylobate.diagnose.shapes import leaning, step_across
from stylobate.diagnose.significance import any_of, chi2_tail

CAUSES = ("bent body", "split surface")
STARTS = (0.0, 0.2, 0.4)  # of the visible height, where a lean may begin
HINGES = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6)  # where a body may be bent at once; at 0 all that is seen leans as one
AZIMUTHS = 16
FINER = 4  # planes on each side of the best one
BESIDE_STEP = 0.4  # mm from the plane of a step within which patches may lie on either side of it
BESIDE_EDGE = 0.25  # mm from a sharp edge within which a shifted point may be held for one of the other face
TESTS = {"bent body": 6.0, "split surface": 16.0}
"""Independent tests that the trials of starts and forms, and of planes, amount to: neighbours are nearly the same test
(method/trust, table of effective numbers)."""


@dataclass(frozen=True)
class Sign:
    """A shape that the residuals ask for.

    shapes (m, k); gain: χ² won by freeing it; p counted over its own trials; unsure (k,): patches of which it is not
    known on which side of a step they lie; at_edge (k,): of which not on which face.
    """

    cause: str
    shapes: FloatArray
    gain: float
    p: float
    unsure: LongArray = field(default_factory=lambda: np.zeros(0, np.int64))
    at_edge: LongArray = field(default_factory=lambda: np.zeros(0, np.int64))


def lean(evidence: Evidence, bottom: float, top: float) -> list[Sign]:
    """Leans from several starts, progressive and hinged. bottom, top, mm: between which the body stands free."""
    forms = [(share, False) for share in STARTS] + [(share, True) for share in HINGES]
    shapes = [
        leaning(evidence.patches.centre, evidence.normal, bottom + share * (top - bottom), top, hinge)
        for share, hinge in forms
    ]
    return signs_of(evidence, "bent body", shapes)


def split(evidence: Evidence) -> list[Sign]:
    """A step across each of AZIMUTHS planes through the axis, and finer about the best of them."""
    place, normal = evidence.patches.centre, evidence.normal
    at_edge = np.nonzero(evidence.points.mean((evidence.points.to_edge < BESIDE_EDGE).astype(np.float64)))[0]

    def tried(azimuths: FloatArray) -> list[Sign]:
        steps = signs_of(evidence, "split surface", [step_across(place, normal, a) for a in azimuths])
        away = [np.abs(place[:, 0] * np.cos(a) + place[:, 1] * np.sin(a)) for a in azimuths]
        return [
            replace(one, unsure=np.nonzero(d < BESIDE_STEP)[0], at_edge=at_edge)
            for one, d in zip(steps, away, strict=True)
        ]

    coarse = np.arange(AZIMUTHS) * np.pi / AZIMUTHS
    signs = tried(coarse)
    best = coarse[int(np.argmax([sign.gain for sign in signs]))]
    return signs + tried(best + np.arange(-FINER, FINER + 1) * np.pi / AZIMUTHS / (FINER + 1))


def sign_of(evidence: Evidence, cause: str, shapes: FloatArray) -> Sign:
    """How much the residuals ask for shapes (m, k) of a cause."""
    return signs_of(evidence, cause, [shapes])[0]


def signs_of(evidence: Evidence, cause: str, forms: Sequence[FloatArray]) -> list[Sign]:
    """The same for each form (m, k) of a cause."""
    weighed = np.split(evidence.projected @ np.hstack(forms), len(forms), axis=1)
    most = float(np.diag(evidence.weight).max())
    result = []
    for shapes, half in zip(forms, weighed, strict=True):
        asked = shapes.T @ evidence.score
        gain = float(asked @ inverse_of_known(shapes.T @ half, shapes, most) @ asked)
        result.append(Sign(cause, shapes, gain, any_of(chi2_tail(gain, shapes.shape[1]), TESTS[cause])))
    return result
