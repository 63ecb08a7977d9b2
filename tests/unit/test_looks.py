"""At a split surface all is looked at again; a look that is less sure, or has lost a bend, is not taken."""

from __future__ import annotations

from typing import Any, cast

import numpy as np
import pytest

from stylobate.core.result import Finding
from stylobate.diagnose import diagnosing
from stylobate.diagnose.concluding import Concluded
from stylobate.fit.edges import SHAPES
from stylobate.uncertainty.field import Field
from stylobate.uncertainty.pose import Pose

SIZE = 7 + SHAPES


def look(at: float, sd: float, *causes: str) -> Concluded:
    """A look that ends `at` mm along x, each parameter with this standard deviation, and names these causes."""
    stands = np.eye(4)
    stands[0, 3] = at
    pose = Pose(stands, sd**2 * np.eye(SIZE), 0.0, np.zeros(SHAPES), Field(0.008, 0.010, 0.6, 1.5), 100.0)
    found = tuple(Finding(cause, "") for cause in causes or ("split surface",))
    return Concluded(pose, found, np.zeros((SIZE, 2)), cast(Any, None), None)


@pytest.mark.parametrize(
    ("looks", "ends"),
    [
        ([look(1.0, 0.01), look(2.0, 0.01), look(3.0, 0.015)], 3.0),
        ([look(1.0, 0.01), look(2.0, 0.03), look(3.0, 0.01)], 1.0),
        ([look(1.0, 0.01), look(2.0, 0.01), look(3.0, 0.03)], 2.0),
        ([look(1.0, 0.01, "bent body", "split surface"), look(2.0, 0.01)], 1.0),
        ([look(1.0, 0.01, "bent body", "split surface"), look(2.0, 0.01, "bent body")], 2.0),
    ],
)
def test_the_last_look_that_is_as_sure_is_taken(
    looks: list[Concluded], ends: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    left = iter(looks)
    monkeypatch.setattr(diagnosing, "_once", lambda *_: next(left))
    found = diagnosing.diagnose(*cast(Any, [None] * 6))
    assert found.pose.scan_from_connection[0, 3] == pytest.approx(ends)
