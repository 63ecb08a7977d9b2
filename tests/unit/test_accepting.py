"""What is borne of a misfit depends on whether a fault explains it."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.result import Finding
from stylobate.core.types import FloatArray
from stylobate.diagnose import Diagnosis
from stylobate.diagnose.accepting import no_more_than_round, too_strange
from stylobate.fit.edges import SHAPES
from stylobate.uncertainty.field import Field
from stylobate.uncertainty.pose import Pose


def diagnosis(*causes: str) -> Diagnosis:
    parameters: FloatArray = 1e-6 * np.eye(7 + SHAPES)
    pose = Pose(np.eye(4), parameters, 0.0, np.zeros(SHAPES), Field(0.008, 0.010, 0.6, 1.5), 100.0)
    return Diagnosis(pose, tuple(Finding(cause, "") for cause in causes), np.zeros((6, 2)), None, np.zeros(0, np.int64))


@pytest.mark.parametrize(
    ("strange", "causes", "refused"),
    [
        (1.0, (), False),
        (1.2, (), True),
        (1.2, ("missing surface",), True),
        (1.2, ("split surface",), False),
        (1.2, ("missing surface", "rough surface"), False),
        (1.2, ("no part fits",), True),
        (1.4, ("split surface",), True),
    ],
)
def test_a_misfit_that_no_fault_explains_is_borne_less(strange: float, causes: tuple[str, ...], refused: bool) -> None:
    assert too_strange(strange, diagnosis(*causes)) is refused


@pytest.mark.parametrize(
    ("strange", "causes", "round_"),
    [
        (0.7, (), False),
        (0.7, ("no part fits",), True),
        (0.7, ("added layer",), False),
        (0.9, ("added layer",), True),
        (0.7, ("added layer", "added material"), True),
        (1.06, (), True),
    ],
)
def test_where_the_turn_is_open_a_stump_is_known_by_its_signs(
    strange: float, causes: tuple[str, ...], round_: bool
) -> None:
    """A cylinder of no part's size, of which nothing but roundness is seen, is no site."""
    assert no_more_than_round(diagnosis(*causes), strange) is round_
