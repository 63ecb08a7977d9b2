"""What is wrong, or worth knowing, in a parts folder: where it stands and what to do about it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Topic(Enum):
    """What a note is about."""

    FAULT = "fault"
    WARNING = "warning"
    LOOSE_MOTION = "loose motion"
    LOOK_ALIKE = "look-alike"


@dataclass(frozen=True)
class Note:
    """One remark.

    file: as named in the folder. key: where in parts.toml, entries counted from 1, or "" for a file as a whole.
    what: the finding. remedy: what to do. blocks: whether the folder cannot be used until it is put right.
    """

    topic: Topic
    file: str
    key: str
    what: str
    remedy: str
    blocks: bool = False

    def line(self) -> str:
        """All of it as one line."""
        place = f"{self.file}: {self.key}" if self.key else self.file
        return f"{place}: {self.what}; {self.remedy}"


def file_shown(name: str) -> str:
    """A file's name as it stands in notes: a name of thousands of letters is cut to its end."""
    from stylobate.scan.source import shown

    return shown(name)


def fault(file: str, key: str, what: str, remedy: str) -> Note:
    """A note that keeps the folder from being used."""
    return Note(Topic.FAULT, file_shown(file), key, what, remedy, blocks=True)


def warning(file: str, key: str, what: str, remedy: str) -> Note:
    """A note on something that may be as intended."""
    return Note(Topic.WARNING, file_shown(file), key, what, remedy)


@dataclass(frozen=True)
class Report:
    """The outcome of a check: every note, and what the folder says of itself (None where it could not be read)."""

    path: str
    notes: tuple[Note, ...]
    name: str | None = None
    revision: str | None = None
    sha256: str | None = None
    counts: tuple[tuple[str, int], ...] = ()

    @property
    def usable(self) -> bool:
        """Whether nothing keeps the folder from being used."""
        return not self.faults

    @property
    def faults(self) -> tuple[Note, ...]:
        """Notes that keep the folder from being used, loose motions that do so included."""
        return tuple(note for note in self.notes if note.blocks)

    @property
    def warnings(self) -> tuple[Note, ...]:
        """Notes on what may be as intended."""
        return self._about(Topic.WARNING)

    @property
    def loose_motions(self) -> tuple[Note, ...]:
        """Motions that a scan region cannot fix."""
        return self._about(Topic.LOOSE_MOTION)

    @property
    def look_alikes(self) -> tuple[Note, ...]:
        """Scan bodies that no scan can tell apart."""
        return self._about(Topic.LOOK_ALIKE)

    def _about(self, topic: Topic) -> tuple[Note, ...]:
        return tuple(note for note in self.notes if note.topic is topic)
