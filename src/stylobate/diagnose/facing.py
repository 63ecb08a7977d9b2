"""From which side a site is to be scanned again, in words for whoever holds the scanner: by neighbour and arch.

A finding that names a side does so by coordinates, as it knows one site only. No number of a site is said: a case calls
it by its tooth, and a join counts anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from stylobate.core.result import Finding, Site, Verdict
from stylobate.core.types import FloatArray

ALONG_DEG = 45.0
"""Degrees about the axis within which a side counts as that of the neighbour."""
FROM_ABOVE = 0.8
"""Least cosine to the axis of a side that is seen from above."""
APART_MM = 3.0
"""mm that the middle of the scan has to lie off the axis for inner and outer side to mean something."""


def faced(sites: Sequence[Site], middle: FloatArray) -> tuple[Site, ...]:
    """The sites with every side in words. middle: (3,) of the scan, scan coordinates."""
    return tuple(_faced(site, sites, middle) for site in sites)


def _faced(site: Site, sites: Sequence[Site], middle: FloatArray) -> Site:
    for finding in site.findings:
        if finding.side is None:
            continue
        said = side_words(np.array(finding.side), site, sites, middle)
        old = by_coordinates(finding.side)
        if said is not None:
            findings = tuple(_said(one, old, said) for one in site.findings)
            verdict = None if site.verdict is None else _said_of(site.verdict, old, said)
            site = replace(site, findings=findings, verdict=verdict)
    return site


def by_coordinates(side: Sequence[float]) -> str:
    """A side as a finding of one site says it."""
    return f"the side that faces ({side[0]:.1f}, {side[1]:.1f}, {side[2]:.1f})"


def side_words(side: FloatArray, site: Site, sites: Sequence[Site], middle: FloatArray) -> str | None:
    """A side (unit vector, scan coordinates) in words; None where nothing tells it."""
    here, axis = site.scan_from_connection[:3, 3], site.scan_from_connection[:3, 2]
    if float(side @ axis) > FROM_ABOVE:
        return "above"
    across = side - (side @ axis) * axis
    others = [other for other in sites if other.site != site.site]
    if others:
        near = min(others, key=lambda other: float(np.linalg.norm(other.scan_from_connection[:3, 3] - here)))
        turn = _turn_deg(across, _flat(near.scan_from_connection[:3, 3] - here, axis))
        away = float(np.linalg.norm(near.scan_from_connection[:3, 3] - here))
        called = f"the nearest scan body ({near.scan_body}, {away:.0f} mm away)"
        if turn <= ALONG_DEG:
            return f"the side that faces {called}"
        if turn >= 180.0 - ALONG_DEG:
            return f"the side turned away from {called}"
    inwards = _flat(middle - here, axis)
    if float(np.linalg.norm(inwards)) < APART_MM:
        return None
    inner = _turn_deg(across, inwards) <= 90.0
    return f"the {'inner' if inner else 'outer'} side, {'towards' if inner else 'away from'} the middle of the scan"


def _flat(way: FloatArray, axis: FloatArray) -> FloatArray:
    return np.asarray(way - (way @ axis) * axis)


def _turn_deg(one: FloatArray, two: FloatArray) -> float:
    """Angle between two directions; 90° where one of them is none."""
    length = float(np.linalg.norm(one) * np.linalg.norm(two))
    return 90.0 if length < 1e-12 else float(np.degrees(np.arccos(np.clip(one @ two / length, -1.0, 1.0))))


def _said(finding: Finding, old: str, new: str) -> Finding:
    return replace(finding, advice=finding.advice.replace(old, new))


def _said_of(verdict: Verdict, old: str, new: str) -> Verdict:
    return replace(verdict, because=verdict.because.replace(old, new), next=verdict.next.replace(old, new))
