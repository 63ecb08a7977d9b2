"""A measured site → the site as it is reported: bounds, findings, budget, verdict, and the map of its deviation."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from stylobate.choose.readings import LEAST_ODDS, Laid
from stylobate.choose.turns import odds_needed, turn_sd_deg, weighed_doubt
from stylobate.core.buckets import Buckets
from stylobate.core.jit import compiled
from stylobate.core.result import Alternative, Deviation, Finding, Site, SiteMap
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray, IntArray
from stylobate.find.tissue import Post, on_its_head
from stylobate.fit.descend import usable
from stylobate.measuring.site import Bench, Measured
from stylobate.parts.model import ScanBody
from stylobate.settings import Settings
from stylobate.uncertainty.bounds import bounds, turn_between_deg
from stylobate.uncertainty.budget import Leg, sources, total, without_figure
from stylobate.verdict.rules import judge

MAP_DEVIATION = 0.3  # mm: what lies farther off is not the scan body's own surface
MAP_MARGIN = 0.35  # mm beside foreign surface that is left grey: the fillet of the gingiva
UNSURE_TURN_DEG = 5.0  # a turn known no better is said to be ambiguous (common practice, no source)
UPSIDE_DOWN = Finding(
    "part ambiguous",
    "The tissue stands about the scan body's upper end, as if it were screwed in upside down. Check that its surface"
    " in the parts folder is drawn with the platform below; if it is, scan again with the tissue around it.",
)


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
        *_findings(bench, body, alternatives, limits.index_deg, turn_sd_deg(measured.pose)),
        *(f if f.where is None else replace(f, where=_moved(f.where, scan)) for f in measured.diagnosis.findings),
    )
    if on_its_head(Post.of(body.region), measured.around, measured.pose.scan_from_connection):
        found = (UPSIDE_DOWN, *found)
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
        verdict=judge(summed, indexed, found, allowed, budget, without_figure(parts), _bend(measured, body)),
        covariance_total=summed,
        hidden=measured.diagnosis.hidden,
    )


def _bend(measured: Measured, body: ScanBody) -> str:
    """What a body of soft polymer may hide, in words; nothing of other materials, which seldom bend."""
    hidden = measured.diagnosis.hidden
    soft = "polymer" in body.material.casefold()
    if hidden is None or not soft:
        return ""
    return f"a bend below {hidden.size_deg:.1f}°" if math.isfinite(hidden.size_deg) else "a bend, however large"


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
        needed = odds_needed(abs(turn), turn_sd_deg(measured.pose)) if other.body == best.body else LEAST_ODDS
        if doubt < 2.0 * np.log(needed):
            shown = measured.diagnosis.higher if needed > LEAST_ODDS else measured.fit.support
            doubt = _weighed(bench, measured, other, measured.around.points[shown])
        result.append(Alternative(body.id, turn, float(np.exp(np.clip(doubt / 2.0, 0.0, 690.0)))))
    return tuple(sorted(result, key=lambda a: a.odds))


def _weighed(bench: Bench, measured: Measured, other: Laid, points: FloatArray) -> float:
    mine = bench.stand(measured.body, measured.pose.scan_from_connection, measured.pose.offset)
    stands = bench.stand(other.body, other.descent.scan_from_connection, other.descent.offset)
    return weighed_doubt(mine, measured.pose, stands, points)


def _findings(
    bench: Bench, body: ScanBody, alternatives: Sequence[Alternative], index_deg: float | None, sd_deg: float
) -> tuple[Finding, ...]:
    """index_deg: bound of the turn, None where none is known of the connection; sd_deg: of the turn."""
    findings, order = [], bench.parts.connection(body.seats_on).index_order
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
    own = [(a.odds, abs(a.turn_deg)) for a in alternatives if a.scan_body == body.id]
    turns = [turn for odds, turn in own if turn > 2.0 and odds < odds_needed(turn, sd_deg)]
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
    own &= ~foreign.near(near.points, MAP_MARGIN)
    off = np.where(own, 1e3 * closest.distance, np.nan)[shown]
    return SiteMap(near.points[shown] + scan.origin, _renumbered(faces, number), off)


@compiled
def _renumbered(faces: IntArray, number: IntArray) -> IntArray:
    """The faces whose three vertices all have a new number, by these numbers; −1 stands for none."""
    kept = np.empty((len(faces), 3), np.int32)
    count = 0
    for face in faces:
        a, b, c = number[face[0]], number[face[1]], number[face[2]]
        if a >= 0 and b >= 0 and c >= 0:
            kept[count, 0], kept[count, 1], kept[count, 2] = a, b, c
            count += 1
    return kept[:count].copy()
