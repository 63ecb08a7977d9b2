"""The sabotage suite spoils lines that are there, and names tests that are there."""

from __future__ import annotations

from pathlib import Path

import pytest

import stylobate
from sabotage.cases import SPOILINGS, Spoiling

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize("spoiling", SPOILINGS, ids=lambda spoiling: spoiling.name)
def test_what_is_spoilt_stands_there_once(spoiling: Spoiling) -> None:
    assert (Path(stylobate.__file__).parent / spoiling.file).read_text().count(spoiling.old) == 1
    file, _, name = spoiling.test.partition("::")
    assert f"def {name.partition('[')[0]}(" in (ROOT / file).read_text()
