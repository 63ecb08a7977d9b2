"""What each choice of the weighted fit costs of what a scan allows: python -m bench.price FIRST LAST.

On the scenes of the blind table, body and place known. Each row adds one thing that is not known beforehand; its figure
is the error that the noise alone would bring to the pose then, worked out with the noise's true covariance, over the
Cramér–Rao bound. The last row is what was measured on the same sites.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from bench.judge import PARTS, least_of, sizes
from bench.scenes import drawn, task_of
from stylobate.core import rigid
from stylobate.core.types import BoolArray, FloatArray
from stylobate.diagnose.evidence import points_at
from stylobate.find import Candidate
from stylobate.find.search import Reading
from stylobate.find.thin import vertex_normals
from stylobate.measuring.site import Bench, Measured, measure_site
from stylobate.simulate import Scene
from stylobate.simulate.cramer_rao import covariance_of_means
from stylobate.uncertainty.bare import BARE_SD
from stylobate.uncertainty.field import Field, Patches, groups_of, patches_of
from stylobate.uncertainty.pose import OFFSET, PRIOR_SD, PROFILE, TURN

MOST_TURN = 5.0  # degrees: a site turned farther counts in none
RIDGE = 1e-7  # of the mean variance: a smooth field's covariance is all but singular
MOST_INDEX = 1.0  # degrees, of the bound: a turn known no better is left out of its column
KNOWN_SD = np.where(np.arange(len(PRIOR_SD)) == OFFSET, BARE_SD, PRIOR_SD)  # of a bare body (method, eq. 5a)
ROWS = (
    "the noise's law known, pose alone",
    "and the profile at edges not known",
    "and the offset, of a bare body",
    "and the field estimated",
    "and views and edges counted (6a)",
    "measured",
)


def rows_of(seed: int) -> Iterator[tuple[FloatArray, FloatArray]]:
    """Of each site: standard deviations of platform, axis and index (rows, 3), and the bound's (3,)."""
    made, bodies = drawn(seed)
    task = task_of(made, bodies)
    scan, bench = task.scan(), Bench(task.parts, bodies)
    normals = vertex_normals(scan.surface.vertices, scan.surface.faces)
    names = [body.id for body in bodies]
    for truth, least in zip(made.sites, least_of(made), strict=True):
        stands = truth.scan_from_connection.copy()
        stands[:3, 3] -= scan.origin
        reading = Reading(names.index(truth.body.id), stands, 1.0)
        found = measure_site(bench, scan.surface.vertices, normals, Candidate((reading,)))
        if least is None or not isinstance(found, Measured):
            continue
        error = rigid.log(rigid.inverse(found.pose.scan_from_connection) @ stands)
        if abs(np.degrees(error[TURN])) < MOST_TURN:
            yield (
                np.array([*_priced(made, bench, found, stands, scan.origin), _sizes(np.outer(error, error))]),
                np.array([least[name] for name in PARTS]),
            )


def _priced(made: Scene, bench: Bench, found: Measured, stands: FloatArray, origin: FloatArray) -> list[FloatArray]:
    pose, body = found.pose, found.body
    points = points_at(bench.trees[body], bench.edges[body], found.around, found.fit.support, pose)
    points = replace(points, group=groups_of(points.feet, points.gradient, points.to_edge))
    patches, field = patches_of(points.feet, points.residual, points.rows, points.group, points.edge), pose.field
    places = points.feet @ stands[:3, :3].T + stands[:3, 3] + origin
    true = covariance_of_means(made.noise, places, points.gradient @ stands[:3, :3].T, points.group)
    true[np.diag_indices(len(true))] += RIDGE * np.trace(true) / len(true)
    free = np.zeros(len(PRIOR_SD), np.bool_)
    free[:6] = True
    known = [_error(patches, true, true, free)]
    for more in (PROFILE, slice(OFFSET, OFFSET + 1)):
        free = free.copy()
        free[more] = True
        known.append(_error(patches, true, true, free))
    alone = Field(field.white_sd, field.correlated_sd, field.length, field.smoothness)
    return known + [_error(patches, one.covariance(patches), true, free) for one in (alone, field)]


def _error(patches: Patches, weighed_by: FloatArray, true: FloatArray, free: BoolArray) -> FloatArray:
    """(3,) of a fit of the `free` parameters weighed by one covariance (m, m) under the true one."""
    matrix = patches.matrix[:, free]
    half = np.linalg.solve(weighed_by, matrix)
    gain = np.linalg.solve(matrix.T @ half + np.diag(1.0 / KNOWN_SD[free] ** 2), half.T)[:6]
    return _sizes(gain @ true @ gain.T)


def _sizes(covariance: FloatArray) -> FloatArray:
    return np.array(list(sizes(covariance).values()))


def main(first: int, last: int) -> None:
    """Print the rms of each row over the bound, over all sites."""
    found = [site for seed in range(first, last) for site in rows_of(seed)]
    ratio = np.array([sds / least for sds, least in found])
    shown = np.degrees(np.array([least[2] for _, least in found])) < MOST_INDEX
    print(f"{len(ratio)} sites, seeds {first} to {last - 1}; of the index {int(shown.sum())}")
    for row, name in enumerate(ROWS):
        square = ratio[:, row] ** 2
        platform, axis = np.sqrt(square[:, :2].mean(axis=0))
        print(f"{name:36s} {platform:.3f}  {axis:.3f}  {np.sqrt(square[shown, 2].mean()):.3f}")


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
