"""Lay-on patterns: a notch on paper, folded over the edge, as many on a page as go on it."""
