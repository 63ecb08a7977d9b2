"""What is kept on disk for the next process: the same arrays, or made anew, never something else."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from stylobate.core import shelf
from stylobate.core.closest import SurfaceTree
from stylobate.core.recent import Recent
from stylobate.find import template
from stylobate.simulate import draw_bodies

SOURCE = (np.arange(6.0).reshape(2, 3),)
MADE = [np.arange(5, dtype=np.int32), np.array([[np.nan, 1.5]]), np.zeros((0, 3))]


class Maker:
    """Counts how often something is made."""

    def __init__(self) -> None:
        self.times = 0

    def __call__(self) -> list[shelf.Array]:
        self.times += 1
        return MADE


@pytest.fixture(autouse=True)
def _home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))


def stored(tmp_path: Path) -> list[Path]:
    return sorted((tmp_path / "stylobate" / "made").iterdir())


def same(some: object, others: object) -> bool:
    pairs = list(zip(some, others, strict=True))  # type: ignore[call-overload]
    return all(a.dtype == b.dtype and np.array_equal(a, b, equal_nan=a.dtype.kind == "f") for a, b in pairs)


def test_made_once_and_the_same_after() -> None:
    make = Maker()
    for _ in range(3):
        found = shelf.kept("thing", SOURCE, (), make)
        assert same(found, MADE)
        assert all(array.flags.writeable and array.flags.c_contiguous for array in found)
    assert make.times == 1


def test_other_content_other_code_other_kind_are_made_anew(tmp_path: Path) -> None:
    make, code = Maker(), tmp_path / "code.py"
    code.write_text("1")
    other = tmp_path / "other.py"
    other.write_text("2")
    shelf.kept("thing", SOURCE, (str(code),), make)
    shelf.kept("thing", (SOURCE[0] + 1e-12,), (str(code),), make)
    shelf.kept("thing", (SOURCE[0].T,), (str(code),), make)
    shelf.kept("thing", SOURCE, (str(other),), make)
    shelf.kept("another", SOURCE, (str(code),), make)
    assert make.times == 5


@pytest.mark.parametrize("keep", [0, 3, 100, -1])
def test_a_file_cut_short_is_as_good_as_none(tmp_path: Path, keep: int) -> None:
    make = Maker()
    shelf.kept("thing", SOURCE, (), make)
    (file,) = stored(tmp_path)
    file.write_bytes(file.read_bytes()[:keep])
    assert same(shelf.kept("thing", SOURCE, (), make), MADE)
    assert make.times == 2
    assert same(shelf.kept("thing", SOURCE, (), make), MADE)
    assert make.times == 2


def test_a_changed_byte_is_seen(tmp_path: Path) -> None:
    make = Maker()
    shelf.kept("thing", SOURCE, (), make)
    (file,) = stored(tmp_path)
    content = bytearray(file.read_bytes())
    content[130] ^= 1
    file.write_bytes(content)
    assert same(shelf.kept("thing", SOURCE, (), make), MADE)
    assert make.times == 2


def test_a_place_that_cannot_be_written_costs_only_time(tmp_path: Path) -> None:
    (tmp_path / "stylobate").write_text("in the way")
    make = Maker()
    for _ in range(2):
        assert same(shelf.kept("thing", SOURCE, (), make), MADE)
    assert make.times == 2


def test_the_oldest_go(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shelf.kept("thing", SOURCE, (), Maker())
    (file,) = stored(tmp_path)
    monkeypatch.setattr(shelf, "MOST_BYTES", 3 * file.stat().st_size + 1)
    for k in range(1, 6):
        shelf.kept("thing", (SOURCE[0] + k,), (), Maker())
        assert len(stored(tmp_path)) == min(k + 1, 3)
    for k, times in ((5, 0), (4, 0), (3, 0), (2, 1)):
        again = Maker()
        shelf.kept("thing", (SOURCE[0] + k,), (), again)
        assert again.times == times


def test_a_scan_body_prepared_and_recalled_is_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (body,) = draw_bodies(91, 1)
    points = np.random.default_rng(0).normal(0.0, 3.0, (2000, 3))
    answers, templates = [], []
    for _ in range(2):
        closest = SurfaceTree.of(body.region, lasting=True).closest(points, 1.0)
        answers.append([closest.distance, closest.gradient, closest.face, closest.on_boundary])
        monkeypatch.setattr(template, "_known", Recent(1))
        templates.append(template.template_of(body).arrays())
    assert {file.name.split("-")[0] for file in stored(tmp_path)} == {"cells", "template"}
    assert same(*answers)
    assert same(*templates)
    plain = SurfaceTree.of(body.region).closest(points, 1.0)
    assert same(answers[0], [plain.distance, plain.gradient, plain.face, plain.on_boundary])
