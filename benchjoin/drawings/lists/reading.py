"""How to read the sheets of a binder: said once, on the cover, so that no other sheet has to say it."""

from __future__ import annotations

from collections.abc import Iterator

from ...frame.frame import Frame
from ..making.house import House, projection


def reading(frame: Frame, house: House) -> Iterator[str]:
    """General tolerance, what figures and marks mean, a point each."""
    tape = frame.tape
    unit = "inches" if tape.unit == "in" else "millimetres"
    more = ", the other unit in square brackets" if house.dual else ""
    yield (
        f"Sizes are those of the finished wood, in {unit}{more}, read to {tape.name}. Full and scant: beyond or short "
        "of the mark by more than an eighth of a division."
    )
    yield f"General tolerance: {house.tolerance or _half_a_division(frame)}. A notch is cut to its own rail."
    yield "A size in brackets follows from others. Running sizes are read from the ring at 0, heights from the floor."
    yield "The mark on the wood is the name on every sheet: the letter is the piece's, the number the part's."
    yield f"Views are in {projection(frame, house)} projection, and named in words."


def _half_a_division(frame: Frame) -> str:
    """Half a division of the tape: no size is written closer."""
    over, _, under = frame.tape.name.removesuffix(" in").removesuffix(" mm").partition("/")
    half = f"{over}/{int(under) * 2}" if under else f"{float(over) / 2:g}"
    return f"± {half} {frame.tape.unit}, half a division of the tape (common practice, no source)"
