"""A part into a parts folder: its surface and its entry in parts.toml, checked before anything is written."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from stylobate.core import durable
from stylobate.core.errors import OutputError, PartsError, UsageError
from stylobate.parts.files import Depth
from stylobate.parts.load import read_folder
from stylobate.parts.model import Connection, PartsFolder
from stylobate.parts.source import PARTS_TOML, FolderSource, Source, why_unsafe

KINDS = {
    "scan-body": ("scan_body", "scan-bodies", "seats_on"),
    "abutment": ("multi_unit_abutment", "abutments", "seats_on"),
    "base": ("titanium_base", "bases", "seats_on"),
    "analog": ("analog", "analogs", "connection"),
}
"""By kind: table of parts.toml, folder of its surfaces, key of the connection."""

Value = str | float | int | bool | list[float] | dict[str, float]


class _With(Source):
    """A folder as it would be with some files more."""

    def __init__(self, under: Source, added: Mapping[str, bytes]) -> None:
        super().__init__(under.label)
        self._under = under
        self._added = added

    def read(self, name: str) -> bytes:
        """The content of a file. Raises FileFaultError."""
        return self._added[name] if name in self._added else self._under.read(name)


def connection_of(folder: PartsFolder, identifier: str) -> Connection:
    """The connection of that id. Raises UsageError."""
    try:
        return folder.connection(identifier)
    except KeyError:
        known = ", ".join(connection.id for connection in folder.connections)
        raise UsageError(f"--seats-on {identifier}: the parts folder has no such connection; it has {known}.") from None


def surface_name(kind: str, identifier: str) -> str:
    """Where the surface of a part goes. Raises UsageError."""
    name = f"{KINDS[kind][1]}/{identifier}.stl"
    if why_unsafe(name) or "/" in identifier:
        raise UsageError(f"--id '{identifier}': use letters, digits, '.', '_', '+' or '-'.")
    return name


def entry(kind: str, identifier: str, connection: str, values: Mapping[str, Value]) -> str:
    """The text of an entry in parts.toml."""
    table, _, key = KINDS[kind]
    lines = {"id": identifier, key: connection, "surface": surface_name(kind, identifier), **values}
    return f"\n[[{table}]]\n" + "".join(f"{name} = {_toml(value)}\n" for name, value in lines.items())


def _toml(value: Value) -> str:
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {_toml(inner)}" for key, inner in value.items()) + " }"
    return json.dumps(value, ensure_ascii=False)


def value_of(text: str) -> tuple[str, Value]:
    """KEY=VALUE → key and value: a number, true, false, [low, high] or text. Raises UsageError."""
    key, equals, rest = text.partition("=")
    key, rest = key.strip(), rest.strip()
    if not equals or not key.isidentifier() or not rest:
        raise UsageError(f"--set '{text}' is not KEY=VALUE; write it like --set gingival_height=1.0.")
    try:
        value = json.loads(rest)
    except ValueError:
        value = rest
    plain = isinstance(value, str | int | float | bool)
    if not plain and not (isinstance(value, list) and all(isinstance(one, int | float) for one in value)):
        raise UsageError(f"--set '{text}': write a number, true, false, text, or two numbers like [10.0, 15.0].")
    return key, value


def add_part(root: Path, kind: str, identifier: str, text: str, surface: bytes, picture: bytes) -> Path:
    """Write a part's surface, picture and entry into the folder at `root`; returns the path of the surface.

    All is checked as it would stand first. parts.toml changes last and in one step, so that a failure leaves the folder
    as it was. Raises PartsError, UsageError or OutputError.
    """
    name = surface_name(kind, identifier)
    target = root / name
    if target.exists():
        raise UsageError(f"{target}: is there already; choose another --id, or remove it and its entry first.")
    source = FolderSource(root)
    content = source.read(PARTS_TOML).rstrip() + b"\n" + text.encode()
    folder, notes = read_folder(_With(source, {PARTS_TOML: content, name: surface}), Depth.FAULTS)
    faults = [note.line() for note in notes if note.blocks]
    if faults or folder is None:
        raise PartsError(f"{root}: with {identifier} added: {faults[0] if faults else 'cannot be read'}", tuple(faults))
    drawn = target.with_suffix(".png")
    made: list[Path] = []
    try:
        target.parent.mkdir(exist_ok=True)
        for path, data in ((target, surface), (drawn, picture)):
            made.append(path)
            path.write_bytes(data)
        durable.write(root / PARTS_TOML, content)
    except OSError as error:
        for path in made:
            path.unlink(missing_ok=True)
        cause = (error.strerror or str(error)).lower()
        raise OutputError(f"{root}: cannot write there: {cause}; nothing was changed") from error
    return target
