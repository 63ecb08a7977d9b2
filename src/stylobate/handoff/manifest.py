"""manifest.json of a package: every file with its size and SHA-256, and the head of the case's log."""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, dataclass
from typing import Any

from stylobate.core.errors import PackageError

FORMAT = "stylobate-package"
VERSION = 1
MANIFEST, SIGNATURE = "manifest.json", "signature.json"


@dataclass(frozen=True)
class Entry:
    """One file."""

    bytes: int
    sha256: str


@dataclass(frozen=True)
class Manifest:
    """files: by path inside the package. log_head, log_lines: of the case's log, which it thereby anchors."""

    code: str
    created: str
    software: str
    log_head: str
    log_lines: int
    files: dict[str, Entry]


def entry_of(content: bytes) -> Entry:
    """Size and hash of a file."""
    return Entry(len(content), hashlib.sha256(content).hexdigest())


def manifest_bytes(manifest: Manifest) -> bytes:
    """The text of manifest.json."""
    values = {"format": FORMAT, "version": VERSION, **asdict(manifest)}
    return (json.dumps(values, indent=1, ensure_ascii=False) + "\n").encode()


def read_manifest(content: bytes, name: str) -> Manifest:
    """Read and check. Raises PackageError."""
    values = _object(content, name)
    if values.pop("format", None) != FORMAT:
        raise PackageError(f"{name}: is not a stylobate package; give the file that 'stylobate package' wrote")
    version = values.pop("version", None)
    if isinstance(version, int) and version > VERSION:
        raise PackageError(f"{name}: was written by a newer stylobate (version {version}); update this program")
    try:
        files = {path: _entry(entry) for path, entry in values.pop("files").items()}
        manifest = Manifest(**values, files=files)
        words = (manifest.code, manifest.created, manifest.software, manifest.log_head)
        if version != VERSION or not all(isinstance(word, str) for word in words):
            raise TypeError
    except (KeyError, TypeError, AttributeError):
        raise PackageError(f"{name}: its {MANIFEST} is not in order; ask for the package again") from None
    return manifest


def _entry(values: Any) -> Entry:
    entry = Entry(**values)
    if not (type(entry.bytes) is int and isinstance(entry.sha256, str)):
        raise TypeError
    return entry


def _object(content: bytes, name: str) -> dict[str, Any]:
    try:
        values = json.loads(content)
    except (ValueError, RecursionError):
        values = None
    if not isinstance(values, dict):
        raise PackageError(f"{name}: its {MANIFEST} is not JSON; ask for the package again")
    return values
