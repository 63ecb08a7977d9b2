"""`stylobate place` as its user runs it: files, table, refusals that leave the folder alone."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.build.model import Placement
from stylobate.build.placing import place
from stylobate.core.errors import StylobateError
from stylobate.core.surface import Surface
from stylobate.parts import PartsFolder, load_parts
from stylobate.record import Record, read_result
from stylobate.report.document import document
from stylobate.report.meshes import stl_bytes
from stylobate.scan import read_scan, read_surface
from stylobate.simulate import demo_parts
from tests.doors.handmade import measurement
from tests.doors.running import refused, run

PARTS = "parts"


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with demo parts, a result of three sites (the third not to be used) and a flat opposing surface."""
    folder = tmp_path_factory.mktemp("case")
    demo_parts(folder / PARTS)
    values: dict[str, Any] = document(measurement(3)[0], maps=False)
    for site, verdict in zip(values["sites"], ("use", "undecided", "do not use"), strict=True):
        site["verdict"] = verdict
    values["sites"][2]["findings"] = [{"cause": "bent body", "advice": "Take another scan body."}]
    (folder / "result.json").write_text(json.dumps(values))
    corners = np.array([[-60.0, -60, 1514], [80, -60, 1514], [80, 60, 1514], [-60, 60, 1514]])
    surface = Surface(corners, np.array([[0, 1, 2], [0, 2, 3]], np.int32))
    (folder / "flat.stl").write_bytes(stl_bytes(surface, "flat"))
    return folder


@pytest.fixture(scope="module")
def loaded(case: Path) -> tuple[Record, PartsFolder]:
    return read_result(case), load_parts(case / PARTS)


def test_parts_are_placed_written_and_shown(case: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    done = run(
        "place", case, "--parts", case / PARTS, "--site", "1=alder-mu-16-25@2,alder-mu-base",
        "--site", "2=alder-base-10", "--aim=0,0,1", "--aim=2:0,0.1,1", "--opposing", case / "flat.stl", "--out", out,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    for words in (
        "alder-mu-16-25 @2 + alder-mu-base @0",
        "Torques",
        "30 to 35 N·cm",
        "undecided",
        "not a medical device",
    ):
        assert words in done.stdout
    values = json.loads((out / "place.json").read_text())
    assert (values["format"], values["version"]) == ("stylobate-place", 1)
    one, two = values["sites"]
    assert [(link["part"], link["turn"]) for link in one["chain"]] == [("alder-mu-16-25", 2), ("alder-mu-base", 0)]
    assert two["aim"] == pytest.approx((np.array([0.0, 0.1, 1.0]) / np.hypot(0.1, 1.0)).tolist())
    assert one["room_mm"] == pytest.approx(
        (1514 - one["channel"]["origin"][2]) / one["channel"]["direction"][2], abs=1e-6
    )
    assert {path.name for path in out.iterdir()} == {
        "place.json",
        *(link["surface"] for s in (one, two) for link in s["chain"]),
    }


def test_surfaces_lie_where_place_json_says(case: Path, tmp_path: Path) -> None:
    """The handmade case lies 1.5 m from its origin, so the files hold 64-bit coordinates."""
    assert (
        run("place", case, "--parts", case / PARTS, "--site", "1=alder-mu-28-35@4", "--out", tmp_path).returncode == 0
    )
    (link,) = json.loads((tmp_path / "place.json").read_text())["sites"][0]["chain"]
    assert link["surface"].endswith(".ply")
    pose = np.array(link["scan_from_part"])
    placed = read_surface(tmp_path / link["surface"])
    drawn = read_surface(case / PARTS / "abutments" / "alder-mu-28-35.stl").moved(pose)
    for one, two in ((placed, drawn), (drawn, placed)):
        gaps = np.linalg.norm(one.vertices[:, None] - two.vertices[None], axis=2).min(axis=1)
        assert gaps.max() < 1e-9
    assert placed.face_areas().sum() == pytest.approx(drawn.face_areas().sum(), rel=1e-9)


def test_a_site_not_to_be_used_is_refused_and_can_be_accepted_with_a_reason(case: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    refused(run("place", case, "--parts", case / PARTS, "--out", out), "site 3", "do not use", "bent body", "--accept")
    assert not out.exists()
    done = run(
        "place", case, "--parts", case / PARTS, "--accept", "3=remade, radiograph seen", "--picture", "--out", out
    )
    assert done.returncode == 0, done.stderr
    third = json.loads((out / "place.json").read_text())["sites"][2]
    assert third["accepted"] == {"verdict": "do not use", "reason": "remade, radiograph seen"}
    assert (out / "place.png").read_bytes()[:4] == b"\x89PNG"


def test_a_refusal_keeps_what_an_earlier_run_wrote_and_a_newer_one_replaces_it(case: Path, tmp_path: Path) -> None:
    assert run("place", case, "--parts", case / PARTS, "--site", "1=alder-mu-0-15", "--out", tmp_path).returncode == 0
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    refused(run("place", case, "--parts", case / PARTS, "--site", "1=alder-mu-0-15@6", "--out", tmp_path), "0 to 5")
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before
    assert run("place", case, "--parts", case / PARTS, "--site", "2=alder-base-25", "--out", tmp_path).returncode == 0
    assert {path.name for path in tmp_path.iterdir()} == {"place.json", "site-2-part-1-alder-base-25.ply"}


def placed(loaded: tuple[Record, PartsFolder], **wishes: Any) -> Placement:
    return place(*loaded, **wishes)


BAD: list[tuple[dict[str, Any], tuple[str, ...]]] = [
    ({"sites": ["9=alder-base-10"]}, ("--site 9", "1, 2, 3")),
    ({"sites": ["1"]}, ("'1'", "SITE=")),
    ({"sites": ["1="]}, ("'1='", "SITE=")),
    ({"sites": ["1=alder-base-10", "1=alder-base-25"]}, ("site 1", "twice")),
    ({"sites": ["1=alder-base-10@6"]}, ("alder-base-10@6", "'alder' has 6 positions", "0 to 5")),
    ({"sites": ["1=alder-base-10@-1"]}, ("'-1'", "whole number")),
    ({"sites": ["1=alder-base-10@x"]}, ("'x'", "whole number")),
    ({"sites": ["1=alder-base-10@"]}, ("alder-base-10@", "PART@TURN")),
    ({"sites": ["1=,"]}, ("''", "PART")),
    ({"sites": ["1=alder-mu-16-25,alder-mu-base@1"]}, ("'alder-mu' is not indexed", "turn 1")),
    ({"sites": ["1=alder-mu-base"]}, ("alder-mu-base seats on 'alder-mu'", "the site offers 'alder'", "alder-base-10")),
    ({"sites": ["1=alder-mu-16-25,alder-base-10"]}, ("alder-base-10 seats on 'alder'", "-25 offers 'alder-mu'")),
    ({"sites": ["1=alder-base-10,alder-base-25"]}, ("nothing seats on alder-base-10", "alder-base-25")),
    ({"sites": ["1=hazel-base-10"]}, ("hazel-base-10 seats on 'hazel'", "the site offers 'alder'")),
    ({"sites": ["1=alder-42-10"]}, ("an implant", "no surface")),
    ({"sites": ["1=alder-tall"]}, ("a scan body",)),
    ({"sites": ["1=alder-analog"]}, ("an analog",)),
    ({"sites": ["1=alder"]}, ("a connection, not a part",)),
    ({"sites": ["1=willow"]}, ("no part 'willow'", "alder-base-10")),
    ({"aims": ["0,0,0"]}, ("--aim=0,0,0", "zero")),
    ({"aims": ["0,1"]}, ("three numbers",)),
    ({"aims": ["0,0,nan"]}, ("three numbers",)),
    ({"aims": [":0,0,1"]}, ("three numbers",)),
    ({"aims": ["7:0,0,1"]}, ("no site '7'",)),
    ({"aims": ["0,0,1", "0,1,0"]}, ("an aim already",)),
    ({"aims": ["1:0,0,1", "1:0,1,0"]}, ("site 1 has an aim already",)),
    ({"accept": ["3="]}, ("'3='", "SITE=")),
    ({"accept": ["8=fine"]}, ("no site '8'",)),
    ({"accept": ["3=" + "x" * 501]}, ("500 characters",)),
    ({"below": ["1=alder-mu-16-25"], "sites": ["1=alder-base-10"]}, ("offers 'alder-mu'", "measured on 'alder'")),
    ({"below": ["1=willow"]}, ("no abutment 'willow'",)),
    ({"below": ["1=a,b"]}, ("one abutment",)),
    ({"channel_diameter": 0.0}, ("--channel-diameter 0",)),
    ({"channel_diameter": float("nan")}, ("--channel-diameter nan",)),
    ({"opposing": "missing.stl"}, ("missing.stl",)),
]  # fmt: skip


@pytest.mark.parametrize(("wishes", "words"), BAD, ids=[str(wishes)[:60] for wishes, _ in BAD])
def test_bad_input_is_one_line(
    wishes: dict[str, Any], words: tuple[str, ...], loaded: tuple[Record, PartsFolder]
) -> None:
    if "accept" not in wishes:
        wishes = {"accept": ["3=seen"], **wishes}
    with pytest.raises(StylobateError) as caught:
        placed(loaded, **wishes)
    assert "\n" not in str(caught.value)
    for word in words:
        assert word in str(caught.value)


def test_a_surface_elsewhere_is_refused_with_its_distance(case: Path, loaded: tuple[Record, PartsFolder]) -> None:
    away = case / PARTS / "scan-bodies" / "alder-tall.stl"
    for option, wishes in (("tissue", {"tissue": away}), ("teeth", {"teeth": away}), ("opposing", {"opposing": away})):
        with pytest.raises(StylobateError, match=rf"--{option}: lies \d+ mm from the nearest site"):
            placed(loaded, accept=["3=seen"], **wishes)


def test_a_folder_that_knows_the_connection_otherwise_is_refused(
    case: Path, loaded: tuple[Record, PartsFolder]
) -> None:
    record, _ = loaded
    toml = (case / PARTS / "parts.toml").read_text()
    for text, words in (
        (toml.replace("index_order = 6", "index_order = 5", 1), "6 index marks in the result, 5 in the parts folder"),
        (toml.replace('"alder"', '"willow"'), "no connection 'alder'"),
    ):
        (case / PARTS / "parts.toml").write_text(text)
        try:
            with pytest.raises(StylobateError, match=words):
                place(record, case / PARTS, ["1=alder-base-10"])
        finally:
            (case / PARTS / "parts.toml").write_text(toml)


@pytest.mark.parametrize(
    ("options", "words"),
    [
        ({"opposing": "flat.stl", "bite": "flat.stl"}, "only together with --join"),
        ({"opposing": "flat.stl", "join_to": "flat.stl", "bite": "flat.stl"}, "is not the scan that was measured"),
    ],
)
def test_joins_that_make_no_sense_are_refused(
    loaded: tuple[Record, PartsFolder], case: Path, options: dict[str, str], words: str
) -> None:
    with pytest.raises(StylobateError, match=words):
        place(*loaded, **{name: case / file for name, file in options.items()}, accept=["3=seen"])  # type: ignore[arg-type]


def test_a_join_needs_something_to_join(loaded: tuple[Record, PartsFolder], case: Path) -> None:
    record, parts = loaded
    flat = read_scan(case / "flat.stl")
    measured = replace(record, scan=replace(record.scan, sha256=flat.sha256))
    with pytest.raises(StylobateError, match="nothing to join"):
        place(measured, parts, join_to=flat, opposing=flat, accept=["3=seen"])
