"""All results of a batch in one table, a row a site; a scan without one has a row of its own."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from stylobate.batch.journal import Journal, Outcome, replaced
from stylobate.batch.source import Job
from stylobate.core.errors import ResultError
from stylobate.core.result import Bounds
from stylobate.core.spreadsheet import inert
from stylobate.record import Record, RecordSite, read_result

TEXT, NUMBER, WHOLE = "text", "number", "whole"
COLUMNS: dict[str, str] = {
    "scan": TEXT, "status": TEXT, "message": TEXT, "seconds": NUMBER, "scan_sha256": TEXT, "triangles": WHOLE,
    "sites": WHOLE, "together": TEXT, "site": TEXT, "scan_body": TEXT, "connection": TEXT, "verdict": TEXT,
    "x": NUMBER, "y": NUMBER, "z": NUMBER, "axis_x": NUMBER, "axis_y": NUMBER, "axis_z": NUMBER,
    "u95_platform_um": NUMBER, "u95_axis_deg": NUMBER, "u95_index_deg": NUMBER,
    "u95_total_platform_um": NUMBER, "u95_total_axis_deg": NUMBER, "u95_total_index_deg": NUMBER,
    "coverage": NUMBER, "points": WHOLE, "mean_um": NUMBER, "rms_um": NUMBER, "p95_um": NUMBER, "findings": TEXT,
}  # fmt: skip

Row = dict[str, Any]


def rows_of(journal: Journal, outcomes: Mapping[Job, Outcome]) -> list[Row]:
    """The table's rows, scans in order, read from the results as they lie in the folder."""
    rows: list[Row] = []
    for job, outcome in outcomes.items():
        head = {
            "scan": _readable(str(job.path)), "status": outcome.status, "message": _readable(outcome.message) or None,
            "seconds": outcome.seconds,
        }  # fmt: skip
        if outcome.status != "measured":
            rows.append(head)
            continue
        try:
            rows += _of_record(head, read_result(journal.folder(job)))
        except ResultError as error:
            rows.append({**head, "status": "lost", "message": str(error)})
    return rows


def _readable(text: str) -> str:
    """Text that every reader takes: bytes of a file name that are no UTF-8 are shown as question marks."""
    return text.encode("utf-8", "replace").decode()


def _of_record(head: Row, record: Record) -> list[Row]:
    whole = {
        **head, "scan_sha256": record.scan.sha256, "triangles": record.scan.triangles, "sites": len(record.sites),
        "together": None if record.together is None else record.together.verdict,
    }  # fmt: skip
    return [{**whole, **_of_site(site)} for site in record.sites] or [whole]


def _of_site(site: RecordSite) -> Row:
    pose, deviation = site.scan_from_connection, site.deviation
    row: Row = {
        "site": site.site, "scan_body": site.scan_body, "connection": site.connection, "verdict": site.verdict,
        **{name: float(pose[k, 3]) for k, name in enumerate("xyz")},
        **{f"axis_{name}": float(pose[k, 2]) for k, name in enumerate("xyz")},
        **_bounds("u95", site.u95), **_bounds("u95_total", site.u95_total),
        "coverage": site.coverage, "findings": "; ".join(finding.cause for finding in site.findings) or None,
    }  # fmt: skip
    if deviation is not None:
        row |= {
            "points": deviation.points, "mean_um": deviation.mean_um, "rms_um": deviation.rms_um,
            "p95_um": deviation.p95_um,
        }  # fmt: skip
    return {
        name: None if isinstance(value, float) and not math.isfinite(value) else value for name, value in row.items()
    }


def _bounds(name: str, bounds: Bounds | None) -> Row:
    if bounds is None:
        return {}
    return {
        f"{name}_platform_um": bounds.platform_um, f"{name}_axis_deg": bounds.axis_deg,
        f"{name}_index_deg": bounds.index_deg,
    }  # fmt: skip


def write_summary(out: Path, rows: Iterable[Row]) -> None:
    """summary.csv and summary.parquet. Raises OutputError."""
    table = [{name: row.get(name) for name in COLUMNS} for row in rows]
    replaced(out / "summary.csv", _csv(table))
    replaced(out / "summary.parquet", _parquet(table))


def _csv(table: list[Row]) -> bytes:
    text = io.StringIO()
    writer = csv.DictWriter(text, COLUMNS, lineterminator="\r\n")
    writer.writeheader()
    for row in table:
        writer.writerow({name: inert(value) if isinstance(value, str) else value for name, value in row.items()})
    return ("\ufeff" + text.getvalue()).encode()


def _parquet(table: list[Row]) -> bytes:
    import pyarrow as pa
    import pyarrow.parquet as pq

    kinds = {TEXT: pa.string(), NUMBER: pa.float64(), WHOLE: pa.int64()}
    schema = pa.schema([(name, kinds[kind]) for name, kind in COLUMNS.items()])
    sink = io.BytesIO()
    pq.write_table(pa.Table.from_pylist(table, schema=schema), sink, compression="zstd")
    return sink.getvalue()
