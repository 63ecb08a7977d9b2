"""`python -m bench`: ours and general-purpose peers on the same simulated scenes, drawn anew for each seed.

A long run is cut into pieces by `--seed` and `--scenes`, each with an `--out` of its own; the files are joined with
`cat` and printed with `--scenes 0 --out JOINED`. A run that was stopped goes on where it was when started again.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from bench.experiments import EXPERIMENTS, Experiment, Job
from bench.judge import Json, judged, least_of
from bench.scenes import task_of
from bench.store import Store
from bench.tables import Table, accuracy, by_noise, finding, grouped, growth, honesty
from bench.worker import Answer, Worker

SEED = 500_000
SCENES = {"blind": 6, "near": 3, "empty": 6, "twins": 15, "faults": 13, "growth": 1}
PEER_SCENES = 1  # of the blind table: a peer takes one to three minutes a scene


class Pool:
    """The methods' processes, started when first needed; why one cannot be used."""

    def __init__(self, timeout: float) -> None:
        self.timeout = timeout
        self.workers: dict[str, Worker] = {}
        self.missing: dict[str, str] = {}

    def worker(self, method: str, where: str) -> Worker | None:
        """The process of a method, None where it cannot be used."""
        if method in self.missing:
            return None
        if where not in self.workers:
            try:
                self.workers[where] = Worker(where, self.timeout)
            except ImportError as error:
                self.missing[method] = str(error)
                print(f"{method}: {error}", file=sys.stderr)
                return None
        return self.workers[where]

    def close(self) -> None:
        """End all."""
        for worker in self.workers.values():
            worker.close()


def record_of(table: str, job: Job, method: str, sites: tuple[list[Json], list[Json]], answer: Answer) -> Json:
    """What is kept of one method on one scene."""
    return {
        "table": table, "scene": job.scene, "method": method, "tags": job.tags,
        "seconds": answer.seconds, "cpu": answer.cpu, "peak_mb": answer.peak_mb, "error": answer.error,
        "sites": sites[0], "stray": sites[1],
    }  # fmt: skip


def run(experiment: Experiment, given: argparse.Namespace, store: Store, pool: Pool) -> None:
    """Every scene of a table by every method that it is not known for yet."""
    count = SCENES[experiment.name] if given.scenes is None else given.scenes
    for number, job in enumerate(experiment.jobs(given.seed, count)):
        wanted = {
            name: where
            for name, where in experiment.methods.items()
            if (not given.methods or name in given.methods)
            and (name == "ours" or experiment.name != "blind" or number < given.peer_scenes)
            and (experiment.name, job.scene, name) not in store.records
        }
        workers = {name: pool.worker(name, where) for name, where in wanted.items()}
        if not any(workers.values()):
            continue
        made = job.made()
        least: list[Json | None] = least_of(made) if job.truth else [None] * len(made.sites)
        for name, worker in workers.items():
            if worker is None:
                continue
            answer = worker.run(task_of(made, job.bodies, job.near))
            record = record_of(experiment.name, job, name, judged(made, least, answer.found), answer)
            record["triangles"] = len(made.surface.faces)
            store.add(record)
            tell(record)


def tell(record: Json) -> None:
    """One line on stderr as the run goes."""
    found = sum(s["found"] is not None for s in record["sites"])
    wrong = "" if record["error"] is None else f"  FAILED: {record['error']}"
    print(
        f"{record['table']:7} {record['scene']:24} {record['method']:17} {found} of {len(record['sites'])}"
        f"  stray {len(record['stray'])}  {record['seconds']:.2f} s{wrong}",
        file=sys.stderr,
        flush=True,
    )


def tables_of(experiment: Experiment, records: list[Json], missing: dict[str, str]) -> list[Table]:
    """What is printed of one table's records."""
    ours = [r for r in records if r["method"] == "ours"]
    if experiment.name in ("blind", "near"):
        by_scene: dict[str, set[str]] = {}
        for record in records:
            by_scene.setdefault(record["scene"], set()).add(record["method"])
        most = max(by_scene.values(), key=len)
        common = [r for r in records if by_scene[r["scene"]] >= most]
        methods = list(experiment.methods)
        tables = [
            finding(f"{experiment.title}: sites, the same scenes by all", common, methods, missing),
            accuracy(f"{experiment.title}: accuracy and cost, the same scenes by all", common, methods),
        ]
        if experiment.name == "blind":
            mine = f"{experiment.title}: ours, all scenes"
            tables = [finding(mine, ours, ["ours"], {}), accuracy(mine, ours, ["ours"]), honesty(ours), *tables]
            tables.append(by_noise(ours))
            tables.append(grouped("Ours: by kind of arch", ours, "arch"))
            tables.append(grouped("Ours: by the most that is unseen of a body (above the gum)", ours, "unseen"))
        return tables
    if experiment.name == "growth":
        return [growth(experiment.title, ours)]
    tag = {"empty": "stumps", "twins": "layer_um", "faults": "fault"}[experiment.name]
    return [grouped(experiment.title, ours, tag, first_site_only=experiment.name == "faults")]


def arguments(given: Sequence[str] | None = None) -> argparse.Namespace:
    """Read the command line."""
    parser = argparse.ArgumentParser(prog="python -m bench", description=(__doc__ or "").split("\n\n")[0])
    parser.add_argument("--tables", nargs="+", choices=EXPERIMENTS, default=list(EXPERIMENTS), metavar="TABLE",
                        help=f"which tables: {', '.join(EXPERIMENTS)} (default: all)")  # fmt: skip
    parser.add_argument("--scenes", type=int, help="scenes a table (default: a few, some minutes; 0: only print)")
    parser.add_argument("--seed", type=int, default=SEED, help="of the first scene (default: %(default)s)")
    parser.add_argument("--peer-scenes", type=int, default=PEER_SCENES,
                        help="blind scenes that the peers get, minutes each (default: %(default)s)")  # fmt: skip
    parser.add_argument("--methods", nargs="+", metavar="METHOD", help="only these (ours, open3d-ransac, …)")
    parser.add_argument("--timeout", type=float, default=600.0, help="seconds a scene (default: %(default)g)")
    parser.add_argument("--out", type=Path, help="file of results, added to; what is in it is not run again")
    parser.add_argument("--markdown", action="store_true", help="print the tables as Markdown")
    return parser.parse_args(given)


def main() -> None:
    """Run and print."""
    given = arguments()
    store, pool = Store(given.out), Pool(given.timeout)
    try:
        for name in given.tables:
            run(EXPERIMENTS[name], given, store, pool)
    finally:
        pool.close()
    for name in given.tables:
        records = store.of(name)
        if records:
            for table in tables_of(EXPERIMENTS[name], records, pool.missing):
                print(table.text(given.markdown))
            for record in records:
                if record["error"] is not None:
                    print(f"failed: {name} {record['scene']} by {record['method']}: {record['error']}")


if __name__ == "__main__":
    main()
