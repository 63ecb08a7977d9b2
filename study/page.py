"""The page docs/trust: text, tables, pictures."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path

from study import tables
from study.scenes import FOREIGN, KERNELS, SEED
from study.tables import Row

TEXT = Path(__file__).with_name("page.md")

NEAR = "Measuring starts near the truth (0.15 mm, 2°, every part and six turns tried), so that the search is not in it."
SEARCHED = "Measuring begins with the blind search."


def write_page(rows: Sequence[Row], folder: Path) -> None:
    """Write README.md and its pictures."""
    clean = [row for row in rows if not row["cause"]]
    faulty = [row for row in rows if row["cause"]]
    folder.mkdir(parents=True, exist_ok=True)
    text = TEXT.read_text(encoding="utf-8").format(
        clean=len(clean), faulty=len(faulty), day=datetime.now(UTC).strftime("%d %B %Y"), seed=SEED,
        start=SEARCHED if any(row.get("searched") for row in clean) else NEAR,
        coverage=tables.coverage(clean), others=tables.made_and_foreign(clean),
        verdicts=tables.verdicts(clean, faulty), confusion=tables.confusion(faulty), sizes=tables.sizes(faulty),
        smallest=tables.smallest(clean),
    )  # fmt: skip
    (folder / "README.md").write_text(text, encoding="utf-8")
    _coverage_picture(clean, folder / "coverage.png")
    _size_picture(faulty, folder / "sizes.png")


def _coverage_picture(clean: Sequence[Row], file: Path) -> None:
    from matplotlib.figure import Figure

    good = [row for row in clean if tables.right(row)]
    figure = Figure(figsize=(7.5, 3.6), dpi=110, layout="constrained")
    axes = figure.add_subplot()
    for k, noise in enumerate([*KERNELS, *FOREIGN]):
        some = [row for row in good if row["noise"] == noise]
        for j, colour in enumerate(("#0d5b66", "#c2703d", "#66717a")):
            hits = [tables.error_of(row)[j] <= row["u95_total"][j] for row in some if row["u95_total"][j] is not None]
            if not hits:
                continue
            low, high = tables.clopper_pearson(sum(hits), len(hits))
            axes.plot([k + 0.18 * (j - 1)] * 2, [low, high], color=colour, linewidth=2)
            axes.plot(k + 0.18 * (j - 1), sum(hits) / len(hits), "o", color=colour, markersize=4)
    axes.axhline(0.95, color="black", linewidth=0.8, linestyle=":")
    axes.set_xticks(range(8), [*KERNELS, *FOREIGN], rotation=20, fontsize=8)
    axes.set_ylim(0.5, 1.005)
    axes.set_ylabel("share held by u95_total")
    axes.set_title("platform (green), axis (orange), turn (grey); bars: 95 % bounds", fontsize=9)
    figure.savefig(file, metadata={"Software": None})


def _size_picture(faulty: Sequence[Row], file: Path) -> None:
    from matplotlib.figure import Figure

    figure = Figure(figsize=(7.5, 2.9), dpi=110, layout="constrained")
    shown = (
        ("added layer", ("even", "pooled"), "µm"), ("bent body", ("progressive", "hinge"), "°"),
        ("lost material", ("chip", "worn edge"), "µm"), ("split surface", ("",), "µm"),
    )  # fmt: skip
    for k, (cause, styles, unit) in enumerate(shown):
        axes = figure.add_subplot(1, 4, k + 1)
        top = 0.0
        for style, colour in zip(styles, ("#0d5b66", "#c2703d"), strict=False):
            for true, found, bound in tables.size_pairs(faulty, cause, style):
                axes.errorbar(true, found, bound, color=colour, fmt="o", markersize=3, linewidth=0.8)
                top = max(top, true, found)
        axes.plot([0, top], [0, top], color="black", linewidth=0.6)
        axes.set_title(f"{cause}, {unit}", fontsize=8)
        axes.tick_params(labelsize=7)
        axes.set_xlabel("put in", fontsize=7)
    figure.savefig(file, metadata={"Software": None})
