"""Repeat scans of the same implants compared."""
