"""`poses`: a table of poses measured elsewhere → a result like that of a scan, for every command that reads results."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import numpy as np

from stylobate.core.arch import order_along
from stylobate.core.errors import ResultError
from stylobate.core.result import Deviation, NotShown, PartsInfo, Result, ScanInfo, Site
from stylobate.core.rigid import ANY_TURN, pose
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite, read_result
from stylobate.several.elsewhere.table import Row, Table, read_table
from stylobate.several.match import matched
from stylobate.uncertainty.bounds import bounds, pair

NOT_SHOWN = (NotShown("seating", "The table says where the part stood when it was measured, not that it was seated."),)


def poses(
    table: str | Path,
    *,
    like: Record | str | Path | None = None,
    u_um: float | None = None,
    u_axis_deg: float | None = None,
    u_turn_deg: float | None = None,
) -> Result:
    """Read poses with their uncertainties from a CSV table.

    like: a result of the same implants, for connection, platform and index marks where the table does not give them;
    sites are matched by how they stand. u_um: standard uncertainty along each direction, u_axis_deg and u_turn_deg
    about each direction across the axis and about it, for rows that state none.

    Raises ResultError.
    """
    read = read_table(Path(table))
    known = like if like is None or isinstance(like, Record) else read_result(like)
    given = {"u_um": u_um, "u_axis_deg": u_axis_deg, "u_turn_deg": u_turn_deg}
    drafts = [_draft(read, row, given) for row in read.rows]
    sites = _completed(read, drafts, known)
    order = order_along(
        np.array([site.scan_from_connection[:3, 3] for site in sites]),
        np.array([site.scan_from_connection[:3, 2] for site in sites]),
    )
    along = tuple(_site(sites[k]) for k in order)
    return Result(
        scan=ScanInfo(read.path.name, read.sha256, 0),
        parts=known.parts if known is not None else PartsInfo("", "", ""),
        work=(known.work if known is not None else "") or "bridge",
        sites=along,
        pairs=tuple(
            pair((a.site, b.site), (a.scan_from_connection, b.scan_from_connection), (a.covariance, b.covariance))
            for a, b in combinations(along, 2)
        ),
        not_shown=NOT_SHOWN,
        warnings=("These poses were not measured in a scan by this program: they are from a table.",),
    )


def _draft(table: Table, row: Row, given: dict[str, float | None]) -> RecordSite:
    """A site as far as its row goes: connection "" and platform 0 where not given."""
    mark = row.mark if row.mark is not None else _any_across(row.axis)
    rotation = np.stack([mark, np.cross(row.axis, mark), row.axis], axis=1)
    return RecordSite(
        site=row.words["site"],
        scan_body=row.words["scan_body"],
        connection=row.words["connection"],
        platform_diameter=row.figures.get("platform_diameter", 0.0),
        index_order=int(row.figures.get("index_order", 0)) if row.mark is not None else 0,
        scan_from_connection=pose(rotation, row.centre),
        covariance=_covariance(table, row, given),
    )


def _covariance(table: Table, row: Row, given: dict[str, float | None]) -> FloatArray:
    if row.covariance is not None:
        return row.covariance
    u = {name: row.figures.get(name, value) for name, value in given.items()}
    for name, option in (("u_um", "--u-um"), ("u_axis_deg", "--u-axis-deg")):
        if u[name] is None:
            raise ResultError(
                f"{table.path}: line {row.line}: no uncertainty: neither a column {name} nor {option}; "
                "ask whoever measured for it"
            )
    assert u["u_um"] is not None
    assert u["u_axis_deg"] is not None
    tilt = math.radians(u["u_axis_deg"])
    turn_deg = u["u_turn_deg"] if row.mark is not None else None
    turn = ANY_TURN if turn_deg is None else math.radians(turn_deg)
    return np.diag([u["u_um"] * 1e-3] * 3 + [tilt, tilt, turn]) ** 2


def _any_across(axis: FloatArray) -> FloatArray:
    across = np.cross(axis, np.eye(3)[int(np.abs(axis).argmin())])
    return np.asarray(across / np.linalg.norm(across))


def _completed(table: Table, drafts: list[RecordSite], like: Record | None) -> list[RecordSite]:
    """What the rows leave open, from the result that they are of; a turn that is not known follows it too."""
    if like is not None:
        whole = Record(table.path, str(table.path), ScanInfo("", "", 0), PartsInfo("", "", ""), "", tuple(drafts))
        match = matched(whole, like)
        other = {i: like.sites[j] for i, j in match.pairs}
        drafts = [_filled(draft, other[k], match.b_from_a) if k in other else draft for k, draft in enumerate(drafts)]
    for row, draft in zip(table.rows, drafts, strict=True):
        if not draft.connection or draft.platform_diameter == 0.0:
            what = "connection" if not draft.connection else "platform_diameter"
            raise ResultError(f"{table.path}: line {row.line}: no {what}; add the column, or give --like RESULT")
    return drafts


def _filled(draft: RecordSite, other: RecordSite, other_from_here: FloatArray) -> RecordSite:
    at = draft.scan_from_connection
    if draft.index_order == 0 and draft.covariance[5, 5] >= ANY_TURN**2 * 0.999:
        axis = at[:3, 2]
        mark = other_from_here[:3, :3].T @ other.scan_from_connection[:3, 0]
        mark = mark - axis * (mark @ axis)
        mark /= np.linalg.norm(mark)
        at = pose(np.stack([mark, np.cross(axis, mark), axis], axis=1), at[:3, 3])
    return replace(
        draft,
        scan_body=draft.scan_body or other.scan_body,
        connection=draft.connection or other.connection,
        platform_diameter=draft.platform_diameter or other.platform_diameter,
        index_order=draft.index_order or other.index_order,
        scan_from_connection=at,
    )


def _site(site: RecordSite) -> Site:
    unknown = float("nan")
    return Site(
        site=site.site,
        scan_body=site.scan_body,
        connection=site.connection,
        platform_diameter=site.platform_diameter,
        index_order=site.index_order,
        scan_from_connection=site.scan_from_connection,
        covariance=site.covariance,
        u95=bounds(site.covariance, site.index_order),
        deviation=Deviation(0, unknown, unknown, unknown),
        coverage=unknown,
    )
