"""`python -m study`: draw, measure and keep scenes (resumable), then write the page docs/trust."""

from __future__ import annotations

import argparse
import json
import time
from pathlib import Path

from study.measured import outcome
from study.page import write_page
from study.scenes import SEED, SIZES, draw


def jobs(clean: int, faulty: int) -> list[tuple[int, str]]:
    """Seeds and causes, mixed so that a part of the run is a study of its own."""
    causes = list(SIZES)
    bad = [(SEED + 1_000_000 + k, causes[k % len(causes)]) for k in range(faulty)]
    good = [(SEED + k, "") for k in range(clean)]
    mixed = []
    for k in range(max(len(good), len(bad))):
        mixed += good[k : k + 1] + bad[k : k + 1]
    return mixed


def main() -> None:
    """Run what is not there yet, then write the page."""
    parser = argparse.ArgumentParser(prog="python -m study")
    parser.add_argument("--clean", type=int, default=1000, help="clean sites")
    parser.add_argument("--faulty", type=int, default=1000, help="faulty sites, over all causes")
    parser.add_argument("--search", action="store_true", help="begin each with the blind search")
    parser.add_argument("--seconds", type=float, default=float("inf"), help="stop drawing after so long")
    parser.add_argument("--out", type=Path, default=Path("study-output"))
    parser.add_argument("--page", type=Path, default=Path("docs/trust"), help="folder of the page")
    given = parser.parse_args()
    given.out.mkdir(parents=True, exist_ok=True)
    start = time.monotonic()
    for seed, cause in jobs(given.clean, given.faulty):
        file = given.out / f"{seed}.json"
        if file.exists():
            continue
        if time.monotonic() - start > given.seconds:
            break
        kept = outcome(draw(seed, cause), given.search)
        part = file.with_suffix(".part")
        part.write_text(json.dumps(kept))
        part.rename(file)
    write_page([json.loads(file.read_text()) for file in sorted(given.out.glob("*.json"))], given.page)


if __name__ == "__main__":
    main()
