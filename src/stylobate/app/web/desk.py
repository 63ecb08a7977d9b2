"""Where work is kept: what a workspace and a case have in common, and the case's way of it."""

from __future__ import annotations

import shutil
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Protocol

from stylobate.app.unit_asked import unit_words
from stylobate.app.web.after import Beside
from stylobate.app.web.carry import same_sites
from stylobate.app.web.chains import chains_of
from stylobate.app.web.model import (
    KINDS,
    AroundView,
    CaseSiteView,
    CaseView,
    CheckView,
    ChoiceKind,
    ChoiceView,
    NoteCheck,
    Role,
)
from stylobate.app.web.workspace import Options, Run
from stylobate.case import Case, checks, intake
from stylobate.case.beam import marked
from stylobate.case.folder import require_initials
from stylobate.case.joined import join_words
from stylobate.case.words import crossed
from stylobate.core.errors import CaseError, UsageError
from stylobate.record import read_result

AROUND: tuple[Role, ...] = ("tissue", "opposing", "bite")
"""Scans beside that of the bodies, in the order in which they are asked for."""


class Desk(Protocol):
    """Keeps scans and measurements, and goes back and forth in them. Every method may raise StylobateError."""

    folder: Path

    def gone(self) -> bool:
        """Whether the folder was moved or deleted meanwhile."""

    @property
    def current(self) -> Run | None:
        """The measurement shown."""

    @property
    def scan(self) -> str:
        """Name of the scan at hand, "" where there is none."""

    def incoming(self) -> Path:
        """Folder in which a scan arrives."""

    def result_folder(self, run: int) -> Path:
        """Where a measurement lies, or will lie."""

    def scan_path(self, run: Run) -> Path:
        """The scan of a measurement, kept or just arrived."""

    def planned(self, scan: str, kind: ChoiceKind, detail: str, options: Options) -> Run:
        """The next measurement, not yet kept."""

    def add(self, run: Run, who: str) -> None:
        """Keep a measurement that is complete, and show it."""

    def before(self) -> Path | None:
        """Result of the scan before the one at hand, None where there was none."""

    def kept_chains(self) -> tuple[str, ...]:
        """The chosen parts that are kept."""

    def keep_placement(self, folder: Path | None, who: str) -> None:
        """Keep what `place` wrote into a folder for the parts that were chosen; None: nothing is chosen any more."""

    def step(self, by: int, who: str) -> None:
        """Undo (−1) or redo (+1)."""

    def choices(self) -> tuple[ChoiceView | None, ChoiceView | None]:
        """What would be undone, and what redone."""

    def set_parts(self, parts: str, who: str) -> str:
        """Use these parts; returns where they are kept."""

    def tidy(self) -> None:
        """Remove what a stopped measurement left."""


@dataclass(frozen=True)
class _Stand:
    """One step of the page's history in a case: the scan and the result that counted. Paths inside the case."""

    run: Run
    scan: str
    result: str


@dataclass
class CaseDesk:
    """A case folder. Its log only grows: undo keeps the earlier scan and result once more, and the log says so."""

    folder: Path
    cache: Path
    case: Case
    _history: list[_Stand] = field(default_factory=list)
    _at: int = 0
    _next: int = 1

    @staticmethod
    def opened(folder: Path, cache: Path) -> CaseDesk:
        """The case at folder. Raises CaseError."""
        desk = CaseDesk(folder, cache, Case.open(folder))
        desk._begin()
        return desk

    def _begin(self) -> None:
        table = self.case.table
        result, scan = table.result(), table.scan("bodies")
        self._history, self._at = [], 0
        if result is not None and scan is not None:
            run = Run(self._next, scan.file, "scan", "", Options(work=table.work), chains=self.kept_chains())
            self._history, self._at = [_Stand(run, scan.file, result.folder)], 1
            self._next += 1

    def kept_chains(self) -> tuple[str, ...]:
        place = self.case.table.output("place")
        return chains_of(self.folder / place.folder) if place else ()

    def gone(self) -> bool:
        return not (self.folder / "log.jsonl").exists()

    @property
    def current(self) -> Run | None:
        return self._history[self._at - 1].run if self._at else None

    @property
    def scan(self) -> str:
        entry = self.case.table.scan("bodies")
        return entry.file if entry else ""

    def incoming(self) -> Path:
        folder = self.cache / "incoming"
        folder.mkdir(exist_ok=True)
        return folder

    def result_folder(self, run: int) -> Path:
        kept = next((stand for stand in self._history if stand.run.run == run), None)
        return self.folder / kept.result if kept else self.cache / f"measured-{run}"

    def scan_path(self, run: Run) -> Path:
        kept = self.folder / run.scan
        return kept if run.scan.startswith("scans/") else self.incoming() / run.scan

    def planned(self, scan: str, kind: ChoiceKind, detail: str, options: Options) -> Run:
        self._next += 1
        return Run(self._next - 1, scan, kind, detail, options)

    def before(self) -> Path | None:
        others = [stand for stand in self._history[: self._at] if stand.scan != self.scan]
        if others:
            return self.folder / others[-1].result
        scan = self.case.table.scan("bodies")
        older = [entry for entry in self.case.table.results if scan is None or entry.scan != scan.sha256]
        return self.folder / older[-1].folder if older else None

    def around(self, role: Role) -> Beside | None:
        """The scan of the tissue or of the other jaw where it lies in the frame of the bodies, else None."""
        entry, join = self.case.table.scan(role), self.case.table.join(role)
        if entry is None or not (join or self.case.table.lies_as_it_is(role)):
            return None
        return Beside(str(self.folder / entry.file), join.bodies_from_scan if join else None)

    def add_around(self, role: Role, scan: Path, who: str) -> None:
        """Keep a scan beside that of the bodies. Raises ScanError, CaseError."""
        self.case = intake.add_scan(self.case, role, scan, who)

    def read_again(self) -> None:
        """Another process has changed the case. Raises CaseError."""
        self.case = Case.open(self.folder)

    def keep_placement(self, folder: Path | None, who: str) -> None:
        if folder is not None:
            self.case = intake.add_output(self.case, "place", folder, who)
        elif self.case.table.output("place") is not None:
            self.case = intake.withdraw_output(self.case, "place", who)

    def keep_comparison(self, folder: Path, who: str) -> None:
        """Keep what `compare` wrote of the scan at hand and the one before. Raises CaseError."""
        self.case = intake.add_output(self.case, "compare", folder, who)

    def add(self, run: Run, who: str) -> None:
        if run.of:
            self._history = [*self._history[: self._at], replace(self._history[self._at - 1], run=run)]
            self._at += 1
            return
        before = self.case
        if not run.scan.startswith("scans/"):
            self.case = intake.add_scan(self.case, "bodies", self.incoming() / run.scan, who)
        self.case = intake.add_result(self.case, self.result_folder(run.run), who)
        self._carry_teeth(before, who)
        result = self.case.table.result()
        assert result is not None
        stand = _Stand(replace(run, scan=self.scan), self.scan, result.folder)
        self._history = [*self._history[: self._at], stand]
        self._at += 1
        self.tidy()

    def _carry_teeth(self, before: Case, who: str) -> None:
        """Sites of the same scan that stand where a named one stood keep their tooth."""
        old, new = before.table.result(), self.case.table.result()
        teeth = before.table.teeth()
        if old is None or new is None or not teeth or old.scan != new.scan or old.id == new.id:
            return
        was, now = read_result(self.folder / old.folder), read_result(self.folder / new.folder)
        still = same_sites(was, now)
        kept = {tooth: still[name] for tooth, name in teeth.items() if name in still}
        if kept:
            self.case = intake.name_sites(self.case, kept, who)

    def step(self, by: int, who: str) -> None:
        if not 1 <= self._at + by <= len(self._history):
            return
        require_initials(who)
        here, stand = self._history[self._at - 1], self._history[self._at + by - 1]
        if self.scan != stand.scan:
            self.case = intake.add_scan(self.case, "bodies", self.folder / stand.scan, who)
        if here.result != stand.result:
            self.case = intake.add_result(self.case, self.folder / stand.result, who)
        self._at += by

    def choices(self) -> tuple[ChoiceView | None, ChoiceView | None]:
        def choice(index: int) -> ChoiceView | None:
            if not 1 <= index < len(self._history):
                return None
            return ChoiceView(self._history[index].run.kind, self._history[index].run.detail)

        return choice(self._at - 1), choice(self._at)

    def set_parts(self, parts: str, who: str) -> str:
        held = self.case.table.current_parts()
        if held is None or parts != str(self.folder / held.folder):
            self.case = intake.add_parts(self.case, parts, who)
            held = self.case.table.current_parts()
        assert held is not None
        self._begin()
        return str(self.folder / held.folder)

    @property
    def parts(self) -> str:
        """The parts folder of the case, "" where it has none."""
        held = self.case.table.current_parts()
        return str(self.folder / held.folder) if held else ""

    def tidy(self) -> None:
        for folder in self.cache.glob("measured-*"):
            shutil.rmtree(folder, ignore_errors=True)

    # ── teeth, checks, release ──────────────────────────────────────────────────────────────────────────────────────

    def name_tooth(self, site: str, tooth: str, who: str) -> None:
        """Say which tooth a site stands for; "" takes the name away. Raises UsageError, CaseError."""
        teeth = {number: name for number, name in self.case.table.teeth().items() if name != site}
        if tooth:
            if tooth in teeth:
                raise UsageError(f"tooth {tooth} is site {teeth[tooth]} already; a tooth stands for one site only")
            teeth[tooth] = site
        self.case = intake.name_sites(self.case, teeth, who)

    def check(self, ask: NoteCheck, who: str) -> None:
        """Note a chairside check; of a torque the value is the N·cm used. Raises UsageError, CaseError."""
        ok, value = ask.ok, ask.value
        if ok and ask.kind == "torque":
            ok, value = checks.torque_words(self.case, ask.tooth, _ncm(value))
        elif ask.kind == "unit" and ok:
            if not value.strip():
                raise UsageError("a unit check needs the scan body's number, like AT-0042")
            ok, value = unit_words(self.case, ask.tooth, value)
        elif ask.kind == "radiograph" and ask.marks is not None:
            found = marked(ask.marks.length, ask.marks.ends, ask.marks.pixel)
            ok, value = ok and found.gap_um is not None, found.sentence()
        self.case = checks.record_check(self.case, ask.tooth, ask.kind, who, ok, " ".join(value.split()))

    def release(self, tooth: str, reason: str, withdraw: bool, who: str) -> None:
        """A person releases a site, or takes it back. Raises CaseError."""
        self.case = (checks.withdraw if withdraw else checks.release)(self.case, tooth, who, reason)

    def view(self) -> CaseView:
        """What the page shows of the case. Raises ResultError, CaseError."""
        table = self.case.table
        sites = tuple(self._site(state) for state in checks.states(self.case))
        around = tuple(self._around(role) for role in AROUND if table.scan(role))
        return CaseView(table.code, table.work, sites, around, tuple(crossed(table.teeth())))

    def _around(self, role: Role) -> AroundView:
        join = self.case.table.join(role)
        return AroundView(role, join_words(join) if join else "", role == "bite" or self.case.table.lies_as_it_is(role))

    def _site(self, state: checks.SiteState) -> CaseSiteView:
        made = []
        for kind in KINDS:
            check = state.checks.get(kind)
            done = (check.ok, check.by, check.time, check.value) if check else (None, "", "", "")
            made.append(CheckView(kind, checks.QUESTION[kind], *done))
        release = state.release
        torque = checks.torque_target(self.case, state.site.scan_body)
        return CaseSiteView(
            tooth=state.tooth,
            site=state.site.site,
            checks=tuple(made),
            torque_ncm=torque,
            released_by=release.by if release else "",
            released_at=release.time if release else "",
            reason=release.reason if release else "",
        )


def _ncm(words: str) -> float:
    """A torque in N·cm as a person writes it. Raises UsageError."""
    try:
        ncm = float(words.replace(",", "."))
    except ValueError:
        raise UsageError("a torque check needs the value used in N·cm, like 15") from None
    if not 0.0 <= ncm <= 200.0:
        raise UsageError("a torque lies within 0 to 200 N·cm; write the value used, like 15")
    return ncm


def is_case(folder: Path) -> bool:
    """Whether a folder is a case."""
    return (folder / "log.jsonl").exists() or folder.name == "case.json"


def require_case(desk: Desk | None) -> CaseDesk:
    """The desk as a case. Raises CaseError where the page shows none."""
    if not isinstance(desk, CaseDesk):
        raise CaseError("this folder is no case; make one with 'stylobate case new', and open that")
    return desk
