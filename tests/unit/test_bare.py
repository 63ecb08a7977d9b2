"""What is known of the offset before the scan, against integrals by SciPy."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import norm

from stylobate.core import rigid
from stylobate.fit.descend import OFFSET_SD
from stylobate.uncertainty.bare import BARE_SD, COATED, known, settled
from stylobate.uncertainty.field import Field
from stylobate.uncertainty.pose import OFFSET, Pose


def under_a_layer(seen_sd: float) -> float:
    return 1.0 / (1.0 / seen_sd**2 + 1.0 / OFFSET_SD**2)


@pytest.mark.parametrize("says", [0.0, 0.004, -0.012, 0.03])
@pytest.mark.parametrize("seen_sd", [0.001, 0.006, 0.02])
def test_mean_and_variance_are_those_of_the_posterior(says: float, seen_sd: float) -> None:
    def density(offset: float) -> float:
        prior = (1.0 - COATED) * norm.pdf(offset, 0.0, BARE_SD) + COATED * norm.pdf(offset, 0.0, OFFSET_SD)
        return float(norm.pdf(says, offset, seen_sd) * prior)

    def moment(power: int, about: float = 0.0) -> float:
        places = sorted({-0.3, says - 5 * seen_sd, -4 * BARE_SD, 0.0, 4 * BARE_SD, says, says + 5 * seen_sd, 0.3})
        pieces = itertools.pairwise(places)
        return float(sum(quad(lambda x: (x - about) ** power * density(x), a, b, epsrel=1e-10)[0] for a, b in pieces))

    whole = moment(0)
    mean = moment(1) / whole
    got = known(says, under_a_layer(seen_sd))
    assert got[0] == pytest.approx(mean, rel=1e-5, abs=1e-9)
    assert got[1] == pytest.approx(moment(2, mean) / whole, rel=1e-5)


def test_a_layer_beyond_doubt_stays_as_the_scan_says() -> None:
    mean, variance, follows = known(0.04, under_a_layer(0.002))
    assert mean == pytest.approx(0.04 * OFFSET_SD**2 / (OFFSET_SD**2 + 0.002**2), rel=1e-6)
    assert variance == pytest.approx(under_a_layer(0.002), rel=1e-6)
    assert follows == pytest.approx(1.0, abs=0.01)


def pose(offset: float) -> Pose:
    root = np.diag([0.004, 0.005, 0.009, 0.001, 0.001, 0.003, 0.011, 0.02])
    mixed = np.eye(8)
    mixed[2, 6], mixed[0, 6] = 0.9, 0.3
    mixed /= np.linalg.norm(mixed, axis=1, keepdims=True)
    parameters = root @ mixed @ mixed.T @ root
    start, field = rigid.exp(np.array([1.0, 2.0, 3.0, 0.3, 0.2, 0.1])), Field(0.01, 0.01, 1.0, 1.5)
    return Pose(start, parameters, offset, np.full(1, 0.05), field, 90.0)


def test_what_hangs_on_the_offset_moves_along_and_is_known_better() -> None:
    before = pose(0.006)
    after, _ = settled(before, np.zeros((8, 2)))
    assert abs(after.offset) < abs(before.offset)
    assert np.all(np.diag(after.parameters) <= np.diag(before.parameters) + 1e-18)
    assert np.linalg.eigvalsh(after.parameters).min() > 0.0
    slope = before.parameters[:6, OFFSET] / before.parameters[OFFSET, OFFSET]
    motion = rigid.log(rigid.inverse(before.scan_from_connection) @ after.scan_from_connection)
    assert np.allclose(motion, slope * (after.offset - before.offset), atol=1e-12)


def test_a_made_part_moves_the_pose_as_if_the_offset_were_held() -> None:
    before = pose(0.0)
    made = np.zeros((8, 1))
    made[OFFSET] = 1.0
    _, changed = settled(before, made)
    slope = before.parameters[:6, OFFSET] / before.parameters[OFFSET, OFFSET]
    held = 1.0 - known(0.0, float(before.parameters[OFFSET, OFFSET]))[2]
    assert 0.5 < held < 1.0
    assert np.allclose(changed[:, 0], -slope * held)
