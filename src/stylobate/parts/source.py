"""A parts folder or a zip of one, as named files. No name leads out of it, and sizes are limited before reading."""

from __future__ import annotations

import stat
import zipfile
import zlib
from abc import ABC, abstractmethod
from collections.abc import Iterable
from pathlib import Path, PurePosixPath

from stylobate.core.errors import PartsError

PARTS_TOML = "parts.toml"

# Far beyond any real folder: CAD of a hundred parts is some 50 MB. Deflate of triangle files reaches 20:1 at most.
MAX_FILES = 5_000
MAX_FILE_BYTES = 256 * 2**20
MAX_TOTAL_BYTES = 1024 * 2**20
MAX_RATIO = 200
RATIO_COUNTS_FROM_BYTES = 2**20


class FileFaultError(Exception):
    """One file of the folder cannot be had. `what` is wrong with it, and the `remedy`."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(f"{what}; {remedy}")
        self.what = what
        self.remedy = remedy


class Source(ABC):
    """Files by name, relative to where parts.toml stands, with forward slashes."""

    def __init__(self, label: str) -> None:
        self.label = label

    @abstractmethod
    def read(self, name: str) -> bytes:
        """The content of a file. Raises FileFaultError."""

    def close(self) -> None:
        """Let go of what is held open."""
        return

    def __enter__(self) -> Source:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def open_source(path: str | Path) -> Source:
    """The folder or zip at `path`. Raises PartsError with one line where it is neither, or not safe to open."""
    place = Path(path)
    try:
        mode = place.stat().st_mode
    except FileNotFoundError:
        raise PartsError(f"{path}: no such parts folder; give the folder or zip that holds {PARTS_TOML}") from None
    except (OSError, ValueError) as error:
        raise PartsError(f"{path}: cannot be opened ({_reason(error)}); check the path and its rights") from None
    if stat.S_ISDIR(mode):
        return FolderSource(place)
    if not stat.S_ISREG(mode):
        raise PartsError(f"{path}: neither a folder nor a file; give the folder or zip that holds {PARTS_TOML}")
    if place.name == PARTS_TOML:
        return FolderSource(place.parent)
    return ZipSource(place)


def why_unsafe(name: str) -> str | None:
    """What is wrong with a file's name inside the folder, or None where it stays inside."""
    if not name or name != name.strip():
        return "the name is empty or has spaces around it"
    if not name.isprintable():
        return "the name has control characters"
    if "\\" in name:
        return "the name has a backslash"
    if name.startswith("/"):
        return "the path is absolute"
    if len(name) > 1 and name[1] == ":":
        return "the path starts with a drive letter"
    if ".." in name.split("/"):
        return "the path leads out of the folder by '..'"
    return None


class FolderSource(Source):
    """A folder on disk. Links that lead out of it are refused, and so is what is no regular file."""

    def __init__(self, root: Path) -> None:
        super().__init__(str(root))
        self.root = root.resolve()

    def read(self, name: str) -> bytes:
        """The content of a file. Raises FileFaultError."""
        try:
            place = (self.root / name).resolve()
            if not place.is_relative_to(self.root):
                raise FileFaultError("is a link that leads out of the folder", "copy the file itself into the folder")
            state = place.stat()
            if stat.S_ISDIR(state.st_mode):
                raise FileFaultError("is a folder, not a file", "name the file")
            if not stat.S_ISREG(state.st_mode):
                raise FileFaultError("is not a regular file", "put the file itself into the folder")
            if state.st_size > MAX_FILE_BYTES:
                raise FileFaultError(_too_large(state.st_size), "export it with fewer triangles")
            return place.read_bytes()
        except FileNotFoundError:
            raise FileFaultError("is not there", "put the file into the folder, or correct its name") from None
        except (OSError, ValueError, RuntimeError) as error:
            raise FileFaultError(f"cannot be read ({_reason(error)})", "check the file and its rights") from None


class ZipSource(Source):
    """A zip of a parts folder, or of what is in it. Every member is looked at before any is unpacked."""

    def __init__(self, path: Path) -> None:
        super().__init__(str(path))
        try:
            self._archive = zipfile.ZipFile(path)
        except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError, RuntimeError) as error:
            raise PartsError(
                f"{path}: is not a zip that can be opened ({_reason(error)}); "
                f"give the folder or a zip of the folder that holds {PARTS_TOML}"
            ) from None
        try:
            members = [info for info in self._archive.infolist() if not info.is_dir()]
            _refuse_unsafe(self.label, self._archive.infolist())
            prefix = _prefix(self.label, [info.filename for info in members])
        except PartsError:
            self._archive.close()
            raise
        self._members = {info.filename[len(prefix) :]: info for info in members if info.filename.startswith(prefix)}

    def read(self, name: str) -> bytes:
        """The content of a member. Raises FileFaultError."""
        info = self._members.get(str(PurePosixPath(name)))
        if info is None:
            raise FileFaultError("is not in the zip", "add the file to the zip, or correct its name")
        try:
            with self._archive.open(info) as member:
                content = member.read(info.file_size + 1)
        except (zipfile.BadZipFile, zlib.error, EOFError, OSError, ValueError, RuntimeError) as error:
            raise FileFaultError(f"cannot be unpacked ({_reason(error)})", "make the zip anew") from None
        if len(content) != info.file_size:
            raise FileFaultError("is larger or smaller than the zip says", "make the zip anew")
        return content

    def close(self) -> None:
        """Close the archive."""
        self._archive.close()


def _refuse_unsafe(label: str, members: Iterable[zipfile.ZipInfo]) -> None:
    seen: set[str] = set()
    total = 0
    for number, info in enumerate(members, start=1):
        total += info.file_size
        name = info.filename.rstrip("/") if info.is_dir() else info.filename
        wrong = why_unsafe(info.orig_filename.rstrip("/")) or why_unsafe(name) or _why_refused(info)
        if wrong is None and str(PurePosixPath(name)) in seen:
            wrong = "the name stands twice in the zip"
        if wrong is None and number > MAX_FILES:
            wrong = f"the zip has more than {MAX_FILES} files"
        if wrong is None and total > MAX_TOTAL_BYTES:
            wrong = f"the zip unpacks to more than {MAX_TOTAL_BYTES >> 20} MB"
        if wrong is not None:
            raise PartsError(f"{label}: member {_shown(info.orig_filename)} refused: {wrong}; make the zip anew")
        seen.add(str(PurePosixPath(name)))


def _why_refused(info: zipfile.ZipInfo) -> str | None:
    if info.flag_bits & 0x1:
        return "it is encrypted"
    kind = stat.S_IFMT(info.external_attr >> 16)
    if kind not in (0, stat.S_IFREG, stat.S_IFDIR):
        return "it is a link or a special file"
    if info.file_size > MAX_FILE_BYTES:
        return f"it {_too_large(info.file_size)}"
    if info.file_size > RATIO_COUNTS_FROM_BYTES and info.file_size > MAX_RATIO * max(info.compress_size, 1):
        return f"it unpacks to more than {MAX_RATIO} times its size"
    return None


def _prefix(label: str, names: list[str]) -> str:
    """What stands before the names where the zip holds the folder itself rather than its content."""
    if PARTS_TOML in names:
        return ""
    inner = sorted({name.split("/")[0] for name in names if name.count("/") == 1 and name.endswith("/" + PARTS_TOML)})
    if len(inner) == 1:
        return inner[0] + "/"
    if inner:
        raise PartsError(f"{label}: holds {len(inner)} parts folders ({', '.join(inner)}); make one zip of each")
    raise PartsError(f"{label}: no {PARTS_TOML} in the zip; zip the folder that holds it")


def _too_large(size: int) -> str:
    return f"is too large ({size >> 20} MB; at most {MAX_FILE_BYTES >> 20} MB)"


def _shown(name: str) -> str:
    text = ascii(name)
    return text if len(text) <= 80 else text[:77] + "…'"


def _reason(error: Exception) -> str:
    text = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return " ".join(text.split()) or type(error).__name__
