"""The register's rules: which unit may be used, what is refused, tables in and out, frames against predictions."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stylobate.core.errors import RegisterError, ResultError
from stylobate.core.result import Deviation, ScanInfo
from stylobate.core.spreadsheet import inert, lively, raw
from stylobate.record import Record, read_result
from stylobate.register import Register, open_register
from stylobate.register.bench import accept, accept_unseen, judge
from stylobate.register.entries import codes, moment
from stylobate.register.frames import brier, enter_fit, fitted, kept, rate
from stylobate.register.measured import Use, enter_measurement, wear
from stylobate.register.table import csv_text, enter_table
from stylobate.register.units import Kind, Unit, add, history, record, units, void
from stylobate.report.document import result_json
from tests.doors.handmade import measurement
from tests.doors.running import refused, run


@pytest.fixture
def register(tmp_path: Path) -> Iterator[Register]:
    with open_register(tmp_path / "register.sqlite", create=True) as register:
        yield register


def result_of(folder: Path, scan: int, mean_um: float = 0.0, p95_um: float = 24.0) -> Record:
    """A result of three sites, all alder-tall, of scan number `scan`."""
    made, _ = measurement(3)
    sites = tuple(replace(site, deviation=Deviation(900, mean_um, 11.0, p95_um), map=None) for site in made.sites)
    made = replace(made, sites=sites, scan=ScanInfo(f"arch-{scan}.stl", f"{scan:064x}", 1000))
    path = folder / f"result-{scan}.json"
    path.write_text(result_json(made, maps=False))
    return read_result(path)


def one(register: Register, number: str) -> Unit:
    return units(register, [number])[0]


def use(case: str | None, override: str | None = None, at: str | None = None) -> Use:
    return Use(case, moment(at), override=override)


def test_single_use_is_refused_a_second_case_but_not_a_second_scan_of_the_first(
    register: Register, tmp_path: Path
) -> None:
    add(register, ["1"], Kind("alder-tall", single_use=True))
    accept_unseen(register, ["1"], "sealed", moment())
    enter_measurement(register, "1", result_of(tmp_path, 1), "1", use("Harbour 4"))
    enter_measurement(register, "1", result_of(tmp_path, 2), "1", use("Harbour 4"))
    with pytest.raises(RegisterError, match="single use, and used in case Harbour 4"):
        enter_measurement(register, "1", result_of(tmp_path, 3), "1", use("Harbour 5"))
    assert one(register, "1").cases == ("Harbour 4",)


def test_a_retired_unit_is_refused_and_an_override_is_logged(register: Register, tmp_path: Path) -> None:
    add(register, ["1"], Kind("alder-tall"))
    accept_unseen(register, ["1"], "in use before", moment())
    record(register, ["1"], "retired", moment(), note="dropped")
    result = result_of(tmp_path, 1)
    with pytest.raises(RegisterError, match=r"dropped.*--override"):
        enter_measurement(register, "1", result, "1", use("Harbour 4"))
    enter_measurement(register, "1", result, "1", use("Harbour 4", override="no other at hand"))
    logged = [event for event in history(register, ["1"]) if event.kind == "override"]
    assert len(logged) == 1
    assert "no other at hand" in (logged[0].note or "")
    assert "dropped" in (logged[0].note or "")
    assert one(register, "1").cases == ("Harbour 4",)
    enter_measurement(register, "1", result_of(tmp_path, 2), "1", use("Harbour 3", at="2026-01-03"))


def test_a_new_unit_must_be_accepted_before_its_first_case(register: Register, tmp_path: Path) -> None:
    add(register, ["1", "2"], Kind("alder-tall"))
    with pytest.raises(RegisterError, match="not yet accepted"):
        enter_measurement(register, "1", result_of(tmp_path, 9), "1", use("Harbour 4"))
    for scan, p95 in enumerate((21.0, 22.0, 20.0)):
        enter_measurement(register, "1", result_of(tmp_path, scan, p95_um=p95), "1", use(None))
        enter_measurement(register, "2", result_of(tmp_path, scan, p95_um=p95), "2", use(None))
    assert [found.verdict for found in accept(register, ["1"], 30.0, moment())] == ["accepted"]
    assert [found.verdict for found in accept(register, ["2"], 10.0, moment())] == ["rejected"]
    enter_measurement(register, "1", result_of(tmp_path, 9), "1", use("Harbour 4"))
    with pytest.raises(RegisterError, match="rejected on the bench"):
        enter_measurement(register, "2", result_of(tmp_path, 9), "2", use("Harbour 4"))


def test_bench_decisions_are_guarded_on_both_sides() -> None:
    # mean 20, s 1, n 4: U = t(0.95, 3)·1/√4 = 2.353/2 = 1.177 (Student's table, 2.353)
    scans = [19.0, 19.0, 21.0, 21.0]
    spread = (4.0 / 3.0) ** 0.5
    u = 2.353 * spread / 2.0
    assert judge("1", scans, [], 20.0 + u + 0.01).verdict == "accepted"
    assert judge("1", scans, [], 20.0 + u - 0.01).verdict == "undecided"
    assert judge("1", scans, [], 20.0 - u + 0.01).verdict == "undecided"
    assert judge("1", scans, [], 20.0 - u - 0.01).verdict == "rejected"
    assert judge("1", scans[:1], [], 90.0).verdict == "undecided"
    assert judge("1", scans, ["bent body"], 90.0).verdict == "undecided"


def test_one_scan_one_unit_one_site(register: Register, tmp_path: Path) -> None:
    add(register, ["1", "2"], Kind("alder-tall"))
    add(register, ["3"], Kind("hazel-short"))
    result = result_of(tmp_path, 1)
    enter_measurement(register, "1", result, "1", use(None))
    with pytest.raises(RegisterError, match="entered for this scan already"):
        enter_measurement(register, "1", result, "2", use(None))
    with pytest.raises(RegisterError, match="entered for unit 1 already"):
        enter_measurement(register, "2", result, "1", use(None))
    with pytest.raises(RegisterError, match="measured as alder-tall"):
        enter_measurement(register, "3", result, "3", use(None))
    with pytest.raises(RegisterError, match="no site '9'"):
        enter_measurement(register, "2", result, "9", use(None))
    void(register, history(register, ["1"])[0].id, moment(), "wrong unit")
    enter_measurement(register, "2", result, "1", use(None))


def test_cycles_are_counted_as_they_were_when_it_was_measured(register: Register, tmp_path: Path) -> None:
    add(register, ["1"], Kind("alder-tall", wear_limit_um=20.0))
    for k in range(5):
        day = f"2026-03-{2 * k + 1:02}T09:00"
        enter_measurement(register, "1", result_of(tmp_path, k, mean_um=-2.0 * k), "1", use(None, at=day))
        record(register, ["1"], "sterilised", moment(f"2026-03-{2 * k + 2:02}"), amount=1)
    view = wear(register)[0]
    assert view.outlooks["mean"].slope.per_cycle_um == pytest.approx(-2.0, abs=1e-12)
    assert view.outlooks["mean"].change_um == pytest.approx(-12.0)
    assert view.outlooks["mean"].limit == "kept"
    assert view.outlooks["mean"].drifts
    assert not view.outlooks["rms"].drifts
    record(register, ["1"], "sterilised", moment(), amount=5)
    assert wear(register)[0].outlooks["mean"].limit == "passed"


def test_voiding_undoes_an_event_and_keeps_it_in_sight(register: Register) -> None:
    add(register, ["1"], Kind("alder-tall", max_cycles=2))
    record(register, ["1"], "sterilised", moment(), amount=1)
    event = history(register, ["1"])[0].id
    void(register, event, moment(), "tray read twice")
    assert one(register, "1").cycles == 0
    assert [(e.kind, e.voided) for e in history(register, ["1"])] == [("sterilised", True), ("void", False)]
    with pytest.raises(RegisterError, match="voided already"):
        void(register, event, moment(), "again")


def test_codes_as_a_scanner_sends_them() -> None:
    assert codes(["\x0212\x03\r\n", "\n", "AT-3\t\n", "12\n", "at-3"]) == ["12", "AT-3"]
    with pytest.raises(RegisterError, match="line 2: 'a b'") as caught:
        codes(["1", "a b", "?", "=1"])
    assert len(caught.value.faults) == 3


def test_two_units_cannot_have_one_number(register: Register) -> None:
    add(register, ["at-1"], Kind("alder-tall"))
    with pytest.raises(RegisterError, match="one number: AT-1, 5"):
        add(register, ["AT-1", "4", "5", "5"], Kind("alder-tall"))
    assert [unit.number for unit in units(register)] == ["at-1"]


def test_dates() -> None:
    assert moment("2026-03-02T10:00+02:00") == "2026-03-02T08:00:00Z"
    for text in ("2126-01-01", "2126-01-01T00:00", "yesterday", "2026-02-30"):
        with pytest.raises(RegisterError):
            moment(text)


def test_a_table_goes_out_and_comes_back(register: Register, tmp_path: Path) -> None:
    add(register, ["1", "2"], Kind("alder-tall", "L7", "2026-01-05", max_cycles=50, wear_limit_um=12.5))
    add(register, ["3"], Kind("hazel-short", single_use=True))
    accept_unseen(register, ["1", "3"], "old", moment())
    record(register, ["1", "2"], "sterilised", moment(), amount=1)
    record(register, ["2"], "incident", moment(), note="fell")
    record(register, ["2"], "retired", moment(), note="=HYPERLINK(1)")
    enter_measurement(register, "1", result_of(tmp_path, 1), "1", use("Harbour 4"))
    text = csv_text(register)
    assert "'=HYPERLINK" in text
    with open_register(tmp_path / "other.sqlite", create=True) as other:
        assert enter_table(other, text.encode()) == ["1", "2", "3"]
        assert csv_text(other) == text


def test_bad_rows_are_all_listed_and_none_is_entered(register: Register) -> None:
    add(register, ["1"], Kind("alder-tall"))
    rows = [
        "number,scan_body,cycles,lot",
        "5,alder,1,A",
        "1,alder,1,A",
        "6,,1,A",
        "7,alder,-1,A",
        "8,alder,1,=A",
        "9,a",
    ]
    with pytest.raises(RegisterError) as caught:
        enter_table(register, "\n".join(rows).encode())
    assert [fault.split(":")[0] for fault in caught.value.faults] == ["row 3", "row 4", "row 5", "row 6", "row 7"]
    assert [unit.number for unit in units(register)] == ["1"]
    for bad in (b"\xff\xfe", b"number,weight\n1,2\n", b"number,scan_body\n", b'number,scan_body\n"1,alder\n'):
        with pytest.raises(RegisterError):
            enter_table(register, bad)


@given(st.text(max_size=12))
def test_no_exported_cell_is_a_formula_and_every_cell_comes_back(text: str) -> None:
    assert not lively(inert(text))
    assert raw(inert(text)) == text


def seat_file(folder: Path) -> Path:
    sites = [{"site": str(k), "gap_um": 12.0, "gap_p95_um": 31.0, "side_um": 8.0, "side_p95_um": 22.0} for k in (1, 2)]
    path = folder / "seat.json"
    path.write_text(
        json.dumps({"format": "stylobate-seat", "version": 1, "sites": sites, "probability_within_limits": 0.9})
    )
    return path


def test_a_frame_is_set_against_its_prediction(register: Register, tmp_path: Path) -> None:
    seat_file(tmp_path)
    enter_fit(register, "Harbour 4", tmp_path, {"1": 20.0, "2": 40.0}, True, moment())
    enter_fit(register, "Harbour 5", tmp_path / "seat.json", {}, False, moment())
    frames, gaps = fitted(register)
    held = kept(gaps)
    assert held is not None
    assert (held.held, held.count) == (1, 2)
    assert brier(frames) == pytest.approx((0.1**2 + 0.9**2) / 2)
    with pytest.raises(RegisterError, match="no site 7"):
        enter_fit(register, "Harbour 4", tmp_path, {"7": 1.0}, None, moment())
    with pytest.raises(ResultError):
        enter_fit(register, "Harbour 4", tmp_path / "absent", {"1": 1.0}, None, moment())


def test_rate_interval_is_clopper_and_pearson_s() -> None:
    # 0 of n: the upper end is 1 − 0.025^(1/n); closed form of the binomial tail
    assert rate(0, 10).high == pytest.approx(1.0 - 0.025**0.1, abs=1e-12)
    assert rate(10, 10).low == pytest.approx(0.025**0.1, abs=1e-12)
    assert rate(3, 10).low < 0.3 < rate(3, 10).high


def test_the_commands_as_a_user_calls_them(tmp_path: Path) -> None:
    file = tmp_path / "home" / "stylobate" / "register.sqlite"
    home = str(tmp_path / "home")
    refused(run("register", "list", XDG_DATA_HOME=home), str(file), "no register yet")
    assert run("register", "add", 1, 2, "--scan-body", "alder-tall", XDG_DATA_HOME=home).returncode == 0
    assert file.exists()
    refused(run("register", "add", 2, "--scan-body", "alder-tall", XDG_DATA_HOME=home), "one number: 2")
    refused(run("register", "check", 1, XDG_DATA_HOME=home), "1: not yet accepted")
    assert run("register", "accept", 1, 2, "--without-scan", "old", XDG_DATA_HOME=home).returncode == 0
    done = run("register", "check", 1, 2, XDG_DATA_HOME=home)
    assert (done.returncode, done.stdout) == (0, "may be used: 1, 2\n")
    result_of(tmp_path, 1)
    done = run(
        "register", "measured", 1, tmp_path / "result-1.json", "--site", 2, "--case", "Harbour 4", XDG_DATA_HOME=home
    )
    assert (done.returncode, done.stderr) == (0, "")
    shown = run("register", "history", "--lot", "none", XDG_DATA_HOME=home)
    assert shown.returncode == 0
    assert "cases: Harbour 4" in run("register", "history", 1, XDG_DATA_HOME=home).stdout
    table = tmp_path / "units.csv"
    assert run("register", "export", table, XDG_DATA_HOME=home).returncode == 0
    assert table.read_text(encoding="utf-8-sig").count("alder-tall") == 2
    again = run("register", "import", table, XDG_DATA_HOME=home)
    assert again.returncode == 2
    assert again.stdout.count("in the register already") == 2
    assert again.stderr.count("\n") == 1
