"""result.json read back: what was written comes back to the last bit, and what is off is refused in one line."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.core.errors import ResultError
from stylobate.core.result import Hidden
from stylobate.record import read_result
from stylobate.report.document import document
from tests.doors.handmade import measurement


def written(folder: Path, values: Any = None) -> Path:
    """A result.json in `folder`: of the measurement by hand, or with `values` in its place."""
    folder.mkdir(exist_ok=True)
    content = document(measurement(3, finding=True)[0], True) if values is None else values
    (folder / "result.json").write_text(content if isinstance(content, str) else json.dumps(content))
    return folder


def values() -> dict[str, Any]:
    return document(measurement(3, finding=True)[0], True)


def test_what_measure_writes_comes_back(tmp_path: Path) -> None:
    result = measurement(3, finding=True)[0]
    for given in (written(tmp_path), tmp_path / "result.json"):
        record = read_result(given)
        assert (record.path, record.name) == (tmp_path / "result.json", str(given))
        assert (record.scan, record.parts, record.work) == (result.scan, result.parts, result.work)
        for site, original in zip(record.sites, result.sites, strict=True):
            for name in ("site", "scan_body", "connection", "platform_diameter", "index_order", "u95", "deviation",
                         "coverage", "findings"):  # fmt: skip
                assert getattr(site, name) == getattr(original, name)
            assert np.abs(site.scan_from_connection - original.scan_from_connection).max() < 1e-12
            assert np.array_equal(site.covariance, original.covariance)


def test_the_joint_covariance_holds_cross_both_ways(tmp_path: Path) -> None:
    content = values()
    block = np.zeros((6, 6))
    block[0, 2] = 4e-7
    content["cross"] = [{"sites": ["3", "1"], "covariance": block.tolist()}]
    joint = read_result(written(tmp_path, content)).covariance()
    assert joint.shape == (18, 18)
    assert joint[12, 2] == joint[2, 12] == 4e-7
    assert joint[0, 14] == 0.0


def test_optional_keys(tmp_path: Path) -> None:
    content = values()
    content["sites"][0] |= {
        "verdict": "use", "u95_total": {"platform_um": 21, "axis_deg": 0.07, "index_deg": None},
        "budget": [{"source": "drift", "platform_um": None, "axis_deg": None, "index_deg": None, "from": "no figure"}],
        "a key of later years": [1, 2],
    }  # fmt: skip
    content["together"] = {"verdict": "undecided", "because": "no figure for drift"}
    content["sites"][0]["hidden"] = {"cause": "bent body", "size_deg": 1.2, "platform_um": 40.0, "axis_deg": 0.5}
    content["sites"][2]["hidden"] = {"cause": "bent body", "size_deg": None, "platform_um": None, "axis_deg": None}
    for key in ("u95", "deviation", "coverage", "findings", "scan_body"):
        del content["sites"][1][key]
    for key in ("pairs", "cross", "scan", "parts", "work"):
        del content[key]
    record = read_result(written(tmp_path, content))
    first, second = record.sites[0], record.sites[1]
    assert first.verdict == "use"
    assert first.u95_total is not None
    assert first.u95_total.platform_um == 21.0
    assert (first.budget[0].platform_um, first.budget[0].origin) == (None, "no figure")
    assert record.together is not None
    assert record.together.verdict == "undecided"
    assert (second.u95, second.coverage, second.verdict, second.hidden) == (None, None, None, None)
    assert first.hidden == Hidden("bent body", 1.2, 40.0, 0.5)
    assert record.sites[2].hidden == Hidden("bent body", math.inf, math.inf, math.inf)


def test_rounded_poses_are_taken_and_made_orthonormal(tmp_path: Path) -> None:
    content = values()
    for site in content["sites"]:
        site["scan_from_connection"] = [[round(x, 6) for x in row] for row in site["scan_from_connection"]]
    for site in read_result(written(tmp_path, content)).sites:
        rotation = site.scan_from_connection[:3, :3]
        assert np.abs(rotation @ rotation.T - np.eye(3)).max() < 1e-12


@pytest.mark.parametrize(
    ("content", "words"),
    [(b"ply\n\x00\x01\x80", "is it a scan?"), (b"solid part", "is it a scan?"), (b'{"\xb5', "write it again")],
)
def test_a_file_that_is_no_result_is_told_from_a_broken_one(tmp_path: Path, content: bytes, words: str) -> None:
    (tmp_path / "some.file").write_bytes(content)
    with pytest.raises(ResultError, match=re.escape(words)):
        read_result(tmp_path / "some.file")


def broken(place: str, value: Any) -> dict[str, Any]:
    content = values()
    target: Any = content
    *path, last = [int(step) if step.isdigit() else step for step in place.split("/")]
    for step in path:
        target = target[step]
    if value is None:
        del target[last]
    else:
        target[last] = value
    return content


MIRROR = np.diag([1.0, 1.0, -1.0, 1.0]).tolist()
NEGATIVE = np.diag([1e-6, 1e-6, -1e-6, 1e-8, 1e-8, 1e-8]).tolist()
LOPSIDED = (np.diag([1e-6] * 6) + 5e-7 * np.eye(6, k=1)).tolist()
STRONG = (1e-5 * np.eye(6)).tolist()
ZERO = np.zeros((6, 6)).tolist()


@pytest.mark.parametrize(
    ("place", "value", "words"),
    [
        ("format", "stylobate-seat", "stylobate-result"),
        ("version", 2, "newer"),
        ("version", "1", "version"),
        ("sites", None, "sites is missing"),
        ("sites/1/scan_from_connection", None, "sites[2].scan_from_connection is missing"),
        ("sites/1/scan_from_connection/0/3", "12", "sites[2].scan_from_connection[1][4]"),
        ("sites/1/scan_from_connection/0/3", float("nan"), "sites[2].scan_from_connection[1][4]"),
        ("sites/1/scan_from_connection/0/3", 10**400, "sites[2].scan_from_connection[1][4]"),
        ("sites/1/scan_from_connection/0/0", 7.0, "not a rotation"),
        ("sites/1/scan_from_connection/3/0", 1.0, "last row"),
        ("sites/1/scan_from_connection", MIRROR, "mirror"),
        ("sites/0/covariance", NEGATIVE, "sites[1].covariance"),
        ("sites/0/covariance", LOPSIDED, "not symmetric"),
        ("sites/0/covariance/0", [1.0], "sites[1].covariance[1]"),
        ("sites/0/platform_diameter", -4.2, "platform_diameter"),
        ("sites/0/index_order", 1.5, "index_order"),
        ("sites/0/verdict", "perhaps", "verdict"),
        ("sites/0/site", "2", "two sites are called '2'"),
        ("cross", [{"sites": ["1", "9"], "covariance": ZERO}], "no site '9'"),
        ("cross", [{"sites": ["1", "1"], "covariance": ZERO}], "two sites"),
        ("cross", [{"sites": ["1", "2"], "covariance": ZERO}, {"sites": ["2", "1"], "covariance": ZERO}], "once"),
        ("cross", [{"sites": ["1", "2"], "covariance": STRONG}], "cross"),
    ],
)
def test_what_is_off_is_refused_in_one_line(place: str, value: Any, words: str, tmp_path: Path) -> None:
    with pytest.raises(ResultError) as caught:
        read_result(written(tmp_path, broken(place, value)))
    assert words in str(caught.value)
    assert str(tmp_path / "result.json") in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("text", ["", "{", "[]", "7", "[" * 100_000, '{"format": "\\ud800"}', "\x00\x01"])
def test_text_that_is_no_result(text: str, tmp_path: Path) -> None:
    with pytest.raises(ResultError, match=r"result\.json"):
        read_result(written(tmp_path, text))


def test_nothing_there(tmp_path: Path) -> None:
    with pytest.raises(ResultError, match="no such file"):
        read_result(tmp_path / "absent.json")
    with pytest.raises(ResultError, match="holds no"):
        read_result(tmp_path)
