"""Halves of a site agree where the field is the true one, and do not where noise is taken as white."""

from __future__ import annotations

import numpy as np

from stylobate.field import Field
from stylobate.selfcheck import SiteCheck, _pooled, checked
from tests.unit.evidence_making import FIELD, drawn, evidence


def checks(field: Field, seed: int, count: int = 24) -> list[SiteCheck]:
    return [
        one
        for k, values in enumerate(drawn(count, seed))
        for one in checked(evidence(values, field), "s", str(k), "post")
    ]


def test_true_covariances_pass() -> None:
    found = checks(FIELD, 1)
    assert len(found) == 48
    for cell in (1.0, 2.0):
        pooled = _pooled(found, cell)
        # Half again of the 95 % band about 1: beyond three standard deviations.
        assert 1 - 1.5 * (1 - pooled.low) < pooled.ratio < 1 + 1.5 * (pooled.high - 1)


def test_noise_taken_as_white_is_seen() -> None:
    white = Field(float(np.hypot(FIELD.white_sd, FIELD.correlated_sd)), 1e-9, 0.6, 1.5)
    pooled = _pooled(checks(white, 2), 2.0)
    assert pooled.ratio > 2.0
    assert not pooled.holds


def test_a_covariance_too_large_is_seen() -> None:
    wide = Field(2 * FIELD.white_sd, 2 * FIELD.correlated_sd, FIELD.length, FIELD.smoothness)
    pooled = _pooled(checks(wide, 3), 1.0)
    assert pooled.ratio < pooled.low
