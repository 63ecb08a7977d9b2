"""What is known beforehand of the profile at edges, of how truly they are shown, and of views, where a real body is
weighed."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from stylobate.core.surface import Scan, Surface
from stylobate.diagnose.evidence import gather, weighed
from stylobate.fit.edges import PROFILE_SD
from stylobate.measuring.site import Bench, Measured
from stylobate.measuring.verb import fitted_sites
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Settings, draw_bodies, scene
from stylobate.uncertainty import pose as weighing
from stylobate.uncertainty.field import EDGE_WARY, Field, Patches, groups_of
from stylobate.uncertainty.likelihood import estimate
from stylobate.uncertainty.pose import PROFILE, weigh


@cache
def measured() -> tuple[Bench, Measured]:
    bodies = draw_bodies(5, 1)
    made = scene(Settings(seed=5, arch="single", bodies=1, edge_mm=0.2, rounding_mm=0.08), bodies)
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
    points = gather(tree, edges, site.around, site.fit.support, pose).points
    fine = replace(points, group=groups_of(points.feet, points.gradient, points.to_edge))
    one = weighed(fine, pose.field.weighing())
    assert np.abs(pose.profile).max() > 0.005
    assert np.abs(one.step[PROFILE] / PROFILE_SD).max() < 0.3


def test_causes_are_looked_for_as_if_edges_were_shown_less_truly() -> None:
    bench, site = measured()
    pose = site.pose
    one = gather(bench.trees[site.body], bench.edges[site.body], site.around, site.fit.support, pose)
    assert pose.field.edge_sd < EDGE_WARY
    assert one.field.edge_sd == EDGE_WARY


def test_all_of_a_shift_of_views_counts_in_the_covariance_and_a_part_in_the_weights(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    bench, site = measured()
    tree, edges = bench.trees[site.body], bench.edges[site.body]
    narrow = weigh(tree, edges, site.around, site.fit)

    def shifted(patches: Patches, known: Field | None) -> Field:
        return replace(estimate(patches, known), view_sd=0.03)

    monkeypatch.setattr(weighing, "estimate", shifted)
    wide = weigh(tree, edges, site.around, site.fit)
    assert narrow is not None
    assert wide is not None
    assert np.array_equal(wide.scan_from_connection, narrow.scan_from_connection)
    sd = [float(np.sqrt(np.trace(one.covariance[:3, :3]))) for one in (narrow, wide)]
    assert sd[1] > 3.0 * sd[0] > 0.003
