"""The OpenAPI description of the page's API, made from the dataclasses of `model`."""

from __future__ import annotations

from functools import cache
from typing import Any

from pydantic import TypeAdapter

from stylobate import __version__
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
    State,
)

ASKS: dict[str, tuple[str, type]] = {
    "/api/offer": ("Whether a file may be sent, before it is.", Offer),
    "/api/measure": ("Measure the same scan again.", Measure),
    "/api/site/add": ("A scan body that was missed.", AddSite),
    "/api/site/drop": ("A site that is none.", DropSite),
    "/api/site/part": ("The scan body that stands at a site.", ChoosePart),
    "/api/site/chain": ("Parts for a site: one of its options.", ChooseChain),
    "/api/case/tooth": ("Which tooth a site of a case stands for.", NameTooth),
    "/api/case/check": ("A chairside check of a case, made.", NoteCheck),
    "/api/case/release": ("A person's release of a site, or its withdrawal.", ReleaseSite),
}
PLAIN = {
    "/api/stop": "Stop what is under way.",
    "/api/undo": "Take the last choice back.",
    "/api/redo": "Do again what was taken back.",
    "/api/join": "Lay the other scans of a case on that of the bodies.",
    "/api/dismiss": "The refusal has been read.",
}
UPLOADS = {
    "/api/scan": "A scan file: kept, then measured.",
    "/api/parts": "A parts folder as a zip.",
    "/api/tissue": "A case's scan of the tissue: kept, then joined to that of the bodies.",
    "/api/opposing": "A case's scan of the other jaw: kept, then joined by way of the bite.",
    "/api/bite": "A case's scan of both jaws closed: kept, then joined.",
}


@cache
def description() -> dict[str, Any]:
    """OpenAPI 3.1."""
    kinds = [State, RefusalView, *(kind for _, kind in ASKS.values())]
    _, schemas = TypeAdapter.json_schemas(
        [(kind, "serialization", TypeAdapter(kind)) for kind in kinds],
        ref_template="#/components/schemas/{model}",
    )
    paths: dict[str, Any] = {
        "/api/state": {"get": _operation("All that the page shows.", _state("200"))},
        "/api/stream": {
            "get": _operation(
                "The state after every change, as server-sent events.",
                {"200": {"description": "One State an event.", "content": {"text/event-stream": {}}}},
            )
        },
        "/api/surface/{key}": {"get": _surface()},
        "/api/report.pdf": {"get": _file("The report.", "application/pdf")},
        "/api/package.zip": {"get": _file("The hand-off package of a case.", "application/zip")},
    }
    for path, (about, kind) in ASKS.items():
        body = {"required": True, "content": {"application/json": {"schema": _ref(kind)}}}
        paths[path] = {"post": {**_operation(about, _answers(bad=True)), "requestBody": body}}
    for path, about in PLAIN.items():
        paths[path] = {"post": _operation(about, _answers())}
    for path, about in UPLOADS.items():
        name = {"name": "name", "in": "query", "schema": {"type": "string"}}
        body = {"required": True, "content": {"application/octet-stream": {}}}
        paths[path] = {"put": {**_operation(about, _answers()), "parameters": [name], "requestBody": body}}
    return {
        "openapi": "3.1.0",
        "info": {"title": "stylobate: the page", "version": __version__},
        "paths": paths,
        "components": {"schemas": schemas["$defs"]},
    }


def _ref(kind: type) -> dict[str, str]:
    return {"$ref": f"#/components/schemas/{kind.__name__}"}


def _operation(summary: str, responses: dict[str, Any]) -> dict[str, Any]:
    return {"summary": summary, "responses": responses}


def _state(*statuses: str) -> dict[str, Any]:
    content = {"application/json": {"schema": _ref(State)}}
    return {status: {"description": "The state.", "content": content} for status in statuses}


def _answers(bad: bool = False) -> dict[str, Any]:
    refusal = {"application/json": {"schema": _ref(RefusalView)}}
    answers = {**_state("200", "202"), "409": {"description": "Refused, in one line.", "content": refusal}}
    if bad:
        for status, about in (("413", "Too large."), ("422", "Not what is described here.")):
            answers[status] = {"description": about, "content": refusal}
    return answers


def _file(summary: str, media: str) -> dict[str, Any]:
    refusal = {"application/json": {"schema": _ref(RefusalView)}}
    made = {"description": summary, "content": {media: {}}}
    return _operation(summary, {"200": made, "409": {"description": "Refused, in one line.", "content": refusal}})


def _surface() -> dict[str, Any]:
    key = {"name": "key", "in": "path", "required": True, "schema": {"type": "string"}}
    refusal = {"application/json": {"schema": _ref(RefusalView)}}
    found = {"description": "Raw arrays, see docs/use/page.md.", "content": {"application/octet-stream": {}}}
    responses = {"200": found, "404": {"description": "No such surface.", "content": refusal}}
    return {**_operation("A surface or its deviations.", responses), "parameters": [key]}
