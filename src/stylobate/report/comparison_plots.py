"""A comparison of scans as one figure, for the screen (PNG) and for print (PDF)."""

from __future__ import annotations

import io
from typing import Any

import numpy as np

from stylobate.report.comparison import FIGURES, scan_names
from stylobate.report.words import printable
from stylobate.several.comparing.components import Spread
from stylobate.several.comparing.model import Comparison

COLOURS = ("#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#000000")
"""Okabe & Ito (2008), told apart by any colour vision."""
MARKS = ("o", "s", "^", "D", "v", "P", "X")
MOST_NAMED = 8
"""Scans that the legend still names."""
STYLE: Any = {
    "font.size": 8.0,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.titlesize": 9.0,
    "axes.titleweight": "bold",
    "axes.titlelocation": "left",
    "legend.frameon": False,
    "svg.hashsalt": "stylobate",
    "pdf.fonttype": 42,
}


def plotted(comparison: Comparison) -> dict[str, bytes]:
    """compare.png and compare.pdf: where each site stood in each scan, the spread, and the distances."""
    import matplotlib as mpl
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    with mpl.rc_context(STYLE):
        figure: Any = Figure(figsize=(9.0, 6.4), layout="constrained")
        FigureCanvasAgg(figure)
        above, below = figure.subfigures(2, 1, height_ratios=(1.0, 1.0))
        left, right = above.subplots(1, 2)
        _offsets(left, comparison, height=False)
        _offsets(right, comparison, height=True)
        handles, texts = right.get_legend_handles_labels()
        if len(texts) <= MOST_NAMED:
            above.legend(handles, texts, loc="outside lower center", ncols=min(4, len(texts)))
        spread, distances = below.subplots(1, 2)
        _spreads(spread, comparison)
        _distances(distances, comparison)
        files = {}
        for kind, options in (("png", {"dpi": 160, "metadata": {"Software": None}}), ("pdf", {"metadata": NO_DATE})):
            sink = io.BytesIO()
            figure.savefig(sink, format=kind, **options)
            files[f"compare.{kind}"] = sink.getvalue()
    return files


NO_DATE = {"CreationDate": None}


def _series(comparison: Comparison) -> list[tuple[str, list[int]]]:
    """What gets a colour of its own: the groups, or each scan."""
    if comparison.groups:
        return [(printable(group.name), list(group.scans)) for group in comparison.groups]
    return [(printable(name), [k]) for k, name in enumerate(scan_names(comparison))]


def _offsets(axes: Any, comparison: Comparison, height: bool) -> None:
    union = comparison.union
    common, labels = union.common(), union.labels()
    moved = {one.cell for one in comparison.moved}
    series = _series(comparison)
    for number, (name, scans) in enumerate(series):
        shift = 0.6 * ((number + 0.5) / len(series) - 0.5)
        points = []
        for k in scans:
            for place, i in enumerate(common):
                if union.sites[i][k] is None:
                    continue
                off = 1e3 * comparison.residual[k, 6 * i : 6 * i + 3]
                points += [(place + shift, value, (k, i) in moved) for value in (off[2:] if height else off[:2])]
        style = {"color": COLOURS[number % len(COLOURS)], "marker": MARKS[number % len(MARKS)]}
        at = np.array([point[:2] for point in points]).reshape(-1, 2)
        axes.scatter(at[:, 0], at[:, 1], s=16, label=name, alpha=0.85, linewidths=0, **style)
        ringed = np.array([point[:2] for point in points if point[2]]).reshape(-1, 2)
        axes.scatter(ringed[:, 0], ringed[:, 1], s=90, facecolors="none", edgecolors="black", linewidths=1.0)
    axes.axhline(0.0, color="0.6", linewidth=0.8, zorder=0)
    axes.set_xticks(range(len(common)), [f"site {printable(labels[i])}" for i in common])
    axes.set_ylabel("µm from the mean of all scans")
    axes.set_title("Height" if height else "Sideways (x and y)")


def _spreads(axes: Any, comparison: Comparison) -> None:
    keys = ["side", "height", "platform", "distance"]
    sources = [("one scan", comparison.repeats.within)]
    if comparison.groups:
        sources = [(printable(group.name), group.repeats.within) for group in comparison.groups]
        sources.append(("with groups", comparison.repeats.overall))
    for number, (name, spreads) in enumerate(sources):
        shift = 0.5 * ((number + 0.5) / len(sources) - 0.5)
        known = [(place + shift, spread) for place, key in enumerate(keys) if (spread := spreads[key]) is not None]
        _bars(axes, known, name, number)
    axes.set_xticks(range(len(keys)), ["sideways", "height", "centre", "distance"])
    axes.set_ylim(bottom=0.0)
    tops = [1e3 * min(s.high, 4.0 * s.sd) for _, spreads in sources for key in keys if (s := spreads[key]) is not None]
    axes.set_ylim(0.0, 1.1 * max(tops, default=1.0))
    axes.set_ylabel("standard deviation, µm (bars: 95 %)")
    axes.set_title("Spread of one scan")
    if comparison.groups:
        axes.legend()


def _bars(axes: Any, known: list[tuple[float, Spread]], name: str, number: int) -> None:
    factor = FIGURES["platform"][1]
    middle = np.array([factor * spread.sd for _, spread in known])
    low = middle - [factor * spread.low for _, spread in known]
    high = np.array([factor * spread.high for _, spread in known]) - middle
    axes.errorbar(
        [place for place, _ in known], middle, yerr=[low, high], fmt=MARKS[number % len(MARKS)], capsize=3,
        markersize=5, label=name, color=COLOURS[number % len(COLOURS)],
    )  # fmt: skip


def _distances(axes: Any, comparison: Comparison) -> None:
    labels = comparison.union.labels()
    series = _series(comparison)
    for number, (_, scans) in enumerate(series):
        shift = 0.6 * ((number + 0.5) / len(series) - 0.5)
        for place, pair in enumerate(comparison.pairs):
            known = [d for d in pair.distances if d is not None]
            mean = sum(known) / len(known)
            off = [1e3 * (d - mean) for k in scans if (d := pair.distances[k]) is not None]
            axes.scatter(
                [place + shift] * len(off), off, s=16, color=COLOURS[number % len(COLOURS)], linewidths=0,
                marker=MARKS[number % len(MARKS)], alpha=0.85,
            )  # fmt: skip
    axes.axhline(0.0, color="0.6", linewidth=0.8, zorder=0)
    names = [f"{printable(labels[i])}–{printable(labels[j])}" for i, j in (pair.implants for pair in comparison.pairs)]
    axes.set_xticks(range(len(names)), names, rotation=90 if len(names) > 10 else 0)
    axes.set_ylabel("µm from the mean")
    axes.set_title("Distances between sites")
