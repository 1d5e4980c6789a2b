"""Which sets are drawn, and what their pages have in common: figure, title block, for how many sets one is."""

from __future__ import annotations

from ....drafting.primitives import Drawing
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.title_block import TitleBlock
from ....findings import Finding
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ...making.asked import Asked
from ...making.buildable import must_be_buildable
from ...making.house import block


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


def set_figure(part_set: PartSet, drawing: Drawing, findings: tuple[Finding, ...] = ()) -> Figure:
    """A drawing of a set."""
    shows = tuple(dict.fromkeys(part.identity for part in part_set.members))
    return Figure(name=f"Set {part_set.letter}", drawing=drawing, shows=shows, findings=findings)


def set_words(asked: Asked, part_set: PartSet, scale: str) -> TitleBlock:
    """The title block of a page of a set."""
    piece = f"Set {part_set.letter}, {part_set.title}{for_sets(part_set)}"
    return block(asked.frame, asked.house, kind="Set page", piece=piece, scale=scale)


def for_sets(part_set: PartSet) -> str:
    """', for 3 sets: A, B, C'; nothing where a page is for one alone."""
    alike = part_set.alike
    return f", for {len(alike)} sets: {', '.join(alike)}" if len(alike) > 1 else ""
