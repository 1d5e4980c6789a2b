"""The six faces of the frame and its three axes: the words for them, and which way each face looks.

x runs along the length from the left end, y from the front to the back, z up from the floor.

>>> OPPOSITE["front"], OUT["top"], AXIS["left"]
('back', (0.0, 0.0, 1.0), 0)
"""

from __future__ import annotations

from collections.abc import Mapping

from ..solids import Vector

X, Y, Z = 0, 1, 2
WAYS: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
"""The way each axis runs."""
OUT: Mapping[str, Vector] = {
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "top": (0.0, 0.0, 1.0),
    "bottom": (0.0, 0.0, -1.0),
}
"""The way each face looks."""
OPPOSITE: Mapping[str, str] = {
    "front": "back",
    "back": "front",
    "left": "right",
    "right": "left",
    "top": "bottom",
    "bottom": "top",
}
AXIS: Mapping[str, int] = {"left": X, "right": X, "front": Y, "back": Y, "bottom": Z, "top": Z}
"""The axis that a face looks along."""
LOW = ("left", "front", "bottom")
"""The face that looks down each axis, by the number of the axis."""


def looks_down(face: str) -> bool:
    """Whether a face looks towards the datum of its axis: left, front or bottom."""
    return LOW[AXIS[face]] == face
