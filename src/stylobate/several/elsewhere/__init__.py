"""Poses measured by other means, read from a table."""
