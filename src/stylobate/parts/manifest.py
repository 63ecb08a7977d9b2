"""parts.toml → its checked tables, or every fault in it at once, each with its key and a remedy."""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from stylobate.parts.notes import Note, fault
from stylobate.parts.source import PARTS_TOML, FileFaultError, Source
from stylobate.parts.wording import SHOWN_VALUE, cut, entry_key, printable, words_of

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

    from stylobate.parts.schema import PartsTable

MAX_TOML_BYTES = 8 * 2**20


@dataclass(frozen=True)
class Manifest:
    """parts.toml as read. content: its bytes. notes: the faults in it.

    table: None where nothing of it can be used. Where there are faults it has other values in their places, for
    finding further faults only; `about_faulty` tells notes that such a value would cause.
    """

    table: PartsTable | None
    content: bytes
    notes: tuple[Note, ...]

    def about_faulty(self, note: Note) -> bool:
        """Whether a later note is on a value that is faulty itself."""
        return any(note.key == known.key or note.key.startswith(f"{known.key} ") for known in self.notes)


def read_manifest(source: Source) -> Manifest:
    """Read and check parts.toml."""
    try:
        content = source.read(PARTS_TOML)
    except FileFaultError as wrong:
        return Manifest(None, b"", (fault(PARTS_TOML, "", wrong.what, wrong.remedy),))
    values, notes = _parse(content)
    if values is not None:
        table, notes = _validate(values)
        return Manifest(table, content, tuple(notes))
    return Manifest(None, content, tuple(notes))


def _parse(content: bytes) -> tuple[dict[str, Any] | None, list[Note]]:
    if len(content) > MAX_TOML_BYTES:
        return None, [fault(PARTS_TOML, "", f"is {len(content) >> 20} MB large", "keep only what describes the parts")]
    try:
        return tomllib.loads(content.decode("utf-8-sig")), []
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        return None, [fault(PARTS_TOML, f"line {line}", "is not UTF-8 text", "save the file as UTF-8")]
    except (tomllib.TOMLDecodeError, ValueError) as error:
        reason = " ".join(str(error).split())
        return None, [fault(PARTS_TOML, "", f"is not TOML: {cut(reason, 160)}", "correct that line")]
    except RecursionError:
        return None, [fault(PARTS_TOML, "", "is nested too deeply", "write it as the documentation shows")]


def _validate(values: dict[str, Any]) -> tuple[PartsTable | None, list[Note]]:
    from pydantic import ValidationError

    from stylobate.parts.schema import PartsTable

    try:
        return PartsTable.model_validate(values), []
    except ValidationError as error:
        from stylobate.parts.repair import repaired

        details = error.errors(include_url=False)
        notes = [_note(detail, values, PartsTable) for detail in details]
        table = repaired(values, [(detail["type"], detail["loc"]) for detail in details])
        return table, list(dict.fromkeys(notes))


def _key(place: Sequence[int | str], values: dict[str, Any]) -> str:
    """The location of a fault, with the id of the part it is in."""
    if len(place) < 2 or not isinstance(place[1], int):
        return _dotted(place)
    entries = values.get(str(place[0]))
    entry = entries[place[1]] if isinstance(entries, list) and place[1] < len(entries) else None
    identifier = entry.get("id") if isinstance(entry, dict) else None
    return entry_key(str(place[0]), place[1], identifier if isinstance(identifier, str) else None, _dotted(place[2:]))


def _dotted(place: Sequence[int | str]) -> str:
    text = ""
    for step in place:
        if isinstance(step, int):
            text += f"[{step + 1}]"
        else:
            text += ("." if text else "") + cut(printable(step), SHOWN_VALUE)
    return text


def _note(detail: ErrorDetails, values: dict[str, Any], root: type[BaseModel]) -> Note:
    place = [step for k, step in enumerate(detail["loc"]) if not _is_form(detail["loc"], k)]
    holder = place[:-1] if not place or isinstance(place[-1], str) else place[:-2]
    model = _model_at(holder, root)
    name = str(place[len(holder)]) if len(holder) < len(place) else ""
    what, remedy = words_of(detail, name, model)
    return fault(PARTS_TOML, _key(place, values), what, remedy)


def _is_form(place: Sequence[int | str], k: int) -> bool:
    """Whether a step only says which form of scan_region was tried."""
    return k == 3 and place[2] == "scan_region"


def _model_at(place: Sequence[int | str], root: type[BaseModel]) -> type[BaseModel] | None:
    """The table that holds the key at the end of `place`."""
    from stylobate.parts.schema import TABLES, Above

    if not place:
        return root
    if len(place) == 3 and place[2] == "scan_region":
        return Above
    return TABLES.get(str(place[0])) if len(place) == 2 else None
