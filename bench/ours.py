"""Ours, through the public library call."""

from __future__ import annotations

import numpy as np

from bench.method import Found
from bench.scenes import Task
from stylobate.core.errors import StylobateError
from stylobate.core.result import Result, Site
from stylobate.measuring import measure


def blind(task: Task) -> list[Found]:
    """All that `measure` finds without a hint."""
    return _found(measure(task.scan(), task.parts, maps=False))


def near(task: Task) -> list[Found]:
    """Each site from a rough point and the body's name: `measure` takes no starting pose, and needs none."""
    found = []
    scan = task.scan()
    for body, start in task.starts:
        try:
            found += _found(
                measure(scan, task.parts, scan_bodies=[body], near=[start[:3, 3].tolist()], count=1, maps=False)
            )
        except StylobateError:  # nothing there: a miss
            continue
    return found


def _found(result: Result) -> list[Found]:
    return [_one(site) for site in result.sites]


def _one(site: Site) -> Found:
    flags = [finding.cause for finding in site.findings]
    if site.verdict is not None and site.verdict.verdict != "use":
        flags.append(site.verdict.verdict)
    index = None if site.u95.index_deg is None else float(np.radians(site.u95.index_deg))
    u95 = (site.u95.platform_um * 1e-3, float(np.radians(site.u95.axis_deg)), index)
    return Found(site.scan_body, site.scan_from_connection, site.covariance, u95, tuple(flags))
