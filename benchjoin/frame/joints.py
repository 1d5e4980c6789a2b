"""How a member meets another, as the maker says it. What wood each one takes is worked out in layout/joints/.

The guest comes to its host: a rail to a leg. What else must be known of a joint is said here as its traits, so that
nobody has to ask which one it is.

>>> Notch(depth="1/2 in"), HalfLap(), Butt(), Planted()
(Notch(depth=12.7), HalfLap(share=0.5), Butt(), Planted())
"""

from __future__ import annotations

from typing import ClassVar, Protocol

import attrs

from .doors import a_length, a_number, refuse


class How(Protocol):
    """What every joint says of itself."""

    word: ClassVar[str]
    """Its name in the trade."""
    shares: ClassVar[bool]
    """Whether host and guest want the same wood, so that the guest is let in; otherwise they only touch."""
    between: ClassVar[bool]
    """Whether the guest ends against its hosts, and runs between them."""
    cuts_both: ClassVar[bool]
    """Whether the guest gives up wood, too."""


@attrs.frozen
class Notch:
    """The rail is let into the leg: flush, or to a given depth, less than the rail is thick. [mm]"""

    word: ClassVar[str] = "notch"
    shares: ClassVar[bool] = True
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False

    depth: float | None = attrs.field(default=None, converter=a_length("depth", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Notch")


@attrs.frozen
class HalfLap:
    """Leg and rail both give up wood, and finish flush; share is the leg's part of the rail's thickness."""

    word: ClassVar[str] = "half-lap"
    shares: ClassVar[bool] = True
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = True

    share: float = attrs.field(default=0.5, converter=a_number("share", 0.05, 0.95, "0.5"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "HalfLap")


@attrs.frozen
class Butt:
    """The rail ends against the legs."""

    word: ClassVar[str] = "butt"
    shares: ClassVar[bool] = False
    between: ClassVar[bool] = True
    cuts_both: ClassVar[bool] = False


@attrs.frozen
class Planted:
    """The rail is fixed on the face of the legs, with no notch."""

    word: ClassVar[str] = "planted"
    shares: ClassVar[bool] = False
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False


@attrs.frozen
class Over:
    """The bearer is notched over its rails: it gives up all the wood, half its height unless told. [mm]"""

    word: ClassVar[str] = "over-notch"
    shares: ClassVar[bool] = True
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False

    depth: float | None = attrs.field(default=None, converter=a_length("depth", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Over")


@attrs.frozen
class Laid:
    """It lies on what carries it, and nobody gives up wood."""

    word: ClassVar[str] = "laid"
    shares: ClassVar[bool] = False
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False


@attrs.frozen
class Rests:
    """It rests on what carries it, and lifts off: nothing fixes it there."""

    word: ClassVar[str] = "rests"
    shares: ClassVar[bool] = False
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False


@attrs.frozen
class CutRound:
    """A board is cut round what stands up: a notch with the roles swapped; clear is kept off it all round. [mm]"""

    word: ClassVar[str] = "cut round"
    shares: ClassVar[bool] = True
    between: ClassVar[bool] = False
    cuts_both: ClassVar[bool] = False

    clear: float | None = None


RailJoint = Notch | HalfLap | Butt | Planted
