"""A set at full size in one piece: as large as it needs to be, as wide as the copy shop's roll, or on a large sheet."""

from __future__ import annotations

from collections.abc import Iterator

from ....drafting.sheets.sheet import Sheet
from ....findings import Finding
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....trade.paper import PDF_LIMIT_SOURCE, PDF_LONGEST
from ....trade.standards import FULL_SIZE
from ...making.asked import Asked
from ...making.rolled import rolled_sheet
from .clears import clears_told
from .draw import TRUST, gang
from .which import set_figure, set_words, unlike_sets

BESIDE_THE_WOOD = 1500.0
"""What stands beside the parts on a full-size page is never longer. [mm]"""


def full_size_pages(layout: Layout, asked: Asked) -> Iterator[Sheet | Finding]:
    """Each kind of set at full size; of one that is longer than a page can be, that it is."""
    for part_set in unlike_sets(layout):
        page = full_size_page(layout, asked, part_set)
        yield from too_long(layout, part_set, page.width) or [page]


def full_size_page(layout: Layout, asked: Asked, part_set: PartSet) -> Sheet:
    """A set at full size, on a page as large as it needs to be, or on a roll."""
    name, title = f"set-{part_set.letter.lower()}", f"Set {part_set.letter}: {part_set.title}"
    trust = f"{clears_told(layout, part_set)}{TRUST}"
    figure = set_figure(part_set, gang(layout, part_set, trust=trust, fastening=asked.fastening))
    return rolled_sheet(asked, figure, set_words(asked, part_set, FULL_SIZE.label), name=name, title=title)


def too_long(layout: Layout, part_set: PartSet, length: float) -> tuple[Finding, ...]:
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
