"""A line of JSON for every method and scene, so that a long run can be cut into pieces, resumed and joined (`cat`)."""

from __future__ import annotations

import contextlib
import json
from pathlib import Path

from bench.judge import Json

Key = tuple[str, str, str]


def key_of(record: Json) -> Key:
    """(table, scene, method)."""
    return record["table"], record["scene"], record["method"]


class Store:
    """Records in memory and, where a file is given, on disk: each is written as soon as it is known."""

    def __init__(self, path: Path | None) -> None:
        self.path = path
        self.records: dict[Key, Json] = {}
        if path is not None and path.exists():
            text = path.read_text()
            for line in text.splitlines():
                with contextlib.suppress(json.JSONDecodeError):  # a line cut short by an interruption is run again
                    record = json.loads(line)
                    self.records[key_of(record)] = record
            if text and not text.endswith("\n"):
                path.write_text(text + "\n")

    def add(self, record: Json) -> None:
        """Keep a record, on disk first."""
        if self.path is not None:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            with self.path.open("a") as file:
                file.write(json.dumps(record) + "\n")
        self.records[key_of(record)] = record

    def of(self, table: str) -> list[Json]:
        """The records of one table."""
        return [record for record in self.records.values() if record["table"] == table]
