"""The views of a binder: elevations from all sides, the plan, and a section through each kind of level."""

from __future__ import annotations

from collections.abc import Iterator

from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ..making.asked import Asked
from .elevation import elevation_pages
from .plan import plan_pages
from .section import section_pages


def view_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """All views of one piece."""
    yield from elevation_pages(layout, asked)
    yield from plan_pages(layout, asked)
    yield from section_pages(layout, asked)
