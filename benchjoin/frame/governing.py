"""Governing sizes that are not taken over the legs: over all, or by the length of the end rails.

>>> Overall("24 in"), EndRails("20 3/8 in")
(Overall(size=609.6), EndRails(size=517.525))
"""

from __future__ import annotations

import attrs

from .doors import a_length, refuse


@attrs.frozen
class Overall:
    """A length or depth over everything: legs, planted rails and overhangs. [mm]"""

    size: float = attrs.field(converter=a_length("size"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Overall")


@attrs.frozen
class EndRails:
    """A depth by the finished length of the end rails. [mm]"""

    size: float = attrs.field(converter=a_length("size"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "EndRails")
