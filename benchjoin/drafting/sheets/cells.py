"""A cell: a box with a small heading and a value that never leaves it.

Title blocks and tables are made of these. A value takes the largest lettering height that fits, is broken
into lines where one is too long, and ends in an ellipsis where even the smallest is too much.
"""

from __future__ import annotations

import attrs

from ...trade.standards import LETTERING, LINE_PITCH_CLOSE
from ..lettering import ELLIPSIS, ascent, descent, shorten, text_width, wrap
from ..primitives import Drawing, Line, Text

LABEL = 1.8  # mm, heading of a cell
SMALLEST = 2.5  # mm, a value is never smaller
INSET = 1.2  # mm between a wall and what is written
_ABOVE_WALL = 0.3  # mm between the lowest letter and the wall
_UNDER_LABEL = 0.7  # mm between heading and value


@attrs.frozen(kw_only=True)
class Cell:
    """One cell: its box, its heading, its value, and the largest lettering of the value. [mm]"""

    x: float
    y: float
    width: float
    height: float
    label: str = ""
    value: str = ""
    largest: float = SMALLEST
    bold: bool = False


def walls(cell: Cell) -> Line:
    """The box of a cell."""
    x1, y1 = cell.x + cell.width, cell.y + cell.height
    return Line(((cell.x, cell.y), (x1, cell.y), (x1, y1), (cell.x, y1)), "thin", closed=True)


def fill_cell(cell: Cell) -> Drawing:
    """Walls, heading and value of a cell."""
    top = cell.y + cell.height
    words: list[Text] = []
    if cell.label:
        baseline = top - INSET * 0.7 - ascent(LABEL)
        heading = shorten(cell.label, LABEL, cell.width - 2 * INSET)
        words.append(Text((cell.x + INSET, baseline), heading, LABEL))
        top = baseline - descent(LABEL) - _UNDER_LABEL + INSET * 0.5
    room = top - cell.y
    height, lines = fit(cell.value, cell.width - 2 * INSET, room, largest=cell.largest, bold=cell.bold)
    pitch = height * LINE_PITCH_CLOSE
    block = pitch * (len(lines) - 1) + height
    first = cell.y + (room + block) / 2 - height
    lowest = cell.y + max(INSET, descent(height) + _ABOVE_WALL)
    if len(lines) == 1 and room < 2 * height:
        first = lowest  # values of one row stand on one line
    first = max(first, lowest + pitch * (len(lines) - 1))
    words.extend(
        Text((cell.x + INSET, first - pitch * i), line, height, bold=cell.bold) for i, line in enumerate(lines)
    )
    return (walls(cell), *words)


def fit(
    string: str, width: float, room: float, *, largest: float = SMALLEST, bold: bool = False
) -> tuple[float, list[str]]:
    """Lettering height and lines of a text that go into a width and a height.

    What does not go in at the smallest height is cut with an ellipsis. A text on one line at a smaller height
    is preferred to two lines at a larger, down to one step.
    """
    heights = [h for h in reversed(LETTERING) if SMALLEST <= h <= largest]
    whole = " ".join(string.split())
    if not whole:
        return SMALLEST, []
    for height in heights[:2]:
        if text_width(whole, height, bold=bold) <= width and ascent(height) + descent(height) <= room:
            return height, [whole]
    for height in heights:
        lines = wrap(whole, height, width, bold=bold)
        if len(lines) <= _most_lines(height, room):
            return height, lines
    lines = wrap(whole, SMALLEST, width, bold=bold)
    kept = lines[: _most_lines(SMALLEST, room)]
    kept[-1] = shorten(kept[-1] + " " + " ".join(lines[len(kept) :]), SMALLEST, width, bold=bold)
    return SMALLEST, [line for line in kept if line] or [ELLIPSIS]


def _most_lines(height: float, room: float) -> int:
    """Lines that go into a height, one at the least."""
    spare = room - INSET * 1.5 - height
    return max(1, 1 + int(max(0.0, spare) / (height * LINE_PITCH_CLOSE)))
