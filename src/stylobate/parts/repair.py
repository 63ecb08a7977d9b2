"""A faulty parts.toml, its faulty values replaced, so that the rest of it and its files are checked as well.

What stands in for a faulty value is never used for anything but finding further faults, and notes on it are dropped.
"""

from __future__ import annotations

import copy
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from pydantic import BaseModel, ValidationError

from stylobate.parts.references import REFERENCES
from stylobate.parts.schema import TABLES, PartsTable

Place = Sequence[int | str]
NO_NAME = "(no name)"
NO_FILE = ".no-such-file"
"""Stands for a surface that is not named, so that it is found missing and nothing is concluded from it."""


def repaired(values: dict[str, Any], faults: Iterable[tuple[str, Place]]) -> PartsTable | None:
    """The tables with every fault (pydantic's type of it, and where) replaced; None where that does not do."""
    try:
        values = copy.deepcopy(values)
        for kind, place in faults:
            _replace(values, kind, place)
        return PartsTable.model_validate(values)
    except (ValidationError, RecursionError, KeyError, IndexError, TypeError):
        return None


def _replace(values: dict[str, Any], fault: str, place: Place) -> None:
    name = str(place[0])
    if len(place) == 1:
        if fault == "extra_forbidden":
            del values[name]
        elif name in TABLES:
            values[name] = [_entry(values, name, 0)] if name == "connection" else []
        else:
            values[name] = NO_NAME if name == "name" else _example(PartsTable, name)
        return
    index = int(place[1])
    if len(place) == 2:
        values[name][index] = _entry(values, name, index)
    elif fault == "extra_forbidden" and len(place) == 3:
        del values[name][index][place[2]]
    else:
        values[name][index][place[2]] = _value(values, name, index, str(place[2]))


def _entry(values: dict[str, Any], kind: str, index: int) -> dict[str, Any]:
    keys = [key for key, field in TABLES[kind].model_fields.items() if field.is_required()]
    return {key: _value(values, kind, index, key) for key in keys}


def _value(values: dict[str, Any], kind: str, index: int, key: str) -> Any:
    if key == "id":
        return f"{kind}-{index + 1}"
    if key in REFERENCES.get(kind, ()):
        return next(_known(values), "alder")
    if key == "index_order":
        return 0
    if key == "surface":
        return NO_FILE
    return _example(TABLES[kind], key)


def _known(values: dict[str, Any]) -> Iterator[str]:
    entries = values.get("connection")
    for entry in entries if isinstance(entries, list) else []:
        if isinstance(entry, dict) and isinstance(entry.get("id"), str):
            yield entry["id"]


def _example(model: type[BaseModel], key: str) -> Any:
    examples = model.model_fields[key].examples
    return copy.copy(examples[0]) if examples else None
