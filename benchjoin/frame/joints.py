"""How a rail meets a leg, as the maker says it. What wood each one takes is worked out in layout/joints/.

>>> Notch(depth="1/2 in"), HalfLap(), Butt(), Planted()
(Notch(depth=12.7), HalfLap(share=0.5), Butt(), Planted())
"""

from __future__ import annotations

import attrs

from .doors import a_length, a_number, refuse


@attrs.frozen
class Notch:
    """The rail is let into the leg: flush, or to a given depth, less than the rail is thick. [mm]"""

    depth: float | None = attrs.field(default=None, converter=a_length("depth", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Notch")


@attrs.frozen
class HalfLap:
    """Leg and rail both give up wood, and finish flush; share is the leg's part of the rail's thickness."""

    share: float = attrs.field(default=0.5, converter=a_number("share", 0.05, 0.95, "0.5"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "HalfLap")


@attrs.frozen
class Butt:
    """The rail ends against the legs."""


@attrs.frozen
class Planted:
    """The rail is fixed on the face of the legs, with no notch."""


RailJoint = Notch | HalfLap | Butt | Planted
