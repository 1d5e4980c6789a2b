"""Templates of shaped edges: a strip that lies flush with the straight edge and shows the curve at full size."""
