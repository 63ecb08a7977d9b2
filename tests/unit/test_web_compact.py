"""The small form of a surface: what it shows is the surface, within what it says, and much smaller."""

from __future__ import annotations

import gzip
from pathlib import Path

import numpy as np
import pytest

from stylobate.app.web import compact, scene
from stylobate.app.web.compact import Compactor, compact_geometry, unpacked
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray
from tests.doors.handmade import grid_faces

ORIGIN = np.array([40.0, -30.0, 1200.0])


def wavy(rows: int, columns: int) -> tuple[FloatArray, IntArray]:
    """A wavy sheet of 30 by 20 mm."""
    x, y = np.meshgrid(np.linspace(-15, 15, rows), np.linspace(-10, 10, columns), indexing="ij")
    z = np.sin(0.7 * x) * np.cos(0.9 * y)
    return np.stack([x, y, z], axis=-1).reshape(-1, 3), grid_faces(rows, columns)


def restored(content: bytes) -> tuple[dict[str, float], FloatArray, IntArray]:
    """As the browser takes it apart: header, vertices in scan coordinates, faces."""
    header, arrays = unpacked(gzip.decompress(content))
    vertices = arrays["position"] * header["step"] + np.array(header["origin"])
    return header, vertices, np.cumsum(arrays["index"].ravel()).astype(np.int32).reshape(-1, 3)


def same_triangles(one: FloatArray, two: FloatArray) -> bool:
    """Whether (n, 3, 3) triangles are the same, whatever their order and first corner, to 1 µm."""

    def key(corners: FloatArray) -> FloatArray:
        middle = np.concatenate(
            [corners.mean(axis=1), np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])], axis=1
        )
        return np.sort(np.round(middle, 2), axis=0)

    return bool(np.allclose(key(one), key(two), atol=0.011))


def test_a_small_surface_keeps_every_triangle() -> None:
    vertices, faces = wavy(60, 40)
    content, small = compact_geometry(scene.packed_geometry(vertices, faces, ORIGIN))
    header, found, kept = restored(content)
    assert header["triangles"] == header["of"] == len(faces)
    assert np.abs(found - (vertices + ORIGIN)).max() <= 0.51 * header["step"] + 1e-6
    assert header["step"] <= 30.0 / compact.STEPS + 1e-9
    assert same_triangles(found[kept], (vertices + ORIGIN)[faces])
    assert np.array_equal(small.index, np.arange(len(vertices)))


def test_a_large_surface_becomes_coarse_and_stays_where_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(compact, "ALL", 10_000)
    vertices, faces = wavy(400, 300)
    plain = scene.packed_geometry(vertices, faces, ORIGIN)
    content, _ = compact_geometry(plain)
    header, found, kept = restored(content)
    assert header["of"] == len(faces)
    assert header["triangles"] == len(kept) < 0.3 * len(faces)
    assert len(content) < 0.1 * len(plain)
    tree = SurfaceTree.of(Surface(vertices, faces))
    off = np.abs(tree.closest(found - ORIGIN).distance)
    assert off.max() < compact.CELL, "within a cell of the scan"
    assert np.sqrt((off**2).mean()) < 0.02


def test_deviations_and_sites_go_with_the_vertices(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(compact, "ALL", 1)
    vertices, faces = wavy(200, 150)
    deviation = (3.0 * vertices[:, 0]).astype(np.float32)
    deviation[vertices[:, 1] > 2.0] = np.nan
    painted = scene.Painted(vertices, faces, ORIGIN, deviation, np.where(np.isnan(deviation), 0, 2).astype(np.uint8))
    (tmp_path / "scan-a").write_bytes(scene.packed_geometry(vertices, faces, ORIGIN))
    (tmp_path / "paint-7-scan-a").write_bytes(scene.packed_paint(painted, scene.proxy(vertices, faces)))
    made = Compactor(tmp_path)
    paint, geometry = made.made("paint-7-scan-a-compact"), made.made("scan-a-compact")
    assert paint is not None
    assert geometry is not None
    _, arrays = unpacked(gzip.decompress(paint))
    _, found, _ = restored(geometry)
    known = arrays["deviation"] != compact.UNKNOWN
    local = found - ORIGIN
    assert np.array_equal(known, arrays["site"] == 2)
    assert not known[local[:, 1] > 2.0 + compact.CELL].any()
    assert known[local[:, 1] < 2.0 - compact.CELL].all()
    off = compact.DEVIATION_STEP_UM * arrays["deviation"][known] - 3.0 * local[known, 0]
    assert np.abs(off).max() < 3.0 * compact.CELL
    assert made.made("scan-b-compact") is None
    assert made.made("body-a-compact") is None
