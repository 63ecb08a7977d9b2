"""Lines → tables."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

import numpy as np

from bench.figures import found, held, right, share, silent_and_flagged, wrong_part, wrong_turn
from bench.judge import Json
from bench.tables import Table
from stylobate.core.types import FloatArray

NOT_USE = ("undecided", "do not use")
ERRORS = ("platform, rms, µm", "along the axis, mean, µm", "axis, rms, °")
STATED = (
    "u95 holds the platform", "u95 holds the axis", "u95 holds the turn", "NEES/6, mean; median",
    "u95 of the platform, median, µm", "with a finding", "findings", "verdicts",
)  # fmt: skip


def tables(lines: Sequence[Json]) -> tuple[Table, ...]:
    """All that is printed."""
    return scans(lines), accuracy(lines), by_shape(lines)


def scans(lines: Sequence[Json]) -> Table:
    """How true the scans are, and what was found in them. Flat: planes, away from their borders, against the truth."""
    mean, sd = np.array([line["flat_um"] for line in lines]).T
    head = ("scans", "found", "where nothing stands", "as another part: silent + flagged", "at a wrong turn",
            "flat, mean; sd over sites, µm", "points about it, µm")  # fmt: skip
    row = (str(len({line["seed"] for line in lines})), f"{len(found(lines))} of {len(lines)}",
           str(sum(line["stray"] for line in lines)), silent_and_flagged(wrong_part(lines)),
           silent_and_flagged(wrong_turn(lines)), f"{np.nanmean(mean):+.2f}; {np.nanstd(mean):.2f}",
           f"{np.nanmedian(sd):.1f}")  # fmt: skip
    return Table("Fused scans", head, (row,))


def accuracy(lines: Sequence[Json]) -> Table:
    """Errors and what is said of them, beside least squares of all points of the same sites, from the truth on."""
    mine = right(lines)
    sure = [line for line in mine if not any("ambiguous" in flag for flag in line["found"]["flags"])]
    least = [*_errors(line["least_squares"] for line in mine), *["–"] * len(STATED)]
    columns = (["sites", *ERRORS, *STATED], _ours(mine), _ours(sure), [str(len(mine)), *least])
    head = ("what", "the right part", "not called ambiguous", "least squares")
    return Table("Accuracy", head, tuple(zip(*columns, strict=True)))


def by_shape(lines: Sequence[Json]) -> Table:
    """Each shape by itself."""
    rows = []
    for shape in sorted({line["body"] for line in lines}):
        some = [line for line in lines if line["body"] == shape]
        mine = right(some)
        _, platform, _, _, holds, _, _, nees, _, findings, _, verdicts = _ours(mine)
        least = _errors(line["least_squares"] for line in mine)[0]
        rows.append((shape, f"{len(found(some))} of {len(some)}", platform, least, holds, nees, findings, verdicts))
    head = ("shape", "found", ERRORS[0], "least squares", STATED[0], STATED[3], STATED[5], STATED[7])
    return Table("By shape", head, tuple(rows))


def _ours(sites: Sequence[Json]) -> list[str]:
    """How many, ERRORS and STATED of found sites."""
    if not sites:
        return ["0", *["–"] * (len(ERRORS) + len(STATED))]
    flags = [site["found"]["flags"] for site in sites]
    causes = [set(some) - set(NOT_USE) for some in flags]
    nees = np.array([site["found"]["nees"] for site in sites]) / 6.0
    return [
        str(len(sites)),
        *_errors(site["found"]["xi"] for site in sites),
        *(held(sites, k) for k in range(3)),
        f"{nees.mean():.2f}; {np.median(nees):.2f}",
        f"{1e3 * np.median([site['found']['u95'][0] for site in sites]):.1f}",
        share(sum(map(bool, causes)), len(sites)),
        _counted(cause for some in causes for cause in some),
        _counted(next((flag for flag in some if flag in NOT_USE), "use") for some in flags),
    ]


def _errors(rows: Iterable[Sequence[float]]) -> list[str]:
    """ERRORS of some ξ; along the axis with its standard error, positive where the platform was found too deep."""
    xi: FloatArray = np.array(list(rows), dtype=np.float64)
    if not len(xi):
        return ["–"] * len(ERRORS)
    platform, axis = (float(np.sqrt(np.mean(np.sum(part**2, axis=1)))) for part in (xi[:, :3], xi[:, 3:5]))
    along = 1e3 * xi[:, 2]
    return [
        f"{1e3 * platform:.1f}",
        f"{along.mean():+.1f} ± {along.std() / np.sqrt(len(xi)):.1f}",
        f"{np.degrees(axis):.3f}",
    ]


def _counted(names: Iterable[str]) -> str:
    return ", ".join(f"{name} {count}" for name, count in Counter(names).most_common()) or "none"
