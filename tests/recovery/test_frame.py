"""Seats of a made frame: found in its scan, noise and all, and what is wrong with the frame shows."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from bench.made import WHITE, bar_over, connections, scan_of
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import exp, inverse, log, turn_of
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.parts import PartsFolder, load_parts
from stylobate.record import Record
from stylobate.several import frame, seat
from stylobate.several.made.points import surface_points
from stylobate.several.made.seats import _form, forms_of
from stylobate.several.made.settle import seated
from stylobate.simulate import demo_parts
from tests.unit.several_making import anywhere, record


@pytest.fixture(scope="module")
def parts(tmp_path_factory: pytest.TempPathFactory) -> PartsFolder:
    folder: Path = tmp_path_factory.mktemp("parts")
    demo_parts(folder)
    return load_parts(folder)


@pytest.fixture(scope="module")
def poses() -> list[FloatArray]:
    return connections(np.random.default_rng(1))


def made(
    parts: PartsFolder, poses: list[FloatArray], milled: bool, rng: np.random.Generator, scale: float = 1.0
) -> Scan:
    bar = bar_over(parts, poses, milled)
    return scan_of(Surface(scale * bar.vertices, bar.faces), rng, WHITE)[0]


def rough(poses: list[FloatArray], rng: np.random.Generator, **options: Any) -> Record:
    """The result it was made to, as far off as measuring and milling may be."""
    return record([placed @ exp(rng.normal(size=6) * ([0.1] * 3 + [0.01] * 3)) for placed in poses], **options)


@pytest.mark.parametrize("milled", [False, True], ids=["bonded bases", "milled to abutments"])
def test_seats_are_found_within_5_um_and_0_05_deg(milled: bool, parts: PartsFolder, poses: list[FloatArray]) -> None:
    rng = np.random.default_rng(2)
    like = rough(poses, rng, connection="alder-mu" if milled else "alder", index_order=0)
    found = frame(made(parts, poses, milled, rng), like, parts)
    for site, placed in zip(found.sites, poses, strict=True):
        error = log(inverse(placed) @ site.scan_from_connection)
        assert np.linalg.norm(error[:3]) < 5e-3
        assert np.degrees(np.linalg.norm(error[3:5])) < 0.05
        assert 1e3 * np.linalg.norm(error[:3]) < 3 * site.u95.platform_um
        assert site.connection == ("alder-mu" if milled else "alder")
        assert milled or site.scan_body == "alder-base-10"
    assert found.warnings == ()


def test_points_that_noise_brings_over_an_edge_do_not_move_a_seat(parts: PartsFolder, poses: list[FloatArray]) -> None:
    """The least possible is 1.0 µm rms; with such points the centres were off by 3 µm, most of it height."""
    rng = np.random.default_rng(12)
    bar, form = bar_over(parts, poses, False), next(one for one in forms_of(parts) if one.part == "alder-base-10")
    off = []
    for _ in range(3):
        points, normals = surface_points(scan_of(bar, rng, WHITE)[0].surface, np.array(poses)[:, :3, 3], 10.0)
        for placed in poses:
            found = seated(points, normals, (form,), placed @ exp(rng.normal(size=6) * ([0.05] * 3 + [0.005] * 3)))
            assert found is not None
            off.append(log(inverse(placed) @ found.scan_from_connection)[:3])
    assert 1e3 * np.sqrt(np.sum(np.square(off)) / len(off)) < 2.0


def test_seats_of_parts_are_found_where_nothing_is_said_of_the_connection(
    parts: PartsFolder, poses: list[FloatArray]
) -> None:
    rng = np.random.default_rng(2)
    found = frame(made(parts, poses, False, rng), rough(poses, rng, connection="", index_order=0), parts)
    assert {site.scan_body for site in found.sites} == {"alder-base-10"}


def test_a_frame_scanned_elsewhere_a_wrong_scale_and_a_wrong_part(parts: PartsFolder, poses: list[FloatArray]) -> None:
    rng = np.random.default_rng(3)
    scale, motion = 1.005, anywhere(rng)
    scan = made(parts, poses, False, rng, scale)
    moved = Scan(scan.surface.moved(motion), np.zeros(3), scan.file, scan.sha256)
    centres = [motion[:3, :3] @ (scale * placed[:3, 3]) + motion[:3, 3] for placed in poses]
    near = [(centre + rng.normal(0, 0.2, 3)).tolist() for centre in (centres[2], centres[0], centres[1])]
    found = frame(moved, rough(poses, rng), parts, near=near)
    made_to = [site.scan_from_connection for site in found.sites]
    rested = seat(record(made_to, index_order=6), record(poses, "b"))
    half = 0.5 * 1e3 * 0.005 * float(np.linalg.norm(poses[2][:3, 3] - poses[0][:3, 3]))
    assert rested.worst.side_um == pytest.approx(half, abs=8.0)
    with pytest.raises(FitError, match="no seat was found"):
        frame(moved, rough(poses, rng), parts)
    with pytest.raises(UsageError, match="2 rough points for 3 sites"):
        frame(moved, rough(poses, rng), parts, near=near[:2])
    with pytest.raises(UsageError, match="do not stand as the sites"):
        frame(moved, rough(poses, rng), parts, near=[near[0], near[1], [0.0, 0.0, 0.0]])
    wrong = frame(scan, rough(poses, rng, connection="hazel"), parts)
    assert "made for alder; the implant has hazel" in wrong.warnings[0]


def test_a_round_seat_says_nothing_of_its_turn(parts: PartsFolder, poses: list[FloatArray]) -> None:
    """Facets of its mesh had passed for a turn known to 2°, and `seat` told of seats turned by 20°."""
    round_ones = {form.part: form.round for form in forms_of(parts)}
    assert round_ones["alder-base-10"]
    assert round_ones["alder-mu-0-15"]
    cut = forms_of(parts)[0].surface.vertices.copy()
    cut[:, 0] = np.minimum(cut[:, 0], 2.15)
    assert not _form("cut", "alder", Surface(cut, forms_of(parts)[0].surface.faces)).round
    rng = np.random.default_rng(2)
    found = frame(made(parts, poses, False, rng), rough(poses, rng, connection="alder", index_order=6), parts)
    for site, placed in zip(found.sites, poses, strict=True):
        assert site.u95.any_turn(site.index_order)
        assert abs(np.degrees(turn_of(inverse(placed) @ site.scan_from_connection))) < 2.0


def test_a_wrong_turn_shows(parts: PartsFolder, poses: list[FloatArray]) -> None:
    """Made to an abutment of 16° that stands one of six marks from where it is: the seat leans 16° otherwise."""
    rng = np.random.default_rng(4)
    leaning = [poses[0], poses[1] @ exp(np.array([0, 0, 0, 0, np.radians(16.0), 0])), poses[2]]
    turn = exp(np.array([0, 0, 0, 0, 0, np.pi / 3]))
    wrong = [poses[0], poses[1] @ turn @ exp(np.array([0, 0, 0, 0, np.radians(16.0), 0])), poses[2]]
    found = frame(made(parts, wrong, False, rng), record(leaning), parts)
    assert len(found.warnings) == 1
    said = re.match(r"Site 2: the seat stands (\S+) mm and (\S+)° from where a has it", found.warnings[0])
    assert said is not None
    assert float(said[1]) < 0.02
    assert float(said[2]) == pytest.approx(2.0 * np.degrees(np.arcsin(np.sin(np.radians(16.0)) / 2.0)), abs=0.15)


def test_forms_face_out_of_the_frame(parts: PartsFolder) -> None:
    """A base shows its underside downwards; the negative of an abutment has its platform facing down as well."""
    forms = {form.part: form for form in forms_of(parts)}
    for name in ("alder-base-10", "alder-mu-0-15"):
        surface = forms[name].surface
        normal = surface.corner_products()
        flat = np.abs(surface.vertices[surface.faces][:, :, 2]).max(axis=1) < 1e-6
        assert flat.any()
        assert (normal[flat, 2] < 0).all()
        assert surface.vertices[:, 2].min() > -0.03
    assert forms["alder-mu-0-15"].connection == "alder-mu"
