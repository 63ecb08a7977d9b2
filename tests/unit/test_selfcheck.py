"""Halves of a site agree where the field is the true one, and do not where noise is taken as white."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from stylobate import selfcheck
from stylobate.core.arch import order_along
from stylobate.core.surface import Scan, Surface
from stylobate.parts.model import PartsFolder
from stylobate.selfcheck import SiteCheck, _pooled, checked
from stylobate.uncertainty.field import Field
from tests.unit.evidence_making import FIELD, drawn, evidence


def checks(field: Field, seed: int, count: int = 24) -> list[SiteCheck]:
    return [
        one
        for k, values in enumerate(drawn(count, seed))
        for one in checked(evidence(values, field), "s", str(k), "post")
    ]


def test_sites_are_numbered_as_measure_does(monkeypatch: pytest.MonkeyPatch) -> None:
    """The search gives them best first; result.json counts along the arch."""
    along = [(0.0, 0.0), (8.0, -3.0), (16.0, -4.0), (24.0, -2.0)]
    found = []
    for k in (2, 0, 3, 1):
        at = np.eye(4)
        at[:2, 3] = along[k]
        pose = SimpleNamespace(scan_from_connection=at, field=None)
        found.append(SimpleNamespace(body=0, around=None, fit=SimpleNamespace(support=None), pose=pose))
    bench = SimpleNamespace(trees=[None], edges=[None], bodies=[SimpleNamespace(id="post")])
    seen: list[tuple[str, float]] = []

    def note(pose: SimpleNamespace, _scan: str, site: str, _body: str) -> list[SiteCheck]:
        seen.append((site, pose.scan_from_connection[0, 3]))
        return []

    monkeypatch.setattr(selfcheck, "fitted_sites", lambda *_: (bench, found))
    monkeypatch.setattr(selfcheck, "gather", lambda *parts: parts[4])
    monkeypatch.setattr(selfcheck, "checked", note)
    scan = Scan(Surface(np.zeros((1, 3)), np.zeros((0, 3), np.int32)), np.zeros(3), "s", "")
    selfcheck.selfcheck([scan], PartsFolder("", "", "", "", (), ()))
    order = order_along(np.array([[*at, 0.0] for at in along]), np.tile([0.0, 0.0, 1.0], (4, 1)))
    assert seen == [(str(k + 1), along[i][0]) for k, i in enumerate(order)]


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
