"""The key map: the faces of a set in small, the tiles that there are over them, and which of them a page is.

Where nothing is marked there is no tile, and the map is blank there.

>>> drawn = key_map([(0.0, 0.0, 1000.0, 80.0)], [("a1", (0.0, -10.0, 200.0, 90.0))], "a1", (40.0, 20.0))
>>> sum(isinstance(item, Fill) for item in drawn)
1
"""

from __future__ import annotations

from collections.abc import Sequence

from ..lettering import text_width
from ..primitives import Box, Drawing, Fill, Line, Primitive, Text, figure_middle

TEXT = 2.5
CLEAR = 0.4
"""Round a key. [mm]"""
Ring = Sequence[tuple[float, float]]
"""Corners of a box, from its lower left one round."""


def key_map(faces: Sequence[Box], tiles: Sequence[tuple[str, Box]], here: str, room: tuple[float, float]) -> Drawing:
    """Faces and tiles by their keys, the lower right corner of the map in (0, 0), in a room of some size. [mm]"""
    boxes = [*faces, *(box for _, box in tiles)]
    left, low = min(box[0] for box in boxes), min(box[1] for box in boxes)
    right, high = max(box[2] for box in boxes), max(box[3] for box in boxes)
    scale = min(room[0] / (right - left), room[1] / (high - low))

    def ring(box: Box) -> tuple[tuple[float, float], ...]:
        x0, x1 = ((x - right) * scale for x in (box[0], box[2]))
        y0, y1 = ((y - low) * scale for y in (box[1], box[3]))
        return (x0, y0), (x1, y0), (x1, y1), (x0, y1)

    drawn: list[Primitive] = [Line(ring(face), closed=True) for face in faces]
    rings = [ring(box) for box in boxes]
    for key, box in tiles:
        corners = ring(box)
        if key == here:
            drawn.append(Fill((corners,)))
            continue
        drawn += [Fill((corners,), "white"), Line(corners, closed=True)]
        drawn += _name(key, corners, rings)
    return tuple(drawn)


def _name(key: str, corners: Ring, rings: Sequence[Ring]) -> list[Text]:
    """The key in its tile, where it goes in between the lines of faces and of other tiles."""
    (x0, y0), _, (x1, y1), _ = corners
    for share in (0.5, 0.25, 0.75):
        text = Text(((x0 + x1) / 2, figure_middle(y0 + (y1 - y0) * share, TEXT)), key, TEXT, "middle")
        if not any(_crosses(ring, text) for ring in rings):
            return [text]
    return []


def _crosses(ring: Ring, text: Text) -> bool:
    """Whether a ring runs through a text, or close by it; one that goes round it, or lies beside it, does not."""
    half = text_width(text.string, TEXT) / 2 + CLEAR
    a, b, c, d = text.at[0] - half, text.at[1] - CLEAR, text.at[0] + half, text.at[1] + TEXT + CLEAR
    (x0, y0), _, (x1, y1), _ = ring
    beside = c <= x0 or a >= x1 or d <= y0 or b >= y1
    within = x0 <= a and c <= x1 and y0 <= b and d <= y1
    return not (beside or within)
