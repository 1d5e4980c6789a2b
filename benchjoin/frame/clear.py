"""A clear: an open height or space between two members, as the maker measures it.

>>> Clear("7 in").size, Clear(weight=2).weight
(177.8, 2)
"""

from __future__ import annotations

from typing import Literal

import attrs

from .doors import a_length, a_number, one_of, refuse

Side = Literal["front", "back", "left", "right", "cross"]
SIDES: tuple[Side, ...] = ("front", "back", "left", "right", "cross")


@attrs.frozen
class Clear:
    """An open height or space between two members; without a size it shares what is left, by weight. [mm]

    at says where the maker measures it: over the whole band of the levels around it, at one side's rails, or from the
    "surface", the upper face of what the level below carries.
    """

    size: float | None = attrs.field(default=None, converter=a_length("size", zero=True, optional=True))
    weight: float = attrs.field(kw_only=True, default=1.0, converter=a_number("weight", 1e-3, 1e3, "1"))
    at: Side | Literal["surface"] | None = attrs.field(
        kw_only=True, default=None, converter=one_of("at", None, *SIDES, "surface")
    )

    def __attrs_post_init__(self) -> None:
        refuse(self, "Clear")
