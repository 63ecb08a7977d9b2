"""Writes web/openapi.json: the description of the page's API that its TypeScript types are made from."""

from __future__ import annotations

import json
from pathlib import Path

TARGET = Path(__file__).parents[1] / "web" / "openapi.json"


def current() -> str:
    """The description as text."""
    from stylobate.app.web.openapi import description

    return json.dumps(description(), indent=1, sort_keys=True) + "\n"


if __name__ == "__main__":
    TARGET.write_text(current(), encoding="utf-8")
