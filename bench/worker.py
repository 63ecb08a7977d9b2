"""One process a method: its time and peak memory are its own, and a crash or a hang costs one scene, not the run."""

from __future__ import annotations

import contextlib
import multiprocessing
import time
import traceback
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path

from bench.method import Found, load
from bench.scenes import Task, task_of
from stylobate.simulate import Settings, draw_bodies, scene

WARM_SEED = 1


@dataclass(frozen=True)
class Answer:
    """found, or the error in one line; seconds of the call alone, by the clock and of all cores' work (cpu);
    peak_mb of the whole process during it."""

    found: list[Found]
    seconds: float
    cpu: float
    peak_mb: float
    error: str | None = None


class Worker:
    """Runs one method in a process of its own. Raises ImportError where the method's package is not installed."""

    def __init__(self, where: str, timeout: float) -> None:
        self.where, self.timeout = where, timeout
        self._start()

    def _start(self) -> None:
        context = multiprocessing.get_context("spawn")
        self.pipe, other = context.Pipe()
        self.process = context.Process(target=_serve, args=(self.where, other), daemon=True)
        self.process.start()
        other.close()
        said = self.pipe.recv() if self.pipe.poll(600.0) else "no answer within 600 s"
        if said is not None:
            self.close()
            raise ImportError(said)

    def run(self, task: Task) -> Answer:
        """The method on one scene; what goes wrong is in the answer, and the process is started anew if it died."""
        start = time.perf_counter()
        error = f"gave no answer within {self.timeout:g} s"
        try:
            self.pipe.send(task)
            if self.pipe.poll(self.timeout):
                answer: Answer = self.pipe.recv()
                return answer
        except (EOFError, OSError):
            self.process.join(5.0)
            error = f"the process died (exit status {self.process.exitcode})"
        self.close()
        self._start()
        return Answer([], time.perf_counter() - start, 0.0, 0.0, error)

    def close(self) -> None:
        """End the process."""
        self.process.terminate()
        self.process.join(5.0)
        if self.process.is_alive():
            self.process.kill()


def _serve(where: str, pipe: Connection) -> None:
    try:
        method = load(where)
        method(_small_task())  # compiles, fills caches, imports
    except ImportError as error:
        pipe.send(f"not installed: {error}")
        return
    except Exception as error:
        pipe.send(f"does not run: {type(error).__name__}: {error}")
        return
    pipe.send(None)
    while True:
        task = pipe.recv()
        _reset_peak()
        start, work = time.perf_counter(), time.process_time()
        found: list[Found] = []
        error_line = None
        try:
            found = method(task)
        except Exception as error:
            last = traceback.extract_tb(error.__traceback__)[-1]
            error_line = f"{type(error).__name__} at {Path(last.filename).name}:{last.lineno}: {error}".splitlines()[0]
        seconds, cpu = time.perf_counter() - start, time.process_time() - work
        pipe.send(Answer(found, seconds, cpu, _peak_mb(), error_line))


def _small_task() -> Task:
    bodies = draw_bodies(WARM_SEED, 2)
    return task_of(scene(Settings(seed=WARM_SEED, arch="single", bodies=1, edge_mm=0.2), bodies), bodies, near=True)


def _reset_peak() -> None:
    """Start the kernel's record of this process's peak anew (Linux; elsewhere the peak is that since the start)."""
    with contextlib.suppress(OSError):
        Path("/proc/self/clear_refs").write_text("5")


def _peak_mb() -> float:
    try:
        lines = Path("/proc/self/status").read_text().splitlines()
        return next(float(line.split()[1]) / 1024.0 for line in lines if line.startswith("VmHWM"))
    except (OSError, StopIteration):
        import resource

        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
