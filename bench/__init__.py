"""Ours and general-purpose peers on the same simulated scenes, as tables.

scenes.py             seed → settings, bodies, scan
experiments.py        tables → jobs (a scene and what it is grouped by)
ours.py, peers.py, near.py   the methods, each behind one call (method.py); cloud.py: what the peers share
worker.py             one process a method: time, peak memory, crashes
judge.py              found poses against the truth, one to one
store.py              a line of JSON for every method and scene
figures.py, tables.py lines → figures with their counts and limits → tables
tune.py               the search for the peers' settings
fused/                ours on scans made another way than the simulator's
"""
