"""Chosen parts from one measurement to the next: which choices still stand, and which do not and why."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from stylobate.app.web.chains import chain_word, read_word
from stylobate.build.footing import REFUSED
from stylobate.build.request import Step
from stylobate.build.ways import ways_of, ways_on
from stylobate.core.errors import ResultError, UsageError
from stylobate.core.rigid import turn_of
from stylobate.core.types import FloatArray
from stylobate.parts.model import PartsFolder
from stylobate.record import Record, RecordSite
from stylobate.several.match import matched

SAME_PLACE = 1.0
"""mm: a site whose platform moved less than this between two measurements of one scan is the same one."""


def same_sites(was: Record, now: Record) -> dict[str, str]:
    """Of two measurements of one scan: each site that was, to the one that stands there now."""
    found: dict[str, str] = {}
    for site in was.sites:
        place = site.scan_from_connection[:3, 3]
        apart = [float(np.linalg.norm(other.scan_from_connection[:3, 3] - place)) for other in now.sites]
        if apart and min(apart) < SAME_PLACE:
            found[site.site] = now.sites[int(np.argmin(apart))].site
    return found


def carried(
    was: Record, now: Record, chains: Sequence[str], parts: PartsFolder
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The chosen chains for the sites of `now`, and one line for each that does not stand any more.

    Another scan's sites are matched by how they stand to each other. A turn is counted from the site's own index mark,
    so it changes where the mark does: the part points where it pointed.
    """
    if not chains:
        return (), ()
    pairs, now_from_was, why = _paired(was, now)
    kept: list[str] = []
    lost: list[str] = []
    for word in chains:
        name, chain = read_word(word)
        old = next((site for site in was.sites if site.site == name), None)
        new = next((site for site in now.sites if site.site == pairs.get(name)), None)
        found = None if old is None or new is None else _chain_on(old, new, chain, now_from_was, parts)
        if found is not None and new is not None and new.verdict != REFUSED:
            kept.append(chain_word(new.site, found))
        else:
            lost.append(f"site {name} ({', '.join(part for part, _ in chain)}): {why or _reason(old, new)}")
    return tuple(kept), tuple(lost)


def _paired(was: Record, now: Record) -> tuple[dict[str, str], FloatArray, str]:
    """Site to site, the motion between the frames (4, 4), and why nothing can be paired, "" where something can."""
    if was.scan.sha256 == now.scan.sha256:
        return same_sites(was, now), np.eye(4), ""
    try:
        match = matched(was, now)
    except ResultError:
        return {}, np.eye(4), "in the new scan no site can be told to be the same one"
    if match.ambiguous:
        return {}, np.eye(4), "in the new scan it could be more than one site"
    return {was.sites[i].site: now.sites[j].site for i, j in match.pairs}, match.b_from_a, ""


def _chain_on(
    old: RecordSite, new: RecordSite, chain: Sequence[tuple[str, int]], now_from_was: FloatArray, parts: PartsFolder
) -> tuple[tuple[str, int], ...] | None:
    """The chain with its lowest turn counted from the new mark; None where it cannot stand there."""
    if old.connection != new.connection or new.connection not in {c.id for c in parts.connections}:
        return None
    options = {way.names for way in ways_on(parts, new.connection)}
    (first, turn), *above = chain
    if new.index_order:
        motion = np.linalg.inv(now_from_was @ old.scan_from_connection) @ new.scan_from_connection
        turned = (turn - round(turn_of(motion) * new.index_order / (2.0 * math.pi))) % new.index_order
        if ((first, turned), *above) in options:
            return ((first, turned), *above)
        if tuple(chain) not in options and _stands(((first, turned), *above), new, parts):
            return ((first, turned), *above)
    return tuple(chain) if tuple(chain) in options else None


def _stands(chain: tuple[tuple[str, int], ...], site: RecordSite, parts: PartsFolder) -> bool:
    """Whether a chain can stand at these turns: one whose turn changes no channel is not among the options."""
    try:
        return bool(ways_of(parts, site.connection, [Step(*step) for step in chain], ""))
    except UsageError:
        return False


def _reason(old: RecordSite | None, new: RecordSite | None) -> str:
    if old is None or new is None:
        return "nothing was found there any more"
    if new.verdict == REFUSED:
        return "its verdict is “Don't use” now"
    if old.connection != new.connection:
        return f"it stands on {new.connection} now"
    return "the parts at hand do not hold them"
