"""What `frame` is given besides good input: refused in one sentence, before anything is sought."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.core.errors import FitError, ResultError, UsageError
from stylobate.core.surface import Scan, Surface
from stylobate.parts.model import Connection, PartsFolder
from stylobate.record import read_standing
from stylobate.several.made.verb import frame

POINTS = np.array([[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]])
TRIANGLE = np.array([[0, 1, 2]], dtype=np.int32)
PARTS = PartsFolder("parts", "1", "", "", (Connection("hazel", "conical", 3, 3.6),), ())


def placed(folder: Path, *names: str) -> Path:
    """A place.json in `folder` with uppermost connections of these sites."""
    upper: dict[str, Any] = {
        "connection": "alder", "platform_diameter": 4.2, "index_order": 6, "scan_from_connection": np.eye(4).tolist(),
        "covariance": (1e-6 * np.eye(6)).tolist(),
    }  # fmt: skip
    sites = [{"site": name, "uppermost": upper} for name in names]
    (folder / "place.json").write_text(json.dumps({"format": "stylobate-place", "version": 1, "sites": sites}))
    return folder


@pytest.mark.parametrize(("names", "words"), [((), "holds no site"), (("1",), "no connection 'alder'")])
def test_what_says_nothing_of_the_seats_is_refused(names: tuple[str, ...], words: str, tmp_path: Path) -> None:
    surface = Scan(Surface(POINTS, TRIANGLE), np.zeros(3), "frame.stl", "")
    with pytest.raises(UsageError, match=words):
        frame(surface, placed(tmp_path, *names), PARTS)


def test_where_no_seat_is_found_what_is_odd_about_the_surface_is_said_too(tmp_path: Path) -> None:
    surface = Scan(
        Surface(POINTS, TRIANGLE), np.zeros(3), "frame.stl", "", ("frame.stl: spans 1 mm; is it in inches?",)
    )
    parts = replace(PARTS, connections=(Connection("alder", "internal hex", 6, 4.2),))
    with pytest.raises(FitError, match=r"no seat was found .* site 1.*; frame\.stl: spans 1 mm; is it in inches\?$"):
        frame(surface, placed(tmp_path, "1"), parts)


def test_two_placed_sites_of_one_name_are_refused(tmp_path: Path) -> None:
    assert [site.site for site in read_standing(placed(tmp_path, "1", "2")).sites] == ["1", "2"]
    with pytest.raises(ResultError, match="two sites are called '2'"):
        read_standing(placed(tmp_path, "2", "2"))


def test_a_folder_that_holds_a_result_and_a_placement_is_asked_about(tmp_path: Path) -> None:
    """A frame over abutments must not be set against the implants in silence."""
    (placed(tmp_path, "1") / "result.json").write_text("{}")
    with pytest.raises(ResultError, match=r"holds both result\.json and place\.json"):
        read_standing(tmp_path)
    assert [site.site for site in read_standing(tmp_path / "place.json").sites] == ["1"]
