"""What a reader of a seat must know besides the figures, one sentence each."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.record import Record, RecordSite
from stylobate.several.drifting import Profile
from stylobate.several.sources import Sources

IN_LINE = 0.5
"""mm: centres that lie no farther from a line leave the tilt about it to the rims, or to nothing."""


def about_sources(sources: Sources) -> tuple[str, ...]:
    """Which sources of uncertainty the draws leave out."""
    if not sources.missing:
        return ()
    return (
        f"Not in these figures, for want of one: {', '.join(sources.missing)}. "
        "The true misfit can be larger than the draws say.",
    )


def about_profile(profile: Profile | None) -> tuple[str, ...]:
    """Which profile the drift is of, and what it does not know."""
    if profile is None:
        return ()
    name = f"{profile.scanner} {profile.unit}".strip()
    blind = " It is of precision only: a wrong scale is not counted." if profile.scale_ppm is None else ""
    return (f"Drift is that of the profile of {name}, from {len(profile.scans)} scans.{blind}",)


def about_verdicts(sites: Sequence[RecordSite]) -> tuple[str, ...]:
    """Sites whose position may not be built upon."""
    return tuple(
        f"The verdict on site {site.site} is '{site.verdict}': what is made to it is made to a doubtful position."
        for site in sites
        if site.verdict is not None and site.verdict != "use"
    )


def about_match(frame: Record, on: Record, pairs: Sequence[tuple[int, int]], ambiguous: bool) -> tuple[str, ...]:
    """Sites left over, and whether the sites could be matched another way."""
    notes = []
    for record, side in ((frame, 0), (on, 1)):
        used = {pair[side] for pair in pairs}
        left = [site.site for k, site in enumerate(record.sites) if k not in used]
        if left:
            notes.append(f"Left out, as nothing stands there in the other result: {', '.join(left)} of {record.name}.")
    if ambiguous:
        notes.append("The sites can be matched another way just as well; names decided. See 'matched'.")
    return tuple(notes)


def about_tilt(poses: FloatArray, rims: FloatArray) -> tuple[str, ...]:
    """Whether the centres leave a tilt free, and what then fixes it."""
    centres = poses[:, :3, 3] - poses[:, :3, 3].mean(axis=0)
    if np.linalg.svd(centres, compute_uv=False)[1] / np.sqrt(len(centres)) > IN_LINE:
        return ()
    fixed = "only the rims hold" if rims.max() > 0 else "nothing holds, so the frame keeps as it was laid,"
    return (f"The centres stand in one line: {fixed} the tilt about it.",)
