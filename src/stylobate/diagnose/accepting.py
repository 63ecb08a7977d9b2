"""Whether what was fitted at a place is the scan body, or a tooth or a stump that looks like it (method, eq. 8a)."""

from __future__ import annotations

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.sampling import sampled
from stylobate.diagnose import Diagnosis
from stylobate.fit.descend import Around, Fit, to_connection, usable
from stylobate.parts.model import ScanBody
from stylobate.uncertainty.pose import Pose

WORST_SMOOTH_SD, SMOOTH_LENGTH = 0.032, 0.45  # mm: scanners' correlated noise is 5 to 15 µm, a rough body's is short
WORST_UNEXPLAINED, MOST_STRANGE = 0.30, 1.35  # both measures reach 1 where a body alone or a tooth alone may be
STRANGE_UNNAMED = 1.1  # where no cause found explains it: clean bodies reach 1.0
LOOSE_SD = 0.1  # mm: a platform known no better is not fixed by the scan: any post of that width would do
MOST_MOVED = 0.25  # mm by which weighing may move the platform
SHOWN_WITHIN = 0.3  # mm: a spot of the CAD surface is shown when the scan passes this near
EXPLAINS = {"added layer", "added material", "bent body", "lost material", "rough surface", "split surface"}
# Where little shows the turn, what was seen may be no more than round: a tooth's signs then weigh more.
FOREIGN_SIGNS, STRANGE_IF_ROUND, STRANGE_IF_COATED = {"added layer", "added material"}, 1.05, 0.8


def no_more_than_round(diagnosis: Diagnosis, strange: float) -> bool:
    """Whether a place where little rules out another turn has the signs of a tooth or a stump, or no part's size."""
    causes = {finding.cause for finding in diagnosis.findings}
    signs = FOREIGN_SIGNS & causes
    foreign = signs == FOREIGN_SIGNS or "no part fits" in causes
    return foreign or strange > (STRANGE_IF_COATED if signs else STRANGE_IF_ROUND)


def too_strange(strange: float, diagnosis: Diagnosis) -> bool:
    """Whether a misfit is more than a scan body has; less is borne where no fault was found that explains it."""
    explained = any(finding.cause in EXPLAINS for finding in diagnosis.findings)
    return strange > (MOST_STRANGE if explained else STRANGE_UNNAMED)


def strangeness(pose: Pose, explained: float) -> float:
    """How little what was fitted looks like this scan body: residuals wide and smooth, surface off it near by.

    Neither alone tells: a chipped body leaves surface unexplained. Asked before and after the diagnosis, which explains
    a split or bent body's misfit and none of a tooth's, but may take in gingiva where little of a body is seen.
    """
    smooth = pose.field.correlated_sd * min(1.0, pose.field.length / SMOOTH_LENGTH)
    return smooth / WORST_SMOOTH_SD + (1.0 - explained) / WORST_UNEXPLAINED


def loose(pose: Pose) -> bool:
    """The scan does not fix the platform."""
    return float(np.trace(pose.covariance[:3, :3])) > LOOSE_SD**2


def carried_off(pose: Pose, fitted: Fit) -> bool:
    """Weighing has moved the platform farther than any noise does."""
    return float(np.linalg.norm(pose.scan_from_connection[:3, 3] - fitted.scan_from_connection[:3, 3])) > MOST_MOVED


def explained_share(near: Around, fitted: Fit) -> float:
    """Of the scan within 0.4 mm of the CAD surface and facing its way, the share that lies on it."""
    closest, area = fitted.closest, near.area[fitted.near]
    close = usable(closest, near.normals[fitted.near] @ fitted.scan_from_connection[:3, :3])
    close &= np.abs(closest.distance) < 0.4
    on = close & (np.abs(np.nan_to_num(closest.distance) - fitted.offset) < max(3.0 * fitted.sd, 0.05))
    return float(area[on].sum() / max(area[close].sum(), 1e-9))


def coverage_of(body: ScanBody, near: Around, fitted: Fit) -> float:
    """Share of the scan region's area that the scan shows, 0 to 1."""
    spots, _ = sampled(body.region, 0.25)
    local = to_connection(fitted.scan_from_connection, near.points[fitted.support])
    return float(np.mean(Buckets.of(local, SHOWN_WITHIN).near(spots, SHOWN_WITHIN)))
