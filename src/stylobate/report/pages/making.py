"""Dossier → PDF and HTML. Templates say how it looks, `content` what it says."""

from __future__ import annotations

import base64
import json
import tempfile
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any, Final

from stylobate.report.pages.content import content, labels
from stylobate.report.pages.dossier import Dossier
from stylobate.report.pages.pictures import Pictures, pictures

HERE = Path(__file__).parent
PDF_STANDARD: Final = "a-2b"


@dataclass(frozen=True)
class Report:
    """The two files."""

    pdf: bytes
    html: bytes


def make_report(dossier: Dossier) -> Report:
    """Both forms of the report; the same bytes for the same dossier. Raises CaseError, ResultError."""
    drawn = pictures(dossier, labels(dossier))
    words = content(dossier, drawn)
    return Report(_pdf(words, drawn, dossier.made), _html(words, drawn))


def _pdf(words: dict[str, Any], drawn: Pictures, made_at: datetime) -> bytes:
    import typst

    with tempfile.TemporaryDirectory(prefix="stylobate-") as folder:
        root = Path(folder)
        for name, image in drawn.files.items():
            (root / name).write_bytes(image)
        (root / "content.json").write_text(json.dumps(words), encoding="utf-8")
        (root / "page.typ").write_bytes((HERE / "page.typ").read_bytes())
        made = typst.compile(
            str(root / "page.typ"),
            root=folder,
            ignore_system_fonts=True,
            format="pdf",
            pdf_standards=PDF_STANDARD,
            timestamp=made_at,
        )
    assert isinstance(made, bytes)
    return made


def _html(words: dict[str, Any], drawn: Pictures) -> bytes:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(HERE), autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )

    def source(name: str) -> str:
        return "data:image/png;base64," + base64.b64encode(drawn.files[name]).decode()

    page = environment.get_template("page.html").render(**words, image=source)
    return page.encode()
