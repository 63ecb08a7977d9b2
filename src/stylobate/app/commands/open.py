"""`stylobate open`: the page in the browser."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.core.errors import UsageError

if TYPE_CHECKING:
    from stylobate.app.web.board import Place


@click.command(name="open")
@click.argument("place", metavar="[FOLDER]", required=False, type=click.Path(path_type=Path, readable=False))
@click.option("--parts", type=click.Path(path_type=Path, readable=False), help="The parts folder, or a zip of it.")
@click.option("--scan", type=click.Path(path_type=Path, readable=False), help="The scan that a result is of.")
@click.option("--work", type=click.Choice(["single", "bridge", "arch"]), default="bridge", show_default=True)
@click.option("--watch", type=click.Path(path_type=Path, readable=False), help="Measure each scan that comes here.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Port on this machine. [default: a free one]")
@click.option("--no-browser", is_flag=True, help="Print the address only.")
def command(
    place: Path | None,
    parts: Path | None,
    scan: Path | None,
    work: str,
    watch: Path | None,
    port: int,
    no_browser: bool,
) -> int:
    """Open the page: see the sites, decide, measure.

    FOLDER is a result (a folder that `measure` wrote), shown as it is; a case; or a folder for the work, made where
    there is none: scans dropped on the page and every measurement are kept there. Without FOLDER: stylobate-page, here.

    The page is served to this machine only, and to the browser that opens the address printed. Ctrl-C ends it.
    """
    from stylobate.app.web.serve import serve

    opened = _place(place or Path("stylobate-page"), parts, scan, work)
    if watch is not None:
        if not watch.is_dir():
            raise UsageError(f"--watch {watch}: no such folder; name the one that the scanner exports to")
        if opened.desk is None:
            raise UsageError("--watch needs a case or a folder for the work; a finished result is not changed")
        opened.watch = watch.absolute()
    serve(opened, port, not no_browser, click.echo)
    return 0


def _place(folder: Path, parts: Path | None, scan: Path | None, work: str) -> Place:
    """What is at the folder: a result to show, or a place to work. Raises StylobateError."""
    from stylobate.app.web.board import Place
    from stylobate.app.web.desk import CaseDesk, is_case
    from stylobate.app.web.workspace import Workspace
    from stylobate.record import read_result

    for name, path in (("--parts", parts), ("--scan", scan)):
        if path is not None and not path.exists():
            raise UsageError(f"{name} {path}: no such file or folder; check the path")
    named = str(parts.absolute()) if parts else ""
    if folder.is_file() or (folder / "result.json").exists():
        record = read_result(folder)
        beside = scan.absolute() if scan else _scan_of(record.path.parent, record.scan.file, record.scan.sha256)
        return Place(Path(), result=record.path.parent, scan=beside, parts=named, work="bridge")
    if is_case(folder):
        if parts is not None or scan is not None:
            raise UsageError("a case holds its scan and its parts; leave --parts and --scan out")
        home = folder.absolute().parent if folder.name == "case.json" else folder.absolute()
        desk = CaseDesk.opened(home, Path())
        return Place(Path(), desk=desk, parts=desk.parts, work=desk.case.table.work)
    if scan is not None:
        raise UsageError("--scan goes with a result folder; drop a scan on the page, or name the result it is of")
    workspace = Workspace.opened(folder.absolute())
    if named:
        workspace.set_parts(named, "")
    return Place(Path(), desk=workspace, parts=named or workspace.history.parts, work=work)  # type: ignore[arg-type]


def _scan_of(result: Path, name: str, sha256: str) -> Path | None:
    """The scan of a result where it lies in the result's folder, beside it or one level up; by name and content."""
    import hashlib

    parent = result.absolute().parent
    near = [result.absolute(), parent, *(p for p in sorted(parent.iterdir()) if p.is_dir() and p != result.absolute())]
    for folder in near:
        path = folder / Path(name).name
        try:
            if path.is_file() and hashlib.sha256(path.read_bytes()).hexdigest() == sha256:
                return path
        except OSError:
            continue
    return None
