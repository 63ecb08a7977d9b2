"""Fit → Pose: weighed by the residuals' own correlation, with a covariance that is true.

field.py        the residual field of a site: correlated, in patches
likelihood.py   which field it is, by restricted likelihood
unsure.py       what it costs not to know the field, and the shifts of fused views
pose.py         the weighted pose and its 6×6 covariance
bare.py         what is known beforehand of a layer
bounds.py       covariance → 95 % bounds of place, tilt, turn, distance
budget.py       what the scan does not hold: made part, seating, play, temperature, drift
"""
