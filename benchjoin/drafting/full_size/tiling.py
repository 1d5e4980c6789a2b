"""Tiles: desk pages that show a full-size drawing from seam to seam, each laid on the wood by itself or joined.

Crosses stand at the corners of a tile. It is trimmed along its left and lower seam; where the next tile joins, it
reaches past its right or upper seam, to be glued under, and the halves of the crosses make whole ones. Every tile says
how far its seams lie from the datum, so an error of joining is seen at once and never adds up. Rows are lettered from
the top, columns numbered from the datum.

>>> pane = Pane(row=0, column=1, cut=(150.0, -10.0, 320.0, 180.0), joins=(True, False))
>>> tile = Tile(pane)
>>> tile.key, tile.window
('a2', (145.0, -15.0, 330.0, 185.0))
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import attrs

from ..lettering import ascent, descent, text_width
from ..primitives import Box, Clipped, Disc, Drawing, Line, Primitive, Text, bounds, shift
from .clearing import Clearing
from .windows import Pane

ARM = 5.0
"""Half of a cross. [mm]"""
LEAD = 5.0
"""What a tile shows past a seam at which nothing joins, and before its left and lower seams. [mm]"""
OVERLAP = 10.0
"""What a tile shows past a right or upper seam at which the next one joins. [mm]"""
_RING = 2.5
_LABEL = 2.5
_STEP = 4.0

Reading = Callable[[float], tuple[str, ...]]
"""A distance in words, the longest first; shorter ones for where the drawing leaves little room."""


@attrs.frozen
class Tile:
    """A pane on its page. [mm]"""

    pane: Pane
    overlap: float = OVERLAP

    @property
    def key(self) -> str:
        """Row and column as they are written: a1 is the first tile from the datum in the upper row."""
        return f"{row_name(self.pane.row)}{self.pane.column + 1}"

    @property
    def window(self) -> Box:
        """What the page shows."""
        left, low, right, high = self.pane.cut
        past = [max(self.overlap, LEAD) if joins else LEAD for joins in self.pane.joins]
        return left - LEAD, low - LEAD, right + past[0], high + past[1]

    def shown(self, drawing: Drawing) -> Drawing:
        """What the page shows of a drawing, moved so that the window's lower left corner is (0, 0)."""
        seen = tuple(item for item in drawing if _meets(item, self.window))
        return shift((Clipped(seen, self.window),), -self.window[0], -self.window[1])


def reach_of(room: tuple[float, float], overlap: float) -> tuple[float, float]:
    """How long a pane may be in a room of some size, and how high where none joins above. [mm]"""
    return room[0] - LEAD - max(overlap, LEAD), room[1] - 2 * LEAD


def row_name(row: int) -> str:
    """a, b … z, aa, ab …

    >>> row_name(0), row_name(25), row_name(26)
    ('a', 'z', 'aa')
    """
    name = ""
    row += 1
    while row:
        row, letter = divmod(row - 1, 26)
        name = chr(97 + letter) + name
    return name


def seam_lines(pane: Pane) -> Iterator[Primitive]:
    """Seams as chain lines, and crosses where they meet."""
    left, low, right, high = pane.cut
    yield from (Line(((x, low - ARM), (x, high + ARM)), "centre") for x in (left, right))
    yield from (Line(((left - ARM, y), (right + ARM, y)), "centre") for y in (low, high))
    for x in (left, right):
        for y in (low, high):
            yield from cross((x, y))


def cross(at: tuple[float, float]) -> Drawing:
    """A registration cross in a ring."""
    x, y = at
    return (
        Line(((x - ARM, y), (x + ARM, y))),
        Line(((x, y - ARM), (x, y + ARM))),
        Disc(at, _RING),
    )


def seam_words(pane: Pane, read: tuple[Reading, Reading], clear: Clearing) -> Iterator[Text]:
    """How far the left, the right and the lower seam lie from the datum, inside the seams, where nothing is drawn."""
    left, low, right, high = pane.cut
    beside = (left + 1.0 + ascent(_LABEL), right - 1.0 - descent(_LABEL))
    for seam, x in zip((left, right), beside, strict=True):
        yield clear.freest(_along(read[0](seam), low, high, lambda at, x=x: (x, at), 90.0))  # type: ignore[misc]
    yield clear.freest(_along(read[1](low), left, right, lambda at: (at, low + 1.0 + descent(_LABEL)), 0.0))


def _along(
    words: Sequence[str], start: float, end: float, place: Callable[[float], tuple[float, float]], turn: float
) -> Iterator[Text]:
    """The words of a seam at every place along it between two crosses, the longest words first."""
    for said in words:
        first, last = start + ARM + 2.0, end - ARM - 2.0 - text_width(said, _LABEL)
        for n in range(int(max(last - first, 0.0) / _STEP) + 1):
            yield Text(place(first + _STEP * n), said, _LABEL, "start", turn)


def _meets(item: Primitive, box: Box) -> bool:
    a, b, c, d = bounds((item,))
    pen = 1.0  # no line is wider
    return a - pen <= box[2] and c + pen >= box[0] and b - pen <= box[3] and d + pen >= box[1]
