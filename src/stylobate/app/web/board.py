"""What the page is told, who listens to it, and the one task that may be under way."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from stylobate import __version__
from stylobate.app.web.desk import Desk
from stylobate.app.web.measurer import Measurer, Stopped
from stylobate.app.web.model import About, JobView, RefusalView, State, WatchView, Work
from stylobate.app.web.words import one_line
from stylobate.core.errors import StylobateError
from stylobate.scan.source import MAX_BYTES, shown


@dataclass
class Place:
    """What `stylobate open` was called with. result: a finished result folder, shown and not changed.

    desk: else where the work is kept. scan: the scan of a result, where it is at hand. cache: for surfaces.
    """

    cache: Path
    result: Path | None = None
    desk: Desk | None = None
    scan: Path | None = None
    parts: str = ""
    work: Work = "bridge"
    watch: Path | None = None

    def folder(self) -> Path:
        """The folder that the page is about."""
        return self.desk.folder if self.desk else self.result or Path()


class Board:
    """State, listeners, the worker process, and the one task that may be under way."""

    def __init__(self, place: Place) -> None:
        self.place = place
        self.measurer = Measurer()
        self.state = State(
            revision=0, version=__version__, folder=shown(str(place.folder())), read_only=place.desk is None,
            work=place.work, parts=None, result=None, scene=None, placement=None, frame=None, compared=None, job=None,
            refusal=None, notice="", undo=None, redo=None, case=None,
            watch=WatchView(shown(str(place.watch)), "") if place.watch else None, largest_upload_bytes=MAX_BYTES,
        )  # fmt: skip
        self._changed = asyncio.Event()
        self._task: asyncio.Task[None] | None = None
        self.who = ""

    def change(self, **values: Any) -> None:
        """Put values into the state and wake who listens."""
        self.state = replace(self.state, revision=self.state.revision + 1, **values)
        self._changed.set()
        self._changed = asyncio.Event()

    async def states(self, idle_s: float) -> AsyncIterator[State | None]:
        """The state now and after every change; None when nothing changed for idle_s."""
        seen = -1
        while True:
            if self.state.revision != seen:
                seen = self.state.revision
                yield self.state
                continue
            try:
                await asyncio.wait_for(self._changed.wait(), idle_s)
            except TimeoutError:
                yield None

    def refuse(self, about: About, error: Exception) -> None:
        """Show a refusal beside what caused it."""
        self.change(refusal=RefusalView(about, one_line(error)))

    def progress(self, file: str) -> Callable[[str, float], None]:
        def tell(stage: str, share: float) -> None:
            self.change(job=JobView(shown(file), stage, share))

        return tell

    def begin(self, work: Callable[[], Awaitable[None]], about: About = "folder") -> None:
        """Make `work` the task that is under way; what it refuses is shown beside `about`."""

        async def guarded() -> None:
            try:
                await work()
            except Stopped:
                await self.fall_back(None)
            except StylobateError as error:
                await self.fall_back(RefusalView(about, one_line(error)))
            finally:
                self.change(job=None)

        self.change(job=JobView(self.state.folder, "starting", 0.0))
        self._task = asyncio.create_task(guarded())

    def busy(self) -> bool:
        """Whether something is under way."""
        return self._task is not None and not self._task.done()

    async def stop(self) -> None:
        """Stop what is under way; what stood there before is shown again."""
        if self.busy():
            await self.measurer.stop()

    async def fall_back(self, refusal: RefusalView | None) -> None:
        """After a stop or a refusal: show that."""
        self.change(refusal=refusal)
