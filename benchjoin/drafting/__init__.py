"""Lines and paper, no timber.

A drawing is a tuple of frozen primitives in millimetres on paper, y up. Every module here makes such a tuple,
measures one, or turns one into a file; nothing here knows what a leg is.
"""
