"""The views of a binder, of each kind of piece: elevations from all sides, the plan, and sections."""

from __future__ import annotations

from collections.abc import Iterator

from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ..making.asked import Asked
from ..making.pieces import of_each_kind
from .elevation import elevation_pages
from .plan import plan_pages
from .section import section_pages


def view_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """All views of the first piece of each kind."""
    for own in of_each_kind(asked):
        yield from elevation_pages(layout, own)
        yield from plan_pages(layout, own)
        yield from section_pages(layout, own)
