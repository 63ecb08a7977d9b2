"""How far the search for causes at one site has come."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from stylobate.core.types import BoolArray, FloatArray
from stylobate.diagnose import layer, material, signs
from stylobate.diagnose.bumps import Bump
from stylobate.diagnose.evidence import Evidence, unit_shapes, weighed
from stylobate.diagnose.shapes import made_part
from stylobate.diagnose.significance import FALSE_ALARMS, chi2_tail, corrected
from stylobate.uncertainty.likelihood import FEWER, Whole, shifts_of_views

BACK = 3.0  # standard deviations within which a patch that was left out is taken back


@dataclass(frozen=True)
class State:
    """What has been found so far.

    plain: the evidence with nothing freed. freed: with the shapes freed and the patches `out` (m,) left out. found: the
    whole-surface signs, in the order found. low (m,): patches next to the gingiva. coat: thickness in mm of a layer
    whose unevenness is allowed for, 0: none. bottom, top, mm: where the body comes free of the gingiva, and its end;
    radius: of the part. made_sd: standard uncertainty of the made part's diameter and height that is allowed for, mm,
    0: none.
    """

    plain: Evidence
    freed: Evidence
    out: BoolArray
    found: tuple[signs.Sign, ...]
    low: BoolArray
    bottom: float
    top: float
    radius: float
    coat: float = 0.0
    made_sd: float = 0.0

    @property
    def nothing_found(self) -> bool:
        """Whether the evidence is still the plain one."""
        return not self.found and not self.out.any() and self.coat == 0.0

    def with_cause(self, sign: signs.Sign) -> State:
        """After freeing a whole-surface shape. Patches left out that it explains come back in."""
        found = replace(self, found=(*self.found, sign))
        index = np.nonzero(self.out)[0]
        if len(index):
            displaced, spread = found.evidence_with_all_patches().amplitudes(unit_shapes(index, len(self.out)))
            back = np.abs(displaced) < BACK * np.sqrt(np.diag(spread))
            out = self.out.copy()
            out[index[back]] = False
            found = replace(found, out=out)
        return found.under(found.plain)

    def with_patch(self, bump: Bump) -> State:
        """After leaving out the patches about a bump, or the one that is a spike."""
        if bump.spike >= 0:
            out = self.out.copy()
            out[bump.spike] = True
        else:
            out = material.grown(self.freed, bump, self.out)
        return self._leaving(out)

    def with_neighbours(self) -> State:
        """After leaving out what lies beside the patches left out and leans their way."""
        return self._leaving(material.reaching(self.freed, self.out))

    def _leaving(self, out: BoolArray) -> State:
        """With patches `out` (m,) left out, those so far among them."""
        return replace(self, freed=self.freed.without(np.nonzero(out & ~self.out)[0]), out=out)

    def shapes_found(self, but: str = "") -> FloatArray:
        """(m, k) of the whole-surface causes found, one left aside."""
        empty = np.zeros((len(self.out), 0))
        return np.hstack([empty, *(sign.shapes for sign in self.found if sign.cause != but)])

    def evidence(self, but: str = "") -> Evidence:
        """The evidence with every cause found allowed for, one left aside."""
        return self.evidence_with_all_patches(but).without(np.nonzero(self.out)[0])

    def evidence_with_all_patches(self, but: str = "") -> Evidence:
        """The same, no patch left out."""
        shapes = self.shapes_found(but)
        base = layer.allowed_for(self.plain, self.coat) if self.coat > 0.0 else self.plain
        if self.made_sd > 0.0:
            made = made_part(base.patches.centre, base.normal, self.radius, self.top)
            base = base.freeing(made, np.full(2, self.made_sd))
        return base.freeing(shapes) if shapes.shape[1] else base

    def unexplained(self) -> float:
        """χ² that is left with every patch back in."""
        evidence = self.evidence_with_all_patches()
        return float(evidence.patches.residual @ evidence.score)

    def under(self, plain: Evidence) -> State:
        """The same causes on other evidence."""
        fresh = replace(self, plain=plain)
        return replace(fresh, freed=fresh.evidence())

    def signs_of(self, cause: str, evidence: Evidence) -> list[signs.Sign]:
        """All forms of one cause tried on some evidence."""
        if cause == "bent body":
            return signs.lean(evidence, self.bottom, self.top)
        return signs.split(evidence)

    def holds_higher_up(self, sign: signs.Sign) -> bool:
        """Whether a sign stays without what lies next to the gingiva, whose fillet can pass for a lean.

        Asked of one form that is known, so that nothing is to be corrected for trials.
        """
        higher = self.freed.without(np.asarray(np.nonzero(self.low & ~self.out)[0], dtype=np.int64))
        gain = signs.sign_of(higher, sign.cause, sign.shapes).gain
        return chi2_tail(gain, sign.shapes.shape[1]) < FALSE_ALARMS

    def holds_beside_views(self, sign: signs.Sign) -> bool:
        """Whether a sign stays where views may be shifted by as much as the rest of the surface says (method, eq. 8c).

        Shifted views tilt or part a surface as a bend or a split does. How far they are shifted is estimated with the
        sign fitted, lest it should hide itself.
        """
        patches, field = self.plain.patches, self.plain.field
        wide = np.hstack([patches.matrix, self.shapes_found(), sign.shapes])
        shift = shifts_of_views(Whole(replace(patches, matrix=wide), FEWER), field)
        wider = self.under(
            weighed(self.plain.points, replace(field, view_sd=float(np.hypot(field.view_sd, shift**0.5))))
        )
        return corrected(signs.sign_of(wider.freed, sign.cause, sign.shapes).p) < FALSE_ALARMS

    @cached_property
    def whole_surface_signs(self) -> list[signs.Sign]:
        """Signs of the causes not found yet."""
        known = {sign.cause for sign in self.found}
        return [sign for cause in signs.CAUSES if cause not in known for sign in self.signs_of(cause, self.freed)]
