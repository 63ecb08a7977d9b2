"""The page: a local server, its state, and the worker process that measures. A door, no science."""
