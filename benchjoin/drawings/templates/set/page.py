"""The page of a set: what is laid on the clamped legs, every shoulder line struck across those that take it.

Without a paper the page is full size, as large as it needs to be, or as wide as the copy shop's roll, or on a large
sheet; on desk paper it is a reduced picture of the same (`reduced`). `set_tiles` has the full size on desk pages.
"""

from __future__ import annotations

from typing import Unpack

from ....drafting.sheets.sheet import Sheet
from ....errors import PaperError
from ....layout.laid_out import of_a_layout
from ....layout.layout import Layout
from ...making.asked import OnARoll, ask
from .full import full_size_page
from .reduced import in_one
from .which import drawable_set


@of_a_layout
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
        If it does not go on the paper in one picture, or on the roll at full size; or both paper and roll are given.
    """
    asked, part_set = ask(layout, OnARoll, options), drawable_set(layout, letter)
    if asked.paper is None:
        return full_size_page(layout, asked, part_set)
    if asked.roll is not None or asked.printer is not None:
        raise PaperError(
            "With paper= the page is a reduced picture; roll= and printer= are for full size, without paper=."
        )
    return in_one(layout, asked, part_set, asked.paper)
