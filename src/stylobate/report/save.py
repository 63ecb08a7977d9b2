"""A measurement into its folder."""

from __future__ import annotations

import re

from stylobate.core.result import Result
from stylobate.report.document import map_name, result_json
from stylobate.report.folder import Staging
from stylobate.report.surfaces import ply_bytes

RESULT = "result.json"
PICTURE = "picture.png"
OWNED = re.compile(r"site-\d+\.ply|picture\.png")
"""What a measurement leaves beside result.json, and takes away again when a newer one is complete."""


def files_of(result: Result, maps: bool) -> dict[str, bytes]:
    """What a measurement leaves, by file name: result.json, and with `maps` a coloured surface a site."""
    files = {}
    if maps:
        for site in result.sites:
            if site.map is not None:
                about = (f"site {site.site}: {site.scan_body}, scan sha256 {result.scan.sha256}",)
                files[map_name(site.site)] = ply_bytes(site.map, about, site.findings)
    return {**files, RESULT: result_json(result, maps).encode()}


def save(result: Result, staging: Staging, maps: bool, picture: bytes | None = None) -> None:
    """Write result.json, with `maps` a coloured surface a site, and the picture (PNG) where there is one.

    Raises OutputError, with the folder as it was.
    """
    if picture is not None:
        staging.write(PICTURE, picture)
    for name, content in files_of(result, maps).items():
        staging.write(name, content)
    staging.commit(RESULT, OWNED)
