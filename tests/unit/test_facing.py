"""From which side to scan again, by neighbours and arch."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.result import Finding, Verdict
from stylobate.core.types import FloatArray
from stylobate.diagnose.facing import by_coordinates, faced
from tests.doors.handmade import measurement

MIDDLE = np.array([10.0, 12.0, 0.0])
"""Of the scan: the first site stands at the origin, the second 20 mm along x."""


def advice(side: tuple[float, float, float], count: int, motion: FloatArray, middle: FloatArray = MIDDLE) -> str:
    made, _ = measurement(2)
    x, y, z = (float(value) for value in motion[:3, :3] @ side)
    finding = Finding("missing surface", f"Scan again from {by_coordinates((x, y, z))}, all of it.", side=(x, y, z))
    verdict = Verdict("undecided", "too little is seen.", finding.advice)
    sites = []
    for k, site in enumerate(made.sites[:count]):
        pose = motion @ rigid.exp(np.array([20.0 * k, 0.0, 0.0, 0.0, 0.0, 0.3]))
        sites.append(replace(site, scan_from_connection=pose, findings=(finding,) if k == 0 else (), verdict=verdict))
    first = faced(sites, motion[:3, :3] @ middle + motion[:3, 3])[0]
    assert first.verdict is not None
    assert first.verdict.next == first.findings[0].advice
    return first.findings[0].advice


@pytest.mark.parametrize("motion", [np.eye(4), rigid.exp(np.array([300.0, -20.0, 7.0, 1.1, -0.4, 2.0]))])
@pytest.mark.parametrize(
    ("side", "count", "words"),
    [
        ((0.9, 0.3, 0.2), 2, "the side that faces the nearest scan body (alder-tall, 20 mm away)"),
        ((-0.9, 0.3, 0.0), 2, "the side turned away from the nearest scan body (alder-tall, 20 mm away)"),
        ((0.1, 0.9, 0.3), 2, "the inner side, towards the middle of the scan"),
        ((0.1, -0.9, 0.3), 2, "the outer side, away from the middle of the scan"),
        ((0.1, 0.2, 0.97), 2, "above"),
        ((0.9, 0.3, 0.2), 1, "the inner side, towards the middle of the scan"),
        ((-0.9, -0.3, 0.2), 1, "the outer side, away from the middle of the scan"),
    ],
)
def test_a_side_is_told_by_what_stands_around(
    side: tuple[float, float, float], count: int, words: str, motion: FloatArray
) -> None:
    unit = tuple(float(value) for value in np.array(side) / np.linalg.norm(side))
    assert advice((unit[0], unit[1], unit[2]), count, motion) == f"Scan again from {words}, all of it."


def test_where_nothing_tells_the_side_its_coordinates_stay() -> None:
    said = advice((0.8, 0.6, 0.0), 1, np.eye(4), np.array([0.5, 0.5, 9.0]))
    assert said == "Scan again from the side that faces (0.8, 0.6, 0.0), all of it."
