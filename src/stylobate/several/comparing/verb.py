"""The one file that knows the order of a comparison."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import numpy as np

from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray, LongArray
from stylobate.record import Record, read_result
from stylobate.several.comparing.components import Spread
from stylobate.several.comparing.errors import NOT_STATED, Drift, Prior, prior_of
from stylobate.several.comparing.layout import Cell, from_elsewhere, layout
from stylobate.several.comparing.likelihood import misfit
from stylobate.several.comparing.model import Agreement, Comparison, Contrast, DriftSize, Group
from stylobate.several.comparing.moved import FEWEST, Moved, Search, search
from stylobate.several.comparing.multiplicity import LEVEL
from stylobate.several.comparing.pool import pooled
from stylobate.several.comparing.repeat import PairSpread, distances, mean_model, repeats
from stylobate.several.comparing.union import Union, united
from stylobate.several.drifting.model import Profile


def compare(
    results: Sequence[str | Path | Record],
    groups: Mapping[str, Sequence[int]] | None = None,
    rescanned: Sequence[str] = (),
    profile: Profile | None = None,
) -> Comparison:
    """Compare repeat scans of the same implants.

    results: result.json files, folders that hold one, or records. groups: positions in `results` by scanner, material
    or operator. rescanned: sites (names as in the first result) of which only the last scan that shows them counts.
    profile: how the scanner drifts, where that is known.
    Raises ResultError and UsageError.
    """
    records = [one if isinstance(one, Record) else read_result(one) for one in results]
    union = united(records)
    assigned = _assigned(groups, len(records))
    left_out = _outdated(union, rescanned)
    held = prior_of(records, profile)
    found = search(union, held, left_out)
    weights = found.draws.weights()
    model = mean_model(found.layout, found.drift.parts, found.draws.theta, weights)
    pairs = distances(union)
    agreement = _agreement(union, found.drift, held, left_out)
    why_not = _disagreement(union, found.moved, agreement)
    return Comparison(
        union=union,
        residual=found.layout.residual,
        repeats=repeats(found.layout, pairs, model, assigned),
        pairs=tuple(pairs),
        moved=found.moved,
        tried=found.tried,
        findable=tuple(found.findable.tolist()),
        noise_factor=_quantiles(found.draws.theta[:, 0], weights),
        drift=_drift_size(found, weights),
        groups=_groups(groups, found, pairs, model),
        contrasts=_contrasts(groups, pairs, found),
        agreement=agreement,
        pooled=None if why_not else pooled(union, found.layout, model),
        why_not_pooled=why_not,
        drift_from=held.source,
        notes=_notes(union, found),
    )


def _assigned(groups: Mapping[str, Sequence[int]] | None, scans: int) -> LongArray:
    """(scans,) number of each scan's group. Raises UsageError where a scan is in none or in two."""
    if not groups:
        return np.zeros(scans, dtype=np.int64)
    assigned = np.full(scans, -1, dtype=np.int64)
    for number, (name, members) in enumerate(groups.items()):
        for k in members:
            if assigned[k] >= 0:
                raise UsageError(f"--group {name}: scan {k + 1} is in another group already; name it once")
            assigned[k] = number
    if (assigned < 0).any():
        missing = ", ".join(str(k + 1) for k in np.flatnonzero(assigned < 0))
        raise UsageError(f"--group: scan {missing} is in no group; name each result in one group")
    return assigned


def _outdated(union: Union, rescanned: Sequence[str]) -> frozenset[Cell]:
    """Cells that a rescan replaces. Raises UsageError where a site was not scanned again."""
    cells: set[Cell] = set()
    for name in rescanned:
        named = [i for i, row in enumerate(union.sites) if row[0] is not None and row[0].site == name]
        if not named:
            known = ", ".join(site.site for site in union.records[0].sites)
            raise UsageError(f"--rescan {name}: {union.records[0].name} has no such site; it has {known}")
        shown = [k for k, site in enumerate(union.sites[named[0]]) if site is not None]
        if len(shown) < 2:
            raise UsageError(f"--rescan {name}: no other scan shows this site; add the scan that does")
        cells |= {(k, named[0]) for k in shown[:-1]}
    return frozenset(cells)


def _agreement(union: Union, drift: Drift, held: Prior, left_out: frozenset[Cell]) -> Agreement | None:
    """Of poses from elsewhere with the scans, by what both state; no site left out but those that a rescan replaces."""
    from scipy.special import chdtrc

    whole = layout(union, left_out)
    if whole.scanned.all():
        return None
    counted = held is not NOT_STATED or not whole.scanned.any()
    sizes = held.median if counted else held.median * (np.arange(len(held.median)) == 0)
    squares, freedom = misfit(whole, drift.parts, sizes)
    return Agreement(float(chdtrc(freedom, squares)), squares, freedom, counted)


def _disagreement(union: Union, moved: Sequence[Moved], agreement: Agreement | None) -> str:
    """Why the scans cannot be pooled, or nothing: of two scans that differ at a site, none is known to be right."""
    for one in moved:
        implant = one.cell[1]
        shown = [k for k, site in enumerate(union.sites[implant]) if site is not None]
        if len(shown) < 3:
            name = union.name(implant)
            return (
                f"site {name} stands differently in the two scans that show it; scan it again, or say by "
                f"--rescan {name} that the later one counts"
            )
    if agreement is not None and agreement.drift and not moved and agreement.p < LEVEL:
        return (
            f"the poses from elsewhere differ from the scans by more than both state (p = {agreement.p:.1g}), and not "
            "at one site alone; measure again, or state what is not counted (drift, seating, made_u_um)"
        )
    return ""


def _quantiles(values: FloatArray, weights: FloatArray) -> Spread:
    order = np.argsort(values)
    total = np.cumsum(weights[order])
    low, median, high = (float(values[order][np.searchsorted(total, q)]) for q in (0.025, 0.5, 0.975))
    return Spread(median, float("nan"), low, high)


def _drift_size(found: Search, weights: FloatArray) -> DriftSize | None:
    poses = found.layout.poses
    shown = np.flatnonzero(found.layout.seen[:, ::6].any(axis=0))
    if len(shown) < 2:
        return None
    i, j = int(shown[0]), int(shown[-1])
    way = poses[j][:3, 3] - poses[i][:3, 3]
    slope = np.zeros(6 * len(poses))
    slope[6 * i : 6 * i + 3] = -poses[i][:3, :3].T @ way / np.linalg.norm(way)
    slope[6 * j : 6 * j + 3] = poses[j][:3, :3].T @ way / np.linalg.norm(way)
    of_each = np.einsum("a,jab,b->j", slope, found.drift.parts, slope)
    spread = _quantiles(np.sqrt(found.draws.theta[:, 1:] ** 2 @ of_each), weights)
    return DriftSize((i, j), spread.sd, spread.low, spread.high)


def _groups(
    groups: Mapping[str, Sequence[int]] | None, found: Search, pairs: Sequence[PairSpread], model: FloatArray
) -> tuple[Group, ...]:
    if not groups:
        return ()
    made = []
    for name, members in groups.items():
        at = np.array(members, dtype=np.int64)
        theirs = [replace(pair, distances=tuple(pair.distances[k] for k in at)) for pair in pairs]
        alone = repeats(found.layout.of(at), theirs, model[at], np.zeros(len(at), dtype=np.int64))
        made.append(Group(name, tuple(members), alone))
    return tuple(made)


def _contrasts(
    groups: Mapping[str, Sequence[int]] | None, pairs: Sequence[PairSpread], found: Search
) -> tuple[Contrast, ...]:
    """Welch's interval (1947) of the difference of mean distances, each pair and each two groups by themselves.

    Moved sites are left out.
    """
    from scipy.stats import ttest_ind

    made = []
    for (one, first), (two, second) in combinations((groups or {}).items(), 2):
        for pair in pairs:
            i, j = pair.implants
            samples = [
                [d for k in members if (d := pair.distances[k]) is not None and found.shows(k, i, j)]
                for members in (first, second)
            ]
            if min(map(len, samples)) < 2:
                continue
            interval = ttest_ind(samples[1], samples[0], equal_var=False).confidence_interval(0.95)
            difference = float(np.mean(samples[1]) - np.mean(samples[0]))
            made.append(Contrast((one, two), pair.implants, difference, float(interval.high - interval.low) / 2.0))
    return tuple(made)


def _notes(union: Union, found: Search) -> tuple[str, ...]:
    notes = list(union.doubts)
    for k, record in enumerate(union.records):
        shared = sum(union.sites[i][k] is not None for i in union.common())
        if shared < FEWEST:
            notes.append(
                f"{record.name} shares {shared} sites with the other scans: which of them moved cannot be named; "
                "their distance shows it"
            )
    named = ", ".join(record.name for record in union.records if from_elsewhere(record))
    if named:
        notes.append(
            f"{named}: not of a scan, so that it does not drift, and what it states is taken as it is; what the scan's "
            "budget knows of seating, play, temperature and the made part counts as the scan's"
        )
    if len(union.records) == 2 and found.moved:
        notes.append("Of two scans it cannot be told in which a site moved; it is named in the later one.")
    return tuple(notes)
