"""What is shown: a result with its surfaces, and what follows from it. The worker process makes all of it."""

from __future__ import annotations

import json
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from stylobate.app.web.board import Board, Place
from stylobate.app.web.desk import CaseDesk
from stylobate.app.web.measurer import Stopped
from stylobate.app.web.model import BodyView, PartsView, RefusalView, ResultView, SceneView
from stylobate.app.web.model_after import ComparedView, FrameView, PlacementView
from stylobate.app.web.views import read_view
from stylobate.app.web.words import key_of, one_line
from stylobate.app.web.workspace import Options
from stylobate.case.model import JOINED
from stylobate.core.errors import StylobateError
from stylobate.record import read_result

PLACEMENT: TypeAdapter[PlacementView] = TypeAdapter(PlacementView)
AFTER: dict[str, TypeAdapter[Any]] = {"compared": TypeAdapter(ComparedView), "frame": TypeAdapter(FrameView)}


class Showing(Board):
    """Puts results into the state."""

    def __init__(self, place: Place) -> None:
        super().__init__(place)
        self.sha256 = ""
        self._known: dict[str, Any] = {}

    async def load_parts(self, path: str) -> None:
        """Read a parts folder and use it. Raises PartsError."""
        answer = await self.measurer.run({"do": "parts", "parts": path}, self.progress("parts"))
        bodies = tuple(BodyView(b["id"], b["seats_on"], b["material"]) for b in answer["bodies"])
        self.place.parts = path
        self.change(parts=PartsView(answer["name"], answer["revision"], bodies))

    async def fall_back(self, refusal: RefusalView | None) -> None:
        """Show again what stood there before."""
        try:
            await self.show()
        except (StylobateError, Stopped) as error:
            refusal = refusal or RefusalView("folder", one_line(error))
        self.change(refusal=refusal)

    async def show(self) -> None:
        """The result in force and its surfaces. Raises StylobateError, Stopped."""
        place, desk = self.place, self.place.desk
        if desk is None:
            if place.result is not None:
                await self._show_result(place.result, 1, place.scan)
            return
        run = desk.current
        undo, redo = desk.choices()
        self.change(undo=undo, redo=redo, work=run.options.work if run else self.state.work)
        if run is not None:
            await self._show_result(desk.result_folder(run.measured), run.measured, desk.scan_path(run))
        else:
            self.sha256 = ""
            self.change(result=None, scene=None, placement=None, frame=None, compared=None)
            if desk.scan:
                scan = desk.scan_path(desk.planned(desk.scan, "again", "", Options()))
                await self.draw_scan(scan, geometry_key(scan))
        self.tell_case()

    def tell_case(self) -> None:
        """Put the case, if it is one, into the state. Raises CaseError, ResultError."""
        if isinstance(self.place.desk, CaseDesk):
            self.change(case=self.place.desk.view())

    async def _show_result(self, folder: Path, run: int, scan: Path | None) -> None:
        record = read_result(folder)
        view = read_view(folder, run)
        self.sha256 = record.scan.sha256
        if scan is not None and not scan.exists():
            scan = None
        if self.state.result != view:
            self.change(result=view, placement=None, frame=None, compared=None)
        maps = [None if site.map is None else Path(site.map).name for site in record.sites]
        geometry = geometry_key(scan) if scan is not None else f"sites-{run}"
        if scan is not None:
            await self.draw_scan(scan, geometry)
        paint = f"paint-{run}-{geometry}"
        job = {
            "do": "paint", "result": str(record.path.parent), "maps": maps, "cache": str(self.place.cache),
            "scan": str(scan) if scan else "", "geometry": geometry, "paint": paint,
        }  # fmt: skip
        answer = {"drawn": True}
        if not (self.place.cache / paint).exists():
            answer = await self.measurer.run(job, self.progress(view.scan_file))
        bodies = await self._bodies(view)
        scene = SceneView(geometry, paint, scan is not None, bodies) if answer["drawn"] else None
        self.change(scene=scene)

    async def draw_scan(self, scan: Path, geometry: str) -> None:
        """The scan's surface, shown at once, without deviations."""
        if not (self.place.cache / geometry).exists():
            job = {"do": "draw scan", "scan": str(scan), "cache": str(self.place.cache), "geometry": geometry}
            await self.measurer.run(job, self.progress(scan.name))
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
        keys = {name: key_of("body", self.place.parts, name) for name in sorted(used)}
        job = {"do": "bodies", "parts": self.place.parts, "bodies": keys, "cache": str(self.place.cache)}
        answer = await self.measurer.run(job, self.progress(view.parts_name))
        held: dict[str, str] = answer["bodies"]
        return held

    # ── what follows from the result ────────────────────────────────────────────────────────────────────────────────

    async def show_all(self) -> None:
        """The result in force, then what follows from it. Raises StylobateError, Stopped."""
        await self.show()
        folder = self._folder()
        if folder is None:
            return
        if self.state.parts is not None:
            await self._show_placement(folder)
        before = self.place.desk.before() if self.place.desk else None
        await self._show_known("compared", before, {"do": "compare", "before": str(before), "result": str(folder)})
        several = (
            self.state.result is not None and len(self.state.result.sites) > 1 and self.state.result.work != "single"
        )
        await self._show_known("frame", folder if several else None, {"do": "frame", "result": str(folder)})

    def _folder(self) -> Path | None:
        """Folder of the result shown."""
        desk = self.place.desk
        if desk is None:
            return self.place.result
        return desk.result_folder(desk.current.measured) if desk.current else None

    async def _show_placement(self, folder: Path) -> None:
        desk = self.place.desk
        chains = desk.current.chains if desk and desk.current else ()
        view = await self._placed_or_why(folder, chains)
        if view.refused and chains and not view.sites:
            view = replace(await self._placed_or_why(folder, ()), refused=view.refused)
        self.change(placement=view)

    async def _placed_or_why(self, folder: Path, chains: tuple[str, ...]) -> PlacementView:
        try:
            return await self.placed(folder, chains, "")
        except StylobateError as error:
            return PlacementView((), {}, "", None, (), one_line(error))

    async def placed(self, folder: Path, chains: tuple[str, ...], out: str) -> PlacementView:
        """Parts on a result's sites, placed once. out: where files are to be kept, "" nowhere.

        Raises StylobateError, Stopped.
        """
        desk = self.place.desk
        beside = [desk.around(role) if isinstance(desk, CaseDesk) else None for role in JOINED]
        job = {
            "do": "place", "result": str(folder), "parts": self.place.parts, "chains": chains,
            "cache": str(self.place.cache),
            "beside": [asdict(one) if one else None for one in beside],
        }  # fmt: skip
        key = json.dumps(job)
        if out or key not in self._known:
            answer = await self.measurer.run({**job, "out": out}, self.progress(""))
            self._known[key] = PLACEMENT.validate_python(answer)
        view: PlacementView = self._known[key]
        return view

    async def _show_known(self, name: str, about: Path | None, job: dict[str, Any]) -> None:
        """Put the answer of a job into the state; the same job is done once. about: None where there is nothing."""
        key = json.dumps(job)
        if about is None:
            self.change(**{name: None})
            return
        if key not in self._known:
            self._known[key] = AFTER[name].validate_python(await self.measurer.run(job, self.progress("")))
        self.change(**{name: self._known[key]})


def geometry_key(scan: Path) -> str:
    """Key of a scan's surface: another file, or the same one changed, has another."""
    status = scan.stat() if scan.exists() else None
    return key_of("scan", str(scan), str(status.st_mtime_ns if status else 0), str(status.st_size if status else 0))
