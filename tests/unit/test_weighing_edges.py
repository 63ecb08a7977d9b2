"""What is known beforehand of the profile at edges, and of how truly they are shown, where a real body is weighed."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from stylobate.core.surface import Scan, Surface
from stylobate.diagnose.evidence import gather, points_at, weighed
from stylobate.fit.edges import PROFILE_SD
from stylobate.measuring.site import Bench, Measured
from stylobate.measuring.verb import fitted_sites
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Settings, draw_bodies, scene
from stylobate.uncertainty import pose as weighing
from stylobate.uncertainty.field import EDGE_WARY, groups_of
from stylobate.uncertainty.pose import PROFILE, weigh

ROUNDED = Settings(seed=5, arch="single", bodies=1, edge_mm=0.2, rounding_mm=0.08)


@cache
def measured(settings: Settings = ROUNDED) -> tuple[Bench, Measured]:
    bodies = draw_bodies(settings.seed, 1)
    made = scene(settings, bodies)
    connection = Connection(bodies[0].seats_on, "other", 1, 4.2)
    origin = np.round(made.surface.vertices.mean(axis=0))
    surface = Surface(np.ascontiguousarray(made.surface.vertices - origin), made.surface.faces)
    bench, found = fitted_sites(Scan(surface, origin, "scan", ""), PartsFolder("p", "1", "", "", (connection,), bodies))
    return bench, found[0]


def test_the_pose_rests_where_the_profile_is_drawn_to_what_is_known_of_it() -> None:
    """What counts that once, over the same patches by the same weights, asks for no further step."""
    bench, site = measured()
    tree, edges = bench.trees[site.body], bench.edges[site.body]
    pose = weigh(tree, edges, site.around, site.fit)
    assert pose is not None
    points = points_at(tree, edges, site.around, site.fit.support, pose)
    fine = replace(points, group=groups_of(points.feet, points.gradient, points.to_edge))
    one = weighed(fine, pose.field)
    assert np.abs(pose.profile).max() > 0.005
    assert np.abs(one.step[PROFILE] / PROFILE_SD).max() < 0.3


def test_causes_are_looked_for_as_if_edges_were_shown_less_truly() -> None:
    bench, site = measured()
    pose = site.pose
    one = gather(bench.trees[site.body], bench.edges[site.body], site.around, site.fit.support, pose)
    assert pose.field.edge_sd < EDGE_WARY
    assert one.field.edge_sd == EDGE_WARY


def test_another_minimum_of_the_turn_widens_what_is_stated_by_itself_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the field leaves open is taken by the weights of the fit: by the mixture's covariance it grew tenfold."""
    bench, site = measured(Settings(seed=111, arch="single", bodies=1, edge_mm=0.25, unseen=(0.5, 0.7)))
    rested = []

    def kept(*given: Any) -> Any:
        rested.append(best_turned(*given))
        return rested[-1]

    best_turned = weighing._best_turned
    monkeypatch.setattr(weighing, "_best_turned", kept)
    pose = weigh(bench.trees[site.body], bench.edges[site.body], site.around, site.fit)
    assert pose is not None
    turn, local = rested[0].covariance[5, 5], np.linalg.inv(rested[0].information)[5, 5]
    assert turn > 10.0 * local
    assert turn < pose.covariance[5, 5] < 1.5 * turn
