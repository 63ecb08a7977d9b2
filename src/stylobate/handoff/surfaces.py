"""The surfaces of a package, all in scan coordinates: the scan, the scan bodies at their poses, the placed parts."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
from scipy.spatial import cKDTree

from stylobate.case import Case
from stylobate.case.model import JOINED, Role
from stylobate.core.surface import Scan, Surface
from stylobate.handoff.glb import Named, glb_bytes
from stylobate.handoff.replaced import replaced
from stylobate.joining import moved_scan
from stylobate.parts.model import PartsFolder
from stylobate.report.colours import colours
from stylobate.report.meshes import mesh_file, ply_bytes
from stylobate.report.pages import Dossier
from stylobate.report.views import PLASTER
from stylobate.scan import read_mesh, read_scan

ABOUT = "millimetres, scan coordinates"
SAME_POINT = 1e-4
"""mm: a vertex of a site's surface and of the scan closer than this are one."""
PLACED = re.compile(r"site-(?P<site>.+?)-(?=part-\d)")
"""How the names of placed parts begin."""
BODY, PART = (122, 176, 178), (208, 162, 92)


def surface_files(dossier: Dossier, parts: PartsFolder, labels: dict[str, str]) -> dict[str, bytes]:
    """Files by path inside the package. labels: site → what it is called. Raises ScanError, CaseError."""
    assert dossier.scan is not None
    assert dossier.case is not None
    scan = dossier.scan
    painted = _painted(dossier, scan)
    files: dict[str, bytes] = {}
    _add(files, "surfaces/scan", Surface(painted.vertices, painted.faces))
    files["surfaces/scan-with-deviation.ply"] = ply_bytes(painted, ABOUT)
    bodies = []
    for site in dossier.sites:
        body = parts.scan_body(site.record.scan_body)
        name = _file_name(f"{labels[site.record.site]}-{body.id}")
        placed = body.surface.moved(site.scan_from_connection)
        _add(files, f"surfaces/scan-bodies/{name}", placed)
        bodies.append(Named(name, placed, BODY))
    others = _placed(dossier.case, labels)
    for named in others:
        _add(files, f"surfaces/placed/{_file_name(named.name)}", named.surface)
    for role, surface in around(dossier.case):
        _add(files, f"surfaces/{role}", surface)
    poses = [site.scan_from_connection for site in dossier.sites]
    cad = [parts.scan_body(site.record.scan_body).surface for site in dossier.sites]
    _add(files, "surfaces/scan-with-cad", replaced(scan, poses, cad).surface)
    files["surfaces/all.glb"] = glb_bytes([Named("scan", painted), *bodies, *others], scan.origin)
    return files


def _file_name(words: str) -> str:
    """Letters, digits and a few signs: names of sites come from a file."""
    return re.sub(r"[^A-Za-z0-9._+-]", "_", words).lstrip(".") or "_"


def _add(files: dict[str, bytes], name: str, surface: Surface) -> None:
    content, suffix = mesh_file(surface, ABOUT)
    files[name + suffix] = content


def _painted(dossier: Dossier, scan: Scan) -> Surface:
    """The scan in scan coordinates, plaster-coloured, each scan body in the colours of its deviation."""
    vertices = scan.surface.vertices + scan.origin
    paint = np.tile(np.array(PLASTER, np.uint8), (len(vertices), 1))
    tree = cKDTree(scan.surface.vertices)
    for site in dossier.sites:
        if site.map is None:
            continue
        known = np.isfinite(site.map.deviation_um)
        distance, nearest = tree.query(site.map.vertices[known] - scan.origin, distance_upper_bound=SAME_POINT)
        found = np.isfinite(distance)
        paint[nearest[found]] = colours(site.map.deviation_um[known][found])
    return Surface(vertices, scan.surface.faces, paint)


def around(case: Case) -> list[tuple[Role, Surface]]:
    """Tissue and the other jaw in scan coordinates, where it is known how they lie. Raises CaseError, ScanError."""
    found: list[tuple[Role, Surface]] = []
    for role in JOINED:
        entry, join = case.table.scan(role), case.table.join(role)
        if entry is not None and (join is not None or case.table.lies_as_it_is(role)):
            scan = read_scan(case.unchanged(entry.file))
            moved = scan if join is None else moved_scan(scan, np.array(join.bodies_from_scan))
            found.append((role, moved.whole()))
    return found


def _placed(case: Case, labels: dict[str, str]) -> list[Named]:
    """Surfaces that `stylobate place` wrote, as the case keeps them, called by what their sites are called."""

    def called(stem: str) -> str:
        found = PLACED.match(stem)
        known = labels.get(found["site"]) if found else None
        return stem if found is None or known is None else f"{known}-{stem[found.end() :]}"

    output = case.table.output("place")
    if output is None:
        return []
    names = [name for name in output.files if Path(name).suffix in (".stl", ".ply")]
    return [
        Named(called(Path(name).stem), read_mesh(case.read(f"{output.folder}/{name}"), name).surface, PART)
        for name in names
    ]
