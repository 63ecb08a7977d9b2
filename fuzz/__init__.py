"""Bounded fuzzing of everything that reads a file: `python -m fuzz --runs 100000 --seconds 300`."""
