"""Tissue, room, walls, collisions, carried uncertainty and what lies below, each against a closed form."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.build.around import astray, tissue_around, unmet
from stylobate.build.carried import upper_of
from stylobate.build.footing import Footing
from stylobate.build.model import Tissue
from stylobate.build.placing import place
from stylobate.build.request import Step
from stylobate.build.ways import ways_of
from stylobate.core.errors import UsageError
from stylobate.core.rigid import exp, inverse, log
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import Connection
from tests.unit.placing_making import (
    abutment,
    base,
    block,
    demo_folder,
    folder,
    leaning_pose,
    random_pose,
    record,
    site,
)  # fmt: skip


def plane(height: float, slope_x: float = 0.0, half: float = 30.0) -> Surface:
    """z = height + slope_x · x, facing up, in two triangles."""
    corners = np.array([[-half, -half], [half, -half], [half, half], [-half, half]])
    z = height + slope_x * corners[:, 0]
    return Surface(np.column_stack([corners, z]), np.array([[0, 1, 2], [0, 2, 3]], np.int32))


def turned_profile(radii: FloatArray, heights: FloatArray, hole: bool = False) -> Surface:
    """Surface of revolution r → z, facing up; open in the middle where `hole`."""
    count = 180
    angle = np.arange(count) * 2.0 * np.pi / count
    rings = [
        np.column_stack([r * np.cos(angle), r * np.sin(angle), np.full(count, z)])
        for r, z in zip(radii, heights, strict=True)
    ]
    k, after = np.arange(count), (np.arange(count) + 1) % count
    faces = []
    for ring in range(len(radii) - 1):
        a, b = ring * count, (ring + 1) * count
        faces += [np.column_stack([a + k, b + k, b + after]), np.column_stack([a + k, b + after, a + after])]
    vertices = np.concatenate(rings)
    if not hole:
        vertices = np.concatenate([vertices, [[0.0, 0.0, heights[0]]]])
        faces.append(np.column_stack([k, after, np.full(count, len(vertices) - 1)]))
    return Surface(vertices, np.concatenate(faces).astype(np.int32))


def scan(surface: Surface) -> Scan:
    return Scan(surface, np.zeros(3), "made.stl", "00" * 32)


def test_tissue_over_a_slope_is_the_plane_at_the_rim() -> None:
    stands = random_pose(np.random.default_rng(1), at=np.array([3.0, -40.0, 900.0]))
    tissue = tissue_around(plane(2.5, 0.3).moved(stands), stands, 4.0)
    angle = np.arange(8) * np.pi / 4
    assert tissue.heights_mm == pytest.approx((2.5 + 0.3 * 2.0 * np.cos(angle)).tolist(), abs=1e-9)
    assert tissue.least == pytest.approx(1.9)
    assert tissue.greatest == pytest.approx(3.1)


def test_an_open_socket_is_measured_to_its_margin() -> None:
    """Floor at 0.2 mm, a wall from the rim at 2.0 to 3.0 mm up at radius 2.6, then nearly level."""
    socket = turned_profile(np.array([1.9, 2.6, 8.0]), np.array([0.2, 3.0, 3.2]))
    assert tissue_around(socket, np.eye(4), 4.0).heights_mm == pytest.approx([3.0] * 8, abs=0.03)


def test_a_hole_over_the_rim_is_bridged_and_a_wide_one_shows_nothing() -> None:
    near = turned_profile(np.array([2.6, 8.0]), np.array([1.5, 1.5]), hole=True)
    assert tissue_around(near, np.eye(4), 4.0).heights_mm == pytest.approx([1.5] * 8, abs=1e-6)
    wide = turned_profile(np.array([4.0, 8.0]), np.array([1.5, 1.5]), hole=True)
    assert tissue_around(wide, np.eye(4), 4.0).least is None


def test_tissue_in_another_frame_is_refused_or_asked_about() -> None:
    fine, low, none = (Tissue((value,) * 8) for value in (1.5, -4.7, None))
    assert astray({"1": fine, "2": fine, "3": low, "4": none}) == ()
    (asked,) = astray({"1": fine, "2": low, "3": none})
    assert "at site 2, 3: is it in the coordinates of the scan?" in asked
    with pytest.raises(UsageError, match=r"nothing around any platform.*--join"):
        astray({"1": none, "2": none})
    assert astray({}) == ()


def test_an_opposing_jaw_that_no_channel_meets_is_asked_about() -> None:
    assert unmet([None, 8.0]) == ()
    (asked,) = unmet([None, None])
    assert "no channel meets the opposing surface" in asked
    low = Scan(plane(-5.0), np.zeros(3), "low", "")
    assert asked in place(record(site("1", np.eye(4))), demo_folder(), opposing=low).warnings
    over = Scan(plane(9.0), np.zeros(3), "over", "")
    assert asked not in place(record(site("1", np.eye(4))), demo_folder(), opposing=over).warnings


def test_room_along_a_leaning_channel() -> None:
    """To a plane 9 mm over the platform along a channel 20° off: 9 / cos 20°."""
    aim = leaning_pose(20.0, 30.0)[:3, 2]
    result, parts = record(site("1", np.eye(4))), demo_folder()
    placed = place(result, parts, ["1=base-tilt"], [",".join(map(str, aim))], opposing=scan(plane(9.0)))
    assert placed.sites[0].room_mm == pytest.approx(9.0 / np.cos(np.radians(20.0)), abs=1e-9)
    assert not placed.sites[0].notes
    low = place(result, parts, ["1=base-tilt"], opposing=scan(plane(4.0)))
    assert "base-tilt is 5.0 mm high; the room is 4.0 mm" in low.sites[0].notes
    away = place(result, parts, ["1=base-tilt"], opposing=scan(plane(-9.0)))
    assert away.sites[0].room_mm is None
    assert "the channel meets no opposing surface" in away.sites[0].notes


def test_planned_teeth_give_the_aim_the_exit_and_the_wall() -> None:
    """A round tooth of radius 4 about x = 1, level top at 8: aim to (1, 0, 8); the wall is thinnest at the collar."""
    tooth = turned_profile(np.array([0.5, 4.0, 4.0]), np.array([8.0, 8.0, 0.5]))
    tooth = Surface(tooth.vertices + [1.0, 0.0, 0.0], tooth.faces)
    placement = place(record(site("1", np.eye(4))), demo_folder(), ["1=base-tilt"], teeth=scan(tooth))
    (placed,) = placement.sites
    assert placed.aim == pytest.approx(np.array([1.0, 0.0, 8.0]) / np.sqrt(65.0), abs=1e-6)
    out = placed.channel.exit
    assert out is not None
    assert out.point is not None
    assert out.point == pytest.approx([1.0, 0.0, 8.0], abs=1e-6)
    assert out.from_middle_mm == pytest.approx(0.0, abs=1e-6)
    lean = np.arctan(1.0 / 8.0)
    centre = np.sin(lean)  # of the channel at the collar, 1 mm along it
    across = (4.0 - (1.0 - centre)) / np.cos(lean)  # to the near wall, at a right angle to the channel
    assert out.wall_mm == pytest.approx(across - 2.5 / 2.0, abs=2e-3)
    straight = place(record(site("1", np.eye(4))), demo_folder(), ["1=base-straight"], ["0,0,1"], teeth=scan(tooth))
    out = straight.sites[0].channel.exit
    assert out is not None
    assert out.from_middle_mm == pytest.approx(1.0, abs=1e-6)
    assert out.wall_mm == pytest.approx(3.0 - 1.25, abs=2e-3)


@pytest.mark.parametrize(("apart", "clearance"), [(3.4, 0.4), (3.0, 0.0), (2.6, -0.4), (5.0, None)])
def test_clearance_of_two_square_bases(apart: float, clearance: float | None) -> None:
    """Blocks 3 mm wide side by side."""
    parts = folder((), (base("base", "alder"),), {"alder": 6})
    sites = [site(str(k), leaning_pose(0.0, 0.0, at=np.array([apart * k, 0.0, 0.0]))) for k in (0, 1)]
    near = place(record(*sites), parts).near
    assert [one.clearance_mm for one in near] == ([] if clearance is None else [pytest.approx(clearance, abs=1e-9)])


def test_a_bonding_surface_in_a_neighbour_is_named() -> None:
    parts = folder((), (base("base", "alder"),), {"alder": 6})
    result = record(site("1", np.eye(4)))
    neighbour = block(3.0, -2.0, 9.0)
    for at, depth in ((4.1, "0.4"), (4.6, None)):
        moved = Surface(neighbour.vertices + [at, 0.0, 0.0], neighbour.faces)
        notes = place(result, parts, tissue=scan(moved)).sites[0].notes
        assert notes == (
            (f"base: its bonding surface lies up to {depth} mm in the tissue or a neighbour",) if depth else ()
        )


def test_carried_covariance_is_that_of_drawn_poses() -> None:
    """8,000 draws of ξ and of the play, the chain put up on each; every entry within 5 sampling errors."""
    rng = np.random.default_rng(20)
    parts = folder(
        (abutment("one", "alder", "rowan", 17.0, 3.0), abutment("two", "rowan", "top", 30.0, 2.0)), (),
        {"alder": 6, "rowan": 4, "top": 0},
    )  # fmt: skip
    played = {"alder": 1.5, "rowan": 3.0}
    connections = tuple(replace(c, play_deg=played.get(c.id)) for c in parts.connections)
    parts = replace(parts, connections=connections)
    assert isinstance(parts.connections[0], Connection)
    root = rng.standard_normal((6, 6)) * np.array([5e-3] * 3 + [1e-3] * 3)[:, None]
    (way,) = ways_of(parts, "alder", [Step("one", 2), Step("two", 1)], "")
    stands = random_pose(rng)
    upper = upper_of(way, parts, "alder", stands, root @ root.T)

    def spin(angle: float) -> FloatArray:
        return exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, angle]))

    up = [
        spin(2 * np.pi * k / n) @ part.lower_from_upper
        for part, k, n in zip(parts.multi_unit_abutments, (2, 1), (6, 4), strict=True)
    ]
    assert upper.scan_from_connection == pytest.approx(stands @ up[0] @ up[1], abs=1e-12)
    back = inverse(upper.scan_from_connection)
    drawn = np.empty((8_000, 6))
    for k in range(len(drawn)):
        free = [np.radians(rng.uniform(-p / 2, p / 2)) for p in (1.5, 3.0)]
        true = stands @ exp(root @ rng.standard_normal(6)) @ spin(free[0]) @ up[0] @ spin(free[1]) @ up[1]
        drawn[k] = log(back @ true)
    found = np.cov(drawn.T)
    sd = np.sqrt(np.diag(upper.covariance))
    assert np.abs((found - upper.covariance) / np.outer(sd, sd)).max() < 5.0 * np.sqrt(2.0 / len(drawn))


def test_the_implant_below_an_abutment_that_stays() -> None:
    """The upper connection of a known chain is handed in; the implant comes back, modulo its own index marks."""
    parts = folder((abutment("mu", "alder", "rowan", 16.0, 2.5),), (base("base", "rowan"),), {"alder": 6, "rowan": 4})
    implant = random_pose(np.random.default_rng(4), at=np.array([5.0, 6.0, 7.0]))
    upper = implant @ parts.multi_unit_abutments[0].lower_from_upper
    seen = upper @ exp(np.array([0, 0, 0, 0, 0, -np.pi / 2]))  # the scan body points to the mark before
    result = record(site("1", seen, "rowan", 4))
    (placed,) = place(result, parts, below=["1=mu@1"]).sites
    assert placed.below is not None
    assert placed.below.scan_from_implant == pytest.approx(implant, abs=1e-12)
    assert [link.part.id for link in placed.chain] == ["base"]
    (open_,) = place(result, parts, below=["1=mu"]).sites
    assert open_.below is not None
    assert open_.below.scan_from_implant is None
    assert "any of 4 marks" in open_.below.note
    round_ = place(record(site("1", seen, "alder-mu", 0)), demo_folder(), below=["1=mu-16"]).sites[0].below
    assert round_ is not None
    assert round_.scan_from_implant is None
    assert "a cone of 16°" in round_.note
    straight = place(record(site("1", seen, "alder-mu", 0)), demo_folder(), below=["1=mu-0"]).sites[0].below
    assert straight is not None
    assert straight.scan_from_implant == pytest.approx(seen @ exp(np.array([0, 0, -1.5, 0, 0, 0])), abs=1e-12)


def test_no_footing_without_a_reason_on_a_site_not_to_be_used() -> None:
    bad = site("2", np.eye(4), verdict="do not use")
    with pytest.raises(UsageError, match="site 2: its verdict is `do not use`"):
        Footing(bad)
    with pytest.raises(UsageError, match="--accept '2=…'"):
        place(record(site("1", np.eye(4)), bad), demo_folder())
    assert len(place(record(site("1", np.eye(4)), bad), demo_folder(), ["1=mu-0"]).sites) == 1
    taken = place(record(bad), demo_folder(), accept=["2=radiograph seen"]).sites[0]
    assert taken.footing.accepted == "radiograph seen"
    assert "accepted in spite of its verdict `do not use`: radiograph seen" in taken.notes
    (undecided,) = place(record(site("1", np.eye(4), verdict="undecided")), demo_folder()).sites
    assert "its verdict is `undecided`: the scan cannot tell whether it is within the limits" in undecided.notes
