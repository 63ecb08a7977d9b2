"""Options of one site and of all sites together, against brute force that shares no code with what it judges."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from stylobate.build.cone import best_path
from stylobate.build.model import Placement
from stylobate.build.placing import place
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment, PartsFolder, TitaniumBase
from tests.unit.placing_making import abutment, base, folder, leaning_pose, random_pose, record, site

Chain = tuple[tuple[str, int], ...]
Part = MultiUnitAbutment | TitaniumBase


def random_folder(rng: np.random.Generator, abutments: int = 4, bases: int = 4) -> PartsFolder:
    """Two storeys of connections with random orders, leans and tilts; everything indexed, so that turns matter."""
    orders = {"alder": int(rng.integers(1, 9)), "rowan": int(rng.integers(1, 7)), "top": int(rng.integers(0, 5))}
    storeys = [("alder", "rowan"), ("rowan", "top"), ("alder", "top")]
    made = [
        abutment(
            f"mu-{k}", *storeys[k % 3], float(rng.choice([0.0, 12.0, 17.0, 30.0])), float(rng.uniform(1, 4)),
            float(rng.uniform(10, 22)),
        )
        for k in range(abutments)
    ]  # fmt: skip
    seats = ["alder", "rowan", "top"]
    plain = [
        base(
            f"base-{k}",
            seats[k % 3],
            float(rng.choice([0.0, 5.0, 15.0])),
            bool(rng.random() < 0.5),
            float(rng.uniform(4, 12)),
        )
        for k in range(bases)
    ]
    return folder(tuple(made), tuple(plain), orders)


def all_parts(parts: PartsFolder) -> list[Part]:
    return [*parts.titanium_bases, *parts.multi_unit_abutments]


def every_chain(parts: PartsFolder, connection: str) -> Iterator[tuple[Part, ...]]:
    for part in all_parts(parts):
        if part.seats_on == connection:
            yield (part,)
            if isinstance(part, MultiUnitAbutment):
                for above in every_chain(parts, part.provides):
                    yield (part, *above)


def every_way(parts: PartsFolder, connection: str) -> Iterator[tuple[Chain, FloatArray, float]]:
    """Chain with turns, axis of its uppermost connection in the lowest frame, and tilt of its channel in degrees."""
    order = {c.id: max(c.index_order, 1) for c in parts.connections}
    for chain in every_chain(parts, connection):
        for turns in itertools.product(*(range(order[part.seats_on]) for part in chain)):
            rotation = Rotation.identity()
            for part, turn in zip(chain, turns, strict=True):
                if isinstance(part, MultiUnitAbutment):
                    about = Rotation.from_euler("z", 360.0 * turn / order[part.seats_on], degrees=True)
                    rotation = rotation * about * Rotation.from_euler("y", part.angle_deg, degrees=True)
            tilt = chain[-1].channel_tilt_max_deg if isinstance(chain[-1], TitaniumBase) else 0.0
            names = tuple((part.id, turn) for part, turn in zip(chain, turns, strict=True))
            yield names, rotation.apply([0.0, 0.0, 1.0]), tilt


def angle_deg(one: FloatArray, two: FloatArray) -> float:
    return float(np.degrees(2.0 * np.arcsin(min(float(np.linalg.norm(one - two)) / 2.0, 1.0))))


def to_aim(stands: FloatArray, axis: FloatArray, tilt: float, aim: FloatArray) -> float:
    return max(0.0, angle_deg(stands[:3, :3] @ axis, aim) - tilt)


def text(vector: FloatArray) -> str:
    return ",".join(repr(float(value)) for value in vector)


@pytest.mark.parametrize("seed", range(40))
def test_the_best_option_is_that_of_brute_force(seed: int) -> None:
    rng = np.random.default_rng([seed, 1])
    parts, stands, aim = random_folder(rng), random_pose(rng), random_pose(rng)[:3, 2]
    known = {chain: to_aim(stands, axis, tilt, aim) for chain, axis, tilt in every_way(parts, "alder")}
    order = parts.connection("alder").index_order
    (placed,) = place(record(site("1", stands, order=order)), parts, aims=[text(aim)]).sites
    angles = [option.angle_to_aim_deg for option in placed.options]
    assert angles[0] == pytest.approx(min(known.values()), abs=1e-6)
    assert angles == sorted(angles)
    for option in placed.options:
        assert option.angle_to_aim_deg == pytest.approx(known[option.chain], abs=1e-6)
    assert {tuple(part for part, _ in option.chain) for option in placed.options} == {
        tuple(part for part, _ in chain) for chain in known
    }
    assert placed.options[0].chain == tuple((link.part.id, link.turn) for link in placed.chain)
    assert placed.channel.angle_to_aim_deg == pytest.approx(angles[0], abs=2e-9)
    assert angle_deg(placed.channel.direction, aim) == pytest.approx(angles[0], abs=1e-5)


@pytest.mark.parametrize("seed", range(10))
def test_an_open_turn_is_the_best_of_all_turns(seed: int) -> None:
    rng = np.random.default_rng([seed, 2])
    parts, stands, aim = random_folder(rng), random_pose(rng), random_pose(rng)[:3, 2]
    order = parts.connection("alder").index_order
    chain = next(c for c in every_chain(parts, "alder") if len(c) == 3)
    said = "1=" + ",".join(part.id for part in chain)
    (placed,) = place(record(site("1", stands, order=order)), parts, [said], [text(aim)]).sites
    fixed = [
        to_aim(stands, axis, tilt, aim)
        for names, axis, tilt in every_way(parts, "alder")
        if [name for name, _ in names] == [part.id for part in chain]
    ]
    assert placed.channel.angle_to_aim_deg == pytest.approx(min(fixed), abs=1e-6)


def half_angle(parts: PartsFolder, chain: Chain) -> float:
    by_name = {part.id: part for part in all_parts(parts)}
    top = by_name[chain[-1][0]]
    slides = by_name[chain[-2][0]] if isinstance(top, TitaniumBase) and not top.engaging and len(chain) > 1 else top
    assert slides.cone_half_angle_deg is not None
    return slides.cone_half_angle_deg


@pytest.mark.parametrize("seed", range(12))
def test_the_joint_choice_is_that_of_brute_force(seed: int) -> None:
    """Least worst angle over every product of options whose seats share a path."""
    rng = np.random.default_rng([seed, 3])
    parts = random_folder(rng, 3, 2)
    order = parts.connection("alder").index_order
    poses = [random_pose(rng, 16.0, np.array([20.0 * k, 0.0, 0.0])) for k in range(3)]
    sites = [site(str(k), stands, order=order) for k, stands in enumerate(poses)]
    placement = place(record(*sites), parts, aims=["0,0,1"])
    ways = []
    for stands in poses:
        found: dict[tuple[float, ...], tuple[float, FloatArray, float]] = {}
        for chain, axis, tilt in every_way(parts, "alder"):
            angle, half = to_aim(stands, axis, tilt, np.array([0.0, 0.0, 1.0])), half_angle(parts, chain)
            key = (*np.round(axis, 8), half)
            if key not in found or angle < found[key][0]:
                found[key] = (angle, stands[:3, :3] @ axis, np.radians(half))
        ways.append(list(found.values()))
    products = sorted(itertools.product(*ways), key=lambda choice: max(angle for angle, _, _ in choice))
    best = next((choice for choice in products if shares_a_path(choice)), None)
    assert bool(placement.joint) == (best is not None)
    if best is not None:
        assert placement.joint[0].worst_angle_to_aim_deg == pytest.approx(max(angle for angle, _, _ in best), abs=1e-6)
        worst = [joint.worst_angle_to_aim_deg for joint in placement.joint]
        assert worst == sorted(worst)


def shares_a_path(choice: tuple[tuple[float, FloatArray, float], ...]) -> bool:
    axes = np.array([axis for _, axis, _ in choice])
    return best_path(axes, np.array([half for _, _, half in choice])).margin >= 0.0


def two(tilt_deg: float, cone: float | None, work: str = "bridge") -> Placement:
    parts = folder((), (base("base", "alder", cone=cone),), {"alder": 6})
    sites = [site(str(k), leaning_pose(tilt_deg, 180.0 * k)) for k in (0, 1)]
    return place(record(*sites, work=work), parts)


def test_the_path_over_two_engaging_bases() -> None:
    """Axes 2 · 3° apart lie in a cone of 3°: seats of 4° leave 1°, seats of 2° lack 1°, seats of 3° cannot be told."""
    for cone, answer, margin in ((4.0, True, 1.0), (2.0, False, -1.0), (3.0, None, 0.0)):
        insertion = two(3.0, cone).insertion
        assert insertion.spread_deg == pytest.approx(3.0, abs=1e-9)
        assert insertion.one_path is answer
        assert insertion.margin_deg == pytest.approx(margin, abs=1e-6)
    assert two(3.0, None).insertion.one_path is None
    assert two(3.0, None).joint == ()


def test_one_path_is_taken_where_it_is_asked_for() -> None:
    """Two axes 40° apart: straight bases have the better channels, abutments that lean share a path."""
    parts = folder(
        (abutment("mu", "alder", "alder-mu", 17.0, 2.0, 8.0),),
        (base("base", "alder", 20.0),),
        {"alder": 6, "alder-mu": 0},
    )
    sites = [site(str(k), leaning_pose(20.0, 180.0 * k)) for k in (0, 1)]
    free, joined = (place(record(*sites), parts, aims=["0,0,1"], one_path=one) for one in (False, True))
    assert [[link.part.id for link in one.chain] for one in free.sites] == [["base"], ["base"]]
    assert free.insertion.one_path is False
    assert [[link.part.id for link in one.chain] for one in joined.sites] == [["mu"], ["mu"]]
    assert joined.insertion.one_path is True
    assert joined.insertion.margin_deg == pytest.approx(8.0 - 3.0, abs=1e-6)
