"""The surfaces of a parts folder, each read and checked once, with a hash over all that was read."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import replace
from enum import Enum
from typing import TYPE_CHECKING

from stylobate.core.errors import ScanError
from stylobate.core.surface import Surface
from stylobate.parts.edges import Edges
from stylobate.parts.notes import Note, Topic, fault, file_shown, warning
from stylobate.parts.region import clip_above
from stylobate.parts.shape import Remark, check_faces, check_facets, check_place, check_region, check_stance
from stylobate.parts.source import FileFaultError, Source
from stylobate.parts.turns import check_stray, check_turns

if TYPE_CHECKING:
    from stylobate.parts.schema import ScanBodyTable


class Depth(Enum):
    """How closely surfaces are looked at: for faults; for all there is to say, which takes longer."""

    FAULTS = "faults"
    ALL = "all"


class PartFiles:
    """Reads surfaces by name and keeps the notes that come of them."""

    def __init__(self, source: Source, contents: dict[str, bytes], depth: Depth) -> None:
        self.notes: list[Note] = []
        self._source = source
        self._contents = dict(contents)
        self._surfaces: dict[str, Surface | None] = {}
        self.depth = depth

    def gather(self, names: Iterable[str]) -> bool:
        """Read the files of these names; False where one cannot be had, of which a note is made when it is used."""
        try:
            for name in names:
                if name not in self._contents:
                    self._contents[name] = self._source.read(name)
        except FileFaultError:
            return False
        return True

    def sha256(self) -> str:
        """Hash over the names and contents of all files read, whatever they were packed in."""
        total = hashlib.sha256()
        for name in sorted(self._contents):
            content = self._contents[name]
            total.update(f"{len(name.encode())} {name} {len(content)}\n".encode())
            total.update(content)
        return total.hexdigest()

    def part(self, place: str, name: str, below: bool = False) -> tuple[Surface, str] | None:
        """Surface and hash of a part that is not scanned; its shape is at most worth a warning.

        place: its entry in parts.toml. below: whether it lies below the platform.
        """
        surface = self._surface(name, f"{place} surface")
        if surface is None:
            return None
        if self.depth is Depth.ALL:
            for remark in [*check_place(surface, below), *check_faces(Edges.of(surface))]:
                self._note(name, f"{place} surface", replace(remark, blocks=False))
        return surface, hashlib.sha256(self._contents[name]).hexdigest()

    def scan_body(self, place: str, entry: ScanBodyTable, index_order: int) -> tuple[Surface, Surface, str] | None:
        """Surface, scan region and hash of a scan body. place: its entry in parts.toml."""
        surface = self._surface(entry.surface, f"{place} surface")
        if surface is None:
            return None
        region = self._region(place, entry, surface)
        if region is None:
            return None
        self._check_scan_body(place, entry, surface, region, index_order)
        digest = hashlib.sha256(self._contents[entry.surface])
        digest.update(repr(entry.scan_region).encode())
        if not isinstance(entry.scan_region, str) and hasattr(entry.scan_region, "surface"):
            digest.update(self._contents[entry.scan_region.surface])
        return surface, region, digest.hexdigest()

    def _region(self, place: str, entry: ScanBodyTable, surface: Surface) -> Surface | None:
        from stylobate.parts.schema import Above, RegionFile

        key = f"{place} scan_region"
        match entry.scan_region:
            case Above(above=z):
                region = clip_above(surface, z)
                if not len(region.faces):
                    top = float(surface.vertices[:, 2].max())
                    what = f"nothing of the surface lies above z = {z:g}"
                    remedy = f"the body ends at z = {top:.3g}: set above lower"
                    self.notes.append(fault(entry.surface, key, what, remedy))
                    return None
                return region
            case RegionFile(surface=name):
                region_read = self._surface(name, f"{key}.surface")
                if region_read is None:
                    return None
                for remark in check_faces(Edges.of(region_read)):
                    self._note(name, f"{key}.surface", remark)
                if self.depth is Depth.ALL:
                    for remark in check_stray(region_read, surface):
                        self._note(name, f"{key}.surface", remark)
                return region_read
            case _:
                return surface

    def _check_scan_body(
        self, place: str, entry: ScanBodyTable, surface: Surface, region: Surface, index_order: int
    ) -> None:
        edges = Edges.of(surface)
        remarks = [*check_place(surface), *check_faces(edges)]
        if self.depth is Depth.ALL:
            remarks += [*check_facets(edges), *check_stance(surface)]
        for remark in remarks:
            self._note(entry.surface, f"{place} surface", remark)
        if any(remark.blocks for remark in remarks):
            return
        edges = edges if region is surface else Edges.of(region)
        remarks = check_region(edges, index_order)
        spins = any(remark.loose for remark in remarks)
        if self.depth is Depth.ALL and not spins and index_order > 0:
            remarks += check_turns(edges, index_order)
        for remark in remarks:
            self._note(entry.surface, f"{place} scan_region", remark)

    def _surface(self, name: str, place: str) -> Surface | None:
        """The surface of that name, None where it cannot be read; each place that names it gets the fault."""
        from stylobate.scan import read_mesh

        try:
            content = self._contents.get(name)
            if content is None:
                content = self._contents[name] = self._source.read(name)
            if name not in self._surfaces:
                mesh = read_mesh(content, name)
                if mesh.kind == "OBJ":
                    raise FileFaultError("is OBJ by its content", "a parts folder holds STL or PLY: export it as one")
                self._surfaces[name] = mesh.surface
                for line in mesh.warnings if self.depth is Depth.ALL else ():
                    what, _, remedy = line.removeprefix(f"{file_shown(name)}: ").rpartition("; ")
                    self.notes.append(warning(name, place, what or remedy, remedy if what else "no need to act"))
        except FileFaultError as wrong:
            self.notes.append(fault(name, place, wrong.what, wrong.remedy))
            return None
        except ScanError as wrong:
            what, _, remedy = str(wrong).removeprefix(f"{file_shown(name)}: ").rpartition("; ")
            self.notes.append(fault(name, place, what or remedy, remedy if what else "export it again"))
            return None
        return self._surfaces[name]

    def _note(self, file: str, place: str, remark: Remark) -> None:
        topic = Topic.LOOSE_MOTION if remark.loose else Topic.FAULT if remark.blocks else Topic.WARNING
        self.notes.append(Note(topic, file_shown(file), place, remark.what, remark.remedy, remark.blocks))
