"""What follows from a result on the page: the same as the commands say, and a choice that is kept and taken back."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

import stylobate
from stylobate.app.web import after
from stylobate.app.web.carry import carried
from stylobate.app.web.chains import chain_word, chains_of
from stylobate.app.web.worker import Bench, do_place
from stylobate.build.placing import place
from stylobate.core.errors import UsageError
from stylobate.core.rigid import pose, rotation_exp, turn_z
from stylobate.parts import load_parts
from stylobate.record import Record, read_result
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
    placement, refused = after.placed(result, load_parts(parts), ())
    expected = stylobate.place(result, parts)
    assert refused == ""
    assert [site.site for site in placement.sites] == [site.site for site in expected.sites]
    for ours, theirs in zip(placement.sites, expected.sites, strict=True):
        assert ours.options == theirs.options
        assert np.array_equal(ours.channel.direction, theirs.channel.direction)


def test_a_choice_stands_on_its_site_and_leaves_the_others(files: tuple[Path, Path], tmp_path: Path) -> None:
    result, parts = files
    before, _ = after.placed(result, load_parts(parts), ())
    first, second = before.sites[0], before.sites[1]
    other = first.options[2].chain
    word = chain_word(first.site, other)
    now, _ = after.placed(result, load_parts(parts), (word,))
    assert [(link.part.id, link.turn) for link in now.sites[0].chain] == list(other)
    assert [(k.part.id, k.turn) for k in now.sites[1].chain] == [(k.part.id, k.turn) for k in second.chain]
    assert [site.options for site in now.sites] == [site.options for site in before.sites]
    alone = stylobate.place(result, parts, sites=[word]).sites[0]
    assert np.array_equal(now.sites[0].channel.direction, alone.channel.direction)
    view = after.placement_view(now, "", str(parts))
    assert [site.chosen for site in view.sites] == [True, False, False]
    with staging(tmp_path / "placed") as area:
        save_placement(now, area)
    assert chains_of(tmp_path / "placed") == (word,), "what nobody chose is not read as chosen"


def test_parts_that_cannot_stand_there_are_refused(files: tuple[Path, Path]) -> None:
    with pytest.raises(UsageError, match=r"site 1=alder-wide@0: .*alder-wide"):
        after.placed(files[0], load_parts(files[1]), ("1=alder-wide@0",))


def test_a_turn_that_changes_no_channel_can_be_taken_and_outlives_a_rescan(files: tuple[Path, Path]) -> None:
    """`stylobate place --site` takes it, so the page has to show it: it showed no parts at all."""
    result, parts = files
    word = "1=alder-base-10@3"
    first = after.placed(result, load_parts(parts), (word,))[0].sites[0]
    assert [(link.part.id, link.turn) for link in first.chain] == [("alder-base-10", 3)]
    assert (("alder-base-10", 3),) in [option.chain for option in first.options]
    record = read_result(result)
    assert carried(record, moved(record, 2), (word,), load_parts(parts)) == (("1=alder-base-10@1",), ())


def moved(record: Record, turns: int, connection: str = "", verdict: str | None = None) -> Record:
    """The same implants in another scan's frame, with other index marks of the first site."""
    motion = pose(rotation_exp(np.array([0.1, -0.2, 0.9])), np.array([5.0, 6.0, -7.0]))
    sites = [replace(s, scan_from_connection=motion @ s.scan_from_connection) for s in record.sites]
    mark = turn_z(2.0 * np.pi * turns / sites[0].index_order)
    sites[0] = replace(sites[0], scan_from_connection=sites[0].scan_from_connection @ mark, verdict=verdict)
    if connection:
        sites[0] = replace(sites[0], connection=connection)
    return replace(record, sites=tuple(sites), scan=replace(record.scan, sha256="ef" * 32))


def test_a_chosen_part_points_where_it_pointed_after_a_rescan(files: tuple[Path, Path]) -> None:
    """Another frame and another index mark of the same implant: the part stands as it stood, seen from the others."""
    record, parts = read_result(files[0]), load_parts(files[1])
    first = place(record, parts).sites[0]
    leaning = next(option for option in first.options if len(option.chain) > 1 and option.chain[0][1] == 4)
    word = chain_word("1", leaning.chain)
    again = moved(record, 2)
    chains, lost = carried(record, again, (word,), parts)
    assert lost == ()
    was, now = place(record, parts, take=(word,)), place(again, parts, take=chains)
    for before, after_ in zip(was.sites[0].chain, now.sites[0].chain, strict=True):
        seen = [np.linalg.inv(r.sites[1].scan_from_connection) @ link.scan_from_part
                for r, link in ((record, before), (again, after_))]  # fmt: skip
        assert np.allclose(seen[0], seen[1], atol=1e-9)
    assert chains != (word,)


@pytest.mark.parametrize(
    ("changed", "why"),
    [
        (lambda record: moved(record, 0, connection="alder-mu"), "stands on alder-mu now|nothing was found"),
        (lambda record: moved(record, 0, verdict="do not use"), "Don't use"),
        (lambda record: replace(record, sites=record.sites[1:]), "nothing was found there"),
        (lambda record: replace(moved(record, 0), sites=moved(record, 0).sites[:1]), "no site can be told"),
    ],
)
def test_what_no_longer_stands_is_left_out_and_says_why(
    files: tuple[Path, Path], changed: Callable[[Record], Record], why: str
) -> None:
    record, parts = read_result(files[0]), load_parts(files[1])
    chains, lost = carried(record, changed(record), ("1=alder-base-10@0",), parts)
    assert chains == ()
    assert len(lost) == 1
    assert re.search(why, lost[0]), lost
    assert lost[0].startswith("site 1 (alder-base-10)")


def test_the_worker_keeps_surfaces_and_files(files: tuple[Path, Path], tmp_path: Path) -> None:
    result, parts = files
    job = {"result": str(result), "parts": str(parts), "chains": [], "beside": [None, None],
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
    placement, refused = after.placed(result, load_parts(parts), (), after.Beside(str(tmp_path / "gum.stl")))
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
