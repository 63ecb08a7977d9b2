"""What a pose may reach beyond its covariance stays counted, whatever is found wrong, and moves nothing."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from study.measured import _from_near
from study.scenes import draw, scan_of
from stylobate.diagnose import diagnose
from stylobate.measuring.site import Measured
from stylobate.uncertainty.pose import weigh


@pytest.mark.parametrize(("cause", "style", "size"), [("", "", None), ("lost material", "chip", 280.0)])
def test_it_is_added_to_the_covariance_of_the_motion_alone(cause: str, style: str, size: float | None) -> None:
    """With nothing found the field is kept; with a chip it is estimated anew."""
    case = draw(7_300_000, cause, style, size, noise="matern32")
    made = case.scene()
    site, bench = _from_near(case, made.sites[0], scan_of(made))
    assert isinstance(site, Measured)
    tree, edges, body = bench.trees[site.body], bench.edges[site.body], bench.bodies[site.body]
    pose = weigh(tree, edges, site.around, site.fit)
    assert pose is not None
    assert pose.unsure is not None
    assert np.all(pose.reaches == 0.0)
    far = np.zeros_like(pose.parameters)
    far[2, 2] = 0.05**2
    wide = replace(pose, parameters=pose.parameters + far, unsure=pose.unsure.and_more(far), reaches=far)
    plain, reaching = (diagnose(tree, edges, site.around, site.fit, one, body) for one in (pose, wide))
    assert [f.cause for f in reaching.findings] == [f.cause for f in plain.findings]
    assert (cause in [f.cause for f in plain.findings]) == bool(cause)
    np.testing.assert_allclose(reaching.pose.scan_from_connection, plain.pose.scan_from_connection, atol=1e-9)
    np.testing.assert_allclose(reaching.pose.covariance - plain.pose.covariance, far[:6, :6], atol=1e-9)
