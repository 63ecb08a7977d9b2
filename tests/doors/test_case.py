"""A case from the scan to the other end of the hand-off, as a user does it: real processes, a real measurement."""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path

import pytest

from tests.doors.running import refused, run


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A case that was measured, checked, released and packed: case/, p.zip, k.pem."""
    root = tmp_path_factory.mktemp("handoff")
    sim, case = root / "sim", root / "case"
    steps: list[list[object]] = [
        ["simulate", "--out", sim, "--arch", "single", "--scan-body", "hazel-square", "--seed", 4, "--edge", 0.2],
        ["case", "new", case, "--code", "H-0421", "--work", "single", "--by", "AB"],
        ["case", "add", case, f"bodies={sim / 'scan.stl'}", f"parts={sim / 'parts'}", "--by", "AB"],
        ["case", "measure", case, "--count", 1, "--by", "AB"],
        ["case", "sites", case, "36=1", "--by", "AB"],
        ["case", "check", case, "36", "clean", "--by", "AB"],
        ["case", "check", case, "36", "seated", "--by", "AB"],
        ["case", "check", case, "36", "torque", "--ncm", 12, "--by", "AB"],
        ["case", "check", case, "36", "unit", "--number", "HZ-7", "--by", "AB"],
        [
            "case",
            "check",
            case,
            "36",
            "radiograph",
            "--length",
            12,
            "--ends",
            "0,0:0,395",
            "--pixel",
            0.03,
            "--by",
            "AB",
        ],
        ["case", "release", case, "36", "--by", "CD", "--reason", "looked at all figures"],
        ["package", "--new-key", root / "k.pem"],
        ["package", case, "--out", root / "p.zip", "--sign", root / "k.pem"],
    ]
    for step in steps:
        done = run(*step)
        assert (done.returncode, done.stderr) == (0, ""), (step, done.stderr)
    return root


def test_measured_again_at_the_other_end_it_is_the_same(made: Path, tmp_path: Path) -> None:
    done = run("receive", made / "p.zip", "--from", made / "k.pem.pub", "--out", tmp_path / "in")
    assert (done.returncode, done.stderr) == (0, "")
    assert "whole. Case H-0421" in done.stdout
    assert "site 1: the same, 0.00 µm" in done.stdout
    assert run("case", "verify", tmp_path / "in" / "case").returncode == 0


def test_a_pose_that_was_changed_with_all_hashes_made_anew_shows_when_measured_again(
    made: Path, tmp_path: Path
) -> None:
    """Whoever forges the whole chain without a signature is found out by the scan itself."""
    from stylobate.case import Case, intake

    case = tmp_path / "case"
    shutil.copytree(made / "case", case)
    held = Case.open(case)
    result = held.table.result()
    assert result is not None
    forged = tmp_path / "forged"
    shutil.copytree(case / result.folder, forged)
    values = json.loads((forged / "result.json").read_text())
    values["sites"][0]["scan_from_connection"][0][3] += 0.03
    (forged / "result.json").write_text(json.dumps(values))
    intake.add_result(held, forged, "XY")
    assert run("package", case, "--out", tmp_path / "p.zip").returncode == 0
    done = run("receive", tmp_path / "p.zip")
    assert done.returncode == 4
    assert "site 1: DIFFERS, 30." in done.stdout or "site 1: DIFFERS, 29.9" in done.stdout
    assert done.stderr.count("\n") == 1


def test_bad_packages_are_refused_in_one_line(made: Path, tmp_path: Path) -> None:
    whole = (made / "p.zip").read_bytes()
    bad = tmp_path / "p.zip"
    bad.write_bytes(whole[:-100_000])
    refused(run("receive", bad, "--out", tmp_path / "in"), "p.zip", "seal")
    content = bytearray(whole)
    content[len(whole) // 2] ^= 4
    bad.write_bytes(content)
    refused(run("receive", bad, "--out", tmp_path / "in"), "p.zip", "damaged or changed")
    shutil.copy(made / "p.zip", bad)
    with zipfile.ZipFile(bad, "a") as archive:
        archive.writestr("extra.txt", "x")
    refused(run("receive", bad, "--out", tmp_path / "in"), "p.zip")
    assert not (tmp_path / "in").exists()


def test_case_commands_refuse_in_one_line(made: Path, tmp_path: Path) -> None:
    case = made / "case"
    refused(run("case", "show", tmp_path), "holds no case")
    refused(run("case", "new", case, "--code", "H-2", "--by", "AB"), "already")
    refused(run("case", "check", case, "19", "clean", "--by", "AB"), "ISO 3950")
    refused(run("case", "check", case, "36", "torque", "--by", "AB"), "--ncm")
    refused(run("case", "check", case, "36", "radiograph", "--length", 12, "--by", "AB"), "--ends")
    refused(run("case", "add", case, "spare=a.stl", "--by", "AB"), "spare")
    refused(run("case", "sites", case, "36", "--by", "AB"), "36", "14=1")
    refused(run("package", case), "--out")
    refused(run("report", tmp_path / "none", "--out", tmp_path / "out"), "none")
    assert not (tmp_path / "out").exists()


def test_the_report_of_a_case(made: Path, tmp_path: Path) -> None:
    done = run("report", made / "case", "--out", tmp_path / "r")
    assert (done.returncode, done.stderr) == (0, "")
    assert {path.name for path in (tmp_path / "r").iterdir()} == {"report.pdf", "report.html"}
    page = (tmp_path / "r" / "report.html").read_text()
    assert "lower left first molar" in page
    assert "looked at all figures" in page
