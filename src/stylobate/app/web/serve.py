"""From a place to a page in the browser: port, key, server, and the way out."""

from __future__ import annotations

import asyncio
import secrets
import shutil
import socket
import tempfile
import webbrowser
from collections.abc import Callable
from pathlib import Path

import uvicorn

from stylobate.app.web.desk import CaseDesk
from stylobate.app.web.guard import Guard
from stylobate.app.web.routes import application
from stylobate.app.web.session import Place, Session
from stylobate.core.errors import UsageError

MOST_REQUESTS = 64
"""Requests answered at once; more wait or are turned away. A page needs about ten."""


class Server(uvicorn.Server):
    """uvicorn without its handlers for signals: Ctrl-C and termination arrive as everywhere in this program."""

    def install_signal_handlers(self) -> None:
        """None of its own."""


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


def serve(place: Place, port: int, browser: bool, say: Callable[[str], None]) -> None:
    """Serve the page until interrupted. place.cache: replaced by a folder of its own, gone afterwards.

    Raises UsageError where the port is taken.
    """
    listening = bound(port)
    place.cache = Path(tempfile.mkdtemp(prefix="stylobate-page-"))
    if isinstance(place.desk, CaseDesk):
        place.desk.cache = place.cache
    try:
        asyncio.run(_serve(place, listening, browser, say))
    finally:
        listening.close()
        shutil.rmtree(place.cache, ignore_errors=True)


async def _serve(place: Place, listening: socket.socket, browser: bool, say: Callable[[str], None]) -> None:
    session = Session(place)
    guard = Guard(application(session), listening.getsockname()[1], secrets.token_urlsafe(32))
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
