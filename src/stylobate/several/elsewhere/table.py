"""A table of poses (CSV) → rows, or one line that lists what is wrong with it."""

from __future__ import annotations

import csv
import hashlib
import io
import math
from dataclasses import dataclass
from itertools import combinations_with_replacement
from pathlib import Path

import numpy as np

from stylobate.core.errors import ResultError
from stylobate.core.types import FloatArray

MOST_BYTES = 4 * 2**20
MOST_FAULTS = 5
MOTIONS = ("tx", "ty", "tz", "rx", "ry", "rz")
CENTRE, AXIS, MARK = ("x", "y", "z"), ("ax", "ay", "az"), ("mx", "my", "mz")
COVARIANCE = tuple(f"c_{one}_{two}" for one, two in combinations_with_replacement(MOTIONS, 2))
UNCERTAINTIES = ("u_um", "u_axis_deg", "u_turn_deg")
WORDS = ("site", "connection", "scan_body")
FIGURES = (*CENTRE, *AXIS, *MARK, *UNCERTAINTIES, "platform_diameter", "index_order", *COVARIANCE)
NEEDED = ("site", *CENTRE, *AXIS)
ACROSS = 0.2
"""Cosine up to which a direction counts as across the axis."""


@dataclass(frozen=True)
class Row:
    """One site of the table. centre (3,) mm; axis (3,) unit; mark (3,) unit, across the axis, None where not given.

    covariance (6, 6) of ξ, None where not given as such. figures: what else stands there.
    """

    line: int
    words: dict[str, str]
    figures: dict[str, float]
    centre: FloatArray
    axis: FloatArray
    mark: FloatArray | None
    covariance: FloatArray | None


@dataclass(frozen=True)
class Table:
    """A table of poses: its rows, and the SHA-256 of the file."""

    path: Path
    sha256: str
    rows: tuple[Row, ...]


def read_table(path: Path) -> Table:
    """Read a table of poses; separators comma, semicolon or tab, with semicolons also decimal commas.

    Raises ResultError with every faulty row, up to five.
    """
    content = _content(path)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise ResultError(f"{path}: is not text in UTF-8; save the table as CSV in UTF-8") from error
    first = text.split("\n", 1)[0]
    separator = next((s for s in (";", "\t") if s in first), ",")
    try:
        lines = list(csv.reader(io.StringIO(text), delimiter=separator))
    except csv.Error as error:
        raise ResultError(f"{path}: is not CSV ({error}); save the table as CSV in UTF-8") from error
    names = [name.strip().lower() for name in lines[0]] if lines else []
    _check_names(path, names)
    rows, faults = [], []
    for number, cells in enumerate(lines[1:], start=2):
        if not any(cell.strip() for cell in cells):
            continue
        try:
            rows.append(_row(number, names, [cell.strip() for cell in cells], separator == ";"))
        except ValueError as error:
            faults.append(f"line {number}: {error}")
    known: set[str] = set()
    for row in rows:
        if row.words["site"] in known:
            faults.append(f"line {row.line}: site '{row.words['site']}' stands there twice")
        known.add(row.words["site"])
    if faults:
        more = f"; and {len(faults) - MOST_FAULTS} more" if len(faults) > MOST_FAULTS else ""
        raise ResultError(f"{path}: {'; '.join(faults[:MOST_FAULTS])}{more}; mend the table, nothing was taken from it")
    if not rows:
        raise ResultError(f"{path}: holds no row; write one a site below the line of names")
    return Table(path, hashlib.sha256(content).hexdigest(), tuple(rows))


def _content(path: Path) -> bytes:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise ResultError(f"{path}: is larger than {MOST_BYTES >> 20} MB, which no table of sites is")
        return path.read_bytes()
    except OSError as error:
        raise ResultError(f"{path}: {(error.strerror or str(error)).lower()}; name a table of poses (CSV)") from error


def _check_names(path: Path, names: list[str]) -> None:
    missing = [name for name in NEEDED if name not in names]
    if missing:
        raise ResultError(f"{path}: the first line must name the columns; missing: {', '.join(missing)}")
    unknown = [name for name in names if name not in (*WORDS, *FIGURES)]
    if unknown:
        raise ResultError(
            f"{path}: unknown column '{unknown[0]}'; known: {', '.join((*WORDS, *FIGURES[:14]))}, c_tx_tx …"
        )
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise ResultError(f"{path}: column '{twice[0]}' stands there twice; leave one")
    for group in (MARK, COVARIANCE):
        given = [name for name in group if name in names]
        if given and len(given) < len(group):
            absent = next(name for name in group if name not in names)
            raise ResultError(
                f"{path}: column '{absent}' is missing beside '{given[0]}'; give all {len(group)} or none"
            )


def _row(number: int, names: list[str], cells: list[str], decimal_comma: bool) -> Row:
    """Raises ValueError: what is wrong, without the line's number."""
    if len(cells) != len(names):
        raise ValueError(f"{len(cells)} values below {len(names)} names")
    filled = {name: cell for name, cell in zip(names, cells, strict=True) if cell}
    missing = [name for name in NEEDED if name not in filled]
    if missing:
        raise ValueError(f"no {missing[0]}")
    figures = {name: _number(name, filled[name], decimal_comma) for name in FIGURES if name in filled}
    axis = _unit("axis", figures, AXIS)
    mark = _unit("mark", figures, MARK) if all(name in figures for name in MARK) else None
    if mark is not None:
        if abs(float(mark @ axis)) > ACROSS:
            raise ValueError("the mark (mx, my, mz) does not point across the axis")
        mark = mark - axis * (mark @ axis)
        mark /= np.linalg.norm(mark)
    words = {name: filled.get(name, "") for name in WORDS}
    return Row(number, words, figures, np.array([figures[n] for n in CENTRE]), axis, mark, _covariance(figures))


def _number(name: str, cell: str, decimal_comma: bool) -> float:
    try:
        value = float(cell.replace(",", ".") if decimal_comma else cell)
    except ValueError:
        value = math.nan
    if not math.isfinite(value) or abs(value) > 1e6:
        raise ValueError(f"{name} is no number: '{cell[:20]}'")
    if value < 0 and (name in UNCERTAINTIES or name in ("platform_diameter", "index_order")):
        raise ValueError(f"{name} is below 0")
    if name == "index_order" and value != int(value):
        raise ValueError("index_order is no whole number")
    return value


def _unit(what: str, figures: dict[str, float], names: tuple[str, str, str]) -> FloatArray:
    vector = np.array([figures[name] for name in names])
    length = float(np.linalg.norm(vector))
    if length < 1e-6:
        raise ValueError(f"the {what} ({', '.join(names)}) has no length")
    return np.asarray(vector / length)


def _covariance(figures: dict[str, float]) -> FloatArray | None:
    if not all(name in figures for name in COVARIANCE):
        return None
    matrix = np.zeros((6, 6))
    for (i, j), name in zip(combinations_with_replacement(range(6), 2), COVARIANCE, strict=True):
        matrix[i, j] = matrix[j, i] = figures[name]
    sd = np.sqrt(np.diag(matrix).clip(1e-18))
    if np.linalg.eigvalsh(matrix / np.outer(sd, sd))[0] < -1e-6:
        raise ValueError("c_tx_tx … is not a covariance: a variance in it is negative")
    return matrix
