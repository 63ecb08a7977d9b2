"""Missing surface: which part of the scan region above the gingiva the scan does not show, and what it would bring."""

from __future__ import annotations

import numpy as np

from stylobate.core.buckets import Buckets
from stylobate.core.result import Finding
from stylobate.core.sampling import sampled
from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence
from stylobate.diagnose.facing import by_coordinates
from stylobate.diagnose.surroundings import Surroundings
from stylobate.fit.descend import CLEAR_MARGIN, rows
from stylobate.fit.edges import SHAPES
from stylobate.parts.model import ScanBody
from stylobate.uncertainty.bounds import length_95
from stylobate.uncertainty.field import Patches
from stylobate.uncertainty.pose import PRIOR_SD, Pose

SPACING = 0.3  # mm between the spots of the scan region that are asked for
SHOWN_WITHIN = 0.3  # mm
MOST_UNSEEN = 0.25  # of the free surface (common practice, no source)


def missing_surface(body: ScanBody, evidence: Evidence, surroundings: Surroundings, pose: Pose) -> Finding | None:
    """The finding, where more than MOST_UNSEEN of the free scan region is not shown.

    What the missing part would bring is worked out from the site's own field.
    """
    spots, normals = sampled(body.region, SPACING)
    free = surroundings.above_gum(spots, CLEAR_MARGIN)
    seen_points = surroundings.points[np.abs(surroundings.distance) < SHOWN_WITHIN]
    shown = Buckets.of(seen_points, SHOWN_WITHIN).near(spots, SHOWN_WITHIN)
    unseen = free & ~shown
    share = float(unseen.sum() / max(free.sum(), 1))
    if share <= MOST_UNSEEN:
        return None
    covariance = pose.covariance
    better = _covariance_with(evidence, spots[unseen], normals[unseen], covariance)
    now, then = 1e3 * length_95(covariance[:3, :3]), 1e3 * length_95(better[:3, :3])
    side = pose.scan_from_connection[:3, :3] @ normals[unseen].mean(axis=0)
    side = side / max(float(np.linalg.norm(side)), 1e-9)
    low, high = np.quantile(spots[unseen, 2], [0.05, 0.95])
    middle = pose.scan_from_connection[:3, :3] @ spots[unseen].mean(axis=0) + pose.scan_from_connection[:3, 3]
    advice = (
        f"The scan shows {100 * (1 - share):.0f} % of the free scan region. Scan again from "
        f"{by_coordinates(side)}, {low:.1f} to {high:.1f} mm above the platform: the centre's "
        f"bound would fall from {now:.0f} to about {then:.0f} µm."
    )
    area = float(body.region.face_areas().sum()) * float(unseen.mean())
    return Finding(
        "missing surface", advice, where=(middle[0], middle[1], middle[2]), area_mm2=area,
        side=(float(side[0]), float(side[1]), float(side[2])),
    )  # fmt: skip


def _covariance_with(evidence: Evidence, spots: FloatArray, normals: FloatArray, covariance: FloatArray) -> FloatArray:
    """Covariance (6, 6) if the spots were seen as densely as the rest, their noise taken as its own (eq. 19)."""
    count = np.full(len(spots), max(float(np.median(evidence.patches.count)), 1.0))
    matrix = np.hstack([rows(spots, normals), np.ones((len(spots), 1)), np.zeros((len(spots), SHAPES))])
    patches = Patches(spots, np.zeros(len(spots)), matrix, count, np.full(len(spots), (SPACING / 3.0) ** 2))
    information = matrix.T @ np.linalg.solve(evidence.field.covariance(patches), matrix)
    whole = np.linalg.inv(np.linalg.inv(evidence.covariance + 1e-18 * np.diag(PRIOR_SD**2)) + information)
    gained = whole[:6, :6]
    # Never worse than now: what else has grown the covariance is left out of the forecast.
    return gained if np.trace(gained[:3, :3]) < np.trace(covariance[:3, :3]) else covariance
