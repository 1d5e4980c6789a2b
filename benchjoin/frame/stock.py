"""Stock: a timber section as the maker has it on the bench.

>>> Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in").thickness
33.3375
"""

from __future__ import annotations

import attrs

from .doors import Fault, Faults, a_length, a_name, refuse


@attrs.frozen
class Stock:
    """A section by thickness and width, with the length it comes in where that matters. [mm]"""

    name: str = attrs.field(converter=a_name("name"))
    thickness: float = attrs.field(kw_only=True, converter=a_length("thickness"))
    width: float | None = attrs.field(kw_only=True, default=None, converter=a_length("width", optional=True))
    length: float | None = attrs.field(kw_only=True, default=None, converter=a_length("length", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, f"Stock {_name(self.name)}")


def _name(value: object) -> str:
    return "without a name" if isinstance(value, Faults | Fault) else f'"{value}"'


def titled(kind: str, value: object) -> str:
    """'Level "bench"', for the head of an error; a name that is itself at fault is left out."""
    return f"{kind} {_name(value)}"
