"""What can be done on the page: each deed is refused at once, or becomes the task that is under way."""

from __future__ import annotations

import asyncio
import hashlib
import math
import shutil
from contextlib import suppress
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

from stylobate.app.web.board import Place
from stylobate.app.web.chains import chain_word
from stylobate.app.web.desk import CaseDesk, Desk, require_case
from stylobate.app.web.measurer import Stopped
from stylobate.app.web.model import ChoiceKind, JobView, Role, SiteView, WatchView, Work
from stylobate.app.web.model_after import StepView
from stylobate.app.web.showing import Showing, geometry_key
from stylobate.app.web.watching import watch
from stylobate.app.web.workspace import Options, Point, Run, free_name
from stylobate.case.folder import require_initials
from stylobate.core.errors import ResultError, StylobateError, UsageError
from stylobate.scan.source import shown

READ_ONLY = (
    "this page shows a finished result and changes nothing; to measure, start 'stylobate open' with a folder for the "
    "work, and --parts"
)

MIDDLE = 4.0
"""mm above the platform: about the middle of a scan body. Common practice, no source."""


class Session(Showing):
    """The page of one folder, from its opening to its end."""

    def __init__(self, place: Place) -> None:
        super().__init__(place)
        self._watching: asyncio.Task[None] | None = None

    async def open(self) -> None:
        """Start the worker and show what is there."""
        await self.measurer.start()
        self.begin(self._open)
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
        self.tell_case()
        if self.place.parts:
            await self.load_parts(self.place.parts)
        await self.show_all()

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
        if self.busy():
            job = self.state.job
            what = f" ({job.file}: {job.stage})" if job else ""
            raise UsageError(f"other work is still under way{what}; wait until it is done, or stop it first")
        return desk

    def take_scan(self, name: str, sha256: str, again: bool = False) -> None:
        """A scan has arrived under scans/: measure it. Raises UsageError."""
        desk = self.ready()
        if not self.place.parts:
            raise UsageError("there are no parts yet; drop the parts folder as a zip first, then the scan again")
        if sha256 == self.sha256 and not again:
            raise UsageError(
                f"{shown(name)}: this very scan is measured already, below; drop another, or measure again"
            )
        run = desk.planned(name, "scan", shown(name), Options(work=self.state.work))
        self._measure(desk, run, keep_scan=False)

    async def _arrived(self, path: Path) -> bool:
        """A new scan lies in the folder that is watched: take it; False: not now."""
        if self.busy() or self.place.desk is None:
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

    def choose_chain(self, name: str, chain: tuple[StepView, ...]) -> None:
        """Put these parts on a site. Raises UsageError."""
        self._site(name)
        desk = self.ready()
        run = self._current(desk)
        placed = next((s for s in self.state.placement.sites if s.site == name), None) if self.state.placement else None
        if placed is None or chain not in [option.chain for option in placed.options]:
            raise UsageError(f"site {shown(name)}: these parts are none of its options; choose one of those shown")
        shown_here = {site.site for site in self.state.placement.sites} if self.state.placement else set()
        beyond = [other for other in (kept.partition("=")[0] for kept in run.chains) if other not in shown_here]
        if beyond:
            raise UsageError(
                f"site {beyond[0]} is built on in spite of its verdict, which a choice here would lose; choose with "
                "'stylobate place --accept', and add what it writes to the case"
            )
        word = chain_word(name, [(step.part, step.turn) for step in chain])
        chains = (*(other for other in run.chains if other.partition("=")[0] != name), word)
        detail = ", ".join(step.part for step in chain)
        following = replace(desk.planned(run.scan, "build", detail, run.options), of=run.measured, chains=chains)

        async def work() -> None:
            await asyncio.to_thread(desk.add, following, self.who)
            await self._keep_placement(desk)
            self.change(refusal=None)
            await self.show_all()

        self.begin(work, "site")

    async def _keep_placement(self, desk: Desk) -> None:
        """Keep what `stylobate place` would write for the chosen parts, where that is not what is kept.

        Raises StylobateError, Stopped.
        """
        run = desk.current
        if run is None or sorted(desk.kept_chains()) == sorted(run.chains):
            return
        out = self.place.cache / "placed" if run.chains else None
        if out is not None:
            await self.placed(desk.result_folder(run.measured), run.chains, str(out))
        await asyncio.to_thread(desk.keep_placement, out, self.who)
        if out is not None:
            await asyncio.to_thread(shutil.rmtree, out, ignore_errors=True)

    async def _keep_comparison(self, desk: CaseDesk) -> None:
        """Keep what `stylobate compare` says of this scan and the one before: the report tells what moved.

        Raises StylobateError, Stopped.
        """
        view, before, run = self.state.compared, desk.before(), desk.current
        kept = desk.case.table.output("compare") is not None
        if view is None or view.refused or before is None or run is None or kept:
            return
        out = self.place.cache / "compared"
        job = {"do": "keep comparison", "before": str(before), "result": str(desk.result_folder(run.measured))}
        await self.measurer.run({**job, "out": str(out)}, self.progress(run.scan))
        await asyncio.to_thread(desk.keep_comparison, out, self.who)
        await asyncio.to_thread(shutil.rmtree, out, ignore_errors=True)

    async def _carried(self, desk: Desk, run: Run) -> Run:
        """A new measurement with the parts chosen before, as far as they still stand; the page says which do not.

        Raises StylobateError, Stopped.
        """
        before = desk.current
        if before is None or not before.chains:
            return run
        was, now = (str(desk.result_folder(one.measured)) for one in (before, run))
        job = {"do": "carry", "was": was, "now": now, "chains": before.chains, "parts": self.place.parts}
        answer = await self.measurer.run(job, self.progress(run.scan))
        lost = "; ".join(answer["lost"])
        self.change(notice=f"Chosen parts that no longer stand, choose again: {lost}." if lost else "")
        return replace(run, chains=tuple(answer["chains"]))

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

        async def work() -> None:
            self.change(notice="")
            await self._keep_placement(desk)
            await self.show_all()

        self.begin(work)

    def set_parts(self, path: Path) -> None:
        """A parts folder or zip has arrived. Raises StylobateError."""
        desk = self.ready()

        async def work() -> None:
            await self.load_parts(str(path))
            self.place.parts = desk.set_parts(str(path), self.who)
            self.change(refusal=None)
            run = desk.current
            if run is not None and run.chains:
                again = replace(desk.planned(run.scan, "build", "", run.options), of=run.measured)
                kept = await self._carried(desk, again)
                if kept.chains != run.chains:
                    await asyncio.to_thread(desk.add, kept, self.who)
                    await self._keep_placement(desk)
            await self.show_all()

        self.begin(work, "parts")

    def take_around(self, role: Role, path: Path) -> None:
        """A scan of the tissue, the other jaw or the bite has arrived: keep it, and join it. Raises UsageError."""
        desk = require_case(self.ready())
        require_initials(self.who)

        async def work() -> None:
            try:
                await asyncio.to_thread(desk.add_around, role, path, self.who)
            finally:
                path.unlink(missing_ok=True)
            self.change(refusal=None)
            self.tell_case()
            await self._join(desk)
            await self.show_all()

        self.begin(work, "around")

    def join(self) -> None:
        """Lay the other scans on that of the bodies. Raises UsageError, CaseError."""
        desk = require_case(self.ready())
        require_initials(self.who)

        async def work() -> None:
            self.change(refusal=None)
            await self._join(desk)
            await self.show_all()

        self.begin(work, "around")

    async def _join(self, desk: CaseDesk) -> None:
        """Join what is there to join; a refusal is shown and nothing else is held up by it. Raises Stopped."""
        if not desk.case.table.to_join():
            return
        try:
            await self.measurer.run(
                {"do": "join", "case": str(desk.folder), "who": self.who}, self.progress(self.state.folder)
            )
        except StylobateError as error:
            self.refuse("around", error)
        desk.read_again()

    async def make(self, what: str) -> tuple[Path, str]:
        """A report or a package of what is shown: the file, and what to call it. Raises StylobateError."""
        desk = self.place.desk
        run = desk.current if desk else None
        if self.state.result is None or self.busy():
            raise UsageError("there is no result to hand over yet; measure a scan first, and wait until it is done")
        case = str(desk.folder) if isinstance(desk, CaseDesk) else ""
        if what == "package" and not case:
            require_case(desk)
        result = desk.result_folder(run.measured) if desk and run else self.place.result
        scan = desk.scan_path(run) if desk and run else self.place.scan
        out = self.place.cache / f"{what}-made"
        job = {"do": what, "case": case, "result": str(result), "scan": str(scan) if scan else "", "out": str(out)}
        self.change(job=JobView(self.state.folder, f"writing the {what}", 0.0))
        try:
            await self.measurer.run(job, self.progress(self.state.folder))
        except Stopped as error:
            raise UsageError(f"writing the {what} was stopped; ask for it again") from error
        finally:
            self.change(job=None)
        return out, self.state.case.code if self.state.case else "stylobate"

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
            self.change(refusal=None, notice="", job=JobView(shown(run.scan), "reading the scan", 0.0))
            try:
                await self.draw_scan(scan, geometry_key(scan))
                job = {
                    "do": "measure", "scan": str(scan), "parts": self.place.parts,
                    "out": str(desk.result_folder(run.run)), "options": _plain(run.options),
                }  # fmt: skip
                await self.measurer.run(job, self.progress(run.scan))
            except (StylobateError, Stopped):
                desk.tidy()
                if not keep_scan:
                    scan.unlink(missing_ok=True)
                raise
            if desk.gone():
                raise ResultError(f"{shown(str(desk.folder))}: was moved or deleted while measuring; put it back")
            await asyncio.to_thread(desk.add, await self._carried(desk, run), self.who)
            await self._keep_placement(desk)
            if isinstance(desk, CaseDesk):
                await self._join(desk)
            await self.show_all()
            if isinstance(desk, CaseDesk):
                await self._keep_comparison(desk)

        self.begin(work, "scan" if not keep_scan else "measure")


def _middle(site: SiteView) -> Point:
    """About the middle of the scan body at a site, scan coordinates."""
    p = site.scan_from_connection
    return p[3] + MIDDLE * p[2], p[7] + MIDDLE * p[6], p[11] + MIDDLE * p[10]


def _said(middle: Point, said: list[tuple[Point, str]]) -> str:
    """The scan body said to stand where this site is."""
    return next((body for point, body in said if math.dist(point, middle) < MIDDLE), "")


def _plain(options: Options) -> dict[str, Any]:
    return asdict(options)
