"""Findings and bounds → use, undecided or do not use. Rules only, no geometry (method/trust, eq. 20–22)."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from stylobate.core.result import BudgetRow, Chance, Finding, Pair, Site, Together, Verdict
from stylobate.core.types import FloatArray
from stylobate.settings import Limits
from stylobate.uncertainty.budget import REMEDIES, largest
from stylobate.verdict.conformity import conformance_probability, decided, vector_probability

USE, UNDECIDED, DO_NOT_USE = "use", "undecided", "do not use"
UNTRUSTED = ("no part fits", "other part fits better")
SCANS_DIFFER = "scans differ"
UNSURE = ("part ambiguous", "index ambiguous", SCANS_DIFFER)
SHIFTS = ("bent body", "split surface")
UM = 1e-3
SPOKEN = {
    "platform_um": "the centre of the platform",
    "axis_deg": "the axis",
    "index_deg": "the turn",
    "distance_um": "the distance",
    "angle_deg": "the angle",
}


def judge(
    covariance: FloatArray, indexed: bool, findings: Sequence[Finding], limits: Limits, budget: tuple[BudgetRow, ...],
    unknown: Sequence[str], unseen: str = "",
) -> Verdict:  # fmt: skip
    """The verdict on one site.

    covariance (6, 6): of all sources with a figure. unknown: names of the sources without one. unseen: the
    fault that the scan would not show, in words. Conformity is proven where each limit is met with 95 %
    (ISO 14253-1:2017); the best estimate of the error itself is zero.
    """
    chances = _chances(covariance, indexed, limits)
    because, advice = _refused(findings, limits)
    if because:
        return Verdict(DO_NOT_USE, because, advice, chances)
    unsure = next((f for f in findings if f.cause in UNSURE), None)
    if unsure is not None:
        return Verdict(UNDECIDED, f"{unsure.cause}: more than one answer is left.", unsure.advice, chances)
    open_ = [one for one in chances if not decided(one.probability)]
    named = _named(unknown, unseen)
    if open_:
        worst = min(open_, key=lambda one: one.probability)
        because = f"{_short(worst)}{named}"
        return Verdict(UNDECIDED, because, _next(findings, budget), chances)
    return Verdict(USE, f"as far as the scan shows, every limit is met with at least 95 %.{named}", "", chances)


def judge_together(sites: Sequence[Site], pairs: Sequence[Pair], work: str, limits: Limits, drift: bool) -> Together:
    """The verdict on two or more sites as a set.

    drift: whether a figure for drift over the arch is known and counted in the sites' budgets.
    """
    chances = [chance for pair in pairs for chance in _pair_chances(pair, limits)]
    for word in (DO_NOT_USE, UNDECIDED):
        named = [site for site in sites if site.verdict is not None and site.verdict.verdict == word]
        if named:
            first = named[0].verdict
            assert first is not None
            names = ", ".join(site.site for site in named)
            because = f"site{'s' if len(named) > 1 else ''} {names}: {word}. Site {named[0].site}: {first.because}"
            return Together(word, because, first.next, tuple(chances))
    open_ = [one for one in chances if not decided(one.probability)]
    if open_:
        worst = min(open_, key=lambda one: one.probability)
        because = _short(worst)
        return Together(UNDECIDED, because, REMEDIES["drift" if drift else "scan"].capitalize() + ".", tuple(chances))
    if work == "arch" and not drift:
        because = "every site is good by itself, but how far the scan drifts over the arch is not known."
        advice = "Scan the arch again and compare the two, or give the scanner's profile in the settings."
        return Together(UNDECIDED, because, advice, tuple(chances))
    rest = "" if drift else " Drift between the sites is not counted: nobody has stated it."
    return Together(
        USE, f"every site, and every distance and angle between them, is within its limit.{rest}", "", tuple(chances)
    )


def _chances(covariance: FloatArray, indexed: bool, limits: Limits) -> tuple[Chance, ...]:
    centre = vector_probability(covariance[:3, :3], limits.platform_um * UM)
    axis = vector_probability(covariance[3:5, 3:5], float(np.radians(limits.axis_deg)))
    chances = [
        Chance("platform_um", limits.platform_um, centre, limits.source),
        Chance("axis_deg", limits.axis_deg, axis, limits.source),
    ]
    if indexed:
        u = float(np.degrees(np.sqrt(covariance[5, 5])))
        turn = conformance_probability(0.0, u, -limits.index_deg, limits.index_deg)
        chances.append(Chance("index_deg", limits.index_deg, turn, limits.source))
    return tuple(chances)


def _pair_chances(pair: Pair, limits: Limits) -> tuple[Chance, ...]:
    names = f"of sites {pair.sites[0]} and {pair.sites[1]}"
    total = pair.total_um if pair.total_um is not None else pair.u95_um
    angle = pair.angle_total_deg if pair.angle_total_deg is not None else pair.angle_u95_deg
    return (
        Chance(f"distance_um {names}", limits.distance_um, _within(total, limits.distance_um), limits.source),
        Chance(f"angle_deg {names}", limits.angle_deg, _within(angle, limits.angle_deg), limits.source),
    )


def _within(bound: float, limit: float) -> float:
    """Probability that an error whose 95 % bound is known lies within a limit, the error taken as normal."""
    return conformance_probability(0.0, bound / 1.959963984540054, -limit, limit)


def _refused(findings: Sequence[Finding], limits: Limits) -> tuple[str, str]:
    """Why a finding proves that the pose is off or can't be trusted, and what to do; empty where none does."""
    for finding in findings:
        if finding.cause in UNTRUSTED:
            return f"{finding.cause}: the pose stands on the wrong shape.", finding.advice
        if finding.cause not in SHIFTS:
            continue
        if finding.size_um is not None and finding.size_um > limits.platform_um:
            return f"{finding.cause} by {finding.size_um:.0f} µm, beyond {limits.platform_um:g} µm.", finding.advice
        if finding.size_deg is not None and finding.size_deg > limits.axis_deg:
            return f"{finding.cause} by {finding.size_deg:.1f}°, beyond {limits.axis_deg:g}°.", finding.advice
    return "", ""


def _next(findings: Sequence[Finding], budget: tuple[BudgetRow, ...]) -> str:
    if findings:
        return findings[0].advice
    return f"{REMEDIES[largest(budget).source].capitalize()}." if budget else ""


def _short(chance: Chance) -> str:
    """Why a limit is not proven to be met."""
    name, _, which = chance.what.partition(" ")
    unit = " µm" if name.endswith("_um") else "°"
    spoken = f"{SPOKEN[name]} {which}".strip()
    return (
        f"{spoken} is within {chance.limit:g}{unit} with a probability of {100 * chance.probability:.0f} %;"
        " 95 % is needed."
    )


def _named(unknown: Sequence[str], unseen: str) -> str:
    hidden = f" Not counted, because this scan would not show it: {unseen}." if unseen else ""
    if not unknown:
        return hidden
    listed = ", ".join(unknown[:-1]) + " and " + unknown[-1] if len(unknown) > 1 else unknown[0]
    return f" Not counted, because nobody has stated a figure: {listed}.{hidden}"
