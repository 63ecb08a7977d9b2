"""Names of files taken out of what other commands wrote: they hold names of people."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import PurePath
from typing import Any

PATH = re.compile(r"^\S*[/\\]|[/\\]\S*$")
SENTENCES = ("notes", "warnings")
SHORTEST = 3
"""Letters of a name that is looked for within sentences: a shorter one is no person's, and stands everywhere."""


def without_paths(content: bytes) -> bytes:
    """A JSON file in which every word that is a path is replaced by a number, as are names of results in its sentences.

    What is no JSON stays as it is.
    """
    try:
        values = json.loads(content)
    except (ValueError, RecursionError):
        return content
    known: dict[str, str] = {}
    sentences = {}
    if isinstance(values, dict):
        sentences = {key: values[key] for key in SENTENCES if key in values}
        for holder, key in ((values, "frame"), (values, "on"), (values.get("result"), "file")):
            if isinstance(holder, dict) and isinstance(holder.get(key), str):
                holder[key] = _number(holder[key], known)
        values = {key: None if key in sentences else value for key, value in values.items()}
    values = _replaced(values, known)
    if sentences:
        values |= _said(sentences, known)
    text = json.dumps(values, ensure_ascii=False, indent=1)
    return (text + "\n").encode() if known else content


def without_names(content: bytes, scan: str) -> bytes:
    """A result.json in which its scan is called `scan`, and other scans and results by numbers, in its sentences too.

    Raises ValueError where it is no JSON object.
    """
    values = json.loads(content)
    named = {str(values.setdefault("scan", {}).get("file", "")): scan}
    for number, entry in enumerate(values.get("joined_from", ()), start=1):
        named.setdefault(str(entry.get("scan", "")), f"scan {number}")
        entry["result"] = f"result {number}"
    if "pooled_from" in values:
        values["pooled_from"] = [f"result {number}" for number in range(1, len(values["pooled_from"]) + 1)]
    values["scan"]["file"] = scan
    words = sorted((name for name in named if len(name) >= SHORTEST), key=len, reverse=True)
    if words:
        found = re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, words))})(?!\w)")
        values = _each(values, lambda text: found.sub(lambda match: named[match.group()], text))
    return (json.dumps(values, indent=1, ensure_ascii=False) + "\n").encode()


def _each(value: Any, change: Callable[[str], str]) -> Any:
    """Every string that is not a key, changed."""
    if isinstance(value, dict):
        return {key: _each(item, change) for key, item in value.items()}
    if isinstance(value, list):
        return [_each(item, change) for item in value]
    return change(value) if isinstance(value, str) else value


def _number(name: str, known: dict[str, str]) -> str:
    return known.setdefault(name, f"file {len(known) + 1}")


def _replaced(value: Any, known: dict[str, str]) -> Any:
    if isinstance(value, dict):
        return {_replaced(key, known): _replaced(item, known) for key, item in value.items()}
    if isinstance(value, list):
        return [_replaced(item, known) for item in value]
    if isinstance(value, str) and (PATH.search(value) or value.endswith(".json")):
        return _number(value, known)
    return value


def _said(value: Any, known: dict[str, str]) -> Any:
    """Sentences with every known name, or the folder of one, and what else looks like a path replaced."""
    if isinstance(value, dict):
        return {key: _said(item, known) for key, item in value.items()}
    if isinstance(value, list):
        return [_said(item, known) for item in value]
    if not isinstance(value, str):
        return value
    names = {part: number for name, number in known.items() for part in _parts(name)}
    for name in sorted(names, key=len, reverse=True):
        if len(name) >= SHORTEST and re.search(r"[^\W\d]", name):
            value = re.sub(rf"(?<!\w){re.escape(name)}(?!\w)", names[name], value)
    return re.sub(r"\S*\w[/\\]\w\S*", lambda found: _number(found.group(), known), value)


def _parts(name: str) -> list[str]:
    """A name, and where it is a file of a folder, that folder: results go by either."""
    path = PurePath(name)
    return [name, str(path.parent)] if path.name.endswith(".json") and str(path.parent) != "." else [name]
