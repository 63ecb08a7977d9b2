"""The process that measures: jobs come in as JSON lines, progress and answers go out the same way.

A process of its own, since geometry libraries hold the interpreter's lock, and since it can be stopped at any moment.
It ends when its input does, so that it never outlives the server.
"""

from __future__ import annotations

import json
import os
import queue
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path
from typing import IO, TYPE_CHECKING, Any

from stylobate.app.web.words import one_line

if TYPE_CHECKING:
    from stylobate.core.surface import Scan
    from stylobate.parts.model import PartsFolder

Say = Callable[[dict[str, Any]], None]
TICK_S = 0.05
"""Least time between two words on progress."""


class Bench:
    """What the worker keeps between jobs: the scan and the parts last read."""

    def __init__(self, say: Say) -> None:
        self._say = say
        self._scan: tuple[tuple[str, int, int], Scan] | None = None
        self._parts: tuple[str, PartsFolder] | None = None
        self._told = 0.0

    def scan(self, path: str) -> Scan:
        """The scan at path, read once. Raises ScanError."""
        from stylobate.scan import read_scan

        try:
            status = Path(path).stat()
            key = (path, status.st_mtime_ns, status.st_size)
        except OSError:
            key = (path, 0, 0)
        if self._scan is None or self._scan[0] != key:
            self._scan = (key, read_scan(path))
        return self._scan[1]

    def parts(self, path: str) -> PartsFolder:
        """The parts folder at path. Raises PartsError."""
        from stylobate.parts import load_parts

        if self._parts is None or self._parts[0] != path:
            self._parts = (path, load_parts(path))
        return self._parts[1]

    def forget_parts(self) -> None:
        """Read the parts anew next time."""
        self._parts = None

    def tell(self, stage: str, share: float) -> None:
        """Pass progress on, not more often than eyes can follow."""
        now = time.monotonic()
        if share == 0.0 or now - self._told > TICK_S:
            self._told = now
            self._say({"progress": [stage, round(share, 4)]})


def do_parts(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """What the parts folder holds."""
    bench.tell("reading the parts", 0.0)
    bench.forget_parts()
    folder = bench.parts(job["parts"])
    bodies = [{"id": b.id, "seats_on": b.seats_on, "material": b.material} for b in folder.scan_bodies]
    return {"name": folder.name, "revision": folder.revision, "bodies": bodies}


def do_measure(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """Measure a scan into a folder of its own."""
    from stylobate.measuring import measure
    from stylobate.report.folder import staging
    from stylobate.report.save import save

    bench.tell("reading the scan", 0.0)
    scan = bench.scan(job["scan"])
    options = job["options"]
    with staging(Path(job["out"])) as area:
        result = measure(
            scan,
            bench.parts(job["parts"]),
            scan_bodies=options["scan_bodies"],
            count=options["count"],
            near=options["near"],
            near_bodies=options["near_bodies"],
            work=options["work"],
            progress=bench.tell,
        )
        save(result, area, maps=True)
    return {"sites": len(result.sites)}


def do_draw_scan(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The scan's surface for the browser, with its proxy, before anything is measured."""
    from stylobate.app.web.scene import packed_geometry, proxy

    scan = bench.scan(job["scan"])
    surface = scan.surface
    coarse = proxy(surface.vertices, surface.faces)
    _put(job["cache"], f"{job['geometry']}-coarse", packed_geometry(coarse.vertices, coarse.faces, scan.origin))
    _put(job["cache"], job["geometry"], packed_geometry(surface.vertices, surface.faces, scan.origin))
    return {"triangles": len(surface.faces)}


def do_paint(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The deviations of a result, on the scan or, where that is not at hand, on the surroundings of the sites."""
    from stylobate.app.web import scene

    maps = [scene.read_map(Path(job["result"]) / name) if name else None for name in job["maps"]]
    painted = scene.painted_scan(bench.scan(job["scan"]), maps) if job["scan"] else scene.painted_maps(maps)
    if painted is None:
        return {"drawn": False}
    coarse = scene.proxy(painted.vertices, painted.faces)
    if not job["scan"]:
        geometry = scene.packed_geometry(coarse.vertices, coarse.faces, painted.origin)
        _put(job["cache"], f"{job['geometry']}-coarse", geometry)
        _put(job["cache"], job["geometry"], scene.packed_geometry(painted.vertices, painted.faces, painted.origin))
    _put(job["cache"], job["paint"], scene.packed_paint(painted, coarse))
    return {"drawn": True}


def do_bodies(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The CAD surfaces of scan bodies, by key."""
    from stylobate.app.web.scene import packed_body

    folder = bench.parts(job["parts"])
    known = {body.id: body for body in folder.scan_bodies}
    for identifier, key in job["bodies"].items():
        if identifier in known:
            _put(job["cache"], key, packed_body(known[identifier].surface))
    return {"bodies": {i: key for i, key in job["bodies"].items() if i in known}}


def do_place(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """Parts on the sites, their surfaces by key and, where `out` names a folder, as `stylobate place` writes them."""
    from stylobate.app.web import after
    from stylobate.app.web.scene import packed_body
    from stylobate.report.folder import staging
    from stylobate.report.placement import save_placement

    bench.tell("placing the parts", 0.0)
    tissue, opposing = (after.Beside(**one) if one else None for one in job["beside"])
    placement, refused = after.placed(Path(job["result"]), bench.parts(job["parts"]), job["chains"], tissue, opposing)
    view = after.placement_view(placement, refused, job["parts"])
    parts = {link.part.id: link.part for site in placement.sites for link in site.chain}
    for identifier, key in view.surfaces.items():
        _put(job["cache"], key, packed_body(parts[identifier].surface))
    if job["out"]:
        with staging(Path(job["out"])) as area:
            save_placement(placement, area)
    return asdict(view)


def do_carry(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """Chosen parts from one measurement to the next."""
    from stylobate.app.web.carry import carried
    from stylobate.record import read_result

    records = [read_result(job["was"]), read_result(job["now"])]
    chains, lost = carried(records[0], records[1], job["chains"], bench.parts(job["parts"]))
    return {"chains": chains, "lost": lost}


def do_join(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The other scans of a case, laid on that of the bodies; kept in the case."""
    from stylobate.case import Case
    from stylobate.case.joined import join_scans

    bench.tell("joining the scans", 0.0)
    join_scans(Case.open(job["case"]), job["who"])
    return {}


def do_frame(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """How a frame made to the result would rest."""
    from stylobate.app.web.after import frame_view

    bench.tell("foretelling the frame", 0.0)
    return asdict(frame_view(Path(job["result"])))


def do_compare(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """This scan and the one before it."""
    from stylobate.app.web.after import compared_view

    bench.tell("comparing with the scan before", 0.0)
    return asdict(compared_view(Path(job["before"]), Path(job["result"])))


def do_keep_comparison(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """What `stylobate compare` writes of this scan and the one before it, without plots."""
    from stylobate.report.comparison import save
    from stylobate.report.folder import staging
    from stylobate.several.comparing.verb import compare

    bench.tell("comparing with the scan before", 0.0)
    with staging(Path(job["out"])) as area:
        save(compare([job["before"], job["result"]]), area, {})
    return {}


def do_report(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The report of a case or a result, as PDF."""
    from stylobate.report.pages import make_report, of_case, of_result

    bench.tell("writing the report", 0.0)
    scan = Path(job["scan"]) if job["scan"] else None
    dossier = of_case(Path(job["case"])) if job["case"] else of_result(Path(job["result"]), scan)
    Path(job["out"]).write_bytes(make_report(dossier).pdf)
    return {}


def do_package(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The hand-off package of a case."""
    from stylobate.handoff import pack

    bench.tell("writing the package", 0.0)
    Path(job["out"]).unlink(missing_ok=True)
    pack(Path(job["case"]), Path(job["out"]), None, False)
    return {}


JOBS: dict[str, Callable[[Bench, dict[str, Any]], dict[str, Any]]] = {
    "parts": do_parts, "measure": do_measure, "draw scan": do_draw_scan, "paint": do_paint, "bodies": do_bodies,
    "place": do_place, "carry": do_carry, "join": do_join, "frame": do_frame, "compare": do_compare,
    "keep comparison": do_keep_comparison,
    "report": do_report, "package": do_package,
}  # fmt: skip


def _put(folder: str, key: str, content: bytes) -> None:
    """Write whole or not at all."""
    partial = Path(folder) / f"{key}.part"
    partial.write_bytes(content)
    partial.replace(Path(folder) / key)


def answer(bench: Bench, job: dict[str, Any]) -> dict[str, Any]:
    """The last word on one job: done, refused in one line, or a fault of this program."""
    from stylobate.core.errors import StylobateError

    try:
        return {"done": JOBS[job["do"]](bench, job)}
    except StylobateError as error:
        return {"refused": one_line(error)}
    except MemoryError:
        return {"refused": "not enough memory; close other programs, or cut the scan down to the part with the bodies"}
    except Exception as error:
        return {"fault": f"{type(error).__name__}: {error}"}


def main() -> None:
    """Serve jobs until the input ends. Whatever libraries print goes to stderr, not between the answers."""
    channel = os.fdopen(os.dup(1), "w", encoding="utf-8", buffering=1)
    os.dup2(2, 1)
    jobs: queue.SimpleQueue[str] = queue.SimpleQueue()
    threading.Thread(target=_listen, args=(sys.stdin, jobs), daemon=True).start()

    def say(message: dict[str, Any]) -> None:
        channel.write(json.dumps(message) + "\n")

    bench = Bench(say)
    import stylobate.measuring
    import stylobate.report.save  # noqa: F401  heavy imports done before the first job comes

    while True:
        say(answer(bench, json.loads(jobs.get())))


def _listen(source: IO[str], jobs: queue.SimpleQueue[str]) -> None:
    for line in source:
        jobs.put(line)
    os._exit(0)


if __name__ == "__main__":
    main()
