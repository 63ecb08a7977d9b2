"""The page's state and what can be done to it. One event loop; the worker process does the heavy part."""

from __future__ import annotations

import asyncio
import hashlib
import math
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

from stylobate import __version__
from stylobate.app.web.desk import CaseDesk, Desk, require_case
from stylobate.app.web.measurer import Measurer, Stopped
from stylobate.app.web.model import (
    About,
    BodyView,
    ChoiceKind,
    JobView,
    PartsView,
    RefusalView,
    ResultView,
    SceneView,
    SiteView,
    State,
    WatchView,
    Work,
)
from stylobate.app.web.views import read_view
from stylobate.app.web.watching import watch
from stylobate.app.web.workspace import Options, Point, Run, free_name
from stylobate.core.errors import ResultError, StylobateError, UsageError
from stylobate.record import read_result
from stylobate.scan.source import MAX_BYTES, shown

READ_ONLY = (
    "this page shows a finished result and changes nothing; to measure, start 'stylobate open' with a folder for the "
    "work, and --parts"
)

MIDDLE = 4.0
"""mm above the platform: about the middle of a scan body. Common practice, no source."""


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


class Session:
    """State, listeners, and the one task that may be under way."""

    def __init__(self, place: Place) -> None:
        self.place = place
        self.measurer = Measurer()
        self.state = State(
            revision=0, version=__version__, folder=shown(str(place.folder())), read_only=place.desk is None,
            work=place.work, parts=None, result=None, scene=None, job=None, refusal=None, undo=None, redo=None,
            case=None, watch=WatchView(shown(str(place.watch)), "") if place.watch else None,
            largest_upload_bytes=MAX_BYTES,
        )  # fmt: skip
        self._changed = asyncio.Event()
        self._task: asyncio.Task[None] | None = None
        self._watching: asyncio.Task[None] | None = None
        self._sha256 = ""
        self.who = ""

    # ── state and its listeners ─────────────────────────────────────────────────────────────────────────────────────

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
        self.change(refusal=RefusalView(about, " ".join(str(error).split())))

    # ── start and end ───────────────────────────────────────────────────────────────────────────────────────────────

    async def open(self) -> None:
        """Start the worker and show what is there."""
        await self.measurer.start()
        self._begin(self._open)
        if self.place.watch is not None:
            self._watching = asyncio.create_task(watch(self.place.watch, self._arrived))

    async def close(self) -> None:
        """End the tasks and the worker."""
        for task in (self._task, self._watching):
            if task is not None:
                task.cancel()
                with suppress(asyncio.CancelledError, Exception):
                    await task
        await self.measurer.close()

    async def _open(self) -> None:
        if self.place.parts:
            await self._load_parts(self.place.parts)
        await self._show()

    async def _load_parts(self, path: str) -> None:
        answer = await self.measurer.run({"do": "parts", "parts": path}, self._progress("parts"))
        bodies = tuple(BodyView(b["id"], b["seats_on"], b["material"]) for b in answer["bodies"])
        self.place.parts = path
        self.change(parts=PartsView(answer["name"], answer["revision"], bodies))

    def _progress(self, file: str) -> Callable[[str, float], None]:
        def progress(stage: str, share: float) -> None:
            self.change(job=JobView(shown(file), stage, share))

        return progress

    def _begin(self, work: Callable[[], Awaitable[None]], about: About = "folder") -> None:
        """Make `work` the task that is under way; what it refuses is shown beside `about`."""

        async def guarded() -> None:
            try:
                await work()
            except Stopped:
                await self._back(None)
            except StylobateError as error:
                await self._back(RefusalView(about, " ".join(str(error).split())))
            finally:
                self.change(job=None)

        self.change(job=JobView(self.state.folder, "starting", 0.0))
        self._task = asyncio.create_task(guarded())

    async def _back(self, refusal: RefusalView | None) -> None:
        """Show again what stood there before."""
        try:
            await self._show()
        except (StylobateError, Stopped) as error:
            refusal = refusal or RefusalView("folder", " ".join(str(error).split()))
        self.change(refusal=refusal)

    # ── showing ─────────────────────────────────────────────────────────────────────────────────────────────────────

    async def _show(self) -> None:
        """The result in force and its surfaces."""
        place, desk = self.place, self.place.desk
        if desk is None:
            if place.result is not None:
                await self._show_result(place.result, 1, place.scan)
            return
        run = desk.current
        undo, redo = desk.choices()
        self.change(undo=undo, redo=redo, work=run.options.work if run else self.state.work)
        if run is not None:
            await self._show_result(desk.result_folder(run.run), run.run, desk.scan_path(run))
        else:
            self._sha256 = ""
            self.change(result=None, scene=None)
            if desk.scan:
                scan = desk.scan_path(desk.planned(desk.scan, "again", "", Options()))
                await self._draw_scan(scan, geometry_key(scan))
        self.tell_case()

    def tell_case(self) -> None:
        """Put the case, if it is one, into the state. Raises CaseError, ResultError."""
        if isinstance(self.place.desk, CaseDesk):
            self.change(case=self.place.desk.view())

    async def _show_result(self, folder: Path, run: int, scan: Path | None) -> None:
        record = read_result(folder)
        view = read_view(folder, run)
        self._sha256 = record.scan.sha256
        if scan is not None and not scan.exists():
            scan = None
        self.change(result=view)
        maps = [None if site.map is None else Path(site.map).name for site in record.sites]
        geometry = geometry_key(scan) if scan is not None else f"sites-{run}"
        if scan is not None:
            await self._draw_scan(scan, geometry)
        paint = f"paint-{run}-{geometry}"
        job = {
            "do": "paint", "result": str(record.path.parent), "maps": maps, "cache": str(self.place.cache),
            "scan": str(scan) if scan else "", "geometry": geometry, "paint": paint,
        }  # fmt: skip
        answer = {"drawn": True}
        if not (self.place.cache / paint).exists():
            answer = await self.measurer.run(job, self._progress(view.scan_file))
        bodies = await self._bodies(view)
        scene = SceneView(geometry, paint, scan is not None, bodies) if answer["drawn"] else None
        self.change(scene=scene)

    async def _draw_scan(self, scan: Path, geometry: str) -> None:
        """The scan's surface, shown at once, without deviations."""
        if not (self.place.cache / geometry).exists():
            job = {"do": "draw scan", "scan": str(scan), "cache": str(self.place.cache), "geometry": geometry}
            await self.measurer.run(job, self._progress(scan.name))
        if self.state.scene is None or self.state.scene.geometry != geometry:
            self.change(scene=SceneView(geometry, "", True, {}))

    async def _bodies(self, view: ResultView) -> dict[str, str]:
        """Keys of the CAD surfaces of the bodies in the result, as far as the parts folder in use holds them."""
        used = (
            {site.scan_body for site in view.sites} & {b.id for b in self.state.parts.bodies}
            if self.state.parts
            else set()
        )
        if not used:
            return {}
        keys = {
            name: "body-" + hashlib.sha256(f"{self.place.parts}\0{name}".encode()).hexdigest()[:16]
            for name in sorted(used)
        }
        job = {"do": "bodies", "parts": self.place.parts, "bodies": keys, "cache": str(self.place.cache)}
        answer = await self.measurer.run(job, self._progress(view.parts_name))
        held: dict[str, str] = answer["bodies"]
        return held

    # ── what can be done ────────────────────────────────────────────────────────────────────────────────────────────

    def ready(self) -> Desk:
        """The desk, where something may be changed now. Raises UsageError."""
        desk = self.place.desk
        if desk is None:
            raise UsageError(READ_ONLY)
        if desk.gone():
            raise UsageError(
                f"{shown(str(desk.folder))}: was moved or deleted while the page was open; put it back, or start "
                "'stylobate open' with its new place"
            )
        if self._busy():
            name = self.state.job.file if self.state.job else "the scan"
            raise UsageError(f"{name} is still being measured; wait until it is done, or stop it first")
        return desk

    def take_scan(self, name: str, sha256: str, again: bool = False) -> None:
        """A scan has arrived under scans/: measure it. Raises UsageError."""
        desk = self.ready()
        if not self.place.parts:
            raise UsageError("there are no parts yet; drop the parts folder as a zip first, then the scan again")
        if sha256 == self._sha256 and not again:
            raise UsageError(
                f"{shown(name)}: this very scan is measured already, below; drop another, or measure again"
            )
        run = desk.planned(name, "scan", shown(name), Options(work=self.state.work))
        self._measure(desk, run, keep_scan=False)

    async def _arrived(self, path: Path) -> bool:
        """A new scan lies in the folder that is watched: take it; False: not now."""
        if self._busy() or self.place.desk is None:
            return False
        self.change(watch=WatchView(shown(str(path.parent)), shown(path.name)))
        try:
            folder = self.ready().incoming()
            name = free_name(folder, path.name)
            content = await asyncio.to_thread(path.read_bytes)
            await asyncio.to_thread((folder / name).write_bytes, content)
            try:
                self.take_scan(name, hashlib.sha256(content).hexdigest())
            except StylobateError:
                (folder / name).unlink(missing_ok=True)
                raise
        except (StylobateError, OSError) as error:
            self.refuse("scan", error)
        return True

    def measure_again(self, work: Work, count: int | None) -> None:
        """The same scan for other work, or with another number of sites. Raises UsageError."""
        desk = self.ready()
        if isinstance(desk, CaseDesk):
            work = desk.case.table.work
        if not desk.scan:
            self.change(work=work)
            return
        options = replace(desk.current.options if desk.current else Options(), work=work, count=count)
        self._measure(desk, desk.planned(desk.scan, "again", work, options))

    def add_site(self, point: Point) -> None:
        """Measure at the sites there are and at this point. Raises UsageError."""
        detail = ", ".join(f"{value:.1f}" for value in point)
        self._by_hand("add", detail, [*self._sites(), (point, "")])

    def drop_site(self, name: str) -> None:
        """Measure at all sites but this one. Raises UsageError."""
        self._site(name)
        sites = self._sites(without=name)
        if not sites:
            raise UsageError(f"site {name} is the only one; drop another scan instead")
        self._by_hand("drop", name, sites)

    def choose_part(self, name: str, scan_body: str) -> None:
        """Measure with this scan body, and no other, at a site. Raises UsageError."""
        site = self._site(name)
        if scan_body not in {body.id for body in (self.state.parts.bodies if self.state.parts else ())}:
            raise UsageError(f"there is no scan body '{shown(scan_body)}' in the parts folder; choose one of its own")
        self._by_hand("part", shown(scan_body), [*self._sites(without=name), (_middle(site), scan_body)])

    def _by_hand(self, kind: ChoiceKind, detail: str, sites: list[tuple[Point, str]]) -> None:
        desk = self.ready()
        run = self._current(desk)
        near, bodies = tuple(point for point, _ in sites), tuple(body for _, body in sites)
        options = replace(run.options, near=near, near_bodies=bodies, count=None)
        self._measure(desk, desk.planned(run.scan, kind, detail, options))

    def step(self, by: int) -> None:
        """Undo (−1) or redo (+1). Raises StylobateError."""
        desk = self.ready()
        desk.step(by, self.who)
        self._begin(self._show)

    def set_parts(self, path: Path) -> None:
        """A parts folder or zip has arrived. Raises StylobateError."""
        desk = self.ready()

        async def work() -> None:
            await self._load_parts(str(path))
            self.place.parts = desk.set_parts(str(path), self.who)
            self.change(refusal=None)
            await self._show()

        self._begin(work, "parts")

    async def make(self, what: str) -> tuple[Path, str]:
        """A report or a package of what is shown: the file, and what to call it. Raises StylobateError."""
        desk = self.place.desk
        run = desk.current if desk else None
        if self.state.result is None or self._busy():
            raise UsageError("there is no result to hand over yet; measure a scan first, and wait until it is done")
        case = str(desk.folder) if isinstance(desk, CaseDesk) else ""
        if what == "package" and not case:
            require_case(desk)
        result = desk.result_folder(run.run) if desk and run else self.place.result
        scan = desk.scan_path(run) if desk and run else self.place.scan
        out = self.place.cache / f"{what}-made"
        job = {"do": what, "case": case, "result": str(result), "scan": str(scan) if scan else "", "out": str(out)}
        self.change(job=JobView(self.state.folder, f"writing the {what}", 0.0))
        try:
            await self.measurer.run(job, self._progress(self.state.folder))
        except Stopped as error:
            raise UsageError(f"writing the {what} was stopped; ask for it again") from error
        finally:
            self.change(job=None)
        return out, self.state.case.code if self.state.case else "stylobate"

    def _busy(self) -> bool:
        return self._task is not None and not self._task.done()

    async def stop(self) -> None:
        """Stop what is under way; what stood there before is shown again."""
        if self._task is not None and not self._task.done():
            await self.measurer.stop()

    def _current(self, desk: Desk) -> Run:
        run = desk.current
        if run is None:
            raise UsageError("there is no scan yet; drop one first")
        return run

    def _site(self, name: str) -> SiteView:
        sites = self.state.result.sites if self.state.result else ()
        found = next((site for site in sites if site.site == name), None)
        if found is None:
            raise UsageError(f"there is no site '{shown(name)}' (any more); choose one of those shown")
        return found

    def _sites(self, without: str = "") -> list[tuple[Point, str]]:
        """A rough point of each site shown, and the scan body that was said to stand there ("": none was)."""
        desk = self.place.desk
        run = desk.current if desk else None
        said = list(zip(run.options.near, run.options.near_bodies, strict=False)) if run else []
        sites = self.state.result.sites if self.state.result else ()
        return [(_middle(site), _said(_middle(site), said)) for site in sites if site.site != without]

    def _measure(self, desk: Desk, run: Run, keep_scan: bool = True) -> None:
        scan = desk.scan_path(run)

        async def work() -> None:
            self.change(refusal=None, job=JobView(shown(run.scan), "reading the scan", 0.0))
            try:
                await self._draw_scan(scan, geometry_key(scan))
                job = {
                    "do": "measure", "scan": str(scan), "parts": self.place.parts,
                    "out": str(desk.result_folder(run.run)), "options": _plain(run.options),
                }  # fmt: skip
                await self.measurer.run(job, self._progress(run.scan))
            except (StylobateError, Stopped):
                desk.tidy()
                if not keep_scan:
                    scan.unlink(missing_ok=True)
                raise
            if desk.gone():
                raise ResultError(f"{shown(str(desk.folder))}: was moved or deleted while measuring; put it back")
            await asyncio.to_thread(desk.add, run, self.who)
            await self._show()

        self._begin(work, "scan" if not keep_scan else "measure")


def _middle(site: SiteView) -> Point:
    """About the middle of the scan body at a site, scan coordinates."""
    p = site.scan_from_connection
    return p[3] + MIDDLE * p[2], p[7] + MIDDLE * p[6], p[11] + MIDDLE * p[10]


def _said(middle: Point, said: list[tuple[Point, str]]) -> str:
    """The scan body said to stand where this site is."""
    return next((body for point, body in said if math.dist(point, middle) < MIDDLE), "")


def _plain(options: Options) -> dict[str, Any]:
    return asdict(options)


def geometry_key(scan: Path) -> str:
    """Key of a scan's surface: another file, or the same one changed, has another."""
    status = scan.stat() if scan.exists() else None
    about = f"{scan}\0{status.st_mtime_ns if status else 0}\0{status.st_size if status else 0}"
    return "scan-" + hashlib.sha256(about.encode()).hexdigest()[:16]
