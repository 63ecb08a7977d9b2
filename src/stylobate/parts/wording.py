"""A fault of parts.toml in plain words: where it stands, what is wrong, what to write instead."""

from __future__ import annotations

import difflib
import json
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

SHOWN_VALUE = 60


def entry_key(kind: str, index: int, identifier: str | None, key: str = "") -> str:
    """Where something stands, for people: scan_body[1] "alder-tall" torque_ncm. Entries count from 1."""
    words = [f"{kind}[{index + 1}]"]
    if identifier is not None:
        words.append(f'"{cut(printable(identifier), SHOWN_VALUE)}"')
    return " ".join([*words, key] if key else words)


def words_of(detail: ErrorDetails, name: str, model: type[BaseModel] | None) -> tuple[str, str]:
    """What is wrong and what to do, in plain words."""
    kind, context = detail["type"], detail.get("ctx", {})
    example = _example(name, model)
    if kind == "missing":
        return "is missing", f"add it, like {example}" if example else f"add [[{name}]]"
    if kind == "extra_forbidden":
        return "unknown key", _closest(name, model)
    if name == "scan_region" or kind.startswith("union_tag"):
        return f"not a scan region: {_shown(detail['input'])}", 'write "whole", { above = 4.0 } or { surface = "…" }'
    if name == "id" or kind == "string_pattern_mismatch":
        return (
            f"not a name: {_shown(detail['input'])}",
            "use up to 64 letters, digits, '.', '_', '+' or '-', starting with a letter or digit",
        )
    if name == "version":
        return f"version {_shown(detail['input'])} is not known here", "write version = 1, or update this program"
    if kind == "literal_error":
        return f"{_shown(detail['input'])} is not known here", f"write {context.get('expected', example)}"
    if kind == "unsafe_file":
        return detail["msg"], 'name a file inside the folder, like surface = "scan-bodies/alder-tall.stl"'
    if kind == "torque_order":
        return detail["msg"], f"write the least first, like {example}"
    return f"{_expected(kind, detail['msg'], context)}, not {_shown(detail['input'])}", (
        f"write it like {example}" if example else "correct the value"
    )


def _expected(kind: str, message: str, context: dict[str, Any]) -> str:
    bounds = {
        "greater_than": ("must be above", "gt"),
        "greater_than_equal": ("must be at least", "ge"),
        "less_than": ("must be below", "lt"),
        "less_than_equal": ("must be at most", "le"),
    }
    if kind in bounds:
        words, bound = bounds[kind]
        return f"{words} {context.get(bound)}"
    types = {
        "float_type": "must be a number",
        "finite_number": "must be a finite number",
        "int_type": "must be a whole number",
        "int_from_float": "must be a whole number",
        "bool_type": "must be true or false",
        "string_type": "must be text in quotes",
        "list_type": "must be a list in square brackets",
        "model_type": "must be a table",
        "model_attributes_type": "must be a table",
        "too_short": f"must have at least {context.get('min_length')} entries",
        "too_long": f"must have at most {context.get('max_length')} entries",
    }
    return types.get(kind, message[:1].lower() + message[1:])


def _example(name: str, model: type[BaseModel] | None) -> str:
    field = model.model_fields.get(name) if model is not None else None
    if field is None or not field.examples:
        return ""
    return f"{name} = {json.dumps(field.examples[0])}"


def _closest(name: str, model: type[BaseModel] | None) -> str:
    known = list(model.model_fields) if model is not None else []
    close = difflib.get_close_matches(name, known, n=1)
    if close:
        return f'did you mean "{close[0]}"?'
    return f"remove it; known here: {', '.join(known)}" if known else "remove it"


def _shown(value: object) -> str:
    try:
        text = json.dumps(value, ensure_ascii=False)
    except (TypeError, ValueError, RecursionError):
        text = type(value).__name__
    return cut(printable(text), SHOWN_VALUE)


def printable(text: str) -> str:
    """The text with what a terminal cannot show escaped."""
    return text if text.isprintable() else ascii(text)[1:-1]


def cut(text: str, length: int) -> str:
    """The text, no longer than asked."""
    return text if len(text) <= length else text[: length - 1] + "…"
