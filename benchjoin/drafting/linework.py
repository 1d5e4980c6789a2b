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
    "shade": "01.1",
    "hidden": "02.1",
    "hidden short": "02.1",
    "centre": "04.1",
    "phantom": "05.1",
    "visible": "01.2",
    "cut": "01.2",
    "border": "01.2",
}
_TYPES = {row.number: row for row in LINE_TYPES}
_SERIES = tuple(row.width for row in LINE_WIDTHS)
SHADE_WIDTH = _SERIES[0]  # the finest of the series: shade is a tint and no line
SHORT = 0.5  # of the dashes of a view whose hidden lines are short (common practice, no source)

_PAIRS = ((1.4, 0.7), (1.0, 0.5), (0.7, 0.35), (0.5, 0.25), (0.35, 0.18), (0.25, 0.13))


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
        if kind == "shade":
            return Pen(SHADE_WIDTH)
        row = _TYPES[KINDS[kind]]
        width = self.wide if row.wide else self.narrow
        drawn = SHORT if kind.endswith("short") else 1.0
        lengths = (length * (1.0 if place % 2 else drawn) for place, length in enumerate(row.dashes))
        return Pen(width, tuple(round(length * width, 3) for length in lengths))

    def readable(self, kind: str) -> float:
        """The shortest line of a kind that shows its dashes: two of them and the gap between. [mm]"""
        dashes = self.pen(kind).dashes
        return 2 * dashes[0] + dashes[1] if dashes else 0.0

    def fitted(self, apart: float) -> Linework:
        """The widest group, no wider than this, whose wide lines keep twice their width where they lie so close. [mm]

        Pairs of ISO 128, two to one; the finest is 0.25 and 0.13 mm, which any printer holds.
        """
        for wide, narrow in _PAIRS:
            if wide <= self.wide and 2 * wide <= apart + 1e-9:
                return self if wide == self.wide else Linework(wide=wide, narrow=narrow)
        return Linework(wide=min(self.wide, _PAIRS[-1][0]), narrow=min(self.narrow, _PAIRS[-1][1]))


def check_kind(kind: str) -> None:
    """Refuse a kind of line that is not in the table."""
    if kind not in KINDS:
        raise PaperError(f"No line is called {kind!r}. There is {', '.join(KINDS)}.")
