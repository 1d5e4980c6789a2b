"""Sections: the piece cut through, horizontally at a level or a height, or upright at a place along or across.

What is cut is outlined wide and hatched by thin lines at 45 degrees: end grain close, wood cut along its length wide
apart and the other way about, so that no line can be taken for a joint. What lies behind is drawn as it is seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Unpack

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.hatch import hatch
from ...drafting.primitives import Drawing, Primitive, Text, bounds
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...errors import AddressError, LengthError
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, Length, mm
from ...solids import Box, along
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import LARGEST, fit_view
from ..making.pieces import named, shown_parts, titled
from .face import Face, on_page
from .labels import Taken, front_sign, leg_marks, marks_of_runs
from .repeated import with_words
from .strokes import drawn, group
from .view import EYES, Eye, View, view
from .view_sizes import flat, upright
from .wall import wall

END_GRAIN, ALONG = (1.4, 45.0), (2.8, 135.0)
"""Spacing and angle of the hatching of end grain, and of wood cut along its length. [mm, degrees]"""
LETTER = 3.5
"""Height of the letters of a cutting plane. [mm]"""
FAR, NEAR = 1e7, 1e-3
"""Beyond all wood; just before the eye's side of a cut. [mm]"""


@attrs.frozen
class Cut:
    """Where a piece is cut through: across which axis, at which place [mm], the eye that looks at it, and its words."""

    axis: int
    at: float
    eye: Eye
    title: str


@of_a_layout
def section(
    layout: Layout,
    at: str | float | None = None,
    *,
    x: Length | None = None,
    y: Length | None = None,
    **options: Unpack[OfAPiece],
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
    **options
        paper, house and piece, as `Asked` has them.

    Raises
    ------
    AddressError
        If there is no such level, nothing stands there, or not exactly one place is given.
    PaperError
        If it does not fit the paper at any scale.
    """
    asked = ask(layout, OfAPiece, options)
    cut = _cut(layout, at, x, y, asked.piece)
    place = next(f"{axis}{given}" for axis, given in (("", at), ("x ", x), ("y ", y)) if given is not None)
    return section_page(layout, asked, cut, place)


def sections_by_level(layout: Layout, asked: Asked) -> Iterator[tuple[Cut, str, View]]:
    """Horizontal sections through the lowest level of each kind: the cut, the level, and what is seen."""
    for level in _unlike_levels(layout, asked.piece):
        cut = _cut(layout, level, None, None, asked.piece)
        yield cut, level, view(cut_away(shown_parts(asked), cut), cut.eye)


def _unlike_levels(layout: Layout, piece: int) -> list[str]:
    """The lowest level of each kind: with rails on the same sides, let in alike, that carry the same."""
    kinds: dict[object, str] = {}
    here = {part.identity for part in layout.piece(piece)}
    for level in layout.frame.levels():
        own = tuple(
            (slot.side, slot.joint, slot.of.face, slot.thickness, slot.of.overhang)
            for slot in layout.frame.rails_of[level.name]
            if slot.name in here
        )
        if own:
            kinds.setdefault((own, level.carries), level.name)
    return list(kinds.values())


def section_page(
    layout: Layout,
    asked: Asked,
    cut: Cut,
    place: str,
    *,
    seen: View | None = None,
    letter: str = "",
    largest: float = LARGEST,
) -> Sheet:
    """A section, of what is seen of it where that is known, with the letter of its plane if another view shows it."""
    parts = cut_away(shown_parts(asked), cut)
    look = seen or view(parts, cut.eye)
    through = _through(shown_parts(asked), look, cut)
    if not through:
        raise AddressError(f"{cut.title} meets no wood. Choose another place.", address=place)
    by_name = {part.name: part for part in parts}
    title = titled(asked, f"{letter}–{letter}: {cut.title}" if letter else cut.title)

    def draw(scale: float) -> Figure:
        sizes = (flat if cut.axis == 2 else upright)(layout, parts, look, scale, asked.house)
        lines = drawn(look, scale, group(look, scale, asked.house.linework), cut=[face.region for face in through])
        held = wall(layout, parts, look, scale)
        drawing: Drawing = (*lines, *_hatched(through, by_name, cut, scale), *sizes.drawing(), *held)
        if letter:
            x0, _, x1, top = bounds(drawing)
            drawing = (*drawing, Text(((x0 + x1) / 2, top + 4.0), f"{letter}–{letter}", LETTER, "middle", bold=True))
        taken = Taken(drawing)
        words = (*front_sign(look, scale, taken), *leg_marks(parts, look, scale, taken))
        if cut.axis == 2:
            words = (*words, *marks_of_runs(parts, look, scale, taken))
        figure = Figure(name=title, drawing=(*drawing, *words), shows=look.shows, shifted=sizes.shifted)
        return with_words(figure, asked, parts, look, scale)

    name = named(asked, "".join(c if c.isalnum() or c in "-." else "-" for c in f"section {place}".lower()))
    return fit_view(
        asked, draw, name=name, kind="Section", title=title, wood=look.bounds, apart=look.apart, largest=largest
    )


def cut_away(parts: Sequence[Part], cut: Cut) -> tuple[Part, ...]:
    """What is left of parts when everything between the eye and the cut is taken away."""
    behind = cut.eye.frame.w[cut.axis] > 0
    low, high = (cut.at, FAR) if behind else (-FAR, cut.at)
    kept = ((part, part.blank.within(cut.axis, low, high)) for part in parts)
    return tuple(part.cropped(box) for part, box in kept if box.size()[cut.axis] > TOUCH)


def _through(parts: Sequence[Part], look: View, cut: Cut) -> list[Face]:
    """Faces of what is cut: wood on both sides of the place; wood that only ends there is not cut."""
    way = cut.eye.frame.w[cut.axis]
    whole = {part.name: part for part in parts}
    found = []
    for face in look.faces:
        if abs(face.distance - way * cut.at) <= TOUCH:
            region = face.region.intersection(_wood_at(whole[face.part], cut, cut.at - way * NEAR))
            if region.area > TOUCH:
                found.append(attrs.evolve(face, region=region))
    return found


def _wood_at(part: Part, cut: Cut, at: float) -> BaseGeometry:
    """What a plane cuts of a part, on the page of the eye."""

    def rectangle(box: Box) -> BaseGeometry:
        met = cut.eye.frame.local(box)
        inside = box.low[cut.axis] < at < box.high[cut.axis]
        return shapely.box(*met.low[:2], *met.high[:2]) if inside else shapely.Polygon()

    if part.outline.plain:
        return rectangle(part.blank).difference(shapely.union_all([rectangle(one.box) for one in part.cuts]))
    frame = cut.eye.frame
    if abs(along(frame.w, part.placement.w)) > 0.5:  # the plane is that of the outline
        depth = abs(at - part.placement.origin[cut.axis])
        inside = [slab.region for slab in part.slabs if slab.low <= depth <= slab.high]
        return on_page(shapely.union_all(inside), part, frame)
    return shapely.union_all([rectangle(box) for box in part.solid])


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
        own = [part.blank for part in layout.piece(piece) if part.level == at and part.side]
        low, high = max(b.low[2] for b in own), min(b.high[2] for b in own)
        if low >= high - TOUCH:  # no height meets them all: the highest are cut, and one looks down on the others
            high = min(b.high[2] for b in own if b.low[2] >= low - TOUCH)
        height = (low + high) / 2
        return height, f"{at}, {layout.frame.tape.say(height)} over the {layout.frame.datum}"
    try:
        height = mm(at, what="the height of a section")
    except LengthError as error:
        told = f"{at!r} is no level and no height. Levels are {', '.join(levels)}; a height is a length like '12 in'."
        raise AddressError(told, address=at, known=tuple(levels)) from error
    return height, f"{layout.frame.tape.say(height)} over the {layout.frame.datum}"


def _hatched(through: Sequence[Face], parts: Mapping[str, Part], cut: Cut, scale: float) -> Iterator[Primitive]:
    for face in through:
        region = shapely.transform(face.region, lambda points: points * scale)
        endwise = abs(parts[face.part].placement.u[cut.axis]) > 0.5
        yield from hatch(region, *(END_GRAIN if endwise else ALONG))
