"""Rows of kept outcomes → the tables of the page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from typing import Any

import numpy as np

from study.measured import TOO_LITTLE
from study.scenes import FOREIGN, KERNELS, SIZES
from stylobate.choose.readings import TURN_ODDS
from stylobate.diagnose.hidden import POWER_Z

Row = dict[str, Any]
WHOLE_LEAN = 0.75  # of a bend in the error of the axis: then all that is seen leans as one
LIMIT_UM, LIMIT_DEG = 50.0, 0.4  # of `--work bridge`
OPEN = float(np.sqrt(2.0 * np.log(TURN_ODDS) + POWER_Z**2) - POWER_Z)
"""Standard deviations by which a turn stands out that is left open with 95 %."""


def clopper_pearson(hits: int, count: int, level: float = 0.95) -> tuple[float, float]:
    """Exact binomial bounds (Clopper & Pearson 1934)."""
    from scipy.stats import beta

    tail = (1.0 - level) / 2.0
    low = 0.0 if hits == 0 else float(beta.ppf(tail, hits, count - hits + 1))
    high = 1.0 if hits == count else float(beta.isf(tail, hits + 1, count - hits))
    return low, high


def share(hits: int, count: int) -> str:
    """A share in percent with its bounds."""
    if count == 0:
        return "–"
    low, high = clopper_pearson(hits, count)
    return f"{100 * hits / count:.1f} % ({100 * low:.1f}–{100 * high:.1f}; {hits} of {count})"


def held(rows: Sequence[Row], bound: str) -> list[str]:
    """How often a stated bound held the truth: platform, axis, index."""
    result = []
    for name in range(3):
        hits = count = 0
        for row in rows:
            stated = row[bound][name]
            if stated is None:
                continue
            count += 1
            hits += error_of(row)[name] <= stated
        result.append(share(hits, count))
    return result


def error_of(row: Row) -> tuple[float, float, float]:
    """Errors of platform (µm), axis and turn (degrees)."""
    error = np.array(row["error"])
    return (
        1e3 * float(np.linalg.norm(error[:3])),
        float(np.degrees(np.linalg.norm(error[3:5]))),
        float(abs(np.degrees(error[5]))),
    )


def nees(rows: Sequence[Row], covariance: str) -> str:
    """Mean of ξᵀ C⁻¹ ξ / 6 and its standard error."""
    values = [
        float(np.array(r["error"]) @ np.linalg.solve(np.array(r[covariance]), np.array(r["error"]))) / 6 for r in rows
    ]
    if len(values) < 2:
        return "–"
    return f"{np.mean(values):.2f} ± {np.std(values) / np.sqrt(len(values)):.2f}"


def lines(header: Sequence[str], body: Iterable[Sequence[str]]) -> str:
    """A table in Markdown."""
    rows = [header, ["---"] * len(header), *body]
    return "\n".join("| " + " | ".join(row) + " |" for row in rows) + "\n"


def coverage(clean: Sequence[Row]) -> str:
    """Coverage of u95 on bodies as drawn, by noise and by body."""
    drawn = [row for row in clean if not row["made"] and right(row)]
    known = [row for row in drawn if row["noise"] in KERNELS]
    groups: list[tuple[str, Callable[[Row], bool]]] = [("all", lambda _: True)]
    groups += [(name, partial(_has, "noise", name)) for name in KERNELS]
    groups += [(name, partial(_has, "family", name)) for name in sorted({row["family"] for row in known})]
    body = []
    for name, wanted in groups:
        some = [row for row in known if wanted(row)]
        body.append([name, *held(some, "u95"), nees(some, "covariance")])
    return lines(["noise or body", "platform", "axis", "turn", "NEES/6"], body)


def _has(key: str, value: str, row: Row) -> bool:
    return bool(row[key] == value)


def made_and_foreign(clean: Sequence[Row]) -> str:
    """Coverage on made bodies (u95_total), under noise that cannot be represented, and of the white covariance."""
    good = [row for row in clean if right(row)]
    made = [row for row in good if row["made"] and row["noise"] in KERNELS]
    body = [["made bodies, `u95_total`", *held(made, "u95_total"), nees(made, "total")]]
    for name in FOREIGN:
        some = [row for row in good if row["noise"] == name]
        body.append([f"noise: {name}, `u95_total`", *held(some, "u95_total"), nees(some, "total")])
    white = [row | {"u95": _white_bounds(row)} for row in good if not row["made"] and row.get("white") is not None]
    body.append(["**white-noise covariance** (usual practice)", *held(white, "u95"), nees(white, "white")])
    return lines(["what", "platform", "axis", "turn", "NEES/6"], body)


def _white_bounds(row: Row) -> list[float]:
    from stylobate.uncertainty.bounds import bounds

    found = bounds(np.array(row["white"]), 1)
    assert found.index_deg is not None
    return [found.platform_um, found.axis_deg, found.index_deg]


def right(row: Row) -> bool:
    """Found, the right part, not called ambiguous: a bound is stated for it."""
    return bool(row["found"]) and row["part"] == row["shown"] and not any("ambiguous" in f[0] for f in row["findings"])


def verdicts(clean: Sequence[Row], faulty: Sequence[Row]) -> str:
    """False accepts and rejects, false alarms."""
    known = [row for row in clean if row["found"] and row["noise"] in KERNELS]
    foreign = [row for row in clean if row["found"] and row["noise"] in FOREIGN]
    bad = [row for row in faulty if row["found"]]
    off = [row for row in bad if row["verdict"] == "use" and beyond(row)]
    shown = [row for row in bad if not unseen_bend(row)]
    body = [
        ["faulty site called `use` while beyond a limit", share(len(off), len(bad))],
        ["of these, a bend that the scan does not show", f"{sum(map(unseen_bend, off))} of {len(off)}"],
        ["the same, of all other faulty sites", share(sum(not unseen_bend(row) for row in off), len(shown))],
        ["clean site not called `use`", share(sum(r["verdict"] != "use" for r in known), len(known))],
        ["clean site with a finding (ambiguities aside)", share(sum(map(alarmed, known)), len(known))],
        ["the same under noise that cannot be represented", share(sum(map(alarmed, foreign)), len(foreign))],
        ["site not found", share(sum(not r["found"] for r in clean), len(clean))],
    ]
    return lines(["what", "share (95 % bounds)"], body)


def unseen_bend(row: Row) -> bool:
    """Whether the body is bent below what is seen, so that all of it leans as one, or by less than the scan shows."""
    return row["cause"] == "bent body" and (not plain(row) or error_of(row)[1] > WHOLE_LEAN * row["size"])


def beyond(row: Row) -> bool:
    """Whether the pose is really off by more than a limit of the work."""
    platform, axis, _ = error_of(row)
    return platform > LIMIT_UM or axis > LIMIT_DEG


def alarmed(row: Row) -> bool:
    """Whether a clean site has a tested finding."""
    return any("ambiguous" not in finding[0] for finding in row["findings"])


def plain(row: Row) -> bool:
    """Whether the scan shows the fault with 95 % beside the site's own noise, where that was worked out."""
    if "turn_stands" in row:
        return bool(row["turn_stands"] < OPEN)
    return bool(row.get("stands") is None or row["stands"] >= row["needs"])


def confusion(faulty: Sequence[Row]) -> str:
    """Cause put in × cause named (every one named counts); what the scan cannot show in rows of its own."""
    causes = list(SIZES)
    found = [*causes, "part ambiguous", TOO_LITTLE]
    known = {row["cause"] for row in faulty if not plain(row)}
    body = []
    for cause, shows in [*((cause, True) for cause in causes), *((cause, False) for cause in causes if cause in known)]:
        some = [row for row in faulty if row["cause"] == cause and plain(row) == shows]
        seen = [row for row in some if row["found"]]
        silent = sum(not row["found"] and "told" not in row for row in some)
        cells = []
        for name in found:
            hits = sum(any(f[0] == name for f in row["findings"]) for row in seen)
            hits += sum(row.get("told") == name for row in some)
            cells.append(f"**{hits}**" if name == cause and hits else str(hits or "·"))
        body.append([cause if shows else f"{cause}, not shown", str(len(some)), str(silent or "·"), *cells])
    return lines(["put in", "sites", "no site", *found], body)


def sizes(faulty: Sequence[Row]) -> str:
    """How often a size lies within its u95."""
    body = []
    for cause, style in (
        ("added layer", "even"), ("added layer", "pooled"), ("bent body", "progressive"), ("bent body", "hinge"),
        ("lost material", "chip"), ("lost material", "worn edge"), ("added material", ""), ("split surface", ""),
    ):  # fmt: skip
        pairs = size_pairs(faulty, cause, style)
        hits = sum(abs(found - true) <= bound for true, found, bound in pairs)
        mean = np.mean([found / true for true, found, _ in pairs]) if pairs else float("nan")
        body.append([f"{cause} {style}".strip(), share(hits, len(pairs)), f"{mean:.2f}" if pairs else "–"])
    return lines(["size of", "within its u95", "mean of found / true"], body)


def size_pairs(faulty: Sequence[Row], cause: str, style: str) -> list[tuple[float, float, float]]:
    """(true, found, u95) of each fault that was named; the strongest finding of the cause. A chip, a worn edge and a
    lump are as large as the scanned surface departs from the drawing.
    """
    result = []
    for row in faulty:
        if row["cause"] != cause or row["style"] != style or not row["found"]:
            continue
        mine = [f for f in row["findings"] if f[0] == cause]
        if mine:
            _, um, um95, deg, deg95, _, _ = mine[0]
            true = row["departure_um"] if "departure_um" in row else row["size"]
            result.append((true, um if um is not None else deg, um95 if um is not None else deg95))
    return result


def smallest(clean: Sequence[Row]) -> str:
    """Median, and the tenth and ninetieth percentile, of the smallest fault that a clean site would show; beside it the
    median of what it would show at best.
    """
    some = [row["least"] for row in clean if row["found"] and row.get("least")]
    if not some:
        return "–\n"
    body = []
    for name in some[0]:
        low, middle, high = np.quantile([one[name][0] for one in some], [0.1, 0.5, 0.9])
        best = float(np.median([one[name][1] for one in some]))
        digits = 2 if name.endswith("deg") else 0
        numbers = f"{middle:.{digits}f}", f"{low:.{digits}f}–{high:.{digits}f}", f"{best:.{digits}f}"
        body.append([name.replace("_", " "), *numbers])
    return lines(["fault", "median site", "10–90 % of sites", "median at best"], body)
