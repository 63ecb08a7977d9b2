"""What was weighed as one result: sites numbered anew, budgets, findings and verdicts on what is known now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from stylobate.core import rigid
from stylobate.core.arch import order_along, ways
from stylobate.core.result import BudgetRow, Deviation, Finding, Hidden, Pair, Result, Site
from stylobate.core.types import FloatArray
from stylobate.record import RecordSite
from stylobate.settings import Settings
from stylobate.several.comparing.pool import all_findings, row_variances
from stylobate.several.joined.model import Joined, Seen, Source
from stylobate.several.joined.mouth import Mouth
from stylobate.several.joined.weigh import Differs, Weighed
from stylobate.several.sources import DRIFT, IN_COVARIANCE, JOIN, SCAN
from stylobate.uncertainty.bounds import bounds, length_95, pair
from stylobate.uncertainty.budget import NOT_STATED, Leg, drift_over
from stylobate.verdict.rules import SCANS_DIFFER, judge, judge_together

LEAST_JOIN_MM = 1e-4
"""A join that adds less than 0.1 µm adds nothing."""


def joined(
    mouth: Mouth, known: Weighed, differs: Sequence[Differs], work: str, settings: Settings, warnings: Sequence[str]
) -> Joined:
    """The result in the first scan's coordinates."""
    order = order_along(known.poses[:, :3, 3], known.poses[:, :3, 2])
    names = {implant: str(number) for number, implant in enumerate(order, start=1)}
    legs = _legs(known.poses[order])
    sites = tuple(
        _site(
            mouth, known, implant, names[implant], [d for d in differs if d.cell[1] == implant], legs[n], settings, work
        )
        for n, implant in enumerate(order)
    )
    cross = {
        (names[i], names[j]): known.covariance[6 * i : 6 * i + 6, 6 * j : 6 * j + 6] for i, j in combinations(order, 2)
    }
    pairs = _pairs(sites, cross, legs, settings)
    limits = settings.limits[work]
    together = judge_together(sites, pairs, work, limits, settings.drift is not None) if len(sites) > 1 else None
    first = mouth.records[0]
    not_shown = tuple(dict.fromkeys(item for record in mouth.records for item in record.not_shown))
    result = Result(first.scan, first.parts, work, sites, pairs, not_shown, tuple(warnings), together)
    return Joined(result, cross, _sources(mouth), _seen(mouth, known, names))


def _sources(mouth: Mouth) -> tuple[Source, ...]:
    return tuple(
        Source(
            record.name, record.scan, frame, None if k == 0 else mouth.laid[k - 1].shared_mm2,
            None if k == 0 else mouth.laid[k - 1].cells.places,
        )
        for k, (record, frame) in enumerate(zip(mouth.records, mouth.first_from_scan, strict=True))
    )  # fmt: skip


def _seen(mouth: Mouth, known: Weighed, names: dict[int, str]) -> dict[str, tuple[Seen, ...]]:
    return {
        name: tuple(
            Seen(k, site.site, bool(known.used[k, i])) for k, site in enumerate(mouth.sites[i]) if site is not None
        )
        for i, name in names.items()
    }


def _legs(poses: FloatArray) -> list[list[Leg]]:
    """From each site to each, in order along the arch."""
    centres = poses[:, :3, 3]
    along = ways(centres)
    return [
        [
            Leg(abs(float(b - a)), pose[:3, :3].T @ (centre - pose[:3, 3]))
            for b, centre in zip(along, centres, strict=True)
        ]
        for a, pose in zip(along, poses, strict=True)
    ]


def _site(
    mouth: Mouth, known: Weighed, implant: int, name: str, differs: Sequence[Differs], legs: Sequence[Leg],
    settings: Settings, work: str,
) -> Site:  # fmt: skip
    used = [k for k in range(len(mouth.records)) if known.used[k, implant]]
    shown = [_moved(mouth, k, implant) for k in used]
    first = shown[0]
    at = slice(6 * implant, 6 * implant + 6)
    covariance = known.covariance[at, at]
    rows, total = _budget(mouth, known, implant, used, first, covariance, legs, settings)
    indexed = first.index_order > 0
    findings = (*_differing(mouth, implant, differs), *all_findings(shown))
    unknown = [row.source for row in rows if row.origin.startswith(NOT_STATED)]
    return Site(
        site=name,
        scan_body=first.scan_body,
        connection=first.connection,
        platform_diameter=first.platform_diameter,
        index_order=first.index_order,
        scan_from_connection=rigid.orthonormal(known.poses[implant]),
        covariance=covariance,
        u95=bounds(covariance, first.index_order),
        deviation=first.deviation or Deviation(0, *[float("nan")] * 3),
        coverage=max((site.coverage for site in shown if site.coverage is not None), default=float("nan")),
        findings=findings,
        u95_total=bounds(total, first.index_order),
        budget=rows,
        verdict=judge(total, indexed, findings, settings.limits[work], rows, unknown),
        covariance_total=total,
        hidden=_hidden(shown),
    )


def _hidden(shown: Sequence[RecordSite]) -> Hidden | None:
    """The smallest fault that one of the scans would show, the same body standing in all; None once one is found."""
    found = {finding.cause for site in shown for finding in site.findings}
    stated = [site.hidden for site in shown if site.hidden is not None and site.hidden.cause not in found]
    return min(stated, key=lambda one: one.size_deg, default=None)


def _moved(mouth: Mouth, scan: int, implant: int) -> RecordSite:
    """A scan's site in the first scan's coordinates, its findings too."""
    site = mouth.sites[implant][scan]
    assert site is not None
    frame = mouth.first_from_scan[scan]
    findings = []
    for finding in site.findings:
        where = finding.where
        if where is not None:
            x, y, z = (frame[:3, :3] @ np.array(where) + frame[:3, 3]).tolist()
            where = (x, y, z)
        findings.append(replace(finding, where=where))
    return replace(mouth.in_first(scan, site), findings=tuple(findings))


def _differing(mouth: Mouth, implant: int, differs: Sequence[Differs]) -> tuple[Finding, ...]:
    """That two scans differ and none is known to be right; of more than two, the odd one is left out."""
    if sum(site is not None for site in mouth.sites[implant]) > 2:
        return ()
    return tuple(
        Finding(
            SCANS_DIFFER,
            f"The body stands otherwise in {mouth.records[one.cell[0]].name}: see that it was seated, scan it again, "
            "or say by --rescan that the later scan counts.",
            size_um=1e3 * float(np.linalg.norm(one.shift)), u95_um=1e3 * length_95(one.covariance), p=one.p,
        )
        for one in differs
    )  # fmt: skip


def _budget(
    mouth: Mouth, known: Weighed, implant: int, used: Sequence[int], first: RecordSite, covariance: FloatArray,
    legs: Sequence[Leg], settings: Settings,
) -> tuple[tuple[BudgetRow, ...], FloatArray]:  # fmt: skip
    """Rows, and the covariance (6, 6) of all that have a figure."""
    indexed = first.index_order > 0
    files = ", ".join(mouth.records[k].scan.file for k in used)
    own = np.linalg.inv(np.sum([np.linalg.inv(known.own[k, implant]) for k in used], axis=0))
    added = np.maximum(np.diag(covariance - own), 0.0)
    rows = [_row(SCAN, np.diag(own), indexed, f"scan{'s' if len(used) > 1 else ''} {files}")]
    if np.sqrt(added[:3].sum()) > LEAST_JOIN_MM:
        rows.append(_row(JOIN, added, indexed, f"laying {files} on {mouth.records[0].scan.file}"))
    rest = [row for row in first.budget if row.source not in (*IN_COVARIANCE, DRIFT)]
    total = covariance + np.diag(np.zeros(6) + sum(map(row_variances, rest)))
    drift, drifting = _drift(legs, indexed, settings)
    return (*rows, *rest, drift), total + drifting


def _row(source: str, variance: FloatArray, indexed: bool, origin: str) -> BudgetRow:
    turn = float(np.degrees(np.sqrt(variance[5]))) if indexed else None
    axis = float(np.degrees(np.sqrt(variance[3:5].sum())))
    return BudgetRow(source, 1e3 * float(np.sqrt(variance[:3].sum())), axis, turn, origin)


def _drift(legs: Sequence[Leg], indexed: bool, settings: Settings) -> tuple[BudgetRow, FloatArray]:
    """Of the first scan, towards the site farthest along the arch (method/profile, eqs. 6 and 7)."""
    farthest = max(legs, key=lambda leg: leg.way)
    if len(legs) < 2:
        return BudgetRow(DRIFT, None, None, None, "one site: nothing to drift from"), np.zeros((6, 6))
    if settings.drift is None:
        return BudgetRow(DRIFT, None, None, None, f"{NOT_STATED}: no scanner profile"), np.zeros((6, 6))
    covariance = drift_over(settings.drift, farthest)
    origin = f"settings: {settings.drift.source}; towards the site {farthest.way:.0f} mm along the arch"
    return _row(DRIFT, np.diag(covariance), indexed, origin), covariance


def _pairs(
    sites: Sequence[Site], cross: dict[tuple[str, str], FloatArray], legs: Sequence[Sequence[Leg]], settings: Settings
) -> tuple[Pair, ...]:
    """Of each two sites, what the join gives them in common counted; where all sources count, drift from one to the
    other."""
    made = []
    for i, j in combinations(range(len(sites)), 2):
        one, two = sites[i], sites[j]
        names, poses = (one.site, two.site), (one.scan_from_connection, two.scan_from_connection)
        drifting = np.zeros((6, 6)) if settings.drift is None else drift_over(settings.drift, legs[j][i])
        alone = pair(names, poses, (one.covariance, two.covariance), cross[names])
        still = [_still(site, own, settings) for site, own in ((one, legs[i]), (two, legs[j]))]
        whole = pair(names, poses, (still[0], still[1] + drifting), cross[names])
        made.append(replace(alone, total_um=whole.u95_um, angle_total_deg=whole.angle_u95_deg))
    return tuple(made)


def _still(site: Site, legs: Sequence[Leg], settings: Settings) -> FloatArray:
    """(6, 6) covariance of all sources but drift."""
    assert site.covariance_total is not None
    return site.covariance_total - _drift(legs, False, settings)[1]
