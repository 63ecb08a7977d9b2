"""Surfaces as one binary glTF 2.0 file (Khronos; ISO/IEC 12113:2022).

Lengths in glTF are metres: a root node scales by 0.001, so that below it everything stands in mm, in scan
coordinates. Coordinates are 32-bit about an origin of their own, which a node adds back.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from stylobate.core.surface import Surface
from stylobate.core.types import ByteArray, FloatArray

_FLOAT, _UNSIGNED_INT, _UNSIGNED_BYTE = 5126, 5125, 5121
_ARRAY, _INDEX = 34962, 34963
_LINEAR = np.rint(255.0 * (np.arange(256) / 255.0) ** 2.2).astype(np.uint8)
"""Colours on a screen (sRGB, nearly) to the linear ones that glTF asks for."""


@dataclass(frozen=True)
class Named:
    """A surface in scan coordinates, its name, and one colour (red, green, blue) if it has none."""

    name: str
    surface: Surface
    colour: tuple[int, int, int] = (200, 200, 200)


def glb_bytes(parts: Sequence[Named], origin: FloatArray) -> bytes:
    """The file. origin: (3,) mm, near the middle of all."""
    buffer = _Buffer()
    nodes: list[dict[str, Any]] = []
    meshes: list[dict[str, Any]] = []
    materials: list[dict[str, Any]] = []
    for part in parts:
        local = part.surface.vertices - origin
        attributes = {"POSITION": buffer.add(local.astype("<f4"), _FLOAT, "VEC3", _ARRAY, bounds=True)}
        white = part.surface.colours is not None
        if part.surface.colours is not None:
            rgba = np.full((len(local), 4), 255, np.uint8)
            rgba[:, :3] = _LINEAR[part.surface.colours]
            attributes["COLOR_0"] = buffer.add(rgba, _UNSIGNED_BYTE, "VEC4", _ARRAY, normalised=True)
        indices = buffer.add(part.surface.faces.astype("<u4").reshape(-1), _UNSIGNED_INT, "SCALAR", _INDEX)
        factor = [1.0, 1.0, 1.0, 1.0] if white else [*(float(_LINEAR[value]) / 255 for value in part.colour), 1.0]
        materials.append(
            {"pbrMetallicRoughness": {"baseColorFactor": factor, "metallicFactor": 0.0, "roughnessFactor": 0.9},
             "doubleSided": True}
        )  # fmt: skip
        primitive = {"attributes": attributes, "indices": indices, "material": len(materials) - 1}
        meshes.append({"name": part.name, "primitives": [primitive]})
        nodes.append({"name": part.name, "mesh": len(meshes) - 1, "translation": origin.tolist()})
    root = {"name": "millimetres", "scale": [0.001, 0.001, 0.001], "children": list(range(len(nodes)))}
    document = {
        "asset": {"version": "2.0", "generator": "stylobate"},
        "scene": 0,
        "scenes": [{"nodes": [len(nodes)]}],
        "nodes": [*nodes, root],
        "meshes": meshes,
        "materials": materials,
        "accessors": buffer.accessors,
        "bufferViews": buffer.views,
        "buffers": [{"byteLength": buffer.length}],
    }
    return _chunks(json.dumps(document).encode(), b"".join(buffer.pieces))


class _Buffer:
    """The binary chunk as it grows, each piece on a boundary of 4 bytes."""

    def __init__(self) -> None:
        self.pieces: list[bytes] = []
        self.views: list[dict[str, Any]] = []
        self.accessors: list[dict[str, Any]] = []
        self.length = 0

    def add(
        self, values: np.ndarray[Any, Any] | ByteArray, kind: int, shape: str, target: int, bounds: bool = False,
        normalised: bool = False,
    ) -> int:  # fmt: skip
        """Number of the accessor of these values."""
        content = values.tobytes()
        self.views.append({"buffer": 0, "byteOffset": self.length, "byteLength": len(content), "target": target})
        accessor: dict[str, Any] = {"bufferView": len(self.views) - 1, "componentType": kind, "count": len(values),
                                    "type": shape}  # fmt: skip
        if bounds:
            accessor |= {"min": values.min(axis=0).tolist(), "max": values.max(axis=0).tolist()}
        if normalised:
            accessor["normalized"] = True
        self.accessors.append(accessor)
        padded = content + b"\0" * (-len(content) % 4)
        self.pieces.append(padded)
        self.length += len(padded)
        return len(self.accessors) - 1


def _chunks(document: bytes, binary: bytes) -> bytes:
    document += b" " * (-len(document) % 4)
    total = 12 + 8 + len(document) + 8 + len(binary)
    return b"".join(
        [struct.pack("<4sII", b"glTF", 2, total), struct.pack("<I4s", len(document), b"JSON"), document,
         struct.pack("<I4s", len(binary), b"BIN\0"), binary]
    )  # fmt: skip
