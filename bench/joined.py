"""Whether joined results state what is true: python -m bench.joined FIRST LAST [ROWS.csv].

Each seed is one mouth scanned twice (every fifth: three times), each time with some of its bodies: noise, drift and
gingiva as in bench.joins, every body measured as `measure` does. With a file, rows are added to it and the table is of
all in it, so that a long run can be made in pieces.
"""

from __future__ import annotations

import csv
import sys
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from bench.joins import drawn as drawn_pair
from stylobate.core import rigid
from stylobate.core.errors import StylobateError
from stylobate.core.result import Result, ScanInfo
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.record import Record, RecordSite
from stylobate.several.joined.model import Joined
from stylobate.several.joined.verb import join
from stylobate.simulate import Scene, Settings, Visit, again, draw_bodies

LIMIT_UM = 100.0
HEAD = ("seed", "what", "drift", "error_um", "u95_um", "axis_deg", "axis_u95_deg", "turn_deg", "turn_u95_deg", "nees")
Row = tuple[float | str, ...]


@dataclass(frozen=True)
class Mouth:
    """Settings of each scan, and what stands there at each."""

    settings: tuple[Settings, ...]
    visits: tuple[Visit, ...]


def drawn(seed: int) -> Mouth:
    """Three or four bodies: one in the first scan, none or one besides in all, the others in the later scans."""
    first, second, visit = drawn_pair(seed)
    rng = np.random.default_rng([77, seed])
    scans = 3 if seed % 5 == 4 else 2
    count = int(rng.integers(3, 5))
    order = (1 + rng.permutation(count)).tolist()
    common = set(order[: int(rng.integers(2))])
    rest = order[len(common) :]
    own = [{rest[0]}, *(set(rest[1 + k :: scans - 1]) for k in range(scans - 1))]
    settings = [replace(one, bodies=count) for one in (first, second, replace(second, noise=first.noise))[:scans]]
    visits = [
        Visit(int(rng.integers(1_000_000)), tuple(sorted(own[k] | common)), caps=bool(rng.integers(2)),
              gum_um=visit.gum_um if k else 0.0)
        for k in range(scans)
    ]  # fmt: skip
    return Mouth(tuple(settings), tuple(visits))


def measured(made: Scene, visit: Visit, bodies: tuple[ScanBody, ...], name: str) -> tuple[Scan, Record]:
    """The scan as it is read, and its result. Raises StylobateError."""
    origin = np.round(made.surface.vertices.mean(axis=0))
    scan = Scan(Surface(made.surface.vertices - origin, made.surface.faces), origin, name, name)
    connections = tuple(Connection(one, "other", 1, 4.2) for one in sorted({body.seats_on for body in bodies}))
    parts = PartsFolder("drawn", "1", "CC0-1.0", "0", connections, bodies)
    found = []
    for number in visit.standing:
        truth = made.sites[number - 1]
        near = truth.scan_from_connection[:3, 3].tolist()
        found.append(measure(scan, parts, scan_bodies=[truth.body.id], near=[near], maps=False, threads=1))
    return scan, record_of(found, name)


def record_of(results: list[Result], name: str) -> Record:
    """The sites of results of one site each, as one result read back."""
    sites = tuple(
        RecordSite(
            str(k), s.scan_body, s.connection, s.platform_diameter, s.index_order, s.scan_from_connection, s.covariance,
            s.u95, s.u95_total, s.coverage, s.deviation, s.verdict.verdict if s.verdict else None, s.findings, s.budget,
        )
        for k, s in enumerate((result.sites[0] for result in results), start=1)
    )  # fmt: skip
    return Record(Path(name), name, ScanInfo(name, name, 1), results[0].parts, "bridge", sites)


def rows(seed: int) -> list[Row]:
    """One row a site and a pair of sites. Raises StylobateError."""
    bodies = draw_bodies(seed=1, count=6)
    mouth = drawn(seed)
    scans, records, truths = [], [], []
    for k, (settings, visit) in enumerate(zip(mouth.settings, mouth.visits, strict=True)):
        made = again(settings, bodies, visit)
        scan, record = measured(made, visit, bodies, "abc"[k])
        scans.append(scan)
        records.append(record)
        truths.append(np.array([site.scan_from_connection for site in made.sites]))
    return judged(seed, join(records, scans, limit_um=LIMIT_UM), truths[0])


def judged(seed: int, found: Joined, truths: FloatArray) -> list[Row]:
    """How far each site and each distance is from the truth, and what is stated."""
    drift, true = float(seed % 3 != 0), dict[str, FloatArray]()
    made: list[Row] = []
    for site in found.result.sites:
        off = np.linalg.norm(truths[:, :3, 3] - site.scan_from_connection[:3, 3], axis=1)
        true[site.site] = truths[int(np.argmin(off))]
        xi = rigid.log(rigid.inverse(site.scan_from_connection) @ true[site.site])
        shown = [seen.scan for seen in found.seen[site.site]]
        what = "not in the first" if 0 not in shown else "in several" if len(shown) > 1 else "in the first alone"
        axis = float(np.degrees(np.linalg.norm(xi[3:5])))
        turn, turn_u95 = float(abs(np.degrees(xi[5]))), site.u95.index_deg or 0.0
        nees = float(xi @ np.linalg.solve(site.covariance, xi)) / 6.0
        made.append((seed, what, drift, 1e3 * float(np.linalg.norm(xi[:3])), site.u95.platform_um, axis,
                     site.u95.axis_deg, turn, turn_u95, nees))  # fmt: skip
    for pair in found.result.pairs:
        one, two = (true[name][:3, 3] for name in pair.sites)
        across = any(all(seen.scan for seen in found.seen[name]) for name in pair.sites)
        error = 1e3 * abs(float(np.linalg.norm(one - two)) - pair.distance_mm)
        made.append((seed, "distance across a join" if across else "distance within the first", drift, error,
                     pair.u95_um, 0.0, 0.0, 0.0, 0.0, 0.0))  # fmt: skip
    return made


def table(found: list[Row]) -> list[str]:
    """Lines: what is stated and what holds, by kind of site and of distance."""
    lines = []
    for what in sorted({str(row[1]) for row in found}):
        for drift in (None, 0.0, 1.0):
            mine = [row for row in found if row[1] == what and drift in (None, row[2])]
            if not mine:
                continue
            v = np.array([row[3:] for row in mine], dtype=np.float64)
            name = what + {None: "", 0.0: ", no drift", 1.0: ", drift"}[drift]
            line = (
                f"{name:34s} {len(v):4d}  rms {np.sqrt((v[:, 0] ** 2).mean()):5.1f} µm  median u95 "
                f"{np.median(v[:, 1]):5.1f} µm, held {(v[:, 0] <= v[:, 1]).mean():.3f}"
            )
            if v[:, 6].any():
                line += (
                    f"  axis {np.median(v[:, 3]):.3f}°, held {(v[:, 2] <= v[:, 3]).mean():.3f}"
                    f"  turn held {(v[:, 4] <= v[:, 5]).mean():.3f}  NEES/6 {v[:, 6].mean():.2f}"
                )
            lines.append(line)
    return lines


def main(first: int, last: int, kept: Path | None) -> None:
    """Join all, add the rows to the file, and print the table."""
    found: list[Row] = []
    if kept is not None and kept.is_file():
        with kept.open(encoding="utf-8") as file:
            found = [(row[0], row[1], *map(float, row[2:])) for row in list(csv.reader(file))[1:]]
    for seed in range(first, last):
        try:
            found += rows(seed)
        except StylobateError as error:
            print(f"{seed}: {error}", flush=True)
        if kept is not None:
            with kept.open("w", encoding="utf-8", newline="") as file:
                csv.writer(file).writerows([HEAD, *found])
    print("\n".join(table(found)))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), Path(sys.argv[3]) if len(sys.argv) > 3 else None)
