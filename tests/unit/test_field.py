"""exp in compiled loops, the covariance of patches that is made of it, and its factor, against NumPy's."""

from __future__ import annotations

import numpy as np
import pytest

from stylobate.core.decay import MOST, decay
from stylobate.fit.edges import END
from stylobate.uncertainty.field import BESIDE, EDGE_LENGTH, MOST_PATCHES, VIEW, Field, Patches, Whitened, groups_of


def test_decay_is_exp_to_the_last_bits() -> None:
    x = np.concatenate([[0.0, 1e-300, 1e-9, MOST], np.linspace(0.0, MOST, 10_001), np.log(2.0) * np.arange(0.5, 80.0)])
    x = x[x <= MOST]
    assert [decay(float(one)) for one in x] == pytest.approx(np.exp(-x), rel=1e-15, abs=0.0)
    assert decay(1e6) == decay(MOST)


@pytest.mark.parametrize("smoothness", [0.5, 1.5, 2.5])
def test_covariance_is_the_sum_of_its_parts(smoothness: float) -> None:
    rng = np.random.default_rng(7)
    centre, normal, spread = rng.uniform(0.0, 3.0, (40, 3)), rng.normal(size=(40, 3)), rng.uniform(0.0, 0.01, 40)
    edge = np.where(rng.random(40) < 0.5, rng.random(40), 0.0)
    count = rng.integers(1, 9, 40).astype(np.float64)
    field = Field(0.004, 0.009, 0.6, smoothness, view_sd=0.003, edge_sd=0.012)
    found = field.covariance(Patches(centre, np.zeros(40), normal, count, spread, edge))

    away = np.sqrt(np.sum((centre[:, None] - centre) ** 2, axis=2) + spread[:, None] + spread)
    u = np.sqrt(2.0 * smoothness) * away / field.length
    shape = {0.5: np.ones_like(u), 1.5: 1.0 + u, 2.5: 1.0 + u + u**2 / 3.0}[smoothness] * np.exp(-u)
    unit = normal / np.linalg.norm(normal, axis=1, keepdims=True)
    views = normal @ normal.T * np.exp((unit @ unit.T - 1.0) / VIEW)
    end = unit[:, 2] > END
    edges = np.outer(edge, edge) * np.exp(-away / EDGE_LENGTH) * (end[:, None] == end)
    expected = field.correlated_sd**2 * shape + field.view_sd**2 * views + field.edge_sd**2 * edges
    assert found == pytest.approx(expected + np.diag(field.white_sd**2 / count), rel=1e-12, abs=1e-18)


@pytest.mark.parametrize("patches", [1, 64, 65, 200])
def test_the_factor_of_a_covariance_gives_it_back(patches: int) -> None:
    rng = np.random.default_rng(patches)
    some = Patches(rng.uniform(0.0, 3.0, (patches, 3)), np.zeros(patches), rng.normal(size=(patches, 3)),
                   np.ones(patches), np.full(patches, 0.01))  # fmt: skip
    field = Field(0.004, 0.009, 0.6, 1.5)
    factor = field.factor(some)
    assert np.all(np.triu(factor, 1) == 0.0)
    assert np.all(np.diag(factor) > 0.0)
    assert factor @ factor.T == pytest.approx(field.covariance(some), rel=1e-12, abs=1e-18)


def test_what_is_known_beforehand_draws_once_and_not_at_each_step() -> None:
    """Of a linear problem many steps end where the first does."""
    rng = np.random.default_rng(3)
    matrix, residual, prior = rng.normal(size=(30, 4)), rng.normal(size=30), np.array([0.0, 5.0, 50.0, 500.0])
    first, _, _ = Whitened(matrix, residual).solve(prior)
    away = first
    for _ in range(5):
        away = away + Whitened(matrix, residual - matrix @ away).solve(prior, away)[0]
    assert away == pytest.approx(first, rel=1e-9)


@pytest.mark.parametrize("spacing", [0.01, 0.2])
def test_patches_are_finer_beside_a_sharp_edge_and_mix_no_points_of_both(spacing: float) -> None:
    x, y = (axis.ravel() for axis in np.meshgrid(np.arange(0.0, 6.0, spacing), np.arange(0.0, 4.0, spacing)))
    points, up = np.column_stack([x, y, np.zeros_like(x)]), np.tile([0.0, 0.0, 1.0], (len(x), 1))
    group = groups_of(points, up, x)
    near, far = np.unique(group[x < BESIDE]), np.unique(group[x >= BESIDE])
    assert not set(near) & set(far)
    assert len(near) + len(far) == group.max() + 1 <= MOST_PATCHES
    assert len(np.unique(groups_of(points, up))) <= MOST_PATCHES
    if spacing < 0.1:
        size = np.bincount(group)
        assert np.median(size[far]) > 7.0 * np.median(size[near])
