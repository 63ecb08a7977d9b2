"""The JSON API over HTTP. Every path here stands in the OpenAPI description."""

from __future__ import annotations

import asyncio
import gzip
import hashlib
import json
import os
import re
import tempfile
from collections.abc import AsyncIterator, Callable
from dataclasses import asdict
from pathlib import Path
from typing import Any, TypeVar, get_args

from pydantic import TypeAdapter, ValidationError
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import FileResponse, JSONResponse, Response, StreamingResponse
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from stylobate.app.web.compact import ENDING, Compactor
from stylobate.app.web.desk import CaseDesk, require_case
from stylobate.app.web.model import (
    AddSite,
    ChooseChain,
    ChoosePart,
    DropSite,
    Measure,
    NameTooth,
    NoteCheck,
    Offer,
    RefusalView,
    ReleaseSite,
    Role,
    State,
)
from stylobate.app.web.openapi import description
from stylobate.app.web.session import Session
from stylobate.app.web.words import one_line
from stylobate.app.web.workspace import free_name
from stylobate.case.folder import require_initials
from stylobate.core.errors import StylobateError, UsageError
from stylobate.scan.source import MAX_BYTES, shown

STATIC = Path(__file__).with_name("static")
LARGEST_ASK_BYTES = 1 << 16
HEARTBEAT_S = 5.0
RAW = "application/octet-stream"
KEY = re.compile(r"(scan|sites|paint|body|part)-[0-9a-z-]{1,60}")
Ask = TypeVar("Ask")


class Api:
    """The handlers, over one session."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._compactor = Compactor(session.place.cache)
        self._compacting = asyncio.Lock()

    def routes(self) -> list[Route]:
        """Every path of the API."""
        return [
            Route("/api/state", self.state),
            Route("/api/stream", self.stream),
            Route("/api/openapi.json", self.openapi),
            Route("/api/surface/{key}", self.surface),
            Route("/api/offer", self.offer, methods=["POST"]),
            Route("/api/scan", self.scan, methods=["PUT"]),
            Route("/api/parts", self.parts, methods=["PUT"]),
            *(Route(f"/api/{role}", self.around, methods=["PUT"]) for role in get_args(Role)),
            Route("/api/join", self.join, methods=["POST"]),
            Route("/api/stop", self.stop, methods=["POST"]),
            Route("/api/measure", self.measure, methods=["POST"]),
            Route("/api/site/add", self.add_site, methods=["POST"]),
            Route("/api/site/drop", self.drop_site, methods=["POST"]),
            Route("/api/site/part", self.choose_part, methods=["POST"]),
            Route("/api/site/chain", self.choose_chain, methods=["POST"]),
            Route("/api/case/tooth", self.name_tooth, methods=["POST"]),
            Route("/api/case/check", self.check, methods=["POST"]),
            Route("/api/case/release", self.release, methods=["POST"]),
            Route("/api/report.pdf", self.report),
            Route("/api/package.zip", self.package),
            Route("/api/undo", self.undo, methods=["POST"]),
            Route("/api/redo", self.redo, methods=["POST"]),
            Route("/api/dismiss", self.dismiss, methods=["POST"]),
        ]

    async def state(self, _request: Request) -> Response:
        """All that the page shows."""
        return self._answer()

    async def openapi(self, _request: Request) -> Response:
        """This API, described."""
        return JSONResponse(description())

    async def stream(self, _request: Request) -> Response:
        """The state after every change, as server-sent events."""

        async def events() -> AsyncIterator[bytes]:
            yield b"retry: 1000\n\n"
            async for state in self._session.states(HEARTBEAT_S):
                yield b"event: here\ndata:\n\n" if state is None else b"data: " + _json(state) + b"\n\n"

        return StreamingResponse(events(), media_type="text/event-stream")

    async def surface(self, request: Request) -> Response:
        """A surface or its deviations, as raw arrays; with the ending -compact made small."""
        key = request.path_params["key"]
        path = self._session.place.cache / key
        small = None
        if KEY.fullmatch(key) and key.endswith(ENDING):
            async with self._compacting:
                small = await asyncio.to_thread(self._compactor.made, key)
        if not KEY.fullmatch(key) or (small is None and not path.is_file()):
            raise HTTPException(404, "there is no such surface (any more); reload the page")
        if small is not None:
            plain = "gzip" not in request.headers.get("accept-encoding", "")
            coding = {} if plain else {"content-encoding": "gzip"}
            return Response(gzip.decompress(small) if plain else small, headers=coding, media_type=RAW)
        return FileResponse(path, media_type=RAW)

    async def offer(self, request: Request) -> Response:
        """Whether a file may be sent, before it is."""
        ask = await _read(request, Offer)

        self._signed(request)

        def check() -> None:
            if isinstance(self._session.ready(), CaseDesk):
                require_initials(self._session.who)
            _check_size(ask.name, ask.size)

        return self._do(check, ask.what if ask.what in ("parts", "scan") else "around")

    async def scan(self, request: Request) -> Response:
        """A scan file: kept, then measured."""
        try:
            self._signed(request)
            folder = self._session.ready().incoming()
            path, sha256 = await _received(request, folder)
        except (StylobateError, OSError) as error:
            return self._refused("scan", error)
        name = free_name(folder, request.query_params.get("name", "scan"))
        path.replace(folder / name)

        def take() -> None:
            try:
                self._session.take_scan(name, sha256, "again" in request.query_params)
            except StylobateError:
                (folder / name).unlink(missing_ok=True)
                raise

        return self._do(take, "scan", 202)

    async def parts(self, request: Request) -> Response:
        """A parts folder as a zip: checked, then used."""
        try:
            self._signed(request)
            folder = self._session.ready().incoming().parent
            path, _ = await _received(request, folder)
        except (StylobateError, OSError) as error:
            return self._refused("parts", error)
        kept = folder / free_name(folder, request.query_params.get("name", "parts.zip"))
        path.replace(kept)
        return self._do(lambda: self._session.set_parts(kept), "parts", 202)

    async def around(self, request: Request) -> Response:
        """A scan of a case beside that of the bodies: kept, then joined to it."""
        role = next(role for role in get_args(Role) if request.url.path == f"/api/{role}")
        try:
            self._signed(request)
            folder = require_case(self._session.ready()).incoming()
            path, _ = await _received(request, folder)
        except (StylobateError, OSError) as error:
            return self._refused("around", error)
        kept = path.replace(folder / free_name(folder, request.query_params.get("name", role)))

        def take() -> None:
            try:
                self._session.take_around(role, kept)
            except StylobateError:
                kept.unlink(missing_ok=True)
                raise

        return self._do(take, "around", 202)

    async def join(self, request: Request) -> Response:
        """Lay the other scans of a case on that of the bodies."""
        self._signed(request)
        return self._do(self._session.join, "around", 202)

    async def stop(self, _request: Request) -> Response:
        """Stop what is under way."""
        await self._session.stop()
        return self._answer()

    async def measure(self, request: Request) -> Response:
        """Measure the same scan again."""
        ask = await _read(request, Measure)
        self._signed(request)
        return self._do(lambda: self._session.measure_again(ask.work, ask.count), "measure", 202)

    async def add_site(self, request: Request) -> Response:
        """A scan body that was missed."""
        ask = await _read(request, AddSite)
        self._signed(request)
        return self._do(lambda: self._session.add_site(ask.point), "site", 202)

    async def drop_site(self, request: Request) -> Response:
        """A site that is none."""
        ask = await _read(request, DropSite)
        self._signed(request)
        return self._do(lambda: self._session.drop_site(ask.site), "site", 202)

    async def choose_part(self, request: Request) -> Response:
        """The scan body that stands at a site."""
        ask = await _read(request, ChoosePart)
        self._signed(request)
        return self._do(lambda: self._session.choose_part(ask.site, ask.scan_body), "site", 202)

    async def choose_chain(self, request: Request) -> Response:
        """Parts for a site."""
        ask = await _read(request, ChooseChain)
        self._signed(request)
        return self._do(lambda: self._session.choose_chain(ask.site, ask.chain), "site", 202)

    async def name_tooth(self, request: Request) -> Response:
        """Which tooth a site of a case stands for."""
        ask = await _read(request, NameTooth)
        return self._in_case(request, lambda desk, who: desk.name_tooth(ask.site, ask.tooth, who))

    async def check(self, request: Request) -> Response:
        """A chairside check of a case, made."""
        ask = await _read(request, NoteCheck)
        return self._in_case(request, lambda desk, who: desk.check(ask, who))

    async def release(self, request: Request) -> Response:
        """A person's release of a site, or its withdrawal."""
        ask = await _read(request, ReleaseSite)
        return self._in_case(request, lambda desk, who: desk.release(ask.tooth, ask.reason, ask.withdraw, who))

    def _in_case(self, request: Request, act: Callable[[CaseDesk, str], None]) -> Response:
        def action() -> None:
            self._signed(request)
            act(require_case(self._session.ready()), self._session.who)
            self._session.tell_case()

        return self._do(action, "site")

    async def report(self, _request: Request) -> Response:
        """The report as PDF."""
        return await self._made("report", "application/pdf", "report.pdf")

    async def package(self, _request: Request) -> Response:
        """The hand-off package of a case."""
        return await self._made("package", "application/zip", "package.zip")

    async def _made(self, what: str, media: str, name: str) -> Response:
        try:
            path, stem = await self._session.make(what)
        except StylobateError as error:
            return self._refused("measure", error)
        return FileResponse(path, media_type=media, filename=f"{stem}-{name}")

    def _signed(self, request: Request) -> None:
        """Who asks: initials, for a case's log. They are checked where they are written."""
        self._session.who = request.headers.get("stylobate-initials", "")

    async def undo(self, request: Request) -> Response:
        """Take the last choice back."""
        self._signed(request)
        return self._do(lambda: self._session.step(-1), "folder")

    async def redo(self, request: Request) -> Response:
        """Do again what was taken back."""
        self._signed(request)
        return self._do(lambda: self._session.step(+1), "folder")

    async def dismiss(self, _request: Request) -> Response:
        """The refusal has been read."""
        self._session.change(refusal=None, notice="")
        return self._answer()

    def _do(self, action: Callable[[], None], about: Any, status: int = 200) -> Response:
        try:
            action()
        except (StylobateError, OSError) as error:
            return self._refused(about, error)
        return self._answer(status)

    def _refused(self, about: Any, error: Exception) -> Response:
        line = one_line(error)
        self._session.change(refusal=RefusalView(about, line))
        return JSONResponse({"about": about, "text": line}, 409)

    def _answer(self, status: int = 200) -> Response:
        return Response(_json(self._session.state), status, media_type="application/json")


def _json(state: State) -> bytes:
    return json.dumps(asdict(state), ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()


async def _read(request: Request, kind: type[Ask]) -> Ask:
    """The body as one of the asks. Raises HTTPException: 413 too large, 422 not what is described."""
    body = b""
    async for chunk in request.stream():
        body += chunk
        if len(body) > LARGEST_ASK_BYTES:
            raise HTTPException(413, "the request is too large")
    try:
        return TypeAdapter(kind, config=None).validate_json(body, strict=True)
    except ValidationError as error:
        detail = error.errors(include_url=False)[0]
        place = ".".join(str(step) for step in detail["loc"])
        raise HTTPException(422, f"{place or 'the request'}: {detail['msg']}") from error


def _check_size(name: str, size: int) -> None:
    if size == 0:
        raise UsageError(f"{shown(name)}: the file is empty; export the scan again")
    if size > MAX_BYTES:
        raise UsageError(
            f"{shown(name)}: larger than {MAX_BYTES >> 30} GiB, which no scan is; export it with fewer triangles"
        )


async def _received(request: Request, folder: Path) -> tuple[Path, str]:
    """The body of a request as a file in folder, and its SHA-256. Raises UsageError, OSError; nothing is left then."""
    name = request.query_params.get("name", "the file")
    declared = request.headers.get("content-length", "")
    if declared.isdigit():
        _check_size(name, int(declared))
    handle, partial = tempfile.mkstemp(prefix=".part-", dir=folder)
    digest, size = hashlib.sha256(), 0
    try:
        with os.fdopen(handle, "wb") as file:
            async for chunk in request.stream():
                size += len(chunk)
                if size > MAX_BYTES:
                    _check_size(name, size)
                digest.update(chunk)
                await asyncio.to_thread(file.write, chunk)
        _check_size(name, size)
    except ClientDisconnect as error:
        Path(partial).unlink(missing_ok=True)
        raise UsageError(f"{shown(name)}: arrived in part only; drop it again") from error
    except BaseException:
        Path(partial).unlink(missing_ok=True)
        raise
    return Path(partial), digest.hexdigest()


async def _page(_request: Request) -> Response:
    return FileResponse(STATIC / "index.html")


async def _http_error(_request: Request, error: Exception) -> Response:
    assert isinstance(error, HTTPException)
    return JSONResponse({"about": "measure", "text": error.detail}, error.status_code)


def application(session: Session) -> Starlette:
    """The whole page as an ASGI application, without its guard."""
    routes = [
        *Api(session).routes(),
        Route("/", _page),
        Mount("/static", StaticFiles(directory=STATIC)),
    ]
    return Starlette(routes=routes, exception_handlers={HTTPException: _http_error})
