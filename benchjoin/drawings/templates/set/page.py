"""The page of a set: what is laid on the clamped legs, every shoulder line struck across those that take it.

Without a paper the page is full size, as large as it needs to be, or as wide as the copy shop's roll, or on a large
sheet; on desk paper it is a reduced picture of the same. `set_tiles` cuts the full size into desk pages.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from typing import Unpack

import attrs

from ....drafting.primitives import Drawing
from ....drafting.sheets.arrange import place_in
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....drafting.sheets.title_block import TitleBlock
from ....errors import PaperError
from ....findings import Finding
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....trade.paper import PDF_LIMIT_SOURCE, PDF_LONGEST, paper_size
from ....trade.standards import FULL_SIZE
from ...making.asked import Asked, OnARoll, ask
from ...making.buildable import must_be_buildable
from ...making.fitting import view_scales
from ...making.house import block, both_ways, room
from ...making.maker import make, within
from ...making.rolled import rolled_sheet
from .clears import clears_told
from .draw import TRUST, face_width, gang
from .lines import Look

INSET = 3.0
"""Between the border and a reduced picture. [mm]"""


BESIDE_THE_WOOD = 1500.0
"""What stands beside the parts on a full-size page is never longer. [mm]"""


def set_page(layout: Layout, letter: str, **options: Unpack[OnARoll]) -> Sheet:
    """The page of one set: at full size, or reduced to a paper.

    Parameters
    ----------
    layout : Layout
    letter : str
        The set's letter; sets that are alike give the same page.
    **options
        paper, for a reduced picture, or roll and printer at full size; and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors: it is not for the wood.
    AddressError
        If there is no such set.
    PaperError
        If it does not fit the paper at any scale, or the roll at full size; or both paper and roll are given.
    """
    asked, part_set = ask(layout, OnARoll, options), drawable_set(layout, letter)
    if asked.paper is None:
        return _full_size(layout, asked, part_set)
    if asked.roll is not None or asked.printer is not None:
        raise PaperError(
            "With paper= the page is a reduced picture; roll= and printer= are for full size, without paper=."
        )
    return _reduced(layout, asked, part_set, asked.paper)


def drawable_set(layout: Layout, letter: str) -> PartSet:
    """A set by its letter, if the layout is fit for the wood.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    AddressError
        If there is no such set.
    """
    part_set = layout.set(letter)
    must_be_buildable(layout, f"Set {letter} is not drawn")
    return part_set


def unlike_sets(layout: Layout) -> list[PartSet]:
    """The first set of each kind, if the layout is fit for the wood.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    """
    must_be_buildable(layout, "A set is not drawn")
    return [layout.set(letter) for letter in dict.fromkeys(part_set.alike[0] for part_set in layout.sets)]


def set_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """A reduced picture of each kind of set, on the first paper that takes it."""
    for part_set in unlike_sets(layout):
        yield _first_that_fits(layout, asked, part_set)


def full_size_pages(layout: Layout, asked: Asked) -> Iterator[Sheet | Finding]:
    """Each kind of set at full size; of one that is longer than a page can be, that it is."""
    for part_set in unlike_sets(layout):
        page = _full_size(layout, asked, part_set)
        yield from _too_long(layout, part_set, page.width) or [page]


def _first_that_fits(layout: Layout, asked: Asked, part_set: PartSet) -> Sheet:
    for paper in asked.papers[:-1]:
        with suppress(PaperError):
            return _reduced(layout, asked, part_set, paper)
    return _reduced(layout, asked, part_set, asked.papers[-1])


def _full_size(layout: Layout, asked: Asked, part_set: PartSet) -> Sheet:
    name, title = f"set-{part_set.letter.lower()}", f"Set {part_set.letter}: {part_set.title}"
    figure = _figure(part_set, gang(layout, part_set, trust=f"{clears_told(layout, part_set)}{TRUST}").drawing)
    return rolled_sheet(asked, figure, _words(asked, part_set, FULL_SIZE.label), name=name, title=title)


def _figure(part_set: PartSet, drawing: Drawing, findings: tuple[Finding, ...] = ()) -> Figure:
    shows = tuple(dict.fromkeys(part.identity for part in part_set.members))
    return Figure(name=f"Set {part_set.letter}", drawing=drawing, shows=shows, findings=findings)


def _too_long(layout: Layout, part_set: PartSet, length: float) -> tuple[Finding, ...]:
    """That a set at full size is longer than a page can be, where it is."""
    if length <= PDF_LONGEST:
        return ()
    say = layout.frame.tape.say
    found = Finding(
        severity="note",
        kind="longer than a page",
        where=f"Set {part_set.letter}",
        parts=tuple(dict.fromkeys(part.identity for part in part_set.members)),
        sentence=f"Set {part_set.letter}: at full size its page is {say(length)} long, and no page of a PDF can be "
        f"longer than {say(PDF_LONGEST)}. It is left out of the binder: print it in tiles, or mark from the readings.",
        numbers={"length": length, "longest": PDF_LONGEST},
        source=PDF_LIMIT_SOURCE,
    )
    return (found,)


def _reduced(layout: Layout, asked: Asked, part_set: PartSet, paper: str) -> Sheet:
    """The largest scale at which the gang fits and its parts are wide enough to be named."""
    up = [pair for band in part_set.bands for pair in zip(part_set.members, band.faces, strict=True)]
    thinnest = min(face_width(part, face) for part, face in up or [(part, part.marked) for part in part_set.members])
    trust = f"{clears_told(layout, part_set)}This picture is reduced: do not lay it on the wood."
    longest = max(part.length for part in part_set.members)
    may_be = longest > PDF_LONGEST - BESIDE_THE_WOOD  # only then the page is drawn to learn its length
    found = _too_long(layout, part_set, _full_size(layout, Asked(layout=layout), part_set).width) if may_be else ()
    if found:
        trust += " At full size it is longer than a page can be: print it in tiles, or mark from the readings."
    for scale, label in view_scales(asked, largest=0.5):
        look = Look(scale=scale, text=2.5, reading=2.5, hatch=1.8, gap=2.0)
        if thinnest * scale < look.text * 1.4:
            break
        if longest * scale > max(paper_size(paper)):
            continue
        figure = _figure(part_set, gang(layout, part_set, look, trust=trust).drawing, found)
        words = _words(asked, part_set, label)
        for size in reversed(both_ways(paper)):
            inside = within(room(*size, words), INSET)
            with suppress(PaperError):
                placed = attrs.evolve(figure, drawing=place_in(figure.drawing, inside, "above"))
                name = f"set-{part_set.letter.lower()}-reduced"
                title = f"Set {part_set.letter}: {part_set.title}, reduced"
                return make(placed, house=asked.house, name=name, title=title, size=size, words=words)
    raise PaperError(f"Set {part_set.letter} does not fit {paper} with its parts named. Take larger paper.")


def _words(asked: Asked, part_set: PartSet, scale: str) -> TitleBlock:
    piece = f"Set {part_set.letter}, {part_set.title}, make {len(part_set.alike)}: {', '.join(part_set.alike)}"
    return block(asked.frame, asked.house, kind="Set page", piece=piece, scale=scale)
