"""Candidates of one place → which scan body stands there at which turn, and what else the scan leaves open.

readings.py   every part and turn laid on the same points, part and offset together
turns.py      the turns and parts that the measured pose does not exclude
"""
