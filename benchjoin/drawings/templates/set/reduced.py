"""Reduced pictures of a set, for the wall: as large as the paper allows, lettering that is read at arm's length.

A set that goes on no page in one picture is split: a page for each way up, then for some of its parts, then for
lengths of them, the fewest pages that it takes. What was done is said on the page and in the binder's list.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from itertools import pairwise

import attrs

from ....drafting.sheets.arrange import place_in
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....errors import PaperError
from ....findings import Finding
from ....layout.layout import Layout
from ....layout.sets import PartSet, of_members
from ....lengths import TOUCH
from ....phrases import listed
from ....sources import COMMON_PRACTICE
from ....trade.paper import PDF_LONGEST
from ...making.asked import Asked
from ...making.fitting import view_scales
from ...making.house import both_ways, room
from ...making.maker import make, within
from .clears import clears_told
from .draw import gang
from .full import BESIDE_THE_WOOD, full_size_page, too_long
from .lines import Look
from .spans import Span, spans
from .which import set_figure, set_words, unlike_sets
from .wood import face_width, ways_up

INSET = 3.0
"""Between the border and a reduced picture. [mm]"""
TEXT = 3.5
"""Height of lettering for the wall. [mm]"""
READINGS = ((5.0, False), (TEXT, False), (5.0, True), (TEXT, True))
"""Heights to try for readings, and whether more than the level stands beside them. [mm]"""
SLIMMEST = 0.8
"""How wide a part is drawn at least, of the height of its mark."""
MOST = 24
"""Into more pages a set is not split: its sticks and tiles serve better."""

Share = tuple[PartSet, Span | None]
"""What one page of a split set shows."""


def set_pages(layout: Layout, asked: Asked) -> Iterator[Sheet | Finding]:
    """Reduced pictures of each kind of set, in one on the first desk paper that takes it, or split."""
    for part_set in unlike_sets(layout):
        yield from _pages(layout, asked, part_set)


def in_one(layout: Layout, asked: Asked, part_set: PartSet, paper: str) -> Sheet:
    """A set in one picture.

    Raises
    ------
    PaperError
        If it does not go on the paper with letters that can be read on a wall.
    """
    made = _at_best(layout, asked, [(part_set, None)], paper, ())
    if made:
        return made[0]
    raise PaperError(
        f"Set {part_set.letter} does not fit {paper} in one picture with its parts named. Take larger paper; the "
        "binder splits it into pages."
    )


def _pages(layout: Layout, asked: Asked, part_set: PartSet) -> tuple[Sheet | Finding, ...]:
    for paper in asked.papers[:2]:
        with suppress(PaperError):
            return (in_one(layout, asked, part_set, paper),)
    for shares, how in _splits(part_set):
        made = _at_best(layout, asked, shares, asked.papers[0], _split(part_set, asked.papers[0], len(shares), how))
        if made:
            return made
    return _split(part_set, asked.papers[0], 0, "")


def _splits(part_set: PartSet) -> Iterator[tuple[list[Share], str]]:
    """Ways to split a set, those of fewest pages first, and in words what was split."""
    bands = [attrs.evolve(part_set, bands=(band,)) for band in ways_up(part_set)]
    ways = []
    for groups in range(1, min(len(part_set.members), MOST) + 1):
        for number in range(1, MOST // (groups * len(bands)) + 1):
            if groups * number * len(bands) > 1:
                ways.append((groups * number * len(bands), number, groups))
    for _, number, groups in sorted(ways):
        lengths: list[Span | None] = list(spans(part_set, number)) if number > 1 else [None]
        shares = [(own, span) for band in bands for own in _in_groups(band, groups) for span in lengths]
        told = [
            word
            for word, is_split in (
                ("by the faces that are up", len(bands) > 1),
                (f"by {part_set.members[0].slot.role.plural}", groups > 1),
                ("by length", number > 1),
            )
            if is_split
        ]
        yield shares, listed(told)


def _in_groups(part_set: PartSet, groups: int) -> Iterator[PartSet]:
    """A set in groups of neighbours, as equal as can be."""
    long = len(part_set.members)
    ends = [round(long * n / groups) for n in range(groups + 1)]
    for first, last in pairwise(ends):
        yield of_members(part_set, range(first, last)) if groups > 1 else part_set


def _at_best(
    layout: Layout, asked: Asked, shares: list[Share], paper: str, found: tuple[Finding, ...]
) -> tuple[Sheet, ...]:
    """All shares at the largest scale at which each goes on a page; none where there is no such scale."""
    thinnest = min(
        face_width(p, face) for one, _ in shares for band in ways_up(one) for p, face in _up(one, band.faces)
    )
    for scale, label in view_scales(asked, largest=0.5):
        if thinnest * scale < TEXT * SLIMMEST:
            break
        if not all(_may_go(asked, share, scale, label, paper) for share in shares):
            continue
        looks = [
            (Look(scale=scale, text=TEXT, reading=reading, hatch=3.0, gap=2.0, brief=brief), label)
            for reading, brief in READINGS
        ]
        made = partial(_made, layout, asked, shares, paper, found)
        if least := made(looks[-1]):  # where the least that is told has no room, no more has
            return next(filter(None, map(made, looks[:-1])), least)
    return ()


def _made(
    layout: Layout, asked: Asked, shares: list[Share], paper: str, found: tuple[Finding, ...], how: tuple[Look, str]
) -> tuple[Sheet, ...]:
    """A page of each share; none where one of them has no room."""
    made: list[Sheet] = []
    for number, share in enumerate(shares, 1):
        of = (number, len(shares)) if len(shares) > 1 else None
        sheet = _sheet(layout, asked, share, paper, how, of, found if number == 1 else ())
        if sheet is None:
            return ()
        made.append(sheet)
    return tuple(made)


def _may_go(asked: Asked, share: Share, scale: float, label: str, paper: str) -> bool:
    """Whether the wood of a share alone has room on a page."""
    (part_set, span), words = share, set_words(asked, share[0], label)
    wide = _length(part_set, span) * scale
    high = sum(face_width(p, face) for band in ways_up(part_set) for p, face in _up(part_set, band.faces)) * scale
    rooms = (within(room(*size, words), INSET) for size in both_ways(paper))
    return any(wide <= x1 - x0 + TOUCH and high <= y1 - y0 + TOUCH for x0, y0, x1, y1 in rooms)


def _up(part_set: PartSet, faces: tuple[str, ...]) -> zip[tuple]:  # type: ignore[type-arg]
    return zip(part_set.members, faces, strict=True)


def _length(part_set: PartSet, span: Span | None) -> float:
    return span[1] - span[0] if span else max(part.length for part in part_set.members)


def _sheet(
    layout: Layout,
    asked: Asked,
    share: Share,
    paper: str,
    how: tuple[Look, str],
    of: tuple[int, int] | None,
    found: tuple[Finding, ...],
) -> Sheet | None:
    """A share on its page, lying or upright; None where it does not go on."""
    (part_set, span), (look, label) = share, how
    longest = max(part.length for part in part_set.members)
    may_be = longest > PDF_LONGEST - BESIDE_THE_WOOD  # only then the page is drawn to learn its length
    long = too_long(layout, part_set, full_size_page(layout, Asked(layout=layout), part_set).width) if may_be else ()
    trust = f"{clears_told(layout, part_set)}{_which(layout, span)}This picture is reduced: do not lay it on the wood."
    if long:
        trust += " At full size it is longer than a page can be: print it in tiles, or mark from the readings."
    figure = set_figure(part_set, gang(layout, part_set, look, trust=trust, span=span), (*found, *long))
    words = set_words(asked, part_set, label)
    name, title = f"set-{part_set.letter.lower()}-reduced", f"Set {part_set.letter}: {part_set.title}, reduced"
    if of:
        words = attrs.evolve(words, piece=f"{words.piece}, {of[0]} of {of[1]}")
        name, title = f"{name}-{of[0]}", f"{title}, {of[0]} of {of[1]}"
    for size in reversed(both_ways(paper)):
        with suppress(PaperError):
            placed: Figure = attrs.evolve(
                figure, drawing=place_in(figure.drawing, within(room(*size, words), INSET), "above")
            )
            return make(placed, house=asked.house, name=name, title=title, size=size, words=words)
    return None


def _which(layout: Layout, span: Span | None) -> str:
    read = layout.frame.tape.read
    return f"This page shows {read(span[0])} to {read(span[1])}. " if span else ""


def _split(part_set: PartSet, paper: str, pages: int, how: str) -> tuple[Finding, ...]:
    """That a set is split, and how; or that it is left out, where even that does not do."""
    letter = part_set.letter
    said = (
        f"split {how}, {pages} pages, since on {paper} one picture could not be read on a wall."
        if pages
        else f"no picture of it goes on {paper} with lettering that can be read. Mark from the sticks or the tiles, or "
        "take larger paper."
    )
    return (
        Finding(
            severity="note",
            kind="split set" if pages else "no picture",
            where=f"Set {letter}",
            parts=tuple(dict.fromkeys(part.identity for part in part_set.members)),
            sentence=f"Set {letter}: {said}",
            numbers={"pages": float(pages)},
            source=COMMON_PRACTICE,
        ),
    )
