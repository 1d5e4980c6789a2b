"""How a member meets another, as the maker says it. What wood each one takes is worked out in layout/joints/.

The guest comes to its host: a rail to a leg. What else must be known of a joint is said here as its traits, so that
nobody has to ask which one it is.

>>> Notch(depth="1/2 in"), HalfLap(), Butt(), Planted()
(Notch(depth=12.7), HalfLap(share=0.5), Butt(), Planted())
"""

from __future__ import annotations

from typing import ClassVar

import attrs

from .doors import a_length, a_number, refuse


class How:
    """What every joint says of itself."""

    __slots__ = ()

    word: ClassVar[str]
    """Its name in the trade."""
    shares: ClassVar[bool] = False
    """Whether host and guest want the same wood, so that the guest is let in; otherwise they only touch."""
    between: ClassVar[bool] = False
    """Whether the guest ends against its hosts, and runs between them."""
    cuts_both: ClassVar[bool] = False
    """Whether the guest gives up wood, too."""
    lies: ClassVar[bool] = False
    """Whether the guest lies on its host, which carries it and does not stiffen it."""
    held: ClassVar[bool] = True
    """Whether metal or glue may hold it; otherwise it lifts off, or only makes way."""
    takes_block: ClassVar[bool] = False
    """Whether there is room for a corner block in the angle of both."""

    @property
    def carries(self) -> bool:
        """Whether it passes a load on."""
        return self.lies or self.held

    @property
    def hangs(self) -> bool:
        """Whether the guest has no wood below it in its host, and all that it carries is on what holds it."""
        return not (self.shares or self.lies)

    @property
    def shoulders(self) -> bool:
        """Whether the guest stands between shoulders of its host, which carry it and may keep it from turning."""
        return self.shares and self.carries and not self.lies


@attrs.frozen
class Notch(How):
    """The rail is let into the leg: flush, or to a given depth, less than the rail is thick. [mm]"""

    word: ClassVar[str] = "notch"
    shares: ClassVar[bool] = True
    takes_block: ClassVar[bool] = True

    depth: float | None = attrs.field(default=None, converter=a_length("depth", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Notch")


@attrs.frozen
class HalfLap(How):
    """Leg and rail both give up wood, and finish flush; share is the leg's part of the rail's thickness."""

    word: ClassVar[str] = "half-lap"
    shares: ClassVar[bool] = True
    cuts_both: ClassVar[bool] = True

    share: float = attrs.field(default=0.5, converter=a_number("share", 0.05, 0.95, "0.5"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "HalfLap")


@attrs.frozen
class Butt(How):
    """The rail ends against the legs."""

    word: ClassVar[str] = "butt"
    between: ClassVar[bool] = True
    takes_block: ClassVar[bool] = True


@attrs.frozen
class Planted(How):
    """The rail is fixed on the face of the legs, with no notch."""

    word: ClassVar[str] = "planted"
    takes_block: ClassVar[bool] = True


@attrs.frozen
class Over(How):
    """The bearer is notched over its rails: it gives up all the wood, half its height unless told. [mm]"""

    word: ClassVar[str] = "over-notch"
    shares: ClassVar[bool] = True
    lies: ClassVar[bool] = True

    depth: float | None = attrs.field(default=None, converter=a_length("depth", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Over")


@attrs.frozen
class Laid(How):
    """It lies on what carries it, and nobody gives up wood."""

    word: ClassVar[str] = "laid"
    lies: ClassVar[bool] = True


@attrs.frozen
class Rests(How):
    """It rests on what carries it, and lifts off: nothing fixes it there."""

    word: ClassVar[str] = "rests"
    lies: ClassVar[bool] = True
    held: ClassVar[bool] = False


@attrs.frozen
class CutRound(How):
    """A board is cut round what stands up: a notch with the roles swapped; clear is kept off it all round. [mm]"""

    word: ClassVar[str] = "cut round"
    shares: ClassVar[bool] = True
    held: ClassVar[bool] = False

    clear: float | None = None


RailJoint = Notch | HalfLap | Butt | Planted
KINDS: tuple[type[How], ...] = (Notch, HalfLap, Butt, Planted, Laid, Over, Rests, CutRound)
"""All of them, in the order in which they are named to the maker."""
