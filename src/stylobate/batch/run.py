"""A batch from beginning to end: what is left to do, who does it, what is kept, one table of all."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from stylobate.batch.journal import FINAL, Journal, Outcome, held, settings_of
from stylobate.batch.local import done_locally
from stylobate.batch.source import Job, jobs_of
from stylobate.batch.summary import rows_of, write_summary
from stylobate.batch.work import Done, Options, Order
from stylobate.core.errors import UsageError
from stylobate.parts import load_parts
from stylobate.parts.model import PartsFolder

LIMIT_MIN = 30.0
"""Minutes after which a scan is given up."""

Workers = Callable[[Iterable[Order], PartsFolder, Options], Iterator[Done]]


@dataclass(frozen=True)
class Plan:
    """What to measure, with what, and where to."""

    source: Path
    parts: Path
    out: Path
    options: Options = field(default_factory=Options)
    workers: int = 1
    limit_min: float = LIMIT_MIN


@dataclass
class Count:
    """How far a batch is. earlier: done with by earlier runs; now: by this run; bad: scans without a result, with the
    reason."""

    total: int
    earlier: int
    now: int = 0
    bad: dict[str, str] = field(default_factory=dict)

    @property
    def left(self) -> int:
        """Scans still to be measured."""
        return self.total - self.earlier - self.now


def run(plan: Plan, tell: Callable[[Count], None] = lambda _: None, workers: Workers | None = None) -> Count:
    """Measure what is not yet measured, and write the summary of all. workers: others than this machine's processes.

    tell: called after each scan. Raises UsageError, PartsError, OutputError; what was done by then is kept.
    """
    parts = load_parts(plan.parts)
    _require_bodies(parts, plan.options)
    jobs = {job.key: job for job in jobs_of(plan.source, plan.out)}
    with held(plan.out, settings_of(parts, plan.options)) as journal:
        outcomes = {job: journal.outcome(job) for job in jobs.values()}
        left = [job for job, outcome in outcomes.items() if outcome is None or outcome.status not in FINAL]
        count = Count(len(jobs), len(jobs) - len(left))
        tell(count)
        orders = (Order(job.key, job.path) for job in left)
        doing = workers or _local(min(plan.workers, max(1, len(left))), plan.limit_min)
        for done in doing(orders, parts, plan.options) if left else ():
            job = jobs[done.key]
            outcomes[job] = journal.write(job, done)
            count.now += 1
            tell(count)
        _finish(journal, {job: outcome for job, outcome in outcomes.items() if outcome is not None}, count)
    return count


def _local(workers: int, limit_min: float) -> Workers:
    return lambda orders, parts, options: done_locally(orders, parts, options, workers, 60.0 * limit_min)


def _finish(journal: Journal, outcomes: dict[Job, Outcome], count: Count) -> None:
    rows = rows_of(journal, outcomes)
    write_summary(journal.out, rows)
    for row in rows:
        if row["status"] != "measured":
            count.bad[str(row["scan"])] = str(row["message"])


def _require_bodies(parts: PartsFolder, options: Options) -> None:
    known = [body.id for body in parts.scan_bodies]
    for name in options.scan_bodies:
        if name not in known:
            raise UsageError(
                f"scan body '{name}' is not in the parts folder '{parts.name}'. It has: {', '.join(known)}."
            )
