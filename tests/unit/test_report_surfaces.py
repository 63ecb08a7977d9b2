"""Coloured surfaces and their colours, read back by another program."""

from __future__ import annotations

import io

import numpy as np
import pytest
import trimesh
from trimesh.visual import ColorVisuals

from stylobate.core.result import Finding, SiteMap
from stylobate.core.types import FloatArray
from stylobate.report.colours import NO_VALUE, RANGE_UM, colours, table
from stylobate.report.surfaces import ply_bytes, ringed
from tests.doors.handmade import measurement


@pytest.fixture(scope="module")
def site_map() -> SiteMap:
    found = measurement(1)[0].sites[0].map
    assert found is not None
    return found


def luminance(rgb: FloatArray) -> FloatArray:
    """CIE L* of sRGB colours (n, 3) 0 to 255 (IEC 61966-2-1, CIE 15)."""
    linear = np.where(rgb / 255 <= 0.04045, rgb / 255 / 12.92, ((rgb / 255 + 0.055) / 1.055) ** 2.4)
    y = linear @ np.array([0.2126, 0.7152, 0.0722])
    return np.asarray(np.where(y > 216 / 24389, 116 * np.cbrt(y) - 16, y * 24389 / 27))


def test_ends_middle_and_unknown() -> None:
    painted = colours(np.array([-1e9, -RANGE_UM, 0.0, RANGE_UM, 1e9, np.nan]))
    assert painted.dtype == np.uint8
    assert np.array_equal(painted[[0, 1, 3, 4]], table()[[0, 0, 255, 255]])
    assert painted[2].min() > 220
    assert tuple(painted[5]) == NO_VALUE


def test_blue_is_inside_and_red_is_outside() -> None:
    red, _, blue = colours(np.array([-30.0, 30.0])).astype(int).T
    assert blue[0] > red[0] + 80
    assert red[1] > blue[1] + 80


def test_lightness_rises_to_the_middle_and_falls_the_same_on_either_side() -> None:
    lightness = luminance(table().astype(float))
    assert (np.diff(lightness[:120]) > 0).all()
    assert (np.diff(lightness[136:]) < 0).all()
    assert np.abs(lightness - lightness[::-1]).max() < 3.0
    assert np.abs(np.diff(lightness, 2)[:110]).max() < 1.0  # even steps: no band that is not in the data


def test_grey_is_no_colour_of_the_map() -> None:
    assert np.abs(table().astype(int) - np.array(NO_VALUE)).max(axis=1).min() > 30


def test_another_program_reads_the_same_surface(site_map: SiteMap) -> None:
    mesh = trimesh.load_mesh(io.BytesIO(ply_bytes(site_map)), file_type="ply", process=False)
    assert np.array_equal(mesh.vertices, site_map.vertices)
    assert np.array_equal(mesh.faces, site_map.faces)
    assert isinstance(mesh.visual, ColorVisuals)
    assert np.array_equal(mesh.visual.vertex_colors[:, :3], colours(site_map.deviation_um))
    read = mesh.metadata["_ply_raw"]["vertex"]["data"]["deviation_um"].ravel()
    assert np.array_equal(read, site_map.deviation_um.astype(np.float32), equal_nan=True)
    assert np.isnan(read).any()


def test_the_file_says_what_its_numbers_are(site_map: SiteMap) -> None:
    head = ply_bytes(site_map, ("site 1:\nalder – tall",)).split(b"end_header\n")[0].decode("ascii")
    assert "comment site 1: alder ? tall\n" in head
    assert f"-{RANGE_UM:g} um to red +{RANGE_UM:g} um" in head
    assert "micrometres, positive outside" in head


def test_a_ring_marks_where_material_is_lost() -> None:
    flat = np.stack(
        [
            *np.meshgrid(np.arange(-2, 2.01, 0.05), np.arange(-2, 2.01, 0.05)),
        ],
        axis=-1,
    ).reshape(-1, 2)
    vertices = np.column_stack([flat, np.zeros(len(flat))])
    lost = Finding("lost material", "", 80.0, where=(0.5, 0.0, 0.0), area_mm2=1.0)
    on = ringed(vertices, [lost, Finding("added layer", "", 30.0)])
    distance = np.linalg.norm(vertices[on] - [0.5, 0.0, 0.0], axis=1)
    assert on.sum() > 50
    assert np.allclose(distance, 1.3 * np.sqrt(1.0 / np.pi), atol=0.07)
    assert not ringed(vertices, []).any()
