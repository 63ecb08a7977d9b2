"""A batch in real worker processes: kill and resume, scans that break their worker, one table of all."""

from __future__ import annotations

import csv
import gc
import json
import os
import signal
import subprocess
import sys
import time
import tracemalloc
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow.parquet
import pytest

from stylobate.app.commands import batch as command
from stylobate.batch.journal import OUTCOME
from stylobate.batch.run import Count, Plan, run
from stylobate.batch.source import jobs_of
from stylobate.batch.work import Options, Order, work
from stylobate.core.errors import UsageError
from stylobate.core.surface import Surface
from stylobate.parts import load_parts
from stylobate.simulate import solids
from tests.doors.running import ROOT, environment
from tests.unit.batch_tasks import here, obeyed
from tests.unit.parts_making import flat, post, stl, toml, write


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with parts/ and an empty scans/."""
    write(tmp_path / "parts", toml({"alder-tall": "alder"}), {"alder-tall.stl": post(flat())})
    (tmp_path / "scans").mkdir()
    return tmp_path


def plan_of(folder: Path) -> Plan:
    return Plan(folder / "scans", folder / "parts", folder / "out")


def scans(folder: Path, **orders: str) -> None:
    for name, order in orders.items():
        (folder / "scans" / f"{name}.stl").write_text(order)


def started(folder: Path) -> Counter[str]:
    return Counter(line.split()[0] for line in (folder / "log.txt").read_text().splitlines())


def table(folder: Path) -> list[dict[str, str]]:
    with (folder / "out" / "summary.csv").open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def alive(pid: int) -> bool:
    """Whether a process still runs (a zombie does not)."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()[0] != "Z"
    except OSError:
        return False


def test_one_bad_scan_stops_nothing(folder: Path) -> None:
    scans(folder, a="ok", b="refuse", c="die", d="hang", e="ok", f="ok")
    count = obeyed(folder, limit_s=1.5)
    assert (count.total, count.now, len(count.bad)) == (6, 6, 3)
    rows = table(folder)
    status = {Path(row["scan"]).name: row["status"] for row in rows}
    assert "".join(status[f"{name}.stl"][0] for name in "abcdef") == "mrffmm"
    assert len([row for row in rows if row["status"] == "measured"]) == 6
    said = {Path(row["scan"]).name: row["message"] for row in rows}
    assert "no triangle" in said["b.stl"]
    assert "worker died" in said["c.stl"]
    assert "given up" in said["d.stl"]


def test_parquet_and_csv_say_the_same(folder: Path) -> None:
    scans(folder, a="ok", b="refuse")
    (folder / "scans" / "=cmd().stl").write_text("ok")
    run(plan_of(folder), workers=here)
    columns = pyarrow.parquet.read_table(folder / "out" / "summary.parquet").to_pydict()
    rows = table(folder)
    assert not any(value.startswith(("=", "+", "-", "@")) for row in rows for value in (row["scan"], row["message"]))
    assert columns["site"] == [row["site"] or None for row in rows] == ["1", "2", "1", "2", None]
    for name in ("x", "axis_z", "u95_platform_um", "rms_um", "triangles"):
        assert columns[name] == [float(row[name]) if row[name] else None for row in rows]


def test_an_earlier_run_is_gone_on_with(folder: Path) -> None:
    scans(folder, a="ok", b="refuse", c="fail")
    run(plan_of(folder), workers=here)
    scans(folder, d="ok", c="ok")
    count = run(plan_of(folder), workers=here)
    assert (count.total, count.earlier, count.now) == (4, 2, 2)
    assert started(folder) == {"a.stl": 1, "b.stl": 1, "c.stl": 2, "d.stl": 1}
    again = run(plan_of(folder), workers=here)
    assert (again.earlier, again.now) == (4, 0)
    scans(folder, a="ok 0.01")
    assert run(plan_of(folder), workers=here).now == 1


def killed_after(folder: Path, outcomes: int) -> set[str]:
    """Start a batch, kill it by signal 9 when so many scans are done; returns those that were."""
    command = [sys.executable, "-m", "tests.unit.batch_tasks", str(folder)]
    done = folder / "out" / "scans"
    with subprocess.Popen(command, cwd=ROOT, env=environment()) as batch:
        while batch.poll() is None and len(list(done.glob(f"*/{OUTCOME}"))) < outcomes:
            time.sleep(0.002)
        batch.send_signal(signal.SIGKILL)
    assert batch.returncode == -signal.SIGKILL
    return {path.parent.name for path in done.glob(f"*/{OUTCOME}")}


def test_kill_9_loses_nothing_and_repeats_at_most_the_scans_in_flight(folder: Path) -> None:
    scans(folder, **{f"s{k:02}": "ok 0.03" for k in range(24)})
    first = killed_after(folder, 5)
    assert sum(started(folder).values()) - len(first) <= 2
    pids = {int(line.split()[1]) for line in (folder / "log.txt").read_text().splitlines()}
    until = time.monotonic() + 30
    while any(map(alive, pids)) and time.monotonic() < until:
        time.sleep(0.02)
    assert not any(map(alive, pids)), "workers outlived the command"
    second = killed_after(folder, 14)
    assert first < second
    assert len(second) < 24
    count = obeyed(folder)
    assert (count.earlier, count.now) == (len(second), 24 - len(second))
    starts = started(folder)
    assert all(starts[name] == 1 for name in first)
    assert sum(starts.values()) - 24 <= 2 + 2
    assert len(table(folder)) == 48


def test_workers_are_replaced_after_their_share(folder: Path) -> None:
    scans(folder, **dict.fromkeys("abcde", "ok"))
    before = dict(os.environ)
    obeyed(folder, count=1, recycle=3)
    assert dict(os.environ) == before
    pids = [line.split()[1] for line in (folder / "log.txt").read_text().splitlines()]
    assert len(set(pids)) == 2
    assert max(Counter(pids).values()) == 3


def scanned(mirror: float = 1.0) -> bytes:
    """A body with its flat, scanned; with −1 turned inside out."""
    body = solids.cylinder(2.4, 0.0, 8.0) - solids.box((2.0, -3.0, -1.0), (3.0, 3.0, 9.0))
    fine = solids.surface_of(body.refine_to_length(0.4))
    noise = np.random.default_rng(1).normal(0.0, 0.006, fine.vertices.shape)
    return stl(Surface((fine.vertices + noise) * [1.0, 1.0, mirror], fine.faces))


def test_a_worker_keeps_to_one_core(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also where no site is found and the mirror is asked: `--workers N` takes N cores, not twice as many."""
    sizes: list[int | None] = []
    begin = ThreadPoolExecutor.__init__

    def noted(pool: ThreadPoolExecutor, max_workers: int | None = None, *rest: Any, **named: Any) -> None:
        sizes.append(max_workers)
        begin(pool, max_workers, *rest, **named)

    monkeypatch.setattr(ThreadPoolExecutor, "__init__", noted)
    parts = load_parts(folder / "parts")
    for name, mirror, sites in (("a", 1.0, 1), ("b", -1.0, 0)):
        path = folder / "scans" / f"{name}.stl"
        path.write_bytes(scanned(mirror))
        done = work(Order(name, path), parts, Options())
        assert len(json.loads(done.files["result.json"])["sites"]) == sites
        assert set(sizes) == {1}


def test_memory_stays_flat_over_scans(folder: Path) -> None:
    """A worker, scan after scan: from the third on nothing is kept. 20 kB a scan would be 20 MB over 1,000."""
    (folder / "scans" / "a.stl").write_bytes(scanned())
    parts, order = load_parts(folder / "parts"), Order("a", folder / "scans" / "a.stl")
    held = []
    tracemalloc.start()
    try:
        for _ in range(6):
            assert work(order, parts, Options()).status == "measured"
            gc.collect()
            held.append(tracemalloc.get_traced_memory()[0])
    finally:
        tracemalloc.stop()
    assert held[5] - held[2] < 3 * 20_000


def test_a_folder_is_of_one_batch_at_one_time(folder: Path) -> None:
    scans(folder, a="ok", b="ok")
    plan = plan_of(folder)
    refusals: list[str] = []

    def second(_: object) -> None:
        with pytest.raises(UsageError) as caught:
            run(plan, workers=here)
        refusals.append(str(caught.value))

    run(plan, tell=second, workers=here)
    assert len(refusals) == 3
    assert all("another batch is at work" in refusal for refusal in refusals)
    other = replace(plan, options=Options(work="arch"))
    with pytest.raises(UsageError, match="other work"):
        run(other, workers=here)


def test_an_output_folder_inside_the_source_is_not_measured(folder: Path) -> None:
    scans(folder, a="ok")
    out = folder / "scans" / "results"
    (out / "scans" / "x.stl").mkdir(parents=True)
    (out / "scans" / "x.stl" / "site-1.ply").write_text("")
    assert [job.key for job in jobs_of(folder / "scans", out)] == ["a.stl"]


def test_a_list_names_scans_from_where_it_lies(folder: Path) -> None:
    (folder / "list.txt").write_text("# Harbour Street\nscans/a.stl\n\nscans/b.stl\nscans/a.stl\n")
    jobs = jobs_of(folder / "list.txt", folder / "out")
    assert [job.path for job in jobs] == [folder / "scans" / "a.stl", folder / "scans" / "b.stl"]
    assert len({job.key for job in jobs}) == 2
    for bad in ("absent", "scans"):
        with pytest.raises(UsageError):
            jobs_of(folder / bad, folder / "out")


def test_progress_says_what_is_left(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    clock = [0.0]
    monkeypatch.setattr("stylobate.app.commands.batch.time.monotonic", lambda: clock[0])
    with command._progress() as tell:
        tell(Count(100, 10))
        clock[0] = 30.0
        tell(Count(100, 10, 5))
        clock[0] = 120.0
        tell(Count(100, 10, 30))
    # 30 scans in 2 min: 60 more take 4 min.
    assert capsys.readouterr().err == "stylobate: 40 of 100 scans, about 4 min left\n"
