"""One place in the scan → one measured site, or none: choose the part, fit, weigh, accept, describe."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from stylobate.bounds import bounds, turn_between_deg
from stylobate.budget import Leg, sources, total, without_figure
from stylobate.choose import LEAST_ODDS, TURN_STEP_DEG, Laid, apart_deg, lay, turns_left_deg
from stylobate.core import rigid
from stylobate.core.buckets import Buckets
from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.jit import compiled
from stylobate.core.result import Alternative, Deviation, Finding, Site, SiteMap
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray, IntArray, LongArray
from stylobate.diagnose import Diagnosis, diagnose
from stylobate.edges import SharpEdges
from stylobate.find import Candidate
from stylobate.find.template import sampled
from stylobate.fit import Around, Fit, around, fit, to_connection, usable
from stylobate.parts.model import PartsFolder, ScanBody
from stylobate.pose import Pose, Stand, doubts, weigh
from stylobate.settings import Settings
from stylobate.verdict import judge

READINGS_LAID = 0.8  # of the best reading's area: a reading with less is not laid on the scan
LEAST_SUPPORT = 100  # points that must carry a fit
LEAST_COVERAGE = 0.15
SET_AGAINST = 2500  # points by which turns are set against each other
WORST_SD = 0.06  # mm: residuals wider than this are no scan body's
WORST_SMOOTH_SD, SMOOTH_LENGTH = 0.032, 0.45  # mm: scanners' correlated noise is 5 to 15 µm, a rough body's is short
WORST_UNEXPLAINED, MOST_STRANGE = 0.30, 1.35  # both measures reach 1 where a body alone or a tooth alone may be
LOOSE_SD = 0.1  # mm: a platform known no better is not fixed by the scan: any post of that width would do
PLAIN_ODDS = 1e11  # against another turn, beyond which more than a round thing was seen beyond doubt
# Where little shows the turn, what was seen may be no more than round: a tooth's signs then weigh more.
FOREIGN_SIGNS, STRANGE_IF_ROUND, STRANGE_IF_COATED = {"added layer", "added material"}, 1.05, 0.8
MOST_MOVED = 0.25  # mm by which weighing may move the platform
LEAST_EXPLAINED = 0.55  # of the surface near the CAD surface must lie on it
CLAIM_REACH = 0.5  # mm from a measured scan body within which the scan is its own
SHOWN_WITHIN = 0.3  # mm: a spot of the CAD surface is shown when the scan passes this near
MAP_DEVIATION = 0.3  # mm: what lies farther off is not the scan body's own surface
MAP_MARGIN = 0.35  # mm beside foreign surface that is left grey: the fillet of the gingiva
UNSURE_TURN_DEG = 5.0  # a turn known no better is said to be ambiguous (common practice, no source)
MAP_REACH = 1.0  # mm beyond the CAD surface that a site's map shows


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
        object.__setattr__(self, "trees", tuple(SurfaceTree.of(body.region) for body in self.bodies))
        object.__setattr__(self, "edges", tuple(SharpEdges.of(body.region) for body in self.bodies))
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
    """A place that resembles a scan body of the folder, but none fits it: middle (3,) mm; sd of the fit, mm."""

    body: int
    middle: FloatArray
    sd: float


def measure_site(
    bench: Bench, vertices: FloatArray, normals: FloatArray, candidate: Candidate
) -> Measured | Resembles | None:
    """Measure what stands at one place; None where it is nothing like a scan body."""
    first = candidate.readings[0]
    starts = [(r.body, r.scan_from_connection) for r in candidate.readings if r.area > READINGS_LAID * first.area]
    centre = bench.middle(first.body, first.scan_from_connection)
    near = around(vertices, normals, centre, max(bench.reaches[body] for body, _ in starts) + 1.5)
    laid = lay(bench.trees, near, starts)
    if not laid:
        return None
    best = laid[0]
    tree = bench.trees[best.body]
    fitted = fit(tree, near, best.descent)
    if fitted.sd > WORST_SD or len(fitted.support) < LEAST_SUPPORT:
        return None
    none_fits = Resembles(best.body, bench.middle(best.body, fitted.scan_from_connection), fitted.sd)
    explained = _explained(tree, near, fitted)
    if explained < LEAST_EXPLAINED:
        return none_fits
    coverage = _coverage(bench.bodies[best.body], near, fitted)
    if coverage < LEAST_COVERAGE:
        return none_fits
    pose = weigh(tree, bench.edges[best.body], near, fitted)
    if pose is None or _adrift(pose, fitted):
        return none_fits
    try:
        diagnosis = diagnose(tree, bench.edges[best.body], near, fitted, pose, bench.bodies[best.body])
    except ValueError:  # what carries the fit lies out of reach of the weighted pose: no scan body stands there
        return none_fits
    strange = min(_strangeness(pose, explained), _strangeness(diagnosis.pose, explained))
    if strange > MOST_STRANGE:
        return none_fits
    pose = diagnosis.pose
    order = bench.parts.connection(bench.bodies[best.body].seats_on).index_order
    if order > 0:
        period_deg, home, support = 360.0 / order, pose.scan_from_connection, fitted.support
        left = turns_left_deg(tree, near, home, pose.offset, support, pose.effective_points, period_deg)
        mine = bench.stand(best.body, home, pose.offset)
        widest, nearly = _turns_open(mine, _some(near, support), pose, left, period_deg)
        if nearly and _no_more_than_round(diagnosis, strange):
            return none_fits
        pose = pose.turn_known_within(np.radians(widest))
    return Measured(
        best.body, near, fitted, pose, tuple(laid), float(near.area[fitted.support].sum()), coverage,
        bench.middle(best.body, pose.scan_from_connection),
        tree.closest(to_connection(pose.scan_from_connection, near.points), MAP_REACH), diagnosis,
    )  # fmt: skip


def _no_more_than_round(diagnosis: Diagnosis, strange: float) -> bool:
    """Whether a place where little rules out another turn has the signs of a tooth or a stump."""
    signs = FOREIGN_SIGNS & {finding.cause for finding in diagnosis.findings}
    return signs == FOREIGN_SIGNS or strange > (STRANGE_IF_COATED if signs else STRANGE_IF_ROUND)


def _turns_open(
    mine: Stand, points: FloatArray, pose: Pose, left: Sequence[float], period_deg: float
) -> tuple[float, bool]:
    """Of the turns left about z, degrees, the widest that the weighed residuals do not rule out by LEAST_ODDS, 0 if
    none; and whether there is one that they do not rule out by PLAIN_ODDS.
    """
    nearly = False
    home = mine.scan_from_connection
    turned = [replace(mine, scan_from_connection=home @ rigid.turn_z(np.radians(turn))) for turn in left]
    for turn, doubt in zip(left, doubts(pose, mine, turned, points), strict=False):
        nearly |= doubt < 2.0 * np.log(PLAIN_ODDS)
        if doubt < 2.0 * np.log(LEAST_ODDS):
            return apart_deg(turn, period_deg) + TURN_STEP_DEG / 2.0, True
    return 0.0, nearly


def _some(near: Around, support: LongArray) -> FloatArray:
    """Of the points that carry a fit, enough to set turns against each other."""
    return near.points[support[:: max(1, len(support) // SET_AGAINST)]]


def _strangeness(pose: Pose, explained: float) -> float:
    """How little what was fitted looks like this scan body: residuals wide and smooth, surface off it near by.

    Neither alone tells: a chipped body leaves surface unexplained. Asked before and after the diagnosis, which explains
    a split or bent body's misfit and none of a tooth's, but may take in gingiva where little of a body is seen.
    """
    smooth = pose.field.correlated_sd * min(1.0, pose.field.length / SMOOTH_LENGTH)
    return smooth / WORST_SMOOTH_SD + (1.0 - explained) / WORST_UNEXPLAINED


def _adrift(pose: Pose, fitted: Fit) -> bool:
    """The scan does not fix the platform, or weighing has carried it off."""
    loose = float(np.trace(pose.covariance[:3, :3])) > LOOSE_SD**2
    return loose or _apart_mm(pose.scan_from_connection, fitted.scan_from_connection) > MOST_MOVED


def _apart_mm(one: FloatArray, two: FloatArray) -> float:
    return float(np.linalg.norm(one[:3, 3] - two[:3, 3]))


def _explained(tree: SurfaceTree, near: Around, fitted: Fit) -> float:
    """Of the scan within 0.4 mm of the CAD surface and facing its way, the share that lies on it."""
    pose = fitted.scan_from_connection
    closest = tree.closest(to_connection(pose, near.points), 0.4)
    close = usable(closest, near.normals @ pose[:3, :3])
    on = close & (np.abs(np.nan_to_num(closest.distance) - fitted.offset) < max(3.0 * fitted.sd, 0.05))
    return float(near.area[on].sum() / max(near.area[close].sum(), 1e-9))


def _coverage(body: ScanBody, near: Around, fitted: Fit) -> float:
    """Share of the scan region's area that the scan shows, 0 to 1."""
    spots, _ = sampled(body.region, 0.25)
    local = to_connection(fitted.scan_from_connection, near.points[fitted.support])
    distance, _ = Buckets.of(local, SHOWN_WITHIN).nearest(spots, SHOWN_WITHIN)
    return float(np.mean(np.isfinite(distance)))


@dataclass(frozen=True)
class Work:
    """What will be built, with the settings; farthest: to the site farthest along the arch, None for a single one."""

    kind: str
    settings: Settings
    farthest: Leg | None


def site_of(bench: Bench, name: str, measured: Measured, scan: Scan, faces: IntArray | None, work: Work) -> Site:
    """The site as it is reported: pose in scan coordinates, bounds, deviation, findings, budget, verdict, map."""
    body = bench.bodies[measured.body]
    connection = bench.parts.connection(body.seats_on)
    pose = measured.pose.scan_from_connection.copy()
    pose[:3, 3] += scan.origin
    limits = bounds(measured.pose.covariance, connection.index_order)
    alternatives = _alternatives(bench, measured)
    indexed = connection.index_order > 0
    found = (
        *_findings(bench, body, alternatives, limits.index_deg, connection.index_order),
        *(f if f.where is None else replace(f, where=_moved(f.where, scan)) for f in measured.diagnosis.findings),
    )
    parts = sources(measured.pose.covariance, measured.diagnosis.made, body, connection, work.settings, work.farthest)
    budget = tuple(part.row(indexed) for part in parts)
    summed = total(parts)
    allowed = work.settings.limits[work.kind]
    return Site(
        site=name,
        scan_body=body.id,
        connection=connection.id,
        platform_diameter=connection.platform_diameter,
        index_order=connection.index_order,
        scan_from_connection=pose,
        covariance=measured.pose.covariance,
        u95=limits,
        deviation=_deviation(measured),
        coverage=measured.coverage,
        findings=found,
        alternatives=alternatives,
        map=None if faces is None else _map(measured, scan, faces),
        u95_total=bounds(summed, connection.index_order),
        budget=budget,
        verdict=judge(summed, indexed, found, allowed, budget, without_figure(parts)),
        covariance_total=summed,
    )


def _moved(where: tuple[float, float, float], scan: Scan) -> tuple[float, float, float]:
    x, y, z = (float(a + b) for a, b in zip(where, scan.origin, strict=True))
    return x, y, z


def _deviation(measured: Measured) -> Deviation:
    off = 1e3 * measured.closest.distance[measured.fit.support]
    off = off[np.isfinite(off)]
    return Deviation(
        points=len(off),
        mean_um=float(np.mean(off)),
        rms_um=float(np.sqrt(np.mean(off**2))),
        p95_um=float(np.quantile(np.abs(off), 0.95)),
    )


def _alternatives(bench: Bench, measured: Measured) -> tuple[Alternative, ...]:
    """Other readings of the site, likeliest first."""
    best = measured.readings[0]
    result = []
    for other in measured.readings[1:]:
        doubt = other.doubt(best, measured.pose.effective_points)
        body = bench.bodies[other.body]
        order = bench.parts.connection(body.seats_on).index_order
        turn = turn_between_deg(best.descent.scan_from_connection, other.descent.scan_from_connection, order)
        if other.body == best.body and (order == 0 or abs(turn) < 2.0):
            continue
        if doubt < 2.0 * np.log(LEAST_ODDS):
            doubt = _weighed_doubt(bench, measured, other)
        result.append(Alternative(body.id, turn, float(np.exp(np.clip(doubt / 2.0, 0.0, 690.0)))))
    return tuple(sorted(result, key=lambda a: a.odds))


def _weighed_doubt(bench: Bench, measured: Measured, other: Laid) -> float:
    """−2 ln of the odds of another reading, by the weighed residuals."""
    pose = measured.pose
    mine = bench.stand(measured.body, pose.scan_from_connection, pose.offset)
    stands = bench.stand(other.body, other.descent.scan_from_connection, other.descent.offset)
    return next(doubts(pose, mine, [stands], _some(measured.around, measured.fit.support)), np.inf)


def _findings(
    bench: Bench, body: ScanBody, alternatives: Sequence[Alternative], index_deg: float | None, order: int
) -> tuple[Finding, ...]:
    findings = []
    twins = [name for group in bench.parts.look_alikes if body.id in group for name in group if name != body.id]
    twins = [name for name in twins if any(b.id == name for b in bench.bodies)]
    doubtful = [a.scan_body for a in alternatives if a.scan_body != body.id and a.odds < LEAST_ODDS]
    others = sorted(set(twins + doubtful))
    if others:
        names = " or ".join([body.id, *others])
        findings.append(
            Finding(
                "part ambiguous",
                f"This scan fits {names} alike. Read the number on the scan body and measure again with --scan-body.",
            )
        )
    turns = [a for a in alternatives if a.scan_body == body.id and a.odds < LEAST_ODDS and abs(a.turn_deg) > 2.0]
    if order > 0 and (turns or (index_deg is not None and index_deg > UNSURE_TURN_DEG)):
        findings.append(
            Finding(
                "index ambiguous",
                "The scan does not show how the connection is turned. Scan the side of the scan body that carries its"
                " flat, or use a scan body whose shape shows its turn.",
            )
        )
    return tuple(findings)


def _map(measured: Measured, scan: Scan, faces: IntArray) -> SiteMap:
    """The scan around the scan body with the deviation where it lies on the scan region."""
    near, closest = measured.around, measured.closest
    shown = closest.face >= 0
    number = np.full(len(scan.surface.vertices), -1, np.int32)
    number[near.index[shown]] = np.arange(int(shown.sum()), dtype=np.int32)
    own = usable(closest, near.normals @ measured.pose.scan_from_connection[:3, :3])
    own &= np.abs(closest.distance) < MAP_DEVIATION
    foreign = Buckets.of(near.points[shown & ~own & ~closest.on_boundary], MAP_MARGIN)
    own &= ~np.isfinite(foreign.nearest(near.points, MAP_MARGIN)[0])
    off = np.where(own, 1e3 * closest.distance, np.nan)[shown]
    return SiteMap(near.points[shown] + scan.origin, _renumbered(faces, number), off)


@compiled
def _renumbered(faces: IntArray, number: IntArray) -> IntArray:
    """The faces whose three vertices all have a new number, by these numbers; −1 stands for none."""
    kept = np.empty((len(faces), 3), np.int32)
    count = 0
    for face in faces:
        for corner in range(3):
            kept[count, corner] = number[face[corner]]
        if kept[count, 0] >= 0 and kept[count, 1] >= 0 and kept[count, 2] >= 0:
            count += 1
    return kept[:count].copy()
