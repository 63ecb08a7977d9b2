"""Scan bodies held ready from scan to scan: the same ones again, and not more than fit."""

from __future__ import annotations

from functools import partial

import pytest

from stylobate.core.recent import Recent
from stylobate.find import template
from stylobate.measuring import site
from stylobate.simulate import draw_bodies


def test_the_latest_are_kept_and_no_more() -> None:
    made: list[str] = []

    def made_of(key: str) -> str:
        made.append(key)
        return key.upper()

    kept: Recent[str] = Recent(2)
    for key in ("a", "b", "a", "c", "a", "b"):
        assert kept.of(key, partial(made_of, key)) == key.upper()
    assert made == ["a", "b", "c", "b"]


def test_surfaces_and_templates_are_kept_for_the_next_scan(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(site, "_known", Recent(2))
    monkeypatch.setattr(template, "_known", Recent(2))
    bodies = draw_bodies(5, 3)
    for of in (site._prepared, template.template_of):
        first = of(bodies[0])
        of(bodies[1])
        assert of(bodies[0]) is first
        of(bodies[2])
        assert of(bodies[0]) is first
