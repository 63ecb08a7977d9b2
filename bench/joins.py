"""How well scans with moved gingiva are joined, and whether the stated bounds hold: python -m bench.joins FIRST LAST.

Each seed is one mouth scanned twice. Noise, seams, tails and correlation differ from scan to scan; every third seed is
without drift; gingiva has moved by 0, 30, 60, 100 or 250 µm (simulation, eq. S8).
"""

from __future__ import annotations

import sys
from dataclasses import replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan, Surface
from stylobate.joining import Site, join
from stylobate.simulate import Drift, Noise, Scene, Settings, Visit, again, draw_bodies, scene
from stylobate.simulate.settings import KERNELS

GUM_UM = (0.0, 30.0, 60.0, 100.0, 250.0)
Row = tuple[bool, float, float, float]
"""drift or not, gingiva's movement, error and bound (µm)"""


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
    result = []
    for one, two, stated in zip(first.sites, second.sites, found.sites, strict=True):
        left = rigid.log(rigid.inverse(found.first_from_second @ two.scan_from_connection) @ one.scan_from_connection)
        shift = 1e3 * float(np.linalg.norm(left[:3]))
        result.append((seed % 3 != 0, visit.gum_um, shift, stated.platform_um))
    return result


def table(found: list[Row]) -> list[str]:
    """Lines: of all, without and with drift, and by how far the gingiva moved."""
    values = np.array(found, dtype=np.float64)
    groups = [("all", np.ones(len(values), np.bool_)), ("no drift", values[:, 0] == 0), ("drift", values[:, 0] == 1)]
    groups += [(f"gingiva {um:.0f} µm", values[:, 1] == um) for um in GUM_UM]
    lines = []
    for name, which in groups:
        v = values[which]
        if len(v):
            lines.append(
                f"{name:16s} {len(v):4d} sites  rms {np.sqrt((v[:, 2] ** 2).mean()):5.1f} µm  median bound "
                f"{np.median(v[:, 3]):5.1f} µm  holds {(v[:, 2] <= v[:, 3]).mean():.3f}"
            )
    return lines


def main(first: int, last: int) -> None:
    """Join all pairs and print the table."""
    found: list[Row] = []
    refused = 0
    for seed in range(first, last):
        try:
            found += rows(seed)
        except JoinError as error:
            refused += 1
            print(f"{seed}: {error}")
    print(f"{last - first} pairs, {refused} refused")
    print("\n".join(table(found)))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
