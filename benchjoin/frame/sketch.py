"""From a sketch to a first frame: a few governing sizes, and every value that was assumed, to be confirmed or changed.

>>> first = sketch("Potting bench", length=1500, depth=600, height=850, shelf="200 to 230 mm")
>>> first.open
{'shelf.top': Range(low=200.0, high=230.0, step=None)}
>>> first.settled({"shelf.top": 210}).levels()[0].top
210.0
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import attrs

from ..errors import AddressError
from ..lengths import INCH, Inches, Length, mm
from ..ranges import Range, ranged
from ..readings import Tape
from ..tables import Table
from .address import alter
from .boards import Boards
from .clear import Clear
from .frame import Frame
from .leg import Leg
from .stack import Level
from .stock import Stock


@attrs.frozen(kw_only=True, repr=False)
class Sketch:
    """A first frame from a sketch: what was said, what was assumed, and what is open.

    frame has the middle of every range; open are the ranges by address, to hand to `explore` or `sweep` or to settle.
    """

    frame: Frame
    assumed: tuple[tuple[str, str], ...]
    open: Mapping[str, Range] = attrs.field(factory=dict, hash=False)

    def settled(self, values: Mapping[str, Any] | None = None) -> Frame:
        """The frame with what was open decided.

        Raises
        ------
        AddressError
            If something stays open.
        """
        given = values or {}
        left = [address for address in self.open if address not in given]
        if left:
            raise AddressError(
                f"{', '.join(left)} is open yet. Settle it: settled({{{left[0]!r}: {self.open[left[0]].low:g}}}).",
                known=tuple(self.open),
            )
        return alter(self.frame, given)

    def table(self) -> Table:
        """What was assumed, to be confirmed, and what is open."""
        tape = self.frame.tape
        rows = [(what, value, "assumed") for what, value in self.assumed]
        rows += [
            (address, f"{tape.say(own.low)} to {tape.say(own.high)}", "open") for address, own in self.open.items()
        ]
        notes = ("Assumed values are a start, common practice, no source: confirm each, or change it by its address.",)
        return Table(f"From a sketch: {self.frame.name}", ("What", "Value", ""), tuple(rows), notes)

    def __repr__(self) -> str:
        return f"<Sketch of {self.frame.name}: {len(self.assumed)} values assumed, {len(self.open)} open>"


Said = Length | Range
"""A length, or a range of them: "8 to 9 in"."""


def sketch(
    name: str,
    *,
    length: Said,
    depth: Said,
    height: Said,
    back: Said | None = None,
    shelf: Said | None = None,
    leg: Stock | None = None,
    rails: Stock | None = None,
) -> Sketch:
    """A first frame from the sizes of a sketch.

    Parameters
    ----------
    name : str
    length, depth : length or Range
        Over the legs. A range is written as one says it: "8 to 9 in".
    height : length or Range
        Of the working surface.
    back : length or Range, optional
        Of the back legs, where they go on above it.
    shelf : length or Range, optional
        Of the top of a shelf's rails below it.
    leg, rails : Stock, optional
        What legs and rails are made of.

    Raises
    ------
    LengthError
        If a size is none.
    DescriptionError
        If the frame cannot be as it is sketched.
    """
    open_: dict[str, Range] = {}
    assumed: list[tuple[str, str]] = []
    inches = any(isinstance(own, str) and ("in" in own or '"' in own) for own in (length, depth, height, back, shelf))
    tape = Tape("1/16 in" if inches else "1 mm")

    def size(said: Said, address: str, less: float = 0.0) -> float:
        own = ranged(said)
        if own is None:
            assert not isinstance(said, Range)
            return mm(said, what=address) - less
        open_[address] = Range(own.low - less, own.high - less, own.step)
        return (own.low + own.high) / 2 - less

    def assume(what: str, millimetres: float, inch: float) -> float:
        found = Inches(inch * INCH) if inches else millimetres
        assumed.append((what, tape.say(found)))
        return found

    legs = leg or Stock("leg", thickness=assume("leg, thickness", 45, 1.5), width=assume("leg, width", 70, 2.5))
    thin = rails or Stock("rail", thickness=assume("rail, thickness", 20, 0.75))
    high, low = assume("rails of the worktop", 90, 3.5), assume("rails of the shelf", 70, 2.75) if shelf else 0.0
    board = Stock(
        "top board", thickness=assume("top board, thickness", 20, 0.75), width=assume("top board, width", 90, 3.5)
    )
    gap = assume("gap between boards", 5, 0.1875)
    decked = [Boards(board, run="along", gap=gap)]
    top = size(height, "front.height", board.thickness)
    stack: list[Clear | Level] = [Clear()]
    if shelf is not None:
        at = size(shelf, "shelf.top")
        stack += [Level("shelf", front=low, back=low, ends=low, top=at, carries=decked), Clear()]
    stack += [Level("worktop", front=high, back=high, ends=high, flush="front leg top", carries=decked)]
    behind = top
    if back is not None:
        behind = size(back, "back.height")
        stack += [Clear(), Level("upper rail", back=high, flush="back leg top")]
    assumed.append(("corners", "front and back rails let in and through, end rails between the legs"))
    frame = Frame(
        name=name,
        length=size(length, "length"),
        depth=size(depth, "depth"),
        front=Leg(legs, height=top),
        back=Leg(legs, height=behind),
        rail_stock=thin,
        stack=stack,
        tape=tape,
    )
    return Sketch(frame=frame, assumed=tuple(assumed), open=open_)
