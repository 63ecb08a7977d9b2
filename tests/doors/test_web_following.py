"""What follows from a result, in a real browser: parts chosen and taken back, the frame, the radiograph, a new scan."""

from __future__ import annotations

import json
import re
import shutil
import struct
import zlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Browser, Locator, Route, expect
from playwright.sync_api import Page as Tab

from stylobate.app.web.chains import chains_of
from stylobate.case import Case, intake
from stylobate.core.rigid import pose
from stylobate.core.types import FloatArray
from stylobate.parts import load_parts
from stylobate.report.folder import staging
from stylobate.report.pages.repeats import moved_lines
from stylobate.report.save import save
from stylobate.several.seating.verb import seat
from stylobate.simulate import Noise, Settings, demo_bodies, scene
from stylobate.simulate.demo import demo_parts
from stylobate.simulate.files import scene_files
from tests.doors.handmade import measurement, site_at
from tests.doors.page_server import Page, enter, page
from tests.doors.test_web_page import SLOW_MS, browser, no_serious_fault, tab_of
from tests.unit.case_making import placed_at, result_at, scan_at

__all__ = ["browser"]
CHOSEN, UNCHOSEN = "Chosen.", "nobody has chosen yet"


@pytest.fixture(scope="module")
def case(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A case with the demo's parts and a result of three sites by hand, the first of them tooth 14."""
    root = tmp_path_factory.mktemp("following")
    demo_parts(root / "parts")
    scan = scan_at(root / "arch.ply", 3)
    made = intake.add_scan(Case.create(root / "case", "H-0421", "bridge", "AB"), "bodies", scan, "AB")
    made = intake.add_parts(made, root / "parts", "AB")
    made = intake.add_result(made, result_at(root / "result", scan, root / "parts", 3, "use"), "AB")
    intake.name_sites(made, {"14": "1"}, "AB")
    return root / "case"


@pytest.fixture(scope="module")
def opened(browser: Browser, case: Path) -> Iterator[tuple[Tab, list[str], Page]]:
    with page(case) as running:
        tab, said = tab_of(browser, running)
        tab.get_by_label("Your initials").fill("AB")
        expect(tab.get_by_role("heading", name="A frame over these sites")).to_be_visible(timeout=SLOW_MS)
        tab.locator(".site-head").first.click()
        yield tab, said, running


def stands(tab: Tab, parts: Locator, option: str) -> None:
    """The server has done what was asked: the option's parts stand there as chosen, and no work goes on."""
    expect(parts.locator("p").first).to_contain_text(f"{option}: ", timeout=SLOW_MS)
    expect(parts.locator("p").first).to_contain_text(CHOSEN)
    expect(tab.get_by_role("button", name="Undo")).to_be_enabled(timeout=SLOW_MS)


def nobody_chose(tab: Tab, parts: Locator) -> None:
    expect(parts).to_contain_text(UNCHOSEN, timeout=SLOW_MS)
    expect(tab.get_by_role("button", name="Redo")).to_be_enabled(timeout=SLOW_MS)


def test_a_part_is_chosen_and_taken_back_to_no_choice(opened: tuple[Tab, list[str], Page], case: Path) -> None:
    tab, said, _ = opened
    parts = tab.locator(".site").first.locator(".parts")
    choices = parts.get_by_role("radio")
    first, third = (parts.locator(".option span").nth(n).evaluate("e => e.firstChild.data") for n in (0, 2))
    assert first != third
    expect(parts).to_contain_text(UNCHOSEN)
    expect(parts.locator("input:checked")).to_have_count(0)
    choices.nth(0).check()
    stands(tab, parts, first)
    choices.nth(2).check()
    stands(tab, parts, third)
    held = Case.open(case).table.output("place")
    assert held is not None
    assert [word.partition("=")[0] for word in chains_of(case / held.folder)] == ["1"], "the others were not chosen"
    tab.get_by_role("button", name="Undo").click()
    stands(tab, parts, first)
    tab.get_by_role("button", name="Undo").click()
    nobody_chose(tab, parts)
    table = Case.open(case).table
    assert table.output("place") is None, "what nobody chose is not handed over"
    tab.get_by_role("button", name="Redo").click()
    stands(tab, parts, first)
    expect(choices.nth(0)).to_be_checked(timeout=SLOW_MS)
    tab.get_by_role("button", name="Undo").click()
    nobody_chose(tab, parts)
    expect(parts.locator("input:checked")).to_have_count(0)
    no_serious_fault(tab)
    assert said == []


def test_a_choice_is_shown_while_it_is_asked_for_and_gone_when_refused(
    browser: Browser, case: Path, tmp_path: Path
) -> None:
    """A change told meanwhile draws the page anew: that must not take the answer back under the hand."""
    own = shutil.copytree(case, tmp_path / "case")
    with page(own) as running:
        tab, _ = tab_of(browser, running)
        tab.get_by_label("Your initials").fill("AB")
        heads, parts = tab.locator(".site-head"), tab.locator(".site").first.locator(".parts")
        heads.first.click()
        expect(parts).to_contain_text(UNCHOSEN, timeout=SLOW_MS)
        held: list[Route] = []
        tab.route("**/api/site/chain", lambda route: held.append(route))
        choices = parts.get_by_role("radio")
        with tab.expect_request("**/api/site/chain"):
            choices.nth(0).check()
        tooth = """fetch("/api/case/tooth", {method: "POST", body: '{"site": "2", "tooth": "25"}',
            headers: {"content-type": "application/json", "stylobate-initials": "AB"}}).then(answer => answer.status)"""
        assert tab.evaluate(tooth) == 200
        expect(heads.nth(1)).to_contain_text("25", timeout=SLOW_MS)
        expect(choices.nth(0)).to_be_checked()
        held[0].fulfill(status=422, json={"text": "these parts are none of its options", "about": "site", "detail": ""})
        expect(parts.locator("input:checked")).to_have_count(0, timeout=SLOW_MS)


def test_a_refusal_is_in_sight_wherever_the_list_stands_and_exchanged_teeth_are_asked_about(
    browser: Browser, case: Path, tmp_path: Path
) -> None:
    own = shutil.copytree(case, tmp_path / "case")
    with page(own) as running:
        tab, said = tab_of(browser, running)
        tab.get_by_label("Your initials").fill("AB")
        expect(tab.get_by_role("heading", name="A frame over these sites")).to_be_visible(timeout=SLOW_MS)
        third = tab.locator(".site").nth(2)
        third.locator(".site-head").click()
        tooth = third.get_by_label("Which tooth?")
        tooth.select_option("36")
        alert = tab.get_by_role("alert")
        expect(alert).to_contain_text("one jaw")
        expect(alert).to_be_in_viewport(ratio=1.0)
        expect(tooth).to_have_value("")
        no_serious_fault(tab)
        alert.get_by_role("button", name="All right").click()
        tooth.select_option("15")
        tab.locator(".site-head").nth(1).click()
        tab.locator(".site").nth(1).get_by_label("Which tooth?").select_option("25")
        expect(tab.get_by_text("Look again: sites are numbered along the arch")).to_be_visible()
        no_serious_fault(tab)
        assert said == []


def test_of_two_choices_made_at_once_the_second_one_stays_in_sight(
    browser: Browser, case: Path, tmp_path: Path
) -> None:
    own = shutil.copytree(case, tmp_path / "case")
    with page(own) as running:
        tab, _ = tab_of(browser, running)
        tab.get_by_label("Your initials").fill("AB")
        expect(tab.get_by_role("heading", name="A frame over these sites")).to_be_visible(timeout=SLOW_MS)
        parts = tab.locator(".site").first.locator(".parts")
        tab.locator(".site-head").first.click()
        expect(parts).to_contain_text(UNCHOSEN, timeout=SLOW_MS)
        held: list[Route] = []
        tab.route("**/api/site/chain", lambda route: held.append(route))
        choices = parts.get_by_role("radio")
        for n in (0, 2):
            with tab.expect_request("**/api/site/chain"):
                choices.nth(n).check()
        held[0].fulfill(status=422, json={"text": "busy", "about": "site", "detail": ""})
        tab.wait_for_timeout(500)
        expect(choices.nth(2)).to_be_checked()


def test_parts_chosen_elsewhere_that_cannot_stand_leave_the_options(
    browser: Browser, case: Path, tmp_path: Path
) -> None:
    own = Case.open(shutil.copytree(case, tmp_path / "case"))
    folder = placed_at(tmp_path / "placed", own, {"1": [{"part": "no-such-part", "turn": 0}]})
    intake.add_output(own, "place", folder, "AB")
    with page(own.path) as running:
        tab, _ = tab_of(browser, running)
        expect(tab.get_by_role("heading", name="A frame over these sites")).to_be_visible(timeout=SLOW_MS)
        tab.locator(".site-head").nth(1).click()
        parts = tab.locator(".site").nth(1).locator(".parts")
        expect(parts).to_contain_text("no-such-part", timeout=SLOW_MS)
        expect(parts.get_by_role("radio").first).to_be_visible()


def test_a_frame_over_doubtful_sites_says_so_first(browser: Browser, tmp_path: Path) -> None:
    demo_parts(tmp_path / "parts")
    scan = scan_at(tmp_path / "arch.ply", 3)
    result = result_at(tmp_path / "result", scan, tmp_path / "parts", 3, "undecided")
    with page(result, "--parts", tmp_path / "parts", "--scan", scan) as running:
        tab, _ = tab_of(browser, running)
        frame = tab.locator(".frame")
        expect(frame.locator("p").first).to_contain_text("Not before sites 1, 2, 3 are cleared up", timeout=60_000)
        expect(frame.locator("p").nth(1)).to_contain_text("A rigid frame made to these positions")


def test_the_frame_shows_what_seat_foretells(opened: tuple[Tab, list[str], Page], case: Path) -> None:
    tab, _, _ = opened
    result = Case.open(case).table.result()
    assert result is not None
    expected = seat(case / result.folder)
    rows = tab.locator(".frame tbody tr")
    expect(rows).to_have_count(4)
    for row, site in zip(rows.all(), expected.sites, strict=False):
        assert site.gap_p95_um is not None
        assert site.side_p95_um is not None
        expect(row).to_contain_text(f"{site.site}{site.gap_p95_um:.0f} µm{site.side_p95_um:.0f} µm")
    expect(tab.locator(".frame")).to_contain_text("A rigid frame made to these positions would rest")


def grey(path: Path, width: int, height: int) -> Path:
    """A grey PNG (ISO/IEC 15948), as a radiograph would come."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    rows = (b"\0" + b"\x80" * width) * height
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    path.write_bytes(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")
    )
    return path


@pytest.mark.parametrize(("length", "passed"), [("10.0", True), ("20.0", False)])
def test_the_marks_of_a_radiograph_say_what_it_could_show(
    opened: tuple[Tab, list[str], Page], case: Path, tmp_path: Path, length: str, passed: bool
) -> None:
    """400 pixels of 0.025 mm are 10 mm: square on to a part of 10 mm, 60° oblique to one of 20 mm (cos 60° = 1/2)."""
    tab, said, _ = opened
    row = tab.locator(".checks-list li").nth(3)
    if row.get_by_role("button", name="Check again").count():
        row.get_by_role("button", name="Check again").click()
    row.locator("summary").click()
    row.locator("input[type=file]").set_input_files(grey(tmp_path / "bitewing.png", 200, 500))
    canvas = row.locator("canvas")
    canvas.focus()
    for _ in range(10):
        canvas.press("Shift+ArrowUp")
    canvas.press("Enter")
    expect(row.get_by_role("status")).to_contain_text("Now the other end")
    for _ in range(20):
        canvas.press("Shift+ArrowDown")
    canvas.press("Enter")
    row.get_by_label("True length").fill(length)
    row.get_by_label("Width of a pixel").fill("0,025")
    no_serious_fault(tab)
    row.get_by_role("button", name="Passed", exact=False).first.click()
    expect(row).to_have_class("passed" if passed else "failed", timeout=SLOW_MS)
    check = Case.open(case).table.checks[-1]
    assert (check.kind, check.ok) == ("radiograph", passed)
    assert ("beam 0° (" if passed else "beam 60° (") in check.value, check.value
    expect(row).to_contain_text(check.value)
    assert said == []


def test_a_reopened_case_shows_no_choice_that_nobody_made(
    browser: Browser, case: Path, opened: tuple[Tab, list[str], Page]
) -> None:
    """The first page ends with its choice taken back; whoever opens the case then sees none."""
    opened[2].process.terminate()
    opened[2].process.wait(30)
    with page(case) as running:
        tab, said = tab_of(browser, running)
        tab.locator(".site-head").first.click()
        expect(tab.locator(".parts")).to_contain_text(UNCHOSEN, timeout=SLOW_MS)
        expect(tab.locator(".parts input:checked")).to_have_count(0)
        assert said == []


RAISED = 0.4
"""mm by which the second body stood higher in the scan before."""


def before(folder: Path, poses: list[FloatArray]) -> None:
    """A folder of the page whose one measurement has bodies at these poses, the second of them not seated."""
    (folder / "scans").mkdir(parents=True)
    scan_at(folder / "scans" / "first.ply", 3)
    rng = np.random.default_rng(5)
    lifted = [at @ pose(np.eye(3), np.array([0.0, 0.0, RAISED if k == 1 else 0.0])) for k, at in enumerate(poses)]
    sites = tuple(site_at(k + 1, at, rng) for k, at in enumerate(lifted))
    made = measurement(3)[0]
    result = replace(made, sites=sites, pairs=(), scan=replace(made.scan, file="first.ply"))
    with staging(folder / "measured" / "1") as area:
        save(result, area, maps=False)
    run = {"run": 1, "scan": "first.ply", "kind": "scan", "detail": "first.ply", "options": {},
           "chains": ["2=alder-base-10@0", "3=alder-gone@0"]}  # fmt: skip
    values = {"format": "stylobate-page", "version": 1, "runs": [run], "at": 1, "next_run": 2, "parts": ""}
    (folder / "page.json").write_text(json.dumps(values))


def test_a_watched_scan_is_set_against_the_one_before(browser: Browser, tmp_path: Path) -> None:
    demo_parts(tmp_path / "parts")
    assert load_parts(tmp_path / "parts").scan_bodies
    made = scene(Settings(seed=21, arch="quadrant", bodies=("alder-tall",) * 3, edge_mm=0.3, teeth=False, spin=False,
                          noise=Noise(5.0, 5.0, 0.8), unseen=(0.0, 0.0)), demo_bodies())  # fmt: skip
    before(tmp_path / "work", [truth.scan_from_connection for truth in made.sites])
    (tmp_path / "export").mkdir()
    with page(tmp_path / "work", "--parts", tmp_path / "parts", "--watch", tmp_path / "export") as running:
        tab, said = tab_of(browser, running)
        expect(tab.locator(".site")).to_have_count(3, timeout=SLOW_MS)
        expect(tab.get_by_text(f"Watching {tmp_path / 'export'}")).to_be_visible()
        (tmp_path / "export" / "second.stl").write_bytes(scene_files(made, "stl")["scan.stl"])
        against = tab.locator(".against")
        expect(against).to_contain_text("Site 2 stands otherwise than in first.ply", timeout=SLOW_MS)
        expect(against).to_contain_text(re.compile(r"−(3[89]|4[01])\d µm in height"))
        no_serious_fault(tab)
        expect(tab.locator(".notice")).to_contain_text("site 3 (alder-gone): the parts at hand do not hold them")
        tab.locator(".site-head").nth(1).click()
        expect(tab.locator(".site").nth(1).locator(".parts")).to_contain_text(CHOSEN)
        assert said == []


def test_what_moved_since_the_scan_before_comes_into_the_case_and_its_report(tmp_path: Path) -> None:
    demo_parts(tmp_path / "parts")
    made = scene(Settings(seed=21, arch="quadrant", bodies=("alder-tall",) * 3, edge_mm=0.3, teeth=False, spin=False,
                          noise=Noise(5.0, 5.0, 0.8), unseen=(0.0, 0.0)), demo_bodies())  # fmt: skip
    before(tmp_path / "work", [truth.scan_from_connection for truth in made.sites])
    scan, parts = tmp_path / "work" / "scans" / "first.ply", load_parts(tmp_path / "parts")
    own = Case.create(tmp_path / "case", "H-9", "bridge", "AB")
    own = intake.add_parts(intake.add_scan(own, "bodies", scan, "AB"), tmp_path / "parts", "AB")
    source = tmp_path / "work" / "measured" / "1"
    values = json.loads((source / "result.json").read_text())
    entry = own.table.scan("bodies")
    assert entry is not None
    values["scan"]["sha256"] = entry.original_sha256
    values["parts"] = {"name": parts.name, "revision": parts.revision, "sha256": parts.sha256}
    (source / "result.json").write_text(json.dumps(values))
    intake.add_result(own, source, "AB")
    with page(own.path) as running:
        enter(running)
        running.settled()
        running.client.headers["stylobate-initials"] = "AB"
        content = scene_files(made, "stl")["scan.stl"]
        assert running.client.put("/api/scan?name=second.stl", content=content).status_code == 202
        compared = running.settled()["compared"]
    assert [moved["site"] for moved in compared["moved"]] == ["2"]
    case = Case.open(own.path)
    assert case.table.output("compare") is not None
    assert any("2 stands otherwise in this scan" in line for line in moved_lines(case, {"2": "2"}))
    assert case.faults() == []


def test_what_was_built_in_spite_of_a_verdict_is_not_lost_by_a_choice(case: Path, tmp_path: Path) -> None:
    own = Case.open(shutil.copytree(case, tmp_path / "case"))
    result = own.table.result()
    assert result is not None
    source = shutil.copytree(own.path / result.folder, tmp_path / "result")
    values = json.loads((source / "result.json").read_text())
    values["sites"][2]["verdict"] = "do not use"
    (source / "result.json").write_text(json.dumps(values))
    own = intake.add_result(own, source, "AB")
    folder = placed_at(
        tmp_path / "placed", own, {"3": [{"part": "alder-base-10", "turn": 0}]}, accepted={"reason": "x"}
    )
    own = intake.add_output(own, "place", folder, "AB")
    with page(own.path) as running:
        enter(running)
        running.settled()
        running.client.headers["stylobate-initials"] = "AB"
        options = running.settled()["placement"]["sites"][0]["options"]
        asked = running.client.post("/api/site/chain", json={"site": "1", "chain": options[0]["chain"]})
        assert asked.status_code == 409
        assert "site 3 is built on in spite of its verdict" in asked.json()["text"]
    assert Case.open(own.path).table == own.table
