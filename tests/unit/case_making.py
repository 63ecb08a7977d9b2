"""A case with a result put together by hand: no measurement needed."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from pathlib import Path
from typing import Any

from stylobate.case import Case, intake
from stylobate.core.result import PartsInfo, ScanInfo
from stylobate.core.surface import Surface
from stylobate.parts import load_parts
from stylobate.record import read_result
from stylobate.report.folder import staging
from stylobate.report.meshes import ply_bytes
from stylobate.report.save import save
from tests.doors.handmade import ORIGIN, measurement
from tests.unit.parts_making import CONNECTION, HEAD, flat, post, stl, write

BODY = '[[scan_body]]\nid = "alder-tall"\nseats_on = "alder"\nsurface = "alder-tall.stl"\ntorque_ncm = [10.0, 15.0]\n'
BASE = (
    '[[titanium_base]]\nid = "alder-base"\nseats_on = "alder"\ngingival_height = 1.0\nheight = 5.0\nengaging = true\n'
    'surface = "alder-base.stl"\ntorque_ncm = [30.0, 35.0]\n'
)


def parts_at(root: Path) -> Path:
    """A parts folder with the scan body of the measurement by hand, and a base."""
    text = HEAD + CONNECTION.format(id="alder", order=6) + BODY + BASE
    return write(root, text, {"alder-tall.stl": post(flat(2.1, 0.5)), "alder-base.stl": stl(post(1.8, 5.0))})


def scan_at(path: Path, count: int = 2, comment: str = "millimetres") -> Path:
    """The scan of the measurement by hand, in scan coordinates."""
    surface = measurement(count)[1].surface
    path.write_bytes(ply_bytes(Surface(surface.vertices + ORIGIN, surface.faces), comment))
    return path


def result_at(folder: Path, scan: Path, parts: Path, count: int = 2, verdict: str | None = None) -> Path:
    """A result folder that claims to be of that scan and those parts."""
    from stylobate.core.result import Verdict

    known = load_parts(parts)
    result = measurement(count, finding=True)[0]
    sites = tuple(replace(site, verdict=Verdict(verdict, "because.")) if verdict else site for site in result.sites)
    info = ScanInfo(scan.name, hashlib.sha256(scan.read_bytes()).hexdigest(), 5000)
    result = replace(result, scan=info, parts=PartsInfo(known.name, known.revision, known.sha256), sites=sites)
    with staging(folder) as area:
        save(result, area, maps=True)
    return folder


def placed_at(folder: Path, case: Case, chains: dict[str, list[dict[str, Any]]], **more: Any) -> Path:
    """A folder with the place.json of these chains (site → links) on the case's result; more: keys of each site."""
    scan, parts, file = case.table.scan("bodies"), case.table.current_parts(), case.result_file()
    assert scan is not None
    assert parts is not None
    assert file is not None
    record = read_result(file)
    sites = [
        {
            "site": site,
            "chain": [{"scan_from_part": record.site(site).scan_from_connection.tolist()} | link for link in links],
        }
        | more
        for site, links in chains.items()
    ]
    values = {"result": {"scan_sha256": scan.original_sha256}, "parts": {"sha256": parts.sha256}, "sites": sites}
    folder.mkdir()
    (folder / "place.json").write_text(json.dumps({"format": "stylobate-place", "version": 1} | values))
    return folder


def case_with_result(root: Path, verdict: str | None = None, teeth: bool = True, keep_names: bool = False) -> Case:
    """A case with scan, parts, result, and tooth 14 for site 1, 16 for site 2."""
    parts, scan = parts_at(root / "parts"), scan_at(root / "Erika Musterperson.ply", comment="Erika Musterperson")
    result = result_at(root / "result", scan, parts, verdict=verdict)
    case = Case.create(root / "case", "H-1", "bridge", "AB", keep_names)
    case = intake.add_scan(case, "bodies", scan, "AB")
    case = intake.add_parts(case, parts, "AB")
    case = intake.add_result(case, result, "AB")
    return intake.name_sites(case, {"14": "1", "16": "2"}, "AB") if teeth else case
