"""A parts folder that was found without a fault, kept by its content, so that it is checked and put together once."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np

from stylobate.core import shelf
from stylobate.core.surface import Surface
from stylobate.parts.files import Depth, PartFiles
from stylobate.parts.model import Analog, Connection, Implant, MultiUnitAbutment, PartsFolder, ScanBody, TitaniumBase
from stylobate.parts.source import PARTS_TOML, FileFaultError, Source

MADE_OF = {
    one.__name__: one
    for one in (PartsFolder, Connection, Implant, ScanBody, MultiUnitAbutment, TitaniumBase, Analog, Surface)
}
ARRAY = "array"


def recall(source: Source) -> PartsFolder | None:
    """The folder as it was put together before from the same bytes by the same code, or None."""
    try:
        content = source.read(PARTS_TOML)
    except FileFaultError:
        return None
    found = shelf.recalled(_place(content))
    if found is None:
        return None
    kept = json.loads(found[0].tobytes())
    files = PartFiles(source, {PARTS_TOML: content}, Depth.FAULTS)
    if not files.gather(kept["files"]) or files.sha256() != kept["folder"]["sha256"]:
        return None
    folder = _whole(kept["folder"], found)
    return folder if isinstance(folder, PartsFolder) else None


def keep(content: bytes, files: Iterable[str], folder: PartsFolder) -> None:
    """Keep a folder without a fault. content: of parts.toml; files: names of all that it refers to."""
    arrays: list[shelf.Array] = [np.zeros(0, np.uint8)]
    kept = {"files": sorted(set(files)), "folder": _plain(folder, arrays)}
    arrays[0] = np.frombuffer(json.dumps(kept).encode(), np.uint8)
    shelf.keep(_place(content), arrays)


def _place(content: bytes) -> Path | None:
    package = Path(__file__).parents[1]
    code = sorted(str(file) for folder in ("core", "scan", "parts") for file in (package / folder).glob("*.py"))
    return shelf.place("parts", [np.frombuffer(hashlib.sha256(content).digest(), np.uint8)], code)


def _plain(value: Any, arrays: list[shelf.Array]) -> Any:
    """What JSON can hold; arrays are put into `arrays`."""
    if is_dataclass(value):
        return {"": type(value).__name__} | {f.name: _plain(getattr(value, f.name), arrays) for f in fields(value)}
    if isinstance(value, tuple):
        return [_plain(one, arrays) for one in value]
    if isinstance(value, np.ndarray):
        known = next((k for k, array in enumerate(arrays) if array is value), len(arrays))
        arrays += [value] * (known == len(arrays))
        return {ARRAY: known}
    return value


def _whole(value: Any, arrays: list[shelf.Array]) -> Any:
    """The value that `_plain` was given."""
    if isinstance(value, list):
        return tuple(_whole(one, arrays) for one in value)
    if isinstance(value, dict):
        if ARRAY in value:
            return arrays[value[ARRAY]]
        made = MADE_OF[value[""]](**{name: _whole(one, arrays) for name, one in value.items() if name})
        if isinstance(made, ScanBody) and made.region.vertices is made.surface.vertices:
            return replace(made, region=made.surface)
        return made
    return value
