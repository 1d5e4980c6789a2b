"""Elevations: how the thing looks from one side, and how high everything is.

Heights run from the floor as the tape does, with the rails of the near side and of the far side on a line each;
widths run from the left end or the front. The largest standard scale that fits the paper, either way up, is taken.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

import attrs

from ..drafting.dimensions import overall, row_line, running
from ..drafting.primitives import Drawing, Primitive, Text, bounds
from ..drafting.sheet import Sheet
from ..errors import AddressError
from ..layout.layout import Layout
from ..layout.parts import Part
from .fitting import fit_view
from .page import PLAIN, House, reader
from .strokes import CAPTION, distinct, level_names, strokes
from .views import Eye, View, view


def elevation(
    layout: Layout, seen: str, *, paper: str | None = None, house: House | None = None, piece: int = 1
) -> Sheet:
    """The elevation of one piece, seen from the front, back, left or right.

    Parameters
    ----------
    layout : Layout
    seen : str
        "front", "back", "left" or "right".
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" …; if not given, the desk paper of the design's tape, or the next larger one.
    house : House, optional
        What the shop's sheets have in common, for the title block.
    piece : int
        Which piece of the batch.

    Raises
    ------
    AddressError
        If there is no such side.
    PaperError
        If it does not fit the paper at any scale.
    """
    if seen not in ("front", "back", "left", "right"):
        raise AddressError(f"There is no elevation from {seen!r}. Choose front, back, left or right.", address=seen)
    parts = layout.piece(piece)
    look = view(parts, seen)

    def draw(scale: float) -> Drawing:
        return (
            *strokes(look.visible, "visible", scale),
            *strokes(look.hidden, "hidden", scale),
            *level_names(parts, look, scale),
            *_heights(layout, parts, look, scale, house or PLAIN),
            *_widths(layout, parts, look, scale, house or PLAIN),
        )

    title = look.eye.title
    return fit_view(layout, draw, name=f"elevation-{seen}", kind="Elevation", title=title, paper=paper, house=house)


@attrs.frozen
class _Column:
    """A line of running heights: beside which edge of the view, of which rails and legs, and its caption."""

    side: Literal["left", "right"]
    rails: tuple[str, ...]
    row: str
    caption: str


def _columns(eye: Eye) -> tuple[_Column, ...]:
    """The near side's heights on the left of the page and the far side's on the right; of an end, back and front."""
    if eye.name in ("front", "back"):
        far = "back" if eye.name == "front" else "front"
        return (
            _Column("left", (eye.name,), eye.name, f"{eye.name} rails"),
            _Column("right", (far,), far, f"{far} rails"),
        )
    front: Literal["left", "right"] = "right" if eye.name == "left" else "left"
    back: Literal["left", "right"] = "left" if eye.name == "left" else "right"
    return (
        _Column(back, (eye.name, "cross"), "back", "end rails, back legs"),
        _Column(front, (), "front", "front legs"),
    )


def _heights(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    read = reader(layout.frame, house)
    left, _, right, top = (edge * scale for edge in seen.bounds)
    for column in _columns(seen.eye):
        rails = [p for p in parts if p.role == "rail" and p.side in column.rails]
        legs = [p for p in parts if p.role == "leg" and p.side == column.row]
        heights = {z for p in rails for z in (p.blank.low[2], p.blank.high[2])} | {p.blank.high[2] for p in legs}
        values = [(z * scale, read(z)) for z in distinct(heights)]
        outline = left if column.side == "left" else right
        drawn = running(values, origin=(outline, 0.0), axis="y", side=column.side, outline=outline)
        yield from drawn
        out = 1 if column.side == "right" else -1
        beside = (outline + out * 3.0, max(bounds(drawn)[3], top) + 1.5)
        yield Text(beside, column.caption, CAPTION, "start" if out > 0 else "end")


def _widths(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Leg edges along the page from the left end or the front, and the size over everything."""
    read, eye = reader(layout.frame, house), seen.eye
    axis = 0 if eye.name in ("front", "back") else 1
    way = eye.right[axis]
    legs = [p for p in parts if p.role == "leg" and (axis == 1 or p.side == eye.name)]
    places = [p for p in distinct({e for leg in legs for e in (leg.blank.low[axis], leg.blank.high[axis])}) if p > 1e-6]
    values = [(way * place * scale, read(place)) for place in places]
    yield from running(values, origin=(0.0, 0.0), axis="x", side="below", outline=0.0)
    left, _, right, top = seen.bounds
    repeats = abs(right - left - max(places)) < 1e-6
    line = row_line(top * scale, 0, 1)
    size = read(right - left)
    yield from overall(left * scale, right * scale, size, axis="x", at=line, outline=top * scale, auxiliary=repeats)
