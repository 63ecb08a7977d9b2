"""The study's tables count what was said, and what a scan could not show, where it belongs."""

from __future__ import annotations

from typing import Any

import pytest

from study.measured import TOO_LITTLE
from study.tables import OPEN, confusion, smallest


def site(cause: str, *named: str, **more: Any) -> dict[str, Any]:
    return {"cause": cause, "found": bool(named), "findings": [[name] for name in named], **more}


def cells(table: str, row: str) -> dict[str, str]:
    head, _, *body = [[cell.strip() for cell in line.strip("| ").split("|")] for line in table.splitlines()]
    mine = next(line for line in body if line[0] == row)
    return dict(zip(head, mine, strict=True))


def test_what_is_said_of_a_place_without_a_site_is_counted_as_said() -> None:
    rows = [
        site("index ambiguous", told=TOO_LITTLE),
        site("index ambiguous"),
        site("no part fits", told="no part fits"),
    ]
    hidden, strange = (cells(confusion(rows), cause) for cause in ("index ambiguous", "no part fits"))
    assert (hidden["sites"], hidden["no site"], hidden[TOO_LITTLE]) == ("2", "1", "1")
    assert (strange["no site"], strange["no part fits"]) == ("·", "**1**")


def test_a_turn_that_still_shows_is_not_counted_as_hidden() -> None:
    rows = [site("index ambiguous", "missing surface", turn_stands=OPEN + of) for of in (-0.1, 0.1)]
    table = confusion(rows)
    assert cells(table, "index ambiguous")["sites"] == "1"
    assert cells(table, "index ambiguous, not shown")["sites"] == "1"


def test_open_is_where_a_turn_passes_for_ruled_out_at_one_in_twenty() -> None:
    """The doubt of a turn that stands d out is d² + 2 d z, z normal: at z = 1.645 it reaches 2 ln 10⁶."""
    assert pytest.approx(27.631021) == OPEN**2 + 2.0 * OPEN * 1.6448536


def test_the_smallest_fault_stands_beside_what_is_possible() -> None:
    rows = [{"found": True, "least": {"lean_deg": (own, own / 2.0)}} for own in (1.0, 2.0, 3.0)]
    assert "| lean deg | 2.00 | 1.20–2.80 | 1.00 |" in smallest(rows)
