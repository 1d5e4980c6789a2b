"""Where a number comes from.

Every fact in trade/ and every finding carries a Source, so that a maker can look it up and judge it. Habits of
the workshop have none and say so.

>>> str(Source("ISO 129-1:2018", "cl. 7", standing="from memory"))
'ISO 129-1:2018, cl. 7 (from memory)'
>>> str(COMMON_PRACTICE)
'common practice, no source'
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal

import attrs

Standing = Literal["read", "transcribed", "secondary", "from memory", "arithmetic", "common practice"]
SAID: Mapping[Standing, str] = {
    "transcribed": " (as transcribed)",
    "secondary": " (from a secondary page)",
    "from memory": " (from memory)",
}
"""What is said of a number that nobody read in the document itself: it was written out, told of, or remembered."""
WEAKEST: tuple[Standing, ...] = ("common practice", "from memory", "secondary", "transcribed", "arithmetic", "read")


@attrs.frozen
class Source:
    """A document, the place in it, and how it is known what stands there."""

    document: str
    place: str = ""
    standing: Standing = "read"

    def __str__(self) -> str:
        if self.standing == "common practice":
            return "common practice, no source"
        words = ", ".join(filter(None, (self.document, self.place)))
        return words + SAID.get(self.standing, "")


COMMON_PRACTICE = Source("", standing="common practice")
STATICS = Source("statics of the section", "arithmetic", standing="arithmetic")


def weakest(sources: Iterable[Source]) -> Source:
    """The one on whose word least can be built, where a number rests on several.

    >>> weakest([Source("a"), Source("b", standing="from memory")]).document
    'b'
    """
    return min(sources, key=lambda own: WEAKEST.index(own.standing))
