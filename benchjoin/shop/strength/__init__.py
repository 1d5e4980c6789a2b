"""Will it stand: what lies on a frame, what its wood feels of that, and when it tips."""
