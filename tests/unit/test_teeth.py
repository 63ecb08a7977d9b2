"""ISO 3950:2016: which two-digit numbers are teeth, and their order along the arch."""

from __future__ import annotations

import pytest

from stylobate.core.errors import UsageError
from stylobate.core.teeth import along_arch, is_tooth, tooth, tooth_name

VALID = {f"{q}{k}" for q in range(1, 5) for k in range(1, 9)} | {f"{q}{k}" for q in range(5, 9) for k in range(1, 6)}


def test_of_all_two_digit_numbers_exactly_the_teeth_are_taken() -> None:
    assert {f"{n:02d}" for n in range(100) if is_tooth(f"{n:02d}")} == VALID
    assert len(VALID) == 52


@pytest.mark.parametrize("number", ["19", "49", "56", "90", "00", "1", "011", "²1", "1 ", "", "٣٤", "UR4"])
def test_what_is_no_tooth_is_refused_with_the_remedy(number: str) -> None:
    with pytest.raises(UsageError, match="11 to 18"):
        tooth(number)


def test_names_and_order() -> None:
    assert tooth_name("14") == "upper right first premolar"
    assert tooth_name("36") == "lower left first molar"
    assert tooth_name("85") == "lower right deciduous second molar"
    assert sorted(["21", "11", "18", "28", "38", "48", "41"], key=along_arch) == [
        "18", "11", "21", "28", "48", "41", "38"
    ]  # fmt: skip
