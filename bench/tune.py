"""`python -m bench.tune`: the search for the peers' settings, on seeds that no table uses.

One setting at a time is changed from the values in use, and every trial is printed. Near starts are judged by sites
found, then by the median of error over bound; searches without a hint by sites found less false ones.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from bench import near, peers
from bench.judge import Json, judged, least_of
from bench.method import Found
from bench.scenes import Task, drawn, task_of

SEED = 70_000
REACHES: dict[str, Sequence[Any]] = {"reaches": ((1.5, 0.5, 0.15), (1.0, 0.3), (0.6, 0.2), (2.0, 0.1))}
NEAR_TRIALS: dict[str, tuple[Callable[..., list[Found]], near.Tuning, dict[str, Sequence[Any]]]] = {
    "open3d-plane": (
        near.open3d_plane, near.PLANE, REACHES | {"tukey": (0.02, 0.05, 0.1)}
    ),
    "small-gicp": (
        near.gicp, near.GICP,
        REACHES | {"cell": (0.02, 0.1, 0.2), "neighbours": (10, 20)},
    ),
    "small-gicp-plane": (
        near.gicp_plane, near.GICP_PLANE,
        REACHES | {"cell": (0.02, 0.1, 0.2), "neighbours": (10, 20)},
    ),
    "trimesh": (near.trimesh_icp, near.TRIMESH, REACHES),
}  # fmt: skip
BLIND_TRIALS: dict[str, tuple[Callable[..., list[Found]], peers.Tuning, dict[str, Sequence[Any]]]] = {
    "open3d-ransac": (
        peers.ransac, peers.RANSAC,
        {"voxel": (0.3, 0.4, 0.5), "feature": (5.0, 8.0), "shown": (0.2, 0.3), "rms": (0.03, 0.05)},
    ),
    "open3d-fgr": (peers.fgr, peers.FGR, {"voxel": (0.3, 0.4, 0.5), "feature": (5.0, 8.0)}),
    "kiss-matcher": (peers.kiss, peers.KISS, {"voxel": (0.3, 0.4, 0.5)}),
}  # fmt: skip


def main() -> None:
    """Search and print."""
    parser = argparse.ArgumentParser(prog="python -m bench.tune", description=(__doc__ or "").split("\n\n")[0])
    parser.add_argument("--scenes", type=int, default=4)
    parser.add_argument("--seed", type=int, default=SEED)
    parser.add_argument("--methods", nargs="+", default=[*NEAR_TRIALS, *BLIND_TRIALS])
    given = parser.parse_args()
    made = [drawn(seed) for seed in range(given.seed, given.seed + given.scenes)]
    scenes = [(one, least_of(one), task_of(one, bodies, near=True)) for one, bodies in made]
    for name in given.methods:
        method, base, trials = {**NEAR_TRIALS, **BLIND_TRIALS}[name]
        print(f"{name}: {base}")
        print(f"  in use: {_outcome(scenes, method, base)}", flush=True)
        for key, values in trials.items():
            for value in values:
                if value != getattr(base, key):
                    tuning: Any = replace(base, **{key: value})  # type: ignore[type-var]
                    print(f"  {key} {value}: {_outcome(scenes, method, tuning)}", flush=True)


def _outcome(
    scenes: Sequence[tuple[Any, list[Json | None], Task]], method: Callable[..., list[Found]], tuning: Any
) -> str:
    sites: list[Json] = []
    strays, start = 0, time.process_time()
    for made, least, task in scenes:
        rows, stray = judged(made, least, method(task, tuning))
        sites += rows
        strays += len(stray)
    good = [s for s in sites if s["found"] and s["found"]["right_part"] and s["least"]]
    off = [np.linalg.norm(s["found"]["xi"][:3]) / s["least"]["platform"] for s in good]
    median = f"{np.median(off):.2f}" if off else "–"
    spent = time.process_time() - start
    return f"{len(good)} of {len(sites)} found, {strays} elsewhere, platform {median} × bound, {spent:.0f} CPU s"


if __name__ == "__main__":
    main()
