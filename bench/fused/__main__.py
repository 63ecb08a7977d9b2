"""`python -m bench.fused FIRST LAST`: ours on scans fused from depth maps, seeds FIRST to LAST − 1.

It needs scikit-image, which is in the bench's own environment: make fused FUSED="0 10 --out FILE".
"""

from __future__ import annotations

import argparse
import sys
from importlib.util import find_spec
from pathlib import Path

from bench.fused.figures import tables
from bench.fused.judge import judged
from bench.fused.scan import made
from bench.fused.scene import draw
from bench.fused.solids import parts_of
from bench.judge import Json
from bench.method import Found
from bench.ours import blind
from bench.scenes import Task
from bench.store import Store
from stylobate.core.errors import StylobateError


def run(seed: int) -> list[Json]:
    """Make the scan of a seed, measure it without a hint, and judge every site."""
    scan = made(draw(seed))
    found: list[Found] = []
    try:
        found = blind(Task(scan.surface.vertices, scan.surface.faces, parts_of(scan.figures.family)))
    except StylobateError as error:  # all sites missed
        print(f"{seed}: {error}", file=sys.stderr)
    return judged(scan, found)


def tell(lines: list[Json]) -> None:
    """One line on stderr as the run goes: how true the faces of the scan are, and the error at each site."""
    sites = "; ".join(
        f"{line['body']} flat {line['flat_um'][0]:+.1f} µm, "
        + ("not found" if line["found"] is None else f"off {[round(1e3 * x, 1) for x in line['found']['xi'][:3]]}")
        for line in lines
    )
    print(f"{lines[0]['seed']}: {sites}", file=sys.stderr, flush=True)


def main() -> None:
    """Run what is not there yet, and print the tables of all that is."""
    parser = argparse.ArgumentParser(prog="python -m bench.fused", description=(__doc__ or "").split("\n\n")[0])
    parser.add_argument("first", type=int, help="first seed")
    parser.add_argument("last", type=int, help="seed to stop before; the same as the first: only print")
    parser.add_argument("--out", type=Path, help="file of a line a site, added to; what is in it is not run again")
    parser.add_argument("--markdown", action="store_true", help="print the tables as Markdown")
    given = parser.parse_args()
    if given.first < given.last and find_spec("skimage") is None:
        parser.error("scikit-image is not installed here; make fused installs it into .venv-bench and runs there")
    store = Store(given.out)
    for seed in range(given.first, given.last):
        known = [line for line in store.of("fused") if line["seed"] == seed]
        if known and len(known) == known[0]["of"]:
            continue
        lines = run(seed)
        for line in lines:
            store.add(line)
        tell(lines)
    lines = store.of("fused")
    for table in tables(lines) if lines else ():
        print(table.text(given.markdown))


if __name__ == "__main__":
    main()
