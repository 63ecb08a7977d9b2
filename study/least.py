"""The smallest faults that a clean site would show at 1 % false alarms and 95 % power: from its own evidence, and to
one who knows the law of the scan's noise.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.diagnose.bumps import WIDTHS, tests_on
from stylobate.diagnose.evidence import Evidence, gather, inverted
from stylobate.diagnose.forms import ONE_SIDED_95, SEAM
from stylobate.diagnose.hidden import POWER_Z, hidden_bend
from stylobate.diagnose.shapes import step_across
from stylobate.diagnose.significance import FALSE_ALARMS, FAMILIES
from stylobate.diagnose.signs import TESTS
from stylobate.measuring.site import Bench, Measured
from stylobate.simulate import Scene
from stylobate.simulate.cramer_rao import covariance_of_means
from stylobate.uncertainty.pose import OFFSET

CENTRES = 25


def least(bench: Bench, measured: Measured, made: Scene) -> dict[str, tuple[float, float]]:
    """layer_um, lean_deg, split_um, and chip_um at each width; scan alone, body as drawn.

    Of each: what this site shows, and what it would show under the noise's true covariance with nothing but the pose
    fitted: the same tests can show no less.
    """
    evidence = gather(
        bench.trees[measured.body], bench.edges[measured.body], measured.around, measured.fit.support, measured.pose
    )
    best = _at_best(evidence, made)
    _, layer = best.amplitudes(np.ones((len(best.normal), 1)))
    own = _smallest(evidence, float(np.sqrt(evidence.covariance[OFFSET, OFFSET])), SEAM)
    at_best = _smallest(best, float(np.sqrt(layer[0, 0])), 0.0)
    return {name: (own[name], at_best[name]) for name in own}


def _at_best(evidence: Evidence, made: Scene) -> Evidence:
    """The same patches under the true covariance of the noise, the pose fitted alone."""
    pose, points = made.sites[0].scan_from_connection, evidence.points
    places = points.feet @ pose[:3, :3].T + pose[:3, 3]
    weight = inverted(covariance_of_means(made.noise, places, points.gradient @ pose[:3, :3].T, points.group))
    half = weight @ evidence.patches.matrix[:, :6]
    of_pose = np.asarray(np.linalg.inv(evidence.patches.matrix[:, :6].T @ half))
    gain = of_pose @ half.T
    return replace(evidence, weight=weight, covariance=of_pose, gain=gain, projected=weight - half @ gain)


def _smallest(evidence: Evidence, offset_sd: float, seam: float) -> dict[str, float]:
    """offset_sd, mm: of an even layer. seam, mm: a split has to be surely larger."""
    from scipy.stats import chi2, norm

    each = FALSE_ALARMS / FAMILIES
    place, normal = evidence.patches.centre, evidence.normal
    bend = hidden_bend(evidence, float(place[:, 2].min()), float(place[:, 2].max()))
    _, split = evidence.amplitudes(step_across(place, normal, 0.0))
    shows = float(np.sqrt(chi2.isf(each / TESTS["split surface"], 3)))
    result = {
        "layer_um": 1e3 * offset_sd * (float(norm.isf(each)) + POWER_Z),
        "lean_deg": bend.size_deg,
        "split_um": 1e3 * max(_sd(split) * (shows + POWER_Z), seam + _sd(split) * (ONE_SIDED_95 + POWER_Z)),
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
