"""The scanner's export folder: a scan that has come, and has stopped growing, is taken."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from pathlib import Path

TICK_S = 1.0
"""Between two looks; a file is complete when it was the same at two of them. Common practice, no source."""
SCANS = (".stl", ".ply", ".obj", ".stl.gz", ".ply.gz", ".obj.gz")

Mark = tuple[int, int]


def scans_in(folder: Path) -> dict[Path, Mark]:
    """Scans in a folder with size and time of change; empty where it cannot be read (any more)."""
    found = {}
    try:
        for path in folder.iterdir():
            if path.name.lower().endswith(SCANS) and not path.name.startswith(".") and path.is_file():
                status = path.stat()
                found[path] = (status.st_size, status.st_mtime_ns)
    except OSError:
        return {}
    return found


async def watch(folder: Path, take: Callable[[Path], Awaitable[bool]]) -> None:
    """Call `take` with each scan that comes into the folder from now on, or changes; again where it says False."""
    taken = scans_in(folder)
    before: dict[Path, Mark] = {}
    while True:
        await asyncio.sleep(TICK_S)
        now = scans_in(folder)
        for path, mark in sorted(now.items(), key=lambda item: item[1][1]):
            if taken.get(path) != mark and before.get(path) == mark and mark[0] > 0 and await take(path):
                taken[path] = mark
        before = now
