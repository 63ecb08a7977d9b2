"""Is a scan mirrored? Only a scan body whose mirror image is another shape can tell."""

from __future__ import annotations

import numpy as np

from stylobate.choose import LEAST_ODDS, lay
from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.site import Bench, Measured

TURN_STEP_DEG = 10.0  # between the turns from which the mirrored scan body is laid on


def only_in_the_mirror(bench: Bench, measured: Measured) -> bool:
    """Whether a site that was measured in the mirror image of a scan speaks for the mirror.

    The scan body's own mirror image, at every turn, stands for "the scan is as it should be". It must fit the same
    points so much worse that the odds against it reach LEAST_ODDS; a body with a plane of symmetry never says so.
    """
    region = bench.bodies[measured.body].region
    flipped = Surface(region.vertices * np.array([1.0, -1.0, 1.0]), np.ascontiguousarray(region.faces[:, ::-1]))
    trees = (bench.trees[measured.body], SurfaceTree.of(flipped))
    pose = measured.pose.scan_from_connection
    turns = np.radians(np.arange(0.0, 360.0, TURN_STEP_DEG))
    starts = [(0, pose), *((1, pose @ rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, turn]))) for turn in turns)]
    readings = lay(trees, measured.around, starts)
    mirrored = next(reading for reading in readings if reading.body == 0)
    proper = min((r for r in readings if r.body == 1), key=lambda r: r.doubt(mirrored, measured.pose.effective_points))
    return proper.doubt(mirrored, measured.pose.effective_points) > 2.0 * float(np.log(LEAST_ODDS))
