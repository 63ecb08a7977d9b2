"""A parts folder or zip → the frozen values that the stages use, and every remark on the way."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from stylobate.core.errors import PartsError
from stylobate.core.surface import Surface
from stylobate.parts import cache
from stylobate.parts.files import Depth, PartFiles
from stylobate.parts.look_alikes import find_look_alikes, groups_of, notes_of
from stylobate.parts.manifest import read_manifest
from stylobate.parts.model import Analog, Connection, Implant, MultiUnitAbutment, PartsFolder, ScanBody, TitaniumBase
from stylobate.parts.notes import Note, Report
from stylobate.parts.references import check_references, surfaces_of
from stylobate.parts.source import PARTS_TOML, Source, open_source
from stylobate.parts.wording import entry_key

if TYPE_CHECKING:
    from stylobate.parts.schema import PartsTable, ScanBodyTable


def load_parts(path: str | Path) -> PartsFolder:
    """The parts folder (or zip of one) at `path`.

    Raises PartsError where anything in it is at fault: the message names the first, `faults` holds them all.
    """
    with open_source(path) as source:
        known = cache.recall(source)
        if known is not None:
            return known
        folder, notes = read_folder(source, Depth.FAULTS)
    faults = [note.line() for note in notes if note.blocks]
    if folder is None or faults:
        rest = len(faults) - 1
        more = f" (and {rest} more fault{'s' if rest > 1 else ''}: run stylobate parts check)" if rest else ""
        raise PartsError(f"{path}: {faults[0]}{more or ' (run stylobate parts check)'}", tuple(faults))
    return folder


def check_parts(path: str | Path) -> Report:
    """Everything there is to say about the parts folder (or zip of one) at `path`: faults, warnings, loose motions,
    look-alikes. Raises PartsError only where there is no folder or zip to look into."""
    with open_source(path) as source:
        folder, notes = read_folder(source, Depth.ALL)
    if folder is None:
        return Report(str(path), tuple(notes))
    counts = (
        ("connections", len(folder.connections)),
        ("scan bodies", len(folder.scan_bodies)),
        ("implants", len(folder.implants)),
        ("multi-unit abutments", len(folder.multi_unit_abutments)),
        ("titanium bases", len(folder.titanium_bases)),
        ("analogs", len(folder.analogs)),
    )
    return Report(str(path), tuple(notes), folder.name, folder.revision, folder.sha256, counts)


def read_folder(source: Source, depth: Depth) -> tuple[PartsFolder | None, list[Note]]:
    """The folder without what could not be read, and every note on it; None where parts.toml is beyond use.

    Where a note blocks, the folder is good for nothing but its description.
    """
    manifest = read_manifest(source)
    table = manifest.table
    if table is None:
        return None, list(manifest.notes)
    files = PartFiles(source, {PARTS_TOML: manifest.content}, depth)
    bodies = _scan_bodies(table, files)
    orders = {connection.id: connection.index_order for connection in table.connection}
    folder = PartsFolder(
        name=table.name,
        revision=table.revision,
        licence=table.licence,
        connections=tuple(Connection(**connection.model_dump()) for connection in table.connection),
        scan_bodies=tuple(bodies.values()),
        implants=tuple(Implant(**implant.model_dump()) for implant in table.implant),
        multi_unit_abutments=_abutments(table, files),
        titanium_bases=_bases(table, files),
        analogs=_analogs(table, files),
        sha256=files.sha256(),
    )
    later = [*check_references(table), *files.notes]
    notes = [*manifest.notes, *(note for note in later if not manifest.about_faulty(note))]
    pairs = find_look_alikes(_without_faults(bodies, notes), orders)
    folder = replace(folder, look_alikes=groups_of(pairs))
    if not any(note.blocks for note in notes):
        cache.keep(manifest.content, surfaces_of(table), folder)
    return folder, [*notes, *notes_of(pairs)]


def _without_faults(bodies: dict[str, ScanBody], notes: list[Note]) -> dict[str, ScanBody]:
    """The scan bodies on which no note blocks: of a faulty one nothing else is concluded."""
    faulty = [f"{note.key} " for note in notes if note.blocks]
    return {place: body for place, body in bodies.items() if not any(key.startswith(f"{place} ") for key in faulty)}


def _pair(torque: list[float] | None) -> tuple[float, float] | None:
    return None if torque is None else (torque[0], torque[1])


def _scan_bodies(table: PartsTable, files: PartFiles) -> dict[str, ScanBody]:
    """Scan bodies by where they stand in parts.toml; those without a usable surface are left out."""
    order = {connection.id: connection.index_order for connection in table.connection}
    bodies = {}
    for index, entry in enumerate(table.scan_body):
        place = entry_key("scan_body", index, entry.id)
        read = files.scan_body(place, entry, order.get(entry.seats_on, 0))
        if read is not None:
            bodies[place] = _scan_body(entry, *read)
    return bodies


def _scan_body(entry: ScanBodyTable, surface: Surface, region: Surface, sha256: str) -> ScanBody:
    return ScanBody(
        id=entry.id,
        seats_on=entry.seats_on,
        surface=surface,
        region=region,
        sha256=sha256,
        material=entry.material,
        single_use=entry.single_use,
        max_cycles=entry.max_cycles,
        torque_ncm=_pair(entry.torque_ncm),
        made_u_um=entry.made_u_um,
    )


def _abutments(table: PartsTable, files: PartFiles) -> tuple[MultiUnitAbutment, ...]:
    parts = []
    for index, entry in enumerate(table.multi_unit_abutment):
        read = files.part(entry_key("multi_unit_abutment", index, entry.id), entry.surface)
        if read is not None:
            data = entry.model_dump(exclude={"surface", "torque_ncm"})
            torque = _pair(entry.torque_ncm)
            parts.append(MultiUnitAbutment(**data, surface=read[0], sha256=read[1], torque_ncm=torque))
    return tuple(parts)


def _bases(table: PartsTable, files: PartFiles) -> tuple[TitaniumBase, ...]:
    parts = []
    for index, entry in enumerate(table.titanium_base):
        read = files.part(entry_key("titanium_base", index, entry.id), entry.surface)
        if read is not None:
            data = entry.model_dump(exclude={"surface", "torque_ncm"})
            torque = _pair(entry.torque_ncm)
            parts.append(TitaniumBase(**data, surface=read[0], sha256=read[1], torque_ncm=torque))
    return tuple(parts)


def _analogs(table: PartsTable, files: PartFiles) -> tuple[Analog, ...]:
    parts = []
    for index, entry in enumerate(table.analog):
        read = files.part(entry_key("analog", index, entry.id), entry.surface, below=True)
        if read is not None:
            parts.append(Analog(entry.id, entry.connection, read[0], read[1]))
    return tuple(parts)
