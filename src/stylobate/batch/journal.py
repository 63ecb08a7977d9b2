"""The output folder of a batch: what it was run with, what came of each scan, one program at a time.

batch.json               parts and options, the same for every run into this folder
scans/<scan>/            result.json (and maps) of a measured scan
scans/<scan>/outcome.json   written last: the scan is done with
summary.csv, summary.parquet
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from stylobate import __version__
from stylobate.batch.source import Job
from stylobate.batch.work import Done, Options
from stylobate.core import durable
from stylobate.core.errors import OutputError, UsageError
from stylobate.parts.model import PartsFolder
from stylobate.report.folder import staging
from stylobate.report.save import OWNED, RESULT

FORMAT, VERSION = "stylobate-batch", 1
SETTINGS, OUTCOME, LOCK = "batch.json", "outcome.json", ".lock"
FINAL = ("measured", "refused")


@dataclass(frozen=True)
class Outcome:
    """What came of one scan at some run."""

    status: str
    message: str
    seconds: float


def settings_of(parts: PartsFolder, options: Options) -> dict[str, Any]:
    """What must be the same for every run into one folder, so that its results can be compared."""
    return {
        "software": __version__,
        "parts": {"name": parts.name, "revision": parts.revision, "sha256": parts.sha256},
        "scan_bodies": sorted(options.scan_bodies),
        "work": options.work,
        "settings": "default" if options.settings is None else repr(options.settings),
        "maps": options.maps,
    }


class Journal:
    """The folder of a batch, held by this program."""

    def __init__(self, out: Path) -> None:
        self.out = out

    def folder(self, job: Job) -> Path:
        """Where a scan's files lie."""
        return self.out / "scans" / job.key

    def outcome(self, job: Job) -> Outcome | None:
        """What came of a scan earlier; None where it is not done, or its file has changed since."""
        try:
            with (self.folder(job) / OUTCOME).open(encoding="utf-8") as file:
                values = json.load(file)
            if values["scan"] != _stamp(job.path):
                return None
            return Outcome(str(values["status"]), str(values["message"]), float(values["seconds"]))
        except (OSError, ValueError, KeyError, TypeError):
            return None

    def write(self, job: Job, done: Done) -> Outcome:
        """Keep what came of a scan; its outcome is written last. Raises OutputError."""
        folder = self.folder(job)
        for left in folder.glob(".stylobate-*"):
            shutil.rmtree(left, ignore_errors=True)
        if done.files:
            with staging(folder) as area:
                for name, content in done.files.items():
                    area.write(name, content)
                area.commit(RESULT, OWNED)
        outcome = Outcome(done.status, done.message, round(done.seconds, 3))
        replaced(folder / OUTCOME, json.dumps({"scan": _stamp(job.path), **asdict(outcome)}).encode())
        return outcome


def _stamp(path: Path) -> dict[str, Any] | None:
    """Path, size and time of a scan's file: whether it is still the same one."""
    try:
        state = path.stat()
    except OSError:
        return {"path": str(path), "bytes": None, "changed_ns": None}
    return {"path": str(path), "bytes": state.st_size, "changed_ns": state.st_mtime_ns}


def replaced(path: Path, content: bytes) -> None:
    """Write a file as a whole or not at all. Raises OutputError."""
    try:
        durable.write(path, content)
    except OSError as error:
        cause = (error.strerror or str(error)).lower()
        raise OutputError(f"{path}: cannot be written: {cause}; what was done before is kept; run it again") from error


@contextmanager
def held(out: Path, settings: dict[str, Any]) -> Iterator[Journal]:
    """The folder for one batch and one program. Raises UsageError (other settings, in use) and OutputError."""
    if not (out / LOCK).exists():
        replaced(out / LOCK, b"")
    with (out / LOCK).open("r+b") as lock:
        _only_one(lock.fileno(), out)
        _require_same(out, settings)
        yield Journal(out)


def _only_one(descriptor: int, out: Path) -> None:
    try:
        import fcntl
    except ImportError:
        return
    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        raise UsageError(
            f"--out {out}: another batch is at work in this folder; wait for it or name another"
        ) from error


def _require_same(out: Path, settings: dict[str, Any]) -> None:
    path = out / SETTINGS
    if not path.exists():
        replaced(path, json.dumps({"format": FORMAT, "version": VERSION, **settings}, indent=2).encode())
        return
    try:
        before = json.loads(path.read_text(encoding="utf-8"))
        same = before["format"] == FORMAT and before["version"] == VERSION
    except (OSError, ValueError, KeyError, TypeError):
        same = False
    if not same:
        raise UsageError(f"--out {out}: its {SETTINGS} is not one of this program; name another folder")
    different = [key for key, value in settings.items() if before.get(key) != value]
    if different:
        raise UsageError(
            f"--out {out}: was measured with other {' and '.join(different)}; give the same, or name another folder"
        )
