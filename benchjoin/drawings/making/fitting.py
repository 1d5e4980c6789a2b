"""Fitting a view to its paper: the largest standard scale at which it goes on, upright or lying."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from copy import copy
from functools import cache
from itertools import tee

import attrs

from ...drafting.primitives import Box, Drawing, bounds, shift
from ...drafting.sheets.arrange import place_in
from ...drafting.sheets.border import beside_block
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock
from ...errors import PaperError
from ...findings import Finding
from ...sources import COMMON_PRACTICE
from ...trade.standards import SCALES
from .asked import Asked
from .house import Form, block, both_ways, room, system
from .maker import make, within
from .notes import concerning, counted, finding_notes, written

LARGEST = 1.0
"""Nothing is drawn larger than it is."""
LEAST = 1 / 24
"""A view that is smaller than this is put on larger paper where there is some: 1/2 in to the foot, or 1:20."""
INSET = 3.0
"""Between the border and the drawing. [mm]"""
FREE = tuple((1 / n, "not to scale") for n in (5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32, 40, 50, 60, 80, 100))
"""Sizes to try for a picture."""
NARROWEST = 45.0
"""A column of notes beside a view is at least so wide. [mm]"""
CROWDED = 10.0
"""Figures that stand farther from their places than this are hard to follow. [mm]"""


def view_scales(asked: Asked, largest: float = LARGEST) -> list[tuple[float, str]]:
    """Standard scales of the design's tape, the largest first."""
    scales = [s for s in SCALES if s.system in (system(asked.frame), "both") and s.ratio <= largest]
    return [(s.ratio, s.label) for s in sorted(scales, key=lambda s: -s.ratio)]


def fit_view(
    asked: Asked,
    draw: Callable[[float], Figure | Iterable[Way]],
    *,
    name: str,
    kind: str,
    title: str,
    free: bool = False,
    wood: Box = (0.0, 0.0, 0.0, 0.0),
    below: float = 0.0,
    apart: float = math.inf,
    largest: float = LARGEST,
    notes: Sequence[str] = (),
    form: Form = "slim",
) -> Sheet:
    """A sheet of a view, on the paper asked for, or on the desk paper of the design's tape, or a larger one.

    The largest standard scale at which the view goes on is taken. Figures that crowd are staggered; where that shifts
    them farther than can be followed, larger paper is taken, and the sheet says so. Where no paper helps, the sheet
    sends the reader to the part drawings. Larger paper is taken too where a view would come out very small.

    Parameters
    ----------
    asked : Asked
    draw : callable
        The view at a scale, anywhere on the page, or several ways to lay it out, the best first; none where the scale
        does not suit it. A way is drawn where it goes on. Findings about the parts that it shows are written below it.
    name, kind, title : str
        The sheet's name for files, the kind of drawing, and its title.
    free : bool
        A picture, which is not measured and may be of any size.
    wood : box
        What is drawn without its sizes, full size: at a scale at which that alone is too large nothing is drawn. [mm]
    below : float
        How much higher the drawing is than that at every scale, at the least. [mm]
    apart : float
        How close its wide lines come, full size; where they would run together the sheet's lines are thinner. [mm]
    largest : float
        The largest scale to try.
    notes : sequence of str
        What else is written below the view.
    form : "slim" or "iso"
        How the words of its title block are set out.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    scales = FREE if free else view_scales(asked, largest)
    kept = cache(lambda ratio: tee(_several(draw(ratio)), 1)[0])

    def ways_to_draw(ratio: float) -> Iterator[Way]:
        return copy(kept(ratio))  # from the first one on; none is drawn twice, and none before it is asked for

    def words_at(label: str) -> TitleBlock:
        return block(asked.frame, asked.house, kind=kind, piece=title, scale=label, form=form)

    def rooms(size: str, label: str) -> list[Box]:
        return [within(room(*way, words_at(label)), INSET) for way in both_ways(size)]

    def on(size: str, before: Mapping[str, str]) -> _Tried:
        for ratio, label in scales:
            inner = rooms(size, label)
            if not _goes_in_one(_bare(wood, ratio, below), inner):
                continue
            house = attrs.evolve(asked.house, linework=asked.house.linework.fitted(apart * ratio))
            for drawn in (way.figure() for way in ways_to_draw(ratio) if _goes_in_one(way.bounds, inner)):
                figure, words = _found(drawn, asked), words_at(label)
                about, told = _about_room(figure, size, before)
                ways = [about + own for own in _told(asked, figure, notes)]
                for way in both_ways(size):
                    inside, nook = (within(box, INSET) for box in (room(*way, words), beside_block(*way, words)))
                    placed = _placed(figure.drawing, ways[:1] if free else ways, inside, nook)
                    if placed:
                        drawing, under = placed
                        own = attrs.evolve(figure, drawing=drawing, findings=(*figure.findings, *told))
                        sheet = make(own, under, house=house, name=name, title=title, size=way, words=words)
                        return _Tried(sheet, figure.shifted, math.inf if free else ratio)
        raise PaperError(f"{title} does not fit {size} at any scale. Take larger paper.")

    return _calmest(on, asked.papers)


@attrs.frozen
class Way:
    """A way to lay a view out: its bounds [mm], and who draws it."""

    bounds: Box
    figure: Callable[[], Figure]


@attrs.frozen
class _Tried:
    """A sheet on some paper, how far its figures are shifted, and its scale."""

    sheet: Sheet
    off: float
    ratio: float


def _several(drawn: Figure | Iterable[Way]) -> Iterable[Way]:
    return [Way(drawn.bounds, lambda: drawn)] if isinstance(drawn, Figure) else drawn


def _bare(wood: Box, ratio: float, below: float) -> Box:
    """The least that is drawn at a scale."""
    left, low, right, high = wood
    return (left * ratio, low * ratio - below, right * ratio, high * ratio)


def _found(figure: Figure, asked: Asked) -> Figure:
    """A figure with its findings and those about the parts that it shows."""
    own = concerning(asked, figure.shows, asked.piece) if figure.shows else ()  # a picture waits for no findings
    return attrs.evolve(figure, findings=(*figure.findings, *own))


def _told(asked: Asked, figure: Figure, notes: Sequence[str]) -> list[list[str]]:
    """What is written below a view: in full, in brief, and only how many notes there are."""
    full, brief = ([*finding_notes(asked, figure.findings, brief=brief), *notes] for brief in (False, True))
    return [full, brief, counted(full)] if full else [full]


def _calmest(on: Callable[[str, Mapping[str, str]], _Tried], papers: Sequence[str]) -> Sheet:
    """The sheet on the first paper where figures can be followed and nothing is tiny, or else where it is least bad."""
    tried: list[tuple[tuple[float, float, int], Sheet]] = []
    before: dict[str, str] = {}  # what was wrong, and on which paper first
    for number, paper in enumerate(papers):
        try:
            one = on(paper, before)
        except PaperError:
            if number == len(papers) - 1 and not tried:
                raise
            continue
        if one.off <= CROWDED and one.ratio >= LEAST:
            return one.sheet
        before.setdefault("crowded" if one.off > CROWDED else "small", paper)
        tried.append(((max(one.off, CROWDED), -one.ratio, number), one.sheet))
    return min(tried, key=lambda each: each[0])[1]


def _about_room(figure: Figure, paper: str, before: Mapping[str, str]) -> tuple[list[str], tuple[Finding, ...]]:
    """What a sheet says of itself where figures crowd or paper is larger, and the finding for the list."""
    if figure.shifted > CROWDED:
        note = "Figures stand away from their edges here; the part drawings show these places larger."
        said = f"{figure.name}: figures stand away from their edges; the part drawings show these places larger."
        return [note], (_crowded(figure, "crowded figures", said),)
    reasons = {"crowded": "the figures would crowd", "small": "the view would be too small"}
    for what, small in before.items():
        why = f"on {paper}, since {reasons[what]} on {small}."
        return [f"O{why[1:]}"], (_crowded(figure, "larger paper", f"{figure.name}: {why}"),)
    return [], ()


def _crowded(figure: Figure, kind: str, sentence: str) -> Finding:
    return Finding(
        severity="note", kind=kind, where=figure.name, parts=figure.shows, sentence=sentence, source=COMMON_PRACTICE
    )


def _placed(drawing: Drawing, ways: Sequence[Sequence[str]], inside: Box, nook: Box) -> tuple[Drawing, Drawing] | None:
    """The drawing in the middle of its room, and the notes below or beside it; None where it does not go in.

    Below is also the room beside a title block, the nook.

    Where notes have no room they are told in a shorter way, the next one of `ways`. A picture, which is not to scale,
    makes room for them.
    """
    size = bounds(drawing)
    if not _goes_in(size, inside):
        return None
    for told in ways:
        for place in (_in_nook, _below, _beside):
            placed = place(drawing, size, told, inside, nook)
            if placed:
                return placed
    return None


def _in_nook(
    drawing: Drawing, size: Box, notes: Sequence[str], inside: Box, nook: Box
) -> tuple[Drawing, Drawing] | None:
    """The drawing in all its room, and notes beside the title block, from the top down."""
    x0, y0, x1, y1 = nook
    if not notes or x1 - x0 < NARROWEST:
        return None
    told = shift(written(notes, x1 - x0), x0, y1)
    return (place_in(drawing, inside), told) if bounds(told)[1] >= y0 else None


def _below(drawing: Drawing, size: Box, notes: Sequence[str], inside: Box, _: Box) -> tuple[Drawing, Drawing] | None:
    """The drawing, and notes at the foot of its room."""
    x0, y0, x1, y1 = inside
    told, low = written(notes, x1 - x0), y0
    if told:
        foot = y0 - bounds(told)[1]
        told, low = shift(told, x0, foot), foot + INSET
    return (place_in(drawing, (x0, low, x1, y1)), told) if _goes_in(size, (x0, low, x1, y1)) else None


def _beside(drawing: Drawing, size: Box, notes: Sequence[str], inside: Box, _: Box) -> tuple[Drawing, Drawing] | None:
    """The drawing, and a column of notes on its right, from the top down."""
    x0, y0, x1, y1 = inside
    right = x0 + (size[2] - size[0]) + 2 * INSET
    if not notes or x1 - right < NARROWEST:
        return None
    told = shift(written(notes, x1 - right), right, y1)
    room_left = (x0, y0, right - 2 * INSET, y1)
    return (place_in(drawing, room_left), told) if bounds(told)[1] >= y0 else None


def _goes_in_one(size: Box, rooms: Iterable[Box]) -> bool:
    return any(_goes_in(size, inside) for inside in rooms)


def _goes_in(size: Box, inside: Box) -> bool:
    a, b, c, d = size
    return c - a <= inside[2] - inside[0] + 1e-9 and d - b <= inside[3] - inside[1] + 1e-9
