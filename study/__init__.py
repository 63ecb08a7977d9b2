"""The study of whether the stated uncertainties, findings and verdicts are true: `make study`."""
