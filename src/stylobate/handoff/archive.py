"""A package as one file: written the same way each time, and looked at before anything in it is trusted.

The zip's own comment holds the SHA-256 of every byte before it, so that no byte of the file can change unseen; the
manifest holds that of every file in it, so that none can be missing, added or exchanged.
"""

from __future__ import annotations

import hashlib
import io
import re
import stat
import struct
import zipfile
import zlib
from collections.abc import Mapping
from pathlib import Path

from stylobate.core.errors import PackageError
from stylobate.handoff.manifest import MANIFEST, SIGNATURE, Manifest, read_manifest
from stylobate.parts.source import why_unsafe

MAX_FILES = 20_000
MAX_PACKED = 4 * 2**30
MAX_UNPACKED = 12 * 2**30
MAX_FILE = 2 * 2**30
MAX_RATIO = 200
RATIO_COUNTS_FROM = 2**20
"""Limits far beyond a real package (a full arch of 5 million triangles unpacks to about 1.5 GB)."""
DATE = (1980, 1, 1, 0, 0, 0)
LEVEL = 1
"""Deflate level: triangle files gain little from a higher one, and it costs seconds."""
PACKED_ALREADY = (".pdf", ".png", ".html")
_SEAL = re.compile(rb"sha256 ([0-9a-f]{64})")
_SEAL_BYTES = len(b"sha256 ") + 64


def zipped(files: Mapping[str, bytes]) -> bytes:
    """The package: same files, same bytes."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED, compresslevel=LEVEL) as archive:
        for name, content in files.items():
            info = zipfile.ZipInfo(name, DATE)
            info.external_attr = (stat.S_IFREG | 0o644) << 16
            info.create_system = 3
            kind = zipfile.ZIP_STORED if name.endswith(PACKED_ALREADY) else zipfile.ZIP_DEFLATED
            archive.writestr(info, content, kind, LEVEL)
        archive.comment = b"\0" * _SEAL_BYTES
    whole = buffer.getbuffer()[:-_SEAL_BYTES]
    seal = hashlib.sha256(whole).hexdigest()
    return bytes(whole) + b"sha256 " + seal.encode()


class Package:
    """A package that is whole: every byte checked. Raises PackageError where it is not.

    manifest_bytes, signature: as in the file; signature None where there is none.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._content = _sealed(path)
        try:
            self._archive = zipfile.ZipFile(io.BytesIO(self._content))
        except (zipfile.BadZipFile, ValueError, NotImplementedError, struct.error) as error:
            raise PackageError(f"{path}: is not a zip that can be opened ({error}); ask for it again") from None
        self._members = _members(path, self._archive.infolist())
        if MANIFEST not in self._members:
            raise PackageError(f"{path}: has no {MANIFEST}; give the file that 'stylobate package' wrote")
        self.manifest_bytes = self._unpacked(MANIFEST)
        self.manifest: Manifest = read_manifest(self.manifest_bytes, str(path))
        self.signature = self._unpacked(SIGNATURE) if SIGNATURE in self._members else None
        self._check_names()
        for name in self.manifest.files:
            self.read(name)

    def read(self, name: str) -> bytes:
        """A file of the manifest, its hash checked. Raises PackageError."""
        entry = self.manifest.files[name]
        content = self._unpacked(name)
        if len(content) != entry.bytes or hashlib.sha256(content).hexdigest() != entry.sha256:
            raise PackageError(f"{self.path}: {name} is not what the manifest says; ask for the package again")
        return content

    def unpack(self, root: Path, under: str = "") -> None:
        """Every file whose name starts with `under`, below `root`. Raises OSError."""
        for name in self.manifest.files:
            if name.startswith(under):
                place = root / name.removeprefix(under)
                place.parent.mkdir(parents=True, exist_ok=True)
                place.write_bytes(self.read(name))

    def _check_names(self) -> None:
        held = set(self._members) - {MANIFEST, SIGNATURE}
        missing, extra = sorted(set(self.manifest.files) - held), sorted(held - set(self.manifest.files))
        if missing:
            raise PackageError(f"{self.path}: {_shown(missing[0])} is missing; ask for the package again")
        if extra:
            raise PackageError(f"{self.path}: {_shown(extra[0])} was added later, it is not in the manifest; "
                               "do not use it, ask for the package again")  # fmt: skip

    def _unpacked(self, name: str) -> bytes:
        info = self._members[name]
        try:
            with self._archive.open(info) as member:
                content = member.read(info.file_size + 1)
        except (zipfile.BadZipFile, zlib.error, EOFError, OSError, ValueError, NotImplementedError, RuntimeError):
            raise PackageError(f"{self.path}: {_shown(name)} cannot be unpacked; ask for the package again") from None
        if len(content) != info.file_size:
            raise PackageError(f"{self.path}: {_shown(name)} is not as large as the zip says; ask for it again")
        return content


def _sealed(path: Path) -> bytes:
    """The file, its last bytes the hash of all before. Raises PackageError."""
    try:
        if path.is_dir():
            raise PackageError(f"{path}: is a folder; give the package file itself")
        if path.stat().st_size > MAX_PACKED:
            raise PackageError(f"{path}: is larger than {MAX_PACKED >> 30} GiB, which no package is")
        content = path.read_bytes()
    except (OSError, ValueError) as error:
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise PackageError(f"{path}: {reason}; check the path") from None
    seal = _SEAL.fullmatch(content[-_SEAL_BYTES:])
    if seal is None:
        raise PackageError(
            f"{path}: is no package, or was cut or packed anew: its seal is missing; "
            "ask for the file as 'stylobate package' wrote it"
        )
    if hashlib.sha256(memoryview(content)[:-_SEAL_BYTES]).hexdigest() != seal[1].decode():
        raise PackageError(f"{path}: was damaged or changed on its way: its seal does not fit; ask for it again")
    return content


def _members(path: Path, infos: list[zipfile.ZipInfo]) -> dict[str, zipfile.ZipInfo]:
    """Members by name, none of them unsafe. Raises PackageError."""
    found: dict[str, zipfile.ZipInfo] = {}
    total = 0
    for info in infos:
        total += info.file_size
        wrong = why_unsafe(info.orig_filename) or why_unsafe(info.filename) or _why_refused(info)
        if wrong is None and info.filename in found:
            wrong = "the name stands twice"
        if wrong is None and len(found) >= MAX_FILES:
            wrong = f"there are more than {MAX_FILES} files"
        if wrong is None and total > MAX_UNPACKED:
            wrong = f"the package unpacks to more than {MAX_UNPACKED >> 30} GiB"
        if wrong is not None:
            raise PackageError(f"{path}: {_shown(info.orig_filename)} refused: {wrong}; do not use this package")
        found[info.filename] = info
    return found


def _why_refused(info: zipfile.ZipInfo) -> str | None:
    if info.is_dir() or stat.S_IFMT(info.external_attr >> 16) not in (0, stat.S_IFREG):
        return "it is a folder, a link or a special file"
    if info.flag_bits & 0x1:
        return "it is encrypted"
    if info.file_size > MAX_FILE:
        return f"it is larger than {MAX_FILE >> 30} GiB"
    if info.file_size > RATIO_COUNTS_FROM and info.file_size > MAX_RATIO * max(info.compress_size, 1):
        return f"it unpacks to more than {MAX_RATIO} times its size"
    return None


def _shown(name: str) -> str:
    text = ascii(name)[1:-1]
    return text if len(text) <= 80 else text[:77] + "..."
