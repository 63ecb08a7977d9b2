"""Files that survive a killed process and a lost mains supply: flushed to the disk before their name is given."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path

_hidden: set[Path] = set()


def hidden_folder(beside: Path | None) -> Path:
    """A new folder for what is not finished yet, in `beside` or where the system keeps such. Raises OSError."""
    folder = Path(tempfile.mkdtemp(prefix=".stylobate-", dir=beside))
    _hidden.add(folder)
    return folder


def drop(folder: Path) -> None:
    """Remove a hidden folder and all in it."""
    shutil.rmtree(folder, ignore_errors=True)
    _hidden.discard(folder)


def drop_all() -> None:
    """Remove what is not finished when the process ends at once."""
    for folder in tuple(_hidden):
        drop(folder)


def write(path: Path, content: bytes) -> None:
    """The file `path` with this content and the rights it had, or as it was before: never half. Raises OSError."""
    path.parent.mkdir(parents=True, exist_ok=True)
    unfinished = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        flushed(unfinished, content)
        if path.exists():
            unfinished.chmod(path.stat().st_mode & 0o777)
        unfinished.replace(path)
    except BaseException:
        unfinished.unlink(missing_ok=True)
        raise
    flush_folder(path.parent)


def flushed(path: Path, content: bytes) -> None:
    """Write a file and wait until the disk has it. Raises OSError."""
    with path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def append(path: Path, content: bytes) -> None:
    """Add to the end of a file, all or nothing as far as the system tells, and wait for the disk. Raises OSError."""
    with path.open("ab", buffering=0) as file:
        before = file.seek(0, os.SEEK_END)
        try:
            if file.write(content) != len(content):
                raise OSError(28, "No space left on device")
            os.fsync(file.fileno())
        except BaseException:
            file.truncate(before)
            raise


def flush_folder(folder: Path) -> None:
    """Wait until the names in a folder are on the disk, where the system can do that."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
