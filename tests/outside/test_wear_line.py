"""The drift line against published fits and its stated rate of false alarms."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.register.wear import FALSE_ALARMS, outlook, slope_of

# NIST StRD "Norris" (linear regression, 36 pairs): B1 and its standard deviation, residual sd, certified.
NORRIS_Y = "0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7 \
228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2"
NORRIS_X = "0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6 556.0 \
228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5"
# JCGM 100:2008, H.3, thermometer calibration: slope 0.00218, s 0.00067; residual s 0.0035.
H3_T = "21.521 22.012 22.512 23.003 23.507 23.999 24.513 25.002 25.503 26.010 26.511"
H3_B = "-0.171 -0.169 -0.166 -0.159 -0.164 -0.165 -0.156 -0.157 -0.159 -0.161 -0.160"


def numbers(text: str) -> np.ndarray:
    return np.array([float(word) for word in text.split()])


def test_norris() -> None:
    slope = slope_of([(numbers(NORRIS_X), numbers(NORRIS_Y))])
    assert slope is not None
    assert slope.per_cycle_um == pytest.approx(1.00211681802045, rel=1e-12)
    assert slope.u_um == pytest.approx(0.000429796848199937, rel=1e-10)
    assert slope.scatter_um == pytest.approx(0.884796396144373, rel=1e-10)
    assert slope.dof == 34


def test_gum_h3() -> None:
    slope = slope_of([(numbers(H3_T), numbers(H3_B))])
    assert slope is not None
    assert slope.per_cycle_um == pytest.approx(0.00218, abs=5e-6)
    assert slope.u_um == pytest.approx(0.00067, abs=5e-6)
    assert slope.scatter_um == pytest.approx(0.0035, abs=5e-5)


def test_levels_of_their_own_equal_a_regression_with_dummies() -> None:
    rng = np.random.default_rng(4)
    series = [(rng.uniform(0, 30, n), rng.normal(5 * n, 3, n)) for n in (2, 3, 6)]
    slope = slope_of(series)
    assert slope is not None
    x, y = (np.concatenate(column) for column in zip(*series, strict=True))
    matrix = np.column_stack([x, *np.repeat(np.eye(3), [2, 3, 6], axis=0).T])
    solution, residual, _, _ = np.linalg.lstsq(matrix, y)
    variance = float(residual[0]) / (11 - 4)
    assert slope.per_cycle_um == pytest.approx(float(solution[0]), rel=1e-9)
    assert slope.u_um == pytest.approx(float(np.sqrt(variance * np.linalg.inv(matrix.T @ matrix)[0, 0])), rel=1e-9)
    assert slope.dof == 7


def test_too_little_for_a_line_is_none() -> None:
    assert slope_of([]) is None
    assert slope_of([(np.array([0.0, 5.0]), np.array([1.0, 2.0]))]) is None
    assert slope_of([(np.array([5.0, 5.0, 5.0]), np.array([1.0, 2.0, 3.0]))]) is None


@pytest.mark.parametrize("count", [3, 4, 10])
def test_false_alarms_come_at_the_stated_rate_and_bounds_hold(count: int) -> None:
    rng = np.random.default_rng(count)
    runs, alarms, held, drift = 4000, 0, 0, -0.4
    for _ in range(runs):
        cycles = np.sort(rng.choice(40, count, replace=False)).astype(np.float64)
        still = [slope_of([(cycles, rng.normal(0, 6, count))]) for _ in range(2)]
        alarms += any(outlook(slope, 40, None, 2).drifts for slope in still if slope is not None)
        worn = slope_of([(cycles, drift * cycles + rng.normal(0, 6, count))])
        assert worn is not None
        view = outlook(worn, 41, None, 2)
        held += abs(view.change_um - drift * 41) <= view.change_u95_um
    # 4.5 standard deviations of a binomial count
    assert abs(alarms - runs * FALSE_ALARMS) < 4.5 * np.sqrt(runs * FALSE_ALARMS)
    assert abs(held - runs * 0.95) < 4.5 * np.sqrt(runs * 0.95 * 0.05)


def test_the_limit_has_three_answers() -> None:
    cycles = np.arange(8.0)
    slope = slope_of([(cycles, 2.0 * cycles + np.tile([0.5, -0.5], 4))])
    assert slope is not None
    half = slope.u95_um(10)
    change = slope.per_cycle_um * 10
    assert outlook(slope, 10, change + half + 0.01, 2).limit == "kept"
    assert outlook(slope, 10, change + half - 0.01, 2).limit == "may be passed"
    assert outlook(slope, 10, change - 0.01, 2).limit == "passed"
    assert outlook(slope, 10, None, 2).limit is None
