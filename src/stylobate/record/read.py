"""result.json → Record, or one line that says what is wrong with it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import ResultError
from stylobate.core.result import Bounds, Deviation, Finding, Hidden, NotShown, Pair, PartsInfo, ScanInfo
from stylobate.core.types import FloatArray
from stylobate.record.document import read_document
from stylobate.record.model import BudgetRow, Record, RecordSite, Together

if TYPE_CHECKING:
    from stylobate.record.schema import BoundsTable, FindingTable, HiddenTable, PairTable, ResultTable, SiteTable

RESULT = "result.json"
PLACE = "place.json"
SKEW_ALLOWED = 1e-5
"""Departure of a rotation from orthonormal that is taken for rounding: 0.05 µm on a lever of 5 mm."""
ROUNDING = 1e-6
"""Departure of a covariance from symmetric and positive, relative to the variances, that is taken for rounding."""


SMALLEST_SD = 1e-9
"""mm or rad; what stands beside a smaller one is judged as if it were this."""


def read_result(path: str | Path) -> Record:
    """Read a measurement: a result.json, or the folder that holds one.

    Raises ResultError: one line with the file, the key, what is wrong and what to do.
    """
    from stylobate.record.schema import FORMAT, VERSION, ResultTable

    file = _file(Path(path))
    table = read_document(file, ResultTable, FORMAT, VERSION, "measure")
    sites = tuple(_site(file, k, site) for k, site in enumerate(table.sites))
    record = Record(
        path=file,
        name=str(path),
        scan=ScanInfo(table.scan.file, table.scan.sha256, table.scan.triangles),
        parts=PartsInfo(table.parts.name, table.parts.revision, table.parts.sha256),
        work=table.work,
        sites=sites,
        cross=_cross(file, table, [site.site for site in sites]),
        together=None if table.together is None else Together(**table.together.model_dump()),
        pairs=tuple(_pair(pair) for pair in table.pairs),
        not_shown=tuple(NotShown(item.what, item.check) for item in table.not_shown),
        warnings=tuple(table.warnings),
        software=f"{table.software.name} {table.software.version}".strip(),
    )
    _require_covariance(file, "the covariances of the sites with each other (cross)", record.covariance())
    return record


def read_standing(path: str | Path) -> Record:
    """What a frame stands on: a result as `read_result` takes it, or the uppermost connections of what `place` wrote.

    Raises ResultError.
    """
    given = Path(path)
    file = given / PLACE if given.is_dir() else given
    if file != given and file.exists() and (given / RESULT).exists():
        raise ResultError(f"{given}: holds both {RESULT} and {PLACE}; name the file that the frame stands on")
    if file.name != PLACE or not file.exists():
        return read_result(path)
    from stylobate.record.schema import PlaceTable

    table = read_document(file, PlaceTable, "stylobate-place", 1, "place")
    _require_names(file, [placed.site for placed in table.sites])
    sites = []
    for k, placed in enumerate(table.sites):
        key, upper = f"sites[{k + 1}].uppermost", placed.uppermost
        sites.append(
            RecordSite(
                site=placed.site,
                scan_body="",
                connection=upper.connection,
                platform_diameter=upper.platform_diameter,
                index_order=upper.index_order,
                scan_from_connection=_pose(file, f"{key}.scan_from_connection", np.array(upper.scan_from_connection)),
                covariance=_covariance(file, f"{key}.covariance", upper.covariance),
                u95=_bounds(upper.u95),
                verdict=placed.verdict,
            )
        )
    parts = PartsInfo(table.parts.name, table.parts.revision, table.parts.sha256)
    scan = ScanInfo(table.result.file, table.result.scan_sha256, 0)
    return Record(file, str(path), scan, parts, table.work, tuple(sites))


def _file(path: Path) -> Path:
    if path.is_dir():
        if not (path / RESULT).exists():
            raise ResultError(f"{path}: this folder holds no {RESULT}; name a folder that 'stylobate measure' wrote")
        return path / RESULT
    return path


def _site(file: Path, k: int, table: SiteTable) -> RecordSite:
    key = f"sites[{k + 1}]"
    deviation = table.deviation
    return RecordSite(
        site=table.site,
        scan_body=table.scan_body,
        connection=table.connection,
        platform_diameter=table.platform_diameter,
        index_order=table.index_order,
        scan_from_connection=_pose(file, f"{key}.scan_from_connection", np.array(table.scan_from_connection)),
        covariance=_covariance(file, f"{key}.covariance", table.covariance),
        u95=_bounds(table.u95),
        u95_total=_bounds(table.u95_total),
        coverage=table.coverage,
        deviation=None
        if deviation is None
        else Deviation(deviation.points, *map(_or_nan, (deviation.mean_um, deviation.rms_um, deviation.p95_um))),
        verdict=table.verdict,
        findings=tuple(_finding(finding) for finding in table.findings),
        budget=tuple(BudgetRow(b.source, b.platform_um, b.axis_deg, b.index_deg, b.origin) for b in table.budget),
        map=table.map,
        because=table.verdict_details.because,
        next=table.verdict_details.next,
        seen_in=tuple(seen.sha256 for seen in table.seen_in if seen.counts),
        hidden=_hidden(table.hidden),
    )


def _pair(table: PairTable) -> Pair:
    return Pair(
        sites=(table.sites[0], table.sites[1]),
        distance_mm=_or_nan(table.distance_mm),
        u95_um=_or_nan(table.u95_um),
        angle_deg=_or_nan(table.angle_deg),
        angle_u95_deg=_or_nan(table.angle_u95_deg),
        total_um=table.u95_total_um,
        angle_total_deg=table.angle_u95_total_deg,
    )


def _bounds(table: BoundsTable | None) -> Bounds | None:
    if table is None or table.platform_um is None or table.axis_deg is None:
        return None
    return Bounds(table.platform_um, table.axis_deg, table.index_deg)


def _hidden(table: HiddenTable | None) -> Hidden | None:
    if table is None:
        return None
    size, platform, axis = (
        np.inf if figure is None else figure for figure in (table.size_deg, table.platform_um, table.axis_deg)
    )
    return Hidden(table.cause, size, platform, axis)


def _finding(table: FindingTable) -> Finding:
    where = None if table.where is None else (table.where[0], table.where[1], table.where[2])
    return Finding(**{**table.model_dump(), "where": where})


def _or_nan(value: float | None) -> float:
    return float("nan") if value is None else value


def _pose(file: Path, key: str, matrix: FloatArray) -> FloatArray:
    """The pose with its rounding taken out. Raises ResultError where it is no rigid motion."""
    rotation = matrix[:3, :3]
    if np.abs(matrix[3] - [0.0, 0.0, 0.0, 1.0]).max() > SKEW_ALLOWED:
        raise ResultError(f"{file}: {key}: the last row must be 0, 0, 0, 1; {_AGAIN}")
    if np.abs(rotation @ rotation.T - np.eye(3)).max() > SKEW_ALLOWED:
        raise ResultError(f"{file}: {key}: the upper left 3×3 is not a rotation; {_AGAIN}")
    if np.linalg.det(rotation) < 0:
        raise ResultError(f"{file}: {key}: is a mirror image, not a rotation; {_AGAIN}")
    return rigid.orthonormal(matrix)


_AGAIN = "write it again with the command that wrote it"


def _require_names(file: Path, names: list[str]) -> None:
    """Raises ResultError where two sites have one name."""
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        raise ResultError(f"{file}: two sites are called '{twice[0]}'; {_AGAIN}")


def _cross(file: Path, table: ResultTable, names: list[str]) -> dict[tuple[str, str], FloatArray]:
    _require_names(file, names)
    found: dict[tuple[str, str], FloatArray] = {}
    for k, entry in enumerate(table.cross):
        one, two = entry.sites
        key = f"cross[{k + 1}].sites"
        if one not in names or two not in names:
            raise ResultError(f"{file}: {key}: there is no site '{two if one in names else one}'; {_AGAIN}")
        if one == two or (one, two) in found or (two, one) in found:
            raise ResultError(f"{file}: {key}: '{one}' and '{two}' must be two sites, named once; {_AGAIN}")
        found[one, two] = np.array(entry.covariance)
    return found


def _covariance(file: Path, key: str, rows: list[list[float]]) -> FloatArray:
    """A covariance of the file, its rounding evened out. Raises ResultError."""
    matrix = np.array(rows)
    _require_covariance(file, key, matrix)
    return np.asarray((matrix + matrix.T) / 2)


def _require_covariance(file: Path, key: str, matrix: FloatArray) -> None:
    """Raises ResultError where a matrix is not symmetric and positive semi-definite, rounding apart."""
    scale = np.maximum(np.sqrt(np.abs(np.diag(matrix))), SMALLEST_SD)
    relative = matrix / np.outer(scale, scale)
    if relative.size == 0:
        return
    if np.abs(relative - relative.T).max() > ROUNDING:
        raise ResultError(f"{file}: {key}: is not symmetric; {_AGAIN}")
    if np.linalg.eigvalsh(relative)[0] < -ROUNDING * len(relative):
        raise ResultError(f"{file}: {key}: is not a covariance: a variance in it is negative; {_AGAIN}")
