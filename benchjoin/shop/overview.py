"""Overviews that fit a glance: key numbers of a layout, its marks leg by leg, how much wood its parts take."""

from __future__ import annotations

from ..findings import counts
from ..layout.laid_out import of_a_layout
from ..layout.layout import Layout
from ..phrases import pieces_called
from ..tables import Table
from .weights import weights

CUBIC_FOOT = 304.8**3
"""One cubic foot. [mm³]"""


def key_numbers(layout: Layout) -> Table:
    """Sizes over everything, how many are made, of how many parts, marked in how many sets, and what was found."""
    say = layout.frame.tape.say
    over: dict[str, list[int]] = {}
    for alike in layout.alike:
        over.setdefault(" × ".join(map(say, layout.overall(alike[0]))), []).extend(alike)
    what = "Length × depth × height over everything"
    held = (("Held by", f"the {layout.frame.against}"),) if layout.frame.against else ()
    rows = (
        *((f"{what}, {pieces_called(own)}" if len(over) > 1 else what, sizes) for sizes, own in over.items()),
        *held,
        ("Make", str(layout.frame.quantity)),
        ("Parts of each", str(len(layout.piece(1)))),
        ("Sets to clamp", ", ".join(one.letter for one in layout.sets)),
        ("Findings", counts(layout.findings) or "none"),
    )
    return Table(layout.frame.name, ("What", "How much"), rows)


@of_a_layout
def marks_list(layout: Layout, piece: int = 1) -> Table:
    """Shoulders of every notch over the foot, leg by leg, as the tape reads them.

    Raises
    ------
    AddressError
        If there is no such piece.
    """
    tape = layout.frame.tape
    notches = [(leg, notch) for leg in layout.piece(piece) for notch in leg.notches]
    rows = tuple(
        (leg.identity, notch.rail, tape.read(notch.bottom), tape.read(notch.top), tape.read(notch.depth))
        for leg, notch in notches
    )
    sizes = (("From", "bottom"), ("To", "top"), ("Deep", "depth"))
    numbers = {f"{name} [mm]": tuple(float(getattr(own, key)) for _, own in notches) for name, key in sizes}
    columns = ("Leg", "For", *(f"{name} ({tape.unit})" for name in ("From", "To", "Deep")))
    own = next(alike for alike in layout.alike if piece in alike)
    which = f", {pieces_called(own)}" if len(layout.alike) > 1 else ""
    return Table(f"Marks over the foot: {layout.frame.name}{which}", columns, rows, (), "llrrr", numbers)


def wood_totals(layout: Layout) -> Table:
    """Parts, running length and volume of each stock, all pieces together, with weight where the species is known."""
    inch = layout.frame.tape.unit == "in"
    length_unit, volume_unit = ("ft", "cu ft") if inch else ("m", "l")
    longs, volumes = (304.8, CUBIC_FOOT) if inch else (1000.0, 1e6)
    found: dict[str, list[float]] = {}
    for part in layout.parts:
        row = found.setdefault(part.stock.name, [0.0, 0.0, 0.0])
        row[0] += 1
        row[1] += part.length
        row[2] += part.volume
    rows = tuple(
        (stock, f"{count:.0f}", f"{length / longs:.1f}", f"{volume / volumes:.2f}")
        for stock, (count, length, volume) in found.items()
    )
    columns = ("Stock", "Parts", f"Length ({length_unit})", f"Volume ({volume_unit})")
    known = all(slot.stock.species for slot in layout.frame.slots())
    notes = (f"One piece weighs {weights(layout).piece():.1f} kg at 12 % moisture.",) if known else ()
    title = f"Wood in the finished parts: {layout.frame.name}, make {layout.frame.quantity}"
    return Table(title, columns, rows, notes, "lrrr")
