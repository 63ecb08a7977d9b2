"""The door itself: help, usage, statuses, interrupts; the measurement behind it is by hand."""

from __future__ import annotations

import json
import resource
import signal
import subprocess
from pathlib import Path

import pytest

from tests.doors.running import BY_HAND, PATIENCE_S, REAL, ROOT, bound_by_permissions, environment, refused, run

HELP_LIMIT_S = 0.15


def processor_seconds(*arguments: str) -> float:
    """Processor time of one run: what a quiet machine takes, whatever else runs on this one."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert run(*arguments).returncode == 0
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def test_help_is_quick() -> None:
    assert min(processor_seconds("--help") for _ in range(5)) <= HELP_LIMIT_S


def test_help_loads_no_heavy_library() -> None:
    code = (
        "import sys; from stylobate.app.cli import invoke; invoke(['--help']); "
        "sys.exit(bool({'numpy', 'numba', 'rich', 'pydantic', 'matplotlib'} & set(sys.modules)))"
    )
    assert (
        subprocess.run([REAL[0], "-c", code], env=environment(), stdout=subprocess.DEVNULL, check=False).returncode == 0
    )


@pytest.mark.parametrize("arguments", [["--help"], ["-h"], []])
def test_help_names_every_command(arguments: list[str]) -> None:
    done = run(*arguments)
    assert (done.returncode, done.stderr) == (0, "")
    for name in ("measure", "parts", "simulate"):
        assert f"\n  {name}  " in done.stdout


def test_every_command_in_the_list_can_be_loaded() -> None:
    for name in ("measure", "parts", "simulate"):
        done = run(name, "--help")
        assert (done.returncode, done.stderr) == (0, "")
        assert done.stdout.startswith(f"Usage: stylobate {name}")


def test_version() -> None:
    from stylobate import __version__

    assert run("--version").stdout == f"stylobate {__version__}\n"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--nope"], ["--nope", "stylobate --help"]),
        (["nope"], ["nope", "stylobate --help"]),
        (["measure"], ["SCAN", "stylobate measure --help"]),
        (["measure", "a.stl", "--out", "o"], ["--parts"]),
        (["measure", "a.stl", "--parts", "p"], ["--out"]),
        (["measure", "a.stl", "--parts", "p", "--out", "o", "--work", "crown"], ["crown", "single", "bridge", "arch"]),
        (["measure", "a.stl", "--parts", "p", "--out", "o", "--count", "0"], ["--count", "0"]),
        (["measure", "a.stl", "--parts", "p", "--out", "o", "--count", "two"], ["--count", "two"]),
        (["measure", "a.stl", "b.stl", "--parts", "p", "--out", "o"], ["b.stl"]),
    ],
)
def test_bad_usage_is_one_line(arguments: list[str], words: list[str]) -> None:
    refused(run(*arguments), *words)


@pytest.mark.parametrize("point", ["1,2", "1,2,3,4", "1,2,x", "", "1,2,nan", "1,inf,3", "1;2;3", "1 2 3"])
def test_a_point_that_is_none_is_shown_back(point: str, tmp_path: Path) -> None:
    done = run("measure", "a.stl", "--parts", "p", f"--near={point}", "--out", tmp_path / "out")
    refused(done, f"'{point}'", "--near=12.5,-3,40")
    assert not (tmp_path / "out").exists()


def by_hand(out: Path, *arguments: str, **extra: str) -> subprocess.CompletedProcess[str]:
    return run("measure", "a.stl", "--parts", "p", "--out", out, *arguments, program=BY_HAND, before=None, **extra)


def test_a_measurement_is_written_and_shown(tmp_path: Path) -> None:
    done = by_hand(tmp_path, "--near=-1,2.5e1,3")
    assert (done.returncode, done.stderr) == (0, "")
    assert {path.name for path in tmp_path.iterdir()} == {"result.json", "site-1.ply", "site-2.ply", "site-3.ply"}
    assert "alder-tall" in done.stdout
    assert "Decision support, not a medical device" in done.stdout


def test_no_maps(tmp_path: Path) -> None:
    by_hand(tmp_path)
    by_hand(tmp_path, "--no-maps", FAKE_SITES="2")
    assert [path.name for path in tmp_path.iterdir()] == ["result.json"]
    assert all("map" not in site for site in json.loads((tmp_path / "result.json").read_text())["sites"])


def test_fewer_than_asked_for(tmp_path: Path) -> None:
    done = by_hand(tmp_path, "--count", "4", "--strict")
    assert done.returncode == 3
    assert done.stderr == "stylobate: found 3 of the 4 sites asked for; the result is written\n"
    assert len(json.loads((tmp_path / "result.json").read_text())["sites"]) == 3


@pytest.mark.parametrize(("sites", "word"), [("0", "no site was found"), ("2", "no verdict")])
def test_strict_passes_nothing_without_a_verdict(sites: str, word: str, tmp_path: Path) -> None:
    done = by_hand(tmp_path, "--strict", FAKE_SITES=sites)
    assert done.returncode == 4
    assert word in done.stderr
    assert done.stderr.count("\n") == 1
    assert (tmp_path / "result.json").exists()


@pytest.mark.parametrize(("word", "status"), [("use", 0), ("undecided", 4), ("do not use", 4)])
def test_strict_passes_where_every_site_may_be_used(word: str, status: int, tmp_path: Path) -> None:
    done = by_hand(tmp_path, "--strict", FAKE_VERDICT=word)
    assert done.returncode == status
    assert (f"site 3: {word}" in done.stderr) == (status == 4)
    sites = json.loads((tmp_path / "result.json").read_text())["sites"]
    assert [site["verdict"] for site in sites] == ["use", "use", word]


def start_and_stop(out: Path, number: signal.Signals, **extra: str) -> tuple[int, str]:
    """Start a long measurement, send the signal once it runs; exit status and stderr."""
    command = [*BY_HAND, "measure", "a.stl", "--parts", "p", "--out", str(out)]
    process = subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=ROOT,
        env=environment(**(extra or {"FAKE_WAIT": "60"})),
    )
    with process:
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == "measuring\n"
        assert list(out.glob(".stylobate-*")), "nothing is staged: this test would not see what is left behind"
        process.send_signal(number)
        try:
            return process.wait(PATIENCE_S), process.stderr.read()
        finally:
            process.kill()


def test_interrupt_leaves_nothing(tmp_path: Path) -> None:
    status, said = start_and_stop(tmp_path / "new" / "folder", signal.SIGINT)
    assert (status, said) == (130, "stylobate: interrupted; nothing half-written is left\n")
    assert list(tmp_path.iterdir()) == []


def test_an_interrupt_that_is_lost_on_the_way_ends_all_the_same(tmp_path: Path) -> None:
    status, said = start_and_stop(tmp_path, signal.SIGINT, FAKE_DEAF="1")
    assert (status, said) == (130, "stylobate: interrupted; nothing half-written is left\n")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(("number", "expected"), [(signal.SIGINT, 130), (signal.SIGTERM, 143)])
def test_interrupt_keeps_the_earlier_result(number: signal.Signals, expected: int, tmp_path: Path) -> None:
    by_hand(tmp_path)
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert start_and_stop(tmp_path, number)[0] == expected
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


@pytest.mark.parametrize("limit", [100, 100_000, 340_000])
def test_full_disk_keeps_the_earlier_result(limit: int, tmp_path: Path) -> None:
    by_hand(tmp_path)
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert len(before["site-1.ply"]) > limit
    done = run(
        "measure", "a.stl", "--parts", "p", "--out", tmp_path, program=BY_HAND, FAKE_SITES="2",
        before=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)),
    )  # fmt: skip
    refused(done, str(tmp_path), "file too large", "nothing was changed")
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


@pytest.mark.parametrize(
    ("out", "cause"),
    [("/proc/out", "no such file"), ("{file}", "it is a file, not a folder"), ("{file}/below", "not a directory"),
     ("{dir}/" + 300 * "x", "name too long")],
)  # fmt: skip
def test_a_folder_that_cannot_be_written(out: str, cause: str, tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_text("kept")
    done = by_hand(Path(out.format(file=file, dir=tmp_path / "new")))
    refused(done, "--out", cause, "nothing was changed")
    assert [path.name for path in tmp_path.iterdir()] == ["file"]
    assert file.read_text() == "kept"


def test_a_folder_without_write_permission(tmp_path: Path) -> None:
    closed = tmp_path / "closed"
    closed.mkdir(mode=0o500)
    for out in (closed, closed / "below"):
        done = run("measure", "a", "--parts", "p", "--out", out, program=BY_HAND, before=bound_by_permissions)
        refused(done, "permission denied", "nothing was changed", "name a folder you can write to")
    assert not list(closed.iterdir())


def test_a_reader_that_leaves_is_no_fault(tmp_path: Path) -> None:
    command = [*BY_HAND, "measure", "a.stl", "--parts", "p", "--out", str(tmp_path)]
    process = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment(FAKE_WAIT="0.5"), cwd=ROOT
    )
    with process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.readline()
        process.stdout.close()
        assert (process.wait(60), process.stderr.read()) == (0, "")
    assert (tmp_path / "result.json").exists()


def test_a_fault_of_the_program_is_one_line_and_its_own_status(tmp_path: Path) -> None:
    done = by_hand(tmp_path / "out", FAKE_SITES="many")
    assert done.returncode == 70
    assert done.stderr.count("\n") == 1
    assert "internal error (ValueError" in done.stderr
    assert not (tmp_path / "out").exists()
    assert "Traceback" in by_hand(tmp_path / "out", FAKE_SITES="many", STYLOBATE_DEBUG="1").stderr
