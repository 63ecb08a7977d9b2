"""Bars and master models, judged by a second library (trimesh) and by how a frame would rest on what was written."""

from __future__ import annotations

import json
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
import trimesh

from stylobate.build.bar import Section, bar
from stylobate.build.footing import Footing
from stylobate.build.master import master_model
from stylobate.build.model import PlacedSite, Placement
from stylobate.build.placing import place
from stylobate.build.refit import Interface, Structure, refit
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import FitError, StylobateError, UsageError
from stylobate.core.rigid import exp, inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts import PartsFolder, load_parts
from stylobate.parts.features import fit_plane
from stylobate.report.folder import staging
from stylobate.report.structure import checked, save_structure
from stylobate.scan import read_surface
from stylobate.several.seating.rest import rests
from stylobate.simulate import demo_parts
from tests.unit.placing_making import leaning_pose, random_pose, record, site


@pytest.fixture(scope="module")
def parts(tmp_path_factory: pytest.TempPathFactory) -> PartsFolder:
    demo_parts(tmp_path_factory.mktemp("case") / "parts")
    return load_parts(tmp_path_factory.getbasetemp() / "case0" / "parts")


PLACES = [np.array([0.0, 0.0, 0.0]), np.array([16.0, 3.0, 0.5]), np.array([30.0, 14.0, -0.5])]
POSES = [leaning_pose(8.0, 200.0 * k, 37.0 * k, at=place_) for k, place_ in enumerate(PLACES)]


@pytest.fixture(scope="module")
def placement(parts: PartsFolder) -> Placement:
    sites = [site(str(k), pose) for k, pose in enumerate(POSES)]
    return place(record(*sites), parts, ["0=alder-mu-16-25", "1=alder-mu-0-15,alder-mu-base", "2=alder-base-25"])


def written(structure: Structure, folder: Path) -> tuple[Path, trimesh.Trimesh]:
    with staging(folder) as area:
        save_structure(structure, {}, area)
    path = folder / f"{structure.kind}.stl"
    mesh = trimesh.load(path)
    assert isinstance(mesh, trimesh.Trimesh)
    return path, mesh


def test_a_bar_is_watertight_has_its_section_and_rests_without_a_gap(placement: Placement, tmp_path: Path) -> None:
    section = Section(3.5, 4.5, 4.0, 2.0)
    made = bar(placement, section)
    path, mesh = written(made, tmp_path)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    assert mesh.volume == pytest.approx(made.volume, rel=1e-5)
    assert_sections(mesh, placement, section)
    document = json.loads((tmp_path / "structure.json").read_text())
    assert_rests(np.array([entry["scan_from_connection"] for entry in document["interfaces"]]), placement)
    surface = read_surface(path)
    implants = [s.upper.scan_from_connection for s in placement.sites]
    rims = [s.upper.connection.platform_diameter for s in placement.sites]
    surface = read_surface(path)
    for stands, rim in zip(implants, rims, strict=True):
        local = surface.moved(inverse(stands))
        on = (np.abs(local.vertices[:, 2]) < 0.02) & (np.hypot(*local.vertices[:, :2].T) < rim / 2.0 + 0.01)
        seat = fit_plane(local.vertices[on])
        assert abs(seat.point[2]) * 1e3 < 0.1
        assert np.degrees(np.hypot(*seat.direction[:2])) < 1e-3


CHAINS = ["alder-mu-0-15", "alder-mu-16-25", "alder-mu-28-35", "alder-mu-0-15,alder-mu-base", "alder-base-25"]


def random_case(seed: int, parts: PartsFolder) -> tuple[Placement, Section]:
    """Two to six sites around an arch anywhere within 100 mm of the origin, leaning up to 30°, any parts and sizes."""
    rng = np.random.default_rng(seed)
    count = int(rng.integers(2, 7))
    along = np.sort(rng.choice(np.linspace(0.3, 2.8, 6), count, replace=False))
    shift = rng.uniform(-100.0, 100.0, 3)
    centres = np.column_stack([22.0 * np.cos(along), 24.0 * np.sin(along), rng.uniform(-1.5, 1.5, count)]) + shift
    sites = [site(str(k), random_pose(rng, 30.0, centre)) for k, centre in enumerate(centres)]
    wishes = [f"{k}={rng.choice(CHAINS)}" for k in range(count)]
    height = float(rng.uniform(2.5, 6.0))
    sizes = rng.uniform([2.5, 0.5, 1.8], [6.0, 2.5, 2.8])
    return place(record(*sites), parts, wishes), Section(
        float(sizes[0]), height, height / 2.0 + float(sizes[1]), float(sizes[2])
    )


@pytest.mark.parametrize("seed", range(4))
def test_bars_over_random_leaning_sites(seed: int, parts: PartsFolder, tmp_path: Path) -> None:
    placement, section = random_case(seed, parts)
    made = bar(placement, section)
    _, mesh = written(made, tmp_path)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    assert mesh.volume == pytest.approx(made.volume, rel=1e-5)
    if not any("half way" in line for line in made.warnings):
        assert_sections(mesh, placement, section)
    document = json.loads((tmp_path / "structure.json").read_text())
    frame = np.array([entry["scan_from_connection"] for entry in document["interfaces"]])
    assert_rests(frame, placement)
    tree = SurfaceTree.of(read_surface(tmp_path / "bar.stl"))
    for placed in placement.sites:
        bitten = any(line.startswith(f"site {placed.site}: ") for line in made.warnings)
        assert bitten or seat_seen(tree, placed, section) == 1.0


def seat_seen(tree: SurfaceTree, placed: PlacedSite, section: Section) -> float:
    """Share of the ring around the demo abutments' heads (radius 1.9), or around a channel, that is in the file."""
    lean = np.cos(np.radians(placed.channel.lean_deg))
    inner = 1.9 if placed.upper.connection.id == "alder-mu" else section.channel / 2.0 / lean
    radius = np.linspace(inner + 0.02, placed.upper.connection.platform_diameter / 2.0 - 0.02, 4)
    angle = np.linspace(0.0, 2.0 * np.pi, 90)
    ring = np.stack([np.outer(np.cos(angle), radius), np.outer(np.sin(angle), radius), np.zeros((90, 4))], axis=-1)
    stands = placed.upper.scan_from_connection
    away = tree.closest(ring.reshape(-1, 3) @ stands[:3, :3].T + stands[:3, 3], 0.1).distance
    return float(np.mean(np.abs(away) < 1e-4))


def assert_rests(frame: FloatArray, placement: Placement) -> None:
    """A frame with these seats, (n, 4, 4), rests on the uppermost connections without a gap of 2 µm."""
    implants = np.array([s.upper.scan_from_connection for s in placement.sites])
    rims = np.array([s.upper.connection.platform_diameter for s in placement.sites])
    rest = rests(frame[None], implants[None], rims)
    assert rest.gap.max() * 1e3 < 2.0
    assert rest.side.max() * 1e3 < 2.0


def assert_sections(mesh: trimesh.Trimesh, placement: Placement, section: Section) -> None:
    """Half way between sites the bar has the section asked for."""
    tops = [s.upper.scan_from_connection for s in placement.sites]
    knots = [top[:3, 3] + section.rise * top[:3, 2] for top in tops]
    for one, two in pairwise(knots):
        cut = mesh.section(plane_origin=(one + two) / 2.0, plane_normal=two - one)
        assert cut is not None
        outline = min(cut.discrete, key=lambda line: np.linalg.norm(line.mean(axis=0) - (one + two) / 2.0))
        around = np.asarray(outline) - (one + two) / 2.0
        area = np.linalg.norm(np.cross(around[:-1], around[1:]).sum(axis=0)) / 2.0
        assert area == pytest.approx(section.width * section.height, rel=1e-5)


def scan_height(x: float, y: float) -> float:
    return float(2.0 + 1.5 * np.sin(x / 9.0) * np.cos(y / 7.0))


def hill(side: int = 90, hole: bool = False) -> Surface:
    """An open scan: a smooth hill of 60 × 60 mm, on request with a hole and a pinched rim."""
    x, y = np.meshgrid(np.linspace(-15, 45, side), np.linspace(-25, 35, side), indexing="ij")
    z = 2.0 + 1.5 * np.sin(x / 9.0) * np.cos(y / 7.0)
    k = np.arange(side * side).reshape(side, side)
    a, b, c, d = (part.ravel() for part in (k[:-1, :-1], k[1:, :-1], k[1:, 1:], k[:-1, 1:]))
    faces = np.concatenate([np.column_stack([a, b, c]), np.column_stack([a, c, d])]).astype(np.int32)
    if hole:
        middle = np.stack([x, y, z], axis=-1).reshape(-1, 3)[faces].mean(axis=1)
        gone = (np.hypot(middle[:, 0] - 8, middle[:, 1] + 12) < 2.0) | (np.hypot(middle[:, 0] + 15, middle[:, 1]) < 4.0)
        gone[np.random.default_rng(0).choice(len(faces), 60, replace=False)] = True
        faces = faces[~gone]
    return Surface(np.stack([x, y, z], axis=-1).reshape(-1, 3), faces)


def test_a_master_model_is_watertight_and_its_sockets_are_where_they_should(parts: PartsFolder, tmp_path: Path) -> None:
    """Out of a scan with a hole, a bitten rim and faces gone here and there."""
    feet = [Footing(site(str(k), pose)) for k, pose in enumerate(POSES)]
    made = master_model(hill(hole=True), feet, parts, clearance=0.05, base=3.0)
    path, mesh = written(made, tmp_path)
    assert mesh.is_watertight
    assert mesh.body_count == 1
    assert mesh.volume == pytest.approx(made.volume, rel=1e-5)
    surface = read_surface(path)
    up = np.sum([pose[:3, 2] for pose in POSES], axis=0) / np.linalg.norm(np.sum([p[:3, 2] for p in POSES], axis=0))
    low = min(float((pose[:3, 3] - 12.0 * pose[:3, 2]) @ up) for pose in POSES)
    assert float((surface.vertices @ up).min()) < low - 3.0
    for pose in POSES:
        local = surface.moved(inverse(pose))
        floor = local.vertices[
            (np.abs(local.vertices[:, 2] + 12.0) < 0.02) & (np.hypot(*local.vertices[:, :2].T) < 2.0)
        ]
        assert np.abs(floor[:, 2] + 12.0).max() * 1e3 < 0.2
        wall = float(np.hypot(*floor[:, :2].T).max())
        assert wall == pytest.approx(2.1 * 0.8 + 0.05, abs=6e-4)
    kept = np.linalg.norm(mesh.vertices - [-12.0, 30.0, scan_height(-12.0, 30.0)], axis=1)
    assert (
        abs(float(mesh.vertices[int(np.argmin(kept)), 2]) - scan_height(*mesh.vertices[int(np.argmin(kept)), :2]))
        < 1e-3
    )


def test_the_check_of_what_was_written_sees_a_moved_seat_and_a_hole(placement: Placement) -> None:
    made = bar(placement, Section())
    one = made.interfaces[1]
    for shift_um in (1.5, 3.0):
        motion = exp(np.array([0.6e-3 * shift_um, 0.0, 0.8e-3 * shift_um, 0.0, 0.0, 0.0]))
        away = Interface(one.site, one.scan_from_connection @ motion, one.surface, one.low, one.high)
        if shift_um < 2.0:
            assert refit(made.surface, away).shift_um == pytest.approx(shift_um, abs=0.02)
        else:
            with pytest.raises(FitError, match=r"site 1: its interface is 3\.0 µm off"):
                refit(made.surface, away)
    from stylobate.report.meshes import stl_bytes

    holed = Surface(made.surface.vertices, made.surface.faces[1:])
    with pytest.raises(FitError, match="not watertight"):
        checked(made, stl_bytes(holed, ""), "bar.stl")


@pytest.mark.parametrize(
    ("section", "words"),
    [
        (Section(width=0.1), "--width 0.1"),
        (Section(height=float("nan")), "--height nan"),
        (Section(rise=2.0), "--rise 2"),
        (Section(channel=4.2), "--channel-diameter 4.2: site 2"),
    ],
)
def test_sizes_that_leave_no_seat_are_refused(section: Section, words: str, placement: Placement) -> None:
    with pytest.raises(UsageError, match=words) as caught:
        bar(placement, section)
    assert "\n" not in str(caught.value)


def test_a_model_that_cannot_be_is_refused(parts: PartsFolder) -> None:
    foot = Footing(site("1", POSES[0]))
    closed = trimesh.creation.icosphere(3, 10.0)
    sphere = Surface(np.array(closed.vertices), np.array(closed.faces, np.int32))
    inside_out = Surface(hill().vertices, hill().faces[:, ::-1])
    other = Footing(site("1", POSES[0], "alder-mu", 0))
    for scan, feet, clearance, words in (
        (sphere, foot, 0.03, "closed already"),
        (inside_out, foot, 0.03, "outwards"),
        (hill(), foot, 0.9, "--clearance 0.9"),
        (hill(), other, 0.03, "no analog for 'alder-mu'"),
    ):
        with pytest.raises(StylobateError, match=words):
            master_model(scan, [feet], parts, clearance)
