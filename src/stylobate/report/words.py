"""Sentences that stand wherever a result is shown."""

from __future__ import annotations

from dataclasses import dataclass

from stylobate.core.result import Finding, Result, Together, Verdict

CAUTION = (
    "Decision support, not a medical device. A scan cannot show whether a scan body was fully seated: "
    "torque and a radiograph confirm it. The licensed clinician decides."
)


@dataclass(frozen=True)
class Wording:
    """What a table of sites says. one, many: what they are; laid: what was laid there; none: where there is none."""

    one: str
    many: str
    laid: str
    key: str
    none: str
    cannot: str
    caution: str


SCAN = Wording(
    "implant position",
    "implant positions",
    "Scan body",
    "x y z: centre of the platform, scan coordinates. ±: 95 % bounds, of the scan alone. "
    "rms: deviation from the CAD surface. seen: share of the scan body that the scan shows.",
    "No scan body of the parts folder was found in this scan.",
    "What this scan cannot show",
    CAUTION,
)
FRAME = Wording(
    "seat",
    "seats",
    "Seats by",
    "x y z: centre of the seat, coordinates of the frame's surface. ±: 95 % bounds, of that surface alone. "
    "rms: deviation from the part's form. seen: share of the form that the surface shows.",
    "No seat was found in this surface.",
    "What this surface cannot show",
    "Decision support, not a medical device. Whether a frame fits shows when it is tried in, one screw at a time. "
    "The licensed clinician decides.",
)


def printable(text: str) -> str:
    """One line without control characters: names come from files, and a terminal obeys what it is sent."""
    return "".join(character if character.isprintable() else " " for character in text)


def finding_sentence(site: str, finding: Finding) -> str:
    """One finding as a sentence: where, what, how large, what to do."""
    size = ""
    if finding.size_um is not None:
        size = f", {finding.size_um:.0f} µm"
        if finding.u95_um is not None:
            size += f" (± {finding.u95_um:.0f} µm)"
    if finding.size_deg is not None:
        size = f", {finding.size_deg:.1f}°"
        if finding.u95_deg is not None:
            size += f" (± {finding.u95_deg:.1f}°)"
    return printable(f"Site {site}: {finding.cause}{size}. {finding.advice}")


def verdict_lines(result: Result) -> list[str]:
    """One sentence a site and one for all of them: the verdict, why, and what to do next."""
    lines = [_judged(f"Site {site.site}", site.verdict) for site in result.sites if site.verdict is not None]
    if result.together is not None:
        lines.append(_judged("Together", result.together))
    return lines


def _judged(who: str, verdict: Verdict | Together) -> str:
    return printable(f"{who}: {verdict.verdict}, {verdict.because} {verdict.next}".rstrip())
