"""Which gap could a radiograph show? From two marked ends of a part of known length: the beam's angle to its axis.

Under a parallel beam square to the detector a length L along an axis that leans by θ out of the picture's plane is
seen as L · cos θ, magnified by m (method/radiograph, eq. 1). What is seen too short tells θ.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from stylobate.core.errors import UsageError

MARK_SD_MM = 0.05
"""How exactly an end is marked, standard deviation in the picture: about a pixel of an intraoral detector (common
practice, no source)."""
READABLE_UM = ((5.0, 12.7), (10.0, 38.0), (15.0, 51.0))
"""Up to this angle (degrees) observers told a gap of this size (µm) reliably: Sharkey 2011, Int J Oral Maxillofac
Implants 26:807, abstract (25 to 38 µm at 10°: the larger is taken). Beyond 15° no reliable size is given."""


@dataclass(frozen=True)
class Beam:
    """angle_deg: best value. at_worst_deg: 95 % upper bound. gap_um: smallest gap that is reliably seen up to
    at_worst_deg; None where no size is known for that angle."""

    angle_deg: float
    at_worst_deg: float
    gap_um: float | None

    def sentence(self) -> str:
        """In words, for the record."""
        angle = f"beam {self.angle_deg:.0f}° (at worst {self.at_worst_deg:.0f}°) off square to the axis"
        if self.gap_um is None:
            return f"{angle}: too oblique to show a gap reliably; take it again"
        return f"{angle}: can show gaps of {self.gap_um:g} µm and more"


def readable_gap_um(angle_deg: float) -> float | None:
    """Smallest gap in µm reliably seen at that angle (degrees), None beyond the published angles."""
    return next((gap for limit, gap in READABLE_UM if angle_deg <= limit), None)


def beam(length: float, seen: float, magnification: tuple[float, float] = (1.0, 1.0)) -> Beam:
    """The beam's angle from the true and the seen length of a part, mm, between the middles of its two ends.

    magnification: least and greatest (1, 1 where the scale was taken from a part in the same picture). The bound
    takes the greatest magnification and 1.645 standard deviations of the two marks. Raises UsageError: a length that
    is not positive, or seen longer than it can be.
    """
    least, most = magnification
    if not (length > 0 and seen > 0 and 0 < least <= most and math.isfinite(length * seen * most)):
        raise UsageError("lengths and magnification must be above 0; mark the two ends again")
    slack = 1.645 * math.sqrt(2.0) * MARK_SD_MM
    if seen - slack > length * most:
        raise UsageError(
            f"the part is seen {seen:.2f} mm long but is {length:g} mm: the beam was not square to the detector, or "
            "the scale is wrong; use a holder, or check the width of a pixel and the length (--pixel, --length)"
        )
    best = math.degrees(math.acos(min(1.0, seen / (length * math.sqrt(least * most)))))
    worst = math.degrees(math.acos(min(1.0, max(0.0, (seen - slack) / (length * most)))))
    return Beam(best, worst, readable_gap_um(worst))


def marked(length: float, ends: tuple[float, float, float, float], pixel: float) -> Beam:
    """The same from the two ends marked in a picture, x1, y1, x2, y2 in pixels, and a pixel's width in mm."""
    return beam(length, pixel * math.hypot(ends[2] - ends[0], ends[3] - ends[1]))
