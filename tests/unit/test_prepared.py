"""Surfaces held ready from scan to scan: the same ones again, and not more than fit."""

from __future__ import annotations

import pytest

from stylobate import site
from stylobate.simulate import draw_bodies


def test_the_latest_are_kept_and_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(site, "MOST_KNOWN", 2)
    monkeypatch.setattr(site, "_known", {})
    a, b, c = draw_bodies(5, 3)
    first = site._prepared(a)
    site._prepared(b)
    assert site._prepared(a) is first
    site._prepared(c)
    assert site._prepared(a) is first
    assert list(site._known) == [c.sha256, a.sha256]
