"""Zips and texts made to do harm, or made by chance: one clear line, nothing outside the folder, no traceback."""

from __future__ import annotations

import io
import stat
import tempfile
import warnings
import zipfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from stylobate.core.errors import PartsError
from stylobate.parts import PartsFolder, check_parts, load_parts
from stylobate.parts import source as parts_source
from stylobate.parts.source import why_unsafe
from tests.unit.parts_making import flat, post, stl, toml, write, zipped

TEXT = toml({"a": "alder", "b": "alder"}, regions={"b": "{ above = 2.0 }"})
MEMBERS: dict[str, bytes | str] = {
    "parts.toml": TEXT,
    "a.stl": stl(post(flat(), facets=16)),
    "b.stl": stl(post(flat(), facets=16)),
}


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def refused(path: Path, content: bytes) -> str:
    path.write_bytes(content)
    with pytest.raises(PartsError) as error:
        load_parts(path)
    assert "\n" not in str(error.value)
    assert len(str(error.value)) < 500
    return str(error.value)


def outcome_of(path: Path) -> PartsFolder | PartsError:
    """What comes of a folder: itself, or the refusal. Any other exception is the test's failure."""
    try:
        return load_parts(path)
    except PartsError as error:
        return error


def test_the_good_zip_is_good(tmp_path: Path) -> None:
    (tmp_path / "p.zip").write_bytes(zipped(MEMBERS))
    assert [body.id for body in load_parts(tmp_path / "p.zip").scan_bodies] == ["a", "b"]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("../out.stl", "leads out"),
        ("x/../../out.stl", "leads out"),
        ("/etc/out.stl", "absolute"),
        ("C:/out.stl", "drive"),
        ("c:out.stl", "drive"),
        ("x\\..\\out.stl", "backslash"),
        ("a\nb.stl", "control"),
        ("..", "leads out"),
    ],
)
def test_names_that_lead_out(tmp_path: Path, name: str, words: str) -> None:
    assert words in refused(tmp_path / "p.zip", zipped({**MEMBERS, name: b"x"}))
    assert sorted(path.name for path in tmp_path.iterdir() if path.name != "cache") == ["p.zip"]


def special(mode: int) -> bytes:
    buffer = io.BytesIO(zipped(MEMBERS))
    with zipfile.ZipFile(buffer, "a") as archive:
        info = zipfile.ZipInfo("link.stl")
        info.create_system = 3
        info.external_attr = (mode | 0o777) << 16
        archive.writestr(info, "/etc/passwd")
    return buffer.getvalue()


@pytest.mark.parametrize("mode", [stat.S_IFLNK, stat.S_IFIFO, stat.S_IFCHR])
def test_links_and_devices(tmp_path: Path, mode: int) -> None:
    assert "link or a special file" in refused(tmp_path / "p.zip", special(mode))


def test_one_name_twice(tmp_path: Path) -> None:
    buffer = io.BytesIO(zipped(MEMBERS))
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        with zipfile.ZipFile(buffer, "a") as archive:
            archive.writestr("a.stl", b"another")
    assert "twice" in refused(tmp_path / "p.zip", buffer.getvalue())


def test_encrypted(tmp_path: Path) -> None:
    content = bytearray(zipped(MEMBERS))
    at = content.find(b"PK\x01\x02")
    while at >= 0:
        content[at + 8] |= 1
        at = content.find(b"PK\x01\x02", at + 4)
    assert "encrypted" in refused(tmp_path / "p.zip", bytes(content))


def test_a_bomb_by_ratio(tmp_path: Path) -> None:
    bomb = zipped({**MEMBERS, "a.stl": b"\0" * (8 << 20)})
    assert len(bomb) < 100_000
    assert "200 times" in refused(tmp_path / "p.zip", bomb)


def declared(content: bytes, size: int) -> bytes:
    """The zip with the size of every member in its directory replaced."""
    changed = bytearray(content)
    at = changed.find(b"PK\x01\x02")
    while at >= 0:
        changed[at + 24 : at + 28] = size.to_bytes(4, "little")
        at = changed.find(b"PK\x01\x02", at + 4)
    return bytes(changed)


def test_sizes_that_lie(tmp_path: Path) -> None:
    assert "too large" in refused(tmp_path / "p.zip", declared(zipped(MEMBERS), 0xF0000000))
    message = refused(tmp_path / "p.zip", declared(zipped(MEMBERS), 10))
    assert "make the zip anew" in message or "not TOML" in message or "missing" in message


def test_limits_of_number_and_total(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    many = zipped({**MEMBERS, **{f"x{k}": b"" for k in range(5000)}})
    assert "more than 5000 files" in refused(tmp_path / "p.zip", many)
    monkeypatch.setattr(parts_source, "MAX_TOTAL_BYTES", 5000)
    assert "unpacks to more than" in refused(tmp_path / "p.zip", zipped(MEMBERS))


def test_two_folders_or_none_in_a_zip(tmp_path: Path) -> None:
    assert "2 parts folders" in refused(tmp_path / "p.zip", zipped({"x/parts.toml": TEXT, "y/parts.toml": TEXT}))
    assert "no parts.toml" in refused(tmp_path / "p.zip", zipped({"a.stl": b""}))
    assert "no parts.toml" in refused(tmp_path / "p.zip", zipped({}))
    assert "not in the zip" in refused(tmp_path / "p.zip", zipped({"parts.toml": TEXT, "a.stl": MEMBERS["a.stl"]}))


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_damaged_zips_are_read_right_or_refused(tmp_path: Path, data: st.DataObject) -> None:
    content = bytearray(zipped(MEMBERS))
    if data.draw(st.booleans()):
        content = content[: data.draw(st.integers(0, len(content)))]
    for _ in range(data.draw(st.integers(0, 3))):
        if content:
            content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))
    (tmp_path / "p.zip").write_bytes(bytes(content))
    outcome = outcome_of(tmp_path / "p.zip")
    if isinstance(outcome, PartsError):
        assert "\n" not in str(outcome)
    else:
        assert len(outcome.scan_bodies) == 2


@given(st.text(max_size=30))
def test_safe_names_stay_inside(name: str) -> None:
    if why_unsafe(name) is None:
        with tempfile.TemporaryDirectory() as root:
            assert (Path(root) / name).resolve().is_relative_to(Path(root).resolve())


LINES = TEXT.splitlines()
VALUES = st.sampled_from(
    ["1", "-1", "1e400", "nan", "inf", '""', '"alder"', "[]", "{}", "[[]]", "true", "1979-05-27", "07:32:00",
     '"' + "x" * 600 + '"', "99999999999999999999", "{ above = 1.0 }", '"../a"', "'''\n\n'''", r'"\u0000"', "[1, [2]]"]
)  # fmt: skip
KEYS = st.sampled_from(
    [
        "id",
        "surface",
        "scan_region",
        "seats_on",
        "connection",
        "scan_body",
        "torque_ncm",
        '"\\n"',
        "a.b",
        '""',
        "play_deg",
    ]
)


@st.composite
def mutated(draw: st.DrawFn) -> str:
    """parts.toml with lines dropped, doubled, swapped, given other values, or characters changed."""
    lines = list(LINES)
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(lines) - 1))
        match draw(st.integers(0, 5)):
            case 0:
                lines[at : at + 1] = []
            case 1:
                lines.insert(at, lines[at])
            case 2:
                lines[at] = f"{lines[at].split('=')[0]} = {draw(VALUES)}"
            case 3:
                lines.insert(at, f"{draw(KEYS)} = {draw(VALUES)}")
            case 4:
                lines[at] = lines[at][: draw(st.integers(0, 10))] + draw(st.text(max_size=3)) + lines[at][-3:]
            case _:
                other = draw(st.integers(0, len(lines) - 1))
                lines[at], lines[other] = lines[other], lines[at]
        lines = lines or [""]
    return "\n".join(lines)


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(mutated())
def test_mutated_parts_toml_is_read_or_refused_in_one_line(tmp_path: Path, text: str) -> None:
    for name in ("a.stl", "b.stl"):
        if not (tmp_path / name).exists():
            (tmp_path / name).write_bytes(bytes(MEMBERS[name]))  # type: ignore[arg-type]
    (tmp_path / "parts.toml").write_bytes(text.encode("utf-8", "surrogatepass"))
    report = check_parts(tmp_path)
    for note in report.notes:
        assert "\n" not in note.line()
        assert note.what
        assert note.remedy
    outcome = outcome_of(tmp_path)
    if isinstance(outcome, PartsError):
        assert "\n" not in str(outcome)
        assert set(outcome.faults) == {note.line() for note in report.faults}
    else:
        assert report.usable


@pytest.mark.parametrize("letters", [300, 5000])
def test_a_name_of_thousands_of_letters_is_cut_in_its_message(tmp_path: Path, letters: int) -> None:
    text = toml({"tall": "alder"}).replace("tall.stl", "n" * letters + "/tall.stl")
    with pytest.raises(PartsError) as refusal:
        load_parts(write(tmp_path / "parts", text, {}))
    assert "\n" not in str(refusal.value)
    assert "tall.stl" in str(refusal.value)
    assert len(str(refusal.value)) < 500 + len(str(tmp_path))


@pytest.mark.parametrize("name", ["tall.obj", "tall.stl"])
def test_an_obj_is_refused_whatever_it_is_called(tmp_path: Path, name: str) -> None:
    """A parts folder holds STL or PLY; the same shape as STL is accepted."""
    body = post(flat())
    lines = [f"v {x!r} {y!r} {z!r}" for x, y, z in body.vertices.tolist()]
    lines += [f"f {a} {b} {c}" for a, b, c in (body.faces + 1).tolist()]
    text = toml({"tall": "alder"}).replace("tall.stl", name)
    with pytest.raises(PartsError, match=rf"{name}.*is OBJ by its content; a parts folder holds STL or PLY"):
        load_parts(write(tmp_path / "obj", text, {name: "\n".join(lines).encode()}))
    assert load_parts(write(tmp_path / "stl", toml({"tall": "alder"}), {"tall.stl": body})).scan_bodies
