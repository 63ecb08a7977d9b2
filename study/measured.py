"""One case measured as the command measures it, and what of that is kept."""

from __future__ import annotations

from typing import Any

import numpy as np

from study.least import least
from study.put_in import MATERIAL, departure_um, plainness, turn_stands
from study.scenes import Case, scan_of
from stylobate.core import rigid
from stylobate.core.result import Site
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray
from stylobate.find import Candidate
from stylobate.find.search import Reading
from stylobate.find.thin import vertex_normals
from stylobate.fit.descend import rows, to_connection
from stylobate.measuring import measure
from stylobate.measuring.described import Work, site_of
from stylobate.measuring.site import Bench, Measured, Resembles, measure_site
from stylobate.settings import DEFAULT
from stylobate.simulate import Truth

WORK = "bridge"
START_MM, START_RAD = 0.15, 0.03  # sd of the start about the truth, each axis
TURNS = 6
SAME_PLACE = 0.5  # mm
TOO_LITTLE = "too little seen"  # a warning of the command names the place of such a scan body


def outcome(case: Case, search: bool) -> dict[str, Any]:
    """Make, measure and compare one case: plain values for a file.

    search: begin with the blind search, as the command does; else from a start near the truth, all parts and turns
    tried. Where the user names the wrong part, the whole command's way is always taken.
    """
    made = case.scene()
    truth, scan = made.sites[0], scan_of(made)
    fault = case.settings.faults[0] if case.settings.faults else None
    kept: dict[str, Any] = {
        "seed": case.seed,
        "cause": case.cause,
        "style": fault.style if fault else "",
        "size": fault.size if fault else 0.0,
        "noise": case.noise,
        "family": case.family,
        "made": case.settings.made_um > 0.0,
        "shown": truth.body.id,
        "points": int(np.sum(made.label == 0)),
    }
    if case.cause in MATERIAL:
        kept["departure_um"] = departure_um(made)
    white: FloatArray | None = None
    if search or case.named:
        names = (case.named,) if case.named else ()
        result = measure(scan, case.parts(), scan_bodies=names, maps=False, work=WORK)
        at = truth.scan_from_connection[:3, 3]
        near = [s for s in result.sites if np.linalg.norm(s.scan_from_connection[:3, 3] - at) < SAME_PLACE]
        site = near[0] if near else None
        kept |= {"warned": list(result.warnings), "searched": True}
        said = " ".join(result.warnings)
        for told, words in ((TOO_LITTLE, "too little is seen"), ("no part fits", "no part fits")):
            if site is None and words in said:
                kept["told"] = told
    else:
        measured, bench = _from_near(case, truth, scan)
        site = None
        if isinstance(measured, Resembles):
            kept["told"] = TOO_LITTLE if measured.loose else "no part fits"
        elif measured is not None:
            site = site_of(bench, "1", measured, scan, None, Work(WORK, DEFAULT, None))
            white = _white(measured)
            kept["least"] = None if case.cause else least(bench, measured, made)
            if case.cause in (*MATERIAL, "added layer", "bent body"):
                kept["stands"], kept["needs"] = plainness(made, bench, measured)
            if case.cause == "index ambiguous":
                kept["turn_stands"] = turn_stands(made, bench, measured)
    kept["found"] = site is not None
    if site is not None:
        kept |= _compared(site, truth, white)
    return kept


def _from_near(case: Case, truth: Truth, scan: Scan) -> tuple[Measured | Resembles | None, Bench]:
    bench = Bench(case.parts(), case.bodies)
    vertices = scan.surface.vertices
    pose = truth.scan_from_connection.copy()
    pose[:3, 3] -= scan.origin
    rng = np.random.default_rng([case.seed, 1])
    jitter = rng.normal(size=6) * np.array([START_MM] * 3 + [START_RAD] * 3)
    turns = [rigid.exp(np.array([0, 0, 0, 0, 0, k * 2.0 * np.pi / TURNS])) for k in range(TURNS)]
    starts = [(body, pose @ rigid.exp(jitter) @ turn) for body in range(len(case.bodies)) for turn in turns]
    candidate = Candidate(tuple(Reading(body, start, 1.0) for body, start in starts))
    return measure_site(bench, vertices, vertex_normals(vertices, scan.surface.faces), candidate), bench


def _white(measured: Measured) -> FloatArray:
    """Covariance (6, 6) as if every vertex were independent: what counting vertices gives."""
    pose = measured.pose.scan_from_connection
    local = to_connection(pose, measured.around.points[measured.fit.support])
    normals = measured.around.normals[measured.fit.support] @ pose[:3, :3]
    matrix = rows(local, normals)
    return np.asarray(measured.fit.sd**2 * np.linalg.inv(matrix.T @ matrix + 1e-9 * np.eye(6)))


def _compared(site: Site, truth: Truth, white: FloatArray | None) -> dict[str, Any]:
    error = rigid.log(rigid.inverse(site.scan_from_connection) @ truth.scan_from_connection)
    assert site.verdict is not None
    assert site.u95_total is not None
    assert site.covariance_total is not None
    return {
        "part": site.scan_body,
        "error": error.tolist(),
        "covariance": site.covariance.tolist(),
        "total": site.covariance_total.tolist(),
        "white": None if white is None else white.tolist(),
        "u95": [site.u95.platform_um, site.u95.axis_deg, site.u95.index_deg],
        "u95_total": [site.u95_total.platform_um, site.u95_total.axis_deg, site.u95_total.index_deg],
        "verdict": site.verdict.verdict,
        "findings": [[f.cause, f.size_um, f.u95_um, f.size_deg, f.u95_deg, f.p, f.area_mm2] for f in site.findings],
    }
