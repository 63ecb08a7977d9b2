"""result.json: the measurement as plain values, in the order a reader wants them (docs/conventions)."""

from __future__ import annotations

import math
from typing import Any

from stylobate import __version__
from stylobate.core.result import Bounds, BudgetRow, Chance, Deviation, Finding, Result, Site, Together, Verdict
from stylobate.core.types import FloatArray
from stylobate.report.laid_out import laid_out

FORMAT = "stylobate-result"
VERSION = 1


def map_name(site: str) -> str:
    """File name of the coloured surface of a site."""
    return f"site-{site}.ply"


def result_json(result: Result, maps: bool) -> str:
    """The text of result.json. `maps`: whether the coloured surfaces are written beside it.

    Raises ValueError if a pose or covariance is not finite; a single figure that is not known becomes null.
    """
    return laid_out(document(result, maps))


def document(result: Result, maps: bool) -> dict[str, Any]:
    """The same as nested dicts and lists."""
    scan, parts = result.scan, result.parts
    values: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "scan": {"file": scan.file, "sha256": scan.sha256, "triangles": scan.triangles},
        "parts": {"name": parts.name, "revision": parts.revision, "sha256": parts.sha256},
        "work": result.work,
        "sites": [_site(site, maps) for site in result.sites],
        "cross": [],
        "pairs": [
            {
                "sites": list(pair.sites),
                "distance_mm": _figure(pair.distance_mm),
                "u95_um": _figure(pair.u95_um),
                "angle_deg": _figure(pair.angle_deg),
                "angle_u95_deg": _figure(pair.angle_u95_deg),
                "u95_total_um": _figure(pair.total_um),
                "angle_u95_total_deg": _figure(pair.angle_total_deg),
            }
            for pair in result.pairs
        ],
        "not_shown": [{"what": item.what, "check": item.check} for item in result.not_shown],
        "warnings": list(result.warnings),
    }
    if result.together is not None:
        values["together"] = _judged(result.together)
    return values


def _site(site: Site, maps: bool) -> dict[str, Any]:
    values: dict[str, Any] = {
        "site": site.site,
        "scan_body": site.scan_body,
        "connection": site.connection,
        "platform_diameter": site.platform_diameter,
        "index_order": site.index_order,
        "scan_from_connection": matrix(site.scan_from_connection),
        "covariance": matrix(site.covariance),
        "u95": _bounds(site.u95),
        "deviation": _deviation(site.deviation),
        "coverage": _figure(site.coverage),
        "findings": [_finding(finding) for finding in site.findings],
        "alternatives": [
            {"scan_body": other.scan_body, "turn_deg": _figure(other.turn_deg), "odds": _figure(other.odds)}
            for other in site.alternatives
        ],
    }
    if site.u95_total is not None:
        values["u95_total"] = _bounds(site.u95_total)
        values["budget"] = [_budget_row(row) for row in site.budget]
    if site.hidden is not None:
        values["hidden"] = {
            "cause": site.hidden.cause,
            "size_deg": _figure(site.hidden.size_deg),
            "platform_um": _figure(site.hidden.platform_um),
            "axis_deg": _figure(site.hidden.axis_deg),
        }
    if site.verdict is not None:
        judged = _judged(site.verdict)
        values["verdict"] = judged.pop("verdict")
        values["verdict_details"] = judged
    if maps and site.map is not None:
        values["map"] = map_name(site.site)
    return values


def _bounds(bounds: Bounds) -> dict[str, Any]:
    return {
        "platform_um": _figure(bounds.platform_um),
        "axis_deg": _figure(bounds.axis_deg),
        "index_deg": _figure(bounds.index_deg),
    }


def _budget_row(row: BudgetRow) -> dict[str, Any]:
    return {
        "source": row.source,
        "platform_um": _figure(row.platform_um),
        "axis_deg": _figure(row.axis_deg),
        "index_deg": _figure(row.index_deg),
        "from": row.origin,
    }


def _judged(verdict: Verdict | Together) -> dict[str, Any]:
    return {
        "verdict": verdict.verdict,
        "because": verdict.because,
        "next": verdict.next,
        "limits": [_chance(chance) for chance in verdict.chances],
    }


def _chance(chance: Chance) -> dict[str, Any]:
    return {
        "what": chance.what,
        "limit": chance.limit,
        "probability": _figure(chance.probability),
        "consumers_risk": _figure(chance.consumers_risk),
        "source": chance.source,
    }


def _deviation(deviation: Deviation) -> dict[str, Any]:
    return {
        "points": deviation.points,
        "mean_um": _figure(deviation.mean_um),
        "rms_um": _figure(deviation.rms_um),
        "p95_um": _figure(deviation.p95_um),
    }


def _finding(finding: Finding) -> dict[str, Any]:
    values: dict[str, Any] = {
        "cause": finding.cause,
        "size_um": _figure(finding.size_um),
        "u95_um": _figure(finding.u95_um),
    }
    for name in ("size_deg", "u95_deg", "p", "area_mm2"):
        if getattr(finding, name) is not None:
            values[name] = _figure(getattr(finding, name))
    if finding.where is not None:
        values["where"] = [_figure(value) for value in finding.where]
    values["advice"] = finding.advice
    return values


def _figure(value: float | None) -> float | None:
    """A number to 12 digits, or null where it is not known: NaN has no place in JSON.

    Beyond 12 digits a figure would depend on where in memory its matrices happened to lie.
    """
    return float(f"{value:.12g}") if value is not None and math.isfinite(value) else None


def matrix(values: FloatArray) -> list[list[float]]:
    """Rows of a pose or covariance. Raises ValueError where a value is not finite."""
    rows: list[list[float]] = values.tolist()
    if not all(math.isfinite(value) for row in rows for value in row):
        raise ValueError("a pose or covariance holds a value that is not finite")
    return rows
