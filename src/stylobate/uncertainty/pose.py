"""Fit → Pose: the pose that the residual field makes likeliest, and its covariance.

Generalised least squares over patches (method, eq. 5): ξ = (Aᵀ K⁻¹ A)⁻¹ Aᵀ K⁻¹ r.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.closest import Closest, SurfaceTree
from stylobate.core.types import FloatArray, LongArray
from stylobate.fit.descend import OFFSET_SD, REACH, Around, Fit, surprise, to_connection
from stylobate.fit.design import Design, design, profiled
from stylobate.fit.edges import PROFILE_SD, SHAPES, SharpEdges, likeliest_profile
from stylobate.uncertainty.field import Field, Patches, Whitened, groups_of, patches_of
from stylobate.uncertainty.likelihood import estimate
from stylobate.uncertainty.unsure import Doubt, doubt

TURN, OFFSET, PROFILE = 5, 6, slice(7, 7 + SHAPES)  # places among the parameters
HELD_TURN = 1e-5  # rad
FAR = 100.0  # by which squares fall to their least from a pose that a cause has moved: too far for one linear step


@dataclass(frozen=True)
class Pose:
    """A weighted pose.

    scan_from_connection (4, 4); parameters (k, k): covariance of ξ, offset and profile, mm and radians; offset of
    the surface, mm; profile (SHAPES,) that the scan shows at sharp edges, mm; the residual field; effective_points:
    independent points that would fix the offset as well. unsure: what the field's own uncertainty, counted in
    `parameters`, does; reaches (k, k): what is counted there because squares hardly rise to one side.
    """

    scan_from_connection: FloatArray
    parameters: FloatArray
    offset: float
    profile: FloatArray
    field: Field
    effective_points: float
    unsure: Doubt | None = None
    reaches: FloatArray | float = 0.0

    @property
    def covariance(self) -> FloatArray:
        """(6, 6) of ξ, mm and radians."""
        return self.parameters[:6, :6]

    @property
    def offset_sd(self) -> float:
        """mm."""
        return float(np.sqrt(self.parameters[OFFSET, OFFSET]))

    def moved(self, step: FloatArray, parameters: FloatArray) -> Pose:
        """After a step (k,) of the parameters, with their covariance (k, k)."""
        return replace(
            self,
            scan_from_connection=rigid.orthonormal(self.scan_from_connection @ rigid.exp(step[:6])),
            parameters=parameters,
            offset=self.offset + float(step[OFFSET]),
            profile=self.profile + step[PROFILE],
        )

    def turn_known_within(self, widest: float) -> Pose:
        """The same pose, its turn known no better than ±`widest` rad with 95 %."""
        least = (widest / 1.96) ** 2
        if self.parameters[5, 5] >= least:
            return self
        parameters = self.parameters.copy()
        parameters[5, 5] = least
        return replace(self, parameters=parameters)


# What is known before the fit: the search has found the place, so nothing here weighs against real data; it keeps a
# motion that the surface does not fix (the turn of a round body) finite. Standard deviations: 0.5 mm, 0.3 rad, any
# turn; the offset as in the fit; the profile at edges.
PRIOR_SD = np.array([0.5, 0.5, 0.5, 0.3, 0.3, rigid.ANY_TURN, OFFSET_SD, *PROFILE_SD])
FIELD_ROUNDS = 3  # the field is estimated anew in these, then kept
MOST_STEPS, HALVINGS = 12, 4
SETTLED = 0.02  # ξᵀ C⁻¹ ξ of a step below which the pose has converged: a seventh of a standard deviation
WEAK_TURN, WEAKEST_TURN = np.radians(0.25), np.radians(3.0)  # sd of the turn from which others are tried; to which
TURNED = (-5.0, -2.5, 2.5, 5.0)  # standard deviations
SAME = 1.0  # ξᵀ C⁻¹ ξ between two places below which they are one minimum
LEVER, WEAK = 5.0, 0.008  # mm, of axis to place; sd of a motion from which it is asked how far it reaches
REACHED = (2.0, 4.0, 8.0, 16.0, 32.0)  # standard deviations
WIDER = 1.5  # times as far as the covariance says, from which that is taken for no more than a local one
# mm: residuals as wide over such a length are another surface's; splits of 0.2 mm, the widest, reach two thirds.
FOREIGN_SD, FOREIGN_LENGTH = 0.1, 0.45


@dataclass(frozen=True)
class _State:
    """Where the CAD surface lies: pose, offset of the scan's surface, its profile at edges."""

    pose: FloatArray
    offset: float
    profile: FloatArray

    def moved(self, step: FloatArray) -> _State:
        return _State(self.pose @ rigid.exp(step[:6]), self.offset + float(step[OFFSET]), self.profile + step[PROFILE])

    @property
    def away(self) -> FloatArray:
        """(k,) how far the parameters lie from where they are known to be beforehand, which only the profile is."""
        return np.array([*np.zeros(PROFILE.start), *self.profile])

    def away_from(self, other: _State) -> FloatArray:
        """The step (k,) that leads here from the other."""
        motion = rigid.log(rigid.inverse(other.pose) @ self.pose)
        return np.array([*motion, self.offset - other.offset, *(self.profile - other.profile)])


class _Site:
    """The points that carry a fit, looked at from any state."""

    def __init__(
        self, tree: SurfaceTree, edges: SharpEdges, points: FloatArray, known: tuple[FloatArray, Closest] | None = None
    ) -> None:
        """known: a pose (4, 4), and the points' closest ones there."""
        self.tree, self.edges, self.points, self.known = tree, edges, points, known
        self.group: LongArray | None = None
        self.last: tuple[FloatArray, Closest, Design] | None = None
        self.averaged: tuple[_State, Patches] | None = None

    def seen(self, state: _State) -> tuple[Design, Closest] | None:
        """Residuals and their derivatives at a state; None where points have left the surface."""
        if self.last is not None and self.last[0] is state.pose:
            _, closest, before = self.last
            return profiled(before, closest, state.offset, state.profile), closest
        local = to_connection(state.pose, self.points)
        if self.known is not None and self.known[0] is state.pose:
            closest = self.tree.curved_at(local, self.known[1])
        else:
            closest = self.tree.closest_curved(local, REACH)
        if np.any(closest.face < 0):
            return None
        here = design(local, closest, self.edges, state.offset, state.profile)
        self.last = state.pose, closest, here
        return here, closest

    def patches(self, state: _State) -> Patches | None:
        """The same averaged over patches, which stay those of the first state asked for."""
        if self.averaged is None or self.averaged[0] is not state:
            seen = self.seen(state)
            if seen is None:
                return None
            here, closest = seen
            if self.group is None:
                self.group = groups_of(here.feet, closest.gradient, here.to_edge)
            self.averaged = state, patches_of(here.feet, here.residual, here.rows, self.group, here.edge)
        return self.averaged[1]


def solve(patches: Patches, field: Field, prior: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Generalised least squares: parameters (k,), their covariance and information (k, k). prior (k,): information
    added, 1/unit².
    """
    return Whitened.of(patches, field.factor(patches)).solve(prior)


def weigh(tree: SurfaceTree, edges: SharpEdges, around: Around, fit: Fit) -> Pose | None:
    """The pose weighted by the correlation of its own residuals: rounds of field and pose, then the field is kept and
    the weighted squares fall to their minimum. None where the surface is lost on the way, or is another.

    Parameters: ξ (6), the offset, and the profile at sharp edges.
    """
    state = _State(fit.scan_from_connection, fit.offset, np.zeros(SHAPES))
    first = fit.closest.at(np.searchsorted(fit.near, fit.support))
    site = _Site(tree, edges, around.points[fit.support], (fit.scan_from_connection, first))
    seen = site.seen(state)
    if seen is None:
        return None
    sharp = seen[0]
    state = replace(state, profile=likeliest_profile(sharp.rows[:, PROFILE], sharp.residual))
    prior = 1.0 / PRIOR_SD**2
    field: Field | None = None
    for _ in range(FIELD_ROUNDS):
        patches = site.patches(state)
        if patches is None:
            return None
        field = estimate(patches, field)
        if field.correlated_sd * min(1.0, field.length / FOREIGN_LENGTH) > FOREIGN_SD:
            return None
        factor = field.factor(patches)
        white = Whitened.of(patches, factor)
        step, _, _ = white.solve(prior, state.away)
        lower = _lower(site, state, white, step, factor, prior)
        state = state if lower is None else lower[0]
    rested = _rest(site, state, factor, prior)
    if patches is None or field is None or rested is None:
        return None
    rested = _best_turned(site, rested, factor, prior)
    state, information = rested.state, rested.information
    gain = rested.white.gain(np.asarray(np.linalg.inv(information), dtype=np.float64), factor)
    reaches = _reaching(site, rested, factor, prior)
    unsure = doubt(rested.covariance, gain, patches, field).and_more(reaches)
    covariance = unsure.on(rested.covariance)
    effective = float(information[OFFSET, OFFSET]) * (field.white_sd**2 + field.correlated_sd**2)
    pose = rigid.orthonormal(state.pose)
    return Pose(pose, covariance, state.offset, state.profile, field, effective, unsure, reaches)


@dataclass(frozen=True)
class Stand:
    """One way in which a scan body may stand: its CAD surface and edges, scan_from_connection (4, 4), offset, mm."""

    tree: SurfaceTree
    edges: SharpEdges
    scan_from_connection: FloatArray
    offset: float


def doubts(pose: Pose, mine: Stand, others: Iterable[Stand], points: FloatArray) -> Iterator[float]:
    """−2 ln of the odds of each of others against `mine`, all but the turn moved to its best (method, eq. 9a).

    pose: the weighted one of `mine`. points (n, 3): that carry its fit. inf where they leave a surface.
    """
    first = _Site(mine.tree, mine.edges, points)
    patches = first.patches(_State(mine.scan_from_connection, mine.offset, pose.profile))
    if patches is None:
        return
    factor = pose.field.factor(patches)
    prior = 1.0 / np.where(np.arange(len(PRIOR_SD)) == TURN, HELD_TURN, PRIOR_SD) ** 2

    def least(stand: Stand, descend: bool) -> tuple[float, float]:
        """The squares at their least, linear about the stand or descended to, and by how much they fell."""
        site = _Site(stand.tree, stand.edges, points)
        site.group = first.group
        state = _State(stand.scan_from_connection, stand.offset, pose.profile)
        white = _whitened(site, state, factor)
        if white is None:
            return np.inf, 0.0
        step, _, information = white.solve(prior, state.away)
        fall, offset = float(step @ information @ step), stand.offset + float(step[OFFSET])
        cost = _cost(white, state, prior) - fall
        rested = _rest(site, state, factor, prior) if descend else None
        if rested is not None:
            cost, offset = rested.cost, rested.state.offset
        return cost + surprise(offset), fall

    here, fall = least(mine, descend=False)
    far = fall > FAR
    here = least(mine, descend=True)[0] if far else here
    yield from (least(other, far)[0] - here for other in others)


@dataclass(frozen=True)
class _Rested:
    """Where the weighted squares fell to a minimum: state, covariance, information, and the squares there."""

    state: _State
    covariance: FloatArray
    information: FloatArray
    white: Whitened
    cost: float

    def apart(self, other: _Rested) -> float:
        """ξᵀ C⁻¹ ξ of the step from the other place to this."""
        step = self.state.away_from(other.state)
        return float(step @ other.information @ step)


def _best_turned(site: _Site, first: _Rested, factor: FloatArray, prior: FloatArray) -> _Rested:
    """The lowest of the minima about z: where little shows the turn, a flat can rest on the wrong edge.

    The other minima stay possible, by the odds of their squares: the covariance is the mixture's, about the lowest.
    """
    sd = float(np.sqrt(first.covariance[5, 5]))
    minima = [first]
    for away in TURNED if sd > WEAK_TURN else ():
        turn = np.zeros(len(prior))
        turn[TURN] = away * min(sd, WEAKEST_TURN)
        other = _rest(site, first.state.moved(turn), factor, prior)
        if other is not None and all(other.apart(known) > SAME for known in minima):
            minima.append(other)
    best = min(minima, key=lambda one: one.cost)
    weight = np.exp([(best.cost - one.cost) / 2.0 for one in minima])
    spread = [one.covariance + np.outer(away, away) for one in minima for away in [one.state.away_from(best.state)]]
    return replace(best, covariance=np.average(spread, axis=0, weights=weight))


def _reaching(site: _Site, rested: _Rested, factor: FloatArray, prior: FloatArray) -> FloatArray:
    """(k, k) by which the covariance of ξ is too small where squares hardly rise to one side of the minimum.

    Where an edge alone fixes a motion, it may only bar the way to one side: a body seen without its top may stand
    higher than its seen walls reach, but not lower. What follows the motion is known of ξ only close by, and of offset
    and profile not at all: they gain nothing.
    """
    scale = np.array([1.0, 1.0, 1.0, LEVER, LEVER])
    values, vectors = np.linalg.eigh(rested.covariance[:5, :5] * np.outer(scale, scale))
    added = np.zeros_like(rested.covariance)
    for value, vector in zip(values, vectors.T, strict=True):
        if value > WEAK**2:
            way, along = np.zeros((2, len(prior)))
            way[:5], along[:5] = np.sqrt(value) * vector / scale, scale * vector
            farthest = max(_reach(site, rested, sign * way, along, factor, prior) for sign in (-1.0, 1.0))
            follows = np.append(rested.covariance[:6] @ along, np.zeros(len(prior) - 6))
            added += (farthest**2 - 1.0) / value * np.outer(follows, follows)
    return added


def _reach(
    site: _Site, rested: _Rested, way: FloatArray, along: FloatArray, factor: FloatArray, prior: FloatArray
) -> float:
    """How many times as far as a standard deviation the squares let the parameters go `way` (k,), at least 1.

    way is one standard deviation of along @ parameters; all else is free, linear about each place.
    """
    farthest, least = 1.0, _held(rested.white, rested.state, along, prior)
    for many in REACHED:
        state = rested.state.moved(many * way)
        there = _whitened(site, state, factor)
        if there is None:
            break
        risen = _held(there, state, along, prior) - least
        reached = many / np.sqrt(max(risen, 1.0))
        if reached < max(farthest, WIDER):
            break
        farthest = float(reached)
    return farthest


def _held(white: Whitened, state: _State, along: FloatArray, prior: FloatArray) -> float:
    """The squares at their least over all steps that leave along @ parameters where it is, linear about the state."""
    step, covariance, information = white.solve(prior, state.away)
    kept = float(along @ step) ** 2 / float(along @ covariance @ along)
    return _cost(white, state, prior) - float(step @ information @ step) + kept


def _rest(site: _Site, state: _State, factor: FloatArray, prior: FloatArray) -> _Rested | None:
    """Gauss–Newton with halved steps until the weighted squares fall no further.

    Across a sharp edge the derivative jumps, and the minimum may lie at the jump: there a full step swings back and
    forth, and what it would still move is added to the covariance.
    """
    white = _whitened(site, state, factor)
    if white is None:
        return None
    for _ in range(MOST_STEPS):
        step, covariance, information = white.solve(prior, state.away)
        moved = float(step @ information @ step)
        if moved < SETTLED:
            return _Rested(state, covariance, information, white, _cost(white, state, prior))
        lower = _lower(site, state, white, step, factor, prior)
        if lower is None:
            break
        state, white = lower
    return _Rested(state, covariance + np.outer(step, step), information, white, _cost(white, state, prior))


def _cost(white: Whitened, state: _State, prior: FloatArray) -> float:
    """rᵀ K⁻¹ r, and the squares of what is known beforehand."""
    return white.cost + float(prior @ state.away**2)


def _lower(
    site: _Site, state: _State, white: Whitened, step: FloatArray, factor: FloatArray, prior: FloatArray
) -> tuple[_State, Whitened] | None:
    """The step, halved until it lowers the weighted squares; None where no part of it does.

    Where only a short edge shows the turn, its derivative there speaks for steps of a quarter turn.
    """
    cost = _cost(white, state, prior)
    for halving in range(HALVINGS):
        trial = state.moved(step / 2.0**halving)
        there = _whitened(site, trial, factor)
        if there is not None and _cost(there, trial, prior) < cost:
            return trial, there
    return None


def _whitened(site: _Site, state: _State, factor: FloatArray) -> Whitened | None:
    patches = site.patches(state)
    return None if patches is None else Whitened.of(patches, factor)
