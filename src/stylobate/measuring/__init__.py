"""Scan and parts → Result: the one place that knows the order of the stages.

site.py         one place: choose the part, fit, weigh, diagnose, accept
otherparts.py   would a part that the user did not name fit better?
handedness.py   is the scan mirrored?
described.py    a measured site as it is reported
notshown.py     what no scan can show, with the check that closes it
verb.py         the whole scan, from finding to the table of sites
"""

from stylobate.measuring.verb import made_ready, measure

__all__ = ["made_ready", "measure"]
