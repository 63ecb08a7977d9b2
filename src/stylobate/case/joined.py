"""The scans of a case in one frame: where each lies in that of the bodies, with what certainty."""

from __future__ import annotations

from stylobate.case.folder import Case, now
from stylobate.case.model import CaseTable, JoinEntry, JoinSite, Role, ScanEntry
from stylobate.core.errors import CaseError
from stylobate.core.surface import Scan


def join_scans(case: Case, who: str) -> tuple[Case, tuple[str, ...]]:
    """Join the tissue scan, and the opposing one by way of the bite, to the scan of the bodies; keep where they lie.

    Returns the case and one line a join. Raises CaseError where something needed is missing, JoinError, ScanError.
    """
    from stylobate.joining import joins, sites_of
    from stylobate.record import read_result

    table = case.table
    result, file, bodies = table.result(), case.result_file(), table.scan("bodies")
    if result is None or file is None or bodies is None:
        raise CaseError(f"{case.path}: there is no result of the current scan and parts yet; measure first")
    tissue, opposing, bite = table.scan("tissue"), table.scan("opposing"), table.scan("bite")
    if tissue is None and (opposing is None or bite is None):
        raise CaseError(f"{case.path}: there is nothing to join; add a tissue scan, or an opposing and a bite scan")
    sites = sites_of(read_result(file))
    others = [None if entry is None else _read(case, entry) for entry in (tissue, opposing, bite)]
    found = joins(_read(case, bodies), sites, others[0], others[1], others[2])
    entries = []
    for role, entry in (("tissue", tissue), ("opposing", opposing)):
        if entry is None or role not in found:
            continue
        join = found[role]
        entries.append(
            JoinEntry(
                role=_role(role), scan=entry.sha256, bite=bite.sha256 if bite and role == "opposing" else None,
                result=result.id, bodies_from_scan=_rows(join.first_from_second), shared_mm2=join.shared_mm2,
                places=join.patches, by=who, time=now(),
                sites=tuple(
                    JoinSite(site=site.site, platform_um=site.platform_um, axis_deg=site.axis_deg,
                             covariance=_rows(site.covariance))
                    for site in join.sites
                ),
            )
        )  # fmt: skip

    def edit(table: CaseTable) -> CaseTable:
        return table.model_copy(update={"joins": (*table.joins, *entries)})

    about = {"result": result.id} | {str(entry.role): entry.scan for entry in entries}
    changed = case.change(who, "scans joined", about, edit)
    return changed, tuple(f"{role}: {join.words()}" for role, join in found.items())


def join_words(entry: JoinEntry) -> str:
    """A join in one sentence, for reports."""
    from stylobate.joining.model import join_words as words

    return words(entry.shared_mm2, entry.places, [(site.site, site.platform_um, site.axis_deg) for site in entry.sites])


def _read(case: Case, entry: ScanEntry) -> Scan:
    from stylobate.scan import read_scan

    return read_scan(case.unchanged(entry.file))


def _role(name: str) -> Role:
    return "tissue" if name == "tissue" else "opposing"


def _rows(matrix: object) -> tuple[tuple[float, ...], ...]:
    import numpy as np

    return tuple(tuple(map(float, row)) for row in np.asarray(matrix))
