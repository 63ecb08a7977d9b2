"""What no scan can show, each with the check that closes it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stylobate.core.result import Hidden, NotShown, Site

REMEDY = "Try the body in its analog, or measure again with a new one."


def not_shown(sites: Sequence[Site]) -> tuple[NotShown, ...]:
    """What these sites leave open. No site is named, since a case calls it by its tooth."""
    hidden = [site.hidden for site in sites if site.hidden is not None]
    return (
        NotShown("seating", "Check that the scan body does not rock or turn; confirm by torque and by a radiograph."),
        NotShown("tightening", "Tighten the scan body to its maker's torque; a scan shows no torque."),
        NotShown(
            "turning within the play", "Turn the scan body to one stop before tightening; the play adds to the index."
        ),
        NotShown(
            "a bend below what is seen", f"A body bent at or below the gingiva looks straight.{_bends(hidden)} {REMEDY}"
        ),
        NotShown("drift between sites", "Scan again, or measure a reference of known distances, and compare."),
    )


def _bends(hidden: Sequence[Hidden]) -> str:
    """How much of a bend above the gingiva may go unseen."""
    if not hidden:
        return ""
    if not all(math.isfinite(one.size_deg) for one in hidden):
        return " So may one bent above it, however much: too little of a site is seen."
    least, most = f"{min(one.size_deg for one in hidden):.1f}", f"{max(one.size_deg for one in hidden):.1f}"
    lean = f"{most}°" if least == most else f"{least}° ({most}° where less is seen)"
    platform = max(one.platform_um for one in hidden)
    return f" So may one bent above it by less than {lean}, whose platform would be up to {platform:.0f} µm off."
