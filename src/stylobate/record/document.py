"""A JSON file of our own → its checked table; every refusal one line with file, key, what and what to do."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from stylobate.core.errors import ResultError

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

MAX_BYTES = 64 * 2**20
SHOWN_VALUE = 40

Model = TypeVar("Model", bound="BaseModel")


def read_document(path: Path, model: type[Model], file_format: str, version: int, writer: str) -> Model:
    """Read and check one JSON file. writer: the command that writes such files, for the remedy.

    Raises ResultError.
    """
    from pydantic import ValidationError

    content = _content(path, writer)
    head = _head(path, content, writer)
    if head.get("format") != file_format:
        raise ResultError(f"{path}: is not a {file_format} file; name one that 'stylobate {writer}' wrote")
    stated = head.get("version")
    if isinstance(stated, int) and not isinstance(stated, bool) and stated > version:
        raise ResultError(
            f"{path}: was written by a newer stylobate (version {stated} of the format, known here: {version}); "
            "update this program"
        )
    try:
        return model.model_validate_json(content)
    except ValidationError as error:
        detail = error.errors(include_url=False)[0]
        raise ResultError(f"{path}: {_sentence(detail)}; {_remedy(writer)}") from error


def _content(path: Path, writer: str) -> bytes:
    try:
        if path.stat().st_size > MAX_BYTES:
            raise ResultError(f"{path}: is larger than {MAX_BYTES >> 20} MB, which no such file is; {_remedy(writer)}")
        return path.read_bytes()
    except OSError as error:
        cause = (error.strerror or str(error)).strip().lower()
        raise ResultError(f"{path}: {cause}; name a file that 'stylobate {writer}' wrote") from error


def _head(path: Path, content: bytes, writer: str) -> dict[str, object]:
    try:
        values = json.loads(content)
    except (ValueError, RecursionError) as error:
        reason = " ".join(str(error).split())[:120]
        raise ResultError(f"{path}: is not JSON ({reason}); {_remedy(writer)}") from error
    if not isinstance(values, dict):
        raise ResultError(f"{path}: is not a JSON object; {_remedy(writer)}")
    return values


def _remedy(writer: str) -> str:
    return f"write it again with 'stylobate {writer}'"


def _sentence(detail: ErrorDetails) -> str:
    key = dotted(detail["loc"])
    if detail["type"] == "missing":
        return f"{key} is missing"
    must = detail["msg"].replace("Input should", "must", 1)
    return f"{key} {must[:1].lower()}{must[1:]}, not {_shown(detail['input'])}"


def dotted(place: Sequence[int | str]) -> str:
    """A key for people: sites[2].covariance[1][1]. Entries count from 1."""
    text = ""
    for step in place:
        text += f"[{step + 1}]" if isinstance(step, int) else f"{'.' if text else ''}{step}"
    return text


def _shown(value: object) -> str:
    text = json.dumps(value, default=str)
    return text if len(text) <= SHOWN_VALUE else text[: SHOWN_VALUE - 1] + "…"
