"""Putting it together: an order in which nothing blocks the next part, its steps, checks and hours."""
