"""`stylobate compare` as a user runs it."""

from __future__ import annotations

import csv
import json
import shutil
from pathlib import Path

import numpy as np
import pytest

from stylobate.app.cli import invoke
from stylobate.core.errors import StylobateError
from stylobate.record import read_result
from tests.doors.running import refused, run
from tests.unit.comparing_making import arch, document, unseated, write

FILES = {"compare.json", "compare.csv", "compare.parquet", "compare.png", "compare.pdf"}


@pytest.fixture(scope="module")
def three(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Scans a, b, c of four implants; in c the body at site 2 stands 150 µm high."""
    folder = tmp_path_factory.mktemp("three")
    rng = np.random.default_rng(21)
    poses = arch(4, rng)
    for name in "abc":
        shown = unseated(poses, 1, 0.15) if name == "c" else poses
        write(folder / name, document(shown, rng, name, shuffled=name == "b"))
    return folder


def test_everything_is_written_and_shown(three: Path, tmp_path: Path) -> None:
    names = [str(three / name / "result.json") for name in "abc"]
    done = run("compare", *names, "--out", tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert {path.name for path in tmp_path.iterdir()} == FILES | {"result.json"}
    values = json.loads((tmp_path / "compare.json").read_text(encoding="utf-8"))
    assert values["scans"] == names
    assert all(set(entry) == set(names) for entry in values["matched"])
    assert [(moved["site"], moved["scan"]) for moved in values["moved"]] == [("2", names[2])]
    assert "Site 2 of" in done.stdout
    assert "stands" in done.stdout
    assert len(values["pairs"]) == 6
    assert all(len(pair["distance_mm"]) == 3 for pair in values["pairs"] if "2" not in pair["sites"])
    assert {site["site"] for site in values["can_find"]} == {"1", "2", "3", "4"}
    with (tmp_path / "compare.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 12
    assert [row["scan"] for row in rows if row["moved"] == "True"] == [names[2]]
    assert read_result(tmp_path).covariance().shape == (24, 24)


def test_the_tables_are_alike(three: Path, tmp_path: Path) -> None:
    import pyarrow.parquet as pq

    run("compare", three / "a", three / "b", "--no-plots", "--out", tmp_path)
    table = pq.read_table(tmp_path / "compare.parquet").to_pylist()
    with (tmp_path / "compare.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert [str(row["height_um"]) for row in table] == [row["height_um"] for row in rows]
    assert not (tmp_path / "compare.png").exists()


def test_no_cell_of_the_table_starts_a_formula(three: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(three / "a", "=a")
    assert invoke(["compare", "=a", str(three / "b"), "--no-plots", "--out", "out"]) == 0
    with (tmp_path / "out" / "compare.csv").open(encoding="utf-8") as file:
        assert {row["scan"][:2] for row in csv.DictReader(file)} == {"'=", str(three)[:2]}


def test_a_pooled_result_can_be_compared_again(three: Path, tmp_path: Path) -> None:
    run("compare", three / "a", three / "b", "--no-plots", "--out", tmp_path / "pooled")
    done = run("compare", tmp_path / "pooled", three / "c", "--no-plots", "--out", tmp_path / "again")
    assert (done.returncode, done.stderr) == (0, "")
    assert not (tmp_path / "again" / "result.json").exists(), "two scans that differ at a site are not pooled"
    assert "--rescan 2" in done.stdout.replace("\n", " ")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["a"], ["two results or more"]),
        (["a", "a"], ["is the same result as"]),
        (["a", "nowhere"], ["nowhere"]),
        (["a", "b", "--group", "x"], ["--group 'x'", "--group one=a,b,c"]),
        (["a", "b", "--group", "x=a,q"], ["'q' is none of the results"]),
        (["a", "b", "--group", "x=a"], ["in no group"]),
        (["a", "b", "--group", "x=a", "--group", "x=b"], ["stands twice"]),
        (["a", "b", "--group", "x=a,b", "--group", "y=b"], ["another group"]),
        (["a", "b", "--rescan", "9"], ["no such site"]),
        (["a", "other"], ["stand alike"]),
    ],
)
def test_bad_usage_keeps_what_was_there(three: Path, arguments: list[str], words: list[str], tmp_path: Path) -> None:
    rng = np.random.default_rng(22)
    write(three / "other", document(arch(4, rng), rng, "other", connection="hazel"))
    (tmp_path / "compare.json").write_text("earlier", encoding="utf-8")
    known = {"a", "b", "c", "other", "nowhere"}
    full = [str(three / word) if word in known else _with_folder(word, three) for word in arguments]
    with pytest.raises(StylobateError) as error:
        invoke(["compare", *full, "--out", str(tmp_path)])
    for word in words:
        assert word in str(error.value)
    assert "\n" not in str(error.value)
    assert (tmp_path / "compare.json").read_text(encoding="utf-8") == "earlier"
    assert [path.name for path in tmp_path.iterdir()] == ["compare.json"]


def test_a_refusal_is_one_line_and_status_2(three: Path, tmp_path: Path) -> None:
    refused(run("compare", three / "a", three / "a", "--out", tmp_path / "new"), "is the same result as")
    assert not (tmp_path / "new").exists()


def _with_folder(word: str, folder: Path) -> str:
    """--group's members as they stand on the command line."""
    name, sign, members = word.partition("=")
    if not sign:
        return word
    return f"{name}={','.join(str(folder / m) if m in 'abc' else m for m in members.split(','))}"
