"""The plan from above, and horizontal sections: where legs and rails stand along the length and the depth.

A section is cut at a height; what is cut is outlined wide and hatched (legs, cut across, one way; rails, cut along,
the other and closer), what lies below is drawn as it is seen from above.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs
import shapely

from ..drafting.dimensions import overall, row_line, running
from ..drafting.hatch import hatch, outline
from ..drafting.primitives import Drawing, Primitive
from ..drafting.sheet import Sheet
from ..errors import AddressError
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import TOUCH, mm
from ..solids import Box
from .fitting import fit_view
from .page import PLAIN, House, reader
from .strokes import distinct, strokes
from .views import Face, View, view

HATCH = {"leg": (1.4, 45.0), "rail": (0.9, 135.0)}
"""Spacing [mm] and angle [degrees] of the hatching of cut faces."""


def plan(layout: Layout, *, paper: str | None = None, house: House | None = None, piece: int = 1) -> Sheet:
    """The plan of one piece from above.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    parts = layout.piece(piece)
    look = view(parts, "above")

    def draw(scale: float) -> Drawing:
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        return (*lines, *_sizes(layout, parts, look, scale, house or PLAIN))

    return fit_view(layout, draw, name="plan", kind="Plan", title="Plan from above", paper=paper, house=house)


def section(
    layout: Layout, at: str | float, *, paper: str | None = None, house: House | None = None, piece: int = 1
) -> Sheet:
    """The horizontal section of one piece at a level (by its name, through its middle) or at a height.

    Raises
    ------
    AddressError
        If there is no such level, or nothing stands at that height.
    PaperError
        If it does not fit the paper at any scale.
    """
    height, told = _height(layout, at, piece)
    parts = cut_away(layout.piece(piece), height)
    if not any(part.blank.high[2] > height - TOUCH for part in parts):
        raise AddressError(f"Nothing stands at {told}. Choose a lower height or a level.", address=at)
    look = view(parts, "above")
    cut = [face for face in look.faces if abs(face.distance + height) <= TOUCH]
    roles = {part.name: part.role for part in parts}

    def draw(scale: float) -> Drawing:
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        return (*lines, *_cut_faces(cut, roles, scale), *_sizes(layout, parts, look, scale, house or PLAIN))

    name = "section-" + "-".join(str(at).split()).lower()
    return fit_view(
        layout, draw, name=name, kind="Section", title=f"Horizontal section at {told}", paper=paper, house=house
    )


def cut_away(parts: Sequence[Part], height: float) -> tuple[Part, ...]:
    """What is left of parts when everything above a height is taken away. [mm]"""
    return tuple(
        attrs.evolve(part, blank=Box(part.blank.low, (*part.blank.high[:2], min(part.blank.high[2], height))))
        for part in parts
        if part.blank.low[2] < height - TOUCH
    )


def _height(layout: Layout, at: str | float, piece: int) -> tuple[float, str]:
    """The height of a section, and the words for it."""
    levels = [level.name for level in layout.frame.levels()]
    if at in levels:
        own = [part.blank for part in layout.piece(piece) if part.level == at]
        height = (max(b.low[2] for b in own) + min(b.high[2] for b in own)) / 2
        return height, f"{at}, {layout.frame.tape.say(height)} over the floor"
    try:
        height = mm(at, what="the height of a section")
    except ValueError as error:
        known = ", ".join(levels)
        raise AddressError(
            f"{at!r} is no level and no height. Levels are {known}; or write {at!r} as a length."
        ) from error
    return height, f"{layout.frame.tape.say(height)} over the floor"


def _cut_faces(cut: Sequence[Face], roles: Mapping[str, str], scale: float) -> Iterator[Primitive]:
    for face in cut:
        region = shapely.transform(face.region, lambda points: points * scale)
        spacing, angle = HATCH[roles[face.part]]
        yield from hatch(region, spacing, angle)
        yield from outline(region, "cut")


def _sizes(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Legs along the length from the left and along the depth from the front, and the sizes over everything."""
    read = reader(layout.frame, house)
    left, low, right, high = (edge * scale for edge in seen.bounds)
    legs = [part.blank for part in parts if part.role == "leg"]
    along = [p for p in distinct({e for b in legs for e in (b.low[0], b.high[0])}) if p > TOUCH]
    deep = [p for p in distinct({e for b in legs for e in (b.low[1], b.high[1])}) if p > TOUCH]
    yield from running([(x * scale, read(x)) for x in along], origin=(0.0, low), axis="x", side="below")
    yield from running([(y * scale, read(y)) for y in deep], origin=(left, 0.0), axis="y", side="left")
    long, broad = (right - left) / scale, (high - low) / scale
    yield from overall(
        left, right, read(long), axis="x", at=row_line(high, 0, 1), outline=high, auxiliary=_repeats(long, along)
    )
    yield from overall(
        low, high, read(broad), axis="y", at=row_line(right, 0, 1), outline=right, auxiliary=_repeats(broad, deep)
    )


def _repeats(size: float, places: Sequence[float]) -> bool:
    """Whether a size over everything says again what the running dimensions say."""
    return abs(size - max(places)) < TOUCH
