"""The case folder: changes, the chained log, kills, two writers, older and newer versions, tampering."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.case import Case, folder, intake
from stylobate.case.log import START, Log, digest, line_bytes
from stylobate.case.migrate import current
from stylobate.case.model import VERSION, JoinEntry, Output
from stylobate.case.scrub import scrubbed
from stylobate.case.unnamed import without_paths
from stylobate.case.words import unjoined
from stylobate.core.errors import CaseError, UsageError
from stylobate.scan.read import read_surface
from tests.doors.running import ROOT, environment
from tests.unit.case_making import case_with_result, placed_at
from tests.unit.parts_making import flat, post, stl, toml, write

NAME = b"MUSTERPERSON Erika 1961-04-02"


@pytest.fixture
def case(tmp_path: Path) -> Case:
    return Case.create(tmp_path / "case", "H-1", "bridge", "AB")


def test_a_change_is_read_back_and_logged_with_who_and_what(case: Case, tmp_path: Path) -> None:
    (tmp_path / "arch.stl").write_bytes(stl(post()))
    intake.add_scan(case, "tissue", tmp_path / "arch.stl", "CD")
    found = Case.open(case.path)
    entry = found.table.scan("tissue")
    assert entry is not None
    assert found.table.scan("bodies") is None
    assert (found.log.lines[-1].who, found.log.lines[-1].what) == ("CD", "scan added")
    assert digest((case.path / entry.file).read_bytes()) == entry.sha256
    assert found.faults() == []


def test_each_line_of_the_log_holds_the_hash_of_the_one_before(case: Case) -> None:
    for n in range(3):
        case = case.change("AB", "note", {"n": n}, lambda table: table)
    lines = (case.path / "log.jsonl").read_bytes().splitlines()
    before = [json.loads(line)["before"] for line in lines]
    assert before == [START, *(digest(line) for line in lines[:-1])]
    assert json.loads(lines[-1])["state"] == digest((case.path / "case.json").read_bytes())


@pytest.mark.parametrize("line", [0, 1])
def test_a_line_changed_later_shows(case: Case, line: int) -> None:
    for n in range(3):
        case = case.change("AB", "note", {"n": n}, lambda table: table)
    path = case.path / "log.jsonl"
    lines = path.read_bytes().splitlines(keepends=True)
    lines[line] = lines[line].replace(b'"AB"', b'"XY"')
    path.write_bytes(b"".join(lines))
    with pytest.raises(CaseError, match=f"line {line + 2} does not follow"):
        Case.open(case.path)


def test_the_last_line_taken_away_shows(case: Case) -> None:
    case = case.change("AB", "note", {}, lambda table: table.model_copy(update={"work": "arch"}))
    path = case.path / "log.jsonl"
    path.write_bytes(b"".join(path.read_bytes().splitlines(keepends=True)[:-1]))
    with pytest.raises(CaseError, match="something else changed it"):
        Case.open(case.path)


def test_case_json_changed_by_hand_shows(case: Case) -> None:
    path = case.path / "case.json"
    path.write_text(path.read_text().replace("bridge", "single"))
    with pytest.raises(CaseError, match="something else changed it"):
        Case.open(case.path)


def test_a_log_that_is_gone_shows(case: Case) -> None:
    (case.path / "log.jsonl").unlink()
    with pytest.raises(CaseError, match=r"log\.jsonl, which says what counts, is gone"):
        Case.open(case.path)


def test_a_file_changed_or_gone_shows(case: Case, tmp_path: Path) -> None:
    (tmp_path / "arch.stl").write_bytes(stl(post()))
    case = intake.add_scan(case, "bodies", tmp_path / "arch.stl", "AB")
    name = next(iter(case.table.files()))
    content = bytearray((case.path / name).read_bytes())
    content[100] ^= 1
    (case.path / name).write_bytes(content)
    assert "was changed" in case.faults()[0]
    (case.path / name).unlink()
    assert "is missing" in case.faults()[0]


def test_killed_at_random_moments_no_case_breaks() -> None:
    """A bounded number here; `python -m fuzz.case_kills 1000` for more."""
    done = subprocess.run(
        [sys.executable, "-m", "fuzz.case_kills", "250"],
        capture_output=True,
        text=True,
        cwd=ROOT,
        env=environment(PYTHONPATH=f"{ROOT / 'src'}:{ROOT}"),
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("torn", [b'{"n": 2, "ti', b"\x00\x00"])
def test_a_torn_last_line_is_taken_back(case: Case, torn: bytes) -> None:
    with (case.path / "log.jsonl").open("ab") as file:
        file.write(torn)
    assert Case.open(case.path).table == case.table
    assert len(case.change("AB", "note", {}, lambda table: table).log.lines) == 2


def test_a_second_writer_waits(case: Case) -> None:
    def write_twenty() -> None:
        own = Case.open(case.path)
        for n in range(20):
            own = own.change("AB", "note", {"n": n}, lambda table: table)

    threads = [threading.Thread(target=write_twenty) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(Case.open(case.path).log.lines) == 61


def test_a_second_writer_is_told_when_the_first_takes_too_long(case: Case, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folder, "WAIT_S", 0.05)
    with folder.writing(case.path), pytest.raises(CaseError, match="another program"):
        case.change("AB", "note", {}, lambda table: table)


def test_a_newer_version_is_refused(case: Case) -> None:
    values = json.loads((case.path / "case.json").read_text())
    with pytest.raises(CaseError, match="newer stylobate"):
        current({**values, "version": VERSION + 1}, "case.json")


def test_an_older_version_goes_through_every_step_up_to_the_present_one() -> None:
    def second(values: dict[str, Any]) -> dict[str, Any]:
        return {**values, "b": values["a"]}

    def third(values: dict[str, Any]) -> dict[str, Any]:
        return {key: value for key, value in values.items() if key != "a"}

    old = {"format": "stylobate-case", "version": 1, "a": 7}
    found = current(old, "case.json", version=3, steps={1: second, 2: third})
    assert found == {"format": "stylobate-case", "version": 3, "b": 7}
    assert old["a"] == 7


def first_version(case: Case) -> dict[str, Any]:
    """case.json as version 1 wrote it: no joins, outputs that do not name their result."""
    values: dict[str, Any] = json.loads((case.path / "case.json").read_text())
    del values["joins"]
    outputs = [{k: v for k, v in out.items() if k not in ("result", "withdrawn")} for out in values["outputs"]]
    return {**values, "version": 1, "outputs": outputs}


def placed_case(tmp_path: Path) -> Case:
    """A case whose result has a placement."""
    case = case_with_result(tmp_path)
    return intake.add_output(case, "place", placed_at(tmp_path / "placed", case, {}), "AB")


def test_what_was_made_of_another_scan_or_result_is_not_kept(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    folder = placed_at(tmp_path / "placed", case, {"1": [{"part": "alder-base"}]})
    fine = json.loads((folder / "place.json").read_text())
    sha = fine["result"]["scan_sha256"]

    def refuses(kind: Output, values: dict[str, Any], words: str) -> None:
        (folder / f"{kind}.json").write_text(json.dumps(values))
        with pytest.raises(CaseError, match=words):
            intake.add_output(case, kind, folder, "AB")

    refuses("place", fine | {"result": {"scan_sha256": "0" * 64}}, "another scan")
    refuses("place", fine | {"parts": {"sha256": "0" * 64}}, "other parts")
    refuses("place", fine | {"sites": [{**fine["sites"][0], "site": "2"}]}, "site 2 lies elsewhere")
    refuses("place", {}, "does not say of which scan")
    refuses("seat", {"scans_sha256": ["0" * 64]}, "another scan")
    refuses("compare", {"scans": ["a", "b"]}, "does not say of which scan")
    refuses("compare", {"scans_sha256": 7}, "does not say of which scan")
    assert len(Case.open(case.path).log.lines) == len(case.log.lines)
    (folder / "seat.json").write_text(json.dumps({"scans_sha256": ["0" * 64, sha]}))
    case = intake.add_output(case, "seat", folder, "AB")
    (folder / "place.json").write_text(json.dumps(fine))
    assert intake.add_output(case, "place", folder, "AB").table.output("place") is not None


def test_an_output_needs_a_result(tmp_path: Path) -> None:
    case = Case.create(tmp_path / "case", "H-1", "bridge", "AB")
    (tmp_path / "seat.json").write_text('{"scans_sha256": []}')
    with pytest.raises(CaseError, match="no result"):
        intake.add_output(case, "seat", tmp_path, "AB")


def test_a_case_of_the_first_version_is_opened_and_goes_on(tmp_path: Path) -> None:
    case = placed_case(tmp_path)
    old = json.dumps(first_version(case)).encode()
    (case.path / "case.json").write_bytes(old)
    (case.path / "log.jsonl").write_bytes(line_bytes(Log((), 0), "2026-11-01T08:00:00Z", "AB", "old", {}, digest(old)))
    opened = Case.open(case.path)
    assert opened.table == case.table
    assert opened.table.output("place") is not None
    again = intake.name_sites(opened, {"14": "1"}, "AB")
    assert json.loads((case.path / "case.json").read_text())["version"] == VERSION
    assert len(again.log.lines) == 2


def test_a_damaged_case_of_the_first_version_is_refused(tmp_path: Path) -> None:
    values = first_version(placed_case(tmp_path))
    broken: dict[str, Any]
    for broken in ({"outputs": [7]}, {"results": [{}]}, {"outputs": 3}):
        with pytest.raises(CaseError, match="is damaged"):
            current({**values, **broken}, "case.json")


def test_a_placement_counts_for_its_own_result_until_it_is_taken_back(tmp_path: Path) -> None:
    case = placed_case(tmp_path)
    result = case.table.result()
    assert result is not None
    other = result.model_copy(update={"id": "r-other"})
    assert case.table.output("place") is not None
    assert case.table.model_copy(update={"results": (*case.table.results, other)}).output("place") is None
    case = intake.withdraw_output(case, "place", "CD")
    assert case.table.output("place") is None
    assert case.log.lines[-1].what == "place withdrawn"
    assert Case.open(case.path).faults() == []
    with pytest.raises(CaseError, match="no output"):
        intake.withdraw_output(case, "place", "CD")


def test_what_cannot_be_a_case_is_refused(case: Case, tmp_path: Path) -> None:
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "letter.txt").write_text("dear")
    with pytest.raises(CaseError, match="not empty"):
        Case.create(tmp_path / "full", "H-2", "bridge", "AB")
    with pytest.raises(CaseError, match="already"):
        Case.create(case.path, "H-2", "bridge", "AB")
    with pytest.raises(CaseError, match="code"):
        Case.create(tmp_path / "new", "Erika Musterperson", "bridge", "AB")
    with pytest.raises(CaseError, match=r"up to 40 letters, digits"):
        Case.create(tmp_path / "new", "", "bridge", "AB")
    with pytest.raises(CaseError, match="holds no case"):
        Case.open(tmp_path / "full")
    with pytest.raises(CaseError, match="initials"):
        case.change("Dr. Erika Musterperson", "note", {}, lambda table: table)
    with pytest.raises(CaseError, match=r"^nobody's initials are given; write .* like AB$"):
        case.change("", "note", {}, lambda table: table)
    assert len(Case.open(case.path).log.lines) == 1


def ascii_stl() -> bytes:
    surface = post(facets=12)
    rows = [f"solid {NAME.decode()}"]
    for corners in surface.vertices[surface.faces]:
        rows += ["facet normal 0 0 0", "outer loop", *(f"vertex {x:.9g} {y:.9g} {z:.9g}" for x, y, z in corners)]
        rows += ["endloop", "endfacet"]
    return "\n".join([*rows, f"endsolid {NAME.decode()}", ""]).encode()


def ply(line_end: str) -> bytes:
    surface = post(facets=12)
    head = ["ply", "format binary_little_endian 1.0", f"comment {NAME.decode()}", f"obj_info {NAME.decode()}",
            f"element vertex {len(surface.vertices)}", "property float x", "property float y", "property float z",
            f"element face {len(surface.faces)}", "property list uchar int vertex_indices", "end_header",
            ""]  # fmt: skip
    face = np.zeros(len(surface.faces), [("n", "u1"), ("v", "<i4", 3)])
    face["n"], face["v"] = 3, surface.faces
    return line_end.join(head).encode() + surface.vertices.astype("<f4").tobytes() + face.tobytes()


def obj() -> bytes:
    surface = post(facets=12)
    rows = [f"# {NAME.decode()}", f"mtllib {NAME.decode()}.mtl", f"o {NAME.decode()}", f"g {NAME.decode()}"]
    rows += [f"v {x:.9g} {y:.9g} {z:.9g} # {NAME.decode()}" for x, y, z in surface.vertices]
    rows += [f"usemtl {NAME.decode()}", *(f"f {a + 1} {b + 1} {c + 1}" for a, b, c in surface.faces)]
    return "\n".join(rows).encode()


@pytest.mark.parametrize(
    "content",
    [NAME.ljust(80) + stl(post(facets=12))[80:] + NAME, ascii_stl(), ply("\n"), ply("\r\n"), obj()],
    ids=["stl", "ascii stl", "ply", "ply crlf", "obj"],
)
def test_names_are_taken_out_and_the_surface_stays(content: bytes) -> None:
    assert NAME in content
    found = scrubbed(content, "scan")
    assert not any(word in found for word in NAME.split())
    before, after = read_surface(content, "scan"), read_surface(found, "scan")
    assert np.array_equal(before.vertices, after.vertices)
    assert np.array_equal(before.faces, after.faces)


def test_parts_are_kept_with_the_hash_that_results_state(case: Case, tmp_path: Path) -> None:
    from stylobate.parts import load_parts

    body = post(flat())
    parts = write(tmp_path / "parts", toml({"tall": "alder"}), {"tall.stl": body})
    (parts / "letter.txt").write_text("not a part")
    case = intake.add_parts(case, parts, "AB")
    entry = case.table.current_parts()
    assert entry is not None
    assert set(entry.files) == {"parts.toml", "tall.stl"}
    assert load_parts(case.path / entry.folder).sha256 == load_parts(parts).sha256 == entry.sha256


def test_sites_need_a_result(case: Case) -> None:
    with pytest.raises(CaseError, match="measure first"):
        intake.name_sites(case, {"14": "1"}, "AB")


def test_no_tooth_no_site(case: Case) -> None:
    from stylobate.case.checks import record_check

    with pytest.raises(UsageError, match="ISO 3950"):
        record_check(case, "19", "clean", "AB")


def test_a_full_disk_is_told_and_the_case_stays(case: Case, tmp_path: Path) -> None:
    """In a process of its own whose files may not grow beyond 4 kB: one line, and the case opens as it was."""
    (tmp_path / "arch.stl").write_bytes(stl(post()))
    program = (
        "import resource, sys; from stylobate.case import Case, intake; from stylobate.core.errors import CaseError\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096)); import signal\n"
        "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
        "try: intake.add_scan(Case.open(sys.argv[1]), 'bodies', sys.argv[2], 'AB')\n"
        "except CaseError as error: print(error)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program, str(case.path), str(tmp_path / "arch.stl")],
        capture_output=True, text=True, cwd=ROOT, env=environment(PYTHONPATH=f"{ROOT / 'src'}:{ROOT}"),
    )  # fmt: skip
    assert "file too large; the case is as it was" in done.stdout, done.stdout + done.stderr
    found = Case.open(case.path)
    assert (found.table, found.log) == (case.table, case.log)
    assert found.faults() == []
    assert not list(case.path.rglob("*.part"))


def test_paths_in_what_other_commands_wrote_are_taken_out() -> None:
    text = json.dumps(
        {"scans": ["C:\\Erika Muster\\a", "home/b/result.json"], "home/b/result.json": 1, "note": "Use it.",
         "frame": "erika muster", "on": None, "sites": [{"site": "1"}],
         "notes": ["erika muster and home/b are of one mouth; see x/erika/y", "Sites 1, 2"]}
    )  # fmt: skip
    found = json.loads(without_paths(text.encode()))
    assert found["scans"] == ["file 2", "file 3"]
    assert found["file 3"] == 1
    assert (found["note"], found["frame"], found["on"], found["sites"]) == ("Use it.", "file 1", None, [{"site": "1"}])
    assert found["notes"] == ["file 1 and file 3 are of one mouth; see file 4", "Sites 1, 2"]
    assert without_paths(b"not json") == b"not json"


def test_no_name_of_a_file_comes_in_by_way_of_a_result_or_an_output(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    source = tmp_path / "result" / "result.json"
    values = json.loads(source.read_text())
    name = values["scan"]["file"]
    assert "Musterperson" in name
    values["warnings"] = [f"{name}: 3 faces without an area were left out"]
    values["joined_from"] = [{"result": "musterperson", "scan": name}, {"result": "b", "scan": "Musterperson 2.ply"}]
    values["sites"][0]["seen_in"] = [{"scan": "Musterperson 2.ply", "sha256": "", "site": "1", "counts": True}]
    source.write_text(json.dumps(values))
    intake.add_result(case, tmp_path / "result", "AB")
    folder = placed_at(tmp_path / "placed", case, {"1": [{"part": "alder-base"}]})
    place = json.loads((folder / "place.json").read_text())
    place["result"]["file"] = "Musterperson"
    (folder / "place.json").write_text(json.dumps(place | {"scans_sha256": [place["result"]["scan_sha256"]]}))
    (folder / "compare.json").write_text((folder / "place.json").read_text())
    (folder / "result.json").write_text(source.read_text())
    for other in ("place.png", "compare.csv", "compare.pdf", "letter.txt", "joined-tissue.stl"):
        (folder / other).write_text("Musterperson")
    for kind in ("place", "compare"):
        case = intake.add_output(Case.open(case.path), "place" if kind == "place" else "compare", folder, "AB")
    for path in case.path.rglob("*"):
        assert not path.is_file() or b"usterperson" not in path.read_bytes(), path


def test_what_is_to_be_joined_next_is_said(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    assert unjoined(case) == []
    (tmp_path / "gum.stl").write_bytes(stl(post()))
    case = intake.add_scan(case, "opposing", tmp_path / "gum.stl", "AB")
    assert unjoined(case) == [], "without a bite scan it counts as aligned"
    case = intake.add_scan(
        intake.add_scan(case, "tissue", tmp_path / "gum.stl", "AB"), "bite", tmp_path / "gum.stl", "AB"
    )
    assert [line.split(":")[0].strip() for line in unjoined(case)] == ["tissue", "opposing"]
    scan, result = case.table.scan("tissue"), case.table.result()
    assert scan is not None
    assert result is not None
    entry = JoinEntry(role="tissue", scan=scan.sha256, result=result.id, bodies_from_scan=((1.0,),), shared_mm2=500.0,
                      places=9, sites=(), by="AB", time=result.time)  # fmt: skip
    case = case.change("AB", "joined", {}, lambda table: table.model_copy(update={"joins": (entry,)}))
    assert [line.split(":")[0].strip() for line in unjoined(case)] == ["opposing"]
