"""Votes for an axis are averaged about the best of them."""

from __future__ import annotations

import numpy as np

from stylobate.core import rigid
from stylobate.find.search import _distinct
from stylobate.find.template import template_of
from stylobate.find.vote import Axes
from stylobate.simulate import draw_bodies

TEMPLATE = template_of(draw_bodies(77, 1)[0])
RISE = 0.5 * (TEMPLATE.height_low + TEMPLATE.height_high)


def votes(middle: np.ndarray, count: int, seed: int) -> Axes:
    """Votes about a post that stands along z with its middle there, 4° and 0.3 mm off, of like score."""
    rng = np.random.default_rng(seed)
    tilts = [rigid.exp(np.array([0, 0, 0, *rng.normal(0, np.radians(2.8), 2), 0]))[:3, 2] for _ in range(count)]
    axis = np.array(tilts)
    centre = middle + rng.normal(0, 0.17, (count, 3))
    return Axes(rng.uniform(0.8, 0.9, count), axis, centre - axis * RISE, np.arange(count))


def test_the_mean_of_many_votes_is_nearer_than_the_best_of_them() -> None:
    off, best = [], []
    for seed in range(20):
        one = votes(np.zeros(3), 12, seed)
        axis, foot = _distinct(one, TEMPLATE, 1)
        off.append(np.hypot(*axis[0, :2]))
        best.append(np.hypot(*one.axis[int(np.argmax(one.score)), :2]))
        assert np.linalg.norm(foot[0] + axis[0] * RISE) < 0.3
    assert np.mean(off) < 0.5 * np.mean(best)


def test_posts_apart_stay_apart_and_poor_votes_do_not_pull() -> None:
    one, two = votes(np.zeros(3), 6, 1), votes(np.array([6.0, 0, 0]), 6, 2)
    poor = votes(np.array([0.6, 0, 0]), 6, 3)
    every = Axes(
        np.concatenate([one.score, two.score, 0.3 * poor.score]), np.concatenate([one.axis, two.axis, poor.axis]),
        np.concatenate([one.foot, two.foot, poor.foot]), np.arange(18),
    )  # fmt: skip
    axis, foot = _distinct(every, TEMPLATE, 10)
    middle = foot + axis * RISE
    assert np.min(np.linalg.norm(middle, axis=1)) < 0.3
    assert np.min(np.linalg.norm(middle - [6.0, 0, 0], axis=1)) < 0.3
