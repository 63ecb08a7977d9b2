"""Packages: whole to the byte, signed, scrubbed, no formula; hostile ones refused in one line."""

from __future__ import annotations

import csv
import io
import json
import random
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stylobate.case import Case, intake
from stylobate.case.model import JoinEntry
from stylobate.core.errors import CaseError, OutputError, PackageError, StylobateError, UsageError
from stylobate.core.rigid import exp
from stylobate.core.surface import Surface
from stylobate.handoff import pack, receive, surfaces
from stylobate.handoff.archive import Package, zipped
from stylobate.handoff.glb import Named, glb_bytes
from stylobate.handoff.manifest import MANIFEST, Manifest, entry_of, manifest_bytes
from stylobate.handoff.poses import poses_csv
from stylobate.handoff.sign import new_key, private_key, public_key
from stylobate.measuring import measure
from stylobate.record import read_result
from stylobate.report.folder import staging
from stylobate.report.save import save
from stylobate.scan import read_mesh
from tests.doors.page_server import small_scene
from tests.unit.case_making import case_with_result, placed_at
from tests.unit.parts_making import post, stl


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Case:
    return case_with_result(tmp_path_factory.mktemp("handoff"), verdict="use")


@pytest.fixture(scope="module")
def package(case: Case, tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("package") / "h-1.zip"
    pack(case.path, out)
    return out


def small(files: dict[str, bytes], listed: dict[str, bytes] | None = None) -> bytes:
    """A package of these files; listed: what its manifest says."""
    entries = {name: entry_of(content) for name, content in (files if listed is None else listed).items()}
    manifest = Manifest("H-1", "2026-11-25T12:00:00Z", "stylobate", "0" * 64, 0, entries)
    return zipped({MANIFEST: manifest_bytes(manifest), **files})


def test_the_same_case_gives_the_same_package(case: Case, package: Path, tmp_path: Path) -> None:
    pack(case.path, tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() == package.read_bytes()


def test_it_is_received_whole_with_the_log_it_was_sent_with(case: Case, package: Path, tmp_path: Path) -> None:
    found = receive(package, out=tmp_path / "in", measure=False)
    assert (found.log_head, found.log_lines) == (case.log.head, len(case.log.lines))
    assert Case.open(tmp_path / "in" / "case").table == case.table
    assert (tmp_path / "in" / "report" / "report.pdf").read_bytes()[:5] == b"%PDF-"
    assert found.signer is None


def test_each_flipped_byte_is_seen(package: Path, tmp_path: Path) -> None:
    whole = package.read_bytes()
    chance = random.Random(5)
    places = [0, 1, len(whole) - 1, len(whole) - 80, *(chance.randrange(len(whole)) for _ in range(25))]
    for place in places:
        content = bytearray(whole)
        content[place] ^= 1 << chance.randrange(8)
        (tmp_path / "p.zip").write_bytes(content)
        with pytest.raises(PackageError) as caught:
            receive(tmp_path / "p.zip", out=tmp_path / "in", measure=False)
        assert "\n" not in str(caught.value)
    assert not (tmp_path / "in").exists()


def test_a_file_changed_missing_or_added_is_named(tmp_path: Path) -> None:
    true = {"a.txt": b"a", "b.txt": b"b"}
    for files, word in (
        ({"a.txt": b"a", "b.txt": b"x"}, "b.txt is not what the manifest says"),
        ({"a.txt": b"a"}, "b.txt is missing"),
        ({**true, "c.txt": b"c"}, "c.txt was added"),
    ):
        (tmp_path / "p.zip").write_bytes(small(files, true))
        with pytest.raises(PackageError, match=word):
            Package(tmp_path / "p.zip")
    (tmp_path / "p.zip").write_bytes(small(true))
    assert Package(tmp_path / "p.zip").read("a.txt") == b"a"


@pytest.mark.parametrize("name", ["../out.txt", "/etc/out.txt", "a/../../out.txt", "C:out.txt", "a\\b.txt"])
def test_a_path_that_leaves_the_folder_is_refused(name: str, tmp_path: Path) -> None:
    (tmp_path / "p.zip").write_bytes(small({name: b"x"}))
    with pytest.raises(PackageError, match="refused"):
        receive(tmp_path / "p.zip", out=tmp_path / "in", measure=False)
    assert [path.name for path in tmp_path.rglob("*")] == ["p.zip"]


def test_a_zip_bomb_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    (tmp_path / "p.zip").write_bytes(small({"zeros.bin": bytes(50_000_000)}))
    assert (tmp_path / "p.zip").stat().st_size < 1_000_000
    with pytest.raises(PackageError, match="200 times its size"):
        Package(tmp_path / "p.zip")


@pytest.mark.parametrize("content", [b"", b"PK\x05\x06" + bytes(18), b"x" * 5000])
def test_what_is_no_package_is_refused(content: bytes, tmp_path: Path) -> None:
    (tmp_path / "p.zip").write_bytes(content)
    with pytest.raises(PackageError, match="seal"):
        Package(tmp_path / "p.zip")
    with pytest.raises(PackageError):
        Package(tmp_path / "none.zip")
    with pytest.raises(PackageError, match="folder"):
        Package(tmp_path)


def test_a_package_with_another_log_is_refused(case: Case, package: Path, tmp_path: Path) -> None:
    """Each file fits the manifest, but the manifest names another log."""
    held = Package(package)
    files = {name: held.read(name) for name in held.manifest.files}
    forged = replace(held.manifest, log_head="1" * 64)
    (tmp_path / "p.zip").write_bytes(zipped({MANIFEST: manifest_bytes(forged), **files}))
    with pytest.raises(PackageError, match="log"):
        receive(tmp_path / "p.zip", measure=False)


def test_a_signature_proves_the_sender(case: Case, package: Path, tmp_path: Path) -> None:
    mark = new_key(tmp_path / "k.pem")
    new_key(tmp_path / "other.pem")
    assert (tmp_path / "k.pem").stat().st_mode & 0o077 == 0
    pack(case.path, tmp_path / "s.zip", private_key(tmp_path / "k.pem"))
    assert receive(tmp_path / "s.zip", public_key(tmp_path / "k.pem.pub"), measure=False).signer == mark
    with pytest.raises(PackageError, match="another key"):
        receive(tmp_path / "s.zip", public_key(tmp_path / "other.pem.pub"), measure=False)
    with pytest.raises(PackageError, match="not signed"):
        receive(package, public_key(tmp_path / "k.pem.pub"), measure=False)
    held = Package(tmp_path / "s.zip")
    files = {name: held.read(name) for name in held.manifest.files} | {"signature.json": held.signature or b""}
    changed = manifest_bytes(replace(held.manifest, code="H-2"))
    (tmp_path / "f.zip").write_bytes(zipped({MANIFEST: changed, **files}))
    with pytest.raises(PackageError, match="signature"):
        receive(tmp_path / "f.zip", measure=False)
    with pytest.raises(OutputError, match="one already"):
        new_key(tmp_path / "k.pem")
    with pytest.raises(UsageError, match="private key"):
        private_key(tmp_path / "k.pem.pub")


def test_no_name_is_handed_over(package: Path, tmp_path: Path) -> None:
    receive(package, out=tmp_path / "in", measure=False)
    for path in (tmp_path / "in").rglob("*"):
        assert "Musterperson" not in path.name
        assert not path.is_file() or b"Musterperson" not in path.read_bytes()


def test_names_go_out_only_when_asked_for(tmp_path: Path) -> None:
    case = case_with_result(tmp_path, keep_names=True)
    with pytest.raises(CaseError, match="with-names"):
        pack(case.path, tmp_path / "p.zip")
    assert not (tmp_path / "p.zip").exists()


def test_no_cell_is_a_formula(case: Case) -> None:
    record = read_result(case.path / case.table.results[-1].folder)
    hostile = replace(record.sites[0], site="=cmd|' /C calc'!A0", scan_body="+1", connection="@sum")
    rows = list(csv.reader(io.StringIO(poses_csv(replace(record, sites=(hostile,)), {}).decode("utf-8-sig"))))
    words = [cell for cell in rows[1] if cell and not cell.lstrip("-").replace(".", "").replace("e-", "").isdigit()]
    assert words
    assert not [cell for cell in words if cell[0] in "=+-@\t\r"]
    assert float(rows[1][rows[0].index("x_mm")]) == record.sites[0].scan_from_connection[0, 3]


def test_poses_and_surfaces_stand_in_one_frame(case: Case, package: Path, tmp_path: Path) -> None:
    receive(package, out=tmp_path / "in", measure=False)
    poses = json.loads((tmp_path / "in" / "poses" / "poses.json").read_text())["sites"]
    record = read_result(case.path / case.table.results[-1].folder)
    for site, known in zip(poses, record.sites, strict=True):
        pose = np.array(site["scan_from_connection"])
        assert np.array_equal(pose, known.scan_from_connection)
        found = list((tmp_path / "in" / "surfaces" / "scan-bodies").glob(f"{site['tooth']}-*"))
        body = trimesh.load_mesh(found[0])
        local = (body.vertices - pose[:3, 3]) @ pose[:3, :3]
        assert np.abs(local.min(axis=0) - [-2.1, -2.1, 0.0]).max() < 0.01
        assert local[:, 2].max() == pytest.approx(8.0, abs=1e-3)
    scene = trimesh.load_scene(tmp_path / "in" / "surfaces" / "all.glb")
    assert {"scan", "14-alder-tall", "16-alder-tall"} <= set(scene.geometry)
    scan = trimesh.load_mesh(tmp_path / "in" / "surfaces" / "scan-with-deviation.ply")
    assert np.abs(scene.bounds * 1000.0 - trimesh.Trimesh(scan.vertices, scan.faces).bounds).max() < 1.0


def test_gltf_is_read_by_another_program_to_the_micrometre(tmp_path: Path) -> None:
    origin = np.array([1000.0, -2000.0, 500.0])
    body = post(facets=24)
    placed = Surface(body.vertices + origin, body.faces, np.full((len(body.vertices), 3), 200, np.uint8))
    (tmp_path / "a.glb").write_bytes(glb_bytes([Named("post", placed)], origin))
    scene = trimesh.load_scene(tmp_path / "a.glb")
    mesh = scene.to_mesh()
    assert np.abs(mesh.bounds * 1000.0 - [placed.vertices.min(axis=0), placed.vertices.max(axis=0)]).max() < 1e-3
    assert len(mesh.faces) == len(placed.faces)


def test_an_output_that_is_there_already_is_kept(package: Path, tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "letter.txt").write_text("dear")
    with pytest.raises(OutputError, match="something already"):
        receive(package, out=tmp_path / "in", measure=False)
    assert [path.name for path in (tmp_path / "in").iterdir()] == ["letter.txt"]


def test_a_case_that_was_tampered_with_is_not_packed(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    scan = case.table.scan("bodies")
    assert scan is not None
    with (case.path / scan.file).open("ab") as file:
        file.write(b"x")
    with pytest.raises(StylobateError):
        pack(case.path, tmp_path / "p.zip")
    assert not (tmp_path / "p.zip").exists()


def test_tissue_and_other_jaw_go_along_where_they_lie(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    for role, height in (("tissue", 3.0), ("opposing", 4.0)):
        (tmp_path / f"{role}.stl").write_bytes(stl(post(1.8, height)))
        case = intake.add_scan(case, "tissue" if role == "tissue" else "opposing", tmp_path / f"{role}.stl", "AB")
    assert {role for role, _ in surfaces.around(case)} == {"opposing"}, "the tissue is not joined yet"
    scan, result, pose = case.table.scan("tissue"), case.table.result(), exp(np.array([5.0, 1.0, 2.0, 0.1, 0.0, 0.3]))
    assert scan is not None
    assert result is not None
    rows = tuple(tuple(map(float, row)) for row in pose)
    entry = JoinEntry(role="tissue", scan=scan.sha256, result=result.id, bodies_from_scan=rows, shared_mm2=500.0,
                      places=9, sites=(), by="AB", time=result.time)  # fmt: skip
    case = case.change("AB", "joined", {}, lambda table: table.model_copy(update={"joins": (entry,)}))
    pack(case.path, tmp_path / "p.zip")
    receive(tmp_path / "p.zip", out=tmp_path / "in", measure=False)
    for role, wanted in (("tissue", post(1.8, 3.0).moved(pose)), ("opposing", post(1.8, 4.0))):
        found = read_mesh((tmp_path / "in" / "surfaces" / f"{role}.stl").read_bytes(), role).surface
        assert np.allclose(found.vertices[found.faces], wanted.vertices[wanted.faces], atol=1e-6)


def test_placed_parts_go_along(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    place = placed_at(tmp_path / "place", case, {"1": [{"part": "alder-base", "turn": 0}]})
    (place / "site-1-part-1-alder-base.stl").write_bytes(
        stl(post(1.8, 5.0).moved(exp(np.array([5.0, 1, 2, 0.1, 0, 0]))))
    )
    case = intake.add_output(case, "place", place, "AB")
    pack(case.path, tmp_path / "p.zip")
    assert "surfaces/placed/14-part-1-alder-base.stl" in Package(tmp_path / "p.zip").manifest.files


@pytest.mark.parametrize(("moved_um", "same"), [(0.0, True), (60.0, False)])
def test_a_site_measured_as_a_person_said_is_found_again_so(tmp_path: Path, moved_um: float, same: bool) -> None:
    """On the page a scan body can be said to stand at a site, where the search takes another."""
    scan, parts = small_scene(tmp_path)
    found = measure(scan, parts)
    at = found.sites[0].scan_from_connection
    told = measure(scan, parts, near=[tuple(at[:3, 3] + 4.0 * at[:3, 2])], near_bodies=["alder-wide"])
    assert (found.sites[0].scan_body, told.sites[0].scan_body) == ("alder-tall", "alder-wide")
    away = told.sites[0].scan_from_connection @ exp(np.array([moved_um / 1000.0, 0, 0, 0, 0, 0]))
    told = replace(told, sites=(replace(told.sites[0], scan_from_connection=away),))
    with staging(tmp_path / "result") as area:
        save(told, area, maps=False)
    case = Case.create(tmp_path / "case", "H-1", "single", "AB")
    case = intake.add_parts(intake.add_scan(case, "bodies", scan, "AB"), parts, "AB")
    intake.add_result(case, tmp_path / "result", "AB")
    pack(case.path, tmp_path / "p.zip")
    (again,) = receive(tmp_path / "p.zip").again
    assert again.same is same
    assert not same or (again.told, again.scan_body) == (True, "alder-wide")


@pytest.mark.parametrize(
    ("shift_um", "same", "within"), [(0.0, True, True), (0.9, True, True), (5.0, False, True), (50.0, False, False)]
)
def test_measured_again_is_the_same_within_bounds_or_elsewhere(
    case: Case, shift_um: float, same: bool, within: bool
) -> None:
    """The measurement by hand states ± 9.1 µm; a turn to another of the six equal marks is no difference."""
    from stylobate.core.rigid import pose, rotation_exp
    from stylobate.handoff.receive import compared
    from tests.doors.handmade import measurement

    record = read_result(case.path / case.table.results[-1].folder)
    result = measurement(2)[0]
    turn = pose(rotation_exp(np.array([0.0, 0.0, np.pi / 3])), np.array([shift_um / 1000.0, 0.0, 0.0]))
    moved = replace(result.sites[0], scan_from_connection=result.sites[0].scan_from_connection @ turn)
    found = compared(record, replace(result, sites=(moved, result.sites[1])))
    assert (found[0].same, found[0].within) == (same, within)
    assert found[0].shift_um == pytest.approx(shift_um, abs=1e-6)
    assert found[1].same
    assert not compared(record, replace(result, sites=(moved,)))[1].same
