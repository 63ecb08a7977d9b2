"""Worker processes of this machine: one a lane, so that a scan which brings its worker down brings down no other.

A worker is replaced after RECYCLE scans, so that memory stays flat whatever a library may leak, and when it dies or
takes too long over a scan.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import multiprocessing.connection
import os
import queue
import signal
import threading
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool

from stylobate.batch.work import Done, Options, Order, work
from stylobate.core.errors import UsageError
from stylobate.parts.model import PartsFolder

RECYCLE = 100
ONE_THREAD = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "NUMBA_NUM_THREADS")
"""Each worker uses one core: that is what makes two of them twice as fast as one."""

Work = Callable[[Order, PartsFolder, Options], Done]

_shared: tuple[PartsFolder, Options] | None = None


def _begin(parts: PartsFolder, options: Options) -> None:
    """In a new worker: leave interrupts to the parent, end when the parent does, keep what all scans need."""
    global _shared
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    _shared = (parts, options)


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        multiprocessing.connection.wait([parent.sentinel])
        os._exit(1)


def _call(task: Work, order: Order) -> Done:
    assert _shared is not None
    return task(order, *_shared)


class Lane:
    """One worker process at a time."""

    def __init__(self, parts: PartsFolder, options: Options, limit_s: float, recycle: int, task: Work) -> None:
        self._start = (parts, options)
        self._limit_s, self._recycle, self._task = limit_s, recycle, task
        self._pool: ProcessPoolExecutor | None = None
        self._pid = 0
        self._used = 0

    def run(self, order: Order) -> Done:
        """Measure one scan; a dead or late worker is a failed scan. Raises UsageError if no worker can be started."""
        pool = self._ready()
        try:
            done = pool.submit(_call, self._task, order).result(self._limit_s)
        except BrokenProcessPool:
            self.kill()
            return Done(order.key, "failed", "the worker died over it (out of memory, or a fault in compiled code)")
        except TimeoutError:
            self.kill()
            return Done(order.key, "failed", f"given up after {self._limit_s / 60:g} min", self._limit_s)
        self._used += 1
        if self._used >= self._recycle:
            self.close()
        return done

    def _ready(self) -> ProcessPoolExecutor:
        if self._pool is None:
            context = multiprocessing.get_context("spawn")
            self._pool = ProcessPoolExecutor(1, mp_context=context, initializer=_begin, initargs=self._start)
            self._used = 0
            try:
                self._pid = self._pool.submit(os.getpid).result()
            except BrokenProcessPool as error:
                raise UsageError("no worker process can be started; close other programs and try again") from error
        return self._pool

    def kill(self) -> None:
        """End the worker at once."""
        if self._pid:
            with contextlib.suppress(ProcessLookupError):
                os.kill(self._pid, signal.SIGKILL)
        self.close()

    def close(self) -> None:
        """End the worker when it is done."""
        pool, self._pool, self._pid = self._pool, None, 0
        if pool is not None:
            pool.shutdown(wait=True, cancel_futures=True)


def done_locally(
    orders: Iterable[Order], parts: PartsFolder, options: Options, workers: int, limit_s: float,
    recycle: int = RECYCLE, task: Work = work,
) -> Iterator[Done]:  # fmt: skip
    """Measure scans with `workers` processes; results come as they are done. Raises UsageError.

    A worker gets its next scan when the caller asks for the result after its last one, that is, has kept that: at most
    `workers` scans are lost at any time.
    """
    todo, lock, stop = iter(orders), threading.Lock(), threading.Event()
    results: queue.SimpleQueue[tuple[int, Done | BaseException | None]] = queue.SimpleQueue()
    lanes = [Lane(parts, options, limit_s, recycle, task) for _ in range(workers)]
    taken = [threading.Semaphore(0) for _ in lanes]

    def follow(k: int) -> None:
        try:
            while not stop.is_set():
                with lock:
                    order = next(todo, None)
                if order is None:
                    break
                results.put((k, lanes[k].run(order)))
                taken[k].acquire()
            lanes[k].close()
            results.put((k, None))
        except BaseException as error:
            results.put((k, error))

    threads = [threading.Thread(target=follow, args=(k,), daemon=True) for k in range(workers)]
    with _one_thread_each():
        try:
            for thread in threads:
                thread.start()
            left = workers
            while left:
                k, item = results.get()
                if item is None:
                    left -= 1
                elif isinstance(item, BaseException):
                    raise item
                else:
                    yield item
                    taken[k].release()
        finally:
            stop.set()
            for k, lane in enumerate(lanes):
                lane.kill()
                taken[k].release()
            for thread in threads:
                thread.join()


@contextlib.contextmanager
def _one_thread_each() -> Iterator[None]:
    """Processes started meanwhile are told to use one thread for linear algebra."""
    before = {name: os.environ.get(name) for name in ONE_THREAD}
    os.environ.update(dict.fromkeys(ONE_THREAD, "1"))
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value
