"""No part fits: another diameter and height explain the scan better than a layer does (method/trust, eq. 14)."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from stylobate.core.result import Finding
from stylobate.core.types import FloatArray, LongArray
from stylobate.diagnose.evidence import Evidence, unit_shapes
from stylobate.diagnose.layer import THICKEST, uneven_shapes
from stylobate.diagnose.shapes import made_part
from stylobate.diagnose.significance import FALSE_ALARMS, Z95, corrected, upper_tail
from stylobate.parts.model import ScanBody
from stylobate.uncertainty.pose import OFFSET, PRIOR_SD

UM = 1e-3
MADE_LEAST_UM = 6.0  # standard uncertainty of a made part whose own is not stated (common practice, no source)
MADE_BEYOND = 5.0  # standard uncertainties beyond which a part is not the one drawn
ONE_SIDED_95 = 1.645
SURELY = 8.0
"""Standard deviations by which another size must show: what a fused scan does to a clean body passes for other sizes at
4 to 6 of them (measured on scans fused of depth maps), as no field is known so well."""
ADVICE = (
    "The scan body's size or form is not that of any part in the folder. Read the number on it, add its part to the"
    " folder, and measure again."
)


def most_um(body: ScanBody) -> float:
    """Greatest departure from the drawing, in µm of diameter or height, that a made part may have."""
    return MADE_BEYOND * max(body.made_u_um or 0.0, MADE_LEAST_UM)


def other_shape(
    plain: Evidence, others: FloatArray, out: LongArray, offset: float, body: ScanBody, size: tuple[float, float]
) -> Finding | None:
    """The finding, where a body of another diameter and height without a layer is likelier than this one with a layer.

    others (m, k): shapes of causes found; out: patches left out; offset: of `plain`'s own pose, mm; size: widest radius
    and top of the body, mm. p is at most exp(−gain/2), gain the difference of χ² (Markov's bound).
    """
    free = np.hstack([others, unit_shapes(out, len(plain.patches.count))])
    pose = np.delete(plain.patches.matrix, OFFSET, axis=1)
    shapes = made_part(plain.patches.centre, plain.normal, *size)
    residual = plain.patches.residual + offset
    prior = 1.0 / PRIOR_SD**2
    uneven, sd_uneven = uneven_shapes(plain, offset)
    coated, _, _ = _fitted(
        plain.weight, residual, [plain.patches.matrix, uneven, free], np.concatenate([prior, 1.0 / sd_uneven**2])
    )
    another, amplitude, spread = _fitted(plain.weight, residual, [pose, free, shapes], np.delete(prior, OFFSET))
    gain = coated - another
    p = corrected(math.exp(-max(gain, 0.0) / 2.0))
    found, sd = amplitude[-2:], np.sqrt(np.diag(spread)[-2:])
    least = np.where(np.abs(found) > SURELY * sd, np.abs(found) - ONE_SIDED_95 * sd, 0.0)
    k = int(np.argmax(least))
    if p >= FALSE_ALARMS or least[k] <= most_um(body) * UM:
        return None
    return Finding("no part fits", ADVICE, 1e3 * abs(float(found[k])), 1e3 * Z95 * float(sd[k]), p=p)


def _fitted(
    weight: FloatArray, residual: FloatArray, columns: list[FloatArray], prior: FloatArray
) -> tuple[float, FloatArray, FloatArray]:
    """χ² left by a fit of columns, their amplitudes and covariance; prior: information on the first of them."""
    matrix = np.hstack(columns)
    information = np.zeros(matrix.shape[1])
    information[: len(prior)] = prior
    half = weight @ matrix
    spread = np.linalg.inv(matrix.T @ half + np.diag(information))
    amplitude = spread @ (half.T @ residual)
    left = residual - matrix @ amplitude
    return float(left @ weight @ left + information @ amplitude**2), amplitude, np.asarray(spread, dtype=np.float64)


def too_thick_or_thin(layer: Finding, offset: float, sd: float, body: ScanBody) -> Finding | None:
    """The finding, where an offset (mm, outward, with `sd`) is more than any layer, or inward beyond a made part's."""
    if offset > THICKEST and layer.p is not None and layer.p < FALSE_ALARMS:
        return replace(layer, cause="no part fits", advice=ADVICE)
    p = corrected(upper_tail(-offset / sd))
    if p < FALSE_ALARMS and -offset - ONE_SIDED_95 * sd > most_um(body) * UM / 2.0:
        return Finding("no part fits", ADVICE, -1e3 * offset, 1e3 * Z95 * sd, p=p)
    return None
