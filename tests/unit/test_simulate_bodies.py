"""Invented bodies: closed, outward, fine enough, and told from their own turns; the demo parts folder."""

from __future__ import annotations

import tomllib
from pathlib import Path

import numpy as np
import pytest

from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import OutputError
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.simulate import (
    FAMILIES,
    Settings,
    demo_bodies,
    demo_parts,
    draw_bodies,
    draw_body,
    near_twins,
    scene,
    solids,
    write,
)
from stylobate.simulate.files import stl_bytes


def turned(points: FloatArray, degrees: float) -> FloatArray:
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return np.asarray(points @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]))


def sampled(surface: Surface, count: int = 4000) -> FloatArray:
    rng = np.random.default_rng(0)
    area = surface.face_areas()
    face = rng.choice(len(area), count, p=area / area.sum())
    share = rng.dirichlet(np.ones(3), count)
    return np.asarray(np.einsum("ij,ijk->ik", share, surface.vertices[surface.faces[face]]))


@pytest.mark.parametrize("family", FAMILIES)
def test_bodies_are_closed_outward_and_of_the_stated_size(family: str) -> None:
    for seed in range(6):
        surface = draw_body(np.random.default_rng(seed), "b", "alder", family).surface
        faces = surface.faces.astype(np.int64)
        ends = np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]])
        assert {tuple(e) for e in ends.tolist()} == {(b, a) for a, b in ends.tolist()}
        volume = np.einsum("ij,ij->", surface.vertices[faces[:, 0]], surface.corner_products()) / 6.0
        assert volume > 20.0
        low, high = surface.vertices.min(axis=0), surface.vertices.max(axis=0)
        assert low[2] == pytest.approx(0.0, abs=1e-9)
        assert 4.5 < high[2] <= 11.0
        assert 2.8 < np.ptp(surface.vertices[:, :2], axis=0).min() < 6.9


@pytest.mark.parametrize("family", FAMILIES)
def test_indexed_bodies_break_every_turn(family: str) -> None:
    """Turned by any multiple of 30°, some of the surface is off by more than 0.1 mm."""
    for seed in range(4):
        surface = draw_body(np.random.default_rng(seed), "b", "alder", family).surface
        tree, points = SurfaceTree.of(surface), sampled(surface)
        for degrees in range(30, 360, 30):
            off = np.abs(tree.closest(turned(points, degrees)).distance)
            assert off.max() > 0.1, degrees


def test_without_index_a_round_family_turns_onto_itself() -> None:
    surface = draw_body(np.random.default_rng(1), "b", "alder", "flatted-cylinder", indexed=False).surface
    off = np.abs(SurfaceTree.of(surface).closest(turned(sampled(surface), 37.0)).distance)
    assert off.max() < 2e-3


@pytest.mark.parametrize("radius", [0.9, 1.6, 2.75])
def test_chord_error(radius: float) -> None:
    surface = solids.surface_of(solids.cylinder(radius, 0.0, 5.0))
    points = sampled(surface)
    wall = (points[:, 2] > 0.01) & (points[:, 2] < 4.99)
    error = radius - np.linalg.norm(points[wall][:, :2], axis=1)
    assert error.min() > -1e-9
    assert error.max() < 2e-3


def test_chord_error_of_a_ball() -> None:
    points = sampled(solids.surface_of(solids.ball(2.5, 0.0)), 20_000)
    assert np.abs(np.linalg.norm(points, axis=1) - 2.5).max() < 2e-3


def test_draws_differ_and_repeat() -> None:
    first, second, other = draw_bodies(1, 12), draw_bodies(1, 12), draw_bodies(2, 12)
    assert [b.sha256 for b in first] == [b.sha256 for b in second]
    assert not {b.sha256 for b in first} & {b.sha256 for b in other}
    assert len({b.sha256 for b in first}) == 12


def test_near_twins_differ_as_stated() -> None:
    thin, thick, low = near_twins()
    assert np.linalg.norm(thin.surface.vertices[:, :2], axis=1).max() == pytest.approx(2.4, abs=1e-6)
    assert np.linalg.norm(thick.surface.vertices[:, :2], axis=1).max() == pytest.approx(2.475, abs=1e-6)
    on_flat = [b.surface.vertices[np.abs(b.surface.vertices[:, 0] - 1.8) < 1e-6][:, 2].min() for b in (thin, low)]
    assert on_flat[0] - on_flat[1] == pytest.approx(0.8)


def test_demo_parts_folder(tmp_path: Path) -> None:
    demo_parts(tmp_path / "parts")
    values = tomllib.loads((tmp_path / "parts" / "parts.toml").read_text())
    assert values["licence"] == "CC0-1.0"
    assert len(values["scan_body"]) == 6
    assert {c["id"] for c in values["connection"]} == {part["seats_on"] for part in values["scan_body"]}
    for kind in ("scan_body", "multi_unit_abutment", "titanium_base", "analog"):
        for part in values[kind]:
            content = (tmp_path / "parts" / part["surface"]).read_bytes()
            assert len(content) == 84 + 50 * int.from_bytes(content[80:84], "little")
    for body, entry in zip(demo_bodies(), values["scan_body"], strict=True):
        assert body.id == entry["id"]
        assert stl_bytes(body.surface) == (tmp_path / "parts" / entry["surface"]).read_bytes()


def test_write_keeps_what_stood_there_when_it_fails(tmp_path: Path) -> None:
    made = scene(Settings(arch="single", bodies=0, edge_mm=0.4), ())
    write(made, tmp_path / "case")
    before = (tmp_path / "case" / "truth.json").read_bytes()
    (tmp_path / "file").write_text("x")
    with pytest.raises(OutputError, match="file") as caught:
        write(made, tmp_path / "file")
    assert "\n" not in str(caught.value)
    write(made, tmp_path / "case", form="ply")
    assert {p.name for p in (tmp_path / "case").iterdir()} == {"scan.ply", "truth.json"}
    assert (tmp_path / "case" / "truth.json").read_bytes() == before
