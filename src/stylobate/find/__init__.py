"""Where each scan body may be: scan and parts in, candidates out, no hint needed.

thin.py       scan       → oriented points, one a cell of half a millimetre
template.py   scan body  → what the search needs of its shape, computed once
vote.py       pairs of oriented points → axes that the shape allows, tested on the neighbourhood
search.py     axes → poses: exhaustive over height and turn, refined, best of each place kept
"""

from stylobate.find.search import Candidate, find

__all__ = ["Candidate", "find"]
