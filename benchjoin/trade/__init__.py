"""Published facts of the trade as small tables, each row with its source.

What standards and handbooks print, and no more.
"""
