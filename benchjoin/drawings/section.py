"""Sections: the piece cut through, horizontally at a level or a height, or upright at a place along or across.

What is cut is outlined wide and hatched: end grain slanting, wood cut along its length by lines that run with the
grain. What lies behind is drawn as it is seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs
import shapely

from ..drafting.hatch import hatch, outline
from ..drafting.primitives import Drawing, Primitive
from ..drafting.sheet import Sheet
from ..errors import AddressError, LengthError
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import TOUCH, Length, mm
from ..solids import clipped
from .fitting import fit_view
from .page import PLAIN, House
from .sizes import heights, plan_sizes, widths
from .strokes import strokes
from .views import EYES, Eye, Face, view

END_GRAIN, ALONG = 1.4, 1.1
"""Spacing of the hatching of end grain, at 45 degrees, and of wood cut along its length. [mm]"""
FAR = 1e7


@attrs.frozen
class Cut:
    """Where a piece is cut through: across which axis, at which place [mm], the eye that looks at it, and its words."""

    axis: int
    at: float
    eye: Eye
    title: str


def section(
    layout: Layout,
    at: str | float | None = None,
    *,
    x: Length | None = None,
    y: Length | None = None,
    paper: str | None = None,
    house: House | None = None,
    piece: int = 1,
) -> Sheet:
    """A section of one piece.

    Parameters
    ----------
    layout : Layout
    at : str or float, optional
        A horizontal section: at a level, by its name, through its middle, or at a height.
    x, y : float or str, optional
        An upright section: at a place from the left end, seen from the left, or at a place from the front, seen from
        the front.
    paper, house, piece
        As for an elevation.

    Raises
    ------
    AddressError
        If there is no such level, nothing stands there, or not exactly one place is given.
    PaperError
        If it does not fit the paper at any scale.
    """
    cut = _cut(layout, at, x, y, piece)
    parts = cut_away(layout.piece(piece), cut)
    look = view(parts, cut.eye)
    level = cut.eye.frame.w[cut.axis] * cut.at
    through = [face for face in look.faces if abs(face.distance - level) <= TOUCH]
    if not through:
        raise AddressError(f"{cut.title} meets no wood. Choose another place.", address=at)
    by_name = {part.name: part for part in parts}

    def draw(scale: float) -> Drawing:
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        shown = house or PLAIN
        sizes = (
            plan_sizes(layout, parts, look, scale, shown)
            if cut.axis == 2
            else (*heights(layout, parts, look, scale, shown), *widths(layout, parts, look, scale, shown))
        )
        return (*lines, *_cut_faces(through, by_name, cut, scale), *sizes)

    place = next(f"{axis}{given}" for axis, given in (("", at), ("x ", x), ("y ", y)) if given is not None)
    name = f"section {place}".lower()
    name = "".join(c if c.isalnum() or c in "-." else "-" for c in name)
    return fit_view(layout, draw, name=name, kind="Section", title=cut.title, paper=paper, house=house)


def cut_away(parts: Sequence[Part], cut: Cut) -> tuple[Part, ...]:
    """What is left of parts when everything between the eye and the cut is taken away."""
    behind = cut.eye.frame.w[cut.axis] > 0
    low, high = (cut.at, FAR) if behind else (-FAR, cut.at)
    kept = ((part, clipped(part.blank, cut.axis, low, high)) for part in parts)
    return tuple(attrs.evolve(part, blank=box) for part, box in kept if box.size()[cut.axis] > TOUCH)


def _cut(layout: Layout, at: str | float | None, x: Length | None, y: Length | None, piece: int) -> Cut:
    if sum(place is not None for place in (at, x, y)) != 1:
        raise AddressError("A section is at one place: a level or a height, or x= from the left, or y= from the front.")
    say = layout.frame.tape.say
    if x is not None:
        place = mm(x, what="x", zero=True)
        return Cut(0, place, EYES["left"], f"Section {say(place)} from the left end, seen from the left")
    if y is not None:
        place = mm(y, what="y", zero=True)
        return Cut(1, place, EYES["front"], f"Section {say(place)} from the front, seen from the front")
    height, told = _height(layout, at, piece)
    return Cut(2, height, EYES["above"], f"Horizontal section at {told}")


def _height(layout: Layout, at: str | float | None, piece: int) -> tuple[float, str]:
    """The height of a section, and the words for it."""
    levels = [level.name for level in layout.frame.levels()]
    if at in levels:
        own = [part.blank for part in layout.piece(piece) if part.level == at]
        height = (max(b.low[2] for b in own) + min(b.high[2] for b in own)) / 2
        return height, f"{at}, {layout.frame.tape.say(height)} over the floor"
    try:
        height = mm(at, what="the height of a section")
    except LengthError as error:
        told = f"{at!r} is no level and no height. Levels are {', '.join(levels)}; a height is a length like '12 in'."
        raise AddressError(told, address=at, known=tuple(levels)) from error
    return height, f"{layout.frame.tape.say(height)} over the floor"


def _cut_faces(through: Sequence[Face], parts: Mapping[str, Part], cut: Cut, scale: float) -> Iterator[Primitive]:
    for face in through:
        region = shapely.transform(face.region, lambda points: points * scale)
        along = parts[face.part].placement.u
        if abs(along[cut.axis]) > 0.5:
            yield from hatch(region, END_GRAIN, 45.0)
        else:
            level = abs(sum(a * b for a, b in zip(along, cut.eye.right, strict=True))) > 0.5
            yield from hatch(region, ALONG, 0.0 if level else 90.0)
        yield from outline(region, "cut")
