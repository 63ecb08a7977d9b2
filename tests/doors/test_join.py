"""`stylobate join` as its user runs it, on simulated scans of one mouth; and what is done with the result."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.handoff.receive import Received, compared
from stylobate.parts import load_parts
from stylobate.record import read_result
from stylobate.report.meshes import stl_bytes
from stylobate.scan import read_scan
from stylobate.simulate import Scene, Settings, Visit, again, demo_parts
from tests.doors.running import refused, run

SEED = 9_500_003  # no development run uses seeds near it
OWN = np.diag([4e-6, 4e-6, 4e-6, 2e-7, 2e-7, 1e-6])
STANDING = {"a": (1, 2), "b": (2, 3)}


def written(folder: Path, made: Scene, standing: tuple[int, ...], parts: dict[str, str], surface: Surface) -> None:
    """The scan, and a result as `measure` would write it: poses drawn about the truth."""
    folder.mkdir()
    content = stl_bytes(surface, folder.name)
    (folder / "scan.stl").write_bytes(content)
    rng = np.random.default_rng(len(standing) + len(folder.name))
    sites: list[dict[str, Any]] = []
    for number, k in enumerate(standing, start=1):
        truth = made.sites[k - 1]
        pose = truth.scan_from_connection @ rigid.exp(np.linalg.cholesky(OWN) @ rng.normal(size=6))
        sites.append(
            {
                "site": str(number), "scan_body": truth.body.id, "connection": "alder", "platform_diameter": 4.2,
                "index_order": 6, "scan_from_connection": pose.tolist(), "covariance": OWN.tolist(),
                "verdict": "use", "budget": [{"source": "seating", "from": "not stated"}],
            }
        )  # fmt: skip
    values = {
        "format": "stylobate-result", "version": 1, "work": "bridge", "parts": parts, "sites": sites,
        "scan": {"file": "scan.stl", "sha256": hashlib.sha256(content).hexdigest(), "triangles": len(surface.faces)},
    }  # fmt: skip
    (folder / "result.json").write_text(json.dumps(values), encoding="utf-8")


@pytest.fixture(scope="module")
def truth() -> dict[str, Scene]:
    return {}


@pytest.fixture(scope="module")
def mouth(tmp_path_factory: pytest.TempPathFactory, truth: dict[str, Scene]) -> Path:
    """parts/; scans a and b of one mouth with two of its three bodies each; m, b's mirror image; joined/."""
    root = tmp_path_factory.mktemp("mouth")
    demo_parts(root / "parts")
    parts = load_parts(root / "parts")
    about = {"name": parts.name, "revision": parts.revision, "sha256": parts.sha256}
    settings = Settings(seed=SEED, bodies=("alder-tall",) * 3, edge_mm=0.35)
    for k, (name, standing) in enumerate(STANDING.items()):
        made = again(settings, parts.scan_bodies, Visit(SEED + k, standing, caps=True, gum_um=60.0 * k))
        truth[name] = made
        written(root / name, made, standing, about, made.surface)
    flip = np.array([-1.0, 1.0, 1.0])
    image = Surface(truth["b"].surface.vertices * flip, truth["b"].surface.faces[:, ::-1].copy())
    written(root / "m", truth["b"], (3,), about, image)
    done = run("join", root / "a", root / "b", "--scan", root / "b" / "scan.stl", "--scan", root / "a" / "scan.stl",
               "--out", root / "joined")  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert "in common" in done.stdout
    return root


def placed_in(made: Scene, pose: FloatArray) -> float:
    """µm from a pose's platform to the nearest true one."""
    return 1e3 * min(float(np.linalg.norm(pose[:3, 3] - site.scan_from_connection[:3, 3])) for site in made.sites)


def test_all_bodies_are_in_one_result_within_their_bounds(mouth: Path, truth: dict[str, Scene]) -> None:
    values = json.loads((mouth / "joined" / "result.json").read_text(encoding="utf-8"))
    record = read_result(mouth / "joined")
    assert len(record.sites) == 3
    own = [site.scan_from_connection for site in read_result(mouth / "a").sites]
    for site in record.sites:
        assert site.u95 is not None
        assert site.verdict in ("use", "undecided")
        if len(site.seen_in) == 1 and site.seen_in[0] == record.scan.sha256:
            assert min(np.abs(site.scan_from_connection - pose).max() for pose in own) < 1e-9
        else:
            assert placed_in(truth["a"], site.scan_from_connection) <= site.u95.platform_um <= 100.0
    assert len(record.cross) == 3
    assert sorted(tuple(seen["site"] for seen in site["seen_in"]) for site in values["sites"]) == [
        ("1",),
        ("2",),
        ("2", "1"),
    ]
    assert [one["scan"]["file"] for one in values["joined_from"]] == ["scan.stl"] * 2
    assert values["together"]["verdict"] in ("use", "undecided")


def test_the_result_is_sat_upon_built_upon_and_kept(mouth: Path, tmp_path: Path) -> None:
    for steps in (
        ["seat", "--frame", mouth / "joined", "--out", tmp_path / "seat"],
        ["place", mouth / "joined", "--parts", mouth / "parts", "--out", tmp_path / "place"],
        ["case", "new", tmp_path / "case", "--code", "H-7", "--work", "bridge", "--by", "AB"],
        ["case", "add", tmp_path / "case", f"bodies={mouth / 'a' / 'scan.stl'}", f"parts={mouth / 'parts'}",
         f"result={mouth / 'joined'}", "--by", "AB"],
    ):  # fmt: skip
        done = run(*steps)
        assert (done.returncode, done.stderr) == (0, ""), steps
    assert len(json.loads((tmp_path / "seat" / "seat.json").read_text(encoding="utf-8"))["sites"]) == 3
    assert len(json.loads((tmp_path / "place" / "place.json").read_text(encoding="utf-8"))["sites"]) == 3


def test_a_tissue_scan_is_written_where_it_lies(mouth: Path, truth: dict[str, Scene], tmp_path: Path) -> None:
    done = run("place", mouth / "a", "--parts", mouth / "parts", "--join", mouth / "a" / "scan.stl",
               "--tissue", mouth / "b" / "scan.stl", "--out", tmp_path)  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    join = json.loads((tmp_path / "place.json").read_text(encoding="utf-8"))["joins"]["tissue"]
    pose = np.array(join["bodies_from_scan"])
    at = (pose @ truth["b"].sites[1].scan_from_connection)[:3, 3]
    assert np.linalg.norm(at - truth["a"].sites[1].scan_from_connection[:3, 3]) < 0.1
    written = read_scan(tmp_path / "joined-tissue.stl").whole()
    there = truth["b"].surface.moved(pose)
    assert np.allclose(written.vertices[written.faces], there.vertices[there.faces], atol=1e-4)
    assert run("place", mouth / "a", "--parts", mouth / "parts", "--out", tmp_path).returncode == 0
    assert not (tmp_path / "joined-tissue.stl").exists()


def test_measured_again_in_the_first_scan_a_joined_site_may_differ_within_its_bounds(mouth: Path) -> None:
    record = read_result(mouth / "joined")
    several = next(site for site in record.sites if len(site.seen_in) == 2)
    away = [site.site for site in record.sites if site.seen_in and record.scan.sha256 not in site.seen_in]
    assert len(away) == 1
    measured = read_result(mouth / "a")
    found = compared(record, measured)  # type: ignore[arg-type]
    [again_] = [one for one in found if one.site == several.site]
    assert again_.joined
    received = Received("H-7", 1, "", 1, None, (again_,), (away[0],), "stylobate 0.1.0")
    assert received.same == (again_.same or again_.within)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["a", "--scan", "a"], ["two results or more"]),
        (["a", "b", "--scan", "a"], ["its scan 'scan.stl' is not among those given", "--scan"]),
        (["a", "a", "--scan", "a"], ["of the same scan"]),
        (["a", "m", "--scan", "a", "--scan", "m"], ["scan.stl on scan.stl"]),
        (["a", "nowhere", "--scan", "a"], ["nowhere"]),
    ],
)
def test_what_cannot_be_joined_is_refused_in_one_line(
    mouth: Path, tmp_path: Path, arguments: list[str], words: list[str]
) -> None:
    given: list[object] = []
    for before, word in zip(["", *arguments], arguments, strict=False):
        named = word if word == "--scan" else mouth / word
        given.append(mouth / word / "scan.stl" if before == "--scan" else named)
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "result.json").write_text("earlier", encoding="utf-8")
    refused(run("join", *given, "--out", tmp_path / "out"), *words)
    assert (tmp_path / "out" / "result.json").read_text(encoding="utf-8") == "earlier"
