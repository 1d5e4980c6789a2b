"""Line types: the one small table of how each kind of line is drawn.

Drawings name a kind ("visible", "thin", "hidden", ...); the writer of files asks here for its width and its
dashes. One group of widths serves a whole sheet: 0.5 and 0.25 mm unless somebody makes another.

>>> Linework().pen("hidden")
Pen(width=0.25, dashes=(3.0, 0.75))
"""

from __future__ import annotations

import attrs

from ..errors import PaperError
from ..trade.standards import LINE_TYPES, LINE_WIDTHS

BORDER_WIDTH = 0.7  # ISO 5457, border, from memory

# kind -> number of the line type in ISO 128-2; the order is the order of drawing
KINDS: dict[str, str] = {
    "thin": "01.1",
    "hidden": "02.1",
    "centre": "04.1",
    "phantom": "05.1",
    "visible": "01.2",
    "cut": "01.2",
    "border": "01.2",
}
_TYPES = {row.number: row for row in LINE_TYPES}
_SERIES = tuple(row.width for row in LINE_WIDTHS)


@attrs.frozen
class Pen:
    """Width of a line and its dashes: drawn, left out, drawn, ...; none for a continuous line. [mm]"""

    width: float
    dashes: tuple[float, ...] = ()


def _in_series(_: object, attribute: attrs.Attribute[float], value: float) -> None:
    if value not in _SERIES:
        series = ", ".join(f"{width:g}" for width in _SERIES)
        raise PaperError(f"A {attribute.name} line of {value!r} mm is not in the series of ISO 128 ({series}).")


@attrs.frozen
class Linework:
    """A group of line widths for one sheet. [mm]"""

    wide: float = attrs.field(default=0.5, validator=_in_series)
    narrow: float = attrs.field(default=0.25, validator=_in_series)

    def pen(self, kind: str) -> Pen:
        """Width and dashes of a kind of line."""
        check_kind(kind)
        if kind == "border":
            return Pen(max(BORDER_WIDTH, self.wide))
        row = _TYPES[KINDS[kind]]
        width = self.wide if row.wide else self.narrow
        return Pen(width, tuple(round(length * width, 3) for length in row.dashes))


def check_kind(kind: str) -> None:
    """Refuse a kind of line that is not in the table."""
    if kind not in KINDS:
        raise PaperError(f"No line is called {kind!r}. There is {', '.join(KINDS)}.")
