"""One SQLite file: opened, checked, written in whole transactions, copied after each write.

Write-ahead log, so that two processes may work on it; full synchronisation, so that what was answered is on the disk.
A file that does not pass SQLite's integrity check is never written to.
"""

from __future__ import annotations

import os
import sqlite3
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from stylobate.core.errors import RegisterError
from stylobate.register import copies
from stylobate.register.schema import APPLICATION_ID, MIGRATIONS, VERSION

PATIENCE_S = 15.0
"""How long to wait for another program that is writing."""
NAME = "register.sqlite"

_DAMAGED = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}


def default_path() -> Path:
    """$XDG_DATA_HOME/stylobate/register.sqlite, or the same below ~/.local/share. Raises RegisterError."""
    base = Path(os.environ.get("XDG_DATA_HOME", ""))
    try:
        root = base if base.is_absolute() else Path.home() / ".local" / "share"
    except RuntimeError as error:
        raise RegisterError("there is no home folder to keep the register in; name it with --register FILE") from error
    return root / "stylobate" / NAME


class Register:
    """An open register. Reads by `rows`; writes inside `writing`."""

    def __init__(self, path: Path, connection: sqlite3.Connection) -> None:
        self.path = path
        self.written = False
        self._connection = connection

    def rows(self, sql: str, *values: object) -> list[sqlite3.Row]:
        """All rows of a query."""
        return self._connection.execute(sql, values).fetchall()

    def add(self, table: str, **values: object) -> int:
        """Insert one row; returns its rowid. table and the names of `values` come from this program, never from users.

        Raises sqlite3.IntegrityError.
        """
        names = ", ".join(values)
        marks = ", ".join("?" * len(values))
        sql = f"INSERT INTO {table} ({names}) VALUES ({marks})"  # noqa: S608
        return int(self._connection.execute(sql, tuple(values.values())).lastrowid or 0)

    @contextmanager
    def writing(self) -> Iterator[None]:
        """One transaction, alone: all of it or, when an error leaves the block, nothing."""
        self._connection.execute("BEGIN IMMEDIATE")
        try:
            yield
        except BaseException:
            self._connection.execute("ROLLBACK")
            raise
        self._connection.execute("COMMIT")
        self.written = True


@contextmanager
def open_register(
    path: Path | None = None, *, create: bool = False, patience_s: float = PATIENCE_S
) -> Iterator[Register]:
    """Open a register, checked; with `create` an absent one is made. After a write a copy of it is kept.

    Raises RegisterError: absent, damaged (names the last good copy), of another program, newer than this program,
    in use for longer than `patience_s`, or not readable or writable.
    """
    file = default_path() if path is None else path
    _require(file, create)
    connection: sqlite3.Connection | None = None
    try:
        connection = sqlite3.connect(file, timeout=patience_s, isolation_level=None)
        register = Register(file, connection)
        connection.row_factory = sqlite3.Row
        connection.execute("PRAGMA foreign_keys = ON")
        _require_sound(connection, file)
        _require_ours(connection, file, create)
        _journal(connection, patience_s)
        connection.execute("PRAGMA synchronous = FULL")
        _migrate(register, connection)
        yield register
        if register.written:
            copies.keep(connection, file)
    except sqlite3.Error as error:
        raise _refusal(file, error, patience_s) from error
    finally:
        if connection is not None:
            connection.close()


def _require(file: Path, create: bool) -> None:
    """The file is there, or may be made. An absent file beside copies of it was lost: not made anew by chance."""
    if file.is_dir():
        raise RegisterError(f"{file}: is a folder; name the register's file with --register FILE")
    if file.exists():
        return
    if copies.newest(file) is not None:
        raise RegisterError(f"{file}: the register is missing, but copies of it are there. {offer(file)}")
    if not create:
        raise RegisterError(
            f"{file}: there is no register yet; 'stylobate register add' makes it, or name another with --register FILE"
        )
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        cause = (error.strerror or str(error)).lower()
        raise RegisterError(f"{file}: cannot be made: {cause}; name another with --register FILE") from error


def offer(file: Path) -> str:
    """What to do about a damaged or lost register: the last good copy, if there is one."""
    copy = copies.newest(file)
    if copy is None:
        return "No copy of it was found beside it: bring it back from your own backup"
    return (
        f"Last good copy: {copy.name}, of {copies.when(copy)}. 'stylobate register restore' brings it back and keeps"
        " the present file beside it"
    )


def _require_sound(connection: sqlite3.Connection, file: Path) -> None:
    said = [str(row[0]) for row in connection.execute("PRAGMA integrity_check(3)")]
    if said != ["ok"]:
        raise RegisterError(f"{file}: the register is damaged ({said[0]}); nothing was changed. {offer(file)}")


def _require_ours(connection: sqlite3.Connection, file: Path, create: bool) -> None:
    mark = int(connection.execute("PRAGMA application_id").fetchone()[0])
    version = int(connection.execute("PRAGMA user_version").fetchone()[0])
    tables = int(connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()[0])
    if tables == 0 and mark == 0 and (not create or copies.newest(file) is not None):
        raise RegisterError(f"{file}: the register is empty, its content is lost; nothing was changed. {offer(file)}")
    if mark != APPLICATION_ID and (tables or mark):
        raise RegisterError(f"{file}: is another program's database; name a register with --register FILE")
    if version > VERSION:
        raise RegisterError(
            f"{file}: was written by a newer stylobate (version {version} of the register, known here: {VERSION});"
            " update this program"
        )


def _journal(connection: sqlite3.Connection, patience_s: float) -> None:
    """Switch to the write-ahead log. SQLite does not wait for others at this step, so we do."""
    until = time.monotonic() + patience_s
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as error:
            if _code(error) not in _BUSY or time.monotonic() > until:
                raise
            time.sleep(0.05)


def _migrate(register: Register, connection: sqlite3.Connection) -> None:
    """Bring the tables up to this program's version, in one transaction."""
    if int(connection.execute("PRAGMA user_version").fetchone()[0]) == VERSION:
        return
    with register.writing():
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
        for step in MIGRATIONS[version:]:
            for statement in _statements(step):
                connection.execute(statement)
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {VERSION}")


def _statements(script: str) -> Iterator[str]:
    """The statements of a script, one by one: executescript would end the transaction."""
    statement = ""
    for line in script.splitlines(keepends=True):
        statement += line
        if sqlite3.complete_statement(statement):
            yield statement
            statement = ""


def _code(error: sqlite3.Error) -> int:
    """SQLite's primary result code, 0 where there is none."""
    return int(getattr(error, "sqlite_errorcode", None) or 0) & 0xFF


def _refusal(file: Path, error: sqlite3.Error, patience_s: float) -> RegisterError:
    code = _code(error)
    if code in _DAMAGED:
        return RegisterError(f"{file}: the register is damaged ({error}); nothing was changed. {offer(file)}")
    if code in _BUSY:
        return RegisterError(
            f"{file}: another program has been writing to the register for more than {patience_s:g} s; try again when"
            " it is done"
        )
    if code == sqlite3.SQLITE_FULL:
        return RegisterError(f"{file}: the disk is full; nothing was changed; free some space and try again")
    if code in {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_IOERR}:
        return RegisterError(
            f"{file}: the register cannot be written ({error}); nothing was changed; make the file and its folder"
            " writable"
        )
    return RegisterError(f"{file}: the register refused the entry ({error}); nothing was changed")


def restore(file: Path, patience_s: float = PATIENCE_S) -> tuple[Path, Path | None]:
    """Bring the last good copy back; returns the copy and where the damaged file went (None: there was none).

    Raises RegisterError: the register is sound, is in use, or has no good copy.
    """
    if file.exists():
        try:
            with open_register(file, patience_s=patience_s):
                pass
        except RegisterError as error:
            if isinstance(error.__cause__, sqlite3.Error) and _code(error.__cause__) not in _DAMAGED:
                raise
        else:
            raise RegisterError(f"{file}: the register is sound; nothing was changed")
    return copies.restore(file)
