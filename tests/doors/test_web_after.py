"""What follows from a result on the page: the same as the commands say, and a choice that is kept and taken back."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

import stylobate
from stylobate.app.web import after
from stylobate.app.web.chains import chain_word, chains_of
from stylobate.app.web.worker import Bench, do_place
from stylobate.parts import load_parts
from stylobate.report.folder import staging
from stylobate.report.placement import save_placement
from stylobate.report.save import save
from stylobate.several.seating.verb import seat
from stylobate.simulate.demo import demo_parts
from tests.doors.handmade import measurement


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """A result by hand and the demo's parts."""
    folder = tmp_path_factory.mktemp("after")
    demo_parts(folder / "parts")
    with staging(folder / "result") as area:
        save(measurement(3)[0], area, maps=False)
    return folder / "result", folder / "parts"


def test_the_parts_are_those_of_the_command(files: tuple[Path, Path]) -> None:
    result, parts = files
    placement, options, refused = after.placed(result, load_parts(parts), (), "", "")
    expected = stylobate.place(result, parts)
    assert refused == ""
    assert [site.site for site in placement.sites] == [site.site for site in expected.sites]
    for ours, theirs in zip(placement.sites, expected.sites, strict=True):
        assert options[ours.site] == theirs.options
        assert np.array_equal(ours.channel.direction, theirs.channel.direction)


def test_a_choice_stands_on_its_site_and_leaves_the_others(files: tuple[Path, Path], tmp_path: Path) -> None:
    result, parts = files
    before, options, _ = after.placed(result, load_parts(parts), (), "", "")
    first, second = before.sites[0], before.sites[1]
    other = options[first.site][2].chain
    word = chain_word(first.site, other)
    now, still, _ = after.placed(result, load_parts(parts), (word,), "", "")
    assert [(link.part.id, link.turn) for link in now.sites[0].chain] == list(other)
    assert [(k.part.id, k.turn) for k in now.sites[1].chain] == [(k.part.id, k.turn) for k in second.chain]
    assert still == options
    view = after.placement_view(now, still, (word,), "", str(parts))
    assert [site.chosen for site in view.sites][:2] == [True, False]
    with staging(tmp_path / "placed") as area:
        save_placement(now, area)
    assert chains_of(tmp_path / "placed")[0] == word


def test_the_worker_keeps_surfaces_and_files(files: tuple[Path, Path], tmp_path: Path) -> None:
    result, parts = files
    job = {"result": str(result), "parts": str(parts), "chains": [], "tissue": "", "opposing": "",
           "cache": str(tmp_path), "out": str(tmp_path / "placed")}  # fmt: skip
    view = do_place(Bench(lambda _: None), job)
    assert view["surfaces"]
    assert all((tmp_path / key).stat().st_size > 100 for key in view["surfaces"].values())
    assert (tmp_path / "placed" / "place.json").is_file()


def test_a_tissue_scan_that_cannot_be_used_is_said_and_the_parts_stand_without(
    files: tuple[Path, Path], tmp_path: Path
) -> None:
    result, parts = files
    (tmp_path / "gum.stl").write_bytes(b"no scan")
    placement, _, refused = after.placed(result, load_parts(parts), (), str(tmp_path / "gum.stl"), "")
    assert "gum.stl" in refused
    assert placement.sites


def test_the_frame_is_what_seat_says(files: tuple[Path, Path]) -> None:
    view, expected = after.frame_view(files[0]), seat(files[0])
    assert expected.all_within is not None
    assert view.probability_within_limits == expected.all_within.value
    assert [(site.site, site.gap_p95_um) for site in view.sites] == [(s.site, s.gap_p95_um) for s in expected.sites]
    assert view.repeat[0].site == expected.repeat[0].site


def test_the_same_result_again_has_not_moved_and_a_missing_one_is_refused(
    files: tuple[Path, Path], tmp_path: Path
) -> None:
    view = after.compared_view(files[0], files[0])
    assert view.refused or (view.moved == () and view.common == 3)
    assert after.compared_view(tmp_path / "none", files[0]).refused
