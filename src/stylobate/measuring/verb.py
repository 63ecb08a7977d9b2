"""Scan and parts → Result. The one place that knows the order of the stages."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import numpy as np

from stylobate.core.arch import order_along, ways
from stylobate.core.errors import UsageError
from stylobate.core.result import Pair, PartsInfo, Result, ScanInfo, Site
from stylobate.core.surface import Scan
from stylobate.core.threads import one_blas_thread
from stylobate.core.types import BoolArray, FloatArray
from stylobate.diagnose.facing import faced
from stylobate.find import Candidate, find
from stylobate.find.template import template_of
from stylobate.find.thin import vertex_normals
from stylobate.measuring.described import Work, site_of
from stylobate.measuring.handedness import image_fits_better, only_in_the_mirror
from stylobate.measuring.notshown import not_shown
from stylobate.measuring.otherparts import finding, fits_better, rest_of
from stylobate.measuring.site import Bench, Measured, Resembles, measure_site
from stylobate.parts import load_parts
from stylobate.parts.model import PartsFolder, ScanBody
from stylobate.scan import read_scan
from stylobate.settings import DEFAULT, WORKS, Drift, Settings, read_settings
from stylobate.uncertainty.bounds import pair
from stylobate.uncertainty.budget import Leg, drift_over
from stylobate.verdict.rules import judge_together

SHARED = 0.2  # of a site's surface may be claimed by a better one
NEAR_REACH = 8.0  # mm from a rough point within which its scan body must stand

Progress = Callable[[str, float], None]


@one_blas_thread
def measure(
    scan: Scan | str | Path,
    parts: PartsFolder | str | Path,
    *,
    scan_bodies: Sequence[str] = (),
    count: int | None = None,
    near: Sequence[Sequence[float]] = (),
    near_bodies: Sequence[str] = (),
    work: str = "bridge",
    settings: Settings | str | Path | None = None,
    maps: bool = True,
    threads: int = 2,
    progress: Progress | None = None,
) -> Result:
    """Find the scan bodies in a scan and measure where their implants are.

    scan_bodies: ids that may stand there (all of the folder when empty). count: how many sites there are, if known.
    near: rough points (x, y, z) in scan coordinates, one a site, instead of the search. near_bodies: for each of them
    the id of the scan body that stands there, "" where any may. work: single, bridge or arch.
    settings: limits and figures of one's own. maps: give each site its coloured surface. threads: that look
    for sites and fit them at the same time. progress: called with the stage and its share done, 0 to 1.

    Raises ScanError, PartsError, SettingsError, UsageError. Fewer sites than `count` is not an error: compare
    len(result.sites).
    """
    tell = progress or _silent
    if work not in WORKS:
        raise UsageError(f"work '{work}' is unknown; choose one of: {', '.join(WORKS)}.")
    chosen = settings if isinstance(settings, Settings) else DEFAULT if settings is None else read_settings(settings)
    tell("reading the parts", 0.0)
    folder = parts if isinstance(parts, PartsFolder) else load_parts(parts)
    bodies = _chosen(folder, scan_bodies)
    tell("reading the scan", 0.0)
    read = scan if isinstance(scan, Scan) else read_scan(scan)
    warnings = list(read.warnings)
    vertices, faces = read.surface.vertices, read.surface.faces
    normals = vertex_normals(vertices, faces)
    points = [np.asarray(p, dtype=np.float64) - read.origin for p in near]
    bench = Bench(folder, bodies)

    tell("looking for scan bodies", 0.0)
    named = near_bodies or [""] * len(near)
    found, unfit = _at_points(bench, vertices, normals, list(zip(points, named, strict=True)), tell, threads)
    if scan_bodies:
        bench, found = _checked_against_the_rest(bench, found, vertices, normals, points, count, threads)
    if not found:
        warnings += _handedness(bench, vertices, normals, points, threads)
    warnings += _no_part_fits(bench, found, unfit, read.origin)
    if near:
        _require_near(found, points, near, named)
    found = _strongest(found, count, warnings)
    centres = np.array([m.pose.scan_from_connection[:3, 3] for m in found])
    order = order_along(centres, np.array([m.pose.scan_from_connection[:3, 2] for m in found]))
    found = [found[i] for i in order]
    legs = _legs([m.pose.scan_from_connection for m in found])

    def described(k: int) -> Site:
        job = Work(work, chosen, _farthest(legs[k]))
        return site_of(bench, str(k + 1), found[k], read, faces if maps else None, job)

    with ThreadPoolExecutor(threads) as pool:
        sites = faced(tuple(pool.map(described, range(len(found)))), read.origin)
        pairs = _pairs(sites, legs, chosen.drift, pool)
    warnings += _mirrored(bench, [one for one, site in zip(found, sites, strict=True) if _odd(site)])
    return Result(
        scan=ScanInfo(Path(read.file).name, read.sha256, len(faces)),
        parts=PartsInfo(folder.name, folder.revision, folder.sha256),
        work=work,
        sites=sites,
        pairs=pairs,
        not_shown=not_shown(sites),
        warnings=tuple(warnings),
        together=judge_together(sites, pairs, work, chosen.limits[work], chosen.drift is not None)
        if len(sites) > 1
        else None,
    )


def made_ready(parts: str | Path, scan_bodies: Sequence[str] = ()) -> PartsFolder:
    """A parts folder, and what `measure` needs of its scan bodies held ready: a scan can be read beside it.

    Arguments and errors as for `measure`.
    """
    folder = load_parts(parts)
    bench = Bench(folder, _chosen(folder, scan_bodies))
    for tree, body in zip(bench.trees, bench.bodies, strict=True):
        _ = tree.cells, template_of(body)
    return folder


def fitted_sites(
    scan: Scan, folder: PartsFolder, scan_bodies: Sequence[str] = (), progress: Progress | None = None
) -> tuple[Bench, list[Measured]]:
    """The sites of a scan with the points behind them, best first, as `measure` finds them. Raises UsageError."""
    bench = Bench(folder, _chosen(folder, scan_bodies))
    normals = vertex_normals(scan.surface.vertices, scan.surface.faces)
    return bench, _measured(bench, scan.surface.vertices, normals, [], progress or _silent)


def _chosen(folder: PartsFolder, names: Sequence[str]) -> tuple[ScanBody, ...]:
    known = [body.id for body in folder.scan_bodies]
    for name in names:
        if name not in known:
            raise UsageError(
                f"scan body '{name}' is not in the parts folder '{folder.name}'. It has: {', '.join(known)}."
            )
    chosen = tuple(body for body in folder.scan_bodies if not names or body.id in names)
    if not chosen:
        raise UsageError(f"the parts folder '{folder.name}' has no scan body. Add one to parts.toml.")
    return chosen


def _measured(
    bench: Bench, vertices: FloatArray, normals: FloatArray, points: Sequence[FloatArray], tell: Progress,
    threads: int = 2,
) -> list[Measured]:  # fmt: skip
    return _places(bench, vertices, normals, points, tell, threads)[0]


def _places(
    bench: Bench, vertices: FloatArray, normals: FloatArray, points: Sequence[FloatArray], tell: Progress,
    threads: int = 2,
) -> tuple[list[Measured], list[Resembles]]:  # fmt: skip
    """All sites that hold, best first, and the places that resemble one.

    Where two claim one place the one with more surface behind it stays.
    """
    keep = _near_mask(vertices, points)
    candidates: list[Candidate] = find(
        vertices[keep] if points else vertices, normals[keep] if points else normals, bench.bodies,
        progress=lambda share: tell("looking for scan bodies", share), threads=threads,
    )  # fmt: skip
    tell("fitting", 0.0)
    result: list[Measured] = []
    unfit: list[Resembles] = []
    with ThreadPoolExecutor(threads) as pool:
        jobs = pool.map(lambda c: measure_site(bench, vertices, normals, c), candidates)
        for done, measured in enumerate(jobs):
            tell("fitting", (done + 1) / len(candidates))
            if isinstance(measured, Measured):
                result.append(measured)
            elif measured is not None:
                unfit.append(measured)
    result.sort(key=lambda m: -m.carried_area)
    return _apart(result, len(vertices)), unfit


def _at_points(
    bench: Bench, vertices: FloatArray, normals: FloatArray, points: Sequence[tuple[FloatArray, str]], tell: Progress,
    threads: int,
) -> tuple[list[Measured], list[Resembles]]:  # fmt: skip
    """Sites near rough points, everywhere without any; where a point names a scan body no other is tried there."""
    found: list[Measured] = []
    unfit: list[Resembles] = []
    for name in dict.fromkeys(own for _, own in points) or [""]:
        here = [point for point, own in points if own == name]
        if not name:
            sites, others = _places(bench, vertices, normals, here, tell, threads)
            found += sites
            unfit += others
            continue
        index = next((k for k, body in enumerate(bench.bodies) if body.id == name), None)
        if index is None:
            known = ", ".join(body.id for body in bench.bodies)
            raise UsageError(f"scan body '{name}' is named for a point but may not stand there; choose from: {known}.")
        alone = Bench(bench.parts, (bench.bodies[index],))
        for measured in _places(alone, vertices, normals, here, tell, threads)[0]:
            readings = tuple(replace(reading, body=index) for reading in measured.readings)
            found.append(replace(measured, body=index, readings=readings))
    return found, unfit


def _no_part_fits(bench: Bench, found: Sequence[Measured], unfit: Sequence[Resembles], origin: FloatArray) -> list[str]:
    """What to say of places that resemble a scan body and are none of the folder's."""
    warnings = []
    alone = [place for place in unfit if all(site.distance_to(place.middle) > NEAR_REACH / 2.0 for site in found)]

    def at(place: Resembles) -> str:
        return f"at ({', '.join(f'{value:.1f}' for value in place.middle + origin)}) '{bench.bodies[place.body].id}'"

    loose = [at(place) for place in alone if place.loose]
    if loose:
        warnings.append(
            f"too little is seen to fix where the scan body stands: {'; '.join(loose)}. Scan it again from all sides,"
            " its top and edges above all; a stump needs nothing."
        )
    named = [
        f"{at(place)} ({1e3 * place.sd:.0f} µm off)"
        for place in sorted(alone, key=lambda place: place.sd)
        if not place.loose
    ]
    if named:
        warnings.append(
            f"these places resemble a scan body but no part fits: {'; '.join(named)}. Where one is a scan body, read"
            " the number on it and add its part to the folder, or scan it again from all sides; a tooth needs nothing."
        )
    if not found and not warnings:
        names = ", ".join(body.id for body in bench.bodies)
        warnings.append(
            f"nothing in the scan is like any of: {names}. If a scan body stands there, no part fits it: read the"
            " number on it and add its part to the folder, or scan it again from all sides."
        )
    return warnings


def _apart(sites: list[Measured], vertices: int) -> list[Measured]:
    """Sites, best first, that stand on surface of their own."""
    taken = np.zeros(vertices, np.bool_)
    apart = []
    for measured in sites:
        own = measured.around.index[measured.fit.support]
        if float(np.mean(taken[own])) < SHARED:
            apart.append(measured)
            taken[measured.claimed] = True
    return apart


def _near_mask(vertices: FloatArray, points: Sequence[FloatArray]) -> BoolArray:
    keep = np.zeros(len(vertices), np.bool_)
    for point in points:
        keep |= np.sum((vertices - point) ** 2, axis=1) < (NEAR_REACH + 10.0) ** 2
    return keep


def _require_near(
    found: list[Measured], points: Sequence[FloatArray], near: Sequence[Sequence[float]], named: Sequence[str]
) -> None:
    """Keep for each rough point the nearest site; refuse when one has none."""
    kept: list[Measured] = []
    for point, given, name in zip(points, near, named, strict=True):
        nearest = [m for m in found if m.distance_to(point) < NEAR_REACH and all(m is not one for one in kept)]
        if not nearest:
            where = ",".join(f"{x:g}" for x in given)
            what = f"nothing that fits '{name}'" if name else "no scan body"
            raise UsageError(
                f"{what} within {NEAR_REACH:g} mm of --near={where}. Point at the post, or leave --near out."
            )
        kept.append(min(nearest, key=lambda m: m.distance_to(point)))
    found[:] = kept


def _strongest(found: list[Measured], count: int | None, warnings: list[str]) -> list[Measured]:
    if count is not None and len(found) > count:
        warnings.append(f"{len(found)} scan bodies are in the scan; the {count} with most surface are reported.")
        return found[:count]
    return found


def _checked_against_the_rest(
    bench: Bench, found: list[Measured], vertices: FloatArray, normals: FloatArray, points: Sequence[FloatArray],
    count: int | None, threads: int,
) -> tuple[Bench, list[Measured]]:  # fmt: skip
    """Sites of the scan bodies that the user named, doubted where one of the rest of the folder fits better.

    Where fewer are found than there must be, what the rest finds is a site too, with that finding.
    """
    rest = rest_of(bench.parts, bench.bodies)
    checked = []
    for measured in found:
        better = fits_better(bench, rest, measured)
        checked.append(measured if better is None else measured.doubted(better))
    if not rest or len(checked) >= (count or 1):
        return bench, checked
    whole = Bench(bench.parts, (*bench.bodies, *rest))
    named, shift = " or ".join(body.id for body in bench.bodies), len(bench.bodies)
    for other in _measured(Bench(bench.parts, rest), vertices, normals, points, _silent, threads):
        if all(other.distance_to(known.middle) > NEAR_REACH / 2.0 for known in checked):
            readings = tuple(replace(reading, body=reading.body + shift) for reading in other.readings)
            stands = replace(other, body=other.body + shift, readings=readings)
            checked.append(stands.doubted(finding(rest[other.body].id, named)))
    return whole, checked


def _handedness(
    bench: Bench, vertices: FloatArray, normals: FloatArray, points: Sequence[FloatArray], threads: int
) -> list[str]:
    """Nothing was found: would it be in the mirror, or with the surface turned inside out?"""
    flip = np.array([-1.0, 1.0, 1.0])
    mirrored = [p * flip for p in points]
    for side in (1.0, -1.0):
        found = _measured(bench, vertices * flip, normals * flip * side, mirrored, _silent, threads)
        if any(only_in_the_mirror(bench, site) for site in found):
            return ["the scan is mirrored: scan bodies fit only its mirror image. Export it again without mirroring."]
    if _measured(bench, vertices, -normals, points, _silent, threads):
        return ["the scan's surface is inside out: its triangles face inwards. Export it again, or flip the triangles."]
    return []


def _odd(site: Site) -> bool:
    """Whether something about the site's shape is amiss, beyond what is not seen of it."""
    return any(finding.cause not in ("missing surface", "index ambiguous") for finding in site.findings)


def _mirrored(bench: Bench, doubtful: Sequence[Measured]) -> list[str]:
    """Sites with findings, of which the one with most surface is asked: is it the scan that is the wrong way round?"""
    if doubtful and image_fits_better(bench, max(doubtful, key=lambda m: m.carried_area)):
        return [
            "the scan looks mirrored: a scan body's mirror image fits it better. Export it again without mirroring."
        ]
    return []


def _silent(stage: str, share: float) -> None:
    """Progress that nobody watches."""


def _legs(poses: Sequence[FloatArray]) -> list[list[Leg]]:
    """From each site to each, in order along the arch."""
    centres = np.array([pose[:3, 3] for pose in poses]).reshape(-1, 3)
    along = ways(centres)
    return [
        [Leg(abs(float(along[j] - along[i])), pose[:3, :3].T @ (centres[j] - centres[i])) for j in range(len(poses))]
        for i, pose in enumerate(poses)
    ]


def _farthest(legs: Sequence[Leg]) -> Leg | None:
    return max(legs, key=lambda leg: leg.way) if len(legs) > 1 else None


def _pairs(
    sites: Sequence[Site], legs: Sequence[Sequence[Leg]], drift: Drift | None, pool: ThreadPoolExecutor
) -> tuple[Pair, ...]:
    """Of each two sites; where all sources count, drift is that from one to the other (method/profile, eq. 7)."""
    still = [_still(site, _farthest(own), drift) for site, own in zip(sites, legs, strict=True)]

    def made(two: tuple[int, int]) -> Pair:
        i, j = two
        names = (sites[i].site, sites[j].site)
        poses = (sites[i].scan_from_connection, sites[j].scan_from_connection)
        drifting = 0.0 if drift is None else drift_over(drift, legs[j][i])
        alone = pair(names, poses, (sites[i].covariance, sites[j].covariance))
        all_counted = (still[i], still[j] + drifting)
        nothing_more = all(map(np.array_equal, all_counted, (sites[i].covariance, sites[j].covariance)))
        whole = alone if nothing_more else pair(names, poses, all_counted)
        return replace(alone, total_um=whole.u95_um, angle_total_deg=whole.angle_u95_deg)

    return tuple(pool.map(made, combinations(range(len(sites)), 2)))


def _still(site: Site, farthest: Leg | None, drift: Drift | None) -> FloatArray:
    """(6, 6) covariance of all sources but drift."""
    assert site.covariance_total is not None
    if drift is None or farthest is None:
        return site.covariance_total
    return np.asarray(site.covariance_total - drift_over(drift, farthest))
