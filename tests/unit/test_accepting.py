"""What is borne of a misfit depends on whether a fault explains it."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.result import Finding
from stylobate.core.types import FloatArray
from stylobate.diagnose import Diagnosis
from stylobate.diagnose.accepting import too_strange
from stylobate.fit.edges import SHAPES
from stylobate.uncertainty.field import Field
from stylobate.uncertainty.pose import Pose


def diagnosis(*causes: str) -> Diagnosis:
    parameters: FloatArray = 1e-6 * np.eye(7 + SHAPES)
    pose = Pose(np.eye(4), parameters, 0.0, np.zeros(SHAPES), Field(0.008, 0.010, 0.6, 1.5), 100.0)
    return Diagnosis(pose, tuple(Finding(cause, "") for cause in causes), np.zeros((6, 2)), None)


@pytest.mark.parametrize(
    ("strange", "causes", "refused"),
    [
        (1.0, (), False),
        (1.2, (), True),
        (1.2, ("missing surface",), True),
        (1.2, ("split surface",), False),
        (1.2, ("missing surface", "rough surface"), False),
        (1.4, ("split surface",), True),
    ],
)
def test_a_misfit_that_no_fault_explains_is_borne_less(strange: float, causes: tuple[str, ...], refused: bool) -> None:
    assert too_strange(strange, diagnosis(*causes)) is refused
