"""One line of the source is spoilt at a time, and a named test must turn red: `python -m sabotage`."""
