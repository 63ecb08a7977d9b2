"""What is known beforehand of the profile at edges, and of how truly they are shown, where a real body is weighed."""

from __future__ import annotations

from functools import cache

import numpy as np

from stylobate.core.surface import Scan, Surface
from stylobate.diagnose.evidence import gather
from stylobate.fit.edges import PROFILE_SD
from stylobate.measuring.site import Bench, Measured
from stylobate.measuring.verb import fitted_sites
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Settings, draw_bodies, scene
from stylobate.uncertainty.field import EDGE_WARY
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
    """The evidence, which counts that once, asks for no further step, but for its patches being formed anew."""
    bench, site = measured()
    tree, edges = bench.trees[site.body], bench.edges[site.body]
    pose = weigh(tree, edges, site.around, site.fit)
    assert pose is not None
    one = gather(tree, edges, site.around, site.fit.support, pose, pose.field)
    assert np.abs(pose.profile).max() > 0.005
    assert np.abs(one.step[PROFILE] / PROFILE_SD).max() < 0.3


def test_causes_are_looked_for_as_if_edges_were_shown_less_truly() -> None:
    bench, site = measured()
    pose = site.pose
    one = gather(bench.trees[site.body], bench.edges[site.body], site.around, site.fit.support, pose)
    assert pose.field.edge_sd < EDGE_WARY
    assert one.field.edge_sd == EDGE_WARY
