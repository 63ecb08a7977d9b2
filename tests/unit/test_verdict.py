"""Rules of the verdict and rows of the budget."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core.result import Finding
from stylobate.parts.model import Connection, ScanBody
from stylobate.settings import DEFAULT, Drift, Limits, Seating, Settings
from stylobate.simulate import draw_bodies
from stylobate.uncertainty.budget import Leg, sources, total, without_figure
from stylobate.verdict.rules import judge, judge_together
from tests.doors.handmade import measurement

LIMITS = Limits(50.0, 0.4, 5.0, 100.0, 0.5, "a test")
BODY: ScanBody = draw_bodies(3, 1)[0]
HEXAGON = Connection("alder", "internal hex", 6, 4.2, play_deg=1.5)
SCAN = np.diag([4e-3, 4e-3, 4e-3, 5e-4, 5e-4, 1e-3]) ** 2
LEG = Leg(50.0, np.array([50.0, 0.0, 0.0]))
MADE = np.zeros((6, 2))
MADE[2] = [-0.5, 1.0]


def covariance(platform_um: float, axis_deg: float = 0.01) -> np.ndarray:
    tilt = np.radians(axis_deg)
    return np.diag([platform_um * 1e-3] * 3 + [tilt, tilt, 1e-3]) ** 2


def verdict(spread: np.ndarray, *findings: Finding) -> str:
    return judge(spread, True, findings, LIMITS, (), ()).verdict


def test_use_only_where_the_bound_lies_within_the_limit() -> None:
    """A ball of radius 2.795 σ holds 95 %: 50 µm is proven up to σ = 17.9 µm."""
    assert verdict(covariance(17.7)) == "use"
    assert verdict(covariance(18.1)) == "undecided"
    assert verdict(covariance(5.0, axis_deg=0.17)) == "undecided"


@pytest.mark.parametrize("cause", ["no part fits", "other part fits better"])
def test_a_wrong_part_is_never_used(cause: str) -> None:
    assert verdict(covariance(1.0), Finding(cause, "")) == "do not use"


def test_a_large_bend_or_split_is_not_used_and_a_small_one_is_judged_by_its_bound() -> None:
    assert verdict(covariance(1.0), Finding("bent body", "", size_deg=0.5)) == "do not use"
    assert verdict(covariance(1.0), Finding("split surface", "", 60.0)) == "do not use"
    assert verdict(covariance(1.0), Finding("split surface", "", 20.0)) == "use"


def test_an_ambiguous_part_or_turn_stays_undecided() -> None:
    assert verdict(covariance(1.0), Finding("index ambiguous", "")) == "undecided"
    assert verdict(covariance(1.0), Finding("part ambiguous", "")) == "undecided"


def test_the_risk_is_what_is_left_of_the_probability() -> None:
    chances = judge(covariance(18.1), True, (), LIMITS, (), ()).chances
    platform = next(one for one in chances if one.what == "platform_um")
    assert platform.probability < 0.95
    assert platform.consumers_risk == pytest.approx(1.0 - platform.probability)


def test_a_source_without_a_figure_is_nothing_and_is_named() -> None:
    parts = sources(SCAN, MADE, replace(BODY, made_u_um=None), replace(HEXAGON, play_deg=None), DEFAULT, LEG)
    assert np.array_equal(total(parts), SCAN)
    assert without_figure(parts) == ("made part", "seating", "play", "temperature", "drift")
    rows = [part.row(True) for part in parts]
    assert all(row.platform_um is None and row.index_deg is None for row in rows[1:])
    said = judge(total(parts), True, (), LIMITS, tuple(rows), without_figure(parts)).because
    assert "made part, seating, play, temperature and drift" in said


def test_what_the_scan_would_not_show_is_no_missing_figure() -> None:
    for unknown, before in (((), ""), (("seating",), " Not counted, because nobody has stated a figure: seating.")):
        said = judge(covariance(1.0), True, (), LIMITS, (), unknown, "a bend below 1.2°").because
        assert said.endswith(f"95 %.{before} Not counted, because this scan would not show it: a bend below 1.2°.")


def test_figures_add_as_variances() -> None:
    settings = Settings(seating=Seating(3.0, 4.0, 0.0), drift=Drift(30.0, 0.0))
    parts = sources(SCAN, MADE, replace(BODY, made_u_um=6.0), HEXAGON, settings, LEG)
    whole = total(parts)
    made = (6e-3) ** 2 * (0.5**2 + 1.0**2)
    assert whole[2, 2] == pytest.approx(16e-6 + made + 9e-6 + (30e-3) ** 2)
    assert whole[0, 0] == pytest.approx(16e-6 + 16e-6 + (30e-3) ** 2)
    turn = np.radians(0.75) / np.sqrt(3.0)  # anywhere within ±0.75°
    assert whole[5, 5] == pytest.approx(1e-6 + turn**2)
    play = next(part for part in parts if part.name == "play").row(True)
    assert play.platform_um is None
    assert play.index_deg == pytest.approx(0.433, abs=1e-3)


def test_an_arch_is_never_used_without_a_figure_for_drift() -> None:
    result = measurement(3)[0]
    sites = [replace(s, verdict=judge(SCAN, True, (), LIMITS, (), ())) for s in result.sites]
    pairs = [replace(p, total_um=20.0, angle_total_deg=0.1) for p in result.pairs]
    assert judge_together(sites, pairs, "arch", LIMITS, drift=False).verdict == "undecided"
    assert judge_together(sites, pairs, "arch", LIMITS, drift=True).verdict == "use"
    assert judge_together(sites, pairs, "bridge", LIMITS, drift=False).verdict == "use"
    wide = [replace(pairs[0], total_um=200.0), *pairs[1:]]
    assert judge_together(sites, wide, "bridge", LIMITS, drift=True).verdict == "undecided"
    bad = replace(sites[0], verdict=judge(SCAN, True, (Finding("no part fits", ""),), LIMITS, (), ()))
    assert judge_together([bad, *sites[1:]], pairs, "bridge", LIMITS, drift=True).verdict == "do not use"
