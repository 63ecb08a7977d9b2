"""JSON as people read it: what our files of results are written with."""

from __future__ import annotations

import json
from typing import Any


def laid_out(document: Any) -> str:
    """The text of a JSON file: objects and lists indented, but a list of plain values on one line.

    Raises ValueError where a number is not finite.
    """
    return _laid_out(document, "") + "\n"


def _laid_out(value: Any, indent: str) -> str:
    deeper = indent + "  "
    if isinstance(value, dict) and value:
        body = (f"{deeper}{json.dumps(key)}: {_laid_out(item, deeper)}" for key, item in value.items())
        return "{\n" + ",\n".join(body) + f"\n{indent}}}"
    if isinstance(value, list) and any(isinstance(item, dict | list) for item in value):
        return "[\n" + ",\n".join(deeper + _laid_out(item, deeper) for item in value) + f"\n{indent}]"
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
