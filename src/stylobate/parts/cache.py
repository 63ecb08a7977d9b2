"""What a check of a parts folder found, kept by the hash of its content, so that it is checked once.

Kept are only folders without a fault. A cache that cannot be read or written changes nothing but the time.
"""

from __future__ import annotations

import contextlib
import json
import os
import tempfile
from pathlib import Path

from stylobate.core.shelf import cache_root

CHECKS = 1
"""Number of the checks; raised with any change of theirs, so that older entries are not used."""
MOST_BYTES = 1 << 20


def cache_folder() -> Path | None:
    """Where the checks of parts folders are kept; None where there is no home."""
    root = cache_root()
    return None if root is None else root / "parts"


def recall(sha256: str) -> tuple[tuple[str, ...], ...] | None:
    """Look-alikes of a folder that was checked before without a fault, or None."""
    folder = cache_folder()
    if folder is None:
        return None
    try:
        with _file(folder, sha256).open("rb") as stream:
            entry = json.loads(stream.read(MOST_BYTES))
        if entry["checks"] != CHECKS or entry["sha256"] != sha256:
            return None
        groups = entry["look_alikes"]
        if not all(isinstance(name, str) for group in groups for name in group):
            return None
        return tuple(tuple(group) for group in groups)
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None


def keep(sha256: str, look_alikes: tuple[tuple[str, ...], ...]) -> None:
    """Note that the folder of that hash has no fault, and its look-alikes; another process never sees half of it."""
    folder = cache_folder()
    if folder is None:
        return
    entry = json.dumps({"checks": CHECKS, "sha256": sha256, "look_alikes": look_alikes})
    with contextlib.suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=folder, prefix=".new-")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as stream:
                stream.write(entry)
            Path(name).replace(_file(folder, sha256))
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise


def _file(folder: Path, sha256: str) -> Path:
    return folder / f"{sha256}.json"
