"""Records → tables."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bench import figures
from bench.judge import Json
from bench.scenes import GRAZING, PLAIN, SEAMS, TAILS, noise_of, settings

CHI2_6_MEDIAN = 5.348  # median of chi-square with six degrees of freedom


@dataclass(frozen=True)
class Table:
    """A table as text: title, head, rows."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    def text(self, markdown: bool) -> str:
        """As aligned plain text, or as Markdown."""
        cells = [self.head, *self.rows]
        if markdown:
            lines = [f"| {' | '.join(row)} |" for row in cells]
            lines.insert(1, "|" + "---|" * len(self.head))
            return f"**{self.title}**\n\n" + "\n".join(lines) + "\n"
        wide = [max(len(row[k]) for row in cells) for k in range(len(self.head))]
        lines = ["  ".join(cell.ljust(w) for cell, w in zip(row, wide, strict=True)).rstrip() for row in cells]
        lines.insert(1, "  ".join("-" * w for w in wide))
        return f"{self.title}\n" + "\n".join(lines) + "\n"


def sites_of(records: Sequence[Json]) -> list[Json]:
    """All true sites of some records."""
    return [site for record in records for site in record["sites"]]


def strays(records: Sequence[Json], on_a_body: bool) -> list[Json]:
    """Found sites with no true one: elsewhere on a body, or where there is none."""
    return [s for r in records for s in r["stray"] if s["on_a_body"] == on_a_body]


def _seconds(records: Sequence[Json], key: str = "seconds") -> str:
    times = [r[key] for r in records if r["error"] is None]
    return f"{np.median(times):.2f} / {np.max(times):.1f}" if times else "–"


def _peak(records: Sequence[Json]) -> str:
    peaks = [r["peak_mb"] for r in records if r["error"] is None]
    return f"{np.max(peaks):.0f}" if peaks else "–"


def _count(rows: Sequence[Json]) -> str:
    silent = sum(not r["flags"] for r in rows)
    return f"{silent} + {len(rows) - silent}"


def finding(title: str, records: Sequence[Json], methods: Sequence[str], missing: dict[str, str]) -> Table:
    """Methods beside each other: what was found, what was wrong, over the records given."""
    head = (
        "method", "scenes", "found within 0.5 mm", "wrong part: silent + flagged", "wrong turn: silent + flagged",
        "elsewhere on a body", "false sites",
    )  # fmt: skip
    rows = []
    for method in methods:
        mine = [r for r in records if r["method"] == method]
        if not mine:
            rows.append((method, missing.get(method, "not run"), *["–"] * (len(head) - 2)))
            continue
        sites = sites_of(mine)
        failed = sum(r["error"] is not None for r in mine)
        rows.append(
            (
                method,
                f"{len(mine)}" + (f", {failed} failed" if failed else ""),
                figures.share(len(figures.found(sites)), len(sites)),
                figures.silent_and_flagged(figures.wrong_part(sites)),
                figures.silent_and_flagged(figures.wrong_turn(sites)),
                _count(strays(mine, True)),
                _count(strays(mine, False)),
            )
        )
    return Table(title, head, tuple(rows))


def accuracy(title: str, records: Sequence[Json], methods: Sequence[str]) -> Table:
    """Methods beside each other: errors of the sites found with the right part, as ratios to the bound; time; memory.

    Ratios are rms, platform / axis / index, with the number of sites behind them: a site whose bound is loose has none.
    """
    head = (
        "method", "rms / bound, all right parts", "the same, unflagged", "the same, right turn", "median µm / ° / °",
        "s a scene: median / most", "CPU s", "peak MB",
    )  # fmt: skip
    rows = []
    for method in methods:
        mine = [r for r in records if r["method"] == method]
        if mine:
            ok = figures.right(sites_of(mine))
            rows.append(
                (
                    method,
                    figures.ratios(ok),
                    figures.ratios(figures.unflagged(ok)),
                    figures.ratios([s for s in ok if not figures.turned(s)]),
                    figures.medians(ok),
                    _seconds(mine),
                    _seconds(mine, "cpu"),
                    _peak(mine),
                )
            )
    return Table(title, head, tuple(rows))


def honesty(records: Sequence[Json]) -> Table:
    """Do our bounds hold the truth, and is our covariance the right size?"""
    sites = sites_of(records)
    rows = []
    for name, some in (("all right parts", figures.right(sites)), ("unflagged", figures.unflagged(sites))):
        rows.append(
            (
                name,
                *(figures.held(some, k) for k in range(3)),
                figures.nees(some, lambda v: float(np.mean(v)) / 6.0),
                figures.nees(some, lambda v: float(np.median(v)) / CHI2_6_MEDIAN),
                str(sum(s["least"] is None for s in some)),
            )
        )
    head = ("sites", "u95 platform", "u95 axis", "u95 index", "NEES/6", "median NEES / 5.348", "loose: no bound")
    return Table("Ours: does u95 hold the truth (Clopper–Pearson 95 % limits)", head, tuple(rows))


def by_noise(records: Sequence[Json]) -> Table:
    """Sites at the right turn, for each thing that the noise of a drawn scene holds; a scene may count in several."""
    rows = []
    for name in (PLAIN, TAILS, GRAZING, SEAMS):
        some = figures.right(sites_of([r for r in records if name in noise_of(settings(int(r["scene"])))]))
        straight = [s for s in some if not figures.turned(s)]
        held = (figures.held(straight, k) for k in range(3))
        nees = figures.nees(straight, lambda v: float(np.mean(v)) / 6.0)
        rows.append((name, figures.ratios(straight), *held, nees))
    head = ("noise", "rms / bound", "u95 platform", "u95 axis", "u95 index", "NEES/6")
    return Table("Ours, sites at the right turn: by what the noise holds", head, tuple(rows))


def grouped(title: str, records: Sequence[Json], tag: str, first_site_only: bool = False) -> Table:
    """Found, wrong and false for each value of a tag. first_site_only: the site with the fault, not its neighbour."""
    rows = []
    for value in sorted({r["tags"][tag] for r in records}, key=lambda v: (isinstance(v, str), v)):
        mine = [r for r in records if r["tags"][tag] == value]
        sites = [s for s in sites_of(mine) if s["faults"]] if first_site_only else sites_of(mine)
        rows.append(_group(str(value), mine, sites))
    mine = list(records)
    rows.append(_group("all", mine, [s for s in sites_of(mine) if s["faults"]] if first_site_only else sites_of(mine)))
    head = (
        tag, "scenes", "found within 0.5 mm", "wrong part: silent + flagged", "wrong turn: silent + flagged",
        "right, flagged", "elsewhere on a body", "false sites",
    )  # fmt: skip
    return Table(title, head, tuple(rows))


def _group(name: str, mine: Sequence[Json], sites: Sequence[Json]) -> tuple[str, ...]:
    flagged = len(figures.right(sites)) - len(figures.unflagged(sites))
    return (
        name,
        str(len(mine)),
        figures.share(len(figures.found(sites)), len(sites)),
        figures.silent_and_flagged(figures.wrong_part(sites)),
        figures.silent_and_flagged(figures.wrong_turn(sites)),
        str(flagged),
        _count(strays(mine, True)),
        _count(strays(mine, False)),
    )


def growth(title: str, records: Sequence[Json]) -> Table:
    """Median times and peak for each size, and the power with which CPU time, which other work on the machine hardly
    changes, grows since the size before."""
    rows: list[tuple[str, ...]] = []
    for what in ("triangles", "bodies", "candidates"):
        mine = [r for r in records if r["tags"]["grows"] == what and r["error"] is None]
        before: tuple[float, float] | None = None
        for size in sorted({r["tags"]["size"] for r in mine}):
            some = [r for r in mine if r["tags"]["size"] == size]
            at = float(np.median([r["triangles"] for r in some])) if what == "triangles" else float(size)
            seconds = float(np.median([r["seconds"] for r in some]))
            work = float(np.median([r["cpu"] for r in some]))
            power = f"{np.log(work / before[1]) / np.log(at / before[0]):.2f}" if before else ""
            triangles = f"{np.median([r['triangles'] for r in some]) / 1e6:.2f} M"
            rows.append((what, f"{size:g}", triangles, f"{seconds:.2f}", f"{work:.2f}", power, _peak(some)))
            before = (at, work)
    head = ("grows", "size", "triangles", "seconds", "CPU s", "its power since the size before (1: linear)", "peak MB")
    return Table(title, head, tuple(rows))
