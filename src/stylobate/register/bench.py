"""Acceptance of a new unit on the bench: its scans against its CAD, with the decision rule of JCGM 106."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.register.entries import enter, known, words
from stylobate.register.store import Register

LEAST_SCANS = 2
"""Scans needed: one alone says nothing of its own scatter."""
LEVEL = 0.95
SHAPE_CAUSES = {
    "bent body", "lost material", "added material", "added layer", "rough surface", "other part fits better",
    "no part fits",
}  # fmt: skip
"""Findings that speak against the body's shape, not against the scan."""


@dataclass(frozen=True)
class Judgement:
    """Of one unit: "accepted", "rejected" or "undecided"; mean p95 deviation of its bench scans and the one-sided 95 %
    uncertainty of that mean, µm; scans; why."""

    unit: str
    verdict: str
    p95_um: float
    u_um: float
    scans: int
    because: str


def judge(unit: str, p95_um: Sequence[float], causes: Sequence[str], limit_um: float) -> Judgement:
    """Accept where mean + U ≤ limit, reject where mean − U > limit, else undecided (wear, eq. 5).

    p95_um: of each bench scan. causes: of all findings. Needs LEAST_SCANS scans for a decision.
    """
    from scipy.special import stdtrit

    values = np.array(p95_um, dtype=np.float64)
    mean = float(np.mean(values)) if len(values) else float("nan")
    if len(values) < LEAST_SCANS:
        need = f"{len(values)} bench scans, {LEAST_SCANS} or more are needed"
        return Judgement(unit, "undecided", mean, float("nan"), len(values), need)
    u = float(stdtrit(len(values) - 1, LEVEL) * np.std(values, ddof=1) / np.sqrt(len(values)))
    shape = sorted(SHAPE_CAUSES & set(causes))
    figures = f"p95 deviation {mean:.1f} ± {u:.1f} µm (one-sided), limit {limit_um:g} µm"
    if mean - u > limit_um:
        return Judgement(unit, "rejected", mean, u, len(values), figures)
    if shape:
        return Judgement(unit, "undecided", mean, u, len(values), f"a bench scan found: {', '.join(shape)}")
    verdict = "accepted" if mean + u <= limit_um else "undecided"
    return Judgement(unit, verdict, mean, u, len(values), figures)


def accept(register: Register, numbers: Sequence[str], limit_um: float, at: str) -> list[Judgement]:
    """Judge units by their bench scans; what is decided is entered. Raises RegisterError for unknown units."""
    with register.writing():
        found = []
        for name in known(register, numbers):
            rows = register.rows(
                "SELECT m.p95_um, m.findings FROM measurement AS m JOIN live AS e ON e.id = m.event"
                " WHERE e.unit = ? AND e.case_name IS NULL AND m.sprayed = 0",
                name,
            )
            causes = [str(finding["cause"]) for row in rows for finding in json.loads(row["findings"])]
            judgement = judge(name, [float(row["p95_um"]) for row in rows], causes, limit_um)
            if judgement.verdict != "undecided":
                enter(register, name, judgement.verdict, at, amount=limit_um, note=judgement.because)
            found.append(judgement)
        return found


def accept_unseen(register: Register, numbers: Sequence[str], reason: str, at: str) -> list[str]:
    """Accept units without a bench scan, by a person's word. Raises RegisterError."""
    text = words(reason, "without-scan")
    with register.writing():
        names = known(register, numbers)
        for name in names:
            enter(register, name, "accepted", at, note=f"without a bench scan: {text}")
        return names
