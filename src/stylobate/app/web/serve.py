"""From a place to a page in the browser: port, key, server, and the way out."""

from __future__ import annotations

import asyncio
import hashlib
import json
import os
import secrets
import shutil
import socket
import tempfile
import webbrowser
from collections.abc import Callable
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path

import uvicorn

from stylobate.app.web.board import Place
from stylobate.app.web.desk import CaseDesk
from stylobate.app.web.guard import Guard
from stylobate.app.web.routes import application
from stylobate.app.web.session import Session
from stylobate.core.errors import UsageError

MOST_REQUESTS = 64
"""Requests answered at once; more wait or are turned away. A page needs about ten."""


class Server(uvicorn.Server):
    """uvicorn without its handlers for signals: Ctrl-C and termination arrive as everywhere in this program."""

    def install_signal_handlers(self) -> None:
        """None of its own."""


@dataclass(frozen=True)
class Door:
    """Port and key of a page. Kept while it runs, so that after a crash the same tab finds it again."""

    port: int
    key: str


def kept_door(folder: Path) -> Path:
    """Where the door of the page on a folder is kept: in the user's own cache, readable by the user alone."""
    cache = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")
    return cache / "stylobate" / f"page-{hashlib.sha256(str(folder.absolute()).encode()).hexdigest()[:16]}.json"


def last_door(path: Path) -> Door | None:
    """The door of a page that was killed, None where there was none."""
    try:
        values = json.loads(path.read_text(encoding="utf-8"))
        return Door(int(values["port"]), str(values["key"]))
    except (OSError, ValueError, KeyError, TypeError):
        return None


def keep_door(path: Path, door: Door) -> None:
    """Remember a door; where that is not possible a crash needs a new tab, nothing else."""
    with suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.unlink(missing_ok=True)
        with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="utf-8") as file:
            json.dump(asdict(door), file)


def bound(port: int) -> socket.socket:
    """A socket on loopback; port 0: any free one. Raises UsageError."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind(("127.0.0.1", port))
    except OSError as error:
        listening.close()
        raise UsageError(f"--port {port}: cannot be used ({error.strerror}); leave --port out") from error
    return listening


def opened(port: int, before: Door | None) -> tuple[socket.socket, Door]:
    """A socket and its door: those of a killed page again where the port is free, else new ones. Raises UsageError."""
    if before is not None and port in (0, before.port):
        with suppress(UsageError):
            return bound(before.port), before
    listening = bound(port)
    return listening, Door(listening.getsockname()[1], secrets.token_urlsafe(32))


def serve(place: Place, port: int, browser: bool, say: Callable[[str], None]) -> None:
    """Serve the page until interrupted. place.cache: replaced by a folder of its own, gone afterwards.

    Raises UsageError where the port is taken.
    """
    kept = kept_door(place.folder())
    listening, door = opened(port, last_door(kept))
    keep_door(kept, door)
    place.cache = Path(tempfile.mkdtemp(prefix="stylobate-page-"))
    if isinstance(place.desk, CaseDesk):
        place.desk.cache = place.cache
    try:
        asyncio.run(_serve(place, listening, door, browser, say))
    finally:
        listening.close()
        kept.unlink(missing_ok=True)
        shutil.rmtree(place.cache, ignore_errors=True)


async def _serve(place: Place, listening: socket.socket, door: Door, browser: bool, say: Callable[[str], None]) -> None:
    session = Session(place)
    guard = Guard(application(session), door.port, door.key)
    config = uvicorn.Config(
        guard, log_level="critical", access_log=False, lifespan="off", server_header=False,
        limit_concurrency=MOST_REQUESTS, timeout_graceful_shutdown=1, ws="none",
    )  # fmt: skip
    await session.open()
    say(guard.address())
    if browser:
        await asyncio.to_thread(webbrowser.open, guard.address())
    try:
        await Server(config).serve(sockets=[listening])
    finally:
        await session.close()
