"""Which site of which scan does not stand to the others as it does elsewhere (method/compare, eqs. 6–9)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.bounds import length_95
from stylobate.core.types import FloatArray
from stylobate.several.comparing.draws import Draws, draws
from stylobate.several.comparing.errors import Drift, Prior
from stylobate.several.comparing.layout import Cell, Layout, layout
from stylobate.several.comparing.likelihood import CellFit
from stylobate.several.comparing.union import Union

LEVEL = 0.01
"""Corrected p-value below which a site is named: one comparison in a hundred names one wrongly, or fewer."""
SHARES = {"height": 0.7, "shift": 0.1, "pose": 0.2}
"""How the level is shared out among the tests of a cell: most to height, as a body not seated stands high."""
POWER = 0.95
LIKELY = 100.0
"""Odds below which another reading stays open; the same as for index marks (method/measure, 9)."""
FEWEST = 3
"""Sites that a scan must share with the others before one of them can be named."""


@dataclass(frozen=True)
class Moved:
    """A cell that stands off. shift: (3,) mm in the connection frame; u95: mm, radius; turn_deg: None where no index.

    p: corrected for the number of cells and tests. instead: implants of the same scan that explain it nearly as well.
    """

    cell: Cell
    shift: FloatArray
    u95: float
    turn_deg: float | None
    p: float
    instead: tuple[int, ...]


@dataclass(frozen=True)
class Search:
    """What was found. layout: without the moved cells. draws: θ by what is left. tried: number of cells.

    findable: per implant, the height (mm) that would be named with 95 % probability; NaN where none could be.
    """

    moved: tuple[Moved, ...]
    layout: Layout
    drift: Drift
    draws: Draws
    tried: int
    findable: FloatArray

    def shows(self, scan: int, *implants: int) -> bool:
        """Whether the scan shows these implants where they stand otherwise too."""
        return all(self.layout.shows(scan, implant) for implant in implants)


def search(union: Union, held: Prior, left_out: frozenset[Cell] = frozenset()) -> Search:
    """Name the cells that stand off, the clearest first, each time laying the scans on each other without them."""
    named: list[Moved] = []
    tried = 0
    while True:
        gone = left_out | {moved.cell for moved in named}
        laid = layout(union, gone)
        drift = Drift.over(laid.poses)
        cells = _cells(laid)
        drawn = draws(laid, drift.parts, cells, held)
        count = len(cells) + len(named)
        tried = max(tried, count)
        found = _clearest(drawn, count)
        if found is None:
            return Search(tuple(named), laid, drift, drawn, tried, _findable(drawn, count, len(laid.poses)))
        named.append(found)


def _cells(laid: Layout) -> list[Cell]:
    """Cells that can be tried. Of two scans, those of the later one: which of the two moved, they cannot tell."""
    scans, count = len(laid.frames), len(laid.poses)
    shown = np.array([[laid.shows(k, i) for i in range(count)] for k in range(scans)])
    common = shown & (shown.sum(axis=0) > 1)
    return [
        (k, i)
        for k in range(scans)
        for i in range(count)
        if common[k, i] and common[k].sum() >= FEWEST and np.argmax(shown[:, i]) < k + (shown[:, i].sum() > 2)
    ]


def p_value(drawn: Draws, fit: CellFit) -> float:
    """p of a cell: the least of its tests, each divided by its share of the level (eq. 8)."""
    return min(1.0, *(p / SHARES[test] for test, p in p_values(drawn, fit).items()))


def p_values(drawn: Draws, fit: CellFit) -> dict[str, float]:
    """p of each test of a cell, the mean over θ (eq. 7)."""
    from scipy.special import chdtrc

    weights = drawn.weights(fit.log_likelihood)
    values = {}
    for test, motions in (("height", [2]), ("shift", [0, 1, 2]), ("pose", list(range(len(fit.motions))))):
        shift = fit.shift[:, motions]
        block = fit.covariance[:, motions][:, :, motions]
        squared = np.einsum("ta,ta->t", shift, np.linalg.solve(block, shift[:, :, None])[:, :, 0])
        values[test] = float(weights @ chdtrc(len(motions), squared))
    return values


def _clearest(drawn: Draws, count: int) -> Moved | None:
    """The cell that best explains what stands off, where any is below the level."""
    corrected = [min(1.0, count * p_value(drawn, fit)) for fit in drawn.cells]
    significant = [c for c, p in enumerate(corrected) if p < LEVEL]
    if not significant:
        return None
    evidence = [drawn.log_evidence(fit) for fit in drawn.cells]
    best = max(significant, key=lambda c: evidence[c])
    fit = drawn.cells[best]
    rivals = [c for c in significant if c != best and drawn.cells[c].cell[0] == fit.cell[0]]
    instead = [drawn.cells[c].cell[1] for c in rivals if evidence[best] - evidence[c] < np.log(LIKELY)]
    mean, covariance = _mean(drawn, fit)
    turn = float(np.degrees(mean[5])) if 5 in fit.motions else None
    return Moved(fit.cell, mean[:3], length_95(covariance[:3, :3]), turn, corrected[best], tuple(instead))


def _mean(drawn: Draws, fit: CellFit) -> tuple[FloatArray, FloatArray]:
    """Shift and its covariance, θ averaged over."""
    weights = drawn.weights(fit.log_likelihood)
    mean = weights @ fit.shift
    off = fit.shift - mean
    return mean, np.tensordot(weights, fit.covariance, axes=1) + (off * weights[:, None]).T @ off


def _findable(drawn: Draws, count: int, implants: int) -> FloatArray:
    """Height (mm) of each implant that one scan's test of height would name with 95 % probability; the worst scan."""
    from scipy.optimize import brentq
    from scipy.special import ndtr

    result = np.full(implants, np.nan)
    for fit in drawn.cells:
        weights = drawn.weights(fit.log_likelihood)
        sd = np.sqrt(fit.covariance[:, 2, 2])

        def excess(height: float, sd: FloatArray = sd, weights: FloatArray = weights) -> float:
            return float(weights @ (2.0 * ndtr(-height / sd))) - LEVEL * SHARES["height"] / count

        critical = brentq(excess, 0.0, 100.0 * float(sd.max()))

        def missed(height: float, sd: FloatArray = sd, weights: FloatArray = weights, limit: float = critical) -> float:
            return float(weights @ ndtr((limit - height) / sd)) - (1.0 - POWER)

        found = brentq(missed, critical, critical + 100.0 * float(sd.max()))
        implant = fit.cell[1]
        result[implant] = np.fmax(result[implant], found)
    return result
