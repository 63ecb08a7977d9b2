"""`stylobate selfcheck`: scans and parts in, whether the stated uncertainties agree with the scans themselves."""

from __future__ import annotations

from pathlib import Path

import click

from stylobate.app.progress import progress_bar
from stylobate.report.folder import staging


@click.command()
@click.argument("scans", nargs=-1, required=True, type=click.Path(path_type=Path, readable=False))
@click.option(
    "--parts", required=True, type=click.Path(path_type=Path, readable=False), help="The parts folder, or a zip of it."
)
@click.option("--scan-body", "scan_bodies", multiple=True, metavar="ID", help="Only this scan body; may be repeated.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for selfcheck.json.")
def command(scans: tuple[Path, ...], parts: Path, scan_bodies: tuple[str, ...], out: Path) -> None:
    """Check the stated uncertainty on your own scans, without any truth.

    The surface of each site is divided like a checkerboard, the pose is measured from the black and from the white
    cells alone, and the difference is set against what the stated covariance says of it. One site tells little; many
    scans of one scanner, given at once, tell whether its bounds can be relied on.
    """
    with staging(out) as area:
        from stylobate.report.selfcheck import save_selfcheck, show_selfcheck

        with progress_bar() as progress:
            from stylobate.selfcheck import selfcheck

            found = selfcheck(scans, parts, scan_bodies=scan_bodies, progress=progress)
        save_selfcheck(found, area)
    show_selfcheck(found)
