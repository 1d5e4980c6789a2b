"""Drilling cards: the holes of a joint at full size, to lay on the face that they are drilled from."""
