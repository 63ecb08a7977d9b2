"""parts.toml → its checked tables, or every fault in it at once, each with its key and a remedy."""

from __future__ import annotations

import difflib
import json
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from stylobate.parts.notes import Note, fault
from stylobate.parts.source import PARTS_TOML, FileFaultError, Source

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic_core import ErrorDetails

    from stylobate.parts.schema import PartsTable

MAX_TOML_BYTES = 8 * 2**20
SHOWN_VALUE = 60


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
        return None, [fault(PARTS_TOML, "", f"is not TOML: {_cut(reason, 160)}", "correct that line")]
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


def entry_key(kind: str, index: int, identifier: str | None, key: str = "") -> str:
    """Where something stands, for people: scan_body[1] "alder-tall" torque_ncm. Entries count from 1."""
    words = [f"{kind}[{index + 1}]"]
    if identifier is not None:
        words.append(f'"{_cut(_printable(identifier), SHOWN_VALUE)}"')
    return " ".join([*words, key] if key else words)


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
            text += ("." if text else "") + _cut(_printable(step), SHOWN_VALUE)
    return text


def _note(detail: ErrorDetails, values: dict[str, Any], root: type[BaseModel]) -> Note:
    place = [step for k, step in enumerate(detail["loc"]) if not _is_form(detail["loc"], k)]
    holder = place[:-1] if not place or isinstance(place[-1], str) else place[:-2]
    model = _model_at(holder, root)
    name = str(place[len(holder)]) if len(holder) < len(place) else ""
    what, remedy = _words(detail, name, model)
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


def _words(detail: ErrorDetails, name: str, model: type[BaseModel] | None) -> tuple[str, str]:
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
    return _cut(_printable(text), SHOWN_VALUE)


def _printable(text: str) -> str:
    return text if text.isprintable() else ascii(text)[1:-1]


def _cut(text: str, length: int) -> str:
    return text if len(text) <= length else text[: length - 1] + "…"
