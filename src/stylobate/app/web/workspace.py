"""The folder behind the page: scans as they came, every measurement, and where in their history the page stands.

FOLDER/page.json           what is shown, and the measurements in order
FOLDER/scans/              scans as they were dropped
FOLDER/parts.zip           the parts, where they were dropped too
FOLDER/measured/1/ …       one folder a measurement, as `stylobate measure` writes it
"""

from __future__ import annotations

import json
import os
import re
import shutil
import tempfile
from contextlib import suppress
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Annotated, Literal

from pydantic import ConfigDict, Field, TypeAdapter, ValidationError
from pydantic.dataclasses import dataclass as checked

from stylobate.app.web.model import ChoiceKind, ChoiceView
from stylobate.core.errors import OutputError, ResultError

PAGE = "page.json"
LONGEST_NAME = 120
_STRICT = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False)
Point = tuple[float, float, float]


@checked(frozen=True, config=_STRICT)
class Options:
    """How a measurement was asked for. near: rough points, one a site, instead of the search.

    near_bodies: for each of them the scan body said to stand there, "" where any may.
    """

    work: Literal["single", "bridge", "arch"] = "bridge"
    scan_bodies: tuple[str, ...] = ()
    count: Annotated[int, Field(ge=1)] | None = None
    near: tuple[Point, ...] = ()
    near_bodies: tuple[str, ...] = ()


@checked(frozen=True, config=_STRICT)
class Run:
    """One step. scan: its file under scans/. kind, detail: what it changed, for undo.

    of: the run whose measurement it shows, 0: its own. chains: parts chosen, as `stylobate place --site` takes them.
    """

    run: int
    scan: str
    kind: ChoiceKind
    detail: str
    options: Options
    of: int = 0
    chains: tuple[str, ...] = ()

    @property
    def measured(self) -> int:
        """The run whose measurement this one shows."""
        return self.of or self.run


@checked(frozen=True, config=_STRICT)
class History:
    """Measurements that can be gone through; at: how many of them are done and not undone. parts: folder or zip."""

    runs: tuple[Run, ...] = ()
    at: int = 0
    next_run: int = 1
    parts: str = ""
    format: Literal["stylobate-page"] = "stylobate-page"
    version: Literal[1] = 1


_HISTORY = TypeAdapter(History)


@dataclass
class Workspace:
    """Folder and history. Every change is on disk before it is shown."""

    folder: Path
    history: History = field(default_factory=History)

    @staticmethod
    def opened(folder: Path) -> Workspace:
        """The workspace at folder, made where there is none. Raises OutputError, ResultError."""
        try:
            for part in ("scans", "measured"):
                (folder / part).mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise OutputError(
                f"{folder}: cannot be written ({_cause(error)}); name a folder of your own, or a result folder"
            ) from error
        workspace = Workspace(folder)
        if (folder / PAGE).exists():
            try:
                content = (folder / PAGE).read_bytes()
                workspace.history = _HISTORY.validate_json(content)
            except (OSError, ValidationError, ValueError) as error:
                raise ResultError(
                    f"{folder / PAGE}: is damaged or of a newer version; move it away to start afresh "
                    "(scans and measurements stay in their folders)"
                ) from error
        workspace.tidy()
        return workspace

    def tidy(self) -> None:
        """Remove what a killed run left: measurements without result and staged files."""
        for folder in (self.folder / "measured").glob("*"):
            if folder.is_dir() and not (folder / "result.json").exists():
                shutil.rmtree(folder, ignore_errors=True)
        for partial in (self.folder / "scans").glob(".part-*"):
            with suppress(OSError):
                partial.unlink()

    def gone(self) -> bool:
        """Whether the folder was moved or deleted meanwhile."""
        return not (self.folder / "scans").is_dir()

    @property
    def current(self) -> Run | None:
        """The measurement shown."""
        return self.history.runs[self.history.at - 1] if self.history.at else None

    @property
    def scan(self) -> str:
        """Name of the scan at hand, "" where there is none."""
        return self.current.scan if self.current else ""

    def incoming(self) -> Path:
        """Folder in which a scan arrives."""
        return self.folder / "scans"

    def choices(self) -> tuple[ChoiceView | None, ChoiceView | None]:
        """What would be undone, and what redone."""
        runs, at = self.history.runs, self.history.at
        before, after = (runs[k] if 0 <= k < len(runs) else None for k in (at - 1, at))
        return (
            ChoiceView(before.kind, before.detail) if before else None,
            ChoiceView(after.kind, after.detail) if after else None,
        )

    def result_folder(self, run: int) -> Path:
        """Where a measurement lies, or will lie."""
        return self.folder / "measured" / str(run)

    def scan_path(self, run: Run) -> Path:
        """The scan of a measurement."""
        return self.folder / "scans" / run.scan

    def planned(self, scan: str, kind: ChoiceKind, detail: str, options: Options) -> Run:
        """The next measurement, not yet part of the history."""
        return Run(self.history.next_run, scan, kind, detail, options)

    def add(self, run: Run, who: str) -> None:
        """A measurement is complete: it follows the one shown; what was undone before goes. Raises OutputError."""
        kept = self.history.runs[: self.history.at]
        self._save(replace(self.history, runs=(*kept, run), at=len(kept) + 1, next_run=run.run + 1))

    def before(self) -> Path | None:
        """The last measurement of another scan than the one shown."""
        others = [run for run in self.history.runs[: self.history.at] if run.scan != self.scan]
        return self.result_folder(others[-1].measured) if others else None

    def kept_chains(self) -> tuple[str, ...]:
        """The chosen parts: page.json names them."""
        return self.current.chains if self.current else ()

    def keep_placement(self, folder: Path | None, who: str) -> None:
        """Nothing more to keep."""

    def step(self, by: int, who: str) -> None:
        """Undo (−1) or redo (+1), where there is something. Raises OutputError."""
        at = self.history.at + by
        if 0 <= at <= len(self.history.runs):
            self._save(replace(self.history, at=at))

    def set_parts(self, parts: str, who: str) -> str:
        """Use these parts; returns where they are kept. Raises OutputError."""
        if parts != self.history.parts:
            self._save(replace(self.history, parts=parts))
        return parts

    def _save(self, history: History) -> None:
        text = json.dumps(asdict(history), indent=1, allow_nan=False)
        try:
            handle, name = tempfile.mkstemp(prefix=".part-", dir=self.folder)
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            Path(name).replace(self.folder / PAGE)
        except OSError as error:
            raise OutputError(
                f"{self.folder}: cannot be written ({_cause(error)}); free some space, or put the folder back"
            ) from error
        self.history = history


def free_name(folder: Path, name: str) -> str:
    """A file name that is not taken in folder: the given one made harmless, or with a number before its suffix."""
    clean = safe_name(name)
    stem, dot, suffix = clean.partition(".")
    number = 2
    while (folder / clean).exists():
        clean = f"{stem}-{number}{dot}{suffix}"
        number += 1
    return clean


def safe_name(name: str) -> str:
    """The last part of a path as a harmless file name; never empty, hidden, or a folder."""
    last = re.split(r"[/\\]", name)[-1]
    clean = "".join(c for c in last if c.isprintable() and c not in '<>:"|?*').strip().lstrip(".")
    return clean[-LONGEST_NAME:].lstrip(".") or "scan"


def _cause(error: OSError) -> str:
    return (error.strerror or str(error)).strip().lower()
