"""The tables: which scenes each is made of, and which methods run on them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from bench import scenes
from bench.method import BLIND, NEAR
from stylobate.parts.model import ScanBody
from stylobate.simulate import Fault, Scene, Settings, draw_bodies, near_twins, scene

LAYERS_UM = (0.0, 15.0, 30.0, 45.0, 60.0)
FAULTS = (
    ("added layer", 30.0), ("added layer", 60.0), ("bent body", 1.0), ("bent body", 3.0), ("lost material", 150.0),
    ("lost material", 400.0), ("added material", 150.0), ("added material", 400.0), ("rough surface", 30.0),
    ("missing surface", 0.6), ("split surface", 60.0), ("index ambiguous", 0.0), ("no part fits", 0.0),
)  # fmt: skip
"""Causes with sizes (µm, °, share) that a user meets; invented."""
TRIANGLES = (0.1e6, 0.25e6, 0.5e6, 1.0e6, 2.0e6)
BODIES = (1, 2, 3, 4, 6, 8)
CANDIDATES = (1, 2, 4, 6, 9, 12)


@dataclass(frozen=True)
class Job:
    """One scene: its name in the table, the settings, the bodies that are candidates, and what the table groups by.

    truth: whether the Cramér–Rao bound is wanted (it costs about a second a site).
    """

    scene: str
    settings: Settings
    bodies: tuple[ScanBody, ...]
    tags: dict[str, Any] = field(default_factory=dict)
    near: bool = False
    truth: bool = True

    def made(self) -> Scene:
        """Make the scene."""
        return scene(self.settings, self.bodies)


@dataclass(frozen=True)
class Experiment:
    """A table: its title, its jobs (from a first seed and a number of scenes), and its methods."""

    name: str
    title: str
    jobs: Callable[[int, int], Iterator[Job]]
    methods: dict[str, str]


def _drawn(seed: int, count: int) -> Iterator[Job]:
    for k in range(seed, seed + count):
        made = scenes.settings(k)
        tags = {"arch": made.arch, "bodies": made.count, "unseen": made.unseen[1], "edge_mm": made.edge_mm}
        yield Job(str(k), made, draw_bodies(k, scenes.CANDIDATES), tags)


def _near(seed: int, count: int) -> Iterator[Job]:
    for job in _drawn(seed, count):
        yield replace(job, near=True)


def _twins(seed: int, count: int) -> Iterator[Job]:
    """Each twin under each layer in turn."""
    twins = near_twins()
    for k in range(seed, seed + count):
        body, layer = twins[k % 3], LAYERS_UM[k // 3 % len(LAYERS_UM)]
        faults = (Fault(1, "added layer", layer),) if layer else ()
        plain = replace(scenes.settings(k), arch="single", bodies=(body.id,), stumps=0, palate=False, faults=faults)
        yield Job(str(k), plain, twins, {"layer_um": layer, "unseen": plain.unseen[1]}, truth=False)


def _empty(seed: int, count: int) -> Iterator[Job]:
    """No scan body; the stumps and teeth of a mouth."""
    for k in range(seed, seed + count):
        rng = np.random.default_rng([k, 0xE317])
        base = scenes.settings(k)
        arch = str(rng.choice(["single", "quadrant", "full"], p=[0.2, 0.6, 0.2]))
        stumps = int(rng.integers(0, {"single": 2, "quadrant": 5, "full": 7}[arch]))
        edge = max(base.edge_mm, 0.15 if arch == "full" else 0.1)
        plain = replace(base, arch=arch, bodies=0, stumps=stumps, palate=arch == "full", edge_mm=edge)
        yield Job(str(k), plain, draw_bodies(k, scenes.CANDIDATES), {"stumps": stumps}, truth=False)


def _faulty(seed: int, count: int) -> Iterator[Job]:
    """Quadrants of two bodies, the first of them at fault."""
    for k in range(seed, seed + count):
        cause, size = FAULTS[k % len(FAULTS)]
        base = scenes.settings(k)
        edge = max(base.edge_mm, 0.1)
        plain = replace(
            base, arch="quadrant", bodies=2, stumps=0, palate=False, edge_mm=edge, unseen=(0.0, 0.25),
            faults=(Fault(1, cause, size),),
        )  # fmt: skip
        yield Job(str(k), plain, draw_bodies(k, scenes.CANDIDATES), {"fault": f"{cause} {size:g}"}, truth=False)


def _growth(seed: int, count: int) -> Iterator[Job]:
    """The same arch with finer meshes; the same arch with more bodies; the same scan with more candidates."""
    for k in range(seed, seed + count):
        base = Settings(seed=k, arch="full", bodies=4, unseen=(0.0, 0.4))
        for triangles in TRIANGLES:
            edge = EDGE_OF_MILLION * float(np.sqrt(1e6 / triangles))
            job = Job(f"{k} triangles {triangles:g}", replace(base, edge_mm=edge), draw_bodies(k, 6), truth=False)
            yield replace(job, tags={"grows": "triangles", "size": triangles})
        for bodies in BODIES:
            plain = replace(base, bodies=bodies, edge_mm=0.16)
            tags = {"grows": "bodies", "size": bodies}
            yield Job(f"{k} bodies {bodies}", plain, draw_bodies(k, 6), tags, truth=False)
        for candidates in CANDIDATES:
            drawn = draw_bodies(k, 12)
            plain = replace(base, bodies=(drawn[0].id,) * 4, edge_mm=0.16)
            tags = {"grows": "candidates", "size": candidates}
            yield Job(f"{k} candidates {candidates}", plain, drawn[:candidates], tags, truth=False)


EDGE_OF_MILLION = 0.083  # mm: the mesh edge that gives a full arch about a million triangles

EXPERIMENTS = {
    one.name: one
    for one in (
        Experiment("blind", "No hint: any number of any of six candidate bodies", _drawn, BLIND),
        Experiment("near", "From a near start: body known, pose off by 1 mm and 10°", _near, NEAR),
        Experiment("empty", "Scans without scan bodies, stumps included", _empty, {"ours": BLIND["ours"]}),
        Experiment("twins", "Near twins under layers of 0–60 µm", _twins, {"ours": BLIND["ours"]}),
        Experiment("faults", "Faulty bodies", _faulty, {"ours": BLIND["ours"]}),
        Experiment("growth", "Growth of time", _growth, {"ours": BLIND["ours"]}),
    )
}
