"""`stylobate seat` as its user runs it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.core.rigid import exp
from stylobate.report.document import document
from tests.doors.handmade import measurement
from tests.doors.running import refused, run


def written(folder: Path, off: dict[str, list[float]] | None = None, count: int = 4, scan: str = "ab") -> Path:
    """A result in `folder`; `off`: a small motion ξ of some of its sites."""
    values: dict[str, Any] = document(measurement(count)[0], False)
    for site in values["sites"]:
        pose = np.array(site["scan_from_connection"]) @ exp(np.array((off or {}).get(site["site"], [0.0] * 6)))
        site["scan_from_connection"] = pose.tolist()
    values["scan"]["sha256"] = scan
    folder.mkdir()
    (folder / "result.json").write_text(json.dumps(values))
    return folder


def test_on_draws(tmp_path: Path) -> None:
    done = run("seat", "--frame", written(tmp_path / "a"), "--draws", 500, "--out", tmp_path / "out")
    assert (done.returncode, done.stderr) == (0, "")
    found = json.loads((tmp_path / "out" / "seat.json").read_text())
    assert (found["format"], found["version"], found["limit_um"], found["side_limit_um"]) == (
        "stylobate-seat",
        1,
        100,
        100,
    )
    assert [set(site) >= {"site", "gap_um", "gap_p95_um", "side_um", "side_p95_um"} for site in found["sites"]] == [
        True
    ] * 4
    for name in ("gap", "side"):
        assert found[f"worst_{name}_um"] <= found[f"worst_{name}_p95_um"]
        assert found[f"worst_{name}_p95_um"] >= max(site[f"{name}_p95_um"] for site in found["sites"])
    assert 0 <= found["probability_within_limits"] <= found["probability_gap_within_limit"] <= 1
    assert [test["tight"] for test in found["one_screw"]] == ["1", "2", "3", "4"]
    assert set(found["one_screw"][0]["gaps_um"]) == {"1", "2", "3", "4"}
    assert "No limit of misfit is proven" in done.stdout.replace("\n", " ")


def test_on_another_result(tmp_path: Path) -> None:
    a, b = written(tmp_path / "a"), written(tmp_path / "b", {"2": [0, 0, 0.25, 0, 0, 0]})
    done = run("seat", "--frame", a / "result.json", "--on", b, "--rim-diameter", 0, "--out", tmp_path / "out")
    assert (done.returncode, done.stderr) == (0, "")
    found = json.loads((tmp_path / "out" / "seat.json").read_text())
    assert found["worst_gap_um"] == max(site["gap_um"] for site in found["sites"])
    assert not [key for key in found if "p95" in key or "probability" in key]
    assert all("gap_p95_um" not in site for site in found["sites"])
    assert found["matched"][1] == {"frame": "2", "on": "2"}


def test_a_turn_that_is_not_known_is_not_told(tmp_path: Path) -> None:
    """A seat without an index shows no turn: its figure would be that of where the fit came to rest."""
    a, b = written(tmp_path / "a", {"2": [0, 0, 0, 0, 0, 0.2]}), written(tmp_path / "b")
    values = json.loads((a / "result.json").read_text())
    order = values["sites"][1]["index_order"]
    for known_deg, told in ((1.0, True), (180.0 / order, False)):
        values["sites"][1]["u95"]["index_deg"] = known_deg
        (a / "result.json").write_text(json.dumps(values))
        assert run("seat", "--frame", a, "--on", b, "--out", tmp_path / "out").returncode == 0
        sites = json.loads((tmp_path / "out" / "seat.json").read_text())["sites"]
        assert (sites[1].get("turn_deg") is not None) is told
        assert sites[0]["turn_deg"] is not None


def test_profile_of_repeat_scans(tmp_path: Path) -> None:
    """And seat counts it."""
    rng = np.random.default_rng(1)
    scans = []
    for k in range(3):
        off = {str(n): (rng.normal(size=6) * ([0.02] * 3 + [0.001] * 3)).tolist() for n in range(1, 5)}
        scans.append(written(tmp_path / f"s{k}", off, scan=str(k)))
    done = run("profile", *scans, "--scanner", "demo", "--out", tmp_path / "p")
    assert (done.returncode, done.stderr) == (0, "")
    found = json.loads((tmp_path / "p" / "profile.json").read_text())
    assert found["scale_ppm"] is None
    assert 0 < found["shift_um"]["value"] < 60
    assert "Precision only" in done.stdout
    done = run("seat", "--frame", scans[0], "--profile", tmp_path / "p", "--draws", 200, "--out", tmp_path / "o")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads((tmp_path / "o" / "seat.json").read_text())["counted"] == ["scan", "drift"]
    refused(run("profile", *scans[:2], "--scanner", "demo", "--out", tmp_path / "q"), "3 repeat scans")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--frame", "{absent}"], "no such file"),
        (["--frame", "{one}"], "at least two sites"),
        (["--frame", "{a}", "--on", "{one}"], "stand alike"),
        (["--frame", "{a}", "--limit-um", "0"], "above 0"),
        ([], "--frame"),
    ],
)
def test_bad_input(arguments: list[str], words: str, tmp_path: Path) -> None:
    places = {"a": written(tmp_path / "a"), "one": written(tmp_path / "one", count=1), "absent": tmp_path / "none.json"}
    out = tmp_path / "out"
    out.mkdir()
    (out / "seat.json").write_text("earlier")
    refused(run("seat", *(word.format(**places) for word in arguments), "--out", out), words)
    assert [path.name for path in out.iterdir()] == ["seat.json"]
    assert (out / "seat.json").read_text() == "earlier"
