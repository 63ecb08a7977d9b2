"""The bench of fused scans: its solids, depth maps and distances against closed forms, and the signs of its errors."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from bench.figures import share
from bench.fused.figures import accuracy, by_shape, scans
from bench.fused.judge import against, flat_um, least_squares, shown
from bench.fused.scene import Standing, draw, mouth
from bench.fused.solids import CAD_FACETS, EQUAL_TURNS, FAMILIES, REAL_FACETS, SHAPES, ball, parts_of, surface_of
from bench.fused.views import HALF, PIXEL, View, depth_map
from bench.fused.volume import Volume
from bench.judge import Json
from bench.method import Found
from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

HEIGHTS = {
    "hexpost": 8.2, "slimcone": 9.0, "puck": 3.6, "ballneck": 8.65, "trilobe": 7.2, "domed": 7.95, "holecyl": 8.6,
    "tower": 9.0, "upper": 9.0, "oblique": 8.01,
}  # fmt: skip
LEAN = rigid.pose(rigid.rotation_exp(np.array([0.2, -0.1, 0.7])), np.array([3.0, -2.0, 1.0]))


def volume_of(surface: Surface) -> float:
    """Signed, mm³: positive where faces are wound outward (divergence theorem)."""
    a = surface.vertices[surface.faces[:, 0]]
    return float(np.einsum("ij,ij->", a, surface.corner_products()) / 6.0)


@pytest.mark.parametrize("name", HEIGHTS)
def test_solids_are_closed_and_stand_on_their_platform(name: str) -> None:
    surface = surface_of(SHAPES[name](CAD_FACETS))
    edges = np.concatenate([surface.faces[:, [k, (k + 1) % 3]] for k in range(3)])
    assert {tuple(e) for e in edges.tolist()} == {(b, a) for a, b in edges.tolist()}  # each edge once either way
    assert len(np.unique(edges, axis=0)) == len(edges)
    assert surface.vertices[:, 2].min() == pytest.approx(0.0, abs=1e-9)
    assert surface.vertices[:, 2].max() == pytest.approx(HEIGHTS[name], abs=1e-9)


def test_solids_have_the_size_of_their_drawing() -> None:
    """Areas of r(θ) = a + b cos 3θ and of a square with round corners, over tapering prisms."""
    lobes = np.pi * (2.05**2 + 0.22**2 / 2.0) * 7.2 * (1.0 + 0.93 + 0.93**2) / 3.0
    square = (4.4**2 - (4.0 - np.pi) * 0.8**2) * 9.0 * (1.0 + 0.76 + 0.76**2) / 3.0
    cone = np.pi * 3.6 * (3.2**2 + 3.2 * 3.0 + 3.0**2) / 3.0
    assert volume_of(surface_of(SHAPES["trilobe"](REAL_FACETS))) == pytest.approx(lobes, rel=5e-4)
    assert volume_of(surface_of(SHAPES["tower"](REAL_FACETS))) == pytest.approx(square, rel=5e-4)
    assert 0.85 * cone < volume_of(surface_of(SHAPES["puck"](REAL_FACETS))) < cone


@pytest.mark.parametrize("name", HEIGHTS)
def test_a_shape_looks_the_same_at_no_other_turns_than_it_says(name: str) -> None:
    surface = surface_of(SHAPES[name](CAD_FACETS))
    tree = SurfaceTree.of(surface)
    for count in range(2, 7):
        turned = surface.moved(rigid.turn_z(2.0 * np.pi / count)).vertices
        same = np.abs(tree.closest(turned).distance).max() < 0.01
        assert same == (EQUAL_TURNS.get(name, 1) % count == 0)


def test_parts_of_every_family_can_be_measured() -> None:
    for family, names in FAMILIES.items():
        folder = parts_of(family)
        assert [body.id for body in folder.scan_bodies] == list(names)
        for body in folder.scan_bodies:
            assert folder.connection(body.seats_on).index_order == EQUAL_TURNS.get(body.id, 1)
    above = parts_of("hazel").scan_body("upper")
    assert above.region.vertices[:, 2].min() == pytest.approx(4.0)
    assert above.surface.vertices[:, 2].min() == pytest.approx(0.0)


def pixels(depth: FloatArray) -> tuple[FloatArray, FloatArray]:
    across = np.linspace(0.0, len(depth) - 1.0, len(depth)) * PIXEL - HALF
    return across[:, None], across[None]


def wide(normal: FloatArray, offset: float) -> FloatArray:
    """(2, 3, 3) corners of a square of 60 mm on the plane normal · x = offset, outward along the normal."""
    a = np.cross(normal, [0.3, 0.9, 0.1])
    a *= 30.0 / np.linalg.norm(a)
    b, middle = np.cross(normal, a), offset * normal
    corner = [middle - a - b, middle + a - b, middle + a + b, middle - a + b]
    return np.array([[corner[0], corner[1], corner[2]], [corner[0], corner[2], corner[3]]])


def looking(along: FloatArray) -> FloatArray:
    across = np.cross(along, [0.1, 0.2, 0.9])
    across /= np.linalg.norm(across)
    return np.stack([across, np.cross(along, across), along])


def unit(*v: float) -> FloatArray:
    return np.asarray(np.array(v) / np.linalg.norm(v))


def test_depth_of_a_plane() -> None:
    normal, axes, origin = unit(0.1, -0.2, 1.0), looking(unit(0.3, 0.1, -1.0)), np.array([1.0, 2.0, 0.5])
    depth, cosine = depth_map(wide(normal, 0.7), origin, axes)
    u, v = pixels(depth)
    expected = (0.7 - normal @ origin - u * (normal @ axes[0]) - v * (normal @ axes[1])) / (normal @ axes[2])
    assert np.allclose(depth, expected, atol=1e-9)
    assert np.allclose(cosine, -normal @ axes[2])


def test_depth_of_a_ball_before_a_plane() -> None:
    """The nearer of the two is seen; of the ball within twice what its facets cut off, over the cosine."""
    surface, axes = surface_of(ball(3.0, 256)), looking(unit(0.0, 0.6, -0.8))
    corners = np.concatenate([surface.vertices[surface.faces], wide(-axes[2], -5.0)])
    depth, _ = depth_map(corners, np.zeros(3), axes)
    u, v = pixels(depth)
    across = np.hypot(u, v)
    inside, outside = across < 2.5, across > 3.01
    assert np.allclose(depth[inside], -np.sqrt(9.0 - across[inside] ** 2), atol=2e-3)
    assert np.allclose(depth[outside], 5.0)


def view_of(normal: FloatArray, along: FloatArray, believed: FloatArray) -> View:
    """A view of the plane normal · x = 0.03 from 3 mm off, believed to be moved by `believed`."""
    axes, origin = looking(along), -3.0 * along
    depth, cosine = depth_map(wide(normal, 0.03), origin, axes)
    return View(depth, cosine, np.full(depth.shape, 0.7), origin + believed, axes)


@pytest.mark.parametrize("apart", [0.0, 0.02])
def test_the_fused_distance_of_a_plane_is_the_distance_to_it(apart: float) -> None:
    """Also where two equal views are believed to be apart along its normal: then to the middle of both."""
    normal = unit(0.2, -0.1, 1.0)
    volume = Volume.over(np.full(3, -1.0), np.full(3, 1.0), 0.1)
    for k, along in enumerate((unit(0.4, 0.2, -1.0), unit(-0.5, 0.1, -1.0))):
        volume.add(view_of(normal, along, (k - 0.5) * apart * normal))
    distance, known = volume.distances()
    place = np.stack(np.meshgrid(*[np.arange(n) * 0.1 - 1.0 for n in distance.shape], indexing="ij"), axis=-1)
    true = place @ normal - 0.03
    near = np.abs(true) < 0.08
    assert known[near].all()
    assert np.allclose(distance[near], true[near], atol=1e-6)
    assert np.allclose(distance[true > 0.4], 0.32)  # looked through
    assert not known[true < -0.3].any()  # nobody saw what lies behind


def test_what_lies_behind_a_surface_does_not_push_another_out() -> None:
    """A voxel just above a face, more than a voxel behind an edge seen by another view, keeps the face's distance."""
    behind = view_of(unit(0.0, 0.0, 1.0), unit(0.0, 0.0, -1.0), np.array([0.0, 0.0, 0.15]))
    face = view_of(unit(0.0, 0.0, 1.0), unit(0.0, 0.0, -1.0), np.zeros(3))
    for views in ((behind, face), (face, behind)):
        volume = Volume.over(np.full(3, -1.0), np.full(3, 1.0), 0.1)
        for view in views:
            volume.add(view)
        assert volume.distances()[0][10, 10, 10] == pytest.approx(-0.03, abs=1e-6)


def moved_scan(name: str, xi: FloatArray, um: float) -> tuple[Surface, Standing]:
    """A body scanned without noise, grown by `um`, where it would stand if it were off the truth by exp(ξ)."""
    fine = surface_of(SHAPES[name](REAL_FACETS).refine_to_length(0.2))
    fine = replace(fine, vertices=fine.vertices + 1e-3 * um * SurfaceTree.of(fine).closest(fine.vertices).gradient)
    return fine.moved(LEAN @ rigid.exp(xi)), Standing(name, LEAN)


def test_least_squares_find_the_motion_and_say_it_as_ours() -> None:
    xi = np.array([0.004, -0.003, 0.006, 3e-4, -2e-4, 1e-3])
    surface, site = moved_scan("hexpost", xi, 0.0)
    assert least_squares(shown(surface, site)) == pytest.approx(-xi, abs=1e-4)
    found = Found("hexpost", LEAN @ rigid.exp(xi), np.eye(6), (0.01, 0.01, 0.01))
    row = against(site, found)
    assert row["xi"] == pytest.approx(-xi)
    assert row["nees"] == pytest.approx(xi @ xi)


def test_equal_turns_are_the_same_place() -> None:
    turned = LEAN @ rigid.turn_z(2.0 * np.pi / 3.0)
    for name, off in (("trilobe", 0.0), ("hexpost", 120.0)):
        row = against(Standing(name, LEAN), Found(name, turned, np.eye(6), (0.01, 0.01, 0.01)))
        assert abs(row["turn_deg"]) == pytest.approx(off, abs=1e-9)


def test_planes_that_stand_out_are_seen_to() -> None:
    """Grown by 5 µm; at sharp edges vertices grow along no face's normal, and are left out."""
    surface, site = moved_scan("upper", np.zeros(6), 5.0)
    mean, sd = flat_um(shown(surface, site))
    assert mean == pytest.approx(5.0, abs=0.1)
    assert sd < 0.3


def test_a_mouth_is_fixed_by_its_seed() -> None:
    one, two, other = (mouth(draw(seed)) for seed in (6, 6, 7))
    assert np.array_equal(one.corners, two.corners)
    assert one.corners.shape != other.corners.shape
    assert [site.shape for site in one.sites] == list(draw(6).bodies)


def line(number: int, found: Json | None) -> Json:
    return {
        "seed": 1, "of": 2, "scene": f"1 site {number}", "body": "puck", "flat_um": [1.0, 4.0], "stray": 0,
        "least_squares": [0.003, 0.0, 0.0, 0.0, 0.0, 0.0], "found": found,
    }  # fmt: skip


def test_tables_count_what_is_missing_and_what_is_beyond_its_bound() -> None:
    off: Json = {
        "scan_body": "puck", "right_part": True, "flags": ["added material", "undecided"], "turn_deg": 0.0,
        "xi": [0.0, 0.0, 0.012, 0.0, 0.0, 0.0], "u95": [0.01, 0.01, 0.01], "nees": 12.0,
    }  # fmt: skip
    turned = {**off, "flags": ["index ambiguous"], "turn_deg": 120.0, "xi": [0.0, 0.005, 0.0, 0.0, 0.0, 2.1]}
    lines = [line(1, off), line(2, turned), line(3, None)]
    assert scans(lines).rows[0][:5] == ("1", "2 of 3", "0", "0 + 0", "0 + 1")
    rows = {row[0]: row[1:] for row in accuracy(lines).rows}
    assert rows["sites"] == ("2", "1", "2")
    assert rows["platform, rms, µm"] == ("9.2", "12.0", "3.0")  # √((12² + 5²) / 2)
    assert rows["along the axis, mean, µm"][1] == "+12.0 ± 0.0"
    assert rows["u95 holds the platform"][:2] == (share(1, 2), share(0, 1))
    assert rows["u95 holds the turn"][:2] == (share(1, 2), share(1, 1))
    assert rows["NEES/6, mean; median"][1] == "2.00; 2.00"
    assert rows["findings"][1] == "added material 1"
    assert rows["verdicts"][:2] == ("undecided 1, use 1", "undecided 1")
    assert by_shape([line(1, None)]).rows[0][1:3] == ("0 of 1", "–")
