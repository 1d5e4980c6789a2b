"""Ways to cut a notch, one file each: what must be set, how many passes, and which notches cannot be cut that way."""
