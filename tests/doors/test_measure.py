"""From two commands to implant positions: real processes, a simulated scan, its truth."""

from __future__ import annotations

import json
import resource
import shutil
import signal
import subprocess
import time
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh
from scipy.spatial import cKDTree

from stylobate.core.rigid import log
from tests.doors.running import PATIENCE_S, REAL, ROOT, bound_by_permissions, environment, refused, run

SITES = 2


@pytest.fixture(scope="session")
def case(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A simulated quadrant with two scan bodies: scan.stl, truth.json, parts/."""
    folder = tmp_path_factory.mktemp("case")
    done = run("simulate", "--out", folder, "--arch", "quadrant", "--bodies", SITES, "--seed", 21, "--edge", 0.2)
    assert done.returncode == 0, done.stderr
    assert {"scan.stl", "truth.json", "parts"} <= {path.name for path in folder.iterdir()}
    return folder


@pytest.fixture(scope="session")
def measured(case: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of one measurement of it, with the picture."""
    out = tmp_path_factory.mktemp("measured") / "out"
    done = run("measure", case / "scan.stl", "--parts", case / "parts", "--count", SITES, "--picture", "--out", out)
    assert (done.returncode, done.stderr) == (0, "")
    (out / "shown.txt").write_text(done.stdout)
    return out


def result(folder: Path) -> dict[str, Any]:
    values: dict[str, Any] = json.loads((folder / "result.json").read_text())
    return values


def measure(case: Path, out: Path, *arguments: object) -> subprocess.CompletedProcess[str]:
    return run("measure", case / "scan.stl", "--parts", case / "parts", "--out", out, *arguments)


def test_files(measured: Path) -> None:
    names = {path.name for path in measured.iterdir()}
    assert names == {"result.json", "site-1.ply", "site-2.ply", "picture.png", "shown.txt"}


def test_positions_agree_with_the_truth(case: Path, measured: Path) -> None:
    truth = json.loads((case / "truth.json").read_text())["sites"]
    poses = [np.array(site["scan_from_connection"]) for site in truth]
    for site in result(measured)["sites"]:
        pose = np.array(site["scan_from_connection"])
        assert np.allclose(pose[:3, :3] @ pose[:3, :3].T, np.eye(3), atol=1e-9)
        assert np.linalg.det(pose[:3, :3]) > 0
        true = min(poses, key=lambda other: float(np.linalg.norm(other[:3, 3] - pose[:3, 3])))
        error = log(np.linalg.inv(pose) @ true)
        assert np.linalg.norm(error[:3]) * 1000 < 4 * site["u95"]["platform_um"]
        assert np.degrees(np.linalg.norm(error[3:5])) < 4 * site["u95"]["axis_deg"]
    assert len(result(measured)["sites"]) == len(truth) == SITES


def test_surfaces_lie_on_the_scan_and_carry_their_deviation(case: Path, measured: Path) -> None:
    scan = trimesh.load_mesh(case / "scan.stl", process=True)
    for site in result(measured)["sites"]:
        mesh = trimesh.load_mesh(measured / site["map"], process=False)
        distance, _ = cKDTree(scan.vertices).query(mesh.vertices)
        assert distance.max() < 1e-3
        deviation = mesh.metadata["_ply_raw"]["vertex"]["data"]["deviation_um"].ravel()
        known = deviation[np.isfinite(deviation)]
        assert 0.5 < np.sqrt(np.mean(known.astype(float) ** 2)) / site["deviation"]["rms_um"] < 2.0


def test_the_table_shows_the_platform_of_each_site(measured: Path) -> None:
    shown = (measured / "shown.txt").read_text()
    for site in result(measured)["sites"]:
        for row in site["scan_from_connection"][:3]:
            assert f"{row[3]:.3f}" in shown


def test_the_python_example_of_the_readme_runs(case: Path) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    example = readme.split("```python\n")[1].split("```")[0].replace("arch.stl", "scan.stl")
    command = [REAL[0], "-c", example]
    done = subprocess.run(command, cwd=case, env=environment(), capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")
    assert len(done.stdout.splitlines()) == SITES


def test_twice_the_same_result(case: Path, measured: Path, tmp_path: Path) -> None:
    assert measure(case, tmp_path).returncode == 0
    assert result(tmp_path) == result(measured)


def test_more_asked_for_than_there_are(case: Path, tmp_path: Path) -> None:
    done = measure(case, tmp_path, "--count", SITES + 1)
    assert done.returncode == 3
    assert f"found {SITES} of the {SITES + 1}" in done.stderr
    assert len(result(tmp_path)["sites"]) == SITES


def test_near_points_give_the_same_sites(case: Path, measured: Path, tmp_path: Path) -> None:
    centres = [np.array(site["scan_from_connection"])[:3, 3] for site in result(measured)["sites"]]
    points = [f"--near={x + 0.5},{y - 0.5},{z + 0.5}" for x, y, z in centres]
    assert measure(case, tmp_path, *points).returncode == 0
    found = [np.array(site["scan_from_connection"])[:3, 3] for site in result(tmp_path)["sites"]]
    assert np.allclose(found, centres, atol=0.005)


def test_near_far_from_any_body(case: Path, tmp_path: Path) -> None:
    refused(measure(case, tmp_path / "out", "--near=900,900,900"), "900")
    assert not (tmp_path / "out").exists()


def test_unknown_scan_body(case: Path, tmp_path: Path) -> None:
    refused(measure(case, tmp_path / "out", "--scan-body", "yew-round"), "yew-round")
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("kind", ["missing", "folder", "empty", "text", "unknown format", "truncated"])
def test_scans_that_are_none(kind: str, case: Path, tmp_path: Path) -> None:
    scan = tmp_path / {"text": "note.stl", "unknown format": "arch.xyz"}.get(kind, "arch.stl")
    if kind == "folder":
        scan.mkdir()
    elif kind == "truncated":
        scan.write_bytes((case / "scan.stl").read_bytes()[:-1000])
    elif kind != "missing":
        scan.write_text({"empty": "", "text": "not a scan\n", "unknown format": "1 2 3\n4 5 6\n"}[kind])
    begun = time.monotonic()
    refused(run("measure", scan, "--parts", case / "parts", "--out", tmp_path / "out"), str(scan.name))
    assert time.monotonic() - begun < 20
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("kind", ["missing", "empty", "no toml", "broken toml", "no zip"])
def test_parts_that_are_none(kind: str, case: Path, tmp_path: Path) -> None:
    parts = tmp_path / ("parts.zip" if kind == "no zip" else "parts")
    if kind == "no zip":
        parts.write_text("not a zip")
    elif kind != "missing":
        parts.mkdir()
    if kind == "no toml":
        (parts / "readme.txt").write_text("nothing here")
    if kind == "broken toml":
        (parts / "parts.toml").write_text("format = \n")
    refused(run("measure", case / "scan.stl", "--parts", parts, "--out", tmp_path / "out"), "parts")
    assert not (tmp_path / "out").exists()


def test_what_may_not_be_read_or_written(case: Path, tmp_path: Path) -> None:
    scan, closed = tmp_path / "scan.stl", tmp_path / "closed"
    shutil.copy(case / "scan.stl", scan)
    scan.chmod(0)
    closed.mkdir(mode=0o500)
    for given, out, words in ((scan, "out", ["scan.stl"]), (case / "scan.stl", "closed/out", ["nothing was changed"])):
        done = run("measure", given, "--parts", case / "parts", "--out", tmp_path / out, before=bound_by_permissions)
        refused(done, "ermission", *words)


def test_full_disk_keeps_the_earlier_result(case: Path, tmp_path: Path) -> None:
    assert measure(case, tmp_path).returncode == 0
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    limit = len(before["site-1.ply"]) // 2
    done = run(
        "measure", case / "scan.stl", "--parts", case / "parts", "--out", tmp_path,
        before=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)),
    )  # fmt: skip
    refused(done, "file too large", "nothing was changed")
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


def test_interrupted_at_any_moment_nothing_half_written_is_left(case: Path, tmp_path: Path) -> None:
    command = [*REAL, "measure", str(case / "scan.stl"), "--parts", str(case / "parts"), "--out", str(tmp_path / "out")]
    interrupted = 0
    for delay in (0.3, 0.6, 0.9, 1.2):
        process = subprocess.Popen(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, env=environment(), cwd=ROOT
        )
        with process:
            time.sleep(delay)
            process.send_signal(signal.SIGINT)
            try:
                status = process.wait(PATIENCE_S)
            finally:
                process.kill()
            assert process.stderr is not None
            said = process.stderr.read()
        assert status in (0, 130), said
        if status == 130:
            interrupted += 1
            assert said == "stylobate: interrupted; nothing half-written is left\n"
            assert not (tmp_path / "out").exists() or (tmp_path / "out" / "result.json").exists()
        assert not list(tmp_path.rglob(".stylobate-*"))
        shutil.rmtree(tmp_path / "out", ignore_errors=True)
    assert interrupted
