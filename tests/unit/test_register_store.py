"""The register's file: two processes, kill -9, damage, locks, newer and foreign files."""

from __future__ import annotations

import random
import signal
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from stylobate.core.errors import RegisterError
from stylobate.register import copies, open_register
from stylobate.register.entries import moment
from stylobate.register.schema import VERSION
from stylobate.register.store import restore
from stylobate.register.units import Kind, add, record, units
from tests.doors.running import ROOT, environment

WRITER = """
import sys
from pathlib import Path
from stylobate.register import open_register
from stylobate.register.entries import moment
from stylobate.register.units import record
for k in range(int(sys.argv[3])):
    with open_register(Path(sys.argv[1])) as register:
        record(register, [sys.argv[2]], "sterilised", moment(), amount=1)
    print(k, flush=True)
"""
CREATOR = """
import sys
from pathlib import Path
from stylobate.register import open_register
from stylobate.register.units import Kind, add
with open_register(Path(sys.argv[1]), create=True) as register:
    add(register, [sys.argv[2]], Kind("alder-tall"))
"""


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "register.sqlite"
    with open_register(path, create=True) as register:
        add(register, ["1", "2"], Kind("alder-tall"))
    return path


def start(program: str, *arguments: object) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", program, *map(str, arguments)], stdout=subprocess.PIPE, text=True, cwd=ROOT,
        env=environment(),
    )  # fmt: skip


def integrity(path: Path) -> str:
    connection = sqlite3.connect(path)
    try:
        return str(connection.execute("PRAGMA integrity_check").fetchone()[0])
    finally:
        connection.close()


def cycles(path: Path) -> dict[str, int]:
    with open_register(path) as register:
        return {unit.number: unit.cycles for unit in units(register)}


@pytest.mark.parametrize("seed", [1, 2, 3, 4])
def test_kill_9_loses_nothing_that_was_answered(file: Path, seed: int) -> None:
    chance = random.Random(seed)
    before = cycles(file)["1"]
    with start(WRITER, file, "1", 10_000) as writer:
        assert writer.stdout is not None
        for _ in range(chance.randrange(2, 9)):
            answered = int(writer.stdout.readline()) + 1
        signal_after = chance.random() * 0.02
        try:
            writer.wait(signal_after)
        except subprocess.TimeoutExpired:
            writer.send_signal(signal.SIGKILL)
        answered += len(writer.stdout.read().splitlines())
        assert writer.wait() == -signal.SIGKILL
    assert integrity(file) == "ok"
    assert answered <= cycles(file)["1"] - before <= answered + 1


def test_two_processes_write_without_losing_an_entry(file: Path) -> None:
    writers = [start(WRITER, file, unit, 25) for unit in ("1", "2")]
    for writer in writers:
        with writer:
            writer.communicate(timeout=120)
        assert writer.returncode == 0
    assert cycles(file) == {"1": 25, "2": 25}
    assert integrity(file) == "ok"


def test_two_processes_may_make_the_register_at_once(tmp_path: Path) -> None:
    path = tmp_path / "new.sqlite"
    makers = [start(CREATOR, path, unit) for unit in ("1", "2", "3")]
    for maker in makers:
        with maker:
            maker.communicate(timeout=60)
        assert maker.returncode == 0
    assert set(cycles(path)) == {"1", "2", "3"}


def test_an_error_inside_a_transaction_undoes_all_of_it(file: Path) -> None:
    with pytest.raises(RegisterError, match="not in the register: 7"), open_register(file) as register:
        record(register, ["1", "7"], "sterilised", moment(), amount=1)
    assert cycles(file) == {"1": 0, "2": 0}


def test_a_locked_register_is_one_line(file: Path) -> None:
    other = sqlite3.connect(file, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    try:
        with (
            pytest.raises(RegisterError, match="another program has been writing"),
            open_register(file, patience_s=0.1) as register,
        ):
            record(register, ["1"], "sterilised", moment(), amount=1)
    finally:
        other.execute("ROLLBACK")
        other.close()
    assert cycles(file)["1"] == 0


def damage(path: Path, kind: str) -> None:
    content = bytearray(path.read_bytes())
    for ending in ("-wal", "-shm"):
        path.with_name(path.name + ending).unlink(missing_ok=True)
    if kind == "zeros":
        content[4096:20480] = bytes(16384)
    elif kind == "cut":
        del content[len(content) // 2 :]
    elif kind == "other":
        content = bytearray(b"these were units once\n" * 900)
    else:
        content.clear()
    path.write_bytes(content)


@pytest.mark.parametrize("kind", ["zeros", "cut", "other", "empty"])
def test_a_damaged_register_is_not_written_and_its_last_good_copy_is_offered(file: Path, kind: str) -> None:
    with open_register(file) as register:
        record(register, ["1"], "sterilised", moment(), amount=1)
    damage(file, kind)
    damaged = file.read_bytes()
    for create in (False, True):
        with (
            pytest.raises(RegisterError, match=r"Last good copy: register-\d{8}T\d{12}\.sqlite"),
            open_register(file, create=create) as register,
        ):
            add(register, ["3"], Kind("alder-tall"))
    assert file.read_bytes() == damaged
    _, aside = restore(file)
    assert aside is not None
    assert aside.read_bytes() == damaged
    assert cycles(file) == {"1": 1, "2": 0}


def test_a_damaged_copy_is_never_offered(file: Path) -> None:
    with open_register(file) as register:
        record(register, ["1"], "sterilised", moment(), amount=1)
    newest = copies.every(file)[-1]
    damage(newest, "zeros")
    assert copies.newest(file) == copies.every(file)[-2]


def test_a_lost_register_is_not_made_anew(file: Path) -> None:
    file.unlink()
    with pytest.raises(RegisterError, match=r"missing.*Last good copy"), open_register(file, create=True):
        pass
    assert not file.exists()


def test_a_sound_register_is_not_replaced(file: Path) -> None:
    with pytest.raises(RegisterError, match="is sound"):
        restore(file)


def test_copies_do_not_pile_up(file: Path) -> None:
    for _ in range(copies.KEPT + 5):
        with open_register(file) as register:
            record(register, ["1"], "sterilised", moment(), amount=1)
    assert len(copies.every(file)) <= copies.KEPT + 1
    newest = copies.newest(file)
    assert newest is not None
    assert cycles(newest)["1"] == copies.KEPT + 5


def test_a_newer_and_a_foreign_database_are_refused(file: Path, tmp_path: Path) -> None:
    connection = sqlite3.connect(file)
    connection.execute(f"PRAGMA user_version = {VERSION + 1}")
    connection.close()
    with pytest.raises(RegisterError, match="newer stylobate"), open_register(file):
        pass
    foreign = tmp_path / "photos.sqlite"
    connection = sqlite3.connect(foreign)
    connection.execute("CREATE TABLE photo (name TEXT)")
    connection.close()
    before = foreign.read_bytes()
    with pytest.raises(RegisterError, match="another program's database"), open_register(foreign, create=True):
        pass
    assert foreign.read_bytes() == before


def test_what_was_entered_cannot_be_changed_behind_the_history(file: Path) -> None:
    with open_register(file) as register:
        record(register, ["1"], "sterilised", moment(), amount=1)
    connection = sqlite3.connect(file)
    for change in ("UPDATE event SET amount = 0", "DELETE FROM event"):
        with pytest.raises(sqlite3.IntegrityError):
            connection.execute(change)
    connection.close()
