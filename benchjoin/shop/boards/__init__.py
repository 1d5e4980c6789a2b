"""Lumber in, parts out: which part comes out of which board, and which boards to buy."""
