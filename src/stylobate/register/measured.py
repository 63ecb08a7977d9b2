"""Measurements with a unit: entered once, refused where the unit may not be used, gathered for the drift."""

from __future__ import annotations

import hashlib
import json
import math
from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from stylobate.core.errors import RegisterError
from stylobate.record import Record, RecordSite
from stylobate.register.entries import enter, known, words
from stylobate.register.store import Register
from stylobate.register.units import Unit, objections, units
from stylobate.register.wear import Outlook, Series, Slope, outlook, slope_of

QUANTITIES = ("mean", "rms")
"""Of `deviation`: the mean tells even loss or growth, the rms also uneven change."""


@dataclass(frozen=True)
class Use:
    """The circumstances of a measurement. case: None on the bench. sprayed: left out of the drift."""

    case: str | None
    at: str
    scanner: str | None = None
    sprayed: bool = False
    override: str | None = None


@dataclass(frozen=True)
class Wear:
    """A unit's outlook by quantity ("mean", "rms"), and how many measurements count."""

    unit: Unit
    outlooks: dict[str, Outlook]
    points: int

    @property
    def warnings(self) -> list[str]:
        """One sentence for each quantity that drifts or nears the limit."""
        found = []
        for name, view in self.outlooks.items():
            near = view.limit in ("passed", "may be passed")
            if not near and not view.drifts:
                continue
            text = f"{name} deviation changes by {view.slope.per_cycle_um:+.2f} ± {view.slope.u95_um(1):.2f} µm a cycle"
            if view.drifts:
                text += ": it drifts"
            if near:
                after = f"{view.change_um:+.0f} ± {view.change_u95_um:.0f} µm since new after one more"
                limit = f"the wear limit of {self.unit.kind.wear_limit_um:g} µm"
                text += f"; {after}: {limit} {'is' if view.limit == 'passed' else 'may be'} passed"
            found.append(text)
        return found


def enter_measurement(register: Register, name: str, record: Record, site: str, use: Use) -> Unit:
    """Add one site of a result to a unit's history; returns the unit as it then stands.

    Raises RegisterError: unknown unit or site, another scan body than the unit's, no deviation in the result, entered
    already, or a unit that may not be used (unless `use.override` gives the reason, which is logged).
    """
    case = None if use.case is None else words(use.case, "case")
    if case is not None and ";" in case:
        raise RegisterError("case: a name without ';' is needed")
    reason = None if use.override is None else words(use.override, "override")
    sha256 = hashlib.sha256(record.path.read_bytes()).hexdigest()
    with register.writing():
        unit = units(register, known(register, [name]))[0]
        measured = _site(record, site, unit)
        _require_new(register, unit, record, site, sha256)
        against = [] if case is None else objections(unit, case, use.at)
        if against and reason is None:
            raise RegisterError(
                f"unit {unit.number} may not be used: {'; '.join(against)}. If it was used all the same, enter it with"
                " --override and the reason",
                tuple(against),
            )
        event = enter(register, unit.number, "measured", use.at, case=case, note=None if case else "on the bench")
        if against:
            enter(
                register, unit.number, "override", use.at, case=case, note=f"{reason} (against: {'; '.join(against)})"
            )
        _insert(register, event, record, measured, sha256, use)
        return units(register, [unit.number])[0]


def _site(record: Record, site: str, unit: Unit) -> RecordSite:
    try:
        found = record.site(site)
    except KeyError:
        names = ", ".join(s.site for s in record.sites) or "none"
        raise RegisterError(f"{record.name}: there is no site '{site}'; it has: {names}") from None
    if found.scan_body != unit.kind.scan_body:
        raise RegisterError(
            f"unit {unit.number} is a {unit.kind.scan_body}, but site {site} of {record.name} was measured as"
            f" {found.scan_body}; check the unit's number and the site"
        )
    deviation = found.deviation
    if deviation is None or not all(map(math.isfinite, (deviation.mean_um, deviation.rms_um, deviation.p95_um))):
        raise RegisterError(f"{record.name}: site {site} has no deviation; write it again with 'stylobate measure'")
    return found


def _require_new(register: Register, unit: Unit, record: Record, site: str, sha256: str) -> None:
    rows = register.rows(
        "SELECT e.unit, m.site, m.result_sha256, m.scan_sha256 FROM measurement AS m JOIN live AS e ON e.id = m.event"
        " WHERE m.scan_sha256 = ? OR m.result_sha256 = ?",
        record.scan.sha256,
        sha256,
    )
    for row in rows:
        other, its_site = str(row["unit"]), str(row["site"])
        if other.casefold() == unit.number.casefold():
            raise RegisterError(f"unit {unit.number} is entered for this scan already (site {its_site})")
        if its_site == site and row["result_sha256"] == sha256:
            raise RegisterError(
                f"site {site} of {record.name} is entered for unit {other} already; if that was wrong, take it back"
                " with 'stylobate register void'"
            )


def _insert(register: Register, event: int, record: Record, site: RecordSite, sha256: str, use: Use) -> None:
    deviation = site.deviation
    assert deviation is not None
    findings = [{"cause": f.cause, "size_um": f.size_um, "u95_um": f.u95_um} for f in site.findings]
    register.add(
        "measurement", event=event, result_sha256=sha256, scan_sha256=record.scan.sha256, scan_file=record.scan.file,
        site=site.site, scanner=use.scanner, sprayed=int(use.sprayed), points=deviation.points,
        mean_um=deviation.mean_um, rms_um=deviation.rms_um, p95_um=deviation.p95_um, coverage=site.coverage,
        platform_u95_um=None if site.u95 is None else site.u95.platform_um, verdict=site.verdict,
        findings=json.dumps(findings),
    )  # fmt: skip


_SHAPES = """
SELECT e.unit, m.scanner, m.mean_um AS mean, m.rms_um AS rms,
    coalesce((SELECT sum(s.amount) FROM live AS s WHERE s.unit = e.unit AND s.kind = 'sterilised'
        AND (s.at, s.id) < (e.at, e.id)), 0) AS cycles
FROM measurement AS m JOIN live AS e ON e.id = m.event
WHERE m.sprayed = 0
ORDER BY e.at, e.id
"""


def wear(register: Register) -> list[Wear]:
    """The outlook of every unit that is in use and measured often enough."""
    shapes = _series(register)
    found = []
    for unit in units(register):
        own = shapes.get(unit.number.casefold(), {})
        if unit.retired_at is not None or not own:
            continue
        views = {}
        for name in QUANTITIES:
            slope = slope_of([levels[name] for levels in own.values()])
            if slope is not None:
                views[name] = outlook(slope, unit.cycles + 1, unit.kind.wear_limit_um, len(QUANTITIES))
        found.append(Wear(unit, views, sum(len(levels["mean"][0]) for levels in own.values())))
    return found


def common_slopes(register: Register) -> dict[str, dict[str, Slope]]:
    """For each scan body and quantity: one slope through all its units, each on its own level."""
    shapes = _series(register)
    grouped: dict[str, list[dict[str, Series]]] = defaultdict(list)
    for unit in units(register):
        grouped[unit.kind.scan_body] += shapes.get(unit.number.casefold(), {}).values()
    result: dict[str, dict[str, Slope]] = {}
    for body, levels in grouped.items():
        slopes = {name: slope_of([level[name] for level in levels]) for name in QUANTITIES}
        known_slopes = {name: slope for name, slope in slopes.items() if slope is not None}
        if known_slopes:
            result[body] = known_slopes
    return result


def _series(register: Register) -> dict[str, dict[str | None, dict[str, Series]]]:
    """By unit (folded case) and scanner: the series of each quantity."""
    gathered: dict[tuple[str, str | None], list[tuple[float, float, float]]] = defaultdict(list)
    for row in register.rows(_SHAPES):
        key = (str(row["unit"]).casefold(), row["scanner"])
        gathered[key].append((float(row["cycles"]), float(row["mean"]), float(row["rms"])))
    result: dict[str, dict[str | None, dict[str, Series]]] = defaultdict(dict)
    for (unit, scanner), rows in gathered.items():
        table = np.array(rows)
        result[unit][scanner] = {"mean": (table[:, 0], table[:, 1]), "rms": (table[:, 0], table[:, 2])}
    return result
