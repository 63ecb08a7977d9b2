"""Candidate → Fit: the CAD surface laid on the scan's points by robust least squares on the exact distance.

edges.py      sharp edges of a CAD surface, and how a scan rounds them
descend.py    the points around a candidate; the descent; converged or refused
design.py     what is left over at a pose, and how it changes with motion, offset and edge profile
"""
