"""Comparing scans against published values and another library."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from stylobate.several.comparing.components import Values, over_all, repeatability, reproducibility, within
from stylobate.several.lay import laid

SULPHUR = (
    (0.71, 0.71, 0.70, 0.71), (0.69, 0.67, 0.68), (0.66, 0.65, 0.69), (0.67, 0.65, 0.66),
    (0.70, 0.69, 0.66, 0.71, 0.69), (0.73, 0.74, 0.73), (0.71, 0.71, 0.69), (0.70, 0.65, 0.68),
)  # fmt: skip
"""ISO 5725-2, sulphur content of coal, level 1, in % mass, by laboratory (data and results quoted from memory)."""


def test_iso_5725_2_sulphur_in_coal() -> None:
    y = np.concatenate([np.array(laboratory) for laboratory in SULPHUR])
    none = np.zeros(len(y), dtype=np.int64)
    laboratory = np.repeat(np.arange(len(SULPHUR)), [len(values) for values in SULPHUR])
    values = Values(y, none, none, laboratory, np.zeros((len(y), 0)), np.ones(len(y)))
    inside, one, independent = within(values), np.ones(1), np.eye(len(y))
    repeated = repeatability(values, inside, one, independent)
    overall, between = reproducibility(values, inside, over_all(values), one, independent)
    assert repeated is not None
    assert overall is not None
    assert between is not None
    assert round(float(y.mean()), 3) == 0.690
    assert round(repeated.sd, 3) == 0.015
    assert round(overall.sd, 3) == 0.026
    assert repeated.sd == pytest.approx(0.01512, abs=5e-6)
    assert between == pytest.approx(0.02160, abs=5e-6)
    assert overall.sd == pytest.approx(0.02636, abs=5e-6)
    assert repeated.freedom == pytest.approx(len(y) - len(SULPHUR))


def test_laying_equals_scipy_align_vectors() -> None:
    rng = np.random.default_rng(1)
    for _ in range(20):
        source, target = rng.normal(size=(8, 3)), rng.normal(size=(8, 3))
        motion = laid(source, target)
        rotation, _ = Rotation.align_vectors(target - target.mean(axis=0), source - source.mean(axis=0))
        assert np.allclose(motion[:3, :3], rotation.as_matrix(), atol=1e-9)
        assert np.allclose(motion[:3, 3], target.mean(axis=0) - rotation.apply(source.mean(axis=0)), atol=1e-9)
