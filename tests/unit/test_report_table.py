"""What the terminal shows."""

from __future__ import annotations

import dataclasses
from pathlib import Path

from rich.console import Console

from stylobate.core.result import Bounds, Result
from stylobate.report.table import neighbours, rendered
from stylobate.several import poses
from tests.doors.handmade import measurement


def printed(result: Result, width: int = 80) -> str:
    console = Console(width=width, force_terminal=False)
    with console.capture() as capture:
        console.print(rendered(result))
    return capture.get()


def row(text: str, site: str) -> list[str]:
    return next(line.split() for line in text.splitlines() if line.split()[:2] == [site, "alder-tall"])


def test_figures_of_each_site_at_80_columns() -> None:
    result = measurement(3)[0]
    text = printed(result)
    for site in result.sites:
        x, y, z = (f"{value:.3f}" for value in site.scan_from_connection[:3, 3])
        assert row(text, site.site)[2:] == [x, y, z, "9.1", "0.053", "0.21", "11.2", "83"]
    assert max(map(len, text.splitlines())) <= 80


def test_no_index_is_a_dash() -> None:
    result = measurement(1)[0]
    site = dataclasses.replace(result.sites[0], u95=Bounds(9.0, 0.05, None))
    assert row(printed(dataclasses.replace(result, sites=(site,))), "1")[7] == "–"


def test_what_poses_from_elsewhere_do_not_have_is_a_dash(tmp_path: Path) -> None:
    table = tmp_path / "cast.csv"
    table.write_text("site,x,y,z,ax,ay,az,connection,scan_body,platform_diameter\n1,0,0,0,0,0,1,alder,alder-tall,4.2\n")
    text = printed(poses(table, u_um=5.0, u_axis_deg=0.05))
    assert row(text, "1")[7:] == ["–", "–", "–"]
    assert "nan" not in text.lower()


def test_findings_warnings_and_the_caution_are_sentences() -> None:
    result = dataclasses.replace(measurement(2, finding=True)[0], warnings=("The unit looks like metres.",))
    text = " ".join(printed(result, 200).split())
    assert "Site 1: added layer, 31 µm (± 4 µm). Clean the scan body and scan it again." in text
    assert "The unit looks like metres." in text
    assert "seating: tighten to the stated torque" in text
    assert "The licensed clinician decides." in text


def test_nothing_found_is_said() -> None:
    assert "No scan body of the parts folder was found" in printed(measurement(0)[0])


def test_names_cannot_command_the_terminal() -> None:
    result = measurement(1)[0]
    site = dataclasses.replace(result.sites[0], scan_body="[red]x\x1b[31m[/red]", connection="a\nb")
    text = printed(dataclasses.replace(result, sites=(site,)), 120)
    assert "\x1b" not in text
    assert "[red]x" in text


def test_neighbours_and_the_ends() -> None:
    pairs = [pair.sites for pair in neighbours(measurement(5)[0])]
    assert pairs == [("1", "2"), ("1", "5"), ("2", "3"), ("3", "4"), ("4", "5")]


def test_a_turn_that_the_scan_does_not_show_is_any() -> None:
    """Three index marks: bounded by 60° either way the turn may be any."""
    result = measurement(1)[0]
    for bound, said in ((59.9, "59.90"), (60.0, "any")):
        site = dataclasses.replace(result.sites[0], index_order=3, u95=Bounds(9.0, 0.05, bound))
        assert row(printed(dataclasses.replace(result, sites=(site,))), "1")[7] == said
