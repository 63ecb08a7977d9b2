"""What may be built upon: a position measured well enough, or one that a person accepted by name with a reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stylobate.core.errors import UsageError
from stylobate.record import RecordSite

REFUSED, OPEN = "do not use", "undecided"
LONGEST_REASON = 500


@dataclass(frozen=True)
class Footing:
    """A site that parts may stand on. accepted: the reason given by whoever takes it in spite of its verdict.

    There is none for a site whose verdict is `do not use` without a reason: making one raises UsageError.
    """

    site: RecordSite
    accepted: str | None = None

    def __post_init__(self) -> None:
        if self.site.verdict == REFUSED and not self.accepted:
            name = self.site.site
            why = "; ".join(finding.cause for finding in self.site.findings) or "see its findings"
            raise UsageError(
                f"site {name}: its verdict is `{REFUSED}` ({why}), so nothing is built on it. Mend the cause and "
                f"measure again; leave it out by naming the other sites with --site; or give your reason: "
                f"--accept '{name}=…'."
            )

    @property
    def note(self) -> str | None:
        """What has to be said of building here."""
        if self.accepted and self.site.verdict == REFUSED:
            return f"accepted in spite of its verdict `{REFUSED}`: {self.accepted}"
        if self.site.verdict == OPEN:
            return "its verdict is `undecided`: the scan cannot tell whether it is within the limits"
        return None


def footings(sites: tuple[RecordSite, ...], accepted: Mapping[str, str], known: tuple[str, ...]) -> list[Footing]:
    """Footings of `sites`. accepted: reasons by site; known: every site of the result. Raises UsageError."""
    for name, reason in accepted.items():
        if name not in known:
            raise UsageError(f"--accept {name}=…: the result has no site '{name}'; it has {', '.join(known)}.")
        if not reason.strip():
            raise UsageError(
                f"--accept {name}=: give the reason in words, like --accept '{name}=checked by radiograph'."
            )
        if len(reason) > LONGEST_REASON:
            raise UsageError(f"--accept {name}=…: keep the reason below {LONGEST_REASON} characters.")
    return [Footing(site, " ".join(accepted[site.site].split()) if site.site in accepted else None) for site in sites]
