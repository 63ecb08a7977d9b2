"""seat: draws, one screw, causes, refusals."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from stylobate.core.errors import ResultError, UsageError
from stylobate.core.result import BudgetRow
from stylobate.core.rigid import exp
from stylobate.record.model import joint
from stylobate.several import seat
from stylobate.several.draws import drawn, exp_many
from stylobate.several.seating.rest import rests
from stylobate.several.seating.verb import share
from stylobate.several.sources import sources_of, walk_covariance
from tests.unit.several_making import anywhere, arch, record, upright

WIDE = np.diag([4e-4] * 3 + [1e-6] * 3)


def test_many_motions_at_once_are_each_the_motion() -> None:
    xi = np.random.default_rng(0).normal(size=(4, 3, 6)) * np.array([1, 1e-3, 1e-6, 1e-9])[:, None, None]
    assert np.allclose(exp_many(xi), [[exp(x) for x in row] for row in xi], atol=1e-14)


def test_draws_have_the_joint_covariance() -> None:
    rng = np.random.default_rng(1)
    root = rng.normal(size=(12, 12)) * 1e-4
    covariance = root @ root.T
    poses, n = np.array(arch(2, rng)), 20_000
    moved = drawn(poses, covariance, rng.standard_normal((n, 12)))
    off = np.linalg.inv(poses) @ moved
    xi = np.concatenate([off[..., :3, 3], np.stack([off[..., 2, 1], off[..., 0, 2], off[..., 1, 0]], axis=-1)], axis=-1)
    found = np.cov(xi.reshape(n, 12).T)
    sampling = np.sqrt((np.outer(np.diag(covariance), np.diag(covariance)) + covariance**2) / n)
    assert np.abs((found - covariance) / sampling).max() < 5


def test_common_errors_do_not_misfit() -> None:
    """Every site off by the same motion of the scan: the frame fits as if nothing had happened."""
    poses = arch(4, np.random.default_rng(2))
    turned = [np.kron(np.eye(2), p[:3, :3].T) for p in poses]
    shift = np.diag([1e-2] * 3 + [0.0] * 3)
    blocks = [[a @ shift @ b.T for b in turned] for a in turned]
    names = ["1", "2", "3", "4"]
    cross = {(names[i], names[j]): blocks[i][j] for i in range(4) for j in range(i + 1, 4)}
    sites = tuple(
        dataclasses.replace(site, covariance=blocks[k][k]) for k, site in enumerate(record(poses, names=names).sites)
    )
    together = dataclasses.replace(record(poses, names=names), sites=sites, cross=cross)
    assert np.allclose(joint(names, [site.covariance for site in sites], cross), np.block(blocks))
    assert seat(together, draws=200).worst.gap_um < 0.01
    assert seat(together, draws=200).worst.side_um < 0.01
    alone = dataclasses.replace(together, cross={})
    assert seat(alone, draws=200).worst.side_um > 50


def test_where_the_scan_lies_and_how_it_is_numbered_changes_nothing() -> None:
    rng = np.random.default_rng(3)
    poses = arch(5, rng)
    on = [p @ exp(rng.normal(size=6) * ([0.05] * 3 + [0.003] * 3)) for p in poses]
    found = seat(record(poses), record(on, "b"))
    motion, order = anywhere(rng), [3, 0, 4, 2, 1]
    names = [str(k) for k in range(5)]
    again = seat(record(poses), record([motion @ on[k] for k in order], "c", names=names))
    assert dict(again.matched) == {str(k + 1): str(order.index(k)) for k in range(5)}
    for one, two in zip(found.sites, again.sites, strict=True):
        assert (one.gap_um, one.side_um) == pytest.approx((two.gap_um, two.side_um), abs=0.01)


def test_one_screw_in_closed_form() -> None:
    """Three in line, the middle one low by 90: tight at an end, the frame lies on both ends; tight in the middle it
    could only go down through them."""
    found = seat(record(upright([(0, 0, 0), (10, 0, 0), (20, 0, 0)])),
                 record(upright([(0, 0, 0), (10, 0, 0.09), (20, 0, 0)]), "b"), rim_diameter=0.0)  # fmt: skip
    gaps = {test.tight: test.gaps_um for test in found.one_screw}
    assert gaps["1"] == pytest.approx({"1": 0, "2": 0, "3": 180}, abs=0.02)
    assert gaps["2"] == pytest.approx({"1": 90, "2": 0, "3": 90}, abs=0.02)
    assert gaps["3"] == pytest.approx({"1": 180, "2": 0, "3": 0}, abs=0.02)


def test_the_site_that_stands_in_the_way_is_named() -> None:
    poses = arch(5, np.random.default_rng(4))
    on = [p.copy() for p in poses]
    on[3] = on[3] @ exp(np.array([0, 0, 0.3, 0, 0, 0]))
    found = seat(record(poses), record(on, "b"))
    assert found.worst.gap_um > 100
    assert found.stands_out == "4"
    assert min(found.without, key=lambda w: w.worst_gap_um).worst_gap_um < 0.01
    assert seat(record(poses), record(poses, "b")).stands_out is None


def test_the_repeat_that_helps_most_is_that_of_the_worst_known_site() -> None:
    base = record(arch(5, np.random.default_rng(5)), covariance=WIDE / 16)
    sites = tuple(dataclasses.replace(s, covariance=WIDE) if s.site == "2" else s for s in base.sites)
    found = seat(dataclasses.replace(base, sites=sites), draws=2000)
    first = found.repeat[0]
    assert first.site == "2"
    assert first.share > 0.5
    assert sum(repeat.share for repeat in found.repeat) == pytest.approx(1.0, abs=0.1)
    assert found.worst.side_p95_um is not None
    assert first.worst_side_p95_um < found.worst.side_p95_um


def test_probabilities_count_gap_and_side() -> None:
    """Distance errors only: gaps stay closed, so that only the side fails."""
    covariance = np.diag([4e-4, 1e-14, 1e-14, 1e-14, 1e-14, 1e-14])
    made = record(upright([(0, 0, 0), (15, 0, 0)]), covariance=covariance)
    found = seat(made, limit_um=50, side_limit_um=20, draws=4000)
    assert found.gap_within is not None
    assert found.all_within is not None
    assert found.gap_within.value == 1.0
    expected = 0.8427007929497149  # P(|N(0, 20/√2)| ≤ 20) = erf(1)
    assert found.all_within.value == pytest.approx(expected, abs=4 * np.sqrt(expected * (1 - expected) / 4000))
    assert found.all_within.low < expected < found.all_within.high


def test_the_interval_of_a_share() -> None:
    """Clopper & Pearson in closed form at the ends: 1 − (α/2)^(1/n)."""
    none = share(0, 100)
    assert [none.low, none.high] == pytest.approx([0.0, 1 - 0.025**0.01], abs=1e-12)
    every = share(100, 100)
    assert [every.low, every.high] == pytest.approx([0.025**0.01, 1.0], abs=1e-12)


def test_the_budget_beyond_the_scan_is_counted_and_what_is_missing_is_named() -> None:
    poses = arch(4, np.random.default_rng(6))
    rows = (
        BudgetRow("scan", 1.0, 0.01, 0.1),
        BudgetRow("made part", 30.0, 0.1, None),
        BudgetRow("drift", None, None, None),
        BudgetRow("play", None, None, 0.5),
    )
    found = seat(record(poses, budget=rows), draws=500)
    assert found.counted == ("scan", "made part")
    assert "seating, temperature" in found.notes[0]
    assert "drift" in found.notes[0]
    assert "play" not in found.notes[0]
    assert found.worst.side_um > 10 * seat(record(poses), draws=500).worst.side_um


def test_a_budget_row_is_spread_over_its_directions() -> None:
    made = record(arch(3, np.random.default_rng(7)), budget=(BudgetRow("seating", 30.0, 0.1, None),))
    block = sources_of(made).others[0].covariance[6:12, 6:12]
    assert np.sqrt(np.trace(block[:3, :3])) == pytest.approx(0.03)
    assert np.sqrt(block[3, 3] + block[4, 4]) == pytest.approx(np.radians(0.1))


def test_a_walk_grows_with_the_way_and_knows_no_beginning() -> None:
    """Variance between two sites is the rate times the way between them, whichever two they are."""
    poses = arch(5, np.random.default_rng(8))
    covariance = walk_covariance(poses, 2e-6, 3e-8)
    for i in range(5):
        for j in range(i, 5):
            way = sum(np.linalg.norm(poses[k + 1][:3, 3] - poses[k][:3, 3]) for k in range(i, j))
            rotation = np.zeros((6, 30))
            rotation[:3, 6 * i : 6 * i + 3], rotation[3:, 6 * i + 3 : 6 * i + 6] = -poses[i][:3, :3], -poses[i][:3, :3]
            rotation[:3, 6 * j : 6 * j + 3] += poses[j][:3, :3]
            rotation[3:, 6 * j + 3 : 6 * j + 6] += poses[j][:3, :3]
            between = rotation @ covariance @ rotation.T
            assert np.allclose(between, np.diag([2e-6 * way] * 3 + [3e-8 * way] * 3), atol=1e-12)


def test_drift_of_the_budget_is_a_walk() -> None:
    rows = (BudgetRow("drift", 20.0, 0.1, None),)
    made = record(upright([(0, 0, 0), (10, 0, 0), (20, 0, 0)]), budget=rows)
    covariance = sources_of(made).others[0].covariance
    apart = np.trace(covariance[:3, :3] + covariance[12:15, 12:15] - 2 * covariance[:3, 12:15])
    assert 20e-3 < np.sqrt(apart) < 30e-3  # the ends' rows speak of 20 mm, the middle one's of 10
    assert covariance[0, 0] == 0.0


def test_notes() -> None:
    two = upright([(0, 0, 0), (15, 0, 0)])
    assert "one line: only the rims" in seat(record(two), draws=100).notes[-1]
    assert "keeps as it was laid" in seat(record(two), draws=100, rim_diameter=0.0).notes[-1]
    poses = arch(4, np.random.default_rng(9))
    assert "Left out" in seat(record(poses), record(poses[:3], "b")).notes[0]
    assert "names decided" in seat(record(two, index_order=0), record(two, "b", index_order=0)).notes[0]
    doubtful = record(poses)
    sites = (dataclasses.replace(doubtful.sites[0], verdict="do not use"), *doubtful.sites[1:])
    assert any("do not use" in note for note in seat(dataclasses.replace(doubtful, sites=sites), draws=100).notes)


def test_refusals() -> None:
    two = record(upright([(0, 0, 0), (15, 0, 0)]))
    with pytest.raises(UsageError, match="at least two sites"):
        seat(record(upright([(0, 0, 0)])))
    for options in ({"limit_um": 0.0}, {"side_limit_um": float("nan")}, {"rim_diameter": -1.0}, {"draws": 1}):
        with pytest.raises(UsageError):
            seat(two, **options)
    with pytest.raises(ResultError, match="stand alike"):
        seat(two, record(upright([(0, 0, 0), (40, 0, 0)]), "b"))


def test_a_frame_far_from_fitting_still_rests() -> None:
    rng = np.random.default_rng(10)
    frame = np.array(arch(6, rng))
    implants = np.array([[p @ exp(rng.normal(size=6) * ([0.5] * 3 + [0.05] * 3)) for p in frame] for _ in range(200)])
    assert np.isfinite(rests(frame, implants, np.full(6, 4.2)).gap).all()
    assert np.isfinite(rests(frame, implants, np.full(6, 4.2), 2).gap).all()
