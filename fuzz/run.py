"""The runner: cases in worker processes with limits on memory and time; a fault is saved and ends with status 1."""

from __future__ import annotations

import argparse
import hashlib
import multiprocessing
import sys
import tempfile
import time
import warnings
from collections import Counter
from multiprocessing.sharedctypes import Synchronized
from pathlib import Path
from typing import Any

from fuzz import check, parts_cases
from fuzz.cases import STORED, mesh_case

PARTS_EVERY = 50
"""One case in so many is a parts folder, which takes longer than a mesh."""
_HANG_SECONDS = 10.0
"""A worker that says nothing for so long is killed (2 s for a case, the rest for a machine that is busy)."""
_SHOWN = 20


def is_parts(number: int) -> bool:
    """Whether a case number stands for a parts folder."""
    return number % PARTS_EVERY == PARTS_EVERY - 1 and parts_cases.available()


def work(seed: int, first: int, step: int, stop: int, deadline: float, current: Any, results: Any) -> None:
    """Run cases first, first + step, … and send each fault; ends with a tally."""
    warnings.simplefilter("error")
    tally: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for warm in range(40):
            check.fault_of(mesh_case(-1 & 0xFFFF, warm).data, "warm", None)
        if parts_cases.available():
            parts_cases.parts_fault(seed, 0, folder)
        check.limit_memory()
        for number in range(first, stop, step):
            if time.time() > deadline:
                break
            current.value = number
            if is_parts(number):
                fault, accepted = parts_cases.parts_fault(seed, number, folder)
            else:
                case = mesh_case(seed, number)
                fault, accepted = check.fault_of(case.data, case.name, folder if case.on_disk else None)
            tally["accepted" if accepted else "refused"] += 1
            if fault:
                results.put((number, fault))
    results.put((-1, dict(tally)))
    current.value = -2


class Run:
    """One worker and what it last said."""

    def __init__(self, options: argparse.Namespace, first: int, deadline: float, results: Any) -> None:
        self.options, self.deadline, self.results = options, deadline, results
        self.current: Synchronized[int] = multiprocessing.Value("q", -1)
        self.start(first)

    def start(self, first: int) -> None:
        """Start the worker at case `first`."""
        self.seen, self.since = -1, time.monotonic()
        self.current.value = -1
        arguments = (
            self.options.seed,
            first,
            self.options.workers,
            self.options.runs,
            self.deadline,
            self.current,
            self.results,
        )
        self.process = multiprocessing.Process(target=work, args=arguments, daemon=True)
        self.process.start()

    def watch(self) -> bool:
        """False once the worker is done; a crash or a hang is reported and the worker started anew after it."""
        number = int(self.current.value)
        if number != self.seen:
            self.seen, self.since = number, time.monotonic()
        alive = self.process.is_alive()
        if number == -2:
            return alive
        hangs = number >= 0 and time.monotonic() - self.since > _HANG_SECONDS
        if alive and not hangs:
            return True
        if hangs:
            self.process.kill()
        self.process.join()
        if number < 0:
            sys.exit(f"a worker died before its first case (status {self.process.exitcode})")
        self.results.put((number, "hang" if hangs else f"crash: status {self.process.exitcode}"))
        self.start(number + self.options.workers)
        return True


def save(seed: int, number: int) -> Path:
    """Keep the file of a mesh case as a regression file."""
    case = mesh_case(seed, number)
    folder = STORED / "fuzz"
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{hashlib.sha256(case.data).hexdigest()[:12]}{Path(case.name).suffix or '.bin'}"
    path.write_bytes(case.data)
    return path


def main() -> int:
    """Run, print the tally, return 1 if anything was found."""
    parser = argparse.ArgumentParser(prog="python -m fuzz", description=__doc__)
    parser.add_argument("--runs", type=int, default=100_000, help="cases at most")
    parser.add_argument("--seconds", type=float, default=600.0, help="time at most")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1, help="another series of cases")
    options = parser.parse_args()
    multiprocessing.set_start_method("spawn")
    results: Any = multiprocessing.Queue()
    start = time.monotonic()
    runs = [Run(options, k, time.time() + options.seconds, results) for k in range(options.workers)]
    found: dict[int, str] = {}
    tally: Counter[str] = Counter()
    while sum(run.watch() for run in runs) or not results.empty():
        while not results.empty():
            number, what = results.get()
            if number < 0:
                tally.update(what)
            else:
                found[number] = what
        time.sleep(0.05)
    spent = time.monotonic() - start
    for number, what in sorted(found.items())[:_SHOWN]:
        where = "parts folder" if is_parts(number) else save(options.seed, number)
        print(f"case {number} ({where}): {what}")
    cases = tally["accepted"] + tally["refused"]
    kinds = Counter(what.split(":")[0] for what in found.values())
    print(f"{cases} cases in {spent:.0f} s: {tally['accepted']} read, {tally['refused']} refused in one line, "
          f"{len(found)} faults {dict(kinds) if found else ''}")  # fmt: skip
    return 1 if found else 0
