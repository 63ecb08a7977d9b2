"""A JSON file of our own → its checked table; every refusal one line with file, key, what and what to do."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from stylobate.core.complaints import dotted, must_be
from stylobate.core.errors import ResultError

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

MAX_BYTES = 64 * 2**20

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
        if not content.lstrip().startswith((b"{", b"[", b"\xef\xbb\xbf")):
            what = f"is not JSON: is it a scan? Name what 'stylobate {writer}' wrote"
            raise ResultError(f"{path}: {what}") from error
        reason = " ".join(str(error).split())[:120]
        raise ResultError(f"{path}: is not JSON ({reason}); {_remedy(writer)}") from error
    if not isinstance(values, dict):
        raise ResultError(f"{path}: is not a JSON object; {_remedy(writer)}")
    return values


def _remedy(writer: str) -> str:
    return f"write it again with 'stylobate {writer}'"


def _sentence(detail: ErrorDetails) -> str:
    return f"{dotted(detail['loc'])} is missing" if detail["type"] == "missing" else must_be(detail)
