"""result.json says what the interface promises, exactly and in plain JSON."""

from __future__ import annotations

import dataclasses
import json
import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stylobate.core.result import Bounds, Deviation, Result
from stylobate.report.document import result_json
from stylobate.report.laid_out import laid_out
from tests.doors.handmade import measurement

SITE_KEYS = {
    "site", "scan_body", "connection", "platform_diameter", "index_order", "scan_from_connection", "covariance", "u95",
    "deviation", "coverage", "findings", "alternatives", "map",
}  # fmt: skip
NOT_YET = {"verdict", "budget", "u95_total", "together"}


def parsed(result: Result, maps: bool = True) -> dict[str, Any]:
    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is not JSON")

    values: dict[str, Any] = json.loads(result_json(result, maps), parse_constant=refuse)
    return values


def changed(result: Result, **values: Any) -> Result:
    return dataclasses.replace(result, sites=(dataclasses.replace(result.sites[0], **values), *result.sites[1:]))


def test_keys() -> None:
    values = parsed(measurement(3, finding=True)[0])
    assert list(values) == [
        "format", "version", "software", "scan", "parts", "work", "sites", "cross", "pairs", "not_shown", "warnings",
    ]  # fmt: skip
    assert (values["format"], values["version"]) == ("stylobate-result", 1)
    for site in values["sites"]:
        assert set(site) == SITE_KEYS
        assert set(site["u95"]) == {"platform_um", "axis_deg", "index_deg"}
        assert set(site["deviation"]) == {"points", "mean_um", "rms_um", "p95_um"}
    assert values["sites"][0]["findings"][0].keys() == {"cause", "size_um", "u95_um", "advice"}
    assert [pair["sites"] for pair in values["pairs"]] == [["1", "2"], ["1", "3"], ["2", "3"]]


def test_what_no_figure_exists_for_is_absent_and_not_invented() -> None:
    text = result_json(measurement(2)[0], True)
    assert not [key for key in NOT_YET if f'"{key}"' in text]


def test_numbers_survive_to_the_last_bit() -> None:
    result = measurement(3)[0]
    for site, values in zip(result.sites, parsed(result)["sites"], strict=True):
        assert np.array_equal(site.scan_from_connection, np.array(values["scan_from_connection"]))
        assert np.array_equal(site.covariance, np.array(values["covariance"]))


def test_maps_are_named_only_where_written() -> None:
    result = measurement(2)[0]
    assert [site["map"] for site in parsed(result)["sites"]] == ["site-1.ply", "site-2.ply"]
    assert all("map" not in site for site in parsed(result, maps=False)["sites"])


def test_an_unknown_figure_is_null() -> None:
    result = changed(
        measurement(1)[0], u95=Bounds(1.0, 2.0, None), deviation=Deviation(0, math.nan, math.nan, math.inf)
    )
    site = parsed(result)["sites"][0]
    assert site["u95"]["index_deg"] is None
    assert site["deviation"] == {"points": 0, "mean_um": None, "rms_um": None, "p95_um": None}


@pytest.mark.parametrize("value", [math.nan, math.inf])
@pytest.mark.parametrize("name", ["scan_from_connection", "covariance"])
def test_a_pose_that_is_not_finite_is_never_written(name: str, value: float) -> None:
    result = measurement(1)[0]
    matrix = getattr(result.sites[0], name).copy()
    matrix[1, 2] = value
    with pytest.raises(ValueError, match="not finite"):
        result_json(changed(result, **{name: matrix}), True)


plain = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text()


@given(st.recursive(plain, lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner)))
def test_the_layout_changes_no_value(value: Any) -> None:
    assert json.loads(laid_out(value)) == value


def test_a_matrix_row_stands_on_one_line() -> None:
    assert laid_out({"m": [[1.0, 2.0], [3.0, 4.0]]}) == '{\n  "m": [\n    [1.0, 2.0],\n    [3.0, 4.0]\n  ]\n}\n'
