"""What the terminal says of scans to come."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest
from click.testing import CliRunner

import stylobate.foretell as ahead
from stylobate.app.commands.foretelling import foretell
from stylobate.core.result import Bounds
from stylobate.parts.model import ScanBody
from tests.unit.case_making import parts_at


@pytest.mark.parametrize(("share", "any_turn"), [(0.5, True), (0.4, False)])
def test_a_turn_that_no_scan_will_show_is_any(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, share: float, any_turn: bool
) -> None:
    """share: of the way to the next equal index mark by which the turn is bounded either way."""

    def foretold(body: ScanBody, index_order: int, tissue: float, *_: Any) -> ahead.Foretold:
        turn = share * 360.0 / index_order if index_order else None
        return ahead.Foretold(body.id, tissue, 0.5, Bounds(20.0, 0.3, turn), np.eye(6))

    monkeypatch.setattr(ahead, "foretell", foretold)
    done = CliRunner().invoke(foretell, [str(parts_at(tmp_path / "parts"))], catch_exceptions=False)
    rows = [line.split() for line in done.output.splitlines() if "20.0" in line.split()]
    assert rows
    assert all((row[-1] == "any") == any_turn for row in rows if row[-1] != "–")
    assert any(row[-1] != "–" for row in rows)
