"""A case → a package: everything a laboratory needs, and everything that proves it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from stylobate import __version__
from stylobate.case.checks import states
from stylobate.case.folder import CASE, LOG
from stylobate.core.durable import write
from stylobate.core.errors import CaseError, OutputError
from stylobate.handoff.archive import zipped
from stylobate.handoff.manifest import MANIFEST, SIGNATURE, Manifest, entry_of, manifest_bytes
from stylobate.handoff.poses import poses_csv, poses_json
from stylobate.handoff.sign import signature_bytes
from stylobate.handoff.surfaces import surface_files
from stylobate.parts import load_parts
from stylobate.report.pages import Dossier, make_report, of_case
from stylobate.report.pages.content import labels

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

README = """Hand-off package of stylobate. Check it with: stylobate receive PACKAGE

report/report.pdf           the report: verdicts, uncertainties, checks done and missing
poses/poses.json, .csv      where each implant's connection is, with its covariance
surfaces/                   all in scan coordinates, millimetres (all.glb: metres, as glTF asks)
  scan                      the scan as measured
  scan-with-deviation.ply   the same, scan bodies coloured by their deviation from the CAD surface
  scan-with-cad             the scan with each scan body replaced by its exact CAD surface at the measured pose
  tissue, opposing          the scan without scan bodies and that of the other jaw, where they were joined to the scan
  scan-bodies/, placed/     each scan body and each placed part where it belongs
  all.glb                   everything in one scene
case/                       the whole case: scans, parts, results, checks, releases, log
manifest.json               size and SHA-256 of every file, and the head of the log
"""


def pack(case: str | Path, out: str | Path, key: Ed25519PrivateKey | None = None, with_names: bool = False) -> Manifest:
    """Write the package of a case to the file `out`, signed where a key is given.

    Raises CaseError: no result yet, a file of the case is damaged, or it keeps names and `with_names` is not set;
    OutputError.
    """
    dossier = of_case(case)
    files = contents(dossier, with_names)
    assert dossier.case is not None
    log = dossier.case.log
    manifest = Manifest(
        code=dossier.case.table.code,
        created=log.lines[-1].time,
        software=f"stylobate {__version__}",
        log_head=log.head,
        log_lines=len(log.lines),
        files={name: entry_of(content) for name, content in files.items()},
    )
    text = manifest_bytes(manifest)
    proof = {MANIFEST: text} if key is None else {MANIFEST: text, SIGNATURE: signature_bytes(key, text)}
    try:
        write(Path(out), zipped(proof | files))
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise OutputError(f"{out}: cannot write there: {reason}; nothing was changed; name another file") from error
    return manifest


def contents(dossier: Dossier, with_names: bool) -> dict[str, bytes]:
    """Every file of the package but the manifest. Raises CaseError, ScanError, PartsError."""
    case = dossier.case
    assert case is not None
    if case.table.keep_names and not with_names:
        raise CaseError(f"{case.path}: this case keeps names in its scans; hand them over with --with-names, or not")
    parts = case.table.current_parts()
    assert parts is not None
    kept = {f"case/{name}": case.read(name) for name in case.table.files()}
    kept |= {f"case/{name}": (case.path / name).read_bytes() for name in (CASE, LOG)}
    called = labels(dossier)
    state = {found.site.site: found for found in states(case)}
    report = make_report(dossier)
    files = {
        "README.txt": README.encode(),
        "report/report.pdf": report.pdf,
        "report/report.html": report.html,
        "poses/poses.json": poses_json(dossier.record, state),
        "poses/poses.csv": poses_csv(dossier.record, state),
        **surface_files(dossier, load_parts(case.path / parts.folder), called),
    }
    return files | kept
