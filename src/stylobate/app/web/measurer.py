"""The server's side of the worker process: one job at a time, progress as it comes, stopped at any moment."""

from __future__ import annotations

import asyncio
import contextlib
import json
import sys
from asyncio.subprocess import DEVNULL, PIPE, Process
from collections.abc import Callable
from typing import Any

from stylobate.core.errors import StylobateError

Progress = Callable[[str, float], None]
LONGEST_LINE = 1 << 20
DIED = "measuring ended without an answer; try again, and if it ends so again cut the scan down to the part with posts"


class Stopped(Exception):  # noqa: N818  not an error: it was asked for
    """The job was stopped on request."""


class Measurer:
    """Owns the worker process: started early so that it is warm, killed to stop a job, started anew after."""

    def __init__(self) -> None:
        self._process: Process | None = None
        self._lock = asyncio.Lock()
        self._stopping = False

    async def start(self) -> None:
        """Start the process where there is none."""
        if self._process is None or self._process.returncode is not None:
            self._process = await asyncio.create_subprocess_exec(
                sys.executable, "-m", "stylobate.app.web.worker", stdin=PIPE, stdout=PIPE, stderr=DEVNULL,
                limit=LONGEST_LINE,
            )  # fmt: skip

    async def run(self, job: dict[str, Any], progress: Progress) -> dict[str, Any]:
        """Do one job; returns its answer. Jobs wait for each other. Raises StylobateError, Stopped."""
        async with self._lock:
            self._stopping = False
            await self.start()
            process = self._process
            if process is None or process.stdin is None or process.stdout is None:
                raise StylobateError(DIED)
            with contextlib.suppress(ConnectionError):
                process.stdin.write(json.dumps(job).encode() + b"\n")
                await process.stdin.drain()
            while line := await process.stdout.readline():
                message = json.loads(line)
                if "progress" in message:
                    progress(*message["progress"])
                elif "done" in message:
                    done: dict[str, Any] = message["done"]
                    return done
                else:
                    raise StylobateError(message.get("refused") or _fault(message["fault"]))
            await process.wait()
            if self._stopping:
                raise Stopped
            raise StylobateError(DIED)

    async def stop(self) -> None:
        """End the job that runs, if any, and have a fresh process ready."""
        self._stopping = True
        await self.close()
        await self.start()

    async def close(self) -> None:
        """End the process."""
        process = self._process
        if process is not None and process.returncode is None:
            with contextlib.suppress(ProcessLookupError):
                process.kill()
            await process.wait()


def _fault(text: str) -> str:
    return f"internal error ({text}); this is a fault of the program: please report it"
