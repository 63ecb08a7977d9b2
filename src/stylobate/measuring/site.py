"""One place in the scan → one measured site, or none: choose the part, fit, weigh, diagnose, accept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from stylobate.choose.readings import Laid, lay
from stylobate.choose.turns import turns_open
from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.recent import Recent
from stylobate.core.result import Finding
from stylobate.core.types import FloatArray, LongArray
from stylobate.diagnose import Diagnosis, diagnose
from stylobate.diagnose.accepting import (
    STRANGE_UNNAMED,
    carried_off,
    coverage_of,
    explained_share,
    loose,
    no_more_than_round,
    strangeness,
    too_strange,
)
from stylobate.find import Candidate
from stylobate.fit.descend import LEAST_SUPPORT, Around, Fit, around, fit, to_connection
from stylobate.fit.edges import SharpEdges
from stylobate.parts.model import PartsFolder, ScanBody
from stylobate.uncertainty.pose import Pose, Stand, weigh

READINGS_LAID = 0.8  # of the best reading's area: a reading with less is not laid on the scan
LEAST_COVERAGE = 0.15
RESEMBLING = 0.3  # of the scan region: gingiva and teeth carry up to a fourth, a post of another part over half
WORST_SD = 0.09  # mm: residuals wider than this are no scan body's; the roughest measured have 60 µm (no source)
LEAST_EXPLAINED = 0.55  # of the surface near the CAD surface must lie on it
CLAIM_REACH = 0.5  # mm from a measured scan body within which the scan is its own
MAP_REACH = 1.0  # mm beyond the CAD surface that a site's map shows


MOST_KNOWN = 64  # scan bodies whose surfaces are held ready, some 5 MB each
_known: Recent[tuple[SurfaceTree, SharpEdges]] = Recent(MOST_KNOWN)


def _prepared(body: ScanBody) -> tuple[SurfaceTree, SharpEdges]:
    """Surface and edges of a scan body, ready for the fit; kept from scan to scan by their hash."""
    return _known.of(body.sha256, lambda: (SurfaceTree.of(body.region, lasting=True), SharpEdges.of(body.region)))


@dataclass(frozen=True)
class Bench:
    """The scan bodies in play and their prepared surfaces."""

    parts: PartsFolder
    bodies: tuple[ScanBody, ...]
    trees: tuple[SurfaceTree, ...] = field(init=False)
    edges: tuple[SharpEdges, ...] = field(init=False)
    middles: tuple[FloatArray, ...] = field(init=False)
    reaches: tuple[float, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Prepare the surfaces."""
        prepared = [_prepared(body) for body in self.bodies]
        object.__setattr__(self, "trees", tuple(tree for tree, _ in prepared))
        object.__setattr__(self, "edges", tuple(edges for _, edges in prepared))
        boxes = [(b.region.vertices.min(axis=0), b.region.vertices.max(axis=0)) for b in self.bodies]
        object.__setattr__(self, "middles", tuple((low + high) / 2 for low, high in boxes))
        object.__setattr__(self, "reaches", tuple(float(np.linalg.norm(high - low)) / 2 for low, high in boxes))

    def stand(self, body: int, scan_from_connection: FloatArray, offset: float) -> Stand:
        """A scan body at a pose, its surface off by `offset` mm."""
        return Stand(self.trees[body], self.edges[body], scan_from_connection, offset)

    def middle(self, body: int, scan_from_connection: FloatArray) -> FloatArray:
        """Middle of a scan body at a pose, scan coordinates."""
        return np.asarray(scan_from_connection[:3, :3] @ self.middles[body] + scan_from_connection[:3, 3])


@dataclass(frozen=True)
class Measured:
    """A site before it has a name: body index, fit, weighted pose, what else could stand there.

    closest: of all of `around` to the CAD surface at the pose, within MAP_REACH.
    """

    body: int
    around: Around
    fit: Fit
    pose: Pose
    readings: tuple[Laid, ...]
    carried_area: float
    coverage: float
    middle: FloatArray
    closest: Closest
    diagnosis: Diagnosis

    @property
    def claimed(self) -> LongArray:
        """The scan's vertices (k,) at this scan body's surface."""
        return self.around.index[np.abs(self.closest.distance) < CLAIM_REACH]

    def doubted(self, finding: Finding) -> Measured:
        """The same site with one more finding, before all others."""
        diagnosis = replace(self.diagnosis, findings=(finding, *self.diagnosis.findings))
        return replace(self, diagnosis=diagnosis)

    def distance_to(self, point: FloatArray) -> float:
        """From a point to the scan body's middle, mm."""
        return float(np.linalg.norm(self.middle - point))


@dataclass(frozen=True)
class Resembles:
    """A place that resembles a scan body of the folder: middle (3,) mm; sd of the fit, mm.

    loose: one fits, but what is seen does not fix where it stands; else none fits.
    """

    body: int
    middle: FloatArray
    sd: float
    loose: bool = False


def measure_site(
    bench: Bench, vertices: FloatArray, normals: FloatArray, candidate: Candidate
) -> Measured | Resembles | None:
    """Measure what stands at one place; None where it is nothing like a scan body.

    The likeliest reading may be one that takes in gingiva besides; where it is refused, a reading of another scan body
    that fits what it takes in more closely is tried.
    """
    first = candidate.readings[0]
    starts = [(r.body, r.scan_from_connection) for r in candidate.readings if r.area > READINGS_LAID * first.area]
    centre = bench.middle(first.body, first.scan_from_connection)
    near = around(vertices, normals, centre, max(bench.reaches[body] for body, _ in starts) + 1.5)
    laid = lay(bench.trees, near, starts)
    site = _standing(bench, near, laid)
    if isinstance(site, Measured) or not laid:
        return site
    others = [one for one in laid if one.body != laid[0].body]
    closer = others if others and others[0].descent.sd < laid[0].descent.sd else []
    again = _standing(bench, near, closer)
    return again if isinstance(again, Measured) else site


def _standing(bench: Bench, near: Around, laid: Sequence[Laid]) -> Measured | Resembles | None:
    """The likeliest of some readings measured; None where it is nothing like a scan body."""
    if not laid:
        return None
    body = laid[0].body
    fitted = fit(bench.trees[body], near, laid[0].descent)
    if fitted.sd > WORST_SD or len(fitted.support) < LEAST_SUPPORT:
        return None
    coverage = coverage_of(bench.bodies[body], near, fitted)
    measured = _measured(bench, near, tuple(laid), fitted, coverage)
    if measured is None and coverage >= RESEMBLING:
        return Resembles(body, bench.middle(body, fitted.scan_from_connection), fitted.sd)
    return measured


def _measured(
    bench: Bench, near: Around, laid: tuple[Laid, ...], fitted: Fit, coverage: float
) -> Measured | Resembles | None:
    """What was fitted, weighed and diagnosed; None where it is not the scan body after all."""
    number = laid[0].body
    body, tree, edges = bench.bodies[number], bench.trees[number], bench.edges[number]
    explained = explained_share(near, fitted)
    if explained < LEAST_EXPLAINED or coverage < LEAST_COVERAGE:
        return None
    weighed = weigh(tree, edges, near, fitted)
    if weighed is None or carried_off(weighed, fitted):
        return None
    if loose(weighed):
        alike = coverage >= RESEMBLING and strangeness(weighed, explained) < STRANGE_UNNAMED
        middle = bench.middle(number, fitted.scan_from_connection)
        return Resembles(number, middle, fitted.sd, loose=True) if alike else None
    try:
        diagnosis = diagnose(tree, edges, near, fitted, weighed, body)
    except ValueError:  # what carries the fit lies out of reach of the weighted pose: no scan body stands there
        return None
    pose = diagnosis.pose
    strange = min(strangeness(weighed, explained), strangeness(pose, explained))
    if too_strange(strange, diagnosis):
        return None
    order = bench.parts.connection(body.seats_on).index_order
    if order > 0:
        mine = bench.stand(number, pose.scan_from_connection, pose.offset)
        share = min(1.0, len(diagnosis.higher) / len(fitted.support))
        widest, nearly = turns_open(mine, pose, near.points[diagnosis.higher], share, 360.0 / order)
        if nearly and no_more_than_round(diagnosis, strange):
            return None
        pose = pose.turn_known_within(np.radians(widest))
    return Measured(
        number, near, fitted, pose, laid, float(near.area[fitted.support].sum()), coverage,
        bench.middle(number, pose.scan_from_connection),
        tree.closest(to_connection(pose.scan_from_connection, near.points), MAP_REACH), diagnosis,
    )  # fmt: skip
