"""Dimensions on paper: decided first, drawn after; each kind has its own file."""
