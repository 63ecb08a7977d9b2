"""Results put together by hand for the tests of several/: connections where one wants them, in any scan's frame."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np

from stylobate.core.result import BudgetRow, PartsInfo, ScanInfo
from stylobate.core.rigid import exp, pose, rotation_exp
from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite

SMALL = np.diag([1e-6] * 3 + [1e-8] * 3)


def upright(centres: Sequence[Sequence[float]] | FloatArray) -> list[FloatArray]:
    """Parallel connections at these centres (n, 3)."""
    return [pose(np.eye(3), np.asarray(centre, dtype=np.float64)) for centre in centres]


def arch(count: int, rng: np.random.Generator, lean: float = 0.2) -> list[FloatArray]:
    """Connections along half an ellipse, leaning and turned at random; rad."""
    angles = np.linspace(0.2, np.pi - 0.2, count) + rng.uniform(-0.05, 0.05, count)
    return [
        exp(np.array([-26 * np.cos(t), 34 * np.sin(t), 0, *rng.uniform(-lean, lean, 2), rng.uniform(-3, 3)]))
        for t in angles
    ]


def anywhere(rng: np.random.Generator) -> FloatArray:
    """A motion to some other scan's frame."""
    return pose(rotation_exp(rng.uniform(-2, 2, 3)), rng.uniform(-200, 200, 3))


def record(
    poses: Sequence[FloatArray],
    name: str = "a",
    *,
    names: Sequence[str] | None = None,
    covariance: FloatArray = SMALL,
    index_order: int = 6,
    diameter: float = 4.2,
    connection: str = "alder",
    budget: tuple[BudgetRow, ...] = (),
) -> Record:
    """A result of these connections, sites named 1, 2, … unless `names` says otherwise."""
    called = names or [str(k + 1) for k in range(len(poses))]
    sites = tuple(
        RecordSite(called[k], "alder-tall", connection, diameter, index_order, placed, covariance, budget=budget)
        for k, placed in enumerate(poses)
    )
    return Record(Path(name), name, ScanInfo("arch.stl", name, 1), PartsInfo("p", "1", "c"), "bridge", sites)
