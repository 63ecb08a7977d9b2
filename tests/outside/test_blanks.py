"""Blanks of custom abutments, judged by a second library (trimesh), closed forms and the surface they follow."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
import trimesh
from scipy.spatial import cKDTree

from stylobate.build.blank import Form, blank, blank_on, seat_of
from stylobate.build.emergence import azimuths, given, measured
from stylobate.build.model import PlacedSite
from stylobate.build.placing import place
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts import PartsFolder, load_parts
from stylobate.parts.features import fit_plane
from stylobate.report.folder import staging
from stylobate.report.structure import save_structure
from stylobate.scan import read_surface
from stylobate.several.seating.rest import rests
from stylobate.simulate import demo_parts
from tests.unit.placing_making import leaning_pose, random_pose, record, site


@pytest.fixture(scope="module")
def parts(tmp_path_factory: pytest.TempPathFactory) -> PartsFolder:
    folder = tmp_path_factory.mktemp("blank") / "parts"
    demo_parts(folder)
    return load_parts(folder)


def opening(angle: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Radius and height of the margin over the platform, uneven around the axis, mm."""
    return 3.6 + 0.5 * np.cos(angle) + 0.2 * np.sin(2 * angle), 3.2 + 0.6 * np.cos(angle - 1.0)


def gingiva(noise: float = 0.0, tooth: bool = False) -> Surface:
    """Around a connection in its own frame: a straight wall from radius 2.3 at 0.8 mm up to the margin, level beyond.

    tooth: on one side the surface rises to 10 mm beside the margin.
    """
    angle = np.linspace(0.0, 2.0 * np.pi, 250, endpoint=False) + 0.003
    radius, height = opening(angle)
    wall = np.linspace(0.0, 1.0, 40)[:, None]
    out = np.linspace(0.0, 1.0, 40)[1:, None]
    r = np.concatenate([2.3 + wall * (radius - 2.3), radius + out * (12.0 - radius)])
    z = np.concatenate([0.8 + wall * (height - 0.8), height - 0.1 * out * (12.0 - radius)])
    if tooth:
        z = z + np.where((np.abs(angle) < 0.4) & (r > radius + 0.05), 3.0 * (r - radius), 0.0)
    z = z + noise * np.random.default_rng(1).standard_normal(z.shape)
    vertices = np.stack([r * np.cos(angle), r * np.sin(angle), z], axis=-1).reshape(-1, 3)
    rings, count = r.shape
    k = np.arange(rings * count).reshape(rings, count)
    after = np.roll(k, -1, axis=1)
    a, b, c, d = (part.ravel() for part in (k[:-1], k[1:], after[1:], after[:-1]))
    return Surface(vertices, np.concatenate([np.column_stack([a, b, c]), np.column_stack([a, c, d])]).astype(np.int32))


def placed_on(parts: PartsFolder, stands: FloatArray, chain: str, aim: str | None = None) -> PlacedSite:
    return place(record(site("1", stands)), parts, [f"1={chain}"], [aim] if aim else []).sites[0]


@pytest.mark.parametrize(("noise", "tooth"), [(0.0, False), (0.02, False), (0.0, True)])
def test_the_margin_is_where_the_wall_ends(noise: float, tooth: bool) -> None:
    found = measured(gingiva(noise, tooth), np.eye(4), 2.2, "1")
    radius, height = opening(azimuths())
    free = np.abs((azimuths() + np.pi) % (2 * np.pi) - np.pi) > 0.5 if tooth else np.ones(len(radius), np.bool_)
    assert np.abs(found.heights[-1] - height)[free].max() < 0.06 + 4 * noise
    assert np.abs(found.radii[-1] - radius)[free].max() < 0.06 + 4 * noise
    on_wall = 2.3 + (found.heights - 0.8) / (height - 0.8) * (radius - 2.3)
    shown = found.heights > 0.9
    assert np.abs(found.radii - on_wall)[shown & free].max() < 0.03 + 4 * noise


@pytest.mark.parametrize("seed", range(2))
@pytest.mark.parametrize("chain", ["alder-base-10", "alder-mu-0-15"])
def test_blanks_on_random_sites(chain: str, seed: int, parts: PartsFolder, tmp_path: Path) -> None:
    rng = np.random.default_rng(seed)
    stands = random_pose(rng, 30.0, rng.uniform(-100.0, 100.0, 3))
    axis = stands[:3, 2]
    placed = placed_on(parts, stands, chain, "--aim={:.6f},{:.6f},{:.6f}".format(*axis).removeprefix("--aim="))
    seat = seat_of(placed)
    tissue = gingiva(0.01).moved(stands)
    form = Form(clearance=float(rng.uniform(0.0, 0.06)), channel=float(rng.uniform(2.0, 2.6)))
    made = blank_on(placed, seat, measured(tissue, seat.stands, seat.rim, "1"), form)
    with staging(tmp_path) as area:
        (fitted,) = save_structure(made, {}, area)
    mesh = trimesh.load(tmp_path / "blank.stl")
    assert isinstance(mesh, trimesh.Trimesh)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    assert mesh.body_count == 1
    assert mesh.volume == pytest.approx(made.volume, rel=1e-5)
    rest = rests(fitted.scan_from_connection[None, None], seat.frame[None, None], np.array([2.0 * seat.rim]))
    assert rest.gap.max() * 1e3 < 2.0
    assert rest.side.max() * 1e3 < 2.0
    surface = read_surface(tmp_path / "blank.stl")
    local = surface.moved(inverse(seat.stands)).vertices
    low = fit_plane(local[(np.abs(local[:, 2]) < 0.01)])
    assert local[:, 2].min() == pytest.approx(0.0, abs=2e-4)
    assert abs(low.point[2]) * 1e3 < 0.2
    assert np.hypot(*local[np.abs(local[:, 2]) < 1e-3][:, :2].T).max() == pytest.approx(seat.rim, abs=1e-3)
    follows(surface, tissue, seat.stands)
    assert made.wall_mm is not None
    assert wall_by_rays(mesh, seat.stands) == pytest.approx(made.wall_mm, abs=0.05)


def follows(surface: Surface, tissue: Surface, stands: FloatArray) -> None:
    """From above the seat to below the margin the blank's outside lies in the gingiva's surface."""
    local = surface.moved(inverse(stands)).vertices
    wall = tissue.moved(inverse(stands))
    outside = local[(local[:, 2] > 0.6) & (local[:, 2] < 0.9) & (np.hypot(*local[:, :2].T) > 2.35)]
    assert len(outside) > 100
    assert np.abs(SurfaceTree.of(wall).closest(outside, 1.0).distance).max() < 0.06


def wall_by_rays(mesh: trimesh.Trimesh, stands: FloatArray) -> float:
    """Least distance between the outside and the inside of a blank more than 0.5 mm above its seat, by many points."""
    points, faces = trimesh.sample.sample_surface(mesh, 60_000, seed=1)
    local = (points - stands[:3, 3]) @ stands[:3, :3]
    normal = mesh.face_normals[faces] @ stands[:3, :3]
    out = np.einsum("ij,ij->i", normal[:, :2], local[:, :2])
    ceiling = (normal[:, 2] < -0.95) & (np.hypot(local[:, 0], local[:, 1]) < 1.8)
    outer = local[(out > 0.0) & ~ceiling & (np.abs(normal[:, 2]) < 0.95) & (local[:, 2] > 0.5)]
    inner = local[(out < 0.0) & (np.hypot(local[:, 0], local[:, 1]) < 2.0) | ceiling]
    return float(cKDTree(inner).query(outer)[0].min())


def test_a_given_emergence_is_a_round_solid_of_known_volume(parts: PartsFolder) -> None:
    """Frusta, less the head of the abutment (a cone, radius 1.9, 1.2 mm high, sides at 20°), less the channel above."""
    placed = placed_on(parts, leaning_pose(10.0, 30.0), "alder-mu-0-15", "0.1504,0.0868,0.9848")
    seat = seat_of(placed)
    made = blank_on(placed, seat, given("1:6,3:7", seat.height, seat.rim), Form(channel=2.0, clearance=0.0, height=6.0))

    def frustum(low: float, high: float, height: float) -> float:
        return float(np.pi * height * (low**2 + low * high + high**2) / 3.0)

    top = 1.9 - 1.2 * np.tan(np.radians(20.0))
    solid = frustum(2.4, 3.0, 1.0) + frustum(3.0, 3.5, 2.0) + np.pi * 3.5**2 * 3.0
    hollow = frustum(1.9, top, 1.2) + np.pi * 1.0**2 * (6.0 - 1.2)
    assert made.volume == pytest.approx(solid - hollow, rel=1e-3)
    assert made.wall_mm == pytest.approx(2.4 + 0.6 * 0.5 - (1.9 - 0.5 * np.tan(np.radians(20.0))), abs=0.1)


@pytest.mark.parametrize(
    ("emergence", "form", "words"),
    [
        ("2:5", Form(wall=2.0), r"site 1: .* mm of wall are left"),
        ("2:5", Form(height=3.0), "--height 3: write"),
        ("2:5", Form(channel=4.6), "of wall are left"),
        ("2:4", Form(), "4.50 mm wide"),
        ("2:5,1.5:6", Form(), "must rise"),
        ("1.1:7", Form(), "flares"),
        ("2;5", Form(), "HEIGHT:DIAMETER"),
        ("2:nan", Form(), "HEIGHT:DIAMETER"),
    ],
)
def test_what_leaves_no_wall_or_is_no_emergence_is_refused(
    emergence: str, form: Form, words: str, parts: PartsFolder
) -> None:
    with pytest.raises((UsageError, FitError), match=words) as caught:
        blank(record(site("1", np.eye(4))), parts, ["1=alder-base-10"], emergence=emergence, form=form)
    assert "\n" not in str(caught.value)


def test_gingiva_that_shows_no_margin_or_too_narrow_a_one_is_refused() -> None:
    low = gingiva()
    with pytest.raises(FitError, match=r"--tissue: .* in 0 of 180"):
        measured(Surface(low.vertices - [0.0, 0.0, 6.0], low.faces), np.eye(4), 2.2, "1")
    with pytest.raises(FitError, match=r"site 1: the part below is wider \(3\.40 mm"):
        measured(low, np.eye(4), 3.4, "1")


def test_one_site_and_one_source_are_asked_for(parts: PartsFolder) -> None:
    two = record(site("1", np.eye(4)), site("2", leaning_pose(5.0, 0.0, at=np.array([9.0, 0.0, 0.0]))))
    with pytest.raises(UsageError, match="one site"):
        blank(two, parts, emergence="2:5")
    with pytest.raises(UsageError, match="--tissue SCAN or --emergence"):
        blank(two, parts, ["1=alder-base-10"])
    with pytest.raises(UsageError, match="--clearance -1"):
        blank(two, parts, ["1=alder-base-10"], emergence="2:5", form=Form(clearance=-1.0))


def test_the_command_says_what_it_made(parts: PartsFolder, tmp_path: Path) -> None:
    from stylobate.report.document import document
    from stylobate.report.meshes import stl_bytes
    from tests.doors.handmade import measurement
    from tests.doors.running import refused, run

    demo_parts(tmp_path / "parts")
    values = document(measurement(1)[0], maps=False)
    (tmp_path / "result.json").write_text(json.dumps(values))
    stands = np.array(values["sites"][0]["scan_from_connection"])
    (tmp_path / "gingiva.stl").write_bytes(stl_bytes(gingiva().moved(stands), "gingiva"))
    arguments = ("structure", "blank", tmp_path, "--parts", tmp_path / "parts", "--site", "1=alder-base-10")
    done = run(*arguments, "--tissue", tmp_path / "gingiva.stl", "--out", tmp_path / "blank")
    assert (done.returncode, done.stderr) == (0, "")
    assert "watertight as written" in done.stdout
    assert "wall around what is hollow: at least" in done.stdout
    values = json.loads((tmp_path / "blank" / "structure.json").read_text())
    assert values["kind"] == "blank"
    assert values["least_wall_mm"] >= 0.4
    refused(run(*arguments, "--out", tmp_path / "no"), "--tissue SCAN or --emergence")
    assert not (tmp_path / "no").exists()
