"""`python -m bench [--scenes N] [--seed S]`: sites found and errors as ratios to the Cramér–Rao bound of each scene.

Bodies, arches and noise are drawn anew for each seed. General-purpose peers are not in this table yet.
"""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass

import numpy as np

from stylobate.core import rigid
from stylobate.core.result import Result, Site
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Noise, Scene, Settings, bound, draw_bodies, scene

KERNELS = ("exponential", "matern32", "matern52", "squared-exponential")
SAME_PLACE = 0.5  # mm


@dataclass(frozen=True)
class Row:
    """One true site: its error ξ (6,), the bound (6, 6), and the site measured there; None where none was found."""

    error: FloatArray | None
    least: FloatArray | None
    right_part: bool
    site: Site | None


def settings(seed: int) -> Settings:
    """A scene drawn by its seed."""
    rng = np.random.default_rng(seed)
    arch, bodies = (("single", 1), ("quadrant", int(rng.integers(1, 4))), ("full", int(rng.integers(3, 7))))[
        int(rng.choice(3, p=[0.3, 0.5, 0.2]))
    ]
    return Settings(
        seed=seed,
        arch=arch,
        bodies=bodies,
        edge_mm=float(rng.uniform(0.12, 0.25)),
        adaptive=bool(rng.random() < 0.3),
        noise=Noise(
            float(rng.uniform(3, 15)), float(rng.uniform(5, 15)), float(rng.uniform(0.3, 1.5)), str(rng.choice(KERNELS))
        ),
        rounding_mm=float(rng.choice([0.0, 0.0, 0.05, 0.1])),
        unseen=(0.0, float(rng.choice([0.1, 0.4, 0.6]))),
        stumps=int(rng.integers(0, 2)),
    )


def rows(made: Scene, result: Result) -> list[Row]:
    """Each true site with the nearest measured one."""
    table = []
    for k, truth in enumerate(made.sites):
        centre = truth.scan_from_connection[:3, 3]
        apart = [float(np.linalg.norm(s.scan_from_connection[:3, 3] - centre)) for s in result.sites]
        if min(apart, default=np.inf) >= SAME_PLACE:
            table.append(Row(None, None, False, None))
            continue
        try:
            least = bound(made, k)
        except ValueError:  # a motion is loose
            least = None
        nearest = result.sites[int(np.argmin(apart))]
        error = rigid.log(rigid.inverse(truth.scan_from_connection) @ nearest.scan_from_connection)
        table.append(Row(error, least, nearest.scan_body == truth.body.id, nearest))
    return table


def ratio(found: list[Row], low: int, high: int) -> float:
    """Root mean square of error over bound, for the components low:high."""
    share = [
        float(np.sum(r.error[low:high] ** 2) / np.trace(r.least[low:high, low:high]))
        for r in found
        if r.error is not None and r.least is not None
    ]
    return float(np.sqrt(np.mean(share))) if share else float("nan")


def main() -> None:
    """Run and print."""
    parser = argparse.ArgumentParser(prog="python -m bench")
    parser.add_argument("--scenes", type=int, default=10)
    parser.add_argument("--seed", type=int, default=500_000)
    given = parser.parse_args()
    table: list[Row] = []
    false_sites, seconds, triangles = 0, 0.0, 0
    for seed in range(given.seed, given.seed + given.scenes):
        bodies = tuple(draw_bodies(seed, 6))
        made = scene(settings(seed), bodies)
        names = sorted({body.seats_on for body in bodies})
        parts = PartsFolder("drawn", "1", "", "", tuple(Connection(n, "other", 1, 4.2) for n in names), bodies)
        origin = np.round(made.surface.vertices.mean(axis=0))
        surface = Surface(np.ascontiguousarray(made.surface.vertices - origin), made.surface.faces)
        start = time.perf_counter()
        result = measure(Scan(surface, origin, "scan", ""), parts, maps=False)
        seconds += time.perf_counter() - start
        triangles += len(surface.faces)
        some = rows(made, result)
        table += some
        false_sites += len(result.sites) - sum(r.site is not None for r in some)
    found = [r for r in table if r.site is not None]
    usable = [r for r in found if r.right_part and r.site is not None and not r.site.findings]
    silent = [r for r in found if not r.right_part and r.site is not None and not r.site.findings]
    print(f"scenes {given.scenes}, triangles {triangles:,}, seeds from {given.seed}")
    print(f"sites                         {len(table)}")
    print(f"found within 0.5 mm           {len(found)}")
    print(f"sites where none is           {false_sites}")
    print(f"wrong part without a finding  {len(silent)}")
    print(f"rms error / Cramér–Rao bound  platform {ratio(usable, 0, 3):.2f}, axis {ratio(usable, 3, 5):.2f},", end=" ")
    print(f"index {ratio(usable, 5, 6):.2f}  ({len(usable)} sites without a finding)")
    print(f"seconds a scene               {seconds / max(given.scenes, 1):.2f}, first compilation included")


if __name__ == "__main__":
    main()
