"""Whether sites that stand in two scans are stated truly once joined: python -m bench.common FIRST LAST.

Each seed is one mouth scanned twice with the same three bodies, noise, drift and gingiva as in bench.joins, every body
measured as `measure` does. It is joined three times: of the first scan one body counts, of the second that and another.
"""

from __future__ import annotations

import sys
from dataclasses import replace

import numpy as np

from bench.joined import Row, judged, measured, table
from bench.joins import drawn
from stylobate.core.errors import StylobateError
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite
from stylobate.several.joined.verb import join
from stylobate.simulate import Visit, again, draw_bodies

COUNT = 3
LIMIT_UM = 1000.0


def rows(seed: int) -> list[Row]:
    """As bench.joined has them, of all three joins. Raises StylobateError."""
    bodies = draw_bodies(seed=1, count=6)
    first, second, visit = drawn(seed)
    rng = np.random.default_rng([78, seed])
    standing = tuple(range(1, COUNT + 1))
    scans, records, truths = [], [], []
    for name, settings, gum_um in (("a", first, 0.0), ("b", second, visit.gum_um)):
        seen = Visit(int(rng.integers(1_000_000)), standing, gum_um=gum_um)
        made = again(replace(settings, bodies=COUNT), bodies, seen)
        scan, record = measured(made, seen, bodies, name)
        scans.append(scan)
        records.append(record)
        truths.append(np.array([site.scan_from_connection for site in made.sites]))
    found: list[Row] = []
    for i in range(COUNT):
        alone = _only(records[0], truths[0], [i])
        with_another = _only(records[1], truths[1], [i, 0 if i else 1])
        found += judged(seed, join([alone, with_another], scans, limit_um=LIMIT_UM), truths[0])
    return found


def _only(record: Record, truths: FloatArray, which: list[int]) -> Record:
    sites: list[RecordSite] = []
    for name, i in enumerate(which, start=1):
        off = [float(np.linalg.norm(site.scan_from_connection[:3, 3] - truths[i, :3, 3])) for site in record.sites]
        sites.append(replace(record.sites[int(np.argmin(off))], site=str(name)))
    return replace(record, sites=tuple(sites))


def main(first: int, last: int) -> None:
    """Join all and print the table."""
    found: list[Row] = []
    for seed in range(first, last):
        try:
            found += rows(seed)
        except StylobateError as error:
            print(f"{seed}: {error}", flush=True)
    print("\n".join(table(found)))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
