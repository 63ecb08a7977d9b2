"""Sentences that stand wherever a result is shown."""

from __future__ import annotations

from stylobate.core.result import Finding

CAUTION = (
    "Decision support, not a medical device. A scan cannot show whether a scan body was fully seated: "
    "torque and a radiograph confirm it. The licensed clinician decides."
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
    return printable(f"Site {site}: {finding.cause}{size}. {finding.advice}")
