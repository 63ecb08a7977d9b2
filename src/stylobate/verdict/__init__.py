"""Pose, findings and limits → use, undecided or do not use, by a decision rule for conformity; no geometry.

conformity.py   the probability that what is measured lies within a limit
rules.py        the verdict of a site, and of several together
"""
