"""A comparison of scans as files: compare.json, the pooled result.json, tables as CSV and Parquet."""

from __future__ import annotations

import csv
import io
import math
import re
from typing import Any

import numpy as np

from stylobate import __version__
from stylobate.core.spreadsheet import inert
from stylobate.report.document import document, matrix
from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.several.comparing.components import Spread
from stylobate.several.comparing.model import Comparison
from stylobate.several.comparing.moved import Moved
from stylobate.several.comparing.pool import Pooled

FORMAT = "stylobate-compare"
VERSION = 1
COMPARE, POOLED = "compare.json", "result.json"
OWNED = re.compile(r"compare\.(csv|parquet|png|pdf)|result\.json")
FIGURES = {
    "platform": ("platform_um", 1e3),
    "axis": ("axis_deg", math.degrees(1.0)),
    "index": ("index_deg", math.degrees(1.0)),
    "distance": ("distance_um", 1e3),
    "side": ("side_um", 1e3),
    "height": ("height_um", 1e3),
}
"""Names in the files, and the factor from mm or radians."""


def save(comparison: Comparison, staging: Staging, plots: dict[str, bytes]) -> None:
    """Write every file of a comparison, compare.json last. plots: name and content. Raises OutputError."""
    staging.write("compare.csv", _csv(comparison))
    staging.write("compare.parquet", _parquet(comparison))
    for name, content in plots.items():
        staging.write(name, content)
    if comparison.pooled is not None:
        staging.write(POOLED, laid_out(pooled_document(comparison.pooled)).encode())
    staging.write(COMPARE, laid_out(comparison_document(comparison)).encode())
    staging.commit(COMPARE, OWNED)


def scan_names(comparison: Comparison) -> list[str]:
    """The result files, as the caller named them."""
    return [_name(record.name, str(record.path)) for record in comparison.union.records]


def _name(given: str, path: str) -> str:
    return path if not given.endswith(".json") else given


def comparison_document(comparison: Comparison) -> dict[str, Any]:
    """compare.json as nested dicts and lists."""
    union, names = comparison.union, scan_names(comparison)
    labels = union.labels()
    values: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "scans": names,
        "scans_sha256": [record.scan.sha256 for record in union.records],
        "matched": [
            {names[k]: site.site for k, site in enumerate(union.sites[i]) if site is not None} for i in union.common()
        ],
        "repeatability": figures(comparison.repeats.within),
        "pairs": [
            {
                "sites": [labels[i] for i in pair.implants],
                "distance_mm": [None if d is None else round(d, 6) for d in pair.distances],
                "sd_um": None if pair.sd is None else 1e3 * pair.sd,
            }
            for pair in comparison.pairs
        ],
        "moved": [_moved(comparison, moved, names, labels) for moved in comparison.moved],
        "tried": comparison.tried,
        "can_find": [
            {"site": labels[i], "height_um": None if math.isnan(height) else 1e3 * height}
            for i, height in enumerate(comparison.findable)
        ],
        "noise_factor": _range(comparison.noise_factor, 1.0),
    }
    if comparison.drift is not None:
        drift = comparison.drift
        values["drift"] = {
            "sites": [labels[i] for i in drift.implants],
            "distance_sd_um": 1e3 * drift.median,
            "low_um": 1e3 * drift.low,
            "high_um": 1e3 * drift.high,
            "from": comparison.drift_from,
        }
    if comparison.agreement is not None:
        agreement = comparison.agreement
        values["agreement"] = {
            "p": agreement.p,
            "chi_square": agreement.squares,
            "degrees_of_freedom": agreement.freedom,
            "drift_counted": agreement.drift,
        }
    if comparison.groups:
        values |= _grouped(comparison, names, labels)
    if comparison.pooled is None:
        values["not_pooled"] = comparison.why_not_pooled
    values["notes"] = list(comparison.notes)
    return values


def figures(spreads: dict[str, Spread | None]) -> dict[str, Any]:
    """Standard deviations, and with each its 95 % interval and degrees of freedom; null where nothing tells."""
    values: dict[str, Any] = {}
    intervals: dict[str, Any] = {}
    for key, (name, factor) in FIGURES.items():
        spread = spreads[key]
        values[name] = None if spread is None else factor * spread.sd
        intervals[name] = None if spread is None else [factor * spread.low, factor * spread.high]
    freedom = {FIGURES[key][0]: None if spread is None else spread.freedom for key, spread in spreads.items()}
    return values | {"interval_95": intervals, "degrees_of_freedom": {name: freedom[name] for name in values}}


def _moved(comparison: Comparison, moved: Moved, names: list[str], labels: list[str]) -> dict[str, Any]:
    scan, implant = moved.cell
    site = comparison.union.sites[implant][scan]
    assert site is not None
    return {
        "site": site.site,
        "scan": names[scan],
        "shift_um": [1e3 * float(value) for value in moved.shift],
        "u95_um": 1e3 * moved.u95,
        "turn_deg": moved.turn_deg,
        "p": moved.p,
        "matched_as": labels[implant],
        "instead": [labels[i] for i in moved.instead],
    }


def _range(spread: Spread, factor: float) -> dict[str, float]:
    return {"median": factor * spread.sd, "low": factor * spread.low, "high": factor * spread.high}


def _grouped(comparison: Comparison, names: list[str], labels: list[str]) -> dict[str, Any]:
    between = comparison.repeats.between
    return {
        "reproducibility": figures(comparison.repeats.overall),
        "between_groups": {
            name: None if between[key] is None else factor * float(between[key] or 0.0)
            for key, (name, factor) in FIGURES.items()
        },
        "groups": [
            {
                "name": group.name,
                "scans": [names[k] for k in group.scans],
                "repeatability": figures(group.repeats.within),
            }
            for group in comparison.groups
        ],
        "contrasts": [
            {
                "groups": list(one.groups),
                "sites": [labels[i] for i in one.implants],
                "difference_um": 1e3 * one.difference,
                "u95_um": 1e3 * one.u95,
            }
            for one in comparison.contrasts
        ],
    }


def pooled_document(pooled: Pooled) -> dict[str, Any]:
    """The pooled result as nested dicts and lists, its sites' covariances with each other in `cross`."""
    values = document(pooled.result, maps=False)
    values["cross"] = [{"sites": list(names), "covariance": matrix(block)} for names, block in pooled.cross.items()]
    values["pooled_from"] = list(pooled.sources)
    return values


HEAD = (
    "scan",
    "group",
    "site",
    "matched_as",
    "x_um",
    "y_um",
    "height_um",
    "tilt_x_deg",
    "tilt_y_deg",
    "turn_deg",
    "moved",
)


def rows(comparison: Comparison) -> list[tuple[Any, ...]]:
    """One row a scan and site: how its pose differs from the mean of all, in its connection frame (HEAD)."""
    union, names, labels = comparison.union, scan_names(comparison), comparison.union.labels()
    group = {k: one.name for one in comparison.groups for k in one.scans}
    moved = {one.cell for one in comparison.moved}
    table = []
    for k in range(len(names)):
        for i in union.common():
            site = union.sites[i][k]
            if site is None:
                continue
            off = comparison.residual[k, 6 * i : 6 * i + 6]
            turn = float(np.degrees(off[5])) if site.index_order > 0 else None
            table.append(
                (
                    names[k], group.get(k, ""), site.site, labels[i], *(1e3 * off[:3]).tolist(),
                    *np.degrees(off[3:5]).tolist(), turn, (k, i) in moved,
                )
            )  # fmt: skip
    return table


def _csv(comparison: Comparison) -> bytes:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(HEAD)
    for row in rows(comparison):
        writer.writerow(["" if value is None else inert(value) if isinstance(value, str) else value for value in row])
    return text.getvalue().encode()


def _parquet(comparison: Comparison) -> bytes:
    import pyarrow as pa
    import pyarrow.parquet as pq

    kinds = [pa.string()] * 4 + [pa.float64()] * 6 + [pa.bool_()]
    columns = list(zip(*rows(comparison), strict=True))
    arrays = [pa.array(column, type=kind) for column, kind in zip(columns, kinds, strict=True)]
    sink = io.BytesIO()
    pq.write_table(pa.Table.from_arrays(arrays, names=list(HEAD)), sink)
    return sink.getvalue()
