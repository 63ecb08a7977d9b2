"""One case: what a reader did with a file, and whether that is as it should be."""

from __future__ import annotations

import resource
import time
import traceback
from pathlib import Path

import numpy as np

from fuzz import reference
from stylobate.core.errors import StylobateError
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.scan import read_mesh, read_scan

SECONDS = 2.0
"""A file may take this long (issue: each broken file gets its line within 2 s)."""
MEMORY_FREE_BYTES = 96 << 20
"""Address space a case may take beyond what the process holds: 16 MiB unpacked from gzip, a few times over."""
_NO_AREA = 1e-140
_LAST_BITS = 2 * np.finfo(np.float64).eps
_LONGEST_LINE = 1000


def fault_of(data: bytes, name: str, folder: Path | None) -> tuple[str | None, bool]:
    """What is wrong with how this file is treated (None: nothing), and whether it was accepted.

    folder: read it from there, as a command would; None: from memory.
    """
    start = time.monotonic()
    try:
        if folder is None:
            surface, origin = read_mesh(data, name).surface, np.zeros(3)
        else:
            (folder / name).write_bytes(data)
            scan = read_scan(folder / name)
            surface, origin = scan.surface, scan.origin
    except StylobateError as refusal:
        return refusal_fault(refusal) or _late(start), False
    except Exception:
        return "traceback: " + traceback.format_exc(limit=-3), False
    return _late(start) or mesh_fault(surface, origin, data), True


def refusal_fault(refusal: StylobateError) -> str | None:
    """A refusal is one line of reasonable length that blames the file and not the machine."""
    line = str(refusal)
    if not line or len(line) > _LONGEST_LINE or not line.isprintable():
        return f"refusal is not one clear line: {line[:200]!r}"
    return f"memory: {line}" if "memory of this machine" in line else None


def _late(start: float) -> str | None:
    spent = time.monotonic() - start
    return f"slow: {spent:.1f} s" if spent > SECONDS else None


def mesh_fault(surface: Surface, origin: FloatArray, data: bytes) -> str | None:
    """An accepted mesh holds, in order, every triangle that the file states, save those without an area."""
    if not len(surface.faces) or surface.faces.min() < 0 or surface.faces.max() >= len(surface.vertices):
        return "accepted, but its faces are out of range"
    if not np.all(np.isfinite(surface.vertices)):
        return "accepted, but not finite"
    if surface.colours is not None and surface.colours.shape != surface.vertices.shape:
        return "accepted, but the colours do not match the vertices"
    try:
        stated = reference.triangles(data)
    except Exception as fault:
        return f"accepted, but a second reading fails: {fault!r}"
    ours = surface.vertices[surface.faces]
    step = 0
    for triangle in stated:
        local = triangle - origin
        if step < len(ours) and np.all(np.abs(ours[step] - local) <= _LAST_BITS * (np.abs(triangle) + np.abs(local))):
            step += 1
        elif not np.linalg.norm(np.cross(local[1] - local[0], local[2] - local[0])) <= _NO_AREA:
            return f"cut: triangle {triangle.tolist()} is missing"
    return None if step == len(ours) else f"invented: {len(ours) - step} triangles more than stated"


def limit_memory() -> None:
    """From now on the process may take MEMORY_FREE_BYTES more of address space than it has."""
    pages = int(Path("/proc/self/statm").read_text().split()[0])
    limit = pages * resource.getpagesize() + MEMORY_FREE_BYTES
    resource.setrlimit(resource.RLIMIT_AS, (limit, limit))
