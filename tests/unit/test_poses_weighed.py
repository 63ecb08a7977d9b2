"""Poses from elsewhere set against a scan: p-values that hold, the site that differs, and both weighed into one."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from rich.console import Console

from stylobate.core import rigid
from stylobate.core.arch import ways
from stylobate.core.result import BudgetRow, ScanInfo
from stylobate.core.types import FloatArray
from stylobate.record import Record
from stylobate.report.comparison import comparison_document
from stylobate.report.comparison_table import rendered
from stylobate.settings import DRIFT_MM
from stylobate.several.comparing.errors import Drift, prior_of
from stylobate.several.comparing.layout import layout
from stylobate.several.comparing.likelihood import misfit
from stylobate.several.comparing.union import united
from stylobate.several.comparing.verb import _agreement, compare
from stylobate.several.sources import walk_covariance
from tests.unit.comparing_making import arch
from tests.unit.several_making import anywhere, record

SCAN = np.diag([6e-3] * 3 + [4e-4] * 2 + [2e-3]) ** 2
CAST = np.diag([3e-3] * 3 + [2e-4] * 2 + [1e-3]) ** 2
SEATING = 8e-3
WALK = 30e-3


def erring(poses: FloatArray, covariance: FloatArray, rng: np.random.Generator) -> list[FloatArray]:
    xi = np.linalg.cholesky(covariance + 1e-18 * np.eye(len(covariance))) @ rng.standard_normal(len(covariance))
    return [pose @ rigid.exp(one) for pose, one in zip(poses, xi.reshape(-1, 6), strict=True)]


def both(poses: FloatArray, rng: np.random.Generator, told: bool = True) -> tuple[Record, Record, FloatArray]:
    """A scan that drifts, of bodies that may sit otherwise, its budget saying so; a cast measured; scan_from_mouth."""
    count, motion = len(poses), anywhere(rng)
    seated = np.diag([SEATING**2] * 3 + [0.0] * 3)
    scanned = np.kron(np.eye(count), SCAN + seated) + walk_covariance(poses, WALK**2 / DRIFT_MM, 0.0)
    along = ways(poses[:, :3, 3])
    sites = []
    for k, site in enumerate(record([motion @ one for one in erring(poses, scanned, rng)], covariance=SCAN).sites):
        way = max(along[k], along[-1] - along[k])
        drift = BudgetRow("drift", 1e3 * WALK * np.sqrt(3.0 * way / DRIFT_MM), 0.0, None) if told else None
        rows = (BudgetRow("seating", 1e3 * SEATING * np.sqrt(3.0), 0.0, None), *([drift] if drift else []))
        sites.append(dataclasses.replace(site, budget=rows))
    scan = dataclasses.replace(record(list(poses), "scan"), sites=tuple(sites))
    there = anywhere(rng)
    cast = record([there @ one for one in erring(poses, np.kron(np.eye(count), CAST), rng)], "cast", covariance=CAST)
    return scan, dataclasses.replace(cast, scan=ScanInfo("cast.csv", "cast", 0)), motion


def test_p_of_agreement_is_even_where_both_are_as_stated() -> None:
    """120 draws: the mean of an even p lies within 0.5 ± 0.08 (3 sd), and p < 0.05 comes up at most 14 times."""
    rng, found = np.random.default_rng(1), []
    for _ in range(120):
        scan, cast, _ = both(arch(4, rng), rng)
        union = united([scan, cast])
        laid = layout(union)
        agreement = _agreement(union, Drift.over(laid.poses), prior_of(union.records, None), frozenset())
        assert agreement is not None
        assert agreement.freedom == 18
        found.append(agreement.p)
    assert abs(np.mean(found) - 0.5) < 0.08
    assert np.sum(np.array(found) < 0.05) <= 14


def test_none_is_named_where_none_differs_and_what_is_weighed_covers() -> None:
    """20 draws of how the sites stand to each other (a scan has no drift as a whole): χ² / 18 is known to 0.075."""
    rng, named, squares = np.random.default_rng(2), 0, []
    for _ in range(20):
        poses = arch(4, rng)
        scan, cast, motion = both(poses, rng)
        found = compare([scan, cast])
        named += len(found.moved) > 0
        if found.pooled is None:
            continue
        sites = found.pooled.result.sites
        joint = np.zeros((24, 24))
        at = {site.site: slice(6 * k, 6 * k + 6) for k, site in enumerate(sites)}
        for site in sites:
            joint[at[site.site], at[site.site]] = site.covariance
        for (one, two), block in found.pooled.cross.items():
            joint[at[one], at[two]], joint[at[two], at[one]] = block, block.T
        error = np.concatenate(
            [rigid.log(rigid.inverse(s.scan_from_connection) @ motion @ p) for s, p in zip(sites, poses, strict=True)]
        )
        lever = np.concatenate([rigid.adjoint(rigid.inverse(site.scan_from_connection)) for site in sites])
        weight = np.linalg.inv(joint)
        across = weight @ lever
        squares.append(error @ (weight - across @ np.linalg.solve(lever.T @ across, across.T)) @ error / 18.0)
    assert named <= 2
    assert len(squares) >= 17
    assert abs(np.mean(squares) - 1.0) < 0.25


def test_the_site_that_differs_is_named_and_nothing_is_weighed_until_one_is_said_to_count() -> None:
    rng = np.random.default_rng(3)
    poses = arch(4, rng)
    scan, cast, _ = both(poses, rng)
    high = scan.sites[1].scan_from_connection @ rigid.exp(np.array([0.0, 0.0, 0.15, 0.0, 0.0, 0.0]))
    wrong = dataclasses.replace(
        scan, sites=(scan.sites[0], dataclasses.replace(scan.sites[1], scan_from_connection=high), *scan.sites[2:])
    )
    found = compare([wrong, cast])
    assert [moved.cell for moved in found.moved] == [(1, 1)]
    assert found.agreement is not None
    assert found.agreement.p < 1e-3
    assert found.pooled is None
    assert "--rescan 2" in found.why_not_pooled
    counted = compare([wrong, cast], rescanned=["2"])
    assert counted.moved == ()
    assert counted.agreement is not None
    assert counted.agreement.p > 1e-3
    assert counted.pooled is not None


def test_distances_are_nearly_those_of_the_better_measurement_and_nothing_counts_twice() -> None:
    rng = np.random.default_rng(4)
    scan, cast, _ = both(arch(5, rng), rng)
    found = compare([scan, cast]).pooled
    assert found is not None
    alone = 1e3 * 1.96 * np.sqrt(2.0) * 3e-3
    for pair in found.result.pairs:
        assert 0.7 * alone < pair.u95_um < 1.02 * alone
    for site in found.result.sites:
        assert site.u95_total == site.u95
        assert [row.source for row in site.budget] == ["scan", "drift"]


def test_drift_that_nobody_states_is_not_held_against_the_poses() -> None:
    rng = np.random.default_rng(5)
    scan, cast, _ = both(arch(4, rng), rng, told=False)
    found = compare([scan, cast])
    assert found.agreement is not None
    assert not found.agreement.drift
    assert found.pooled is not None
    console = Console(width=100)
    with console.capture() as capture:
        console.print(rendered(found))
    assert "Drift is not counted" in " ".join(capture.get().split())
    said = comparison_document(found)["agreement"]
    assert said["degrees_of_freedom"] == 18
    assert said["p"] == pytest.approx(found.agreement.p)
    assert any("not of a scan" in note for note in found.notes)


def test_misfit_of_a_known_shift_is_its_square() -> None:
    """Three sites on a line, equal variances, no turn shared: one site 30 µm off along the line of two others."""
    rng = np.random.default_rng(6)
    poses = arch(4, rng)
    still = record(list(poses), "a", covariance=SCAN)
    shifted = [pose.copy() for pose in poses]
    shifted[2] = poses[2] @ rigid.exp(np.array([0.0, 0.0, 0.06, 0.0, 0.0, 0.0]))
    moved = dataclasses.replace(record(shifted, "b", covariance=SCAN), scan=ScanInfo("b", "b", 0))
    laid = layout(united([still, moved]))
    square, freedom = misfit(laid, Drift.over(laid.poses).parts, np.array([1.0, 0, 0, 0, 0]))
    weight = np.kron(np.eye(4), np.linalg.inv(2.0 * SCAN))
    off = np.zeros(24)
    off[14] = 0.06
    lever = np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses])
    left = off - lever @ np.linalg.solve(lever.T @ weight @ lever, lever.T @ weight @ off)
    assert square == pytest.approx(left @ weight @ left, rel=2e-3)
    assert freedom == 18
