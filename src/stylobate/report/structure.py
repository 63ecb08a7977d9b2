"""A structure as files: its surface, read back and checked as written, and structure.json."""

from __future__ import annotations

import hashlib
import re
from typing import Any

import numpy as np

from stylobate import __version__
from stylobate.build.refit import Refit, Structure, refit
from stylobate.core.errors import FitError
from stylobate.core.surface import Surface
from stylobate.parts.edges import Edges
from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.report.meshes import FARTHEST_STL, mesh_file
from stylobate.scan import read_surface

FORMAT = "stylobate-structure"
VERSION = 1
STRUCTURE = "structure.json"
GRID_MM = 2.0**-17
"""Step of the grid on which corners are written, 0.008 µm; beyond 128 mm, that of 32-bit numbers there."""
OWNED = re.compile(r"(?:bar|blank|model)\.(?:stl|ply)")
"""What a structure leaves beside structure.json, and takes away again when a newer one is complete."""


def save_structure(structure: Structure, settings: dict[str, Any], staging: Staging) -> tuple[Refit, ...]:
    """Write the surface and structure.json; returns every interface as fitted again in the file as written.

    Raises FitError where what was written is not watertight or an interface is off, OutputError where it cannot be
    written; the folder is then as it was.
    """
    content, suffix = mesh_file(folded(structure.surface), f"{structure.kind}, mm, scan coordinates")
    name = structure.kind + suffix
    refits = checked(structure, content, name)
    staging.write(name, content)
    document = {
        "format": FORMAT,
        "version": VERSION,
        "software": {"name": "stylobate", "version": __version__},
        "kind": structure.kind,
        "surface": {"file": name, "sha256": hashlib.sha256(content).hexdigest(), "watertight": True},
        "triangles": len(structure.surface.faces),
        "volume_mm3": structure.volume,
        **({} if structure.wall_mm is None else {"least_wall_mm": structure.wall_mm}),
        "settings": settings,
        "interfaces": [
            {
                "site": one.site,
                "shift_um": one.shift_um,
                "tilt_deg": one.tilt_deg,
                "points": one.points,
                "scan_from_connection": one.scan_from_connection.tolist(),
            }
            for one in refits
        ],
        "warnings": list(structure.warnings),
    }
    staging.write(STRUCTURE, laid_out(document).encode())
    staging.commit(STRUCTURE, OWNED)
    return refits


def folded(surface: Surface) -> Surface:
    """The surface on the coarsest grid that its file needs, without the faces that fold up there.

    The grid is even: the 32-bit numbers of an STL step finely near 0 and coarsely far out, so corners that are one in
    one place would be two in another, and a reader that joins near corners would find other edges than were written.
    """
    far = float(np.abs(surface.vertices).max())
    step = GRID_MM if far > FARTHEST_STL else max(GRID_MM, float(np.spacing(np.float32(far))))
    grid, index = np.unique(np.rint(surface.vertices / step), axis=0, return_inverse=True)
    faces = index.reshape(-1)[surface.faces].astype(np.int32)
    whole = (faces[:, 0] != faces[:, 1]) & (faces[:, 1] != faces[:, 2]) & (faces[:, 2] != faces[:, 0])
    return Surface(grid * step, faces[whole])


def checked(structure: Structure, content: bytes, name: str) -> tuple[Refit, ...]:
    """The interfaces as fitted again in a file. Raises FitError where it is not watertight or one is off."""
    written = read_surface(content, name)
    edges = Edges.of(written)
    if (edges.count != 2).any() or edges.against:
        raise FitError(
            f"the {structure.kind}: is not watertight as written; nothing is kept; look at the sizes asked for"
        )
    return tuple(refit(written, interface) for interface in structure.interfaces)
