"""A scene and its parts as files; a folder changes as a whole or not at all."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict
from pathlib import Path
from typing import Any

import numpy as np

from stylobate.core import durable
from stylobate.core.errors import OutputError
from stylobate.core.surface import Surface
from stylobate.core.types import IntArray
from stylobate.simulate.making import Scene

TRUTH = "truth.json"


def stl_bytes(surface: Surface) -> bytes:
    """Binary STL, little endian, float32."""
    corners = surface.vertices[surface.faces]
    normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-30)
    record = np.zeros(len(corners), dtype=[("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("spare", "<u2")])
    record["normal"], record["corners"] = normal, corners
    return b"binary STL, millimetres".ljust(80, b" ") + np.uint32(len(corners)).tobytes() + record.tobytes()


def ply_bytes(surface: Surface, label: IntArray) -> bytes:
    """Binary PLY, little endian, float64, with the label of each vertex (see Scene) as property `site`."""
    header = (
        "ply\nformat binary_little_endian 1.0\n"
        f"element vertex {len(surface.vertices)}\nproperty double x\nproperty double y\nproperty double z\n"
        f"property int site\nelement face {len(surface.faces)}\nproperty list uchar int vertex_indices\nend_header\n"
    )
    vertex = np.zeros(len(surface.vertices), dtype=[("at", "<f8", 3), ("site", "<i4")])
    vertex["at"], vertex["site"] = surface.vertices, label
    face = np.zeros(len(surface.faces), dtype=[("count", "u1"), ("corners", "<i4", 3)])
    face["count"], face["corners"] = 3, surface.faces
    return header.encode() + vertex.tobytes() + face.tobytes()


def truth_bytes(scene: Scene) -> bytes:
    """truth.json: the settings and, for each site, what stands there and where."""
    sites = [
        {
            "site": truth.site,
            "scan_body": truth.body.id,
            "expected": truth.expected,
            "connection": truth.body.seats_on,
            "scan_from_connection": truth.scan_from_connection.tolist(),
            "scan_from_implant": truth.scan_from_implant.tolist(),
            "gum_mm": truth.gum_mm,
            "made_um": {"diameter": truth.made_um[0], "height": truth.made_um[1]},
            "faults": [asdict(fault) for fault in truth.faults],
            "vertices": int((scene.label == k).sum()),
        }
        for k, truth in enumerate(scene.sites)
    ]
    values = {"format": "stylobate-truth", "version": 1, "settings": asdict(scene.settings), "sites": sites}
    return (json.dumps(values, indent=1, default=_plain) + "\n").encode()


def _plain(value: Any) -> Any:
    if isinstance(value, np.ndarray):
        return value.tolist()
    raise TypeError(type(value).__name__)


def scene_files(scene: Scene, form: str = "stl") -> dict[str, bytes]:
    """Name and content of each file of a scene; `form`: stl or ply."""
    surface = stl_bytes(scene.surface) if form == "stl" else ply_bytes(scene.surface, scene.label)
    return {f"scan.{form}": surface, TRUTH: truth_bytes(scene)}


def write(scene: Scene, out: Path, parts: Mapping[str, bytes] | None = None, form: str = "stl") -> None:
    """Write scan, truth.json and, if given, the files of a parts folder into `out`/parts. Raises OutputError."""
    with folder(out) as stage:
        put(stage, scene_files(scene, form))
        if parts is not None:
            put(stage, {f"parts/{name}": content for name, content in parts.items()})


@contextmanager
def folder(out: Path) -> Iterator[Path]:
    """A hidden folder inside `out`; when the block ends well, what stands in it replaces what `out` holds by that name.

    When anything fails, `out` is as it was. Raises OutputError: one line with the folder and the cause.
    """
    missing = [path for path in (out, *out.parents) if not path.exists()]
    hidden: Path | None = None
    done = False
    try:
        out.mkdir(parents=True, exist_ok=True)
        hidden = durable.hidden_folder(out)
        (hidden / "new").mkdir()
        (hidden / "old").mkdir()
        yield hidden / "new"
        _swap(hidden, out)
        done = True
    except OSError as error:
        cause = error.strerror or str(error)
        raise OutputError(
            f"{out}: cannot write there: {cause.lower()}; nothing was changed; name another folder or free some space."
        ) from error
    finally:
        if hidden is not None:
            durable.drop(hidden)
        if not done:
            for path in missing:
                _remove_empty(path)


def put(stage: Path, contents: Mapping[str, bytes]) -> None:
    """Files into a staged folder; a name may hold folders. Raises OSError."""
    for name, content in contents.items():
        (stage / name).parent.mkdir(parents=True, exist_ok=True)
        with (stage / name).open("wb") as file:
            file.write(content)


def _swap(hidden: Path, out: Path) -> None:
    """Old entries aside, new ones in, the truth last; undone in full where a step fails."""
    names = sorted((path.name for path in (hidden / "new").iterdir()), key=lambda name: (name == TRUTH, name))
    stale = {"scan.stl", "scan.ply"} - set(names)
    aside: list[str] = []
    placed: list[str] = []
    try:
        for name in [*sorted(stale), *names]:
            if (out / name).exists():
                (out / name).rename(hidden / "old" / name)
                aside.append(name)
            if name in names:
                (hidden / "new" / name).rename(out / name)
                placed.append(name)
    except BaseException:
        for name in placed:
            (out / name).rename(hidden / "new" / name)
        for name in aside:
            (hidden / "old" / name).rename(out / name)
        raise


def _remove_empty(path: Path) -> None:
    try:
        path.rmdir()
    except OSError:
        return
