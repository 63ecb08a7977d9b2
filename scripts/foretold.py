"""Prints measured over foretold 95 % bounds, a row a scene: python scripts/foretold.py FIRST_SEED COUNT."""

from __future__ import annotations

import sys

import numpy as np

from stylobate.core.surface import Scan, Surface
from stylobate.foretell import foretell
from stylobate.measuring import measure
from stylobate.parts.model import Connection, PartsFolder
from stylobate.simulate import Noise, Settings, draw_bodies, scene
from stylobate.uncertainty.field import Field

EDGE_MM = 0.2


def ratios(seed: int) -> tuple[float, float, float] | None:
    """Of platform, axis and index, in a scene of one body drawn from `seed`; None where nothing was measured."""
    drawn = tuple(draw_bodies(seed, 1))
    rng = np.random.default_rng(seed)
    noise = Noise(rng.uniform(4, 14), rng.uniform(5, 14), rng.uniform(0.3, 1.4), "matern32")
    made = scene(Settings(seed=seed, arch="single", bodies=1, edge_mm=EDGE_MM, noise=noise, gum=(0.05, 0.5)), drawn)
    origin = np.round(made.surface.vertices.mean(axis=0))
    scan = Scan(Surface(np.ascontiguousarray(made.surface.vertices - origin), made.surface.faces), origin, "s.stl", "0")
    connection = Connection(drawn[0].seats_on, "other", 1, 4.2)
    sites = measure(scan, PartsFolder("drawn", "1", "CC0-1.0", "0", (connection,), drawn), maps=False).sites
    field = Field(noise.white_um * 1e-3, noise.correlated_um * 1e-3, noise.length_mm, 1.5)
    told = foretell(drawn[0], 1, made.sites[0].gum_mm, field, EDGE_MM).u95
    if not sites or told is None:
        return None
    found = sites[0].u95
    assert found.index_deg is not None
    assert told.index_deg is not None
    return (
        found.platform_um / told.platform_um, found.axis_deg / told.axis_deg, found.index_deg / told.index_deg
    )  # fmt: skip


def main(first: int, count: int) -> None:
    """Rows, then mean, least and greatest."""
    rows = []
    for seed in range(first, first + count):
        row = ratios(seed)
        print(seed, "nothing measured" if row is None else "platform {:.2f}  axis {:.2f}  index {:.2f}".format(*row))
        rows += [] if row is None else [row]
    for name, values in (("mean", np.mean(rows, 0)), ("least", np.min(rows, 0)), ("greatest", np.max(rows, 0))):
        print(name, np.round(values, 2))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
