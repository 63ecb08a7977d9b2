"""Who may talk to the page: this machine, this browser, this page. All else gets one line and nothing more."""

from __future__ import annotations

import hmac
import secrets
from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

CONTENT_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "content-security-policy": CONTENT_POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
    "cache-control": "no-store",
}
READING = {"GET", "HEAD"}
ENTRY = "/open/"


class Guard:
    """ASGI middleware: Host, Origin, one-time token, cookie, and the headers of every answer.

    The address that is printed holds a token that works once: it gives the browser a cookie that lasts until the
    program ends. key: the cookie's value.
    """

    def __init__(self, app: ASGIApp, port: int, key: str) -> None:
        self._app = app
        self._hosts = {f"127.0.0.1:{port}", f"localhost:{port}"}
        self._cookie = f"stylobate-{port}"
        self._key = key
        self._token: str | None = secrets.token_urlsafe(32)
        self._port = port

    def address(self) -> str:
        """The address that opens the page, once."""
        return f"http://127.0.0.1:{self._port}{ENTRY}{self._token}"

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """ASGI. Sockets other than plain HTTP are closed."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
            return
        if scope["type"] != "http":
            await send({"type": "websocket.close", "code": 1008})
            return

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
            await send(message)

        answer = self._refusal(scope)
        await (answer or self._app)(scope, receive, guarded)

    def _refusal(self, scope: Scope) -> Response | None:
        """The answer to who may not pass, and to who brings the token; None: let pass."""
        headers = Headers(scope=scope)
        if headers.get("host", "") not in self._hosts:
            return PlainTextResponse("this page answers on 127.0.0.1 only; use the address that was printed", 421)
        origin = headers.get("origin")
        own = {f"http://{host}" for host in self._hosts}
        if origin is not None and origin not in own:
            return PlainTextResponse("requests from another page are not answered", 403)
        if scope["method"] not in READING and origin is None:
            return PlainTextResponse("a request that changes something must come from the page itself", 403)
        if scope["path"].startswith(ENTRY):
            return self._enter(scope["path"][len(ENTRY) :], scope["method"])
        if not self._known(headers.get("cookie", "")):
            return PlainTextResponse(
                "This page is private to the browser that 'stylobate open' started. Use that window, or run the "
                "command again for a new address.",
                401,
            )
        return None

    def _enter(self, token: str, method: str) -> Response:
        if method != "GET" or self._token is None or not hmac.compare_digest(token.encode(), self._token.encode()):
            return PlainTextResponse(
                "This address works once, and it has been used. Go on in the window that it opened, or run "
                "'stylobate open' again for a new one.",
                403,
            )
        self._token = None
        answer = RedirectResponse("/", 303)
        answer.set_cookie(self._cookie, self._key, httponly=True, samesite="strict", path="/")
        return answer

    def _known(self, cookie: str) -> bool:
        try:
            held = SimpleCookie(cookie).get(self._cookie)
        except CookieError:
            return False
        return held is not None and hmac.compare_digest(held.value.encode(), self._key.encode())
