"""Arrays that take long to make, kept on disk for the next process.

A file that is damaged, or that other code made, is as good as none; one that cannot be written changes nothing but the
time. The oldest go where they are more than MOST_BYTES.
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import os
import tempfile
import zlib
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[Any]
MOST_BYTES = 256 << 20
MARK = 4  # bytes of the check sum at a file's end


def cache_root() -> Path | None:
    """$XDG_CACHE_HOME/stylobate, or the same below ~/.cache; None where there is no home."""
    base = Path(os.environ.get("XDG_CACHE_HOME", ""))
    try:
        return (base if base.is_absolute() else Path.home() / ".cache") / "stylobate"
    except RuntimeError:
        return None


def kept(
    kind: str, source: Sequence[Array], code: Sequence[str], make: Callable[[], Sequence[Array]]
) -> Sequence[Array]:
    """What `make` makes of the arrays `source`, from disk where it was made before by the same code.

    kind: of what, for the file's name. code: files of the modules that decide what is made.
    """
    path = place(kind, source, code)
    found = recalled(path)
    if found is not None:
        return found
    made = make()
    keep(path, made)
    return made


def place(kind: str, source: Sequence[Array], code: Sequence[str]) -> Path | None:
    """The file for what this code makes of these arrays; None where nothing can be kept."""
    folder = cache_root()
    if folder is None:
        return None
    try:
        return folder / "made" / f"{kind}-{_key(source, tuple(code))}"
    except OSError:  # the program does not lie in files of its own
        return None


def _key(source: Sequence[Array], code: tuple[str, ...]) -> str:
    digest = hashlib.sha256(_written(code))
    for array in source:
        digest.update(f"{array.dtype.str}{array.shape}".encode())
        digest.update(np.ascontiguousarray(array).data)
    return digest.hexdigest()[:40]


@cache
def _written(code: tuple[str, ...]) -> bytes:
    """What stands for the text of modules, NumPy's version included."""
    digest = hashlib.sha256(np.__version__.encode())
    for file in (*code, __file__):
        digest.update(Path(file).read_bytes())
    return digest.digest()


def recalled(path: Path | None) -> list[Array] | None:
    """The arrays of a file, None where it is not there or not whole."""
    if path is None:
        return None
    try:
        content = path.read_bytes()
        if len(content) < MARK or zlib.crc32(memoryview(content)[:-MARK]).to_bytes(MARK, "little") != content[-MARK:]:
            return None
        stream, arrays = io.BytesIO(content), []
        while stream.tell() < len(content) - MARK:
            arrays.append(np.load(stream, allow_pickle=False))
        return arrays
    except (OSError, ValueError):
        return None


def keep(path: Path | None, arrays: Sequence[Array]) -> None:
    """Write a file; another process never sees half of it."""
    if path is None:
        return
    stream = io.BytesIO()
    for array in arrays:
        np.save(stream, array, allow_pickle=False)
    stream.write(zlib.crc32(stream.getbuffer()).to_bytes(MARK, "little"))
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        _make_room(path.parent, stream.tell())
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=".new-")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(stream.getbuffer())
            Path(name).replace(path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise


def _make_room(folder: Path, size: int) -> None:
    """Remove the files written first, so that one of `size` bytes more keeps all within MOST_BYTES."""
    found = [(file.stat(), file) for file in folder.iterdir()]
    for state, file in sorted(found, key=lambda one: -one[0].st_mtime_ns):
        size += state.st_size
        if size > MOST_BYTES:
            file.unlink(missing_ok=True)
