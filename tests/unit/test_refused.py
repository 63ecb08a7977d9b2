"""Where the likeliest reading of a place is refused, another that fits more closely is tried."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import pytest

from stylobate.choose.readings import Laid
from stylobate.find import Candidate
from stylobate.find.search import Reading
from stylobate.fit.descend import Descent
from stylobate.measuring import site
from stylobate.measuring.site import Bench, Measured, measure_site
from stylobate.parts.model import PartsFolder
from stylobate.simulate import draw_bodies

BODIES = draw_bodies(77, 2)
BENCH = Bench(PartsFolder("drawn", "1", "", "", (), BODIES), BODIES)
PLACE = Candidate((Reading(0, np.eye(4), 10.0),))


def laid(body: int, sd: float) -> Laid:
    return Laid(body, Descent(np.eye(4), 0.0, sd, True, 3), -5.0, 0.0)


@pytest.mark.parametrize(("second_sd", "found"), [(0.02, True), (0.05, False)])
def test_a_closer_reading_of_another_body_is_tried(
    second_sd: float, found: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    tried: list[int] = []

    def standing(bench: Bench, near: Any, readings: Sequence[Laid]) -> Measured | None:
        if not readings:
            return None
        tried.append(readings[0].body)
        return object.__new__(Measured) if readings[0].body == 1 else None

    monkeypatch.setattr(site, "lay", lambda *_: [laid(0, 0.04), laid(0, 0.03), laid(1, second_sd)])
    monkeypatch.setattr(site, "_standing", standing)
    points = np.zeros((1, 3))
    assert isinstance(measure_site(BENCH, points, points, PLACE), Measured) is found
    assert tried == ([0, 1] if found else [0])
