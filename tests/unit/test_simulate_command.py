"""`stylobate simulate` as a user calls it."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from stylobate.app.cli import invoke
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import StylobateError
from stylobate.parts import load_parts
from stylobate.scan import read_scan, read_surface

QUICK = ["--arch", "single", "--bodies", "1", "--edge", "0.3"]


def simulate(out: Path, *arguments: str) -> None:
    assert invoke(["simulate", "--out", str(out), *QUICK, *arguments]) == 0


def test_the_case_can_be_read_and_agrees_with_its_truth(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    simulate(tmp_path / "case", "--seed", "3", "--noise-um", "0,0,1", "--fault", "1=unseated:80")
    assert capsys.readouterr().out.count("\n") == 1
    parts = load_parts(tmp_path / "case" / "parts")
    truth = json.loads((tmp_path / "case" / "truth.json").read_text())["sites"][0]
    scan = read_scan(tmp_path / "case" / "scan.stl")
    pose = np.array(truth["scan_from_connection"])
    local = (scan.surface.vertices + scan.origin - pose[:3, 3]) @ pose[:3, :3]
    off = SurfaceTree.of(parts.scan_body(truth["scan_body"]).surface).closest(local, 0.5).distance
    assert (np.abs(off) < 1e-4).sum() > 0.8 * truth["vertices"]
    assert truth["connection"] == parts.scan_body(truth["scan_body"]).seats_on
    assert np.linalg.norm(np.array(truth["scan_from_implant"]) - pose) > 0.05


def test_own_parts_and_named_bodies(tmp_path: Path) -> None:
    simulate(tmp_path / "one")
    parts = tmp_path / "one" / "parts"
    simulate(tmp_path / "two", "--parts", str(parts), "--scan-body", "alder-wide", "--format", "ply")
    assert {path.name for path in (tmp_path / "two").iterdir()} == {"scan.ply", "truth.json"}
    truth = json.loads((tmp_path / "two" / "truth.json").read_text())
    assert [site["scan_body"] for site in truth["sites"]] == ["alder-wide"]
    assert len(read_surface(tmp_path / "two" / "scan.ply", "scan.ply").faces) > 1000


def test_same_seed_same_files(tmp_path: Path) -> None:
    for name in ("one", "two"):
        simulate(tmp_path / name, "--seed", "5")
    for name in ("scan.stl", "truth.json", "parts/parts.toml"):
        assert (tmp_path / "one" / name).read_bytes() == (tmp_path / "two" / name).read_bytes()


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--fault", "1=bent"], "SITE=CAUSE:SIZE"),
        (["--fault", "1=haunted:3"], "haunted"),
        (["--fault", "2=bent body:1"], "site 2"),
        (["--noise-um", "1,2"], "3 numbers"),
        (["--noise-um", "nan,2,1"], "3 numbers"),
        (["--edge", "0"], "edge length"),
        (["--unseen", "1.5"], "unseen"),
        (["--scan-body", "nobody"], "nobody"),
        (["--parts", "nowhere"], "nowhere"),
        (["--stumps", "3"], "do not fit"),
    ],
)
def test_refusals_leave_nothing(tmp_path: Path, arguments: list[str], says: str) -> None:
    with pytest.raises(StylobateError, match=says) as caught:
        simulate(tmp_path / "case", *arguments)
    assert "\n" not in str(caught.value)
    assert not (tmp_path / "case").exists()


def test_an_earlier_case_is_kept_when_a_run_fails(tmp_path: Path) -> None:
    simulate(tmp_path / "case")
    before = {path: path.read_bytes() for path in (tmp_path / "case").rglob("*") if path.is_file()}
    with pytest.raises(StylobateError):
        simulate(tmp_path / "case", "--seed", "2", "--scan-body", "nobody")
    assert before == {path: path.read_bytes() for path in (tmp_path / "case").rglob("*") if path.is_file()}
