"""Which site of which scan does not stand to the others as it does elsewhere (method/compare, eqs. 6–9)."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.several.comparing.draws import Draws, draws
from stylobate.several.comparing.errors import NOT_STATED, Drift, Prior
from stylobate.several.comparing.layout import Cell, Layout, layout
from stylobate.several.comparing.likelihood import HEIGHT, CellFit
from stylobate.several.comparing.multiplicity import SHARES, Multiplicity
from stylobate.several.comparing.union import Union
from stylobate.uncertainty.bounds import length_95

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
        tried = max(tried, len(cells) + len(named))
        if held is NOT_STATED:
            heights, counted = tuple(map(_height_of, drawn.cells)), Multiplicity.in_full(len(cells))
        else:
            sizes = np.sqrt(drawn.weights() @ drawn.theta**2)
            heights, counted = drawn.heights, Multiplicity.of(laid, drift.parts, sizes, cells)
        found = _clearest(drawn, heights, counted)
        if found is None:
            findable = _findable(drawn, heights, counted, len(laid.poses))
            return Search(tuple(named), laid, drift, drawn, tried, findable)
        named.append(found)


def _height_of(pose: CellFit) -> CellFit:
    """The height with the whole pose free: where drift is not known the site's own tilt is not to speak for it."""
    height = slice(HEIGHT, HEIGHT + 1)
    return replace(
        pose, motions=pose.motions[height], shift=pose.shift[:, height], covariance=pose.covariance[:, height, height]
    )


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
    """p of no shift in the motions of a fit, the mean over θ (eq. 7)."""
    from scipy.special import chdtrc

    squared = np.einsum("ta,ta->t", fit.shift, np.linalg.solve(fit.covariance, fit.shift[:, :, None])[:, :, 0])
    return float(drawn.weights(fit.log_likelihood) @ chdtrc(len(fit.motions), squared))


def _clearest(drawn: Draws, heights: tuple[CellFit, ...], counted: Multiplicity) -> Moved | None:
    """The cell that best explains what stands off, by the test that speaks clearest, where any is below the level."""
    tests = {"height": heights, "pose": drawn.cells}
    p = {test: [p_value(drawn, fit) / SHARES[test] for fit in fits] for test, fits in tests.items()}
    least = [min(both) for both in zip(*p.values(), strict=True)]
    significant = [c for c, value in enumerate(least) if value <= counted.critical]
    if not significant:
        return None
    fits = tests[min(tests, key=lambda test: min(p[test]))]
    evidence = [drawn.log_evidence(fit) for fit in fits]
    best = max(significant, key=lambda c: evidence[c])
    fit = drawn.cells[best]
    rivals = [c for c in significant if c != best and drawn.cells[c].cell[0] == fit.cell[0]]
    instead = [drawn.cells[c].cell[1] for c in rivals if evidence[best] - evidence[c] < np.log(LIKELY)]
    mean, covariance = _mean(drawn, fit)
    turn = float(np.degrees(mean[5])) if 5 in fit.motions else None
    return Moved(
        fit.cell, mean[:3], length_95(covariance[:3, :3]), turn, counted.corrected(least[best]), tuple(instead)
    )


def _mean(drawn: Draws, fit: CellFit) -> tuple[FloatArray, FloatArray]:
    """Shift and its covariance, θ averaged over."""
    weights = drawn.weights(fit.log_likelihood)
    mean = weights @ fit.shift
    off = fit.shift - mean
    return mean, np.tensordot(weights, fit.covariance, axes=1) + (off * weights[:, None]).T @ off


def _findable(drawn: Draws, heights: tuple[CellFit, ...], counted: Multiplicity, implants: int) -> FloatArray:
    """Height (mm) of each implant that one scan's test of height would name with 95 % probability; the worst scan."""
    from scipy.optimize import brentq
    from scipy.special import ndtr

    result = np.full(implants, np.nan)
    for fit in heights:
        weights = drawn.weights(fit.log_likelihood)
        sd = np.sqrt(fit.covariance[:, 0, 0])

        def excess(height: float, sd: FloatArray = sd, weights: FloatArray = weights) -> float:
            return float(weights @ (2.0 * ndtr(-height / sd))) - counted.critical * SHARES["height"]

        critical = brentq(excess, 0.0, 100.0 * float(sd.max()))

        def missed(height: float, sd: FloatArray = sd, weights: FloatArray = weights, limit: float = critical) -> float:
            return float(weights @ ndtr((limit - height) / sd)) - (1.0 - POWER)

        found = brentq(missed, critical, critical + 100.0 * float(sd.max()))
        implant = fit.cell[1]
        result[implant] = np.fmax(result[implant], found)
    return result
