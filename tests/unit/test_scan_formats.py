"""Every variant of every format is read whole, and a file cut anywhere is never read as a smaller mesh in silence."""

from __future__ import annotations

import gzip
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuzz.writers import FORMATS, Variant, fan, write
from stylobate.core.errors import ScanError
from stylobate.scan import read_mesh, read_scan, read_surface

POINTS = np.array([[0.0, 0.0, 0.0], [40.5, 0.25, 1e-3], [41.0, 30.0, -2.5], [-1.0, 33.0, 7.0], [20.0, 15.0, 12.125]])
POLYGONS = [[0, 1, 4], [1, 2, 4], [2, 3, 4], [3, 0, 4], [3, 2, 1, 0]]
COLOURS = np.array([[0, 128, 255], [1, 2, 3], [255, 255, 255], [0, 0, 0], [200, 100, 50]], dtype=np.uint8)
WITH_COLOURS = ("ply-ascii", "ply-little", "ply-big", "obj")


def stated(points: np.ndarray, polygons: list[list[int]], variant: Variant) -> np.ndarray:
    """(m, 3, 3) the triangles that have an area, at the precision that the variant writes."""
    single = variant.kind == "stl-binary" or (
        variant.kind in ("ply-little", "ply-big") and variant.coordinate in ("float", "float32")
    )
    kept = points.astype(np.float32).astype(np.float64) if single else points
    corners = np.array([kept[list(t)] for p in polygons for t in fan(p)]).reshape(-1, 3, 3)
    areas = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    return corners[np.any(areas != 0.0, axis=1)]


@pytest.mark.parametrize("packed", [False, True])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("kind", FORMATS)
def test_reads_what_was_written(kind: str, line_end: str, packed: bool) -> None:
    variant = Variant(kind, "double", "uchar", line_end=line_end, packed=packed)
    data = write(POINTS, POLYGONS, variant, COLOURS if kind in WITH_COLOURS else None)
    surface = read_surface(data, "arch")
    np.testing.assert_array_equal(surface.vertices[surface.faces], stated(POINTS, POLYGONS, variant))
    assert len(surface.vertices) == len(POINTS)
    assert surface.faces.dtype == np.int32
    assert surface.vertices.dtype == np.float64
    if kind in WITH_COLOURS:
        assert surface.colours is not None
        order = [int(np.flatnonzero(np.all(v == POINTS, axis=1))[0]) for v in surface.vertices]
        np.testing.assert_array_equal(surface.colours, COLOURS[order])
    else:
        assert surface.colours is None


@pytest.mark.parametrize("order", ["ply-little", "ply-big", "ply-ascii"])
@pytest.mark.parametrize("count", ["char", "uchar", "short", "ushort", "int", "uint", "int8", "uint16", "int32"])
@pytest.mark.parametrize("index", ["char", "uchar", "short", "ushort", "int", "uint", "uint8", "int16", "uint32"])
def test_ply_lists_of_any_whole_numbers(order: str, count: str, index: str) -> None:
    data = write(POINTS, POLYGONS, Variant(order, "float64", count=count, index=index, extra=True))
    surface = read_surface(data, "arch")
    np.testing.assert_array_equal(surface.vertices[surface.faces], stated(POINTS, POLYGONS, Variant(order, "double")))


@pytest.mark.parametrize("shade", ["uchar", "float", "double"])
@pytest.mark.parametrize("order", ["ply-little", "ply-big", "ply-ascii"])
def test_ply_colours_survive_as_bytes_and_as_reals(order: str, shade: str) -> None:
    surface = read_surface(write(POINTS, POLYGONS, Variant(order, shade=shade), COLOURS), "arch")
    assert surface.colours is not None
    np.testing.assert_array_equal(surface.colours, COLOURS)


def test_obj_with_negative_indices_slashes_and_joined_lines() -> None:
    plain = read_surface(write(POINTS, POLYGONS, Variant("obj")), "arch")
    odd = read_surface(write(POINTS, POLYGONS, Variant("obj", extra=True, negative=True)), "arch")
    np.testing.assert_array_equal(plain.vertices[plain.faces], odd.vertices[odd.faces])


@pytest.mark.parametrize("kind", FORMATS)
def test_minus_zero_is_zero(kind: str) -> None:
    points = np.array([[0.0, 0, 0], [10, 0, 0], [0, 10, 0], [-0.0, -0.0, 0], [-10, 0, 0]])
    surface = read_surface(write(points, [[0, 1, 2], [3, 2, 4]], Variant(kind)), "arch")
    assert len(surface.vertices) == 4


variants = st.builds(
    Variant,
    st.sampled_from(FORMATS),
    st.sampled_from(["float", "double"]),
    st.sampled_from(["", "uchar"]),
    st.sampled_from(["uchar", "ushort", "int"]),
    st.sampled_from(["uchar", "short", "uint"]),
    st.booleans(),
    st.booleans(),
    st.sampled_from(["\n", "\r\n", "\r"]),
    st.booleans(),
)
coordinates = st.floats(-9000, 9000, width=32)


@st.composite
def meshes(draw: st.DrawFn) -> tuple[np.ndarray, list[list[int]]]:
    points = np.array(draw(st.lists(st.tuples(coordinates, coordinates, coordinates), min_size=3, max_size=9)))
    corner = st.integers(0, len(points) - 1)
    return points, draw(st.lists(st.lists(corner, min_size=3, max_size=5), min_size=1, max_size=9))


@settings(max_examples=300, deadline=None)
@given(meshes(), variants)
def test_random_meshes_come_back_triangle_for_triangle(
    mesh: tuple[np.ndarray, list[list[int]]], variant: Variant
) -> None:
    points, polygons = mesh
    expected = stated(points, polygons, variant)
    data = write(points, polygons, variant)
    if not len(expected):
        with pytest.raises(ScanError, match="has an area"):
            read_surface(data, "arch")
        return
    surface = read_surface(data, "arch")
    np.testing.assert_array_equal(surface.vertices[surface.faces], expected)
    assert set(np.unique(surface.faces)) == set(range(len(surface.vertices)))


@pytest.mark.parametrize("packed", [False, True])
@pytest.mark.parametrize("kind", FORMATS)
@pytest.mark.parametrize("extra", [False, True])
def test_a_file_cut_anywhere_is_never_smaller_in_silence(kind: str, extra: bool, packed: bool) -> None:
    """OBJ states no count, so a cut at a line's end cannot be seen in it; every other cut is refused or warned of."""
    variant = Variant(kind, "double", "uchar", extra=extra, packed=packed)
    data = write(POINTS, POLYGONS, variant, COLOURS if kind in WITH_COLOURS else None)
    whole = read_mesh(data, "arch")
    blind, refused = 0, []
    for length in range(len(data)):
        try:
            mesh = read_mesh(data[:length], "arch")
        except ScanError as refusal:
            refused.append(str(refusal))
            continue
        same = np.array_equal(
            mesh.surface.vertices[mesh.surface.faces], whole.surface.vertices[whole.surface.faces]
        )  # fmt: skip
        between_solids = kind == "stl-ascii" and extra and data[:length].count(b"endsolid") == 1
        at_line_end = kind == "obj" and data[length - 1 : length] == b"\n"
        blind += at_line_end or (between_solids and not mesh.warnings)
        assert same or mesh.warnings or at_line_end or between_solids
    assert not (packed and blind)
    assert all(line.isprintable() for line in refused)


def test_sha256_is_of_the_file_as_stored(tmp_path: Path) -> None:
    import hashlib

    for packed in (False, True):
        data = write(POINTS, POLYGONS, Variant("ply-big", packed=packed))
        (tmp_path / "arch.ply").write_bytes(data)
        assert read_scan(tmp_path / "arch.ply").sha256 == hashlib.sha256(data).hexdigest()


@pytest.mark.parametrize("kind", ["stl-binary", "ply-little", "ply-big"])
def test_far_from_the_origin_nothing_is_lost_beyond_the_file(kind: str, tmp_path: Path) -> None:
    points = POINTS + [4321.0, -8765.0, 2500.0]
    path = tmp_path / "arch.mesh"
    path.write_bytes(write(points, POLYGONS, Variant(kind)))
    scan = read_scan(path)
    np.testing.assert_array_equal(scan.origin, np.rint(scan.origin))
    assert np.abs(scan.surface.vertices).max() < 25.0
    exact = stated(points, POLYGONS, Variant(kind))
    np.testing.assert_array_equal(scan.surface.vertices[scan.surface.faces] + scan.origin, exact)
    assert any("from the origin" in line and "0.98 µm" in line for line in scan.warnings)


def test_several_gzip_members_and_zero_padding_are_one_file() -> None:
    data = write(POINTS, POLYGONS, Variant("stl-binary"))
    packed = gzip.compress(data[:100]) + gzip.compress(data[100:]) + bytes(512)
    assert len(read_surface(packed, "arch").faces) == 6


def test_double_coordinates_thousands_of_millimetres_away_lose_nothing(tmp_path: Path) -> None:
    """A PLY of doubles 5,000 mm from the origin: what is read is what was written, to the last bit there."""
    rng = np.random.default_rng(3)
    vertices = rng.uniform(-20.0, 20.0, (300, 3)) + [5000.0, -5000.0, 5000.0]
    faces = rng.permutation(300).reshape(100, 3).astype(np.int32)
    rows = np.zeros(100, np.dtype([("count", "u1"), ("corners", "<i4", 3)]))
    rows["count"], rows["corners"] = 3, faces
    head = "ply\nformat binary_little_endian 1.0\nelement vertex 300\n"
    head += "".join(f"property double {axis}\n" for axis in "xyz")
    head += "element face 100\nproperty list uchar int vertex_indices\nend_header\n"
    path = tmp_path / "far.ply"
    path.write_bytes(head.encode() + vertices.astype("<f8").tobytes() + rows.tobytes())
    scan = read_scan(path)
    got = (scan.surface.vertices + scan.origin)[scan.surface.faces]
    assert np.abs(got - vertices[faces]).max() <= np.spacing(5020.0)
    assert np.abs(scan.surface.vertices).max() < 30.0
