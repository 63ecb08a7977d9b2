"""A parts folder is read whole or refused, with every fault at its file and key."""

from __future__ import annotations

import dataclasses
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from stylobate.core.errors import PartsError
from stylobate.core.surface import Surface
from stylobate.parts import Note, check_parts, load_parts
from tests.unit.parts_making import CONNECTION, HEAD, flat, flipped, members, plate, post, stl, toml, write, zipped

ALL_KINDS = (
    toml({"tall": "alder"}, {"alder": 6, "alder-mu": 0})
    + """play = 1
""".replace("play = 1\n", "")
    + """material = "titanium, sandblasted"
single_use = false
max_cycles = 50
torque_ncm = [10, 15.0]
made_u_um = 6.0

[[implant]]
id = "alder-42-10"
connection = "alder"
length = 10.0

[[multi_unit_abutment]]
id = "mu"
seats_on = "alder"
provides = "alder-mu"
angle_deg = 16.0
collar_height = 2.5
cone_half_angle_deg = 20.0
surface = "mu.stl"
torque_ncm = [30.0, 30.0]

[[titanium_base]]
id = "base"
seats_on = "alder-mu"
gingival_height = 1.0
height = 5.0
engaging = false
channel_tilt_max_deg = 20.0
cone_half_angle_deg = 4.0
surface = "base.stl"
torque_ncm = [30.0, 35.0]

[[analog]]
id = "analog"
connection = "alder"
surface = "analog.stl"
"""
)
SURFACES = {
    "tall.stl": post(flat()),
    "mu.stl": post(height=3.0),
    "base.stl": post(height=6.0),
    "analog.stl": post(height=9.0, base=-9.0),
}


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "stylobate" / "made"


@pytest.fixture
def good(tmp_path: Path) -> Path:
    return write(tmp_path / "parts", ALL_KINDS, SURFACES)


def notes(path: Path) -> list[Note]:
    return list(check_parts(path).notes)


def only_fault(path: Path) -> Note:
    faults = check_parts(path).faults
    assert len(faults) == 1, faults
    return faults[0]


def changed(root: Path, old: str, new: str, count: int = 1) -> Path:
    text = (root / "parts.toml").read_text(encoding="utf-8")
    assert old in text
    (root / "parts.toml").write_text(text.replace(old, new, count), encoding="utf-8")
    return root


# What is read


def test_every_kind_is_read(good: Path) -> None:
    folder = load_parts(good)
    assert (folder.name, folder.revision, folder.licence) == ("Harbour Street", "1", "CC0-1.0")
    body = folder.scan_body("tall")
    assert (body.seats_on, body.torque_ncm, body.max_cycles, body.made_u_um) == ("alder", (10.0, 15.0), 50, 6.0)
    assert body.region is body.surface
    assert folder.connection("alder").index_order == 6
    assert folder.implants[0].length == 10.0
    (abutment,), (base,), (analog,) = folder.multi_unit_abutments, folder.titanium_bases, folder.analogs
    assert (abutment.provides, abutment.angle_deg, abutment.cone_half_angle_deg) == ("alder-mu", 16.0, 20.0)
    assert (base.engaging, base.channel_tilt_max_deg, base.torque_ncm) == (False, 20.0, (30.0, 35.0))
    assert len(analog.surface.faces) == len(SURFACES["analog.stl"].faces)
    assert notes(good) == []


def test_the_three_forms_of_scan_region(tmp_path: Path) -> None:
    upper = Surface(post(flat()).vertices, post(flat()).faces[-256:])
    root = write(
        tmp_path / "p",
        toml({"a": "alder", "b": "alder"}, regions={"a": "{ above = 4.0 }", "b": '{ surface = "cut/b.stl" }'}),
        {"a.stl": post(flat()), "b.stl": post(flat()), "cut/b.stl": upper},
    )
    a, b = load_parts(root).scan_bodies
    assert a.region.vertices[:, 2].min() == 4.0
    assert a.surface.vertices[:, 2].min() == 0.0
    assert len(b.region.faces) == 256
    assert len(b.surface.faces) == len(post(flat()).faces)
    assert a.sha256 != b.sha256


def test_parts_toml_itself_names_the_folder(good: Path) -> None:
    assert load_parts(good / "parts.toml").sha256 == load_parts(good).sha256


@pytest.mark.parametrize("prefix", ["", "harbour street/"])
def test_a_zip_of_the_folder_or_of_its_content_is_the_same_folder(good: Path, tmp_path: Path, prefix: str) -> None:
    (tmp_path / "parts.zip").write_bytes(zipped({"__MACOSX/x": b"", **members(good, prefix)}))
    packed, plain = load_parts(tmp_path / "parts.zip"), load_parts(good)
    assert packed.sha256 == plain.sha256
    np.testing.assert_array_equal(packed.scan_body("tall").region.vertices, plain.scan_body("tall").region.vertices)


def test_the_hash_is_of_what_is_referred_to(good: Path) -> None:
    before = load_parts(good).sha256
    (good / "notes.txt").write_text("not referred to")
    assert load_parts(good).sha256 == before
    (good / "mu.stl").write_bytes(stl(post(height=3.1)))
    assert load_parts(good).sha256 != before


def test_optional_keys_may_be_absent(tmp_path: Path) -> None:
    text = 'format = "stylobate-parts"\nversion = 1\nname = "n"\n' + CONNECTION.format(id="alder", order=6)
    text += '[[scan_body]]\nid = "a"\nseats_on = "alder"\nsurface = "a.stl"\n'
    (body,) = load_parts(write(tmp_path / "p", text, {"a.stl": post(flat())})).scan_bodies
    assert (body.torque_ncm, body.max_cycles, body.made_u_um, body.material) == (None, None, None, "")


# Faults in parts.toml: (what to change, key, words of the finding, words of the remedy)

FAULTS = [
    ("version = 1", "version = 2", "version", "version 2 is not known", "version = 1"),
    ("version = 1", "version = true", "version", "not known", "version = 1"),
    ("version = 1", "version = 1.5", "version", "not known", "version = 1"),
    ('"whole"', "{ above = 1, xyz = 2 }", 'scan_body[1] "tall" scan_region.xyz', "unknown key", "known here: above"),
    ('"stylobate-parts"', '"other"', "format", '"other" is not known', "'stylobate-parts'"),
    ('name = "Harbour Street"\n', "", "name", "is missing", "name ="),
    (
        "torque_ncm = [10, 15.0]",
        "torque_ncm = [16, 15.0]",
        'scan_body[1] "tall" torque_ncm',
        "the least",
        "[10.0, 15.0]",
    ),
    ("torque_ncm = [10, 15.0]", "torque_ncm = [10]", 'scan_body[1] "tall" torque_ncm', "at least 2", "torque_ncm"),
    ("[10, 15.0]", '["10", 15.0]', 'scan_body[1] "tall" torque_ncm[1]', "a number", "torque_ncm = [10.0"),
    ("[10, 15.0]", "[10, inf]", 'scan_body[1] "tall" torque_ncm[2]', "finite", "torque_ncm = [10.0"),
    ("max_cycles = 50", "max_cycles = 0", 'scan_body[1] "tall" max_cycles', "at least 1, not 0", "max_cycles = 50"),
    ("max_cycles = 50", "max_cycles = 5.5", 'scan_body[1] "tall" max_cycles', "whole number", "max_cycles = 50"),
    ("single_use = false", 'single_use = "no"', 'scan_body[1] "tall" single_use', "true or false", "single_use"),
    ("made_u_um = 6.0", "made_u_um = nan", 'scan_body[1] "tall" made_u_um', "finite", "made_u_um = 6.0"),
    ("made_u_um", "made_u_mm", 'scan_body[1] "tall" made_u_mm', "unknown key", 'did you mean "made_u_um"?'),
    ("licence", "license", "license", "unknown key", 'did you mean "licence"?'),
    ("[[implant]]", "[[implants]]", "implants", "unknown key", 'did you mean "implant"?'),
    ('"whole"', '"hole"', 'scan_body[1] "tall" scan_region', "not a scan region", "above = 4.0"),
    ('"whole"', "{ above = 1, surface = 'x' }", 'scan_body[1] "tall" scan_region', "not a scan region", "above = 4.0"),
    ('"whole"', "{ above = nan }", 'scan_body[1] "tall" scan_region.above', "finite", "above = 4.0"),
    ("index_order = 6", "index_order = -1", 'connection[1] "alder" index_order', "at least 0", "index_order = 6"),
    ('kind = "other"', 'kind = "hex"', 'connection[1] "alder" kind', '"hex" is not known', "'internal hex'"),
    ("platform_diameter = 4.2", "platform_diameter = 0", 'connection[1] "alder" platform_diameter', "above 0", "4.2"),
    ('id = "tall"', 'id = "t,all"', 'scan_body[1] "t,all" id', "not a name", "letters"),
    ('seats_on = "alder"', 'seats_on = "aldre"', 'scan_body[1] "tall" seats_on', "no connection", 'mean "alder"?'),
    ('provides = "alder-mu"', 'provides = "x"', 'multi_unit_abutment[1] "mu" provides', "no connection", "alder-mu"),
    ('provides = "alder-mu"', 'provides = "alder"', 'multi_unit_abutment[1] "mu" provides', "leads back", "own"),
    ('connection = "alder"', 'connection = "z"', 'implant[1] "alder-42-10" connection', "no connection", "alder"),
    ('id = "base"', 'id = "mu"', 'titanium_base[1] "mu" id', "stands already", "its own id"),
    ("angle_deg = 16.0", "angle_deg = 90.0", 'multi_unit_abutment[1] "mu" angle_deg', "below 90", "16.0"),
    ("engaging = false\n", "", 'titanium_base[1] "base" engaging', "is missing", "engaging = true"),
    ('surface = "mu.stl"', 'surface = "../mu.stl"', 'multi_unit_abutment[1] "mu" surface', "leads out", "inside"),
    ('surface = "mu.stl"', 'surface = "/mu.stl"', 'multi_unit_abutment[1] "mu" surface', "absolute", "inside"),
    ('surface = "mu.stl"', 'surface = "C:mu.stl"', 'multi_unit_abutment[1] "mu" surface', "drive", "inside"),
    ('surface = "mu.stl"', r'surface = "a\\mu.stl"', 'multi_unit_abutment[1] "mu" surface', "backslash", "inside"),
]


@pytest.mark.parametrize(("old", "new", "key", "what", "remedy"), FAULTS)
def test_one_fault_in_parts_toml(good: Path, old: str, new: str, key: str, what: str, remedy: str) -> None:
    note = only_fault(changed(good, old, new))
    assert note.file == "parts.toml"
    assert note.key == key
    assert what in note.what
    assert remedy in note.remedy
    with pytest.raises(PartsError, match="run stylobate parts check") as refused:
        load_parts(good)
    assert refused.value.faults == (note.line(),)
    assert "\n" not in str(refused.value)


def test_all_faults_come_at_once(good: Path) -> None:
    changed(good, "version = 1", "version = 3")
    changed(good, "platform_diameter = 4.2", "diameter = 4.2")
    changed(good, 'seats_on = "alder-mu"', 'seats_on = "alder-um"')
    changed(good, "length = 10.0", 'length = "10"')
    (good / "analog.stl").unlink()
    (good / "mu.stl").write_bytes(b"solid but no mesh")
    (good / "tall.stl").write_bytes(stl(flipped(post(flat()))))
    found = {(note.file, note.key) for note in check_parts(good).faults}
    assert found == {
        ("parts.toml", "version"),
        ("parts.toml", 'connection[1] "alder" platform_diameter'),
        ("parts.toml", 'connection[1] "alder" diameter'),
        ("parts.toml", 'titanium_base[1] "base" seats_on'),
        ("parts.toml", 'implant[1] "alder-42-10" length'),
        ("analog.stl", 'analog[1] "analog" surface'),
        ("mu.stl", 'multi_unit_abutment[1] "mu" surface'),
        ("tall.stl", 'scan_body[1] "tall" surface'),
    }
    with pytest.raises(PartsError, match="and 7 more faults"):
        load_parts(good)


def test_no_conclusions_from_a_faulty_value(good: Path) -> None:
    changed(good, 'surface = "tall.stl"', "surface = 7")
    assert only_fault(good).key == 'scan_body[1] "tall" surface'


def test_entries_of_another_form(good: Path) -> None:
    text = HEAD + CONNECTION.format(id="alder", order=6)
    assert only_fault(write(good, "scan_body = [3]\n" + text, {})).key == "scan_body[1]"
    assert only_fault(write(good, "scan_body = 3\n" + text, {})).key == "scan_body"
    assert only_fault(write(good, HEAD, {})).key == "connection"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "is missing"),
        (b"a = [", "not TOML"),
        (b"a = 1\na = 2", "not TOML"),
        (b"\xff\xfe", "UTF-8"),
        (b"a = 1\nb = '\xff'", "UTF-8"),
        (b"a=" + b"[" * 5000, "TOML|nested"),
        (b"a = " + b"9" * 5000, "TOML"),
        (b"x = " + b"{a=" * 3000, "TOML|nested"),
    ],
)
def test_no_toml(good: Path, content: bytes, words: str) -> None:
    (good / "parts.toml").write_bytes(content)
    with pytest.raises(PartsError, match=words) as refused:
        load_parts(good)
    assert "\n" not in str(refused.value)
    assert check_parts(good).faults


def test_a_byte_order_mark_is_no_fault(good: Path) -> None:
    (good / "parts.toml").write_bytes(b"\xef\xbb\xbf" + (good / "parts.toml").read_bytes())
    load_parts(good)


def test_warnings_do_not_block(good: Path) -> None:
    changed(good, "[[implant]]", CONNECTION.format(id="rowan", order=0) + "\n[[implant]]")
    report = check_parts(good)
    assert report.usable
    assert [note.what for note in report.warnings] == ["no part refers to it"]
    load_parts(good)


@pytest.mark.parametrize(
    ("kind", "order", "odd"),
    [("internal hex", 5, True), ("external hex", 4, True), ("trilobe", 4, True), ("internal hex", 6, False),
     ("internal hex", 12, False), ("internal hex", 1, False), ("external hex", 0, False), ("trilobe", 3, False),
     ("conical", 5, False), ("other", 7, False)],
)  # fmt: skip
def test_an_index_order_that_does_not_go_with_the_kind_is_asked_about(
    good: Path, kind: str, order: int, odd: bool
) -> None:
    text = (good / "parts.toml").read_text()
    (connection,) = re.findall(r"\[\[connection\]\].*?(?=\[\[)", text, re.DOTALL)[:1]
    wanted = re.sub(r'kind = "[^"]*"', f'kind = "{kind}"', connection)
    wanted = re.sub(r"index_order = \d+", f"index_order = {order}", wanted)
    changed(good, connection, wanted)
    asked = [note.what for note in check_parts(good).warnings if "equal positions" in note.what]
    assert bool(asked) == odd
    assert all(f"{order} equal positions do not go with kind {kind}" in what for what in asked)


# Faults in surfaces


def body_note(tmp_path: Path, surface: Surface | bytes, order: int = 6, region: str = '"whole"') -> list[Note]:
    text = toml({"a": "alder"}, {"alder": order}, {"a": region})
    return notes(write(tmp_path / "p", text, {"a.stl": surface}))


def moved(surface: Surface, shift: tuple[float, float, float], scale: float = 1.0) -> Surface:
    return Surface(surface.vertices * scale + np.array(shift), surface.faces)


@pytest.mark.parametrize(
    ("surface", "words"),
    [
        (flipped(post(flat())), "inside out"),
        (moved(post(flat()), (0, 0, 0), 1e-3), "metres"),
        (moved(post(flat()), (0, 0, 0), 1 / 25.4), "inches"),
        (moved(post(flat()), (0, 0, 0), 1e3), "micrometres"),
        (moved(post(flat()), (0, 0, 0), 12.0), "larger than any part"),
        (moved(post(flat()), (0, 0, -9.0)), "upside down"),
        (moved(post(flat()), (0, 0, 30.0)), "30 mm above the platform"),
        (moved(post(flat()), (0, 40.0, 0)), "37.6 mm beside the axis"),
        (post(flat(), cap=False), "height along the axis"),
        (plate(), "any sideways shift"),
        (b"", "empty"),
        (stl(post(flat()))[:5000], ""),
    ],
)
def test_a_scan_body_that_cannot_be_measured_against(tmp_path: Path, surface: Surface | bytes, words: str) -> None:
    blocking = [note for note in body_note(tmp_path, surface) if note.blocks]
    assert len(blocking) == 1
    assert words in blocking[0].what
    assert blocking[0].file == "a.stl"
    assert blocking[0].remedy
    with pytest.raises(PartsError, match=r"a\.stl"):
        load_parts(tmp_path / "p")


def with_faces(surface: Surface, faces: np.ndarray) -> Surface:
    return Surface(surface.vertices, np.concatenate([surface.faces, faces.astype(np.int32)]))


@pytest.mark.parametrize(
    ("surface", "words", "blocks"),
    [
        (with_faces(post(flat()), post(flat()).faces[:3]), "3 faces stand there twice", False),
        (with_faces(post(flat()), post(flat()).faces), "faces stand there twice", True),
        (with_faces(post(flat()), np.array([[0, 128, 200]])), "more than two faces", False),
        (with_faces(post(flat()), np.array([[5, 5, 6]])), "without an area", False),
        (Surface(post().vertices, np.where(np.arange(384)[:, None] < 2, post().faces[:, ::-1], post().faces)),
         "turned against each other", False),
        (Surface(post().vertices, np.where(np.arange(384)[:, None] < 150, post().faces[:, ::-1], post().faces)),
         "turned against each other", True),
        (post(flat(), facets=28), "coarse", False),
        (moved(post(flat()), (3.0, 0, 0)), "beside the axis", False),
        (moved(post(flat()), (1.0, 0, 0)), "its middle", False),
        (Surface(post(flat()).vertices[:, [0, 2, 1]], post(flat()).faces[:, ::-1]), "on its side", False),
        (moved(post(flat()), (0, 0, 2.0)), "2 mm above the platform", False),
    ],
)  # fmt: skip
def test_remarks_on_surfaces(tmp_path: Path, surface: Surface, words: str, blocks: bool) -> None:
    found = [note for note in body_note(tmp_path, surface, 0) if words in note.what]
    assert [note.blocks for note in found] == [blocks]


def test_outside_is_told_from_inside_for_closed_open_and_tubular_surfaces(tmp_path: Path) -> None:
    from stylobate.parts.edges import Edges
    from stylobate.parts.shape import INWARD, outwardness
    from tests.unit.parts_making import sphere

    for surface in (post(flat()), post(flat(), cap=False), sphere(), moved(post(), (0, 0, -4.0)), post(height=1.0)):
        assert outwardness(Edges.of(surface)) > 2 * INWARD
        assert outwardness(Edges.of(flipped(surface))) < -2 * INWARD
    assert abs(outwardness(Edges.of(plate()))) < INWARD


def test_a_round_body_has_no_index(tmp_path: Path) -> None:
    (note,) = body_note(tmp_path, post(), 6)
    assert not note.blocks
    assert note in check_parts(tmp_path / "p").loose_motions
    assert "no index" in note.what
    load_parts(tmp_path / "p")
    assert body_note(tmp_path, post(), 0) == []


def test_a_region_above_the_flat_loses_the_index(tmp_path: Path) -> None:
    below, above = post(flat(), 5.0, cap=False), post(height=3.0, base=5.0)
    surface = Surface(
        np.concatenate([below.vertices, above.vertices]),
        np.concatenate([below.faces, above.faces + len(below.vertices)]),
    )
    assert body_note(tmp_path, surface) == []
    assert body_note(tmp_path, surface, region="{ above = 4.0 }") == []
    (note,) = body_note(tmp_path, surface, region="{ above = 5.5 }")
    assert "no index" in note.what
    assert not note.blocks


def test_a_region_above_everything_is_refused(tmp_path: Path) -> None:
    (note,) = body_note(tmp_path, post(flat()), region="{ above = 9.0 }")
    assert note.what == "nothing of the surface lies above z = 9"
    assert note.blocks


def test_other_parts_are_only_warned_about(good: Path) -> None:
    (good / "mu.stl").write_bytes(stl(flipped(post(height=3.0))))
    report = check_parts(good)
    assert report.usable
    assert [note.file for note in report.warnings] == ["mu.stl"]


def test_look_alikes_are_listed_and_known_to_who_measures(tmp_path: Path) -> None:
    text = toml({"a": "alder", "b": "hazel", "c": "alder"}, {"alder": 6, "hazel": 3})
    surfaces = {"a.stl": post(flat()), "b.stl": post(flat()), "c.stl": post(flat(2.475))}
    root = write(tmp_path / "p", text, surfaces)
    (note,) = check_parts(root).look_alikes
    assert note.key == 'scan_body[1] "a" and scan_body[2] "b"'
    for _ in range(2):
        assert load_parts(root).look_alikes == (("a", "b"),)


# The cache


def same(one: object, other: object) -> bool:
    """Whether two values are equal through and through, arrays to the last bit."""
    if isinstance(one, np.ndarray) and isinstance(other, np.ndarray):
        return one.dtype == other.dtype and np.array_equal(one, other)
    if dataclasses.is_dataclass(one):
        names = [field.name for field in dataclasses.fields(one)]
        return type(one) is type(other) and all(same(getattr(one, name), getattr(other, name)) for name in names)
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(same, one, other))
    return type(one) is type(other) and one == other


def test_the_cache_gives_the_same_folder_and_is_never_trusted_when_broken(
    good: Path, own_cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = load_parts(good)
    (entry,) = own_cache.iterdir()
    whole = entry.read_bytes()
    for broken in (b"", b"{", whole[:-1], whole[: len(whole) // 2], whole.replace(b"tall", b"tell"), whole[1:]):
        entry.write_bytes(broken)
        assert same(load_parts(good), first)
        assert entry.read_bytes() == whole
    monkeypatch.setattr("stylobate.parts.load.read_folder", None)
    known = load_parts(good)
    assert same(known, first)
    assert [body.region is body.surface for body in known.scan_bodies] == [
        body.region is body.surface for body in first.scan_bodies
    ]


def test_a_folder_that_has_changed_is_looked_at_anew(good: Path, own_cache: Path) -> None:
    before = load_parts(good)
    (good / "tall.stl").write_bytes(stl(post(flat(2.3))))
    after = load_parts(good)
    assert after.sha256 != before.sha256
    assert not same(after.scan_bodies, before.scan_bodies)
    assert len(list(own_cache.iterdir())) == 1
    (good / "tall.stl").unlink()
    with pytest.raises(PartsError, match=r"tall\.stl"):
        load_parts(good)


def test_a_faulty_folder_is_not_kept(good: Path, own_cache: Path) -> None:
    (good / "tall.stl").write_bytes(stl(flipped(post(flat()))))
    for _ in range(2):
        with pytest.raises(PartsError):
            load_parts(good)
    assert not own_cache.exists()


def test_a_cache_that_cannot_be_written_changes_nothing(
    good: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    load_parts(good)


# Where there is no folder


def test_no_folder(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    (tmp_path / "text").write_text("hello")
    os.mkfifo(tmp_path / "pipe")
    for name in ("absent", "empty", "text", "pipe", "text/below", "nul\0"):
        with pytest.raises(PartsError, match=r"parts\.toml|opened") as refused:
            load_parts(tmp_path / name)
        assert "\n" not in str(refused.value)


def test_what_is_no_plain_file_inside_is_refused(good: Path) -> None:
    (good / "mu.stl").unlink()
    os.mkfifo(good / "mu.stl")
    assert "regular" in only_fault(good).what
    (good / "mu.stl").unlink()
    (good / "mu.stl").mkdir()
    assert "folder" in only_fault(good).what
    (good / "mu.stl").rmdir()
    shutil.copy(good / "base.stl", good.parent / "outside.stl")
    (good / "mu.stl").symlink_to(good.parent / "outside.stl")
    assert "leads out" in only_fault(good).what


# As its user sees it


def run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "stylobate", "parts", "check", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)


def test_the_command_says_all_and_ends_with_its_status(good: Path) -> None:
    fine = run(good)
    assert (fine.returncode, fine.stderr) == (0, "")
    assert "The folder can be used" in fine.stdout
    changed(good, "max_cycles", "max_cicles")
    changed(good, 'seats_on = "alder"', 'seats_on = "aldre"')
    bad = run(good)
    assert bad.returncode == 2
    assert bad.stderr.count("\n") == 1
    for word in ("max_cicles", 'did you mean "max_cycles"?', "aldre", "(2)"):
        assert word in bad.stdout
    gone = run(good / "absent")
    assert (gone.returncode, gone.stdout, gone.stderr.count("\n")) == (2, "", 1)
