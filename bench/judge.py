"""Found poses against the truth: one to one, nothing dropped."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from scipy.optimize import linear_sum_assignment

from bench.method import Found
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.simulate import Scene, bound

SAME_PLACE = 0.5  # mm between platform centres
ON_A_BODY = 3.0  # mm between middles: a site elsewhere on a body, not where there is none

Json = dict[str, Any]


def least_of(made: Scene) -> list[Json | None]:
    """For each site the Cramér–Rao bound as three standard deviations (mm, rad, rad), None where a motion is loose."""
    result: list[Json | None] = []
    for k in range(len(made.sites)):
        try:
            covariance = bound(made, k)
        except (ValueError, np.linalg.LinAlgError):
            result.append(None)
            continue
        result.append(sizes(covariance))
    return result


def sizes(covariance: FloatArray) -> Json:
    """Standard deviations (mm, rad, rad) of platform, axis and index by a covariance (6, 6) of ξ."""
    return {name: float(np.sqrt(np.trace(covariance[part, part]))) for name, part in PARTS.items()}


PARTS = {"platform": slice(0, 3), "axis": slice(3, 5), "index": slice(5, 6)}


def paired(true: Sequence[FloatArray], found: Sequence[Found]) -> dict[int, int]:
    """Which found site belongs to which true one (their poses (4, 4)), one to one, within SAME_PLACE."""
    apart = np.array(
        [[np.linalg.norm(f.scan_from_connection[:3, 3] - pose[:3, 3]) for f in found] for pose in true]
    ).reshape(len(true), len(found))
    one, two = linear_sum_assignment(np.minimum(apart, 2.0 * SAME_PLACE))
    return {int(i): int(j) for i, j in zip(one, two, strict=True) if apart[i, j] < SAME_PLACE}


def judged(made: Scene, least: list[Json | None], found: list[Found]) -> tuple[list[Json], list[Json]]:
    """(a row for each true site, a row for each found site that has no true one within SAME_PLACE)."""
    pairs = paired([site.scan_from_connection for site in made.sites], found)
    rows = [
        {
            "body": truth.body.id,
            "faults": [[f.cause, f.size] for f in truth.faults],
            "gum_mm": truth.gum_mm,
            "least": least[k],
            "found": _against(made, k, found[pairs[k]]) if k in pairs else None,
        }
        for k, truth in enumerate(made.sites)
    ]
    stray = [_stray(made, f) for j, f in enumerate(found) if j not in pairs.values()]
    return rows, stray


def _against(made: Scene, k: int, found: Found) -> Json:
    """ξ with T_true = T_est · exp(ξ), the turn, and what the method said of itself."""
    truth = made.sites[k]
    motion = rigid.inverse(found.scan_from_connection) @ truth.scan_from_connection
    xi = rigid.log(motion)
    row: Json = {
        "scan_body": found.scan_body,
        "right_part": found.scan_body == truth.body.id,
        "xi": xi.tolist(),
        "turn_deg": float(np.degrees(np.arctan2(motion[1, 0] - motion[0, 1], motion[0, 0] + motion[1, 1]))),
        "flags": list(found.flags),
    }
    if found.u95 is not None:
        row["u95"] = list(found.u95)
    if found.covariance is not None:
        row["nees"] = float(xi @ np.linalg.solve(found.covariance, xi))
    return row


def _stray(made: Scene, found: Found) -> Json:
    near = min((float(np.linalg.norm(_middle(found, made, None) - _middle(found, made, k))) for k in _all(made)),
               default=np.inf)  # fmt: skip
    return {"scan_body": found.scan_body, "on_a_body": near < ON_A_BODY, "flags": list(found.flags)}


def _all(made: Scene) -> range:
    return range(len(made.sites))


def _middle(found: Found, made: Scene, k: int | None) -> FloatArray:
    """A point halfway up: of the found site (k None) or of true site k. Half of 8 mm, the middle of drawn heights."""
    pose = found.scan_from_connection if k is None else made.sites[k].scan_from_connection
    return np.asarray(pose[:3, 3] + 4.0 * pose[:3, 2])
