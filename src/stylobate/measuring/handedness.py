"""Is a scan mirrored? Only a scan body whose mirror image is another shape can tell."""

from __future__ import annotations

import numpy as np

from stylobate.choose.readings import LEAST_ODDS, LEFT_BEHIND, TRUNCATED, lay
from stylobate.core import rigid
from stylobate.core.closest import SurfaceTree
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.fit.descend import REACH, to_connection, within_reach
from stylobate.measuring.site import Bench, Measured

CERTAIN = 2.0 * float(np.log(LEAST_ODDS))
TURNS = np.radians(np.arange(0.0, 360.0, 6.0))  # tried for the mirror image, each at all of these heights, mm
HEIGHTS = np.arange(-1.5, 1.51, 0.25)
PLACES_LAID = 12  # of these the best are laid on the scan
POINTS = 250


def only_in_the_mirror(bench: Bench, measured: Measured) -> bool:
    """Whether a site that was measured in the mirror image of a scan speaks for the mirror.

    The scan body's own mirror image stands for "the scan is as it should be". It must fit the same points so much worse
    that the odds against it reach LEAST_ODDS; a body with a plane of symmetry never says so.
    """
    return _doubt_of_the_image(bench, measured) > CERTAIN


def image_fits_better(bench: Bench, measured: Measured) -> bool:
    """Whether a site that was measured in the scan as it is fits the scan body's mirror image with LEAST_ODDS."""
    return _doubt_of_the_image(bench, measured) < -CERTAIN


def _doubt_of_the_image(bench: Bench, measured: Measured) -> float:
    """−2 ln of the odds of the scan body's mirror image, at its best turn, against the body as measured."""
    region = bench.bodies[measured.body].region
    flipped = Surface(region.vertices * np.array([1.0, -1.0, 1.0]), np.ascontiguousarray(region.faces[:, ::-1]))
    trees = (bench.trees[measured.body], SurfaceTree.of(flipped))
    pose = measured.pose.scan_from_connection
    starts = [(0, pose), *((1, turned) for turned in _best_places(trees[1], measured, pose))]
    points = measured.pose.effective_points
    readings = lay(trees, measured.around, starts)
    plain = next((reading for reading in readings if reading.body == 0), None)
    images = [reading for reading in readings if reading.body == 1]
    if plain is None or not images:  # left far behind by the other, or nothing fits
        return points * LEFT_BEHIND * (bool(plain) - bool(images))
    return min(image.doubt(plain, points) for image in images)


def _best_places(tree: SurfaceTree, measured: Measured, pose: FloatArray) -> list[FloatArray]:
    """Poses turned about z and moved along it at which the truncated squares of the distances are least."""
    near = measured.around.points[within_reach(tree, measured.around, pose, POINTS)]
    places = [(height, turn) for height in HEIGHTS for turn in TURNS]
    poses = [pose @ rigid.exp(np.array([0.0, 0.0, height, 0.0, 0.0, turn])) for height, turn in places]
    loss = np.empty(len(poses))
    for k, moved in enumerate(poses):
        distance = tree.closest(to_connection(moved, near), REACH).distance
        loss[k] = np.mean(np.minimum(np.abs(np.nan_to_num(distance, nan=np.inf)), TRUNCATED) ** 2)
    return [poses[k] for k in np.argsort(loss)[:PLACES_LAID]]
