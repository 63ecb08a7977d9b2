"""Bent body and split surface: their size over the forms that the scan allows, and the pose allowed for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core.result import Finding
from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence
from stylobate.diagnose.significance import Z95, corrected
from stylobate.diagnose.signs import Sign

BENT = (
    "The body leans more and more with height: soft polymer bodies bend when they are torqued, and after sterilisation."
    " Replace it, and follow its maker on reuse."
)
SPLIT = (
    "One side of the body is shifted against the other: the scan is stitched wrongly there. Scan the body again, from"
    " all sides in one go."
)
SEAM = 0.015  # mm: a smaller split is allowed for but not named; every fused scan has seams of some µm (no source)
WORTH = 3.0  # times the standard deviation that leaving out the patches at edges may cost
ONE_SIDED_95 = 1.645  # standard deviations by which a split must be wider than a seam
HALF = 0.5  # of a split: the pose lies between the halves, and neither is known to be the right one


@dataclass(frozen=True)
class Form:
    """A cause whose exact form is not known, averaged over the forms tried by their likelihood (eq. 13).

    size (k,) with covariance (k, k); step (q,) and covariance (q, q) of θ.
    """

    size: FloatArray
    size_covariance: FloatArray
    step: FloatArray
    covariance: FloatArray


def averaged(evidence: Evidence, signs: Sequence[Sign]) -> Form:
    """Average over forms of one cause, each weighed by exp(gain/2); the spread between forms is counted."""
    gain = np.array([sign.gain for sign in signs])
    share = np.exp((gain - gain.max()) / 2.0)
    share /= share.sum()
    sizes, spreads, steps, covariances = [], [], [], []
    for sign, weight in zip(signs, share, strict=True):
        if weight < 1e-3:
            continue
        sure, size, spread = _sure_of(evidence, sign)
        freed = sure.freeing(sign.shapes)
        sizes.append((weight, size))
        spreads.append(spread)
        steps.append(freed.step)
        covariances.append(freed.covariance)
    weights = np.array([weight for weight, _ in sizes])
    weights /= weights.sum()
    size, size_covariance = _mixed(weights, [one for _, one in sizes], spreads)
    step, covariance = _mixed(weights, steps, covariances)
    return Form(size, size_covariance, step, covariance)


def _sure_of(evidence: Evidence, sign: Sign) -> tuple[Evidence, FloatArray, FloatArray]:
    """The evidence without what a shift may have put on another side or face, and the amplitudes and covariance by it.

    Patches at edges stay where hardly anything else shows the shift.
    """
    sure = evidence.without(sign.unsure)
    size, spread = sure.amplitudes(sign.shapes)
    if len(sign.at_edge):
        surer = evidence.without(np.union1d(sign.unsure, sign.at_edge))
        firm, wider = surer.amplitudes(sign.shapes)
        if np.trace(wider) < WORTH**2 * np.trace(spread):
            return surer, firm, wider
    return sure, size, spread


def _mixed(
    weights: FloatArray, means: Sequence[FloatArray], covariances: Sequence[FloatArray]
) -> tuple[FloatArray, FloatArray]:
    """Mean and covariance of a mixture."""
    mean = np.einsum("k,ki->i", weights, np.array(means))
    off = np.array(means) - mean
    spread = np.einsum("k,kij->ij", weights, np.array(covariances)) + np.einsum("k,ki,kj->ij", weights, off, off)
    return mean, np.asarray(spread)


def bent(form: Form, p: float) -> Finding:
    """The finding of a bend."""
    size, sd = _length(form)
    return Finding(
        "bent body", BENT, size_deg=float(np.degrees(size)), u95_deg=float(np.degrees(Z95 * sd)), p=corrected(p)
    )


def parted(form: Form, p: float) -> Finding | None:
    """The finding of a split; None where it may be but a seam."""
    size, sd = _length(form)
    if size - ONE_SIDED_95 * sd < SEAM:
        return None
    return Finding("split surface", SPLIT, 1e3 * size, 1e3 * Z95 * sd, p=corrected(p))


def _length(form: Form) -> tuple[float, float]:
    """Length of a vector and its standard deviation along itself, the noise in its square taken off."""
    square = float(form.size @ form.size)
    along = form.size / max(np.sqrt(square), 1e-300)
    variance = float(along @ form.size_covariance @ along)
    rest = float(np.trace(form.size_covariance)) - variance
    return float(np.sqrt(max(square - rest, 0.0))), float(np.sqrt(variance))


def neither_half(form: Form) -> FloatArray:
    """(6, 6): what is added to the pose's covariance because the halves contradict each other by the split's size."""
    extra = np.zeros((6, 6))
    extra[:3, :3] = np.outer(form.size, form.size) * HALF**2
    return extra
