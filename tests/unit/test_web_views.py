"""What the page is told of a result."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from stylobate.app.web.views import read_view
from tests.unit.case_making import parts_at, result_at, scan_at


@pytest.mark.parametrize(("bound", "any_turn"), [(59.9, False), (60.0, True), (None, False)])
def test_a_turn_that_the_scan_does_not_show_may_be_any(tmp_path: Path, bound: float | None, any_turn: bool) -> None:
    """Three index marks: bounded by 60° either way the turn may be any."""
    folder = result_at(tmp_path / "result", scan_at(tmp_path / "scan.ply"), parts_at(tmp_path / "parts"))
    values = json.loads((folder / "result.json").read_text())
    for site in values["sites"]:
        site["index_order"], site["u95"]["index_deg"] = 3, bound
    (folder / "result.json").write_text(json.dumps(values))
    told = [site.u95.any_turn for site in read_view(folder / "result.json", 1).sites if site.u95 is not None]
    assert told == [any_turn] * len(values["sites"])
