"""Poses and covariances for other programs: poses.json and poses.csv."""

from __future__ import annotations

import csv
import io
from typing import Any

from stylobate.case.checks import SiteState
from stylobate.core.result import Bounds
from stylobate.core.spreadsheet import inert
from stylobate.core.teeth import tooth_name
from stylobate.record import Record, RecordSite
from stylobate.report.laid_out import laid_out

ABOUT = (
    "Lengths in mm, in the coordinates of the scan. scan_from_connection takes connection coordinates (origin at the "
    "centre of the platform, z along the axis away from the bone, x towards an index mark) to scan coordinates. "
    "covariance is that of the small motion (tx, ty, tz, rx, ry, rz), mm and radians, in the connection frame at the "
    "platform: true pose = pose · exp(motion); it speaks of the scan alone. Poses that differ by a turn of "
    "k · 360° / index_order about z are the same connection."
)
_COLUMNS = ("tooth", "site", "scan_body", "connection", "index_order", "platform_diameter_mm", "verdict", "released_by",
            "x_mm", "y_mm", "z_mm", "axis_x", "axis_y", "axis_z", "index_x", "index_y", "index_z", "platform_u95_um",
            "axis_u95_deg", "index_u95_deg", "platform_u95_total_um", "axis_u95_total_deg",
            "index_u95_total_deg")  # fmt: skip
_TERMS = ("tx", "ty", "tz", "rx", "ry", "rz")


def poses_json(record: Record, state: dict[str, SiteState]) -> bytes:
    """The poses of every site. state: by site, of those that a tooth is named for."""
    values = {
        "format": "stylobate-poses",
        "version": 1,
        "about": ABOUT,
        "work": record.work,
        "sites": [_site(site, state.get(site.site)) for site in record.sites],
        "cross": [{"sites": list(sites), "covariance": block.tolist()} for sites, block in record.cross.items()],
    }
    return laid_out(values).encode()


def _site(site: RecordSite, state: SiteState | None) -> dict[str, Any]:
    return {
        "tooth": None if state is None else state.tooth,
        "name": None if state is None else tooth_name(state.tooth),
        "site": site.site,
        "scan_body": site.scan_body,
        "connection": site.connection,
        "index_order": site.index_order,
        "platform_diameter": site.platform_diameter,
        "verdict": site.verdict,
        "released_by": None if state is None or state.release is None else state.release.by,
        "checks_open": None if state is None else list(state.missing),
        "scan_from_connection": site.scan_from_connection.tolist(),
        "covariance": site.covariance.tolist(),
        "u95": _bounds(site.u95),
        "u95_total": _bounds(site.u95_total),
    }


def _bounds(bounds: Bounds | None) -> dict[str, float | None] | None:
    if bounds is None:
        return None
    return {"platform_um": bounds.platform_um, "axis_deg": bounds.axis_deg, "index_deg": bounds.index_deg}


def poses_csv(record: Record, state: dict[str, SiteState]) -> bytes:
    """One row a site; the upper half of the covariance in columns cov_tx_tx to cov_rz_rz. No text cell is a formula."""
    pairs = [(i, j) for i in range(6) for j in range(i, 6)]
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\r\n")
    table.writerow([*_COLUMNS, *(f"cov_{_TERMS[i]}_{_TERMS[j]}" for i, j in pairs)])
    for site in record.sites:
        found = state.get(site.site)
        released = "" if found is None or found.release is None else found.release.by
        words = ["" if found is None else found.tooth, site.site, site.scan_body, site.connection]
        pose = site.scan_from_connection
        table.writerow(
            [
                *map(inert, words), site.index_order, site.platform_diameter, inert(site.verdict or ""),
                inert(released), *map(repr, pose[:3, 3].tolist()), *map(repr, pose[:3, 2].tolist()),
                *map(repr, pose[:3, 0].tolist()), *_cells(site.u95), *_cells(site.u95_total),
                *(repr(float(site.covariance[i, j])) for i, j in pairs),
            ]
        )  # fmt: skip
    return text.getvalue().encode("utf-8-sig")


def _cells(bounds: Bounds | None) -> list[str]:
    values = (None, None, None) if bounds is None else (bounds.platform_um, bounds.axis_deg, bounds.index_deg)
    return ["" if value is None else repr(value) for value in values]
