"""Which scans a batch is of: a folder, searched through, or a list with one scan a line."""

from __future__ import annotations

import hashlib
import os
from dataclasses import dataclass
from pathlib import Path

from stylobate.core.errors import UsageError

ENDINGS = tuple(kind + packed for kind in (".stl", ".ply", ".obj") for packed in ("", ".gz"))
MOST_LIST_BYTES = 64 * 2**20


@dataclass(frozen=True)
class Job:
    """One scan: its file, and the name of its folder below `scans` in the output, the same at every run."""

    path: Path
    key: str


def jobs_of(source: Path, out: Path) -> list[Job]:
    """All scans of a folder (what lies in `out` apart) or of a list, in order. Raises UsageError."""
    try:
        jobs = _in_folder(source, out) if source.is_dir() else _in_list(source)
    except OSError as error:
        cause = (error.strerror or str(error)).lower()
        raise UsageError(f"{source}: {cause}; name a folder of scans, or a text file with one scan a line") from error
    if not jobs:
        raise UsageError(f"{source}: holds no scan ({', '.join(ENDINGS[::2])}, also gzipped)")
    return jobs


def _in_folder(folder: Path, out: Path) -> list[Job]:
    own = out.resolve()
    found = []
    for here, folders, files in os.walk(folder, onerror=_raise):
        place = Path(here)
        folders[:] = sorted(name for name in folders if not name.startswith(".") and (place / name).resolve() != own)
        found += [place / name for name in sorted(files) if _is_scan(name)]
    return [Job(path, path.relative_to(folder).as_posix()) for path in found]


def _raise(error: OSError) -> None:
    raise error


def _is_scan(name: str) -> bool:
    return name.lower().endswith(ENDINGS) and not name.startswith(".")


def _in_list(file: Path) -> list[Job]:
    """One path a line, relative to the list; empty lines and those that start with # are passed over."""
    if file.stat().st_size > MOST_LIST_BYTES or file.name.lower().endswith(ENDINGS):
        raise UsageError(f"{file}: is not a list of scans; name a folder, or a text file with one scan a line")
    try:
        lines = file.read_text(encoding="utf-8-sig").splitlines()
    except UnicodeDecodeError as error:
        raise UsageError(f"{file}: is not UTF-8 text; write one scan a line") from error
    found: dict[str, Job] = {}
    for line in (line.strip() for line in lines):
        if line and not line.startswith("#"):
            path = file.parent / line
            mark = hashlib.sha256(line.encode()).hexdigest()[:8]
            found.setdefault(line, Job(path, f"{path.name}-{mark}"))
    return list(found.values())
