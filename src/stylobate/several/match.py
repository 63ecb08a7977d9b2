"""Which site of one result is which of another: by how they stand to each other, whatever the numbering and the frame.

Every pair of sites is laid on every pair that is as far apart (random sample consensus without the randomness:
Fischler & Bolles 1981); the others are then assigned to whatever stands where they should.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, permutations

import numpy as np

from stylobate.core.errors import ResultError
from stylobate.core.rigid import turn_of
from stylobate.core.types import FloatArray
from stylobate.record.model import Record, RecordSite
from stylobate.several.lay import LEVER, laid, landmarks

REACH = 1.0
"""mm by which a site may stand off and still be the same one: far above any measuring error, far below the spacing of
implants (common practice, no source)."""
STRANGE = 0.2
"""mm rms of landmarks: beyond what drift and a body left 0.3 mm high make of one mouth (common practice, no source)."""
TURN_RADIUS = 2.0
"""mm: a turn about the axis counts as the way of a point at this radius."""
TURN_MOST = 0.3
"""mm: the most that a turn counts; a body put in at another turn must not undo a match."""
ALIKE = 0.1
"""mm rms: two ways to match that differ by less cannot be told apart by the poses; names then decide."""


@dataclass(frozen=True)
class Match:
    """pairs: (index in a, index in b), ascending in a. b_from_a: (4, 4) least squares over landmarks of the pairs.

    rms: of what then separates the landmarks, mm. ambiguous: another way to match fits as well.
    """

    pairs: tuple[tuple[int, int], ...]
    b_from_a: FloatArray
    rms: float
    ambiguous: bool

    def doubts(self, a: str, b: str) -> tuple[str, ...]:
        """A question where the sites of `a` and `b` (names of results) stand too far apart for scans of one mouth."""
        if self.rms < STRANGE:
            return ()
        return (
            f"Are {a} and {b} of the same implants? Laid on each other their sites stand {self.rms:.2f} mm apart "
            "(rms), much more than scans of one mouth do.",
        )


def matched(a: Record, b: Record, reach: float = REACH) -> Match:
    """Match the sites of two results.

    Raises ResultError where fewer than two sites, or not more than half of the smaller result's, stand alike, and
    where they do so only in the mirror; it says what does not match.
    """
    match = best_match(a.sites, b.sites, reach)
    count = 0 if match is None else len(match.pairs)
    mirrored = best_match([_mirrored(site) for site in a.sites], b.sites, reach)
    if mirrored is not None and len(mirrored.pairs) > max(count, 2):
        raise ResultError(
            f"{a.name} and {b.name}: {len(mirrored.pairs)} sites stand alike only in the mirror; one of the scans was "
            "mirrored: export it again without mirroring"
        )
    if match is None or 2 * count <= min(len(a.sites), len(b.sites)):
        raise ResultError(
            f"{a.name} and {b.name}: {_few(count)} of {len(a.sites)} and {len(b.sites)} sites stand alike "
            f"({_apart(a.sites)} there, {_apart(b.sites)} here); name results of the same implants"
        )
    return match


def best_match(a: Sequence[RecordSite], b: Sequence[RecordSite], reach: float = REACH) -> Match | None:
    """The way to pair sites that leaves most of them within `reach` and least apart; None below two pairs."""
    found: dict[tuple[tuple[int, int], ...], tuple[float, Match]] = {}
    from_a, from_b = _stacked(a), _stacked(b)
    for one, two in combinations(range(len(a)), 2):
        for three, four in permutations(range(len(b)), 2):
            if not _as_far_apart(from_a[[one, two]], from_b[[three, four]], 2.0 * reach):
                continue
            match = _grown(a, b, (from_a, from_b), ((one, three), (two, four)), reach)
            if match is not None and match.pairs not in found:
                found[match.pairs] = (_worth(a, b, match, reach), match)
    if not found:
        return None
    most = max(worth for worth, _ in found.values())
    slack = (ALIKE / reach) ** 2
    alike = [
        (_same_names(a, b, match), worth, match)
        for worth, match in found.values()
        if worth >= most - slack * len(match.pairs)
    ]
    _, _, best = max(alike, key=lambda entry: entry[:2])
    return Match(best.pairs, best.b_from_a, best.rms, len(alike) > 1)


def any_turn(site: RecordSite) -> bool:
    """Whether nothing is known of the turn: no index, or as unsure as the marks are far apart (a plain seat)."""
    return site.index_order == 0 or (site.u95 is not None and site.u95.any_turn(site.index_order))


def turned_alike(a: RecordSite, b: RecordSite, b_from_a: FloatArray) -> float:
    """Turn about z from the pose of `a`, laid on b's frame, to that of `b`, radians, over the equal index marks.

    0 where nothing is known of it.
    """
    if any_turn(a) or any_turn(b):
        return 0.0
    motion = np.linalg.inv(b_from_a @ a.scan_from_connection) @ b.scan_from_connection
    turn = turn_of(motion)
    period = 2.0 * np.pi / a.index_order
    return float((turn + period / 2) % period - period / 2)


def _grown(
    a: Sequence[RecordSite],
    b: Sequence[RecordSite],
    poses: tuple[FloatArray, FloatArray],
    start: tuple[tuple[int, int], ...],
    reach: float,
) -> Match | None:
    """All sites assigned by the motion of a start, and again by the motion of those, until nothing changes."""
    pairs = start
    for _ in range(4):
        rows, columns = [i for i, _ in pairs], [j for _, j in pairs]
        from_a, from_b = landmarks(poses[0][rows]), landmarks(poses[1][columns])
        motion = laid(from_a, from_b)
        off = distances(motion @ poses[0], poses[1])
        for i, one in enumerate(a):
            off[i, [k for k, other in enumerate(b) if unlike(one.connection, other.connection)]] = np.inf
        grown = assigned(off, reach)
        if len(grown) < 2:
            return None
        if grown == pairs:
            apart = from_a @ motion[:3, :3].T + motion[:3, 3] - from_b
            return Match(pairs, motion, float(np.sqrt(np.mean(np.sum(apart**2, axis=1)))), False)
        pairs = grown
    return None


def unlike(one: str, two: str) -> bool:
    """Whether two connections cannot be the same; "" is one of which nothing is said."""
    return bool(one) and bool(two) and one != two


def distances(one: FloatArray, two: FloatArray) -> FloatArray:
    """(n, m) mm: the larger way that centre or upper point of a pose of `one` has to go to that of `two`."""
    off = np.zeros((len(one), len(two)))
    for lever in (0.0, LEVER):
        p, q = (poses[:, :3, 3] + lever * poses[:, :3, 2] for poses in (one, two))
        off = np.maximum(off, np.linalg.norm(p[:, None] - q[None], axis=2))
    return off


def assigned(off: FloatArray, reach: float) -> tuple[tuple[int, int], ...]:
    """Nearest first, each site once, none beyond reach."""
    left, pairs = off.copy(), []
    while left.size and left.min() < reach:
        i, j = np.unravel_index(int(left.argmin()), left.shape)
        pairs.append((int(i), int(j)))
        left[i, :], left[:, j] = np.inf, np.inf
    return tuple(sorted(pairs))


def _worth(a: Sequence[RecordSite], b: Sequence[RecordSite], match: Match, reach: float) -> float:
    """Sum over the pairs of 1 − (distance / reach)²: truncated least squares."""
    turns = [TURN_RADIUS * abs(turned_alike(a[i], b[j], match.b_from_a)) for i, j in match.pairs]
    capped = np.minimum(turns, TURN_MOST)
    return len(match.pairs) * (1.0 - (match.rms / reach) ** 2) - float(np.sum(capped**2)) / reach**2


def _stacked(sites: Sequence[RecordSite]) -> FloatArray:
    return np.array([site.scan_from_connection for site in sites]).reshape(-1, 4, 4)


def _as_far_apart(one: FloatArray, two: FloatArray, slack: float) -> bool:
    lengths = [float(np.linalg.norm(poses[0, :3, 3] - poses[1, :3, 3])) for poses in (one, two)]
    return abs(lengths[0] - lengths[1]) < slack


def _same_names(a: Sequence[RecordSite], b: Sequence[RecordSite], match: Match) -> int:
    return sum(a[i].site == b[j].site for i, j in match.pairs)


def _mirrored(site: RecordSite) -> RecordSite:
    """The site of a scan mirrored in x: a proper pose again, its y turned about, the turn meaning nothing."""
    pose = np.diag([-1.0, 1.0, 1.0, 1.0]) @ site.scan_from_connection @ np.diag([1.0, -1.0, 1.0, 1.0])
    return RecordSite(site.site, site.scan_body, site.connection, site.platform_diameter, 0, pose, site.covariance)


def _few(count: int) -> str:
    return "none" if count == 0 else f"only {count}"


def _apart(sites: Sequence[RecordSite]) -> str:
    """Distances from site to site, and the connections: what a reader can compare."""
    centres = _stacked(sites)[:, :3, 3]
    steps = np.linalg.norm(np.diff(centres, axis=0), axis=1) if len(sites) > 1 else []
    kinds = ", ".join(sorted({site.connection for site in sites})) or "nothing"
    return f"{kinds} {' – '.join(f'{step:.1f}' for step in steps)} mm apart" if len(steps) else kinds
