"""Chairside checks, the radiograph's aid, and release as a person's act."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from click.testing import CliRunner

from stylobate.app.commands.case import command
from stylobate.app.unit_asked import unit_words
from stylobate.app.web.desk import CaseDesk
from stylobate.app.web.model import NoteCheck
from stylobate.case import Case, intake
from stylobate.case.beam import beam, readable_gap_um
from stylobate.case.checks import SiteState, record_check, release, states, torque_words, withdraw
from stylobate.case.model import KINDS
from stylobate.case.words import crossed, summary
from stylobate.core.errors import CaseError, RegisterError, UsageError
from stylobate.register import open_register
from stylobate.register.bench import accept_unseen
from stylobate.register.entries import moment
from stylobate.register.units import Kind, add, record
from stylobate.report.pages import of_case
from tests.unit.case_making import case_with_result, result_at, scan_at


@pytest.fixture
def case(tmp_path: Path) -> Case:
    return case_with_result(tmp_path, verdict="use")


def of(case: Case, number: str = "14") -> SiteState:
    return next(state for state in states(case) if state.tooth == number)


def checked(case: Case, number: str) -> Case:
    for kind in KINDS:
        case = record_check(case, number, kind, "AB")
    return case


def test_every_check_is_missing_until_it_is_recorded(case: Case) -> None:
    assert [state.missing for state in states(case)] == [KINDS, KINDS]
    case = record_check(case, "14", "seated", "AB")
    assert "seated" not in of(case).missing
    assert "seated" in of(case, "16").missing


def test_a_failed_check_counts_as_open_and_the_last_one_counts(case: Case) -> None:
    case = record_check(checked(case, "14"), "14", "clean", "AB", ok=False)
    assert of(case).missing == ("clean",)
    case = record_check(case, "14", "clean", "AB")
    assert of(case).missing == ()


def test_checks_of_an_earlier_scan_do_not_count(case: Case, tmp_path: Path) -> None:
    case = checked(case, "14")
    scan = scan_at(tmp_path / "again.ply", count=3)
    case = intake.add_scan(case, "bodies", scan, "AB")
    assert states(case) == []
    case = intake.add_result(case, result_at(tmp_path / "two", scan, tmp_path / "parts", verdict="use"), "AB")
    case = intake.name_sites(case, {"14": "1"}, "AB")
    assert of(case).missing == KINDS


def test_nothing_is_released_without_a_person_and_a_reason_where_something_is_open(case: Case) -> None:
    with pytest.raises(CaseError, match="not done or not passed: clean, seated"):
        release(case, "14", "AB")
    case = checked(case, "14")
    assert of(case).release is None
    case = release(case, "14", "CD")
    found = of(case).release
    assert found is not None
    assert (found.by, found.open, found.reason) == ("CD", (), "")
    assert case.log.lines[-1].what == "released"


@pytest.mark.parametrize("verdict", ["do not use", "undecided", None])
def test_what_is_not_use_needs_a_written_reason(tmp_path: Path, verdict: str | None) -> None:
    case = checked(case_with_result(tmp_path, verdict=verdict), "14")
    for reason in ("", "  "):
        with pytest.raises(CaseError, match="verdict"):
            release(case, "14", "AB", reason)
    case = release(case, "14", "AB", "remade from an impression, fits")
    found = of(case).release
    assert found is not None
    assert found.reason == "remade from an impression, fits"


def test_a_release_can_be_withdrawn_and_ends_with_a_newer_result(case: Case, tmp_path: Path) -> None:
    case = release(checked(case, "14"), "14", "AB")
    assert of(withdraw(case, "14", "AB")).release is None
    with pytest.raises(CaseError, match="not released"):
        withdraw(Case.open(case.path), "14", "AB")
    case = release(Case.open(case.path), "14", "AB")
    scan = tmp_path / "Erika Musterperson.ply"
    case = intake.add_result(case, result_at(tmp_path / "two", scan, tmp_path / "parts", verdict="undecided"), "AB")
    case = intake.name_sites(case, {"14": "1"}, "AB")
    assert of(case).release is None


@pytest.mark.parametrize(("used", "within"), [(9.9, False), (10.0, True), (15.0, True), (15.1, False)])
def test_the_torque_target_is_that_of_the_part(case: Case, used: float, within: bool) -> None:
    found, words = torque_words(case, "14", used)
    assert found is within
    assert "10 to 15 N·cm" in words


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A data folder of its own whose register holds one unit fit for use, one retired, one of another kind."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    file = tmp_path / "home" / "stylobate" / "register.sqlite"
    with open_register(file, create=True) as register:
        add(register, ["AT-1", "AT-2"], Kind("alder-tall"))
        add(register, ["AW-1"], Kind("alder-wide"))
        accept_unseen(register, ["AT-1", "AT-2", "AW-1"], "old stock", moment())
        record(register, ["AT-2"], "retired", moment(), None, "worn")
    return file


@pytest.mark.parametrize(
    ("number", "passes", "words"),
    [
        ("at-1", True, "AT-1"),
        ("AT-2", False, "AT-2, not to be used: retired on"),
        ("AW-1", False, "it is of alder-wide, the site was measured as alder-tall"),
        ("AT-9", True, "AT-9 (not in the register)"),
    ],
)
def test_a_unit_that_the_register_refuses_does_not_pass(
    case: Case, home: Path, number: str, passes: bool, words: str
) -> None:
    assert home.exists()
    done = CliRunner().invoke(command, ["check", str(case.path), "14", "unit", "--number", number, "--by", "AB"])
    assert done.exit_code == 0, done.output
    noted = of(Case.open(case.path)).checks["unit"]
    assert noted.ok is passes
    assert words in noted.value
    desk = CaseDesk.opened(case.path, home.parent)
    desk.check(NoteCheck("16", "unit", True, number), "CD")
    again = of(Case.open(case.path), "16").checks["unit"]
    assert (again.ok, again.value) == (passes, noted.value)


def test_without_a_register_a_unit_is_noted_and_a_broken_one_is_said(
    case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    assert unit_words(case, "14", " AT  1 ") == (True, "AT 1")
    file = tmp_path / "home" / "stylobate" / "register.sqlite"
    file.parent.mkdir(parents=True)
    file.write_bytes(b"no register")
    assert unit_words(case, "14", "AT-1") == (True, "AT-1 (the register could not be asked)")
    with pytest.raises(RegisterError, match="no register"):
        unit_words(case, "14", "AT-1", tmp_path / "none.sqlite")


def test_sites_are_named_once_and_by_what_is_there(case: Case) -> None:
    with pytest.raises(CaseError, match="no site '9'"):
        intake.name_sites(case, {"14": "9"}, "AB")
    with pytest.raises(CaseError, match="one tooth only"):
        intake.name_sites(case, {"14": "1", "15": "1"}, "AB")
    with pytest.raises(CaseError, match="tooth 21"):
        record_check(case, "21", "clean", "AB")


def test_naming_one_site_leaves_the_others_named(case: Case) -> None:
    done = CliRunner().invoke(command, ["sites", str(case.path), "15=1", "--by", "CD"])
    assert done.exit_code == 0, done.output
    assert Case.open(case.path).table.teeth() == {"16": "2", "15": "1"}


def test_what_was_kept_before_a_refusal_is_said(case: Case, tmp_path: Path) -> None:
    gum = str(scan_at(tmp_path / "gum.ply"))
    words = [f"tissue={gum}", f"opposing={tmp_path / 'none.stl'}"]
    with pytest.raises(CaseError, match=r"none\.stl: no such file.*kept before that: tissue"):
        CliRunner().invoke(command, ["add", str(case.path), *words, "--by", "CD"], catch_exceptions=False)
    assert Case.open(case.path).table.scan("tissue") is not None


def test_a_scan_shows_one_jaw(case: Case) -> None:
    with pytest.raises(CaseError, match="one jaw"):
        intake.name_sites(case, {"14": "1", "46": "2"}, "AB")


def test_teeth_in_another_order_than_the_sites_are_asked_about() -> None:
    assert crossed({"17": "1", "15": "2", "26": "3"}) == []
    assert crossed({"17": "3", "15": "2", "26": "1"}) == []
    assert crossed({"17": "1"}) == []
    (line,) = crossed({"17": "1", "15": "3", "26": "2"})
    assert "17 is site 1, 15 is site 3, 26 is site 2" in line


def test_the_summary_says_what_was_checked_and_why_a_site_was_released(case: Case) -> None:
    case = record_check(case, "14", "torque", "AB", ok=False, value="30 N·cm")
    case = release(case, "14", "CD", "torque wrench read wrongly")
    site = next(line for line in summary(case, 8) if "tooth 14" in line)
    assert "MISSING: clean, seated, radiograph, unit; NOT PASSED: torque; released by CD" in site
    assert site.endswith("reason: torque wrench read wrongly")
    log = summary(case, 2)[-2:]
    assert log[0].endswith("AB: check, tooth 14, torque NOT PASSED, 30 N·cm")
    assert "CD: released, tooth 14, open: clean" in log[1]
    assert log[1].endswith("reason: torque wrench read wrongly")


@pytest.mark.parametrize("name", ["result.json", "site-1.ply", "scan"])
def test_what_was_changed_in_the_folder_is_neither_released_nor_reported(case: Case, name: str) -> None:
    scan, result = case.table.scan("bodies"), case.table.result()
    assert scan is not None
    assert result is not None
    path = case.path / (scan.file if name == "scan" else f"{result.folder}/{name}")
    path.write_bytes(path.read_bytes().replace(b"0", b"1", 1))
    with pytest.raises(CaseError, match="was changed"):
        of_case(case.path)
    if name == "result.json":
        with pytest.raises(CaseError, match="was changed"):
            release(case, "14", "CD", "a reason")


def test_a_result_of_another_scan_is_refused(case: Case, tmp_path: Path) -> None:
    other = scan_at(tmp_path / "other.ply", count=3)
    with pytest.raises(CaseError, match="another scan"):
        intake.add_result(case, result_at(tmp_path / "r", other, tmp_path / "parts"), "AB")


def test_gaps_that_observers_told_reliably() -> None:
    """Sharkey 2011, Int J Oral Maxillofac Implants 26:807: 12.7 µm to 5°, 25 to 38 µm at 10°, 51 µm at 15°."""
    assert [readable_gap_um(angle) for angle in (0.0, 5.0, 10.0, 15.0)] == [12.7, 12.7, 38.0, 51.0]
    assert readable_gap_um(15.1) is None


@pytest.mark.parametrize("angle_deg", [0.0, 8.0, 12.0, 30.0])
def test_the_beam_is_found_from_a_projected_length(angle_deg: float) -> None:
    found = beam(20.0, 20.0 * math.cos(math.radians(angle_deg)))
    assert found.angle_deg == pytest.approx(angle_deg, abs=1e-5)
    assert found.at_worst_deg > angle_deg


def test_the_bound_on_the_beam_holds_for_19_in_20_pairs_of_marks() -> None:
    import numpy as np

    rng = np.random.default_rng(3)
    true, length, draws = math.radians(12.0), 10.0, 4000
    seen = length * math.cos(true) + rng.normal(0, 0.05, (draws, 2)) @ [1.0, -1.0]
    held = np.mean([beam(length, value).at_worst_deg >= 12.0 for value in seen])
    assert abs(held - 0.95) < 4 * math.sqrt(0.95 * 0.05 / draws)


@pytest.mark.parametrize(("length", "seen"), [(10.0, 10.5), (0.0, 5.0), (10.0, 0.0), (-1.0, 1.0)])
def test_a_length_that_cannot_be_is_refused(length: float, seen: float) -> None:
    with pytest.raises(UsageError):
        beam(length, seen)
