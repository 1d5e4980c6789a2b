"""Settings: how each machine is set for every notch, length and width, in the order that moves the least."""
