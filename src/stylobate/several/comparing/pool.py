"""Scans that agree, pooled into one result in the coordinates of the first scan (method/compare, eqs. 14–15)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from stylobate.core import rigid
from stylobate.core.arch import order_along
from stylobate.core.result import BudgetRow, Deviation, Finding, NotShown, Result, Site
from stylobate.core.types import FloatArray
from stylobate.record.model import RecordSite
from stylobate.several.comparing.layout import OTHERWISE, Layout
from stylobate.several.comparing.union import Union
from stylobate.several.sources import DRIFT, IN_COVARIANCE
from stylobate.uncertainty.bounds import bounds, pair

NOT_SHOWN = NotShown(
    "what all scans share",
    "a scale or a bend that every scan has alike cannot be seen by repeating it; compare with a known distance",
)


@dataclass(frozen=True)
class Pooled:
    """result: sites numbered along the arch. cross: (6, 6) of each two sites. sources: names of the scans used."""

    result: Result
    cross: dict[tuple[str, str], FloatArray]
    sources: tuple[str, ...]


def pooled(union: Union, layout: Layout, model: FloatArray) -> Pooled:
    """Weigh all poses that are not left out, by the covariances `model` (K, 6n, 6n) of the scans.

    The covariance is that in the first scan's coordinates: what all sites share there, the first scan alone can tell.
    """
    shift, covariance = _solved(layout, model)
    count = len(layout.poses)
    poses = [layout.frames[0] @ layout.poses[i] @ rigid.exp(shift[6 * i : 6 * i + 6]) for i in range(count)]
    kept = [i for i in range(count) if layout.seen[:, 6 * i].any()]
    stacked = np.array([poses[i] for i in kept])
    order = [kept[j] for j in order_along(stacked[:, :3, 3], stacked[:, :3, 2])]
    if order != kept and order[::-1] == kept:
        order = kept
    names = {implant: str(number) for number, implant in enumerate(order, start=1)}
    blocks = covariance.reshape(count, 6, count, 6).swapaxes(1, 2)
    sites = tuple(_site(union, layout, i, names[i], poses[i], blocks[i, i]) for i in order)
    two = list(combinations(order, 2))
    pairs = tuple(
        pair((names[i], names[j]), (poses[i], poses[j]), (blocks[i, i], blocks[j, j]), blocks[i, j]) for i, j in two
    )
    first = union.records[0]
    result = Result(first.scan, first.parts, first.work, sites, pairs, (NOT_SHOWN,))
    return Pooled(
        result, {(names[i], names[j]): blocks[i, j] for i, j in two}, tuple(record.name for record in union.records)
    )


def _solved(layout: Layout, model: FloatArray) -> tuple[FloatArray, FloatArray]:
    """μ (6n,) and its covariance (6n, 6n) in the frame of the first scan, drift there counted about its mean.

    The turn about an unindexed axis is taken from the first scan that shows it.
    """
    size = layout.lever.shape[0]
    normal, right = np.zeros((2, size, size))
    right = np.zeros(size)
    told = np.zeros(size, dtype=np.bool_)
    for k in range(len(layout.frames)):
        shown = layout.seen[k].copy()
        first = np.repeat(shown[::6], 6) & ~told
        shown |= first & (np.arange(size) % 6 == 5)
        told |= shown
        rows = np.flatnonzero(shown)
        if not len(rows):
            continue
        information = np.linalg.inv(model[k][np.ix_(rows, rows)])
        lever = layout.lever[rows]
        if k:
            weighted = information @ lever
            information = information - weighted @ np.linalg.solve(lever.T @ weighted, weighted.T)
        normal[np.ix_(rows, rows)] += information
        right[rows] += information @ layout.residual[k][rows]
    known = np.flatnonzero(told)
    covariance = np.zeros((size, size))
    covariance[np.ix_(known, known)] = np.linalg.inv(normal[np.ix_(known, known)])
    return covariance @ right, covariance


def _site(union: Union, layout: Layout, implant: int, name: str, pose: FloatArray, covariance: FloatArray) -> Site:
    shown = [site for k, site in enumerate(union.sites[implant]) if site is not None and layout.shows(k, implant)]
    first = shown[0]
    covariance = (covariance + covariance.T) / 2
    rest = _not_counted(first, layout)
    total = covariance + np.diag(np.zeros(6) + sum(map(row_variances, rest)))
    return Site(
        site=name,
        scan_body=first.scan_body,
        connection=first.connection,
        platform_diameter=first.platform_diameter,
        index_order=first.index_order,
        scan_from_connection=rigid.orthonormal(pose),
        covariance=covariance,
        u95=bounds(covariance, first.index_order),
        deviation=first.deviation or Deviation(0, *[float("nan")] * 3),
        coverage=max((site.coverage for site in shown if site.coverage is not None), default=float("nan")),
        findings=all_findings(shown),
        u95_total=bounds(total, first.index_order) if first.budget else None,
        budget=_budget(first, covariance, len(shown), rest, bool(layout.scanned.all())) if first.budget else (),
        covariance_total=total if first.budget else None,
    )


def all_findings(shown: Sequence[RecordSite]) -> tuple[Finding, ...]:
    """Every finding of any of the scans, each cause once."""
    by_cause: dict[str, Finding] = {}
    for site in shown:
        for finding in site.findings:
            by_cause.setdefault(finding.cause, finding)
    return tuple(by_cause.values())


def row_variances(row: BudgetRow) -> FloatArray:
    """(6,) of a row of the budget, shared out evenly over its axes."""
    platform, axis, turn = row.platform_um or 0.0, row.axis_deg or 0.0, row.index_deg or 0.0
    return np.array([*[(1e-3 * platform) ** 2 / 3.0] * 3, *[np.radians(axis) ** 2 / 2.0] * 2, np.radians(turn) ** 2])


def _not_counted(first: RecordSite, layout: Layout) -> tuple[BudgetRow, ...]:
    """Rows of the budget that the model of the scans leaves out."""
    counted = (*IN_COVARIANCE, DRIFT) if layout.scanned.all() else (*IN_COVARIANCE, DRIFT, *OTHERWISE)
    return tuple(
        BudgetRow(row.source, row.platform_um, row.axis_deg, row.index_deg, row.origin)
        for row in first.budget
        if row.source not in counted
    )


def _budget(
    first: RecordSite, covariance: FloatArray, scans: int, rest: tuple[BudgetRow, ...], scanned: bool
) -> tuple[BudgetRow, ...]:
    variance = np.diag(covariance)
    turn = float(np.degrees(np.sqrt(variance[5]))) if first.index_order > 0 else None
    origin = f"{scans} scan{'s' if scans > 1 else ''} pooled, drift between them counted"
    if not scanned:
        origin = f"{scans} measurement{'s' if scans > 1 else ''} pooled, each with its whole budget"
    scan = BudgetRow(
        "scan", 1e3 * float(np.sqrt(variance[:3].sum())), float(np.degrees(np.sqrt(variance[3:5].sum()))), turn, origin
    )
    shared = "what all scans share is not known" if scanned else "counted with the scan; what is no scan does not drift"
    return (scan, *rest, BudgetRow("drift", None, None, None, shared))
