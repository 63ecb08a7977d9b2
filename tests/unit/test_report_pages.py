"""The report as its readers get it: text and fonts by poppler, no markup from names, what is missing in large type."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from stylobate.case import Case, intake
from stylobate.case.checks import record_check, release
from stylobate.core.errors import CaseError, ResultError, UsageError
from stylobate.report.pages import Report, make_report, of_case, of_result
from tests.unit.case_making import case_with_result, parts_at, placed_at, result_at, scan_at

needs_poppler = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler-utils is not installed")


def poppler(tool: str, pdf: bytes, folder: Path, *options: str) -> str:
    path = folder / "report.pdf"
    path.write_bytes(pdf)
    out = "-" if tool == "pdftotext" else ""
    command = [tool, *options, str(path), *([out] if out else [])]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def words_of(html: bytes) -> str:
    text = re.sub(r"<style>.*?</style>|<[^>]+>", " ", html.decode(), flags=re.DOTALL)
    return " ".join(text.split())


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Case:
    case = case_with_result(tmp_path_factory.mktemp("pages"), verdict="do not use")
    case = record_check(case, "14", "torque", "AB", ok=False, value="20 N·cm, target 10 to 15 N·cm: outside")
    case = record_check(case, "16", "seated", "AB")
    return release(case, "16", "CD", "refitted by hand")


@pytest.fixture(scope="module")
def report(case: Case) -> Report:
    return make_report(of_case(case.path))


@needs_poppler
def test_the_pdf_says_what_has_to_be_known(case: Case, report: Report, tmp_path: Path) -> None:
    text = " ".join(poppler("pdftotext", report.pdf, tmp_path, "-layout").split())
    record = of_case(case.path).record
    for words in ("H-1", "Do not use", "upper right first premolar", "added layer, 31 µm ± 4",
                  "Clean the scan body and scan it again.", "NOT PASSED", "MISSING", "20 N·cm, target 10 to 15 N·cm",
                  "Released by CD", "refitted by hand", "10 to 15 N·cm", "Decision support, not a medical device",
                  record.scan.sha256, record.parts.sha256, case.log.head, "14: NOT PASSED: torque",
                  "Not released: 14", "−50 µm", "+50 µm"):  # fmt: skip
        assert words in text, words
    assert "Musterperson" not in text


@needs_poppler
def test_every_font_is_embedded_and_no_other_file_is_needed(report: Report, tmp_path: Path) -> None:
    rows = [line.split() for line in poppler("pdffonts", report.pdf, tmp_path).splitlines()[2:]]
    assert rows
    assert all(row[-5] == "yes" for row in rows), rows
    assert any("LibertinusSerif" in row[0] for row in rows)


@needs_poppler
def test_it_is_on_a4_and_states_its_archive_standard(report: Report, tmp_path: Path) -> None:
    about = poppler("pdfinfo", report.pdf, tmp_path)
    assert re.search(r"Page size: +595\.\d* x 841\.\d* pts \(A4\)", about)
    assert re.search(r"Title: +H-1: 2 implant positions", about)
    assert b"<pdfaid:part>2</pdfaid:part>" in report.pdf


def test_what_is_missing_stands_in_larger_type_than_the_text(report: Report, tmp_path: Path) -> None:
    if shutil.which("pdftotext") is None:
        pytest.skip("poppler-utils is not installed")
    boxes = poppler("pdftotext", report.pdf, tmp_path, "-bbox")
    found = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">([^<]+)<', boxes)
    height = {word: max(float(b) - float(a) for a, b, other in found if other == word) for _, _, word in found}
    assert height["NOT"] > 1.4 * height["Deviation"]
    assert height["MISSING"] > 1.15 * height["Deviation"]


def test_both_forms_say_the_same(report: Report) -> None:
    text = words_of(report.html)
    for words in ("Do not use", "14: NOT PASSED: torque", "Not released: 14", "MISSING", "Released by CD"):
        assert words in text, words
    assert report.html.count(b"data:image/png") >= 1 + 2 * 3


def test_the_same_case_gives_the_same_report(case: Case, report: Report) -> None:
    assert make_report(of_case(case.path)) == report


def test_the_page_asks_for_nothing_outside(report: Report) -> None:
    assert not re.findall(rb'(?:src|href)="(?!data:)', report.html)
    assert b"default-src 'none'" in report.html
    assert b"<script" not in report.html


def test_names_from_files_are_no_markup(tmp_path: Path) -> None:
    scan, parts = scan_at(tmp_path / "scan.ply"), parts_at(tmp_path / "parts")
    folder = result_at(tmp_path / "result", scan, parts)
    hostile = '<script>alert(1)</script> #sys.inputs *bold* $x$ \\u{41} "q" {{ 7 * 7 }}'
    values = json.loads((folder / "result.json").read_text())
    values["sites"][0]["scan_body"] = values["warnings"] = hostile
    values["warnings"] = [hostile]
    values["not_shown"] = [{"what": hostile, "check": hostile}]
    (folder / "result.json").write_text(json.dumps(values))
    made = make_report(of_result(folder, scan))
    assert b"<script" not in made.html
    assert b"{{ 7 * 7 }}" in made.html
    if shutil.which("pdftotext") is not None:
        text = " ".join(poppler("pdftotext", made.pdf, tmp_path, "-layout").split())
        for words in ("<script>alert(1)</script>", "#sys.inputs", "*bold*", "$x$", "{{ 7 * 7 }}"):
            assert words in text, words


def test_a_part_that_nobody_has_chosen_is_said_to_be_proposed(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    first, second = of_case(case.path).record.sites[:2]
    folder = placed_at(
        tmp_path / "placed", case, {site.site: [{"part": f"base-{k}"}] for k, site in enumerate((first, second))}
    )
    values = json.loads((folder / "place.json").read_text())
    values["sites"][0]["chosen"], values["sites"][1]["chosen"] = True, False
    (folder / "place.json").write_text(json.dumps(values))
    case = intake.add_output(case, "place", folder, "AB")
    text = words_of(make_report(of_case(case.path)).html)
    assert "part, proposed: nobody has chosen it base-1" in text
    assert "part base-0" in text


def test_turns_and_the_reason_for_building_are_on_the_pages(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    folder = placed_at(
        tmp_path / "placed", case, {"1": [{"part": "alder-base", "turn": 4}]}, accepted={"reason": "remade, seen"}
    )
    text = words_of(make_report(of_case(intake.add_output(case, "place", folder, "AB").path)).html)
    assert "titanium base alder-base @4 30 to 35 N·cm" in text
    assert "14: parts in spite of the verdict. Reason: remade, seen" in text


def test_what_moved_between_scans_stands_in_large_type(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    scan = case.table.scan("bodies")
    assert scan is not None
    moved = {"site": "7", "scan": "b.json", "shift_um": [30.0, -40.0, 88.0], "u95_um": 17.0, "matched_as": "7"}
    values = {
        "scans": ["b.json", "a.json"], "scans_sha256": ["0" * 64, scan.original_sha256], "can_find": [],
        "matched": [{"a.json": "1", "b.json": "6"}, {"a.json": "2", "b.json": "7"}], "moved": [moved],
    }  # fmt: skip
    (tmp_path / "compare.json").write_text(json.dumps(values))
    seat = {"scans_sha256": [scan.sha256], "on": None, "limit_um": 100.0, "side_limit_um": 80.0,
            "probability_within_limits": 0.974}  # fmt: skip
    (tmp_path / "seat.json").write_text(json.dumps(seat))
    for kind, place in (("compare", tmp_path / "c"), ("seat", tmp_path / "s")):
        place.mkdir()
        (tmp_path / f"{kind}.json").rename(place / f"{kind}.json")
        case = intake.add_output(case, "compare" if kind == "compare" else "seat", place, "AB")
    made = make_report(of_case(case.path))
    text = words_of(made.html)
    assert text.count("16 stands otherwise in scan 1 of 2: 50 µm sideways, 88 µm in height (± 17)") == 1
    assert "gaps of at most 100 µm, sideways 80 µm in 97.4 of 100 cases" in text


def test_a_source_that_only_turns_is_not_said_to_have_no_figure(tmp_path: Path) -> None:
    scan, parts = scan_at(tmp_path / "scan.ply"), parts_at(tmp_path / "parts")
    folder = result_at(tmp_path / "result", scan, parts)
    values = json.loads((folder / "result.json").read_text())
    play = {"source": "play", "platform_um": None, "axis_deg": None, "index_deg": 0.43, "from": "the part"}
    for site in values["sites"]:
        site["budget"] = [play]
    (folder / "result.json").write_text(json.dumps(values))
    assert "play – turn only, 0.43°" in words_of(make_report(of_result(folder)).html)


def test_a_turn_that_the_scan_does_not_show_has_no_figure(tmp_path: Path) -> None:
    """Three index marks: bounded by 60° either way the turn may be any."""
    scan, parts = scan_at(tmp_path / "scan.ply"), parts_at(tmp_path / "parts")
    folder = result_at(tmp_path / "result", scan, parts)
    known = words_of(make_report(of_result(folder)).html)
    file = folder / "result.json"
    values = json.loads(file.read_text())
    for site in values["sites"]:
        site["index_order"], site["u95"]["index_deg"] = 3, 60.0
    file.write_text(json.dumps(values))
    said = words_of(make_report(of_result(folder)).html)
    assert "± 60" not in said
    assert said.count(" any ") > known.count(" any ")


def test_a_result_without_a_case_says_that_nothing_was_checked(tmp_path: Path) -> None:
    scan, parts = scan_at(tmp_path / "scan.ply"), parts_at(tmp_path / "parts")
    folder = result_at(tmp_path / "result", scan, parts)
    with_scan, without = make_report(of_result(folder, scan)), make_report(of_result(folder))
    for made in (with_scan, without):
        assert "No chairside check is recorded" in words_of(made.html)
        assert "No verdict" in words_of(made.html)
    assert with_scan.html != without.html
    with pytest.raises(UsageError, match="not the scan of this result"):
        of_result(folder, scan_at(tmp_path / "other.ply", count=3))


def test_a_result_without_sites_says_so(tmp_path: Path) -> None:
    scan, parts = scan_at(tmp_path / "scan.ply", count=0), parts_at(tmp_path / "parts")
    made = make_report(of_result(result_at(tmp_path / "result", scan, parts, count=0), scan))
    assert "No scan body of the parts folder was found" in words_of(made.html)


def test_a_damaged_map_and_a_case_without_result_are_refused(tmp_path: Path) -> None:
    case = case_with_result(tmp_path)
    for path in (tmp_path / "result" / "site-1.ply", next((case.path / "results").rglob("site-1.ply"))):
        path.write_bytes(path.read_bytes()[:-7])
    with pytest.raises(ResultError, match=r"site-1\.ply"):
        of_result(tmp_path / "result")
    with pytest.raises(CaseError, match=r"site-1\.ply was changed"):
        of_case(case.path)
    empty = Case.create(tmp_path / "empty", "H-2", "bridge", "AB")
    with pytest.raises(CaseError, match="measure first"):
        of_case(empty.path)
