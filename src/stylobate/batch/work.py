"""One scan, measured in a worker: whatever happens comes back as a value."""

from __future__ import annotations

import tempfile
import time
from dataclasses import dataclass, field, replace
from pathlib import Path

from stylobate.core.errors import StylobateError
from stylobate.core.result import Result
from stylobate.parts.model import PartsFolder
from stylobate.settings import Settings


@dataclass(frozen=True)
class Options:
    """What is the same for every scan of a batch."""

    scan_bodies: tuple[str, ...] = ()
    work: str = "bridge"
    settings: Settings | None = None
    maps: bool = False


@dataclass(frozen=True)
class Order:
    """A scan to measure. content: its bytes where the worker cannot read the file itself."""

    key: str
    path: Path
    content: bytes | None = field(default=None, repr=False)


@dataclass(frozen=True)
class Done:
    """What came of one scan.

    status: "measured"; "refused" (the scan cannot be measured, `message` says why); "failed" (the worker broke down or
    gave up: tried again by the next run). files: result.json and maps, by name.
    """

    key: str
    status: str
    message: str = ""
    seconds: float = 0.0
    files: dict[str, bytes] = field(default_factory=dict, repr=False)


def work(order: Order, parts: PartsFolder, options: Options) -> Done:
    """Measure one scan. Never raises but for an interrupt."""
    start = time.perf_counter()
    try:
        status, message, files = "measured", "", _files(order, parts, options)
    except StylobateError as error:
        status, message, files = "refused", str(error), {}
    except MemoryError:
        status, message, files = "failed", "not enough memory", {}
    except Exception as error:
        status, message, files = "failed", f"fault of the program ({type(error).__name__}: {error})", {}
    return Done(order.key, status, " ".join(message.split()), time.perf_counter() - start, files)


def _files(order: Order, parts: PartsFolder, options: Options) -> dict[str, bytes]:
    from stylobate.report.save import files_of

    if order.content is None:
        return files_of(_measured(order.path, parts, options), options.maps)
    with tempfile.TemporaryDirectory(prefix="stylobate-") as folder:
        path = Path(folder) / order.path.name
        path.write_bytes(order.content)
        try:
            result = _measured(path, parts, options)
        except StylobateError as error:
            raise type(error)(str(error).replace(str(path), str(order.path))) from error
    return files_of(replace(result, scan=replace(result.scan, file=order.path.name)), options.maps)


def _measured(path: Path, parts: PartsFolder, options: Options) -> Result:
    from stylobate.measuring import measure

    return measure(
        path, parts, scan_bodies=options.scan_bodies, work=options.work, settings=options.settings, maps=options.maps,
        threads=1,
    )  # fmt: skip
