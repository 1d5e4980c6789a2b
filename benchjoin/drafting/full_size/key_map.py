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
    for key, box in tiles:
        corners = ring(box)
        if key == here:
            drawn.append(Fill((corners,)))
            continue
        drawn += [Fill((corners,), "white"), Line(corners, closed=True)]
        drawn += _name(key, corners)
    return tuple(drawn)


def _name(key: str, corners: Sequence[tuple[float, float]]) -> list[Text]:
    """The key in its tile, where it goes in."""
    (x0, y0), _, (x1, y1), _ = corners
    if text_width(key, TEXT) > x1 - x0 - 0.6 or y1 - y0 < TEXT * 1.5:
        return []
    return [Text(((x0 + x1) / 2, figure_middle((y0 + y1) / 2, TEXT)), key, TEXT, "middle")]
