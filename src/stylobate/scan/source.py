"""From a path or bytes to the plain content of a mesh file: sizes bounded, gzip unpacked, hash taken beside."""

from __future__ import annotations

import errno
import hashlib
import os
import stat
import threading
import zlib
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from stylobate.core.errors import ScanError
from stylobate.core.types import ByteArray

MAX_BYTES = 1 << 31
"""Largest content read, packed or unpacked: 2 GiB, a binary STL of 42 million triangles."""
GZIP_RATIO = 100
"""Largest ratio of unpacked to packed bytes; meshes written as text reach about 10."""
GZIP_FREE_BYTES = 1 << 24
"""Unpacked bytes (16 MiB) up to which the ratio is not looked at."""
_GZIP_MAGIC = b"\x1f\x8b"
_CHUNK = 1 << 20
_READ_BYTES = 1 << 30
_LONGEST_NAME = 200


def shown(name: str) -> str:
    """A file name as it can stand in one line of a message: no line ends, no broken characters, its end if too long."""
    clean = "".join(c if c.isprintable() else c.encode("unicode_escape", "backslashreplace").decode() for c in name)
    return clean if len(clean) <= _LONGEST_NAME else "…" + clean[-_LONGEST_NAME:]


class Digest:
    """SHA-256 of a buffer, computed in a thread of its own while the buffer is being read."""

    def __init__(self, data: ByteArray) -> None:
        self._hash = hashlib.sha256()
        self._thread = threading.Thread(target=self._hash.update, args=(data.data,), daemon=True)
        self._thread.start()

    def hex(self) -> str:
        """The digest as 64 hexadecimal digits, once it is ready."""
        self._thread.join()
        return self._hash.hexdigest()


@dataclass(frozen=True)
class Content:
    """What a mesh file holds. data: (n,) uint8, unpacked. packed: it was gzipped."""

    data: ByteArray
    packed: bool


def load(path: Path) -> ByteArray:
    """The bytes of a file as stored, (n,) uint8. Raises ScanError: missing, directory, no permission, too large."""
    name = shown(str(path))
    try:
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except ValueError:
        raise ScanError(f"{name}: this is not a possible file name; check the path") from None
    except OSError as fault:
        raise ScanError(f"{name}: {_reason(fault)}") from None
    try:
        data = _read_all(descriptor, name)
    except OSError as fault:
        raise ScanError(f"{name}: {_reason(fault)}") from None
    finally:
        os.close(descriptor)
    data.flags.writeable = False
    return data


def _read_all(descriptor: int, name: str) -> ByteArray:
    """The whole of an open regular file. Raises ScanError and OSError."""
    status = os.fstat(descriptor)
    if stat.S_ISDIR(status.st_mode):
        raise ScanError(f"{name}: this is a folder; give the scan file inside it")
    if not stat.S_ISREG(status.st_mode):
        raise ScanError(f"{name}: this is not a regular file; save the scan to disk first")
    _check_size(status.st_size, name)
    data = np.empty(status.st_size, dtype=np.uint8)
    done = 0
    with open(descriptor, "rb", buffering=0, closefd=False) as file:
        while done < len(data):
            step = file.readinto(data.data[done : done + _READ_BYTES])
            if not step:
                raise ScanError(f"{name}: became shorter while it was read; try again when it is completely written")
            done += step
    return data


def unpack(stored: ByteArray, name: str) -> Content:
    """The content of a file, unpacked if it is gzip (decided by its first bytes). Raises ScanError."""
    if bytes(stored[:2]) != _GZIP_MAGIC:
        _check_size(len(stored), name)
        return Content(stored, packed=False)
    limit = min(MAX_BYTES, max(GZIP_FREE_BYTES, GZIP_RATIO * len(stored)))
    try:
        data = _inflate(stored.data, limit)
    except zlib.error:
        raise ScanError(f"{name}: the gzip data is damaged; copy or export the file again") from None
    except EOFError:
        raise ScanError(f"{name}: the gzip data ends too early; copy or export the file again") from None
    except OverflowError:
        raise ScanError(
            f"{name}: unpacks to more than {limit / 2**20:.0f} MiB from {len(stored)} bytes, which no scan does; "
            "unpack it yourself if you trust it"
        ) from None
    return Content(data, packed=True)


def _inflate(stored: memoryview, limit: int) -> ByteArray:
    """Unpack all gzip members (RFC 1952). Raises zlib.error, EOFError, OverflowError (above `limit` bytes)."""
    pieces: list[bytes] = []
    total, at = 0, 0
    while at < len(stored):
        if not any(stored[at : at + _CHUNK]) and not any(stored[at:]):
            break
        member = zlib.decompressobj(wbits=31)
        while not member.eof:
            feed = member.unconsumed_tail or stored[at : at + _CHUNK]
            if not member.unconsumed_tail:
                at += len(feed)
            piece = member.decompress(feed, _CHUNK)
            if not feed and not piece:
                raise EOFError
            total += len(piece)
            if total > limit:
                raise OverflowError
            if piece:
                pieces.append(piece)
        at -= len(member.unused_data)
    return np.frombuffer(b"".join(pieces), dtype=np.uint8)


def _check_size(size: int, name: str) -> None:
    if size == 0:
        raise ScanError(f"{name}: the file is empty; export the scan again")
    if size > MAX_BYTES:
        raise ScanError(f"{name}: larger than {MAX_BYTES >> 30} GiB, which no scan is; export it with fewer triangles")


def _reason(fault: OSError) -> str:
    if fault.errno == errno.ENOENT:
        return "no such file; check the path"
    if fault.errno in (errno.EACCES, errno.EPERM):
        return "no permission to read it; change its permissions or copy it to a folder of yours"
    if fault.errno == errno.ENOTDIR:
        return "a part of this path is a file, not a folder; check the path"
    return f"cannot be read ({shown(fault.strerror or 'unknown reason')}); check the path and the disk"
