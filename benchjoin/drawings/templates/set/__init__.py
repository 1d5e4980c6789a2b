"""The page of a set: the gang drawn, its lines with their readings, as one page or in tiles."""
