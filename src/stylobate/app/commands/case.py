"""`stylobate case …`: one patient's work in one folder, with checks, releases and a log."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stylobate.core.errors import CaseError, StylobateError, UsageError

if TYPE_CHECKING:
    from collections.abc import Callable

    from stylobate.case import Case

FOLDER = click.argument("folder", metavar="CASE", type=click.Path(path_type=Path))
BY = click.option("--by", "who", required=True, metavar="INITIALS", help="Who does this; it goes into the log.")
KINDS = ("clean", "seated", "torque", "radiograph", "unit")


@click.group()
def command() -> None:
    """Keep one patient's work in one folder: scans, parts, results, checks, releases, and a log of it all.

    A case bears a code, not a name. Every change is written whole or not at all, and goes into the log with
    the initials of who made it.
    """


@command.command()
@FOLDER
@click.option("--code", required=True, metavar="CODE", help="What the case is called; no name of a person.")
@click.option("--work", type=click.Choice(["single", "bridge", "arch"]), default="bridge", show_default=True,
              help="What will be built.")  # fmt: skip
@click.option("--keep-names", is_flag=True, help="Keep file names and comments of scans as they come.")
@BY
def new(folder: Path, code: str, work: str, keep_names: bool, who: str) -> None:
    """Make a case folder."""
    from stylobate.case import Case

    _say(Case.create(folder, code, work, who, keep_names))


@command.command(short_help="Keep scans, parts, results and what other commands made.")
@FOLDER
@click.argument("files", metavar="ROLE=FILE...", nargs=-1, required=True)
@BY
def add(folder: Path, files: tuple[str, ...], who: str) -> None:
    """Keep files: ROLE is bodies, tissue, opposing or bite (a scan), parts (a folder or zip), result, place, seat or
    compare (a folder that the command of that name wrote; result: of measure).

    Names and comments inside scans are taken out, unless the case keeps names.
    """
    from stylobate.case import Case

    pairs = [_split(word, "bodies=arch.stl") for word in files]
    verbs = _verbs()
    for role, _ in pairs:
        if role not in verbs:
            raise UsageError(f"'{role}' is not a role; it is one of {', '.join(verbs)}")
    case = Case.open(folder)
    for k, (role, file) in enumerate(pairs):
        try:
            case = verbs[role](case, file, who)
        except StylobateError as error:
            if k == 0:
                raise
            raise CaseError(f"{error} (kept before that: {', '.join(before for before, _ in pairs[:k])})") from error
    _say(case)


def _verbs() -> dict[str, Callable[[Case, str, str], Case]]:
    """What `add` does with a file, by its role."""
    from stylobate.case import intake
    from stylobate.case.model import OUTPUTS, ROLES, Output, Role

    def scan(role: Role) -> Callable[[Case, str, str], Case]:
        return lambda case, file, who: intake.add_scan(case, role, file, who)

    def output(kind: Output) -> Callable[[Case, str, str], Case]:
        return lambda case, file, who: intake.add_output(case, kind, file, who)

    return {
        **{role: scan(role) for role in ROLES},
        "parts": intake.add_parts,
        "result": intake.add_result,
        **{kind: output(kind) for kind in OUTPUTS},
    }


@command.command(short_help="Measure the scan of the bodies, and keep the result.")
@FOLDER
@click.option("--count", type=click.IntRange(min=1), metavar="N", help="How many sites there are. [default: all found]")
@click.option("--scan-body", "scan_bodies", multiple=True, metavar="ID", help="Only this scan body; may be repeated.")
@BY
def measure(folder: Path, count: int | None, scan_bodies: tuple[str, ...], who: str) -> int:
    """Measure the scan of the bodies with the case's parts, and keep the result. Statuses as for measure."""
    from tempfile import TemporaryDirectory

    from stylobate.app.progress import progress_bar
    from stylobate.case import Case
    from stylobate.case.intake import add_result
    from stylobate.case.words import unjoined
    from stylobate.report.folder import staging
    from stylobate.report.save import save
    from stylobate.report.table import show

    case = Case.open(folder)
    scan, parts = case.table.scan("bodies"), case.table.current_parts()
    if scan is None or parts is None:
        missing = "scan of the bodies" if scan is None else "parts folder"
        raise UsageError(f"{folder}: the case has no {missing} yet; add it with 'stylobate case add'")
    with TemporaryDirectory() as temporary:
        with progress_bar() as progress:
            from stylobate.measuring import measure as run

            result = run(
                case.unchanged(scan.file), folder / parts.folder, scan_bodies=scan_bodies, count=count,
                work=case.table.work, progress=progress,
            )  # fmt: skip
        out = Path(temporary) / "result"
        with staging(out) as area:
            save(result, area, maps=True)
        case = add_result(case, out, who, scan_bodies, count)
    show(result)
    for line in unjoined(case):
        click.echo(line.strip())
    if count is not None and len(result.sites) < count:
        click.echo(f"stylobate: found {len(result.sites)} of the {count} sites asked for; the result is kept", err=True)
        return 3
    return 0


@command.command(short_help="Join the other scans to that of the bodies.")
@FOLDER
@BY
def join(folder: Path, who: str) -> None:
    """Join the tissue scan to the scan of the bodies over the teeth, and the opposing one by way of the bite scan.

    Where each lies, and how well that is known at each site, is kept in the case and stands on the report. A scan may
    come in any frame. Status 2 where too few teeth are shared for a join to be trusted.
    """
    from stylobate.case import Case
    from stylobate.case.joined import join_scans

    case, lines = join_scans(Case.open(folder), who)
    for line in lines:
        click.echo(line)
    _say(case)


@command.command(short_help="Say which tooth each site of the result stands for.")
@FOLDER
@click.argument("teeth", metavar="TOOTH=SITE...", nargs=-1, required=True)
@BY
def sites(folder: Path, teeth: tuple[str, ...], who: str) -> None:
    """Say which tooth (ISO 3950: 11 to 48) each site of the result stands for, like 14=1 16=2.

    Sites not mentioned keep their tooth.
    """
    from stylobate.case import Case
    from stylobate.case.intake import name_sites

    pairs = [_split(word, "14=1") for word in teeth]
    if len({number for number, _ in pairs}) != len(pairs):
        raise UsageError("a tooth stands for one site only; name each tooth once")
    case, named = Case.open(folder), dict(pairs)
    kept = {tooth: site for tooth, site in case.table.teeth().items() if site not in named.values()}
    _say(name_sites(case, kept | named, who))


class MarksType(click.ParamType[tuple[float, float, float, float]]):
    """X1,Y1:X2,Y2 in pixels of a picture."""

    name = "marks"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[float, float, float, float]:
        """Four finite numbers, or a usage error."""
        import math

        if isinstance(value, tuple):
            return value
        try:
            numbers = [float(word) for pair in str(value).split(":") for word in pair.split(",")]
        except ValueError:
            numbers = []
        if len(numbers) != 4 or str(value).count(":") != 1 or not all(map(math.isfinite, numbers)):
            self.fail(f"'{value}' is not two marks; write pixels like --ends=120,80:131,412", param, ctx)
        return numbers[0], numbers[1], numbers[2], numbers[3]


@command.command(short_help="Note a chairside check of a site, with time and initials.")
@FOLDER
@click.argument("tooth")
@click.argument("kind", type=click.Choice(KINDS))
@click.option("--not-ok", is_flag=True, help="The check was made and not passed.")
@click.option("--ncm", type=click.FloatRange(min=0, max=200), help="torque: the value used, N·cm.")
@click.option("--number", metavar="TEXT", help="unit: number of the scan body.")
@click.option("--register", "register", type=click.Path(path_type=Path), metavar="FILE",
              help="unit: the register to ask. [default: in the user's data folder, if there is one]")  # fmt: skip
@click.option("--length", type=float, metavar="MM", help="radiograph: true length of a part seen in it.")
@click.option("--ends", type=MarksType(), metavar="X,Y:X,Y", help="radiograph: middles of the part's two ends, pixels.")
@click.option("--pixel", type=float, metavar="MM", help="radiograph: width of a pixel at the part.")
@click.option("--note", default="", metavar="TEXT", help="A remark.")
@BY
def check(
    folder: Path,
    tooth: str,
    kind: str,
    not_ok: bool,
    ncm: float | None,
    number: str | None,
    register: Path | None,
    length: float | None,
    ends: tuple[float, float, float, float] | None,
    pixel: float | None,
    note: str,
    who: str,
) -> None:
    """Note a chairside check of a site, with time and initials.

    KIND: clean (connection clean), seated (does not rock or turn), torque, radiograph, unit (which scan body). A
    torque outside the part's target counts as not passed, and so does a unit that the register of scan bodies says may
    not be used here, or is another scan body than was measured. With --length, --ends and --pixel of a radiograph the
    beam's angle to the part's axis is found, and so which gap that picture could show.
    """
    from stylobate.app.unit_asked import unit_words
    from stylobate.case import Case
    from stylobate.case.checks import record_check, torque_words
    from stylobate.case.model import KINDS as KNOWN

    case = Case.open(folder)
    ok, value = not not_ok, ""
    if kind == "torque":
        if ncm is None:
            raise UsageError("a torque check needs the value used, like --ncm 15")
        within, value = torque_words(case, tooth, ncm)
        ok = ok and within
    elif kind == "unit":
        if not number or not number.strip():
            raise UsageError("a unit check needs the scan body's number, like --number AT-0042")
        allowed, value = unit_words(case, tooth, number, register)
        ok = ok and allowed
    elif kind == "radiograph" and (length, ends, pixel) != (None, None, None):
        value, shows = _beam_words(length, ends, pixel)
        ok = ok and shows
    known = next(name for name in KNOWN if name == kind)
    record_check(case, tooth, known, who, ok, value, note)
    click.echo(f"tooth {tooth}, {kind}: {'passed' if ok else 'NOT PASSED'}{f'. {value}' if value else ''}")


def _beam_words(
    length: float | None, ends: tuple[float, float, float, float] | None, pixel: float | None
) -> tuple[str, bool]:
    from stylobate.case.beam import marked

    if length is None or ends is None or pixel is None:
        raise UsageError("the beam's angle needs --length, --ends and --pixel together")
    found = marked(length, ends, pixel)
    return found.sentence(), found.gap_um is not None


@command.command(short_help="Release a site for the work, or take the release back.")
@FOLDER
@click.argument("tooth")
@click.option("--reason", default="", metavar="TEXT", help="Needed where checks are missing or the verdict is not use.")
@click.option("--withdraw", is_flag=True, help="Take the release back.")
@BY
def release(folder: Path, tooth: str, reason: str, withdraw: bool, who: str) -> None:
    """Release a site for the work, or take the release back. Nothing else ever releases one."""
    from stylobate.case import Case, checks

    act = checks.withdraw if withdraw else checks.release
    _say(act(Case.open(folder), tooth, who, reason))


@command.command(short_help="Show what the case holds and what is missing.")
@FOLDER
def show(folder: Path) -> None:
    """Show what the case holds, what is missing, and the last lines of its log."""
    from stylobate.case import Case

    _say(Case.open(folder), lines=8)


@command.command(short_help="Check the log and the hash of every file.")
@FOLDER
def verify(folder: Path) -> None:
    """Check every line of the log and the hash of every file. Status 2 where something is not as it was."""
    from stylobate.case import Case

    case = Case.open(folder)
    faults = case.faults()
    if faults:
        more = f" (and {len(faults) - 1} more)" if len(faults) > 1 else ""
        raise CaseError(faults[0] + more)
    click.echo(f"{folder}: whole. {len(case.log.lines)} lines in the log, {len(case.table.files())} files.")
    click.echo(f"log head {case.log.head}")


def _split(word: str, example: str) -> tuple[str, str]:
    name, mark, value = word.partition("=")
    if not (name and mark and value):
        raise UsageError(f"'{word}' is not NAME=VALUE; write it like {example}")
    return name, value


def _say(case: Case, lines: int = 1) -> None:
    from stylobate.case.words import summary
    from stylobate.report.words import printable

    for line in summary(case, lines):
        click.echo(printable(line))
