"""How well scans with moved gingiva are joined, and what is stated: python -m bench.joins FIRST LAST [ROWS.csv].

Each seed is one mouth scanned twice. Noise, seams, tails and correlation differ from scan to scan; every third seed is
without drift; gingiva has moved by 0, 30, 60, 100 or 250 µm (simulation, eq. S8). With a file, rows are added to it and
the table is of all in it, so that a long run can be made in pieces.
"""

from __future__ import annotations

import csv
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan, Surface
from stylobate.joining import Site, join
from stylobate.simulate import Drift, Noise, Scene, Settings, Visit, again, draw_bodies, scene
from stylobate.simulate.settings import KERNELS

GUM_UM = (0.0, 30.0, 60.0, 100.0, 250.0)
HEAD = ("seed", "drift", "gingiva_um", "error_um", "bound_um", "axis_deg", "axis_bound_deg")
Row = tuple[float, ...]
"""One site, in the order of HEAD."""


def drawn(seed: int) -> tuple[Settings, Settings, Visit]:
    """Settings of both scans, and what changed between them."""
    rng = np.random.default_rng([99, seed])

    def noise() -> Noise:
        return Noise(
            float(rng.uniform(4, 15)), float(rng.uniform(5, 15)), float(rng.uniform(0.3, 1.5)),
            str(rng.choice(KERNELS)), tails=str(rng.choice(["normal", "t3"])), seam_um=float(rng.choice([0, 0, 8])),
        )  # fmt: skip

    def drift() -> Drift:
        if seed % 3 == 0:
            return Drift()
        return Drift(float(rng.choice([0, 300])), float(rng.choice([0, 15, 30])), float(rng.choice([0, 0.05, 0.1])))

    first = Settings(
        seed=int(rng.integers(1_000_000)), arch=str(rng.choice(["quadrant", "quadrant", "full"])),
        bodies=int(rng.integers(1, 4)), edge_mm=0.3, noise=noise(), drift=drift(),
    )  # fmt: skip
    second = replace(first, noise=noise(), drift=drift())
    return first, second, Visit(int(rng.integers(1_000_000)), caps=bool(rng.integers(2)), gum_um=GUM_UM[seed % 5])


def _scan(made: Scene, name: str) -> Scan:
    origin = np.round(made.surface.vertices.mean(axis=0))
    return Scan(Surface(made.surface.vertices - origin, made.surface.faces), origin, name, "")


def rows(seed: int) -> list[Row]:
    """One row a site. Raises JoinError."""
    bodies = draw_bodies(seed=1, count=6)
    settings, later, visit = drawn(seed)
    first, second = scene(settings, bodies), again(later, bodies, visit)
    sites = tuple(Site(truth.site, truth.scan_from_connection, 4.2) for truth in first.sites)
    found = join(_scan(first, "first"), _scan(second, "second"), sites)
    result: list[Row] = []
    for one, two, stated in zip(first.sites, second.sites, found.sites, strict=True):
        left = rigid.log(rigid.inverse(found.first_from_second @ two.scan_from_connection) @ one.scan_from_connection)
        shift, axis = 1e3 * float(np.linalg.norm(left[:3])), float(np.degrees(np.linalg.norm(left[3:5])))
        drift = float(seed % 3 != 0)
        result.append((seed, drift, visit.gum_um, shift, stated.platform_um, axis, stated.axis_deg))
    return result


def table(found: list[Row]) -> list[str]:
    """Lines: of all, without and with drift, and by how far the gingiva moved."""
    values = np.array(found, dtype=np.float64)
    groups = [("all", np.ones(len(values), np.bool_)), ("no drift", values[:, 1] == 0), ("drift", values[:, 1] == 1)]
    groups += [("gingiva ≥ 100 µm", values[:, 2] >= 100.0)]
    groups += [(f"gingiva {um:.0f} µm", values[:, 2] == um) for um in GUM_UM]
    lines = []
    for name, which in groups:
        v = values[which]
        if len(v):
            lines.append(
                f"{name:16s} {len(v):4d} sites  rms {np.sqrt((v[:, 3] ** 2).mean()):5.1f} µm  median bound "
                f"{np.median(v[:, 4]):5.1f} µm  holds {(v[:, 3] <= v[:, 4]).mean():.3f}  axis rms "
                f"{np.sqrt((v[:, 5] ** 2).mean()):.3f}°  median bound {np.median(v[:, 6]):.3f}°  holds "
                f"{(v[:, 5] <= v[:, 6]).mean():.3f}"
            )
    return lines


def main(first: int, last: int, kept: Path | None) -> None:
    """Join all pairs, add the rows to the file, and print the table."""
    found: list[Row] = []
    if kept is not None and kept.is_file():
        with kept.open(encoding="utf-8") as file:
            found = [tuple(map(float, row)) for row in list(csv.reader(file))[1:]]
    refused = 0
    for seed in range(first, last):
        try:
            found += rows(seed)
        except JoinError as error:
            refused += 1
            print(f"{seed}: {error}", flush=True)
        if kept is not None:
            with kept.open("w", encoding="utf-8", newline="") as file:
                csv.writer(file).writerows([HEAD, *found])
    print(f"{last - first} pairs, {refused} refused")
    print("\n".join(table(found)))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), Path(sys.argv[3]) if len(sys.argv) > 3 else None)
