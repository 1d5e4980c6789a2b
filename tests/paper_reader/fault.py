"""A fault of a page: by which rule, where, and in words what is wrong."""

from typing import NamedTuple


class Fault(NamedTuple):
    """A fault on a page. [mm from the lower left corner]"""

    rule: str
    page: int
    title: str
    x: float
    y: float
    words: str

    def __str__(self):
        return f"page {self.page} ({self.title}), at {self.x:.1f}, {self.y:.1f}: {self.rule}: {self.words}"


def fault(rule, page, place, words):
    """A fault in the middle of a geometry."""
    x0, y0, x1, y1 = place.bounds
    return Fault(rule, page.number, page.title, (x0 + x1) / 2, (y0 + y1) / 2, words)
