"""A joined result as result.json: as of a measurement, and from which scan each site came (docs/conventions)."""

from __future__ import annotations

from typing import Any

from stylobate.report.document import document, matrix
from stylobate.report.folder import Staging
from stylobate.report.laid_out import laid_out
from stylobate.report.save import OWNED, RESULT
from stylobate.several.joined.model import Joined


def save_joined(joined: Joined, staging: Staging) -> None:
    """Write result.json. Raises OutputError."""
    staging.write(RESULT, laid_out(joined_document(joined)).encode())
    staging.commit(RESULT, OWNED)


def joined_document(joined: Joined) -> dict[str, Any]:
    """The joined result as nested dicts and lists."""
    values = document(joined.result, maps=False)
    values["cross"] = [{"sites": list(names), "covariance": matrix(block)} for names, block in joined.cross.items()]
    for site in values["sites"]:
        site["seen_in"] = [
            {"scan": joined.sources[seen.scan].scan.file, "sha256": joined.sources[seen.scan].scan.sha256,
             "site": seen.site, "counts": seen.counts}
            for seen in joined.seen[site["site"]]
        ]  # fmt: skip
    values["joined_from"] = [
        {
            "result": source.result,
            "scan": {"file": source.scan.file, "sha256": source.scan.sha256, "triangles": source.scan.triangles},
            "first_from_scan": matrix(source.first_from_scan),
            "shared_mm2": source.shared_mm2,
            "places": source.places,
        }
        for source in joined.sources
    ]
    return values
