"""`python -m bench.repeats [--runs N] [--seed S]`: what `compare` finds, how often it is wrong, and whether it covers.

Results are drawn, not scans: four implants over an arch 44 mm wide, u95 15 µm, axis 0.05°, turn 0.2°. Each line is one
kind of case; the seed of the published figures was used for nothing else.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from itertools import combinations
from pathlib import Path

import numpy as np

from stylobate.core import rigid
from stylobate.core.result import PartsInfo, ScanInfo
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite
from stylobate.several.comparing.model import Comparison
from stylobate.several.comparing.verb import compare
from stylobate.several.drifting.model import Estimate, Profile

SITES = 4
SD = 15e-3 / 2.7955
TILT, TURN = np.radians(0.05 / 2.4477), np.radians(0.2 / 1.96)
VARIANCES = np.array([SD**2] * 3 + [TILT**2] * 2 + [TURN**2])


@dataclass(frozen=True)
class Case:
    """scans; height (mm) of one body in the last scan; drift (mm) over the arch, kind; whether a profile tells it."""

    scans: int
    height: float
    drift: float
    kind: str = "walk"
    told: bool = False
    noise: float = 1.0

    def __str__(self) -> str:
        words = f"{self.scans} scans, body {1e3 * self.height:.0f} µm high, drift {1e3 * self.drift:.0f} µm"
        factor = "" if self.noise == 1.0 else f", noise × {self.noise:g} of what is stated"
        return f"{words} ({self.kind}{', told by a profile' if self.told else ''}){factor}"


@dataclass(frozen=True)
class Outcome:
    """site: where the body stood high. named, wrong: it, others. covered: by figure.

    Of the pooled result: nees, ξᵀC⁻¹ξ over its expectation; inside, distances: shares within their 95 % bounds.
    """

    site: int
    named: bool
    wrong: bool
    findable: FloatArray
    covered: dict[str, bool]
    nees: float = np.nan
    inside: float = np.nan
    distances: float = np.nan


def cases(quick: bool) -> list[Case]:
    """What is tried."""
    made = [Case(2, 0.0, 0.03), Case(3, 0.06, 0.0, told=True), Case(3, 0.0, 0.03), Case(2, 0.06, 0.0, told=True)]
    made += [Case(2, 0.0, 0.0, told=True), Case(3, 0.06, 0.0), Case(5, 0.06, 0.0), Case(2, 0.0, 0.03, "walk and turns")]
    made += [Case(2, 0.0, 0.03, "bend"), Case(3, 0.0, 0.0), Case(2, 0.06, 0.0), Case(3, 0.06, 0.03, told=True)]
    made += [Case(3, 0.0, 0.03, told=True), Case(2, 0.0, 0.0), Case(5, 0.0, 0.03), Case(2, 0.0, 0.03, "scale")]
    made += [Case(8, 0.06, 0.0), Case(2, 0.0, 0.06), Case(5, 0.0, 0.0, noise=1.3)]
    return made[:2] if quick else made


def arch(rng: np.random.Generator) -> FloatArray:
    """(SITES, 4, 4) implants leaning some degrees."""
    poses = []
    for t in np.linspace(-1.0, 1.0, SITES):
        rotation = rigid.rotation_exp(rng.normal(0.0, 0.1, 3))
        poses.append(rigid.pose(rotation, np.array([22.0 * t, 36.0 * (1.0 - t**2), 0.0]) + rng.normal(0.0, 1.5, 3)))
    return np.array(poses)


def drifted(poses: FloatArray, case: Case, rng: np.random.Generator) -> FloatArray:
    """Poses of one scan; the far end is off by `drift` (sd, each way for a walk) against the near one."""
    steps = np.linalg.norm(np.diff(poses[:, :3, 3], axis=0), axis=1)
    share = np.concatenate([[0.0], np.cumsum(steps) / steps.sum()])
    result = poses.copy()
    size = case.drift * rng.normal()
    if case.kind == "scale":
        ends = np.linalg.norm(poses[-1, :3, 3] - poses[0, :3, 3])
        result[:, :3, 3] += size / ends * (poses[:, :3, 3] - poses[0, :3, 3])
    elif case.kind == "bend":
        result[:, 2, 3] += size * share**2
    else:
        walk = np.zeros((SITES, 3))
        walk[1:] = np.cumsum(rng.normal(size=(SITES - 1, 3)) * np.sqrt(np.diff(share))[:, None], axis=0)
        result[:, :3, 3] += case.drift * walk
    if case.kind == "walk and turns":
        turns = np.cumsum(rng.normal(size=(SITES, 3)) * np.radians(0.1) / np.sqrt(SITES), axis=0)
        for k in range(SITES):
            result[k, :3, :3] = rigid.rotation_exp(turns[k]) @ result[k, :3, :3]
    return result


def record(poses: FloatArray, name: str, noise: float, rng: np.random.Generator) -> tuple[Record, FloatArray]:
    """A result of these poses in a frame of its own, and scan_from_mouth."""
    scan_from_mouth = rigid.exp(np.concatenate([rng.normal(0.0, 20.0, 3), rng.normal(0.0, 1.0, 3)]))
    sites = []
    for k, pose in enumerate(poses):
        seen = scan_from_mouth @ pose @ rigid.exp(noise * np.sqrt(VARIANCES) * rng.normal(size=6))
        sites.append(RecordSite(str(k + 1), "alder-tall", "alder", 4.2, 6, seen, np.diag(VARIANCES)))
    parts = PartsInfo("Harbour Street demo parts", "2026-11", "")
    return Record(Path(name), name, ScanInfo(name, name, 1), parts, "bridge", tuple(sites)), scan_from_mouth


def outcome(job: tuple[Case, int, int]) -> Outcome:
    """One comparison, drawn by its seed."""
    case, seed, number = job
    rng = np.random.default_rng([seed, number, round(1e4 * case.drift), case.scans])
    poses, site = arch(rng), number % SITES
    records, frame = [], np.eye(4)
    for k in range(case.scans):
        shown = drifted(poses, case, rng)
        if k == case.scans - 1:
            shown[site] = shown[site] @ rigid.exp(np.array([0.0, 0.0, case.height, 0.0, 0.0, 0.0]))
        one, scan_from_mouth = record(shown, f"scan {k + 1}", case.noise, rng)
        records.append(one)
        frame = scan_from_mouth if k == 0 else frame
    found = compare(records, profile=_profile(case, poses) if case.told else None)
    truly = (case.scans - 1, site) if case.height else None
    cells = [(moved.cell[0], int(found.union.name(moved.cell[1])) - 1) for moved in found.moved]
    wrong = any(cell != truly for cell in cells)
    findable, pooled = 1e3 * np.array(found.findable), _pooled(found, poses, frame)
    return Outcome(site, truly in cells, wrong, findable, _covered(found, case, poses), *pooled)


def _profile(case: Case, poses: FloatArray) -> Profile:
    """What a profile of this scanner would say, known to a fifth."""
    way = float(np.linalg.norm(np.diff(poses[:, :3, 3], axis=0), axis=1).sum())
    walk = 1e3 * case.drift / np.sqrt(way / 50.0)
    shift = Estimate(walk, walk / 5.0, 0.6 * walk, 1.4 * walk)
    return Profile("desk", "1", shift, Estimate(0.0, 0.0, 0.0, 0.0), None, (), None, SITES, way)


def _covered(found: Comparison, case: Case, poses: FloatArray) -> dict[str, bool]:
    """Whether the 95 % intervals hold the true standard deviations; of poses, only where nothing drifts."""
    truth = {"distance": np.sqrt(2.0 * SD**2 * case.noise**2 + _drift_of_distances(case, poses))}
    if case.drift == 0.0:
        truth |= {"platform": SD * 3**0.5, "side": SD, "height": SD, "axis": TILT * 2**0.5, "index": TURN}
        truth = {key: value * (case.noise if key != "distance" else 1.0) for key, value in truth.items()}
    spreads = {key: found.repeats.within[key] for key in truth}
    return {key: s.low <= truth[key] <= s.high for key, s in spreads.items() if s is not None}


def _drift_of_distances(case: Case, poses: FloatArray) -> float:
    """Mean variance (mm²) of the distances by a walk."""
    steps = np.linalg.norm(np.diff(poses[:, :3, 3], axis=0), axis=1)
    share = np.concatenate([[0.0], np.cumsum(steps) / steps.sum()])
    return float(np.mean([case.drift**2 * (share[j] - share[i]) for i, j in combinations(range(SITES), 2)]))


def _pooled(found: Comparison, poses: FloatArray, frame: FloatArray) -> tuple[float, float, float]:
    """nees, inside and distances of an Outcome; NaN where nothing was pooled."""
    if found.pooled is None:
        return np.nan, np.nan, np.nan
    result = found.pooled.result
    sites = result.sites
    centres = poses[:, :3, 3] @ frame[:3, :3].T + frame[:3, 3]
    poses = poses[[np.linalg.norm(centres - s.scan_from_connection[:3, 3], axis=1).argmin() for s in sites]]
    xi = [rigid.log(rigid.inverse(site.scan_from_connection) @ frame @ poses[k]) for k, site in enumerate(sites)]
    joint = np.zeros((6 * len(sites), 6 * len(sites)))
    place = {site.site: slice(6 * k, 6 * k + 6) for k, site in enumerate(sites)}
    for site in sites:
        joint[place[site.site], place[site.site]] = site.covariance
    for (one, two), block in found.pooled.cross.items():
        joint[place[one], place[two]], joint[place[two], place[one]] = block, block.T
    error = np.concatenate(xi)
    within = [float(np.linalg.norm(x[:3])) <= 1e-3 * site.u95.platform_um for x, site in zip(xi, sites, strict=True)]
    number = {site.site: k for k, site in enumerate(sites)}
    apart = [poses[number[p.sites[0]], :3, 3] - poses[number[p.sites[1]], :3, 3] for p in result.pairs]
    held = [
        abs(pair.distance_mm - float(np.linalg.norm(way))) <= 1e-3 * pair.u95_um
        for pair, way in zip(result.pairs, apart, strict=True)
    ]
    nees = float(error @ np.linalg.solve(joint, error)) / len(error)
    return nees, float(np.mean(within)), float(np.mean(held))


def lines(case: Case, outcomes: list[Outcome]) -> Iterator[str]:
    """What came of a case, with binomial standard errors."""
    count = len(outcomes)
    wrong = float(np.mean([o.wrong for o in outcomes]))
    ends = [o.named for o in outcomes if o.site in (0, SITES - 1)]
    middle = [o.named for o in outcomes if o.site not in (0, SITES - 1)]
    text = f"{case}: "
    if case.height:
        text += f"named {100 * np.mean([o.named for o in outcomes]):.1f} % "
        text += f"(ends {100 * np.mean(ends):.0f}, between {100 * np.mean(middle):.0f}), "
    text += f"false alarms {100 * wrong:.1f} ± {100 * np.sqrt(max(wrong, 1 / count) / count):.1f} %, "
    can = np.array([o.findable for o in outcomes if not np.isnan(o.findable).all()]).reshape(-1, SITES)
    if len(can):
        text += "can find " + " ".join(f"{value:.0f}" for value in np.nanmedian(can, axis=0)) + " µm"
    yield text
    keys = sorted({key for o in outcomes for key in o.covered})
    held = {key: np.mean([o.covered[key] for o in outcomes if key in o.covered]) for key in keys}
    text = "    intervals hold: " + ", ".join(f"{key} {100 * value:.0f} %" for key, value in held.items())
    if case.kind != "scale":
        text += f"; pooled: distances within u95 {100 * np.nanmean([o.distances for o in outcomes]):.1f} %"
    if case.drift == 0.0:
        text += f", platforms {100 * np.nanmean([o.inside for o in outcomes]):.1f} %"
        text += f", ξᵀC⁻¹ξ/n {np.nanmean([o.nees for o in outcomes]):.2f}"
    yield text


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--runs", type=int, default=400)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--quick", action="store_true", help="the first two cases only")
    chosen = parser.parse_args()
    with ProcessPoolExecutor(chosen.workers) as pool:
        for case in cases(chosen.quick):
            jobs = [(case, chosen.seed, number) for number in range(chosen.runs)]
            for line in lines(case, list(pool.map(outcome, jobs, chunksize=8))):
                print(line, flush=True)


if __name__ == "__main__":
    main()
