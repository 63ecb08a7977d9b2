"""Warnings, merging of corners, decimals, and what is dropped."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from fuzz.writers import FORMATS, Variant, write
from stylobate.core.errors import ScanError
from stylobate.scan import checks, merge_corners, read_mesh, read_scan, source
from stylobate.scan.numerals import read_number

POINTS = np.array([[0.0, 0, 0], [60, 0, 0], [0, 40, 0], [0, 0, 20]])
FACES = [[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]]


def warnings_of(points: np.ndarray, folder: Path, kind: str = "stl-binary", name: str = "arch.stl") -> str:
    path = folder / name
    path.write_bytes(write(points, FACES, Variant(kind)))
    return "\n".join(read_scan(path).warnings)


@pytest.mark.parametrize(
    ("scale", "expected"),
    [
        (1e-3, "metres"),
        (1 / 25.4, "inches"),
        (0.1, None),
        (1.0, None),
        (4.0, None),
        (10.0, "more than any mouth"),
        (1e3, "micrometres"),
    ],
)
def test_units_by_the_extent(scale: float, expected: str | None, tmp_path: Path) -> None:
    found = warnings_of(POINTS * scale, tmp_path)
    assert (expected in found) if expected else (found == "")


def test_far_from_the_origin_says_what_32_bits_lose(tmp_path: Path) -> None:
    assert "from the origin" not in warnings_of(POINTS + 300.0, tmp_path)
    assert "step by 0.24 µm" in warnings_of(POINTS + [3000.0, 0, 0], tmp_path)
    assert "it would step by 0.24 µm" in warnings_of(POINTS + [3000.0, 0, 0], tmp_path, "obj", "arch.obj")


def test_the_content_decides_and_a_wrong_name_is_told(tmp_path: Path) -> None:
    for kind in FORMATS:
        usual = {"obj": ".obj"}.get(kind, "." + kind[:3])
        for suffix in (".stl", ".ply", ".obj", ".dat"):
            found = warnings_of(POINTS, tmp_path, kind, "arch" + suffix)
            assert ("by its content" in found) == (suffix != usual), (kind, suffix)
        assert warnings_of(POINTS, tmp_path, kind, "arch") == ""


def test_what_is_left_out_is_counted() -> None:
    points = np.vstack([POINTS, [[30, 0, 0], [5, 5, 5]]])
    faces = [*FACES, [0, 0, 1], [0, 4, 1]]
    mesh = read_mesh(write(points, faces, Variant("ply-little")), "arch.ply")
    assert len(mesh.surface.faces) == 4
    assert len(mesh.surface.vertices) == 4
    assert [line.split(": ")[1].split(" that")[0] for line in mesh.warnings] == [
        "2 faces without an area were left out; the surface is the same without them",
        "2 points",
    ]


def test_trailing_bytes_shorter_than_a_record_are_told() -> None:
    for kind in ("stl-binary", "ply-big"):
        data = write(POINTS, FACES, Variant(kind))
        assert "3 bytes after" in read_mesh(data + b"end", "arch").warnings[0]
        with pytest.raises(ScanError):
            read_mesh(data + bytes(60), "arch")


def test_unknown_words_of_obj_are_told() -> None:
    data = write(POINTS, FACES, Variant("obj")) + b"vc 1 2 3\n"
    assert "'vc' in line 12" in read_mesh(data, "arch.obj").warnings[0]


points32 = st.floats(width=32, allow_nan=False, allow_infinity=False)


odd = st.sampled_from([0.0, -0.0, 1.0, 1.0 + 2**-23, -1.0, 2.0**-140])


@pytest.mark.parametrize("kind", [np.float32, np.float64])
@settings(max_examples=200, deadline=None)
@given(rows=st.lists(st.tuples(*[odd | points32] * 3), min_size=1, max_size=40))
def test_merging_agrees_with_a_sort(kind: type, rows: list[tuple[float, float, float]]) -> None:
    corners: npt.NDArray[np.floating[Any]] = np.array(rows, dtype=kind)
    vertices, index, first = merge_corners(corners)
    np.testing.assert_array_equal(vertices[index], corners)
    np.testing.assert_array_equal(vertices, corners[first])
    assert len(vertices) == len(np.unique(corners + 0.0, axis=0))
    assert np.all(np.diff(first) > 0)
    assert not np.any(np.signbit(vertices) & (vertices == 0))


def test_merging_many_points_lets_its_table_grow() -> None:
    rng = np.random.default_rng(5)
    corners = rng.integers(0, 40, (200_000, 3)).astype(np.float32)
    vertices, index, _ = merge_corners(corners)
    assert len(vertices) == len(np.unique(corners, axis=0))
    np.testing.assert_array_equal(vertices[index], corners)
    apart = rng.permutation(90_000).reshape(-1, 3).astype(np.float64)
    vertices, index, first = merge_corners(apart)
    np.testing.assert_array_equal(vertices, apart)
    np.testing.assert_array_equal(index, first)
    soup = write(apart[:9000], [[k, k + 1, k + 2] for k in range(0, 9000, 3)], Variant("stl-binary"))
    assert len(read_mesh(soup, "arch").surface.vertices) == 9000


def read(text: str) -> float:
    value, after = read_number(np.frombuffer(text.encode(), dtype=np.uint8), 0)
    assert after == len(text)
    return float(value)


def off_by(text: str) -> float:
    exact = float(text)
    return abs(read(text) - exact) / float(np.spacing(abs(exact)))


@settings(max_examples=2000, deadline=None)
@given(st.floats(1e-40, 1e40), st.sampled_from(["r", ".17e", ".6f", ".8g", ".25e", ".40f"]), st.booleans())
@example(1.7976931348623157e38, "r", True)
@example(9007199254740993.0, ".25e", False)
def test_decimals_are_within_one_unit_in_the_last_place(value: float, form: str, negative: bool) -> None:
    text = repr(value) if form == "r" else format(value, form)
    if float(text):
        assert off_by("-" * negative + text) <= 1.0


@settings(max_examples=2000, deadline=None)
@given(st.floats(-1e9, 1e9).filter(lambda v: abs(v) > 1e-30))
def test_the_shortest_decimal_of_a_coordinate_reads_back_exactly(value: float) -> None:
    assert read(repr(value)) == value


@pytest.mark.parametrize(
    "text", ["", "+", ".", "-.", "e5", "1e", "1e+", "nan", "inf", "0x10", "1,5", "1_0", "1e400", "--1", "1\0"]
)
def test_what_is_no_decimal(text: str) -> None:
    assert read_number(np.frombuffer(text.encode(), dtype=np.uint8), 0)[1] == -1


ODD = {"+1.": 1.0, ".5": 0.5, "1d2": 100.0, "1E-2": 0.01, "-0": 0.0, "00012": 12.0, "0" * 50 + "7e-1": 0.7}


@pytest.mark.parametrize(("text", "value"), ODD.items())
def test_odd_decimals(text: str, value: float) -> None:
    assert read(text) == value


def test_the_page_on_scans_states_the_limits_of_the_code() -> None:
    page = (Path(__file__).parents[2] / "docs" / "use" / "scans.md").read_text(encoding="utf-8")
    for words in (
        f"less than {checks.METRES_BELOW:g} ",
        f"{checks.METRES_BELOW:g} to {checks.INCHES_BELOW:g} ",
        f"more than {checks.LARGE_ABOVE:g} mm",
        f"more than {checks.MICROMETRES_ABOVE:g} ",
        f"{checks.FAR_MM:g} mm or more",
        f"step by {np.spacing(np.float32(checks.FAR_MM)) * 1e3:.2f} µm",
        f"beyond {checks.MAX_COORDINATE:.0e} mm",
        f"{source.GZIP_RATIO} times its size (beyond {source.GZIP_FREE_BYTES >> 20} MiB)",
        f"more than {source.MAX_BYTES >> 30} GiB",
    ):
        assert words in page
