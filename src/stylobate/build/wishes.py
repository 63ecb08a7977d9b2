"""All that is asked of one placement, from the options' texts to values."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from stylobate.build.request import Step, aim_of, by_site, chain_of
from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray

CHANNEL_DIAMETER = 2.5
"""mm. Common practice, no source: a driver of 1.3 to 2.3 mm with room around it."""


@dataclass(frozen=True)
class Wishes:
    """What is asked of a placement. chains, aims, below, accepted: by site; every_aim: for all sites without their own.

    taken: by site, which of its options to take; the other sites have their best. channel_diameter: mm.
    """

    chains: Mapping[str, tuple[Step, ...]]
    aims: Mapping[str, FloatArray]
    every_aim: FloatArray | None
    below: Mapping[str, Step]
    accepted: Mapping[str, str]
    one_path: bool = False
    channel_diameter: float = CHANNEL_DIAMETER
    taken: Mapping[str, tuple[Step, ...]] = field(default_factory=dict)


def wishes_of(
    sites: Sequence[str],
    aims: Sequence[str],
    below: Sequence[str],
    accept: Sequence[str],
    one_path: bool,
    channel_diameter: float,
    take: Sequence[str] = (),
) -> Wishes:
    """The options' texts as values. Raises UsageError."""
    own: dict[str, FloatArray] = {}
    every: FloatArray | None = None
    for text in aims:
        site, direction = aim_of(text)
        if site in own or (site is None and every is not None):
            raise UsageError(
                f"--aim={text}: {'all sites have' if site is None else f'site {site} has'} an aim already."
            )
        if site is None:
            every = direction
        else:
            own[site] = direction
    chains = {site: chain_of(text, f"--site {site}={text}") for site, text in by_site("--site", sites).items()}
    taken = {site: chain_of(text, f"take {site}={text}") for site, text in by_site("take", take).items()}
    carried = {site: chain_of(text, f"--below {site}={text}") for site, text in by_site("--below", below).items()}
    for site, steps in carried.items():
        if len(steps) != 1:
            raise UsageError(f"--below {site}=…: name one abutment, like --below {site}=alder-mu-16-25@0.")
    if not 0.0 < channel_diameter <= 10.0:
        raise UsageError(f"--channel-diameter {channel_diameter:g}: write a width in mm above 0 and up to 10.")
    reasons = by_site("--accept", accept)
    first = {site: steps[0] for site, steps in carried.items()}
    return Wishes(chains, own, every, first, reasons, one_path, channel_diameter, taken)
