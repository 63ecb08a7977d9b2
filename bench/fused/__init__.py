"""Scans made another way than `stylobate.simulate` makes them, of which nothing here is used.

solids.py    ten shapes of scan bodies as manifold solids → parts folders
scene.py     seed → figures of the scanner; bodies, gingiva and teeth as triangles, with the truth
views.py     triangles → noisy depth maps with the places where they are believed to be from
volume.py    depth maps → truncated signed distances → triangles, by marching cubes (scikit-image)
scan.py      the four above in turn
judge.py     the scan against the truth; least squares of all points; found poses against the truth
figures.py   lines → tables
"""
