"""Kill a process that writes a case, at random moments, and look whether the case is whole and nothing told is lost.

python -m fuzz.case_kills ROUNDS [SEED]: status 0 and one line when every round held, 1 with the round that did not.
"""

from __future__ import annotations

import os
import random
import signal
import sys
import tempfile
import time
from pathlib import Path

from stylobate.case import Case
from stylobate.core.errors import CaseError

CHANGES = 3
"""A writer is killed within the change after this many told ones at most, or within the making of the case."""


def write_until_killed(root: Path, told: int) -> None:
    """Make the case if there is none, then add to it; every change that returned is told as one byte."""
    try:
        case = Case.open(root)
    except CaseError:
        case = Case.create(root, "KILL-1", "bridge", "AB")
        os.write(told, b"+")
    while True:
        case = one_change(case)
        os.write(told, b"+")


def one_change(case: Case) -> Case:
    """A file kept, then a change that takes another value each time."""
    n = len(case.log.lines)
    case.put({f"scans/note-{n % 7}.bin": os.urandom(20_000)})
    work = ("single", "bridge", "arch")[n % 3]
    return case.change("AB", "note", {"n": n}, lambda table: table.model_copy(update={"work": work}))


def one_change_s(root: Path) -> float:
    """How long a change takes on this machine as busy as it is now, in seconds."""
    case = Case.create(root, "KILL-0", "bridge", "AB")
    begun = time.monotonic()
    for _ in range(5):
        case = one_change(case)
    return (time.monotonic() - begun) / 5


def one_round(root: Path, awaited: int, wait_s: float, before: int) -> tuple[int, int]:
    """Start a writer, kill it wait_s after it told `awaited` changes: the case holds `before` changes and those told.

    Returns the lines of its log after one more change, and the changes told. Raises AssertionError, CaseError.
    """
    reading, telling = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        write_until_killed(root, telling)
    os.close(telling)
    with os.fdopen(reading, "rb") as pipe:
        told = len(pipe.read(awaited))
        time.sleep(wait_s)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        told += len(pipe.read())
    assert told >= awaited, f"the writer ended after {told} changes"
    log = root / "log.jsonl"
    if before + told == 0 and not (log.exists() and b"\n" in log.read_bytes()):
        return 0, 0
    case = Case.open(root)
    found = len(case.log.lines)
    assert before + told <= found <= before + told + 1, (before, told, found)
    assert case.faults() == []
    after = case.change("AB", "look", {}, lambda table: table)
    left = [path.name for path in root.rglob(".*") if path.name != ".lock"]
    assert not left, left
    return len(after.log.lines), told


def main(rounds: int, seed: int = 1) -> int:
    """Rounds on cases of their own, twenty kills each; returns the exit status."""
    chance = random.Random(seed)
    done = told = 0
    while done < rounds:
        with tempfile.TemporaryDirectory() as folder:
            change_s = one_change_s(Path(folder) / "first")
            root, before = Path(folder) / "case", 0
            for _ in range(min(20, rounds - done)):
                try:
                    wait_s = chance.uniform(0.0, change_s)
                    before, more = one_round(root, chance.randint(0, CHANGES), wait_s, before)
                except (AssertionError, CaseError) as error:
                    print(f"round {done + 1}, seed {seed}: {error}")
                    return 1
                done += 1
                told += more
    print(f"{done} kills, {told} changes told and kept, no case broken")
    return 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), *map(int, sys.argv[2:3])))
