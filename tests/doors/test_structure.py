"""`stylobate structure` as its user runs it."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from stylobate.build.master import master_model_of
from stylobate.core.errors import StylobateError
from stylobate.report.document import document
from stylobate.report.meshes import stl_bytes
from stylobate.simulate import demo_parts
from tests.doors.handmade import ORIGIN, measurement
from tests.doors.running import refused, run
from tests.outside.test_structures import hill


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Demo parts, a result of two sites of which the second is not to be used, and an open scan around both."""
    folder = tmp_path_factory.mktemp("case")
    demo_parts(folder / "parts")
    values = document(measurement(2)[0], maps=False)
    values["sites"][1]["verdict"] = "do not use"
    (folder / "result.json").write_text(json.dumps(values))
    surface = hill(60)
    middle = np.mean([site["scan_from_connection"] for site in values["sites"]], axis=0)[:3, 3]
    moved = type(surface)(surface.vertices - [15.0, 5.0, 0.0] + middle, surface.faces)
    (folder / "scan.stl").write_bytes(stl_bytes(moved, "scan"))
    assert abs(middle[2] - ORIGIN[2]) < 5.0
    return folder


def test_a_bar_is_written_far_from_the_origin_too(case: Path, tmp_path: Path) -> None:
    done = run(
        "structure", "bar", case, "--parts", case / "parts", "--site", "1=alder-mu-16-25", "--site", "2=alder-mu-0-15",
        "--accept", "2=remade", "--out", tmp_path,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert "watertight as written" in done.stdout
    values = json.loads((tmp_path / "structure.json").read_text())
    assert values["surface"]["file"] == "bar.ply"
    assert values["settings"]["accepted"] == {"2": "remade"}
    assert max(one["shift_um"] for one in values["interfaces"]) < 2.0
    refused(run("structure", "bar", case, "--parts", case / "parts", "--out", tmp_path / "no"), "site 2", "do not use")
    assert not (tmp_path / "no").exists()


def test_the_seats_of_a_bar_are_found_in_its_design(case: Path, tmp_path: Path) -> None:
    """It stands on the platforms themselves, with a ring that is no part's and shows no turn."""
    sites = ("--site", "1=alder-base-10", "--site", "2=alder-base-10")
    bar = tmp_path / "bar"
    assert (
        run(
            "structure", "bar", case, "--parts", case / "parts", *sites, "--accept", "2=remade", "--out", bar
        ).returncode
        == 0
    )
    done = run("frame", bar / "bar.ply", "--like", case, "--parts", case / "parts", "--out", tmp_path / "frame")
    assert (done.returncode, done.stderr) == (0, "")
    said = " ".join(done.stdout.split())
    assert "Sites 1, 2: the frame shows no part of the folder there but a plain ring" in said
    assert "2 seats in bar.ply" in said
    assert "any" in said
    assert "scan body" not in said
    there = json.loads((tmp_path / "frame" / "result.json").read_text())["sites"]
    for found, measured in zip(there, json.loads((case / "result.json").read_text())["sites"], strict=True):
        one, two = (np.array(site["scan_from_connection"]) for site in (found, measured))
        assert np.linalg.norm(one[:3, 3] - two[:3, 3]) < 2e-3
        assert one[:3, 2] @ two[:3, 2] > np.cos(np.radians(0.01))
        assert found["u95"]["index_deg"] > 90.0


def test_a_bar_over_abutments_is_set_against_what_was_placed(case: Path, tmp_path: Path) -> None:
    """What it stands on are the abutments' upper connections, which `place` tells."""
    chains = (
        "--parts",
        case / "parts",
        "--site",
        "1=alder-mu-16-25",
        "--site",
        "2=alder-mu-0-15",
        "--accept",
        "2=remade",
    )
    bar, placed, made, rest = (tmp_path / name for name in ("bar", "placed", "made", "rest"))
    assert run("structure", "bar", case, *chains, "--out", bar).returncode == 0
    assert run("place", case, *chains, "--out", placed).returncode == 0
    done = run("frame", bar / "bar.ply", "--like", placed, "--parts", case / "parts", "--out", made)
    assert (done.returncode, done.stderr) == (0, "")
    done = run("seat", "--frame", made, "--on", placed / "place.json", "--out", rest)
    assert (done.returncode, done.stderr) == (0, "")
    seats = json.loads((rest / "seat.json").read_text())
    assert [site["site"] for site in seats["sites"]] == ["1", "2"]
    assert seats["worst_gap_um"] < 2.0
    assert seats["worst_side_um"] < 2.0


def test_a_model_of_one_site(case: Path, tmp_path: Path) -> None:
    done = run(
        "structure", "model", case / "scan.stl", case, "--parts", case / "parts", "--site", "1", "--out", tmp_path
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert {path.name for path in tmp_path.iterdir()} == {"model.ply", "structure.json"}


@pytest.mark.parametrize(
    ("wishes", "words"),
    [
        ({}, "site 2: its verdict is `do not use`"),
        ({"sites": ["7"]}, "no site '7'"),
        ({"sites": ["1"], "analogs": ["1=willow"]}, "no such analog"),
        ({"sites": ["1"], "analogs": ["1"]}, "SITE="),
        ({"sites": ["1"], "base": 0.0}, "--base 0"),
    ],
)
def test_what_cannot_be_is_one_line(case: Path, wishes: dict[str, object], words: str) -> None:
    with pytest.raises(StylobateError, match=words) as caught:
        master_model_of(case / "scan.stl", case, case / "parts", **wishes)  # type: ignore[arg-type]
    assert "\n" not in str(caught.value)


def test_a_scan_elsewhere_is_refused(case: Path) -> None:
    with pytest.raises(StylobateError, match="not in the frame of the scan"):
        master_model_of(case / "parts" / "scan-bodies" / "alder-tall.stl", case, case / "parts", ["1"])
