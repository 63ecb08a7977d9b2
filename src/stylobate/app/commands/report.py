"""`stylobate report`: the report of a result or a case, as PDF and HTML."""

from __future__ import annotations

import re
from pathlib import Path

import click

OWNED = re.compile(r"report\.(pdf|html)")


@click.command()
@click.argument("source", metavar="CASE|RESULT", type=click.Path(path_type=Path))
@click.option("--scan", type=click.Path(path_type=Path), help="The scan of a RESULT, for the picture of the arch.")
@click.option("--out", required=True, type=click.Path(path_type=Path), metavar="DIR", help="Folder for the report.")
def command(source: Path, scan: Path | None, out: Path) -> None:
    """Write report.pdf and report.html of a case, or of a result.

    A case shows its teeth, checks, releases, parts and torques as well; what is missing stands there in large type.
    """
    from stylobate.core.errors import UsageError
    from stylobate.report.folder import staging

    with staging(out) as area:
        from stylobate.report.pages import make_report, of_case, of_result

        if _is_case(source):
            if scan is not None:
                raise UsageError("a case holds its scan; leave --scan out")
            dossier = of_case(source)
        else:
            dossier = of_result(source, scan)
        made = make_report(dossier)
        area.write("report.html", made.html)
        area.write("report.pdf", made.pdf)
        area.commit("report.pdf", OWNED)
    click.echo(f"{out / 'report.pdf'}, {out / 'report.html'}")


def _is_case(source: Path) -> bool:
    from stylobate.case.folder import LOG

    return source.name == "case.json" or (source / LOG).exists()
