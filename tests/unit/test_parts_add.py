"""The frame of raw CAD: parts of known frame, moved anywhere, must come back; and what is written, or refused."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from stylobate.core import durable
from stylobate.core.errors import OutputError, PartsError, StylobateError, UsageError
from stylobate.core.rigid import inverse, log, pose, rotation_exp
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts import adding, load_parts
from stylobate.parts.faces import anatomy
from stylobate.parts.framing import Flat, flats, framed, prove, seats
from stylobate.report.meshes import stl_bytes
from stylobate.simulate import bodies, demo_parts, solids

FRAME_MM, FRAME_DEG = 2e-4, 2e-3
"""Facets keep within 1 µm of the true round; an axis through them is better than that."""
ROUND = [
    "flatted-cylinder",
    "bevelled",
    "slender",
    "cone",
    "small-head",
    "ball-topped",
    "winged",
    "two-flats",
    "stepped",
]


def anywhere(rng: np.random.Generator) -> FloatArray:
    return pose(rotation_exp(rng.uniform(-2.0, 2.0, 3)), rng.uniform(-200.0, 200.0, 3))


def at(file_from_part: FloatArray, x: float, y: float, z: float) -> FloatArray:
    return np.asarray(file_from_part[:3, :3] @ np.array([x, y, z]) + file_from_part[:3, 3])


def apart(one: FloatArray, other: FloatArray) -> tuple[float, float]:
    """mm and degrees between two poses."""
    motion = log(inverse(one) @ other)
    return float(np.linalg.norm(motion[:3])), float(np.degrees(np.linalg.norm(motion[3:])))


@pytest.mark.parametrize("family", ROUND)
def test_the_frame_of_an_invented_body_comes_back(family: str) -> None:
    rng = np.random.default_rng(list(family.encode()))
    surface = bodies.draw_body(rng, "body", "alder", family).surface
    file_from_part = anywhere(rng)
    platform, index = at(file_from_part, 0.3, 0.2, 0.0), at(file_from_part, 1.0, 0.0, 4.0)
    found = framed(surface.moved(file_from_part), "raw.stl", 6, platform=platform, index=index)
    off_mm, off_deg = apart(inverse(found.part_from_file), file_from_part)
    assert off_mm < FRAME_MM
    assert off_deg < FRAME_DEG
    assert np.abs(found.surface.vertices - surface.vertices).max() < 1e-3


@pytest.mark.parametrize("family", ["three-lobed", "hexagonal", "square-post"])
def test_a_body_without_a_round_surface_needs_two_points_on_its_axis(family: str) -> None:
    rng = np.random.default_rng(list(family.encode()))
    surface = bodies.draw_body(rng, "body", "alder", family).surface
    file_from_part = anywhere(rng)
    raw = surface.moved(file_from_part)
    with pytest.raises(PartsError, match="pick two points on it: --axis"):
        framed(raw, "raw.stl", 6)
    axis = np.array([at(file_from_part, 0, 0, 1), at(file_from_part, 0, 0, 5)])
    platform, index = at(file_from_part, 0.3, 0.2, 0.0), at(file_from_part, 30.0, 0.0, 4.0)
    found = framed(raw, "raw.stl", 6, platform=platform, index=index, axis=axis)
    off_mm, off_deg = apart(inverse(found.part_from_file), file_from_part)
    assert off_mm < FRAME_MM
    assert off_deg < FRAME_DEG


def open_below(surface: Surface) -> Surface:
    """The same without its bottom."""
    return Surface(surface.vertices, surface.faces[(surface.vertices[surface.faces][:, :, 2] > 1e-9).any(axis=1)])


def test_an_open_rim_can_be_the_platform() -> None:
    rng = np.random.default_rng(8)
    file_from_part = anywhere(rng)
    raw = open_below(bodies.twin_post(4.8, 9.0, 4.6)).moved(file_from_part)
    rims = [seat for seat in seats(raw, anatomy(raw, "raw"), False) if seat.open]
    assert len(rims) == 1
    assert rims[0].up == pytest.approx(file_from_part[:3, 2], abs=1e-6)
    found = framed(raw, "raw.stl", 6, platform=rims[0].number)
    off_mm, off_deg = apart(inverse(found.part_from_file), file_from_part)
    assert off_mm < FRAME_MM
    assert off_deg < FRAME_DEG


def analog(turn_deg: float = 0.0, drop: float = 0.0, beside: float = 0.0) -> Surface:
    solid = solids.flat(solids.cylinder(1.7, -12.0, -drop, 2.1), 1.2, -12.0, turn_deg)
    return solids.surface_of(solid.translate((beside, 0.0, 0.0)))


def test_a_matching_surface_finds_the_platform_and_proves_the_frame() -> None:
    file_from_part = anywhere(np.random.default_rng(9))
    raw = bodies.twin_post(4.8, 9.0, 4.6).moved(file_from_part)
    with pytest.raises(UsageError, match=r"--platform=N or a point on it: 1: .*; 2: .*; 3: "):
        framed(raw, "raw.stl", 6)
    found = framed(raw, "raw.stl", 6, match=analog().moved(file_from_part))
    assert apart(inverse(found.part_from_file), file_from_part)[0] < FRAME_MM
    for turn in (0.0, 60.0, 240.0):
        assert "shares the frame" in prove(found.part_from_file, analog(turn).moved(file_from_part), "a", 6, True)
    for wrong, words in (
        (analog(7.0), "7.00° from an index mark"),
        (analog(drop=0.05), "nearest 0.050 mm"),
        (analog(beside=0.03), "30 µm beside"),
    ):
        with pytest.raises(PartsError, match=words):
            prove(found.part_from_file, wrong.moved(file_from_part), "a", 6, True)


def test_the_index_must_be_picked_where_flats_are_alike() -> None:
    solid = solids.flat(solids.flat(solids.cylinder(2.4, 0.0, 8.0), 1.8, 4.0, 0.0), 1.8, 4.2, 90.0)
    surface = solids.surface_of(solid)
    known = flats(anatomy(surface, "raw"))
    assert [type(flat) for flat in known] == [Flat, Flat]
    assert known[0].normal == pytest.approx([1.0, 0.0, 0.0], abs=1e-9)
    picked = framed(surface, "raw.stl", 6, platform=np.zeros(3), index=2)
    assert inverse(picked.part_from_file)[:3, 0] == pytest.approx([0.0, 1.0, 0.0], abs=1e-6)
    with pytest.raises(UsageError, match="--index=N"):
        framed(surface, "raw.stl", 6, platform=np.zeros(3))
    framed(surface, "raw.stl", 0, platform=np.zeros(3))
    for pick, words in ((3, "--index=3"), (np.array([0.0, 0.0, 6.0]), "on the axis")):
        with pytest.raises(UsageError, match=words):
            framed(surface, "raw.stl", 6, platform=np.zeros(3), index=pick)
    for platform, words in ((9, "--platform=9"), (np.array([0.0, 0.0, 1.0]), "1.00 mm from the nearest plane")):
        with pytest.raises(UsageError, match=words):
            framed(surface, "raw.stl", 6, platform=platform, index=1)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    demo_parts(tmp_path / "parts")
    return tmp_path / "parts"


def state(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_part_is_added_and_the_rest_is_kept(folder: Path) -> None:
    before = state(folder)
    content = stl_bytes(bodies.twin_post(4.6, 8.0, 4.0), "mine")
    values: dict[str, adding.Value] = {"scan_region": {"above": 2.0}, "material": 'a "quoted" name', "max_cycles": 5}
    text = adding.entry("scan-body", "mine", "alder", values)
    target = adding.add_part(folder, "scan-body", "mine", text, content, b"png")
    body = load_parts(folder).scan_body("mine")
    assert (body.material, body.max_cycles, body.seats_on) == ('a "quoted" name', 5, "alder")
    assert float(body.region.vertices[:, 2].min()) == pytest.approx(2.0)
    after = state(folder)
    assert after["parts.toml"].startswith(before["parts.toml"].rstrip())
    assert after.keys() - before.keys() == {"scan-bodies/mine.stl", "scan-bodies/mine.png"}
    with pytest.raises(UsageError, match="is there already"):
        adding.add_part(folder, "scan-body", "mine", text, content, b"png")
    assert target.read_bytes() == content


@pytest.mark.parametrize(
    ("kind", "identifier", "values", "words"),
    [
        ("scan-body", "mine", {"colour": "red"}, "unknown key"),
        ("scan-body", "mine", {"scan_region": {"above": 20.0}}, "nothing of the surface"),
        ("base", "mine", {"engaging": True}, "gingival_height: is missing"),
        ("base", "alder-mu-base", {}, "is there already"),
        ("scan-body", "../mine", {}, "--id '../mine'"),
        ("scan-body", "my part", {}, "not a name"),
    ],
)
def test_what_would_spoil_the_folder_is_refused_before_anything_is_written(
    kind: str, identifier: str, values: dict[str, adding.Value], words: str, folder: Path
) -> None:
    before = state(folder)
    with pytest.raises(StylobateError, match=words) as caught:
        text = adding.entry(kind, identifier, "alder", values)
        adding.add_part(folder, kind, identifier, text, stl_bytes(bodies.twin_post(4.6, 8.0, 4.0), ""), b"png")
    assert "\n" not in str(caught.value)
    assert state(folder) == before


def test_a_write_that_fails_leaves_the_folder_as_it_was(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    before = state(folder)
    monkeypatch.setattr(durable, "flushed", full)
    text = adding.entry("scan-body", "mine", "alder", {})
    with pytest.raises(OutputError, match="no space left on device; nothing was changed"):
        adding.add_part(folder, "scan-body", "mine", text, stl_bytes(bodies.twin_post(4.6, 8.0, 4.0), ""), b"png")
    assert state(folder) == before


@pytest.mark.parametrize("text", ["x", "=1", "a b=1", "a=", "a={}", 'a=["b"]'])
def test_keys_to_set_are_read_or_refused(text: str) -> None:
    assert adding.value_of("torque_ncm=[10, 15.5]") == ("torque_ncm", [10, 15.5])
    assert adding.value_of("engaging=true") == ("engaging", True)
    assert adding.value_of("material=blue steel") == ("material", "blue steel")
    with pytest.raises(UsageError, match="--set"):
        adding.value_of(text)
