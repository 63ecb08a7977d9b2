"""How well a scan body will fix its implant, before any scan: from its CAD, the depth of the gingiva and the noise.

The same information matrix as a measurement's (method, eq. 5–6), on points spread over what of the scan region the
gingiva leaves free; the residuals, which do not enter it, are left out.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.result import Bounds
from stylobate.core.sampling import sampled
from stylobate.core.types import FloatArray
from stylobate.fit.descend import GUM_MARGIN, LEAST_SUPPORT
from stylobate.fit.design import derivatives
from stylobate.fit.edges import SharpEdges, at_hand, profile_shapes
from stylobate.parts.model import ScanBody
from stylobate.parts.region import clip_above
from stylobate.uncertainty.bare import narrowed
from stylobate.uncertainty.bounds import bounds
from stylobate.uncertainty.field import EDGE_SD, VIEW_SD, Field, groups_of, patches_of
from stylobate.uncertainty.pose import PRIOR_SD, solve

TYPICAL = Field(0.008, 0.010, 0.8, 1.5, VIEW_SD, EDGE_SD)
"""Noise where none is stated: the middle of what the development scenes were drawn from (docs/method/measure.md)."""
TYPICAL_EDGE = 0.2
"""mm between neighbouring points of a scan (common practice, no source)."""
FILLET = 0.3
"""mm that the fillet which a scan makes at the gingiva climbs; the middle of what the simulator draws (from memory)."""


@dataclass(frozen=True)
class Foretold:
    """Of one scan body at one depth of gingiva.

    tissue: height of the gingiva above the platform, mm. shown: share of the scan region's area above it.
    u95, covariance (6, 6): None where too little is shown to measure at all.
    """

    scan_body: str
    tissue: float
    shown: float
    u95: Bounds | None
    covariance: FloatArray | None


def foretell(
    body: ScanBody, index_order: int, tissue: float, noise: Field = TYPICAL, edge: float = TYPICAL_EDGE
) -> Foretold:
    """The 95 % bounds that a scan of `body` will have when gingiva stands `tissue` mm above the platform all round.

    noise: of the scanner. edge: length of the scan's triangles, mm. The margin that a measurement leaves out beside
    foreign surface (the gingiva, or with none the platform) is left out here too.
    """
    region = body.region
    shown = float(clip_above(region, tissue).face_areas().sum()) / float(region.face_areas().sum())
    used = clip_above(region, tissue + FILLET + GUM_MARGIN)
    # An equilateral mesh has two triangles a vertex: one vertex for each √3/2·edge².
    spacing = edge * np.sqrt(np.sqrt(3.0) / 2.0)
    if float(used.face_areas().sum()) < LEAST_SUPPORT * spacing**2:
        return Foretold(body.id, tissue, shown, None, None)
    points, normals = sampled(used, spacing)
    to_edge, angle = SharpEdges.of(region).near(points)
    shapes = profile_shapes(to_edge, angle, normals[:, 2])
    matrix, group = derivatives(points, normals, shapes), groups_of(points, normals, to_edge)
    patches = patches_of(points, np.zeros(len(points)), matrix, group, at_hand(shapes))
    covariance = narrowed(solve(patches, noise, 1.0 / PRIOR_SD**2)[1], 0.0)[:6, :6]
    return Foretold(body.id, tissue, shown, bounds(covariance, index_order), covariance)
