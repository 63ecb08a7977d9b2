"""Copies of the register, made after each write and proven sound before they count."""

from __future__ import annotations

import os
import re
import shutil
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

from stylobate.core.errors import RegisterError

KEPT = 10
"""Newest copies that are kept."""
KEPT_DAYS = 30
"""Days of which the last copy is kept as well."""
_STAMP = "%Y%m%dT%H%M%S%f"


def folder_of(file: Path) -> Path:
    """Where the copies of a register lie: a folder beside it."""
    return file.with_name(f"{file.name}.copies")


def every(file: Path) -> list[Path]:
    """All copies, oldest first."""
    pattern = re.compile(rf"{re.escape(file.stem)}-\d{{8}}T\d{{12}}\.sqlite")
    try:
        return sorted(path for path in folder_of(file).iterdir() if pattern.fullmatch(path.name))
    except OSError:
        return []


def newest(file: Path) -> Path | None:
    """The newest copy that is still sound, None where there is none."""
    return next((path for path in reversed(every(file)) if sound(path)), None)


def when(copy: Path) -> str:
    """When a copy was made, for people: UTC to the minute."""
    return _made(copy).strftime("%Y-%m-%d %H:%M UTC")


def _made(copy: Path) -> datetime:
    return datetime.strptime(copy.stem.rsplit("-", 1)[1], _STAMP).replace(tzinfo=UTC)


def sound(path: Path) -> bool:
    """Whether a copy passes SQLite's integrity check and holds anything."""
    try:
        connection = sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)
    except sqlite3.Error:
        return False
    try:
        said = connection.execute("PRAGMA integrity_check(1)").fetchone()[0]
        return bool(said == "ok" and connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()[0])
    except sqlite3.Error:
        return False
    finally:
        connection.close()


def keep(connection: sqlite3.Connection, file: Path) -> None:
    """Copy the register as it is now; older copies that are not needed any more go.

    A copy that cannot be made (a full disk) loses nothing that stands in the register: it is left out.
    """
    folder = folder_of(file)
    target = folder / f"{file.stem}-{datetime.now(UTC).strftime(_STAMP)}.sqlite"
    partial = target.with_suffix(f".{os.getpid()}.part")
    try:
        folder.mkdir(exist_ok=True)
        copy = sqlite3.connect(partial)
        try:
            connection.backup(copy)
            copy.execute("PRAGMA journal_mode = DELETE")
        finally:
            copy.close()
        if sound(partial):
            partial.rename(target)
            _thin(file)
    except (OSError, sqlite3.Error):
        return
    finally:
        partial.unlink(missing_ok=True)


def _thin(file: Path) -> None:
    """Keep the newest copies and the last one of each recent day."""
    found = every(file)
    last_of_day = {_made(path).date(): path for path in found}
    days = sorted(last_of_day)[-KEPT_DAYS:]
    wanted = {*found[-KEPT:], *(last_of_day[day] for day in days)}
    for path in found:
        if path not in wanted:
            path.unlink(missing_ok=True)


def restore(file: Path) -> tuple[Path, Path | None]:
    """Put the newest sound copy in the register's place; returns the copy and where the earlier file went.

    The earlier file (with its log) is moved aside, never overwritten. Raises RegisterError.
    """
    copy = newest(file)
    if copy is None:
        raise RegisterError(
            f"{file}: no sound copy of the register was found in {folder_of(file)}; nothing was changed"
        )
    partial = file.with_name(f"{file.name}.{os.getpid()}.part")
    aside = file.with_name(f"{file.stem}-set-aside-{datetime.now(UTC).strftime(_STAMP)}{file.suffix}")
    moved: Path | None = None
    try:
        shutil.copyfile(copy, partial)
        for ending in ("", "-wal", "-shm"):
            present = file.with_name(file.name + ending)
            if present.exists():
                present.rename(aside.with_name(aside.name + ending))
                moved = aside
        partial.rename(file)
    except OSError as error:
        partial.unlink(missing_ok=True)
        raise RegisterError(f"{file}: the copy cannot be put in place: {error.strerror or error}") from error
    return copy, moved
