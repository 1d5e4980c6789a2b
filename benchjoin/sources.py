"""Where a number comes from.

Every fact in trade/ and every finding carries a Source, so that a maker can look it up and judge it. Habits of
the workshop have none and say so.

>>> str(Source("ISO 129-1:2018", "cl. 7", standing="from memory"))
'ISO 129-1:2018, cl. 7 (from memory)'
>>> str(COMMON_PRACTICE)
'common practice, no source'
"""

from __future__ import annotations

from typing import Literal

import attrs

Standing = Literal["read", "from memory", "common practice"]


@attrs.frozen
class Source:
    """A document, the place in it, and whether anybody has read it there."""

    document: str
    place: str = ""
    standing: Standing = "read"

    def __str__(self) -> str:
        if self.standing == "common practice":
            return "common practice, no source"
        words = ", ".join(filter(None, (self.document, self.place)))
        return words + (" (from memory)" if self.standing == "from memory" else "")


COMMON_PRACTICE = Source("", standing="common practice")
STATICS = Source("statics of the section", "arithmetic")
