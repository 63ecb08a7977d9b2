"""The parts folder: CAD of scan bodies and of what is placed on connections, checked before anything is measured."""

from stylobate.parts.load import check_parts, load_parts
from stylobate.parts.model import PartsFolder, ScanBody
from stylobate.parts.notes import Note, Report

__all__ = ["Note", "PartsFolder", "Report", "ScanBody", "check_parts", "load_parts"]
