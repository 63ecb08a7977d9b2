"""What comes into a case: scans, a parts folder, results, and what other commands made of them."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from stylobate.case.belonging import require_belonging
from stylobate.case.folder import Case, now
from stylobate.case.log import digest
from stylobate.case.model import (
    OUTPUTS,
    ROLES,
    CaseTable,
    Output,
    OutputEntry,
    PartsEntry,
    ResultEntry,
    Role,
    ScanEntry,
    SiteEntry,
    SitesEntry,
)
from stylobate.case.scrub import extension, scrubbed
from stylobate.case.unnamed import without_names, without_paths
from stylobate.core.errors import CaseError, ResultError
from stylobate.core.teeth import along_arch, tooth
from stylobate.record import read_result

if TYPE_CHECKING:
    from stylobate.record import Record

SHORT = 12
"""Digits of a hash in a file name; the whole hash stands in case.json."""
MOST_OUTPUT_BYTES = 1 << 30
WRITTEN: Mapping[Output, re.Pattern[str]] = {
    "place": re.compile(r"place\.json|(?!joined-)[^/]+\.(stl|ply)"),
    "seat": re.compile(r"seat\.json"),
    "compare": re.compile(r"(compare|result)\.json"),
}
"""What a case keeps of what a command wrote: joined scans it holds itself, and other files are none of its."""
NAMING = re.compile(r"place\.png|compare\.(csv|parquet|png|pdf)")
"""What names the files of scans, and so people; kept only by a case that keeps names."""


def add_scan(case: Case, role: Role, scan: str | Path, who: str) -> Case:
    """Keep a scan under its role; the one before stays in the folder, but no longer counts.

    Names and comments in it are taken out unless the case keeps names. Raises ScanError and CaseError.
    """
    from stylobate.scan.read import read_surface
    from stylobate.scan.source import load

    if role not in ROLES:
        raise CaseError(f"'{role}' is not a role of a scan; it is one of {', '.join(ROLES)}")
    path = Path(scan)
    content = load(path).tobytes()
    kept = content if case.table.keep_names else scrubbed(content, path.name)
    read_surface(kept, path.name)
    sha256 = digest(kept)
    name = f"scans/{role}-{sha256[:SHORT]}.{extension(kept, path.name)}"
    case.put({name: kept})
    entry = ScanEntry(role=role, file=name, sha256=sha256, original_sha256=digest(content), by=who, time=now())

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"scans": (*table.scans, entry)})

    return case.change(who, "scan added", {"role": role, "sha256": sha256}, edit)


def add_parts(case: Case, parts: str | Path, who: str) -> Case:
    """Keep a copy of a parts folder or zip: parts.toml and the files it names. Raises PartsError and CaseError."""
    from stylobate.parts import load_parts
    from stylobate.parts.manifest import read_manifest
    from stylobate.parts.references import surfaces_of
    from stylobate.parts.source import PARTS_TOML, open_source

    folder = load_parts(parts)
    with open_source(parts) as source:
        manifest = read_manifest(source)
        assert manifest.table is not None
        names = [PARTS_TOML, *surfaces_of(manifest.table)]
        contents = {name: source.read(name) for name in dict.fromkeys(names)}
    home = f"parts/{folder.sha256[:SHORT]}"
    case.put({f"{home}/{name}": content for name, content in contents.items()})
    files = {name: digest(content) for name, content in contents.items()}
    entry = PartsEntry(folder=home, name=folder.name, revision=folder.revision, sha256=folder.sha256, files=files,
                       by=who, time=now())  # fmt: skip

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"parts": (*table.parts, entry)})

    return case.change(who, "parts added", {"name": folder.name, "sha256": folder.sha256}, edit)


def add_result(
    case: Case, result: str | Path, who: str, scan_bodies: tuple[str, ...] = (), count: int | None = None
) -> Case:
    """Keep a result of the case's current scan and parts, with its coloured surfaces. scan_bodies, count: what the
    measurement was told, where that is known.

    Raises ResultError; CaseError where it was measured in another scan or with other parts.
    """
    record = read_result(result)
    scan, parts = case.table.scan("bodies"), case.table.current_parts()
    if scan is None or record.scan.sha256 not in (scan.sha256, scan.original_sha256):
        raise CaseError(
            f"{record.path}: was measured in another scan than the case's scan of the bodies; "
            "add that scan first ('stylobate case add')"
        )
    if parts is None or record.parts.sha256 != parts.sha256:
        raise CaseError(
            f"{record.path}: was measured with other parts than the case holds; add that parts folder first"
        )
    contents = _result_files(record, scan.file, case.table.keep_names)
    identity = f"r-{digest(contents['result.json'])[:SHORT]}"
    home = f"results/{identity}"
    case.put({f"{home}/{name}": content for name, content in contents.items()})
    files = {name: digest(content) for name, content in contents.items()}
    entry = ResultEntry(id=identity, folder=home, scan=scan.sha256, parts=parts.sha256, files=files,
                        scan_bodies=scan_bodies, count=count, by=who, time=now())  # fmt: skip

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"results": (*table.results, entry)})

    return case.change(who, "result added", {"id": identity, "sites": len(record.sites)}, edit)


def _result_files(record: Record, scan_name: str, keep_names: bool) -> dict[str, bytes]:
    """result.json, without the name of the scan file where names are not kept, and the maps it names."""
    text = record.path.read_bytes()
    if not keep_names:
        text = without_names(text, Path(scan_name).name)
    contents = {"result.json": text}
    for site in record.sites:
        if site.map is None:
            continue
        if Path(site.map).name != site.map:
            raise ResultError(f"{record.path}: map '{site.map}' of site {site.site} is not a file beside it")
        try:
            contents[site.map] = (record.path.parent / site.map).read_bytes()
        except OSError as error:
            raise ResultError(
                f"{record.path.parent / site.map}: the map of site {site.site} cannot be read; measure again"
            ) from error
    return contents


def name_sites(case: Case, teeth: dict[str, str], who: str) -> Case:
    """Say which tooth each site of the current result stands for: tooth → site.

    Raises UsageError for what is no tooth, CaseError for a site that is not there or named twice, and for teeth of both
    jaws, as a scan shows one.
    """
    result, file = case.table.result(), case.result_file()
    if result is None or file is None:
        raise CaseError(f"{case.path}: there is no result of the current scan and parts yet; measure first")
    known = [site.site for site in read_result(file).sites]
    for number, site in teeth.items():
        tooth(number)
        if site not in known:
            raise CaseError(f"{case.path}: there is no site '{site}'; the result has {', '.join(known) or 'none'}")
    if len(set(teeth.values())) != len(teeth):
        raise CaseError(f"{case.path}: a site stands for one tooth only; name each site once")
    order = sorted(teeth, key=along_arch)
    if order and along_arch(order[0])[0] != along_arch(order[-1])[0]:
        raise CaseError(
            f"{case.path}: {order[0]} is a tooth of the upper jaw, {order[-1]} of the lower; a scan shows one jaw: "
            "write the numbers anew"
        )
    sites = tuple(SiteEntry(tooth=number, site=teeth[number]) for number in order)
    entry = SitesEntry(result=result.id, sites=sites, by=who, time=now())

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"sites": (*table.sites, entry)})

    return case.change(who, "sites named", {"result": result.id, "teeth": teeth}, edit)


def _unnamed(name: str, content: bytes) -> bytes:
    """A file of another command without the names of files in it. Raises CaseError."""
    if not name.endswith(".json"):
        return content
    if name == "result.json":
        try:
            content = without_names(content, "scan")
        except (ValueError, AttributeError, TypeError):
            raise CaseError(f"{name}: is not what 'stylobate compare' writes; make it again") from None
    return without_paths(content)


def add_output(case: Case, kind: Output, folder: str | Path, who: str) -> Case:
    """Keep what `stylobate place`, `seat` or `compare` wrote of the current result.

    Raises CaseError: not such a folder, of another scan, other parts or another result, or too large.
    """
    root = Path(folder)
    if kind not in OUTPUTS:
        raise CaseError(f"'{kind}' is not an output that a case keeps; it is one of {', '.join(OUTPUTS)}")
    if not (root / f"{kind}.json").is_file():
        raise CaseError(f"{root}: holds no {kind}.json; name a folder that 'stylobate {kind}' wrote")
    require_belonging(case, kind, (root / f"{kind}.json").read_bytes(), f"{root}/{kind}.json")
    contents: dict[str, bytes] = {}
    for path in sorted(root.rglob("*")):
        name = path.relative_to(root).as_posix()
        wanted = WRITTEN[kind].fullmatch(name) or (case.table.keep_names and NAMING.fullmatch(name))
        if wanted and path.is_file() and not path.is_symlink():
            content = path.read_bytes()
            contents[name] = content if case.table.keep_names else _unnamed(name, content)
    if sum(map(len, contents.values())) > MOST_OUTPUT_BYTES:
        raise CaseError(f"{root}: holds more than {MOST_OUTPUT_BYTES >> 20} MB; keep only what the command wrote")
    files = {name: digest(content) for name, content in contents.items()}
    home = f"outputs/{kind}-{digest(json.dumps(files).encode())[:SHORT]}"
    case.put({f"{home}/{name}": content for name, content in contents.items()})
    result = case.table.result()
    entry = OutputEntry(kind=kind, folder=home, files=files, result=result.id if result else None, by=who, time=now())

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"outputs": (*table.outputs, entry)})

    return case.change(who, f"{kind} added", {"folder": home}, edit)


def withdraw_output(case: Case, kind: Output, who: str) -> Case:
    """The output of that kind that counts counts no longer; its files stay. Raises CaseError where there is none."""
    held = case.table.output(kind)
    if held is None:
        raise CaseError(f"{case.path}: there is no output of '{kind}' for the current result to take back")
    entry = held.model_copy(update={"withdrawn": True, "by": who, "time": now()})

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"outputs": (*table.outputs, entry)})

    return case.change(who, f"{kind} withdrawn", {"folder": held.folder}, edit)
