"""The bench judges as it says: one to one, nothing dropped, ratios and limits by closed form."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any, cast

import numpy as np
import pytest

from bench import figures
from bench.judge import Json, judged
from bench.method import Found
from bench.scenes import GRAZING, PLAIN, SEAMS, TAILS, noise_of, settings
from bench.store import Store
from bench.tables import by_noise
from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.simulate import Scene


def at(x: float, turn_deg: float = 0.0) -> FloatArray:
    return rigid.pose(rigid.rotation_exp(np.array([0.0, 0.0, np.radians(turn_deg)])), np.array([x, 0.0, 0.0]))


def scene_of(*places: float) -> Scene:
    sites = [
        SimpleNamespace(body=SimpleNamespace(id="a"), faults=(), gum_mm=0.5, scan_from_connection=at(x)) for x in places
    ]
    return cast(Scene, SimpleNamespace(sites=sites))


LEAST: list[Json | None] = [{"platform": 0.01, "axis": 0.001, "index": 0.002}] * 2


def test_two_sites_found_on_one_body_count_once() -> None:
    """The nearer is the site, the other stands elsewhere on a body; the body nobody found is missed, not dropped."""
    rows, stray = judged(scene_of(0.0, 20.0), LEAST, [Found("a", at(0.3)), Found("a", at(0.1))])
    assert [row["found"] is not None for row in rows] == [True, False]
    assert abs(rows[0]["found"]["xi"][0]) == pytest.approx(0.1)
    assert [s["on_a_body"] for s in stray] == [True]
    _, elsewhere = judged(scene_of(0.0), LEAST[:1], [Found("b", at(40.0))])
    assert [s["on_a_body"] for s in elsewhere] == [False]


def test_pairs_are_the_best_over_all_sites() -> None:
    """A greedy choice would take 0.3 for the site at 0.5 and leave the one at 0 without."""
    rows, stray = judged(scene_of(0.0, 0.5), LEAST, [Found("a", at(0.3)), Found("a", at(0.75))])
    assert all(row["found"] for row in rows)
    assert stray == []


def test_wrong_parts_and_turns_are_told_apart_from_right_ones() -> None:
    found = [Found("b", at(0.0)), Found("a", at(20.0, 120.0), flags=("index ambiguous",))]
    rows, _ = judged(scene_of(0.0, 20.0), LEAST, found)
    assert figures.silent_and_flagged(figures.wrong_part(rows)) == "1 + 0"
    assert figures.silent_and_flagged(figures.wrong_turn(rows)) == "0 + 1"
    assert figures.unflagged(rows) == []


def test_errors_drawn_from_the_bound_have_a_ratio_of_one() -> None:
    rng = np.random.default_rng(2)
    sd = np.array([0.006, 0.006, 0.00529, 7.07e-4, 7.07e-4, 0.002])  # platform 0.01 in all, axis 0.001, index 0.002
    sites = [
        {"found": {"right_part": True, "xi": (sd * rng.standard_normal(6)).tolist()}, "least": LEAST[0]}
        for _ in range(4000)
    ]
    text = figures.ratios([*sites, {"found": sites[0]["found"], "least": None}])
    numbers, count = text.split(" (")
    assert count == "4000)"  # the one without a bound is not in it
    assert [float(part) for part in numbers.split(" / ")] == pytest.approx([1.0, 1.0, 1.0], abs=0.04)


def test_a_scene_counts_by_all_that_its_noise_holds() -> None:
    found = {"right_part": True, "turn_deg": 0.1, "xi": [0.001] * 6, "u95": [0.1, 0.1, None], "nees": 3.0, "flags": []}
    site: Json = {"found": found, "least": LEAST[0], "faults": []}
    counts = dict.fromkeys((PLAIN, TAILS, GRAZING, SEAMS), 0)
    for seed in range(40):
        for name in noise_of(settings(seed)):
            counts[name] += 1
    table = by_noise([{"scene": str(seed), "sites": [site]} for seed in range(40)])
    assert [int(row[1].split("(")[1].rstrip(")")) for row in table.rows] == list(counts.values())
    assert 0 < counts[PLAIN] < 40 < sum(counts.values())


def test_limits_of_a_share() -> None:
    """Clopper & Pearson 1934: none of n has the upper limit 1 − 0.025^(1/n); symmetric about a half."""
    assert figures.limits(0, 100) == pytest.approx((0.0, 1 - 0.025 ** (1 / 100)))
    low, high = figures.limits(50, 100)
    assert low == pytest.approx(1 - high)
    assert (low, high) == pytest.approx((0.3983, 0.6017), abs=1e-4)


def test_a_run_that_was_cut_off_goes_on_where_it_was(tmp_path: Path) -> None:
    path = tmp_path / "runs" / "a.jsonl"
    store = Store(path)
    record: dict[str, Any] = {"table": "blind", "scene": "1", "method": "ours"}
    store.add(record)
    with path.open("a") as file:
        file.write('{"table": "blind", "scene": "2", "meth')
    resumed = Store(path)
    assert list(resumed.records) == [("blind", "1", "ours")]
    resumed.add(record | {"scene": "2"})
    assert list(Store(path).records) == [("blind", "1", "ours"), ("blind", "2", "ours")]
