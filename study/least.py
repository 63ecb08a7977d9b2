"""The smallest faults that a clean site would show at 1 % false alarms and 95 % power, from its own evidence."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.diagnose.bumps import WIDTHS, tests_on
from stylobate.diagnose.evidence import gather
from stylobate.diagnose.forms import ONE_SIDED_95, SEAM
from stylobate.diagnose.hidden import POWER_Z, hidden_bend
from stylobate.diagnose.shapes import step_across
from stylobate.diagnose.significance import FALSE_ALARMS, FAMILIES
from stylobate.diagnose.signs import TESTS
from stylobate.measuring.site import Bench, Measured
from stylobate.uncertainty.pose import OFFSET

CENTRES = 25


def least(bench: Bench, measured: Measured) -> dict[str, float]:
    """layer_um, lean_deg, split_um, and chip_um at each width; scan alone, body as drawn."""
    from scipy.stats import chi2, norm

    evidence = gather(
        bench.trees[measured.body], bench.edges[measured.body], measured.around, measured.fit.support, measured.pose
    )
    each = FALSE_ALARMS / FAMILIES
    place, normal = evidence.patches.centre, evidence.normal
    bend = hidden_bend(evidence, float(place[:, 2].min()), float(place[:, 2].max()))
    _, split = evidence.amplitudes(step_across(place, normal, 0.0))
    offset = float(np.sqrt(evidence.covariance[OFFSET, OFFSET]))
    shows = float(np.sqrt(chi2.isf(each / TESTS["split surface"], 3)))
    result = {
        "layer_um": 1e3 * offset * (float(norm.isf(each)) + POWER_Z),
        "lean_deg": bend.size_deg,
        "split_um": 1e3 * max(_sd(split) * (shows + POWER_Z), SEAM + _sd(split) * (ONE_SIDED_95 + POWER_Z)),
    }
    count = len(place)
    threshold = float(norm.isf(each / tests_on(evidence, np.ones(count, np.bool_)))) + POWER_Z
    some = np.random.default_rng(0).choice(count, min(CENTRES, count), replace=False)
    for width in WIDTHS:
        sds = []
        for k in some:
            square = np.sum((place - place[k]) ** 2, axis=1)
            mine = np.nonzero((square < width**2 / 4.0) & (normal @ normal[k] > 0.0))[0]
            cap = 1.0 - 4.0 * square[mine] / width**2
            sds.append(1.0 / np.sqrt(cap @ evidence.projected[np.ix_(mine, mine)] @ cap))
        result[f"chip_{width:g}_um"] = 1e3 * float(np.median(sds)) * threshold
    return result


def _sd(covariance: FloatArray) -> float:
    return float(np.sqrt(np.mean(np.diag(covariance))))
