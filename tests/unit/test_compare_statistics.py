"""The statistics of a comparison against dense algebra, closed forms and drawn truth."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.types import FloatArray
from stylobate.record import Record, read_result
from stylobate.several.comparing.draws import draws
from stylobate.several.comparing.errors import NOT_STATED, Drift, covariances, prior_of
from stylobate.several.comparing.layout import layout
from stylobate.several.comparing.likelihood import HEIGHT, joint, solve
from stylobate.several.comparing.moved import _cells, p_value
from stylobate.several.comparing.multiplicity import LEVEL, Multiplicity
from stylobate.several.comparing.union import united
from stylobate.several.comparing.verb import compare
from stylobate.several.drifting.model import Estimate, Profile
from tests.unit.comparing_making import arch, document, drifted, write


def records(folder: Path, poses: list[FloatArray], rng: np.random.Generator, index_order: int = 6) -> list[Record]:
    """One scan of each of `poses`."""
    files = [write(folder / f"s{k}", document(p, rng, f"s{k}", index_order)) for k, p in enumerate(poses)]
    return [read_result(file) for file in files]


@pytest.mark.parametrize("height", [False, True], ids=["pose", "height"])
@pytest.mark.parametrize("index_order", [6, 0])
def test_a_cell_left_out_equals_dense_least_squares(index_order: int, height: bool, tmp_path: Path) -> None:
    """Eqs. 3–5 by one big design: frames, implants and the cell's own shift, the covariance of everything in full."""
    rng = np.random.default_rng(31)
    laid = layout(united(records(tmp_path, [arch(4, np.random.default_rng(1))] * 3, rng, index_order)))
    drift = Drift.over(laid.poses).parts
    theta = np.array([[1.2, 0.02, 1e-3, 5e-4, 0.01], [0.8, 0.001, 1e-4, 1e-4, 0.002]])
    cell, size = (2, 1), 24
    solution = solve(laid, drift, theta, [cell])
    values = []
    for t in range(2):
        rows = [laid.rows(k) for k in range(3)]
        y = np.concatenate([laid.residual[k][rows[k]] for k in range(3)])
        sigma = np.zeros((len(y), len(y)))
        design, at = [], 0
        for k in range(3):
            here = slice(at, at + len(rows[k]))
            of = np.ix_(rows[k], rows[k])
            block = covariances(theta[t : t + 1], laid.stated[k], laid.reseated[k], drift)[0]
            sigma[here, here] = block[of]
            part = np.zeros((len(rows[k]), 18 + size))
            part[:, 6 * k : 6 * k + 6] = laid.lever[rows[k]]
            part[:, 18:] = np.eye(size)[rows[k]]
            design.append(part)
            at += len(rows[k])
        fixed = np.concatenate(design)[:, 6:]  # the first frame is held
        fixed = fixed[:, np.abs(fixed).sum(axis=0) > 0]
        free = rows[2] == 6 + HEIGHT if height else rows[2] // 6 == 1
        own = np.isin(np.arange(len(y)), at - len(rows[2]) + np.flatnonzero(free))
        both = np.concatenate([fixed, np.eye(len(y))[:, own]], axis=1)
        inverse = np.linalg.inv(sigma)
        normal = both.T @ inverse @ both
        best = np.linalg.solve(normal, both.T @ inverse @ y)
        count = int(own.sum())
        fit = (solution.heights if height else solution.cells)[0]
        assert np.allclose(fit.shift[t], best[-count:], atol=1e-9)
        assert np.allclose(fit.covariance[t], np.linalg.inv(normal)[-count:, -count:], rtol=1e-6, atol=1e-12)
        left = y - both @ best
        values.append(-0.5 * (np.linalg.slogdet(sigma)[1] + np.linalg.slogdet(normal)[1] + left @ inverse @ left))
    assert np.diff(fit.log_likelihood)[0] == pytest.approx(values[1] - values[0], abs=1e-6)


def test_drift_of_two_neighbours_is_that_of_the_way_between_them() -> None:
    poses = arch(4, np.random.default_rng(2))
    parts = Drift.over(poses).parts
    way = poses[2, :3, 3] - poses[1, :3, 3]
    length = float(np.linalg.norm(way))
    slope = np.zeros(24)
    slope[6:9] = -poses[1, :3, :3].T @ way / length
    slope[12:15] = poses[2, :3, :3].T @ way / length
    assert slope @ parts[0] @ slope == pytest.approx(length / 50.0)
    assert slope @ parts[1] @ slope == pytest.approx(0.0, abs=1e-9)
    assert slope @ parts[3] @ slope == pytest.approx((length / 50.0) ** 2)


def test_axes_that_all_stand_otherwise_against_their_places_are_drift() -> None:
    poses = arch(4, np.random.default_rng(9))
    drift = Drift.over(poses).parts[1]
    turned = np.concatenate([np.concatenate([np.zeros((3, 3)), pose[:3, :3].T]) for pose in poses])
    moved = np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses])
    against = turned - moved @ np.linalg.lstsq(moved, turned, rcond=None)[0]
    tolerance = 1e-9 * np.linalg.norm(drift, 2)
    rigid_too = np.concatenate([drift, moved / np.linalg.norm(moved, axis=0)], axis=1)
    assert np.linalg.matrix_rank(rigid_too, tolerance) == 3 * 4 + 6
    assert np.linalg.matrix_rank(np.concatenate([rigid_too, against], axis=1), tolerance) == 3 * 4 + 6


def test_what_is_held_likely_of_drift_follows_profile_and_budgets(tmp_path: Path) -> None:
    rng = np.random.default_rng(3)
    plain = records(tmp_path, [arch(3, rng)] * 2, rng)
    assert prior_of(plain, None) is NOT_STATED
    profile = Profile(
        "desk", "7", Estimate(20.0, 4.0, 12.0, 28.0), Estimate(0.05, 0.01, 0.03, 0.07), None, (), None, 6, 90.0
    )
    told = prior_of(plain, profile)
    assert told.median[1] == pytest.approx(0.020)
    assert told.median[2] == pytest.approx(np.radians(0.05))
    values = document(arch(2, rng), rng, "b")
    sites = values["sites"]
    assert isinstance(sites, list)
    away = float(np.linalg.norm(np.subtract(*(np.array(site["scan_from_connection"])[:3, 3] for site in sites))))
    row = {
        "source": "drift",
        "platform_um": 30.0 * np.sqrt(3.0 * away / 50.0),
        "axis_deg": 0.0,
        "index_deg": None,
        "from": "",
    }
    for site in sites:
        site["budget"] = [row]
    stated = read_result(write(tmp_path / "b", values))
    assert prior_of([stated], None).median[1] == pytest.approx(0.030)
    assert prior_of([stated, plain[0]], None) is NOT_STATED


def test_what_cells_show_where_nothing_moved_has_the_covariance_said(tmp_path: Path) -> None:
    """P_k(r_k − μ) is linear in the residuals: its covariance follows from that of the scans."""
    rng = np.random.default_rng(41)
    laid = layout(united(records(tmp_path, [arch(4, np.random.default_rng(2))] * 3, rng)))
    drift, theta = Drift.over(laid.poses).parts, np.array([1.0, 0.02, 1e-4, 1e-4, 1e-3])
    cells = [(1, 0), (1, 2), (2, 2)]
    columns = []
    for unit in np.eye(72):
        fits = solve(dataclasses.replace(laid, residual=unit.reshape(3, 24)), drift, theta[None], cells).cells
        columns.append(np.concatenate([np.linalg.solve(fit.covariance[0], fit.shift[0]) for fit in fits]))
    of_scan = covariances(theta[None], laid.stated[0], laid.reseated[0], drift)[0]
    expected = np.array(columns).T @ np.kron(np.eye(3), of_scan) @ np.array(columns)
    scale = np.sqrt(np.diag(expected))
    assert np.abs((joint(laid, drift, theta, cells) - expected) / np.outer(scale, scale)).max() < 1e-6


def test_many_tests_count_for_no_more_than_they_are_and_no_fewer_than_one(tmp_path: Path) -> None:
    rng = np.random.default_rng(42)
    laid = layout(united(records(tmp_path, [arch(4, rng)] * 3, rng)))
    cells = _cells(laid)
    counted = Multiplicity.of(laid, Drift.over(laid.poses).parts, np.array([1.0, 1e-4, 1e-6, 1e-6, 1e-4]), cells)
    assert LEVEL / len(cells) < counted.critical < LEVEL
    p = np.geomspace(1e-6, 1.0, 50)
    corrected = np.array([counted.corrected(value) for value in p])
    assert (np.diff(corrected) >= 0.0).all()
    assert (corrected >= 0.9 * p).all()
    assert (corrected <= np.minimum(1.0, len(cells) * p) + LEVEL).all()
    assert ((corrected <= LEVEL) == (p <= counted.critical)).all()


def test_p_values_are_not_too_small_where_nothing_moved_but_the_scan_drifts(tmp_path: Path) -> None:
    rng = np.random.default_rng(4)
    found = []
    for run in range(12):
        poses = arch(4, rng)
        scans = records(tmp_path / str(run), [drifted(poses, rng, 0.03) for _ in range(2)], rng)
        laid = layout(united(scans))
        drawn = draws(laid, Drift.over(laid.poses).parts, [(1, run % 4)], NOT_STATED)
        found.append({"height": p_value(drawn, drawn.heights[0]), "pose": p_value(drawn, drawn.cells[0])})
    for test in ("height", "pose"):
        values = np.array([one[test] for one in found])
        assert values.mean() > 0.5 - 3.0 / np.sqrt(12.0 * len(values)), test
        assert values.min() > 1e-4, test


def test_the_covariance_of_what_is_pooled_holds_the_truth(tmp_path: Path) -> None:
    rng = np.random.default_rng(5)
    squares, improved = [], []
    for run in range(16):
        poses = arch(4, rng)
        frame = rigid.exp(np.concatenate([rng.normal(0.0, 20.0, 3), rng.normal(0.0, 1.0, 3)]))
        files = [
            write(tmp_path / f"{run}-{k}", document(poses, rng, f"s{k}", scan_from_mouth=None if k else frame))
            for k in range(3)
        ]
        found = compare(files).pooled
        assert found is not None
        sites = found.result.sites
        joint = np.zeros((24, 24))
        place = {site.site: slice(6 * k, 6 * k + 6) for k, site in enumerate(sites)}
        for site in sites:
            joint[place[site.site], place[site.site]] = site.covariance
        for (one, two), block in found.cross.items():
            joint[place[one], place[two]], joint[place[two], place[one]] = block, block.T
        error = np.concatenate(
            [rigid.log(rigid.inverse(s.scan_from_connection) @ frame @ p) for s, p in zip(sites, poses, strict=True)]
        )
        squares.append(error @ np.linalg.solve(joint, error) / 24.0)
        improved.append(found.result.pairs[0].u95_um)
    assert abs(np.mean(squares) - 1.0) < 4.0 * np.sqrt(2.0 / (24 * 16))
    single = 1.96 * np.sqrt(2.0) * 15.0 / 2.7955
    assert np.mean(improved) < 0.8 * single, "three scans know a distance better than one"
