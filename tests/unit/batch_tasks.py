"""Stand-ins for measuring a scan, run in real worker processes; what a scan's file says is done."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

from stylobate.batch.local import done_locally
from stylobate.batch.run import Count, Plan, run
from stylobate.batch.work import Done, Options, Order
from stylobate.core.errors import ScanError
from stylobate.core.result import ScanInfo
from stylobate.parts.model import PartsFolder
from stylobate.report.document import result_json
from tests.doors.handmade import measurement


def obey(order: Order, parts: PartsFolder, options: Options) -> Done:
    """Do what the scan says: "ok SECONDS", "refuse", "fail", "die" or "hang". Each start is logged beside the scans."""
    word, *rest = order.path.read_text().split()
    descriptor = os.open(order.path.parent.parent / "log.txt", os.O_WRONLY | os.O_APPEND | os.O_CREAT)
    os.write(descriptor, f"{order.path.name} {os.getpid()}\n".encode())
    os.close(descriptor)
    if word == "die":
        os.abort()
    if word == "hang":
        time.sleep(600)
    if word == "fail":
        return Done(order.key, "failed", "not enough memory")
    if word == "refuse":
        return Done(order.key, "refused", str(ScanError(f"{order.path}: holds no triangle")))
    time.sleep(float(rest[0]) if rest else 0.0)
    result, _ = measurement(2)
    text = result_json(replace(result, scan=ScanInfo(order.path.name, "ab" * 32, 7)), maps=False)
    return Done(order.key, "measured", files={"result.json": text.encode()})


def here(orders: Iterable[Order], parts: PartsFolder, options: Options) -> Iterator[Done]:
    """No process at all: what the folder's bookkeeping does is the same."""
    for order in orders:
        yield obey(order, parts, options)


def obeyed(folder: Path, count: int = 2, limit_s: float = 60.0, recycle: int = 100) -> Count:
    """A batch of folder/scans into folder/out, by worker processes."""

    def workers(orders: Iterable[Order], parts: PartsFolder, options: Options) -> Iterator[Done]:
        return done_locally(orders, parts, options, count, limit_s, recycle, obey)

    return run(Plan(folder / "scans", folder / "parts", folder / "out"), workers=workers)


if __name__ == "__main__":
    from tests.unit import batch_tasks

    batch_tasks.obeyed(Path(sys.argv[1]))
