"""Checks: what can be wrong with a layout, one idea a file. Each is a function from a piece to findings."""
