"""The page's server: who may talk to it, what it refuses, and that nothing it is sent can hurt it."""

from __future__ import annotations

import json
import socket
import time
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

import httpx
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter

from scripts.page_api import TARGET, current
from stylobate.app.web.model import RefusalView, State
from stylobate.app.web.openapi import ASKS, description
from stylobate.core.errors import ScanError
from stylobate.scan import read_scan
from stylobate.simulate.demo import demo_parts
from tests.doors.page_server import PATIENCE_S, Page, enter, page

MANY, BATCH = 2000, 100
COLLECTED = 30
STATE, REFUSAL = TypeAdapter(State), TypeAdapter(RefusalView)


@pytest.fixture(scope="module")
def running(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    folder = tmp_path_factory.mktemp("web")
    demo_parts(folder / "parts")
    (folder / "export").mkdir()
    with page(folder / "work", "--parts", folder / "parts", "--watch", folder / "export") as opened:
        outside = httpx.get(f"{opened.base}/api/state")
        assert outside.status_code == 401
        enter(opened)
        opened.settled()
        yield opened


def test_the_address_works_once(running: Page) -> None:
    again = httpx.get(running.address)
    assert again.status_code == 403
    assert "set-cookie" not in again.headers


@pytest.mark.parametrize(
    "path", ["/", "/static/page.js", "/api/state", "/api/stream", "/api/surface/scan-0", "/api/no"]
)
def test_without_the_cookie_nothing_is_given(running: Page, path: str) -> None:
    answer = httpx.get(running.base + path)
    assert answer.status_code == 401
    assert len(answer.text) < 300


@pytest.mark.parametrize("cookie", ["wrong", "", "a" * 5000, "\x01", '"'])
def test_a_wrong_cookie_is_no_cookie(running: Page, cookie: str) -> None:
    port = running.base.rsplit(":", 1)[1]
    headers = {"cookie": f"stylobate-{port}={cookie}".encode("latin-1")}
    answer = httpx.get(running.base + "/api/state", headers=headers)  # type: ignore[arg-type]
    assert answer.status_code in (400, 401)


def test_another_host_is_not_answered(running: Page) -> None:
    for host in ("example.org", "127.0.0.1", "127.0.0.1:1", "localhost.example.org:80", ""):
        assert running.client.get("/api/state", headers={"host": host}).status_code in (400, 421), host


def test_another_origin_is_not_answered(running: Page) -> None:
    for origin in ("http://example.org", "null", "http://127.0.0.1:1", running.base.replace("http", "https")):
        assert running.client.get("/api/state", headers={"origin": origin}).status_code == 403
        assert running.client.post("/api/undo", headers={"origin": origin}).status_code == 403


def test_what_changes_something_needs_an_origin(running: Page) -> None:
    bare = httpx.Client(base_url=running.base, cookies=running.client.cookies)
    with bare:
        assert bare.get("/api/state").status_code == 200
        assert bare.post("/api/undo").status_code == 403


def test_every_answer_carries_the_policy(running: Page) -> None:
    for answer in (running.client.get("/"), running.client.get("/api/state"), httpx.get(running.base)):
        policy = answer.headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert "http" not in policy
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert "set-cookie" not in answer.headers


@pytest.mark.parametrize(
    "path",
    [
        "/static/../session.py", "/static/%2e%2e/session.py", "/static/..%2fsession.py", "/static//etc/passwd",
        "/api/surface/..%2f..%2fetc%2fpasswd", "/api/surface/../../etc/passwd", "/api/surface/scan-%00",
        "/api/surface/measured-1",
    ],
)  # fmt: skip
def test_no_way_out_of_the_folders(running: Page, path: str) -> None:
    port = int(running.base.rsplit(":", 1)[1])
    name, value = next(iter(running.client.cookies.items()))
    with socket.create_connection(("127.0.0.1", port), timeout=10) as raw:
        request = (
            f"GET {path} HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\ncookie: {name}={value}\r\nconnection: close\r\n\r\n"
        )
        raw.sendall(request.encode())
        answer = b"".join(iter(lambda: raw.recv(65536), b""))
    assert answer.split(b" ")[1] in (b"404", b"400"), answer[:80]
    assert b"root:" not in answer
    assert b"class Session" not in answer


def refused(running: Page, answer: httpx.Response, *words: str) -> None:
    """Refused in one line, and the page says the same."""
    assert answer.status_code == 409, answer.text
    text = answer.json()["text"]
    assert "\n" not in text
    for word in words:
        assert word in text
    assert running.state()["refusal"]["text"] == text


def test_a_file_too_large_is_refused_before_it_is_sent(running: Page) -> None:
    offer = {"what": "scan", "name": "arch.stl", "size": 3 << 30}
    refused(running, running.client.post("/api/offer", json=offer), "arch.stl", "larger than 2 GiB")
    assert running.client.post("/api/offer", json={**offer, "size": 1000}).status_code == 200
    port = int(running.base.rsplit(":", 1)[1])
    name, value = next(iter(running.client.cookies.items()))
    with socket.create_connection(("127.0.0.1", port), timeout=10) as raw:
        head = f"PUT /api/scan?name=a.stl HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\norigin: {running.base}\r\n"
        raw.sendall(f"{head}cookie: {name}={value}\r\ncontent-length: {3 << 30}\r\n\r\n".encode())
        assert b" 409 " in raw.recv(65536)


@pytest.mark.parametrize("content", [b"", b"not a scan at all\n", b"solid x\nfacet", b"\x00" * 84 + b"\xff" * 10])
def test_what_is_no_scan_is_refused_as_by_the_command(running: Page, tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "arch.stl"
    file.write_bytes(content)
    with pytest.raises(ScanError) as expected:
        read_scan(file)
    running.client.post("/api/dismiss")
    running.client.put("/api/scan?name=arch.stl", content=content)
    state = running.settled()
    assert state["refusal"] is not None
    wanted = str(expected.value).replace(str(file), "arch.stl")
    assert state["refusal"]["text"] == wanted
    assert state["result"] is None
    left = Path(state["folder"]) / "scans"
    assert list(left.iterdir()) == []


def test_a_scan_that_comes_into_the_watched_folder_is_taken(running: Page) -> None:
    folder = Path(running.state()["watch"]["folder"])
    running.client.post("/api/dismiss")
    (folder / "notes.txt").write_text("no scan by its name")
    (folder / "came.stl").write_bytes(b"no scan by its content")
    end = time.monotonic() + PATIENCE_S
    while running.state()["refusal"] is None and time.monotonic() < end:
        time.sleep(0.2)
    state = running.settled()
    assert state["watch"]["last"] == "came.stl"
    assert state["refusal"]["text"].startswith("came.stl: ")
    assert (folder / "came.stl").exists(), "what is watched is left alone"


def test_a_name_cannot_leave_the_folder(running: Page) -> None:
    for name in ("../../evil.stl", "/etc/evil.stl", "..\\evil.stl", ".hidden", "", "a\x00b.stl", "x" * 500):
        running.client.put("/api/scan", params={"name": name}, content=b"no scan")
        state = running.settled()
        assert state["refusal"] is not None
        root = Path(state["folder"])
        assert not list(root.parent.glob("evil*"))
        assert list((root / "scans").iterdir()) == []


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"null", b'{"point": [1, 2, NaN]}', b"\xff", b'{"point": "1,2,3"}'])
def test_a_malformed_request_is_named_as_such(running: Page, body: bytes) -> None:
    answer = running.client.post("/api/site/add", content=body)
    assert answer.status_code == 422
    assert "\n" not in answer.json()["text"]


def test_an_endless_request_is_cut(running: Page) -> None:
    assert running.client.post("/api/site/add", content=b" " * 200_000).status_code == 413


def test_thousands_of_requests(running: Page) -> None:
    before = running.state()["revision"]
    port = int(running.base.rsplit(":", 1)[1])
    name, value = next(iter(running.client.cookies.items()))
    request = (
        f"GET /api/surface/scan-none HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\ncookie: {name}={value}\r\n\r\n".encode()
    )
    answered = b""
    with socket.create_connection(("127.0.0.1", port), timeout=30) as raw:
        for _ in range(MANY // BATCH):
            raw.sendall(request * BATCH)
            wanted = answered.count(b"HTTP/1.1 404") + BATCH
            while answered.count(b"HTTP/1.1 404") < wanted:
                received = raw.recv(65536)
                assert received, "the server hung up"
                answered += received
    assert running.state()["revision"] == before


def test_the_description_is_the_one_the_types_are_made_from() -> None:
    assert TARGET.read_text(encoding="utf-8") == current(), "run: make web"


def test_the_types_of_the_page_are_made_from_the_description() -> None:
    """Each schema and key of it stands in the TypeScript that the page is checked against."""
    types = (TARGET.parent / "src" / "api.d.ts").read_text(encoding="utf-8")
    for name, schema in description()["components"]["schemas"].items():
        body = types.split(f"        {name}: {{", 1)[1].split("\n        };", 1)[0]
        keys = {line.strip().split(":")[0].rstrip("?") for line in body.splitlines() if line.startswith("            ")}
        assert set(schema.get("properties", {})) <= keys, name


JSON = st.recursive(
    st.none() | st.booleans() | st.floats(allow_nan=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)


@pytest.mark.parametrize("path", sorted(ASKS))
def test_any_request_gets_an_answer_that_is_described(running: Page, path: str) -> None:
    kind = ASKS[path][1]
    statuses = description()["paths"][path]["post"]["responses"]
    asked = st.from_type(kind).map(asdict)

    @settings(max_examples=COLLECTED, deadline=None, suppress_health_check=list(HealthCheck), database=None)
    @given(st.one_of(asked, asked.map(lambda body: dict(list(body.items())[1:])), JSON))
    def ask(body: Any) -> None:
        answer = running.client.post(path, content=json.dumps(body).encode())
        assert str(answer.status_code) in statuses, (body, answer.text)
        STATE.validate_json(answer.content) if answer.status_code < 300 else REFUSAL.validate_json(answer.content)

    ask()
    assert running.settled()["result"] is None
