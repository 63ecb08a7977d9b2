"""What a fault has really done to a scan: how far its surface departs from the drawing, and how plainly this site shows
it.
"""

from __future__ import annotations

import math

import numpy as np

from stylobate.choose.readings import TURN_ODDS, TURNS_DEG, apart_deg
from stylobate.choose.turns import SET_AGAINST, odds_needed
from stylobate.core.closest import SurfaceTree
from stylobate.core.rigid import inverse, turn_z
from stylobate.core.sampling import sampled
from stylobate.core.types import FloatArray, LongArray
from stylobate.diagnose.bumps import tests_on
from stylobate.diagnose.evidence import gather
from stylobate.diagnose.foreign import carried
from stylobate.diagnose.hidden import POWER_Z
from stylobate.diagnose.shapes import made_part
from stylobate.diagnose.significance import FALSE_ALARMS, FAMILIES
from stylobate.diagnose.signs import TESTS
from stylobate.diagnose.surroundings import look
from stylobate.measuring.site import Bench, Measured
from stylobate.simulate import Scene
from stylobate.simulate.edges import rounded, sharp_edges
from stylobate.simulate.faults import WORN_MM, spheres, style_of, worn_radius, worn_spot
from stylobate.simulate.making import streams_of
from stylobate.uncertainty.budget import size_of
from stylobate.uncertainty.pose import OFFSET, doubts

MATERIAL = ("lost material", "added material")
SEEN_WITHIN = 0.3  # mm: a spot is in the scan where a vertex lies so near
SPOTS = 20_000  # on a sphere
SPACING = 0.03  # mm between the spots of a worn edge
SMALL_TURN_DEG = 0.5  # by which the turn's standard deviation is told
ON_IT = 0.15  # mm: what lies farther off without noise is not the scan region


def departure_um(made: Scene) -> float:
    """How far the scanned surface of the one body stands off its drawing because of the fault, at most, µm; 0 where the
    scan does not show it. Of a worn edge: beyond how all edges are rounded.

    It is the distance to the drawing's nearest point. A lump on a wall beside an edge stands farther out of the other
    face than out of the wall, so that its size as drawn is not how far it stands out.
    """
    from scipy.spatial import cKDTree

    truth = made.sites[0]
    body, edges = truth.body, sharp_edges(truth.body.surface)
    rng = streams_of(made.settings.seed)["faults"]
    balls = spheres(truth.faults, body, edges, truth.gum_mm, rng)
    tree = SurfaceTree.of(body.surface)
    if len(balls.cuts) or len(balls.blobs):
        sign = -1.0 if len(balls.cuts) else 1.0
        ball = np.vstack([balls.cuts, balls.blobs])[0]
        points = ball[:3] + ball[3] * _sphere(SPOTS)
        off = sign * tree.closest(points, 2.0).distance
    else:
        spots, normals = sampled(body.surface, SPACING)
        plain = made.settings.rounding_mm
        worn = worn_radius(truth.faults, body, edges, spots, plain, truth.gum_mm, rng)
        some = worn > 0.0
        spots, normals, worn = spots[some], normals[some], worn[some]
        before, _ = rounded(spots, normals, edges, np.full(len(spots), plain))
        points, _ = rounded(spots, normals, edges, np.full(len(spots), plain), worn)
        off = tree.closest(before, 2.0).distance - tree.closest(points, 2.0).distance
    seen = cKDTree(_body_vertices(made)).query(points)[0] < SEEN_WITHIN
    return 1e3 * float(np.max(off[seen & np.isfinite(off)], initial=0.0))


def _sphere(count: int) -> FloatArray:
    """Spots (count, 3) spread evenly over the unit sphere."""
    k = np.arange(count) + 0.5
    z, turn = 1.0 - 2.0 * k / count, k * math.pi * (3.0 - math.sqrt(5.0))
    flat = np.sqrt(1.0 - z**2)
    return np.stack([flat * np.cos(turn), flat * np.sin(turn), z], axis=1)


def _body_vertices(made: Scene) -> FloatArray:
    back = inverse(made.sites[0].scan_from_connection)
    return np.asarray(made.true_vertices[made.label == 0] @ back[:3, :3].T + back[:3, 3])


def plainness(made: Scene, bench: Bench, measured: Measured) -> tuple[float, float]:
    """By how many standard deviations the true displacement stands out of this site's noise, beside the pose, and by
    how many it would have to for being found with 95 % at 1 % false alarms.

    What is left out as gingiva shows nothing. A layer is the offset that it brings. A bend is looked at from where the
    body was measured: how far the fit may lean along with it is no small motion, and what a tilt takes up of it is not
    shown.
    """
    from scipy.stats import norm

    tree, fit = bench.trees[measured.body], measured.fit
    around, pose = measured.around, measured.pose
    points = carried(look(tree, around, pose), fit.support[fit.clear], pose.offset, fit.sd)
    evidence = gather(tree, bench.edges[measured.body], around, points.index, pose, closest=points.closest)
    vertex = around.index[points.index]
    stood = made.sites[0].scan_from_connection
    cause = made.sites[0].faults[0].cause
    if cause == "bent body":
        stood = pose.scan_from_connection.copy()
        stood[:3, 3] += np.round(made.surface.vertices[vertex[0]] - around.points[points.index[0]])  # the scan's origin
    shape = evidence.points.mean(_displaced(made, tree, vertex, stood))
    each = FALSE_ALARMS / FAMILIES
    if cause == "added layer":
        body = bench.bodies[measured.body]
        sizes = made_part(evidence.patches.centre, evidence.normal, *size_of(body))
        by_size = evidence.moved_by(sizes)[OFFSET] * (body.made_u_um or 0.0) * 1e-3
        sd = math.sqrt(float(evidence.covariance[OFFSET, OFFSET] + by_size @ by_size))
        return float(evidence.gain[OFFSET] @ shape) / sd, float(norm.isf(each)) + POWER_Z
    stands = math.sqrt(max(float(shape @ evidence.projected @ shape), 0.0))
    if cause in MATERIAL:
        tests = tests_on(evidence, np.ones(len(shape), np.bool_))
        return stands, float(norm.isf(each / tests)) + POWER_Z
    return stands, math.sqrt(-2.0 * math.log(each / TESTS["bent body"])) + POWER_Z


def turn_stands(made: Scene, bench: Bench, measured: Measured) -> float:
    """By how many standard deviations of this site's noise the true turn stands out of the next likely one, without
    noise: the root of −2 ln of its odds where what is seen of the scan body, all of it, lies as drawn. Of turns that
    need TURN_ODDS; 0 where there is none.
    """
    stood = made.sites[0].scan_from_connection
    seen = made.true_vertices[made.label == 0]
    seen = seen[:: max(1, len(seen) // SET_AGAINST)]
    tree = bench.trees[0]
    back = inverse(stood)
    off = tree.closest(seen @ back[:3, :3].T + back[:3, 3], 2.0).distance
    seen = np.ascontiguousarray(seen[np.abs(off) < ON_IT])
    turns = [SMALL_TURN_DEG, *TURNS_DEG[1:]]
    turned = [bench.stand(0, stood @ turn_z(math.radians(turn)), 0.0) for turn in turns]
    by_small, *others = doubts(measured.pose, bench.stand(0, stood, 0.0), turned, seen)
    sd_deg = SMALL_TURN_DEG / math.sqrt(max(by_small, 1e-9))
    asked = [
        doubt
        for turn, doubt in zip(TURNS_DEG[1:], others, strict=True)
        if odds_needed(apart_deg(turn, 360.0), sd_deg) == TURN_ODDS
    ]
    return math.sqrt(max(min(asked, default=0.0), 0.0))


def _displaced(made: Scene, tree: SurfaceTree, vertex: LongArray, stood: FloatArray) -> FloatArray:
    """(n,) mm by which vertices (n,) of the scan would stand off the drawing without noise, because of the fault.

    stood (4, 4): scan_from_connection of the drawing.
    """
    truth = made.sites[0]
    back = inverse(stood)
    points = made.true_vertices[vertex] @ back[:3, :3].T + back[:3, 3]
    off = np.nan_to_num(tree.closest(points, 2.0).distance, posinf=0.0, neginf=0.0)
    off[made.label[vertex] != 0] = 0.0
    fault = truth.faults[0]
    if style_of(fault) == "worn edge":
        edges = sharp_edges(truth.body.surface)
        spot = worn_spot(truth.body, edges, truth.gum_mm, streams_of(made.settings.seed)["faults"])
        off[np.linalg.norm(points - spot, axis=1) > WORN_MM] = 0.0
    elif fault.cause in MATERIAL:
        off[made.as_drawn[vertex]] = 0.0
    return np.asarray(off)
